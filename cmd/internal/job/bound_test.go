package job

import (
	"math"
	"strings"
	"testing"

	"silowright/geometry/measure"
)

// The ends of a range that a message allows are taken when they are typed: 1/32 in
// is not 1 mm, and 9/16 in not 15 mm.
func TestBoundsAreTaken(t *testing.T) {
	const low, high = 1 * measure.Millimetre, 15 * measure.Millimetre
	for _, c := range []struct {
		text string
		want string
	}{
		{bound(low, measure.UnitInch, math.Ceil), "0.04 in (1 mm)"},
		{bound(high, measure.UnitInch, math.Floor), "0.59 in (15 mm)"},
		{bound(measure.Inch/32, measure.UnitInch, math.Ceil), "1/32 in (0.8 mm)"},
		{bound(low, measure.UnitMM, math.Ceil), "1 mm (1/32 in)"},
	} {
		if c.text != c.want {
			t.Errorf("%q, want %q", c.text, c.want)
		}
		typed, _, _ := strings.Cut(c.text, " (")
		l, err := measure.ParseLength(typed, measure.UnitInch)
		if err != nil || c.want != "1/32 in (0.8 mm)" && (l < low || l > high) {
			t.Errorf("%q: %v mm, %v", typed, l.MM(), err)
		}
	}
}
