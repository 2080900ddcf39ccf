package rolls

import (
	"math"
	"slices"
)

// triangles are triangles of the hexagonal lattice, k discs to a side, that
// stand on one edge of the strip and hang from the other in turn; each is off
// the last by the width that k hexagonal rows leave, and moves up by what that
// slant saves. With k = 2 they are triples. A run may begin with any number of
// hexagonal columns before the first triangle, and end anywhere.
//
// The pattern is J. Molnár's (Packing of congruent spheres in a strip, Acta
// Mathematica Hungarica 31, 1978); Z. Füredi (The densest packing of equal
// circles into a parallel strip, Discrete & Computational Geometry 6, 1991)
// proved that of two rows the densest for long runs. Both are cited from
// memory; the lengths below are worked out in closed form.
type triangles struct {
	k      int
	gap    float64 // width beyond k hexagonal rows
	step   float64 // from a disc to its neighbour in the next triangle, along
	lead   float64 // where the standing block that begins the run ends, in row 0
	period float64 // of two triangles
	each   int     // discs in a period
	head   []point // enough of the run, in order along it, to know the rest
	starts int     // the first of the run may be any of so many
}

// mostRows bounds the triangles that are tried: what they save on hexagonal
// rows is less than one part in so many.
const mostRows = 24

// triangleRun is false when fewer than two hexagonal rows fit, when the rows
// fill the width, or when there are more than mostRows.
func triangleRun(w float64) (pattern, bool) {
	row := math.Sqrt(3) / 2
	k := int(w/row+slack) + 1
	g := w - float64(k-1)*row
	if k < 2 || k > mostRows || g < slack {
		return nil, false
	}
	return newTriangles(k, g), true
}

func newTriangles(k int, g float64) *triangles {
	t := &triangles{k: k, gap: g, step: math.Sqrt(1 - g*g), lead: float64(3*k + 2), each: k * (k + 1)}
	t.period = float64(k-1) + 2*t.step
	all := t.build(4)
	// All rows are laid, and repeat, from the end of the lead on.
	from := 0
	for all[from].x < t.lead {
		from++
	}
	t.starts = from + t.each
	t.head = all[:t.starts+t.each]
	return t
}

// build lays the lead and so many periods after it, in order along the run.
func (t *triangles) build(periods int) []point {
	row := math.Sqrt(3) / 2
	var all []point
	for i := 0; i < t.k; i++ {
		y, half := float64(i)*row, float64(i)/2
		for x := float64(i%2) / 2; x < t.lead-half+0.25; x++ {
			all = append(all, point{x, y})
		}
		for m := 0; m < periods; m++ {
			x := t.lead + float64(m)*t.period
			for j := 0; j <= i; j++ {
				all = append(all, point{x + t.step - half + float64(j), y + t.gap})
			}
			for j := 0; j < t.k-i; j++ {
				all = append(all, point{x + 2*t.step + half + float64(j), y})
			}
		}
	}
	slices.SortFunc(all, func(a, b point) int {
		switch {
		case a.x < b.x || a.x == b.x && a.y < b.y:
			return -1
		case a.x > b.x || a.y > b.y:
			return 1
		}
		return 0
	})
	return all
}

func (t *triangles) name() string {
	if t.k == 2 {
		return "triples"
	}
	return "triangles"
}

// at is the X of the i-th disc of the endless run.
func (t *triangles) at(i int) float64 {
	if i < len(t.head) {
		return t.head[i].x
	}
	m := (i-len(t.head))/t.each + 1
	return t.head[i-m*t.each].x + float64(m)*t.period
}

// start is the disc with which the shortest run of n begins.
func (t *triangles) start(n int) (int, float64) {
	best, extent := 0, math.Inf(1)
	for i := 0; i < t.starts; i++ {
		if e := t.at(i+n-1) - t.head[i].x; e < extent-slack {
			best, extent = i, e
		}
	}
	return best, extent
}

func (t *triangles) extent(n int) float64 {
	_, e := t.start(n)
	return e
}

func (t *triangles) points(n int) []point {
	from, _ := t.start(n)
	all := t.build((from+n)/t.each + 2)[from : from+n]
	x := all[0].x
	for i := range all {
		all[i].x -= x
	}
	return all
}
