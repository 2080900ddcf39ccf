package measure

import "strconv"

// Quantity is a number with its unit, for places such as findings and reports
// where values of several kinds stand in one column. Unit is one of "mm",
// "mm²", "mL", "kg", "MPa", "°", "%", "" (a count or a ratio).
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

// Percent returns the ratio r as a percentage.
func Percent(r float64) Quantity { return Quantity{100 * r, "%"} }

// Text writes q for a reader who works in u: a length in both units, every
// other kind in its own unit with at most three significant decimals.
func (q Quantity) Text(u Unit) string {
	if q.Unit == "mm" {
		return Length(q.Value).Both(u)
	}
	s := strconv.FormatFloat(roundTo(q.Value, 2), 'f', -1, 64)
	switch q.Unit {
	case "":
		return s
	case "°", "%":
		return s + q.Unit
	}
	return s + " " + q.Unit
}
