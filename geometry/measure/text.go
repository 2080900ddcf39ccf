package measure

import (
	"math"
	"strconv"
)

// pair is a quantity in both units; one without an inch unit is told in the
// metric one alone.
type pair struct {
	inch       float64
	inchUnit   string
	metric     float64
	metricUnit string
}

// text writes p, the shop's own unit first, to so many figures more than three.
func (p pair) text(u Unit, more int) string {
	switch {
	case !bulk(p.inch) || !bulk(p.metric):
		return outOfRange
	case p.inchUnit == "":
		return figures(p.metric, more) + " " + p.metricUnit
	}
	return both(u, figures(p.inch, more)+" "+p.inchUnit, figures(p.metric, more)+" "+p.metricUnit)
}

// Both writes a in both units, the shop's own first, to three figures:
// "35.2 in² (227 cm²)". Under a square centimetre it writes mm².
func (a Area) Both(u Unit) string { return a.pair().text(u, 0) }

func (a Area) pair() pair {
	if math.Abs(float64(a)) < 100 {
		return pair{a.SquareInches(), "in²", a.MM2(), "mm²"}
	}
	return pair{a.SquareInches(), "in²", a.MM2() / 100, "cm²"}
}

// Both writes v in both units, the shop's own first, to three figures:
// "55 US gal (208 L)", and under a litre "10.1 fl oz (299 mL)" (US fluid
// ounces).
func (v Volume) Both(u Unit) string { return v.pair().text(u, 0) }

func (v Volume) pair() pair {
	if math.Abs(float64(v)) < float64(Litre) {
		return pair{float64(v / USFluidOunce), "fl oz", v.ML(), "mL"}
	}
	return pair{v.Gallons(), "US gal", v.Litres(), "L"}
}

// Both writes m in both units, the shop's own first, to three figures:
// "51 lb (23.1 kg)"; under 50 g in ounces and grams, and under a tenth of a
// gram, as single seeds are, in milligrams alone, "0.21 mg".
func (m Mass) Both(u Unit) string { return m.pair().text(u, 0) }

func (m Mass) pair() pair {
	switch g := m.Kg() * 1000; {
	case g != 0 && math.Abs(g) < 0.1:
		return pair{metric: g * 1000, metricUnit: "mg"}
	case g != 0 && math.Abs(g) < 50:
		return pair{m.Pounds() * 16, "oz", g, "g"}
	}
	return pair{m.Pounds(), "lb", m.Kg(), "kg"}
}

// Both writes s in both units, the shop's own first, to three figures:
// "800 psi (5.52 MPa)".
func (s Stress) Both(u Unit) string { return s.pair().text(u, 0) }

func (s Stress) pair() pair { return pair{float64(s / PSI), "psi", s.MPa(), "MPa"} }

// bulk reports whether x is a number that can be printed in full.
func bulk(x float64) bool { return finite(x) && math.Abs(x) <= 1e15 }

// both puts the shop's own unit first and the other in brackets.
func both(u Unit, inch, metric string) string {
	if u == UnitMM {
		return metric + " (" + inch + ")"
	}
	return inch + " (" + metric + ")"
}

// figures writes x to three figures and so many more, whole numbers in full, and
// finer than a thousandth only where that would say nothing: "1550", "35.2",
// "0.05".
func figures(x float64, more int) string {
	switch a := math.Abs(x); {
	case a >= 100:
		return decimals(x, more)
	case a >= 10:
		return decimals(x, 1+more)
	case a >= 1:
		return decimals(x, 2+more)
	}
	return Number(x, 3+more)
}

// rounding is what the reckoning itself may leave of nothing: a number no
// larger, in the unit it is written in, is written as 0.
const rounding = 1e-9

// Number writes x to so many places, without trailing zeros, and to two figures
// where so many places would write as 0 what is not nothing: "62", "0.004".
func Number(x float64, places int) string {
	if !bulk(x) {
		return outOfRange
	}
	s := decimals(x, places)
	if s != "0" || math.Abs(x) <= rounding {
		return s
	}
	return decimals(x, 1-int(math.Floor(math.Log10(math.Abs(x)))))
}

// Percent writes a share of one in whole per cent, finer as Number does:
// "62 %", "0.4 %".
func Percent(share float64) string { return Number(100*share, 0) + " %" }

// decimals writes x to at most so many places, without trailing zeros and
// never as "-0". Halves go away from zero; the part in 10¹² on top is for
// halves that binary holds a hair too small, as 3/4 in = 19.05 mm.
func decimals(x float64, places int) string {
	p := math.Pow(10, float64(places))
	r := math.Round(x*p*(1+1e-12)) / p
	if r == 0 {
		return "0"
	}
	return strconv.FormatFloat(r, 'f', -1, 64)
}
