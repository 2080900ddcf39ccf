package measure

import (
	"math"
	"strings"
)

// Quantity is a number with its unit, for places such as findings and reports
// where values of several kinds stand in one column. Unit is one of "mm",
// "m" (a head or a lift), "mm²", "mL", "kg", "MPa", "L/min", "mm/s", "kPa", "kWh",
// "°", "%", "" (a count or a ratio).
type Quantity struct {
	Value float64 `json:"value"`
	Unit  string  `json:"unit"`
}

// Quantity returns l as a number of millimetres.
func (l Length) Quantity() Quantity { return Quantity{float64(l), "mm"} }

// Head returns l, a head of water or a lift, as a number of metres, which are told
// in feet and metres as on a pump's plate.
func (l Length) Head() Quantity { return Quantity{l.Metres(), "m"} }

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
func (q Quantity) Text(u Unit) string { return q.text(u, 0) }

// text is Text with so many figures more.
func (q Quantity) text(u Unit, more int) string {
	if !bulk(q.Value) {
		return outOfRange
	}
	switch q.Unit {
	case "mm":
		return Length(q.Value).text(u, more)
	case "m":
		return (Length(q.Value) * Metre).long(u, more)
	case "mm²":
		return Area(q.Value).pair().text(u, more)
	case "mL":
		return (Volume(q.Value) * Millilitre).pair().text(u, more)
	case "kg":
		return Mass(q.Value).pair().text(u, more)
	case "MPa":
		return Stress(q.Value).pair().text(u, more)
	case "L/min":
		return (Flow(q.Value) * LitrePerMinute).pair().text(u, more)
	case "mm/s":
		return Speed(q.Value).pair().text(u, more)
	case "kPa":
		return Pressure(q.Value*1000).pair().text(u, more)
	case "kWh":
		return figures(q.Value, more) + " kWh"
	case "", "°", "%":
		return Number(q.Value, 2+more) + q.Unit
	}
	return Number(q.Value, 2+more) + " " + q.Unit
}

// Apart writes two quantities that are held against each other, as Text does,
// and finer where the shop's own unit would read the same of both while they
// are not: "27.75 mm (1.093 in)" beside "27.79 mm (1.094 in)".
func Apart(a, b Quantity, u Unit) (string, string) {
	return apart(a, b, func(q Quantity, more int) string { return q.text(u, more) })
}

// ApartLong is Apart of heads and runs of pipe, in feet and metres.
func ApartLong(a, b Length, u Unit) (string, string) {
	return apart(a.Quantity(), b.Quantity(), func(q Quantity, more int) string { return Length(q.Value).long(u, more) })
}

// ApartPercent is Apart of two shares of one, as Percent writes them: "89.96 %"
// beside "90 %".
func ApartPercent(a, b float64) (string, string) {
	return apart(Quantity{100 * a, "%"}, Quantity{100 * b, "%"}, func(q Quantity, more int) string { return Number(q.Value, more) + " %" })
}

// apart writes two quantities by write, with as many figures more as tell them
// apart.
func apart(a, b Quantity, write func(q Quantity, more int) string) (string, string) {
	s, t := write(a, 0), write(b, 0)
	if a.Unit != b.Unit || !(math.Abs(a.Value-b.Value) > alike*math.Max(math.Abs(a.Value), math.Abs(b.Value))) {
		return s, t
	}
	for more := 1; more <= mostFigures && own(s) == own(t); more++ {
		s, t = write(a, more), write(b, more)
	}
	return s, t
}

// alike is the part of itself by which a quantity may differ for being written
// in other units and worked on; mostFigures tell two apart that differ by more.
const (
	alike       = 1e-9
	mostFigures = 9
)

// own is what stands first of two units.
func own(text string) string {
	first, _, _ := strings.Cut(text, " (")
	return first
}
