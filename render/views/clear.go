package views

import (
	"math"
	"slices"

	"silowright/geometry/path"
	"silowright/render"
)

// breakAtWords breaks every narrow line where words stand, as ISO 129 breaks
// extension lines and hatching for lettering. Wide lines are left: words must
// keep off them.
func (d *sheet) breakAtWords() {
	var boxes [][4]path.Point
	for _, t := range d.Texts {
		if t.Words != "" {
			boxes = append(boxes, grown(t.Corners(), 0.5))
		}
	}
	var out []render.Stroke
	for _, s := range d.Strokes {
		if s.Layer == render.Outline || s.Layer == render.Cut {
			out = append(out, s)
			continue
		}
		near := meeting(s.Path.Bounds(), boxes)
		if len(near) == 0 {
			out = append(out, s)
			continue
		}
		for _, chain := range s.Path.Flatten(0.02) {
			for _, p := range without(chain, near) {
				out = append(out, render.Stroke{Layer: s.Layer, Path: p})
			}
		}
	}
	d.Strokes = out
}

// hide takes away what of the strokes from one on lies behind a part that is
// drawn next.
func (d *sheet) hide(from int, part [4]path.Point) {
	out := slices.Clone(d.Strokes[:from])
	for _, s := range d.Strokes[from:] {
		if len(meeting(s.Path.Bounds(), [][4]path.Point{part})) == 0 {
			out = append(out, s)
			continue
		}
		for _, chain := range s.Path.Flatten(0.02) {
			for _, p := range without(chain, [][4]path.Point{part}) {
				out = append(out, render.Stroke{Layer: s.Layer, Path: p})
			}
		}
	}
	d.Strokes = out
}

// grown moves a turned box's sides out by m.
func grown(q [4]path.Point, m length) [4]path.Point {
	ux, uy := unit(q[0], q[1])
	vx, vy := unit(q[0], q[3])
	by := [4][2]length{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}
	for i, s := range by {
		q[i] = path.Pt(q[i].X+m*(s[0]*ux+s[1]*vx), q[i].Y+m*(s[0]*uy+s[1]*vy))
	}
	return q
}

func unit(a, b path.Point) (x, y length) {
	l := length(math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y)))
	if l == 0 {
		return 0, 0
	}
	return (b.X - a.X) / l, (b.Y - a.Y) / l
}

func meeting(b path.Box, boxes [][4]path.Point) [][4]path.Point {
	var out [][4]path.Point
	for _, q := range boxes {
		lo, hi := q[0], q[0]
		for _, p := range q {
			lo, hi = path.Pt(min(lo.X, p.X), min(lo.Y, p.Y)), path.Pt(max(hi.X, p.X), max(hi.Y, p.Y))
		}
		if b.Max.X >= lo.X && b.Min.X <= hi.X && b.Max.Y >= lo.Y && b.Min.Y <= hi.Y {
			out = append(out, q)
		}
	}
	return out
}

// without is what is left of a chain outside the boxes.
func without(chain []path.Point, boxes [][4]path.Point) []path.Path {
	var out []path.Path
	var cur path.Path
	end := func() {
		if len(cur) > 1 {
			out = append(out, cur)
		}
		cur = nil
	}
	for i := 1; i < len(chain); i++ {
		a, b := chain[i-1], chain[i]
		at := func(t float64) path.Point {
			return path.Pt(a.X+(b.X-a.X)*length(t), a.Y+(b.Y-a.Y)*length(t))
		}
		free := [][2]float64{{0, 1}}
		for _, q := range boxes {
			if lo, hi, ok := within(a, b, q); ok {
				free = take(free, lo, hi)
			}
		}
		if len(free) == 0 {
			end()
		}
		for _, f := range free {
			if f[0] > 0 || len(cur) == 0 {
				end()
				cur.MoveTo(at(f[0]))
			}
			cur.LineTo(at(f[1]))
			if f[1] < 1 {
				end()
			}
		}
	}
	end()
	return out
}

// take cuts lo to hi out of a list of intervals.
func take(free [][2]float64, lo, hi float64) [][2]float64 {
	var out [][2]float64
	for _, f := range free {
		if hi <= f[0] || lo >= f[1] {
			out = append(out, f)
			continue
		}
		if lo > f[0] {
			out = append(out, [2]float64{f[0], lo})
		}
		if hi < f[1] {
			out = append(out, [2]float64{hi, f[1]})
		}
	}
	return out
}

// within is the part of a segment inside a counter-clockwise convex box.
func within(a, b path.Point, q [4]path.Point) (lo, hi float64, ok bool) {
	lo, hi = 0, 1
	for i := range q {
		c, e := q[i], q[(i+1)%4]
		nx, ny := float64(c.Y-e.Y), float64(e.X-c.X)
		from := nx*float64(a.X-c.X) + ny*float64(a.Y-c.Y)
		to := nx*float64(b.X-c.X) + ny*float64(b.Y-c.Y)
		switch {
		case from < 0 && to < 0:
			return 0, 0, false
		case from < 0:
			lo = max(lo, from/(from-to))
		case to < 0:
			hi = min(hi, from/(from-to))
		}
	}
	return lo, hi, lo < hi
}
