package measure

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The shop's rule for reading a tape: the nearest division, the fraction
// reduced (common practice, no source).
func TestInch(t *testing.T) {
	tests := []struct {
		reason string
		in     Length
		den    int
		want   string
	}{
		{"whole and half", 10.5 * Inch, 16, "10 1/2"},
		{"fraction alone", 3 * Inch / 16, 16, "3/16"},
		{"negative fraction", -Inch / 8, 16, "-1/8"},
		{"negative mixed", -10.5 * Inch, 16, "-10 1/2"},
		{"rounds up to a whole", 15*Inch + 31*Inch/32, 16, "16"},
		{"rounds down", 15*Inch + 29*Inch/32 - 0.01, 16, "15 7/8"},
		{"negative rounds to nothing without a sign", -Inch / 64, 16, "0"},
		{"nothing", 0, 16, "0"},
		{"to the whole inch", 2.6 * Inch, 1, "3"},
		{"tenths are reduced too", 2.5 * Inch, 10, "2 1/2"},
		{"no division is taken as whole inches", 2.6 * Inch, 0, "3"},
		{"NaN", Length(math.NaN()), 16, "out of range"},
		{"infinite", Length(math.Inf(-1)), 16, "out of range"},
		{"huge", 1e300, 16, "out of range"},
	}
	for _, tt := range tests {
		if diff := cmp.Diff(tt.want, tt.in.Inch(tt.den)); diff != "" {
			t.Errorf("%s, -want +got:\n%s", tt.reason, diff)
		}
	}
}

func TestRound(t *testing.T) {
	got, off := (15*Inch + 31*Inch/32).Round(16)
	if math.Abs(float64(got-16*Inch)) > 1e-9 || math.Abs(float64(off-Inch/32)) > 1e-9 {
		t.Errorf("15 31/32 in to 1/16: %v mm off by %v", float64(got), float64(off))
	}
	got, off = (-10.3 * Inch).Round(4)
	if math.Abs(float64(got+10.25*Inch)) > 1e-9 || math.Abs(float64(off-0.05*Inch)) > 1e-9 {
		t.Errorf("-10.3 in to 1/4: %v mm off by %v", float64(got), float64(off))
	}
	if got, _ := (2.6 * Inch).Round(0); !got.Finite() {
		t.Errorf("no division: %v", float64(got))
	}
}

// Conversions: NIST Special Publication 811, appendix B (inch 25.4 mm, US
// gallon 3.785412 L, US fluid ounce 29.57353 mL, pound 0.45359237 kg, psi
// 6.894757 kPa).
func TestBoth(t *testing.T) {
	inf := math.Inf(1)
	tests := []struct {
		reason         string
		inch, mm       string
		wantIn, wantMM string
	}{
		{"length", (10.5 * Inch).Both(UnitInch), (10.5 * Inch).Both(UnitMM), "10 1/2 in (266.7 mm)", "266.7 mm (10 1/2 in)"},
		{"length alone", (10.5 * Inch).In(UnitInch), (10.5 * Inch).In(UnitMM), "10 1/2 in", "266.7 mm"},
		{"negative length", (-1.5 * Inch).Both(UnitInch), (-1.5 * Inch).Both(UnitMM), "-1 1/2 in (-38.1 mm)", "-38.1 mm (-1 1/2 in)"},
		{"an exact half goes up", (0.75 * Inch).Both(UnitInch), (1.75 * Inch).Both(UnitMM), "3/4 in (19.1 mm)", "44.5 mm (1 3/4 in)"},
		{"mesh opening", Length(0.154).Both(UnitInch), Length(0.154).Both(UnitMM), "0.006 in (0.15 mm)", "0.15 mm (0.006 in)"},
		{"under a hundredth of a millimetre", Length(0.004).Both(UnitInch), Length(0.004).Both(UnitMM), "0.00016 in (0.004 mm)", "0.004 mm (0.00016 in)"},
		{"a thirty-second", (Inch / 32).Both(UnitInch), (Inch / 32).Both(UnitMM), "1/32 in (0.8 mm)", "0.8 mm (1/32 in)"},
		{"thirty-seconds under half an inch", (13 * Inch / 32).Both(UnitInch), (-13 * Inch / 32).In(UnitInch), "13/32 in (10.3 mm)", "-13/32 in"},
		{"sixteenths from half an inch on", (17 * Inch / 32).Both(UnitInch), (17 * Inch / 32).In(UnitInch), "9/16 in (13.5 mm)", "9/16 in"},
		{"no fraction of a ruler is near", Length(1.2).Both(UnitInch), Length(0.5).Both(UnitMM), "0.047 in (1.2 mm)", "0.5 mm (0.02 in)"},
		{"next to nothing", Length(1e-9).Both(UnitInch), Length(-1e-9).Both(UnitMM), "0 in (0 mm)", "0 mm (0 in)"},
		{"length is no number", Length(math.NaN()).Both(UnitInch), Length(inf).In(UnitMM), "out of range", "out of range"},
		{"metric is no number", Length(inf).Metric(), Length(1e7).Metric(), "out of range", "out of range"},
		{"area", Area(22710).Both(UnitInch), Area(22710).Both(UnitMM), "35.2 in² (227 cm²)", "227 cm² (35.2 in²)"},
		{"small area", Area(32).Both(UnitInch), Area(32).Both(UnitMM), "0.05 in² (32 mm²)", "32 mm² (0.05 in²)"},
		{"large area is written in full", Area(1e6).Both(UnitInch), Area(1e6).Both(UnitMM), "1550 in² (10000 cm²)", "10000 cm² (1550 in²)"},
		{"area next to nothing", Area(0.0004).Both(UnitInch), Area(0.0004).Both(UnitMM), "0.00000062 in² (0.0004 mm²)", "0.0004 mm² (0.00000062 in²)"},
		{"area is no number", Area(inf).Both(UnitInch), Area(1e300).Both(UnitMM), "out of range", "out of range"},
		{"volume", (55 * USGallon).Both(UnitInch), (55 * USGallon).Both(UnitMM), "55 US gal (208 L)", "208 L (55 US gal)"},
		{"under a litre", (10.1 * USFluidOunce).Both(UnitInch), (10.1 * USFluidOunce).Both(UnitMM), "10.1 fl oz (299 mL)", "299 mL (10.1 fl oz)"},
		{"volume is no number", Volume(math.NaN()).Both(UnitInch), Volume(-inf).Both(UnitMM), "out of range", "out of range"},
		{"mass", Mass(23).Both(UnitInch), Mass(23).Both(UnitMM), "50.7 lb (23 kg)", "23 kg (50.7 lb)"},
		{"mass of a screw", Mass(0.0028).Both(UnitInch), Mass(0.0028).Both(UnitMM), "0.099 oz (2.8 g)", "2.8 g (0.099 oz)"}, // 1 oz = 28.349523125 g, avoirdupois
		{"mass is no number", Mass(math.NaN()).Both(UnitInch), Mass(inf).Both(UnitMM), "out of range", "out of range"},
		{"stress", (800 * PSI).Both(UnitInch), (800 * PSI).Both(UnitMM), "800 psi (5.52 MPa)", "5.52 MPa (800 psi)"},
		{"stress is no number", Stress(math.NaN()).Both(UnitInch), Stress(inf).Both(UnitMM), "out of range", "out of range"},
	}
	for _, tt := range tests {
		if diff := cmp.Diff([]string{tt.wantIn, tt.wantMM}, []string{tt.inch, tt.mm}); diff != "" {
			t.Errorf("%s, -want +got:\n%s", tt.reason, diff)
		}
	}
}

