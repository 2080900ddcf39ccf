package views

import (
	"math"

	"silowright/geometry/path"
)

// plan gives a round part seen from above its place in a box: notes stand in a
// column at the right, level dimensions below and lines of words at the foot.
type plan struct {
	view
	scale scale
	notes path.Box
	low   length // under the part
	words path.Box
}

// planIn lays a part across wide out in b.
func (d *sheet) planIn(b path.Box, name string, across length, spans int, lines ...string) plan {
	room := boxW(b)
	col := max(46, room*0.28)
	side := b
	foot := listTall(room-2, lines...)
	low := foot + 3 + length(spans)*tier + 2
	in := inner(b, 2, col+5, 9, low)
	sc := fit(across, across, boxW(in), boxH(in), 1)
	side = d.heading(b, name, sc)
	r := across / 2 * length(sc.k)
	spare := max(0, boxH(in)-2*r)
	c := path.Pt(in.Min.X+max(r, boxW(in)/2), in.Max.Y-r-spare*0.4)
	p := plan{view: view{sc.k, c}, scale: sc, low: c.Y - r}
	bottom := p.low - length(spans)*tier - 5
	p.notes = path.Box{Min: path.Pt(b.Max.X-col, min(bottom, c.Y-r)), Max: path.Pt(b.Max.X, side.Max.Y)}
	p.words = path.Box{Min: path.Pt(b.Min.X+1, b.Min.Y), Max: path.Pt(b.Max.X-1, bottom)}
	return p
}

func (d *sheet) planNotes(p plan, items []note) {
	d.notes(p.notes.Min.X, 1, boxW(p.notes), p.notes.Min.Y, p.notes.Max.Y, items)
}

// polar is the point at a radius and an angle in radians.
func polar(r length, a float64) path.Point {
	return path.Pt(r*length(math.Cos(a)), r*length(math.Sin(a)))
}

func radius(p path.Point) length { return length(math.Hypot(float64(p.X), float64(p.Y))) }
