package rolls

import "math"

// twoBlocks is a run that begins with full columns spread over the width, each
// with a short column in its pockets, and goes on in full columns shifted from
// edge to edge. The first block is the closer in the long run or the second
// is; the two together give the counts that neither gives alone.
type twoBlocks struct {
	full   int     // discs in a full column
	spread float64 // of the discs in a full column of the first block
	near   float64 // pitch of a full and a short column there
	lean   float64 // pitch of a spread column and a last one after it
	tight  float64 // spacing of the discs in the second block
	shift  float64 // of every other column there
	pitch  float64 // of its columns
}

// mostFull bounds the columns that are tried in two blocks.
const mostFull = 100

// blockRuns are those for the fullest columns of the width and for a few with
// fewer discs, which a width just over a whole number of discs may want.
func blockRuns(w float64) []pattern {
	var all []pattern
	a := int(w+slack) + 1
	for full := a; full >= max(2, a-3) && full <= mostFull; full-- {
		steps := float64(full - 1)
		p := math.Max(1, w/steps)
		if p > 2 {
			break
		}
		t := twoBlocks{full: full, spread: p, near: height(p / 2), lean: height((p - 1) / 2)}
		if s := math.Max(0, w-steps); s < 0.5 {
			t.tight, t.shift = 1, s
		} else {
			t.tight = w / (steps + 0.5)
			t.shift = t.tight / 2
		}
		t.pitch = height(t.shift)
		all = append(all, t)
	}
	return all
}

// height is how far along two touching discs are when they are v apart across;
// at least ½, so that columns two apart are clear too.
func height(v float64) float64 {
	return math.Max(0.5, math.Sqrt(math.Max(0, 1-v*v)))
}

func (t twoBlocks) name() string { return "spread and shifted columns" }

// blocksOf says how a run is made up: so many short columns, one of them first
// or none, and so many columns in the second block.
type blocksOf struct {
	short  int
	before bool // a short column comes first
	second int
}

// split is the shortest make-up of n. As in columns, the extent changes by the
// same step each time the short ones grow by full, so the first few and the
// last few are tried.
func (t twoBlocks) split(n int) (best blocksOf, extent float64) {
	extent = math.Inf(1)
	try := func(s int) {
		for _, before := range []bool{false, true} {
			inFirst := s + 1 // full columns
			if before {
				inFirst = s
			}
			rest := n - s*(t.full-1) - inFirst*t.full
			if s < 1 || rest < 1 {
				continue
			}
			b := blocksOf{short: s, before: before, second: (rest + t.full - 1) / t.full}
			if e := t.over(b); e < extent-slack {
				best, extent = b, e
			}
		}
	}
	most := n / (2*t.full - 1)
	for s := 1; s <= min(t.full, most); s++ {
		try(s)
	}
	for s := max(t.full+1, most-t.full-1); s <= most; s++ {
		try(s)
	}
	return best, extent
}

// over is the extent of a make-up.
func (t twoBlocks) over(b blocksOf) float64 {
	links := 2 * b.short
	if b.before {
		links--
	}
	e := float64(links) * t.near
	if b.second == 1 {
		return e + t.lean
	}
	return e + 1 + float64(b.second-1)*t.pitch
}

func (t twoBlocks) extent(n int) float64 {
	_, e := t.split(n)
	return e
}

// points ends with what is left for the last column.
func (t twoBlocks) points(n int) []point {
	b, _ := t.split(n)
	points := make([]point, 0, n)
	column := func(x float64, m int, y func(j int) float64) {
		for j := 0; j < m && len(points) < n; j++ {
			points = append(points, point{x, y(j)})
		}
	}
	x := -t.near
	for i := range 2*b.short + 1 {
		isShort := i%2 == 1
		if b.before {
			if i == 2*b.short {
				break
			}
			isShort = !isShort
		}
		x += t.near
		if isShort {
			column(x, t.full-1, func(j int) float64 { return (float64(j) + 0.5) * t.spread })
		} else {
			column(x, t.full, func(j int) float64 { return float64(j) * t.spread })
		}
	}
	if b.second == 1 {
		// The lower discs lean up and the upper ones down, half of the room
		// that two neighbours of the spread column leave.
		half := (t.spread - 1) / 2
		column(x+t.lean, t.full, func(j int) float64 {
			if 2*j < t.full {
				return float64(j)*t.spread + half
			}
			return float64(j)*t.spread - half
		})
		return points
	}
	for i := range b.second {
		column(x+1+float64(i)*t.pitch, t.full, func(j int) float64 {
			return float64(j)*t.tight + float64(i%2)*t.shift
		})
	}
	return points
}