// What is not nothing is never written as nothing; the coarsest division of the
// tape that is true is taken.
func TestNumberPercentAndTape(t *testing.T) {
	tape := func(l Length) string {
		s, ok := l.Tape()
		if !ok {
			return "near " + s
		}
		return s
	}
	for _, c := range []struct{ got, want string }{
		{Number(62.04, 1), "62"}, {Number(0.004, 0), "0.004"}, {Number(-0.00349, 2), "-0.0035"}, {Number(0, 2), "0"},
		{Number(1e-10, 3), "0"}, {Number(math.NaN(), 1), "out of range"},
		{Percent(0.624), "62 %"}, {Percent(0.004), "0.4 %"}, {Percent(0), "0 %"},
		{tape(10.5 * Inch), "10 1/2"}, {tape(17 * Inch / 32), "17/32"}, {tape(3 * Inch / 64), "3/64"}, {tape(10.3), "near 3/8"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}

func TestQuantityText(t *testing.T) {
	tests := []struct {
		reason string
		in     Quantity
		want   string
	}{
		{"length", (2 * Inch).Quantity(), "2 in (50.8 mm)"},
		{"area", Area(22710).Quantity(), "35.2 in² (227 cm²)"},
		{"volume", (2 * Litre).Quantity(), "0.528 US gal (2 L)"},
		{"mass", Mass(10).Quantity(), "22 lb (10 kg)"},
		{"stress", (800 * PSI).Quantity(), "800 psi (5.52 MPa)"},
		{"count", Count(12), "12"},
		{"head", (7 * Foot).Head(), "7 ft (2.13 m)"},
		{"percent", Quantity{33.33, "%"}, "33.33%"},
		{"angle", Quantity{45, "°"}, "45°"},
		{"never minus nothing", Quantity{-1e-9, "°"}, "0°"},
		{"little is not nothing: percent", Quantity{0.00349, "%"}, "0.0035%"},
		{"little is not nothing: angle", Quantity{-0.001, "°"}, "-0.001°"},
		{"little is not nothing: flow", Flow(0.0003 * LitrePerMinute).Quantity(), "0.000079 gpm (0.0003 L/min)"},
		{"little is not nothing: stress", Stress(0.0000004).Quantity(), "0.000058 psi (0.0000004 MPa)"},
		{"energy", Quantity{19474.42, "kWh"}, "19474 kWh"},
		{"little energy", Quantity{0.0004, "kWh"}, "0.0004 kWh"},
		{"no number", Quantity{math.NaN(), "%"}, "out of range"},
		{"infinite", Quantity{math.Inf(1), "mm"}, "out of range"},
		{"huge", Quantity{1e300, ""}, "out of range"},
	}
	for _, tt := range tests {
		if diff := cmp.Diff(tt.want, tt.in.Text(UnitInch)); diff != "" {
			t.Errorf("%s, -want +got:\n%s", tt.reason, diff)
		}
	}
}

// What falls a little short of what is wanted is not told as what is wanted.
func TestApartPercent(t *testing.T) {
	for _, c := range []struct {
		x, other float64
		want     string
	}{{0.8996, 0.9, "89.96 %"}, {0.9, 0.9, "90 %"}, {0.62, 0.9, "62 %"}, {0.90004, 0.9, "90.004 %"}} {
		if got, _ := ApartPercent(c.x, c.other); got != c.want {
			t.Errorf("%v beside %v: %q, want %q", c.x, c.other, got, c.want)
		}
	}
}
