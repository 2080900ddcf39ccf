package views

import (
	"silowright/geometry"
	"silowright/geometry/path"
	"silowright/render"
)

// drawPipeJoints draws the joints pipe goes through, outlet and inlet, in section.
func drawPipeJoints(s geometry.Silo, size Size) render.Drawing {
	d := begin(s, size, "Outlet and inlet", "joints in section")
	one, two := d.halves(0.52)
	return d.finish(named(d.wallJoint(one, s.Outlet, "Outlet"), d.wallJoint(two, s.Inlet, "Inlet")))
}

// drawFootJoints draws the drain, and the ring with mesh, screw and sealant, in
// section.
func drawFootJoints(s geometry.Silo, size Size) render.Drawing {
	d := begin(s, size, "Drain and ring", "joints in section")
	one, two := d.halves(0.45)
	return d.finish(named(d.wallJoint(one, s.Drain, "Drain"), d.ringJoint(two, s)))
}

// halves divides the sheet for two details: side by side when it lies wide.
func (d *sheet) halves(f float64) (one, two path.Box) {
	if boxW(d.area) > boxH(d.area)*1.15 {
		return columns(d.area, 0.5, 8)
	}
	return rows(d.area, f, 4)
}

// wallJoint draws a joint in the level section through its middle: the wall
// curves, outside to the right.
func (d *sheet) wallJoint(b path.Box, h geometry.Hole, name string) scale {
	return drawingOf(h).detail(d, b, h, name)
}

// cutWall draws the curved wall beside a hole, its outside at x = 0 in the
// middle, as far as y on both sides.
func (d *sheet) cutWall(v view, h geometry.Hole, y length) {
	for _, s := range []length{1, -1} {
		d.section(wallArc(h, s*h.Diameter/2, s*y).Transform(v.to()), h.Wall*length(v.k), hatchAngle)
	}
}

// wallArc is the cut wall between two distances from the hole's middle.
func wallArc(h geometry.Hole, y1, y2 length) path.Path {
	const steps = 12
	at := func(r length, i int) path.Point {
		y := y1 + (y2-y1)*length(i)/steps
		return path.Pt(-(h.Radius-r)-geometry.Sagitta(r, 2*y.Abs()), y)
	}
	var pts []path.Point
	for i := range steps + 1 {
		pts = append(pts, at(h.Radius, i))
	}
	for i := steps; i >= 0; i-- {
		pts = append(pts, at(h.Radius-h.Wall, i))
	}
	return path.Polygon(pts...)
}

// detail lays a joint out in a box: the drawing at the left, notes at the
// right. The model reaches from x1 to x2 and half up and down.
func (d *sheet) detail(b path.Box, name string, x1, x2, low, high length, spans int, most float64) (view, scale, path.Box) {
	col := max(44, boxW(b)*0.4)
	in := inner(b, 4, col+6, 7, length(spans)*tier+2)
	sc := fit(x2-x1, high-low, boxW(in), boxH(in), most)
	k := length(sc.k)
	words := d.heading(b, name, sc)
	v := view{sc.k, path.Pt(midX(in)-(x1+x2)/2*k, midY(in)-(low+high)/2*k)}
	words.Min.X = max(b.Max.X-col, v.x(x2)+5)
	words.Max.X = b.Max.X
	return v, sc, words
}

func (d *sheet) detailNotes(words path.Box, items ...note) {
	d.notes(words.Min.X, 1, boxW(words), words.Min.Y, words.Max.Y, items)
}

// whiteWall clears the wall of what was shaded under it, hatching kept.
func (d *sheet) whiteWall(v view, h geometry.Hole, y length) {
	if h.Wall*length(v.k) < solidUnder {
		d.cutWall(v, h, y)
		return
	}
	for _, s := range []length{1, -1} {
		d.Shade(wallArc(h, s*h.Diameter/2, s*y).Transform(v.to()), 0)
	}
}

// clearanceWords says how much larger than the pipe the hole is.
func (d *sheet) clearanceWords(h geometry.Hole) string {
	if h.Clearance < 0 {
		return "too small for the pipe by " + keep(d.both(-h.Clearance))
	}
	return "clearance " + keep(d.both(h.Clearance))
}
