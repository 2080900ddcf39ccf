package render

import (
	"fmt"

	"silowright/geometry/path"
)

// Overlaps names every pair of words that run into each other and every line
// that runs through words. It is empty for a clean drawing. Words on a fill
// laid under them for the purpose still count: the line is to stop.
func Overlaps(d Drawing) []string {
	var out []string
	boxes := make([][4]path.Point, len(d.Texts))
	for i, t := range d.Texts {
		boxes[i] = t.Corners()
	}
	for i := range boxes {
		for j := i + 1; j < len(boxes); j++ {
			if boxesMeet(boxes[i], boxes[j]) {
				out = append(out, fmt.Sprintf("%q runs into %q", d.Texts[i].Words, d.Texts[j].Words))
			}
		}
	}
	for _, s := range d.Strokes {
		b := s.Path.Bounds()
		for i, box := range boxes {
			if t := d.Texts[i]; t.Words == "" || apart(b, box) {
				continue
			}
			if crosses(s.Path, box) {
				out = append(out, fmt.Sprintf("a %s line runs through %q", s.Layer.Group(), d.Texts[i].Words))
			}
		}
	}
	return out
}

func apart(b path.Box, q [4]path.Point) bool {
	lo, hi := q[0], q[0]
	for _, p := range q {
		lo = path.Pt(min(lo.X, p.X), min(lo.Y, p.Y))
		hi = path.Pt(max(hi.X, p.X), max(hi.Y, p.Y))
	}
	return b.Max.X < lo.X || b.Min.X > hi.X || b.Max.Y < lo.Y || b.Min.Y > hi.Y
}

func crosses(p path.Path, box [4]path.Point) bool { return traced(p).meets(box) }

// trace is a line in straight pieces, and the box round it.
type trace struct {
	box    path.Box
	chains [][]path.Point
}

func traced(p path.Path) trace { return trace{p.Bounds(), p.Flatten(0.05)} }

// meets reports whether the line runs through a box.
func (t trace) meets(box [4]path.Point) bool {
	if apart(t.box, box) {
		return false
	}
	for _, chain := range t.chains {
		for i := 1; i < len(chain); i++ {
			if segmentMeets(chain[i-1], chain[i], box) {
				return true
			}
		}
	}
	return false
}

// segmentMeets clips the segment by the box's four sides.
func segmentMeets(a, b path.Point, q [4]path.Point) bool {
	t0, t1 := 0.0, 1.0
	for i := range q {
		c, e := q[i], q[(i+1)%4]
		nx, ny := float64(c.Y-e.Y), float64(e.X-c.X) // inward for a counter-clockwise box
		from := nx*float64(a.X-c.X) + ny*float64(a.Y-c.Y)
		to := nx*float64(b.X-c.X) + ny*float64(b.Y-c.Y)
		switch {
		case from < 0 && to < 0:
			return false
		case from < 0:
			t0 = max(t0, from/(from-to))
		case to < 0:
			t1 = min(t1, from/(from-to))
		}
	}
	return t0 < t1
}

// boxesMeet tells whether two turned boxes overlap, by looking for a side of
// one that has the other wholly outside.
func boxesMeet(a, b [4]path.Point) bool {
	return !splits(a, b) && !splits(b, a)
}

func splits(a, b [4]path.Point) bool {
	const touch = 0.02
	for i := range a {
		c, e := a[i], a[(i+1)%4]
		nx, ny := float64(c.Y-e.Y), float64(e.X-c.X)
		outside := true
		for _, p := range b {
			if nx*float64(p.X-c.X)+ny*float64(p.Y-c.Y) > touch {
				outside = false
			}
		}
		if outside {
			return true
		}
	}
	return false
}
