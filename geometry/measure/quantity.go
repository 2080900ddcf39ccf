package measure

import "math"

// Quantity is a number with its unit, for places such as findings and reports
// where values of several kinds stand in one column. Unit is one of "mm",
// "mm²", "mL", "kg", "MPa", "L/min", "mm/s", "kPa", "kWh", "°", "%", "" (a count or a ratio).
type Quantity struct {
	Value float64 `json:"value"`
	Unit  string  `json:"unit"`
}

// Quantity returns l as a number of millimetres.
func (l Length) Quantity() Quantity { return Quantity{float64(l), "mm"} }

// Quantity returns a as a number of square millimetres.
func (a Area) Quantity() Quantity { return Quantity{float64(a), "mm²"} }

// Quantity returns v as a number of millilitres.
func (v Volume) Quantity() Quantity { return Quantity{v.ML(), "mL"} }

// Quantity returns m as a number of kilograms.
func (m Mass) Quantity() Quantity { return Quantity{float64(m), "kg"} }

// Quantity returns s as a number of megapascals.
func (s Stress) Quantity() Quantity { return Quantity{float64(s), "MPa"} }

// Count returns n as a unitless quantity.
func Count(n int) Quantity { return Quantity{float64(n), ""} }

// Text writes q for a reader who works in u: lengths, areas, volumes, masses
// and stresses in both units, the reader's first; angles, ratios and counts to
// two decimals. What is not nothing is never written as 0. A value that is no number is written as "out of range".
func (q Quantity) Text(u Unit) string {
	if !finite(q.Value) || math.Abs(q.Value) > 1e15 {
		return outOfRange
	}
	switch q.Unit {
	case "mm":
		return Length(q.Value).Both(u)
	case "mm²":
		return Area(q.Value).Both(u)
	case "mL":
		return (Volume(q.Value) * Millilitre).Both(u)
	case "kg":
		return Mass(q.Value).Both(u)
	case "MPa":
		return Stress(q.Value).Both(u)
	case "L/min":
		return (Flow(q.Value) * LitrePerMinute).Both(u)
	case "mm/s":
		return Speed(q.Value).Both(u)
	case "kPa":
		return Pressure(q.Value * 1000).Both(u)
	case "", "°", "%":
		return Number(q.Value, 2) + q.Unit
	case "kWh":
		return figures(q.Value) + " kWh"
	}
	return Number(q.Value, 2) + " " + q.Unit
}
