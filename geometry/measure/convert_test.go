package measure

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/unit/constant"

	"silowright/render/outside"
)

// Every unit against LibreOffice's function CONVERT, which holds pound, psi and
// horsepower to six or seven figures.
func TestUnitsByLibreOffice(t *testing.T) {
	rows := []struct {
		from, to string
		got      float64
		within   float64 // of it
	}{
		{"in", "m", Inch.Metres(), 1e-14},
		{"ft", "m", Foot.Metres(), 1e-14},
		{"m", "mm", float64(Metre / Millimetre), 1e-14},
		{"gal", "l", USGallon.Litres(), 1e-12},
		{"oz", "l", USFluidOunce.Litres(), 1e-12},
		{"l", "ml", float64(Litre / Millilitre), 1e-14},
		{"m3", "l", float64(CubicMetrePerSec / LitrePerSecond), 1e-14},
		{"hr", "sec", float64(CubicMetrePerSec / CubicMetrePerHour), 1e-14},
		{"mn", "sec", float64(LitrePerSecond / LitrePerMinute), 1e-14},
		{"lbm", "kg", Pound.Kg(), 2e-7},
		{"psi", "Pa", PSI.MPa() * 1e6, 3e-7},
		{"HP", "W", float64(Horsepower), 1e-7},
		{"C", "F", Temperature(1).Fahrenheit(), 1e-12},
		{"F", "C", float64(FromFahrenheit(1)), 1e-12},
	}
	var pairs []string
	for _, r := range rows {
		pairs = append(pairs, r.from, r.to)
	}
	for i, want := range outside.Convert(t, pairs...) {
		if r := rows[i]; math.Abs(r.got/want-1) > r.within {
			t.Errorf("1 %s is %v %s, LibreOffice says %v", r.from, r.got, r.to, want)
		}
	}
}

// Standard gravity as the gonum library has it.
func TestGravityOfGonum(t *testing.T) {
	if Gravity != float64(constant.StandardGravity) {
		t.Errorf("%v, gonum has %v", Gravity, float64(constant.StandardGravity))
	}
}

// Units that are made of others, by their definitions: a psi is a pound's
// weight on a square inch, a horsepower 550 foot-pounds a second, at standard
// gravity as the gonum library has it.
func TestUnitsOfUnits(t *testing.T) {
	g := float64(constant.StandardGravity)
	for _, r := range []struct {
		unit      string
		got, want float64
	}{
		{"psi in MPa", PSI.MPa(), Pound.Kg() * g / (Inch.MM() * Inch.MM())},
		{"horsepower", float64(Horsepower), 550 * Foot.Metres() * Pound.Kg() * g},
		{"gpm", float64(GallonPerMinute), float64(USGallon) / 60},
		{"L/min", float64(LitrePerMinute), float64(Litre) / 60},
		{"m/s", float64(MetrePerSecond), Metre.MM()},
		{"right angle", float64(Degree), math.Pi / 2 / 90},
		{"full turn", float64(FullTurn), 2 * math.Pi},
		{"in²", Area(1).SquareInches(), 1 / (Inch.MM() * Inch.MM())},
		{"kPa", Pressure(1).KPa(), 1e-3},
	} {
		if math.Abs(r.got/r.want-1) > 1e-9 {
			t.Errorf("%s: %v, want %v", r.unit, r.got, r.want)
		}
	}
}

// A foot a second is 0.3048 m/s, an inch 25.4 mm/s (NIST SP 811).
func TestSpeeds(t *testing.T) {
	for s, want := range map[Speed]string{304.8: "1 ft/s (0.305 m/s)", 609.6: "2 ft/s (0.61 m/s)", 50.8: "2 in/s (50.8 mm/s)"} {
		if got := s.Both(UnitInch); got != want {
			t.Errorf("%v mm/s: %q, want %q", float64(s), got, want)
		}
	}
}
