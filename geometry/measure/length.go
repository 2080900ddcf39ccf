package measure

import (
	"fmt"
	"math"
)

// Unit says which unit a bare number is in and which unit is written first.
type Unit int

// The two units a shop works in.
const (
	UnitInch Unit = iota
	UnitMM
)

// String returns the unit as the job file writes it: "in" or "mm".
func (u Unit) String() string {
	if u == UnitMM {
		return "mm"
	}
	return "in"
}

// Both writes l in both units, the shop's own first: "10 1/2 in (266.7 mm)"
// or "266.7 mm (10 1/2 in)". Inches are to the nearest 1/16 and under half an
// inch to the nearest 1/32, mm to 0.1; what is too small for that is written in
// thousandths of an inch and hundredths of a millimetre, or finer where those
// would say nothing: "0.006 in (0.15 mm)". A length that is no number or longer
// than a kilometre is written as "out of range".
func (l Length) Both(u Unit) string { return l.text(u, 0) }

// text is Both, with so many figures more in thousandths of an inch and tenths
// of a millimetre and finer.
func (l Length) text(u Unit, more int) string {
	switch {
	case !l.printable():
		return outOfRange
	case more > 0:
		return both(u, Number(l.Inches(), 2+more)+" in", Number(l.MM(), 1+more)+" mm")
	}
	return both(u, l.inchText()+" in", l.mmText()+" mm")
}

// In writes l in u alone, with the unit and as Both does: "10 1/2 in" or
// "266.7 mm".
func (l Length) In(u Unit) string {
	switch {
	case !l.printable():
		return outOfRange
	case u == UnitMM:
		return l.mmText() + " mm"
	}
	return l.inchText() + " in"
}

// outOfRange stands in print for a number that no drum has.
const outOfRange = "out of range"

// printable reports whether l is a number and within a kilometre.
func (l Length) printable() bool { return l.Finite() && l.Abs() <= 1000*Metre }

// inchText is Inch(16), under half an inch Inch(32), and thousandths where a
// fraction would be off by more than a quarter of the length.
func (l Length) inchText() string {
	den := 16
	if l.Abs() < Inch/2 {
		den = 32
	}
	if _, off := l.Round(den); off.Abs() > l.Abs()/4 {
		return Number(l.Inches(), 3)
	}
	return l.Inch(den)
}

// mmText is Metric, or hundredths under half a millimetre.
func (l Length) mmText() string {
	if l.Abs() < Millimetre/2 {
		return Number(l.MM(), 2)
	}
	return l.Metric()
}

// Tape writes l as the coarsest of 1/16, 1/32 and 1/64 in that tells it truly,
// to two micrometres, as Inch does; ok is whether one does.
func (l Length) Tape() (s string, ok bool) {
	for _, den := range []int{16, 32, 64} {
		if _, off := l.Round(den); off.Abs() < 0.002 {
			return l.Inch(den), true
		}
	}
	return l.Inch(16), false
}

// Metric writes l in mm to one decimal without trailing zeros and without the
// unit: "266.7", "900".
func (l Length) Metric() string {
	if !l.printable() {
		return outOfRange
	}
	return decimals(l.MM(), 1)
}

// Inch writes l in inches as a shop writes them, to the nearest 1/den in
// (den from 1 to 1024), reduced, without the unit: "10 1/2", "3/16", "-1/8".
func (l Length) Inch(den int) string {
	if !l.printable() {
		return outOfRange
	}
	d := int64(rulerDen(den))
	n := int64(math.Round(l.Inches() * float64(d)))
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	whole, n := n/d, n%d
	g := gcd(n, d)
	n, d = n/g, d/g
	switch {
	case n == 0:
		return fmt.Sprintf("%s%d", sign, whole)
	case whole == 0:
		return fmt.Sprintf("%s%d/%d", sign, n, d)
	}
	return fmt.Sprintf("%s%d %d/%d", sign, whole, n, d)
}

// Round returns l rounded to the nearest 1/den in (den from 1 to 1024), and
// the error of the rounding (rounded − l).
func (l Length) Round(den int) (Length, Length) {
	d := float64(rulerDen(den))
	r := Inch * Length(math.Round(l.Inches()*d)/d)
	return r, r - l
}

// rulerDen keeps a ruler's division within what Inch and Round can write.
func rulerDen(den int) int { return min(max(den, 1), 1024) }

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// ParseUnit reads "in" or "mm".
func ParseUnit(s string) (Unit, error) {
	switch s {
	case "in":
		return UnitInch, nil
	case "mm":
		return UnitMM, nil
	}
	return UnitInch, fmt.Errorf("%q is not a unit; hint: in or mm", s)
}
