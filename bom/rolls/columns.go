package rolls

import "math"

// columns are full columns, their discs touching, on a strip that leaves less
// than half a disc: neighbours are shifted by what is left, one to each edge,
// which brings them a little closer than square rows. A short column, one disc
// less, may stand in the pockets between two full ones at the hexagonal pitch:
// so many of them as make the run shortest.
type columns struct {
	full  int     // discs in a full column
	shift float64 // what the width leaves
	pitch float64 // of two full columns
}

// pocket is the pitch of a full column and a short one.
var pocket = math.Sqrt(3) / 2

// shiftedColumns is false when one disc fills the width, for then they are the
// zigzag, and when half a disc or more is left: hexagonal columns are closer.
func shiftedColumns(w float64) (pattern, bool) {
	a := int(w+slack) + 1
	s := math.Max(0, w-float64(a-1))
	if a < 2 || s >= 0.5 {
		return nil, false
	}
	return columns{full: a, shift: s, pitch: math.Sqrt(1 - s*s)}, true
}

func (c columns) name() string { return "shifted columns" }

// short is the number of short columns that makes the run of n shortest.
//
// With S short ones and F = ⌈(n − (full−1)·S)/full⌉ full ones, S ≤ F + 1, the
// extent changes by the same step each time S grows by full, as long as every
// short one stands between two full ones (S < F). So the best is among the
// first few S or the last few, and a count does not depend on n.
func (c columns) short(n int) (short int, extent float64) {
	most := n/(2*c.full-1) + 2 // S ≤ F + 1 holds for no more
	extent = math.Inf(1)
	try := func(s int) {
		if s < 0 {
			return
		}
		if e, ok := c.with(n, s); ok && e < extent-slack {
			short, extent = s, e
		}
	}
	for s := 0; s <= min(c.full, most); s++ {
		try(s)
	}
	for s := max(c.full+1, most-c.full-4); s <= most; s++ {
		try(s)
	}
	return short, extent
}

// with is the extent of n with s short columns.
func (c columns) with(n, s int) (float64, bool) {
	f := max(0, (n-(c.full-1)*s+c.full-1)/c.full)
	if s > f+1 || f == 0 {
		return 0, false
	}
	links := f + s - 1
	near := min(2*s, links)
	return float64(near)*pocket + float64(links-near)*c.pitch, true
}

func (c columns) extent(n int) float64 {
	_, e := c.short(n)
	return e
}

// points puts the short columns first, each after a full one, but for the one
// too many that begins the run when there are more short than full.
func (c columns) points(n int) []point {
	short, _ := c.short(n)
	points := make([]point, 0, n)
	column := func(x, y float64, m int) bool {
		for i := 0; i < m; i++ {
			if points = append(points, point{x, y + float64(i)}); len(points) == n {
				return true
			}
		}
		return false
	}
	f := max(0, (n-(c.full-1)*short+c.full-1)/c.full)
	x, y := 0.0, 0.0
	if short == f+1 {
		if column(x, 0.5, c.full-1) {
			return points
		}
		x, short = pocket, short-1
	}
	for {
		if column(x, y, c.full) {
			return points
		}
		if short == 0 {
			x, y = x+c.pitch, c.shift-y
			continue
		}
		if column(x+pocket, y+0.5, c.full-1) {
			return points
		}
		x, short = x+2*pocket, short-1
	}
}
