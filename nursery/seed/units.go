package seed

import (
	"fmt"
	"math"
	"strconv"

	"silowright/geometry/measure"
)

// Shell is a shell length: the longest measure of the shell, in millimetres.
type Shell measure.Length

// Length returns s as a plain length.
func (s Shell) Length() measure.Length { return measure.Length(s) }

// Both writes s in both units, the shop's own first.
func (s Shell) Both(u measure.Unit) string { return measure.Length(s).Both(u) }

// Sieve returns the opening that seed of this shell length just does not pass,
// by the grower's ratio of sieve opening to shell length.
func (s Shell) Sieve(ratio float64) Sieve { return Sieve(float64(s) * ratio) }

// Sieve is the side of the largest square opening that seed does not pass, in
// millimetres. It is no shell length: a seed of 10 mm may fall through 7 mm.
type Sieve measure.Length

// Length returns s as a plain length.
func (s Sieve) Length() measure.Length { return measure.Length(s) }

// Both writes s in both units, the shop's own first.
func (s Sieve) Both(u measure.Unit) string { return measure.Length(s).Both(u) }

// Shell returns the shell length of seed that s just holds, by the grower's
// ratio of sieve opening to shell length; 0 for a ratio that is not positive.
func (s Sieve) Shell(ratio float64) Shell {
	if !(ratio > 0) {
		return 0
	}
	return Shell(float64(s) / ratio)
}

// Load is a mass of live seed on an area of mesh, in kilograms a square metre.
// A gram a square centimetre is ten of it.
type Load float64

// LoadOf returns the load of m on a; 0 for an area that is not positive.
func LoadOf(m measure.Mass, a measure.Area) Load {
	if !(a > 0) {
		return 0
	}
	return Load(m.Kg() / (a.MM2() * 1e-6))
}

// Both writes l in both units, the shop's own first: "30 kg/m² (6.14 lb/ft²)".
func (l Load) Both(u measure.Unit) string {
	const perSquareFoot = 0.3048 * 0.3048 / float64(measure.Pound)
	return both(u, float64(l)*perSquareFoot, "lb/ft²", float64(l), "kg/m²")
}

// Quantity returns l as a number of kilograms a square metre.
func (l Load) Quantity() measure.Quantity { return measure.Quantity{Value: float64(l), Unit: "kg/m²"} }

// WaterPerMass is the water that a mass of live seed is given, in litres a
// minute per kilogram: the same number in millilitres a minute per gram.
type WaterPerMass float64

// Of returns the flow that m is given at w.
func (w WaterPerMass) Of(m measure.Mass) measure.Flow {
	return measure.Flow(float64(w)*m.Kg()) * measure.LitrePerMinute
}

// Both writes w in both units, the shop's own first: "1.2 gpm/lb (10 L/min/kg)".
func (w WaterPerMass) Both(u measure.Unit) string {
	gpmPerPound := (measure.Flow(w) * measure.LitrePerMinute).GPM() * float64(measure.Pound)
	return both(u, gpmPerPound, "gpm/lb", float64(w), "L/min/kg")
}

// Litres a day and an hour as flows, in which seed's water is told.
const (
	litrePerHour = measure.LitrePerMinute / 60
	litrePerDay  = litrePerHour / 24
)

// both writes a in its unit and b in its, inches' side first for an inch shop.
func both(u measure.Unit, a float64, inch string, b float64, metric string) string {
	left, right := figures(a)+" "+inch, figures(b)+" "+metric
	if u == measure.UnitMM {
		left, right = right, left
	}
	return left + " (" + right + ")"
}

// figures writes x to three significant figures and never with an exponent.
func figures(x float64) string {
	switch {
	case math.IsNaN(x) || math.Abs(x) > 1e15:
		return "out of range"
	case math.Abs(x) >= 1000:
		return strconv.FormatFloat(x, 'f', 0, 64)
	}
	y, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 3, 64), 64)
	if err != nil {
		return "out of range"
	}
	return strconv.FormatFloat(y, 'f', -1, 64)
}

// number writes x for a message to ten figures, which hides the rounding of a
// change of units.
func number(x float64) string { return fmt.Sprintf("%.10g", x) }

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
