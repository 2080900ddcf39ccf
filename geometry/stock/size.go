package stock

import (
	"strings"

	"silowright/geometry/measure"
)

// NormalSize writes a nominal size as the tables do: "1-1/2", "1½", "1.5" and
// `1 1/2 in` become "1 1/2", "110 mm" becomes "110". What it cannot read it
// returns without the blanks round it.
func NormalSize(size string) string {
	s := strings.TrimSpace(size)
	if n, metric := strings.CutSuffix(strings.ToLower(s), "mm"); metric {
		s = strings.TrimSpace(n)
	}
	l, err := measure.ParseLength(s, measure.UnitInch)
	if err != nil {
		return s
	}
	rounded, off := l.Round(16)
	if off.Abs() > 1e-6 || rounded == 0 {
		return s // 1.9 is an outside, not a nominal size
	}
	return rounded.Inch(16)
}
