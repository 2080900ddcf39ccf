package render

import (
	"fmt"
	"strconv"
	"strings"
)

// Stretch is by how much template sheets are drawn larger, along each axis, so
// that a printer that does not print true gives true size. The zero Stretch is
// none.
type Stretch struct{ x, y float64 }

// The side of the square on the check page, and what it may measure when
// printed: outside that something other than the printer is wrong.
const (
	checkSquare               = 100.0
	leastPrinted, mostPrinted = 90.0, 110.0
)

// PrintedAs reads what the 100 mm check square measured, across and up:
// "99.4x100.3", mm.
func PrintedAs(s string) (Stretch, error) {
	bad := func(why string) (Stretch, error) {
		return Stretch{}, fmt.Errorf("%q %s, allowed %g to %g mm each; hint: what the 100 mm square measures, across then up, as in 99.4x100.3", s, why, leastPrinted, mostPrinted)
	}
	a, b, ok := strings.Cut(strings.ToLower(s), "x")
	if !ok {
		return bad("is not two measures")
	}
	x, errX := strconv.ParseFloat(strings.TrimSpace(a), 64)
	y, errY := strconv.ParseFloat(strings.TrimSpace(b), 64)
	if errX != nil || errY != nil {
		return bad("is not two numbers")
	}
	if !(x >= leastPrinted && x <= mostPrinted && y >= leastPrinted && y <= mostPrinted) {
		return bad("is out of range")
	}
	return Stretch{checkSquare / x, checkSquare / y}, nil
}

// across is the factor across; 1 for none.
func (s Stretch) across() float64 { return orOne(s.x) }

// up is the factor up; 1 for none.
func (s Stretch) up() float64 { return orOne(s.y) }

func orOne(k float64) float64 {
	if k == 0 {
		return 1
	}
	return k
}

// none reports whether nothing is stretched.
func (s Stretch) none() bool { return s.across() == 1 && s.up() == 1 }

// String says what was done, for the foot of a sheet; empty for none.
func (s Stretch) String() string {
	if s.none() {
		return ""
	}
	return fmt.Sprintf("print at 100 %%: drawn × %.4f across, × %.4f up for the printer measured", s.across(), s.up())
}
