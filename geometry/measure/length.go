package measure

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
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
// or "266.7 mm (10 1/2 in)". Inches are to the nearest 1/16, mm to 0.1.
func (l Length) Both(u Unit) string {
	if u == UnitMM {
		return l.Metric() + " mm (" + l.Inch(16) + " in)"
	}
	return l.Inch(16) + " in (" + l.Metric() + " mm)"
}

// In writes l in u alone, with the unit: "10 1/2 in" or "266.7 mm".
func (l Length) In(u Unit) string {
	if u == UnitMM {
		return l.Metric() + " mm"
	}
	return l.Inch(16) + " in"
}

// Metric writes l in mm to one decimal without trailing zeros and without the
// unit: "266.7", "900".
func (l Length) Metric() string {
	return strconv.FormatFloat(roundTo(float64(l), 1), 'f', -1, 64)
}

// Inch writes l in inches as a shop writes them, to the nearest 1/den in
// (den a power of two), reduced, without the unit: "10 1/2", "3/16", "-1/8".
func (l Length) Inch(den int) string {
	n := int64(math.Round(l.Inches() * float64(den)))
	if n == 0 {
		return "0"
	}
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	d := int64(den)
	whole, n := n/d, n%d
	for n != 0 && n%2 == 0 {
		n, d = n/2, d/2
	}
	switch {
	case n == 0:
		return fmt.Sprintf("%s%d", sign, whole)
	case whole == 0:
		return fmt.Sprintf("%s%d/%d", sign, n, d)
	}
	return fmt.Sprintf("%s%d %d/%d", sign, whole, n, d)
}

// Round returns l rounded to the nearest 1/den in, and the error of the
// rounding (rounded − l).
func (l Length) Round(den int) (Length, Length) {
	r := Inch * Length(math.Round(l.Inches()*float64(den))/float64(den))
	return r, r - l
}

func roundTo(x float64, places int) float64 {
	p := math.Pow(10, float64(places))
	r := math.Round(x*p) / p
	if r == 0 {
		return 0 // never "-0"
	}
	return r
}

// ErrLength is wrapped by every error of ParseLength.
var ErrLength = errors.New("not a length")

// ParseLength reads a length as a shop writes it. A number without a unit is
// in bare. To be written by hand: "34 3/4", "10-1/2 in", "883 mm", "88.3 cm",
// "2 ft 10 3/4 in", "2' 10 3/4\"", "1.9", ".5", "⅛".
func ParseLength(s string, bare Unit) (Length, error) {
	s = strings.TrimSpace(s)
	f, err := strconv.ParseFloat(s, 64)
	if err != nil || !finite(f) {
		return 0, fmt.Errorf("%q: %w", s, ErrLength)
	}
	if bare == UnitMM {
		return Length(f), nil
	}
	return Length(f) * Inch, nil
}
