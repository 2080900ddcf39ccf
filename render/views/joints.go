package views

import (
	"fmt"

	"silowright/geometry"
	"silowright/geometry/path"
	"silowright/render"
)

// PipeJoints draws the joints pipe goes through, outlet and inlet, in section.
func PipeJoints(s geometry.Silo, size Size) render.Drawing {
	d := begin(s, size, "Outlet and inlet", "joints in section")
	one, two := d.halves(0.52)
	return d.finish(named(d.wallJoint(one, s.Outlet, "Outlet"), d.wallJoint(two, s.Inlet, "Inlet")))
}

// FootJoints draws the drain, and the ring with mesh, screw and sealant, in
// section.
func FootJoints(s geometry.Silo, size Size) render.Drawing {
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
	switch h.Joint {
	case geometry.JointStopper:
		return d.stopperJoint(b, h, name)
	case geometry.JointGrommet:
		return d.grommetJoint(b, h, name)
	}
	return d.couplingJoint(b, h, name)
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

func (d *sheet) couplingJoint(b path.Box, h geometry.Hole, name string) scale {
	c := h.Coupling
	long := couplingLong(h)
	y := max(c.Outside/2*1.15, h.Diameter/2+8)
	in := h.Wall + c.FaceGap
	v, sc, words := d.detail(b, name, -in-long, long, -y, y, 0, 1)
	end := d.cutCouplings(v, h, y, 0)
	p, bore := h.PipeOutside/2, h.PipeInside/2
	d.detailNotes(words,
		note{v.pt(long*0.8, c.Outside/2), fmt.Sprintf("coupling %s outside, socket %s deep; one on each side", keep(d.dia(c.Outside)), keep(d.both(c.Depth))), false},
		note{v.pt(end*0.6, (bore+p)/2), fmt.Sprintf("%s nipple %s long, %s of it in each socket, solvent-cemented", pipeWords(h.Pipe), keep(d.both(c.Nipple)), keep(d.both(c.Fill))), true},
		note{v.pt(-c.HoleGap*0.5, -(h.Diameter/2 + (c.Outside-h.Diameter)/4)), fmt.Sprintf("sealant under the flat faces: gap %s at the hole, %s at the coupling's edge", keep(d.both(c.HoleGap)), keep(d.both(c.FaceGap))), true},
		note{v.pt(-c.FaceGap, -y*0.97), fmt.Sprintf("wall %s; hole cut %s, %s", keep(d.both(h.Wall)), keep(d.dia(h.Diameter)), d.clearanceWords(h)), false},
	)
	return sc
}

// cutCouplings draws wall, nipple and both couplings in the level section
// through the hole, the wall's outside at x = 0; drawn apart by so much, they
// have no sealant yet. It returns where the nipple's outer end lies.
func (d *sheet) cutCouplings(v view, h geometry.Hole, y, apart length) (end length) {
	c := h.Coupling
	long := couplingLong(h)
	in := h.Wall + c.FaceGap // the inner coupling's face below the outside's middle
	p, bore := h.PipeOutside/2, h.PipeInside/2
	d.cutWall(v, h, y)
	end = (c.Nipple - in) / 2
	for _, s := range []length{1, -1} {
		if apart == 0 { // sealant under both faces, as far as the coupling reaches
			d.Shade(path.Polygon(v.poly(path.Pt(0, s*p), path.Pt(0, s*c.Outside/2), path.Pt(-c.FaceGap, s*c.Outside/2),
				path.Pt(-c.HoleGap, s*h.Diameter/2), path.Pt(-h.Wall-c.HoleGap, s*h.Diameter/2), path.Pt(-in, s*c.Outside/2), path.Pt(-in, s*p))...), 0.45)
		}
	}
	d.whiteWall(v, h, y)
	for _, s := range []length{1, -1} {
		for _, side := range []length{1, -1} {
			x0 := apart
			if side < 0 {
				x0 = -in - apart
			}
			x := func(a length) length { return x0 + side*a }
			stop := p - (p-bore)*0.7
			d.section(path.Polygon(v.poly(path.Pt(x(0), s*p), path.Pt(x(0), s*c.Outside/2), path.Pt(x(long), s*c.Outside/2), path.Pt(x(long), s*p),
				path.Pt(x(c.Depth+3.2), s*p), path.Pt(x(c.Depth+3.2), s*stop), path.Pt(x(c.Depth), s*stop), path.Pt(x(c.Depth), s*p))...),
				(c.Outside/2-p)*length(v.k), -hatchAngle)
		}
		d.section(box(end-c.Nipple, s*bore, end, s*p).Transform(v.to()), (p-bore)*length(v.k), hatchAngle)
	}
	d.Line(render.Centre, v.pt(-in-long-apart-4, 0), v.pt(long+apart+4, 0))
	return end
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

func (d *sheet) grommetJoint(b path.Box, h geometry.Hole, name string) scale {
	y := max(h.Footprint, h.PipeOutside, h.Diameter)/2 + 10
	v, sc, words := d.detail(b, name, -45, 60, -y, y, 0, 1)
	p, bore := h.PipeOutside/2, h.PipeInside/2
	d.cutWall(v, h, y)
	gap := geometry.Sagitta(h.Radius, h.Diameter)
	d.cutGrommet(v, h, -gap, 0)
	for _, s := range []length{1, -1} {
		d.section(box(-35, s*bore, 55, s*p).Transform(v.to()), (p-bore)*length(v.k), hatchAngle)
	}
	d.Line(render.Centre, v.pt(-42, 0), v.pt(60, 0))
	hole := "read its label for the hole"
	if h.Grommet.Known {
		hole = "wants a hole of " + keep(d.dia(h.Grommet.Hole))
		if !h.Grommet.Label {
			hole += " by the usual table: read its label"
		}
	}
	d.detailNotes(words,
		note{v.pt(3-gap, h.Footprint*0.45), "rubber pipe-to-tank grommet, " + hole, false},
		note{v.pt(40, (p+bore)/2), pipeWords(h.Pipe) + ", edge rounded and wetted, pushed through", true},
		note{v.pt(-h.Wall/2-gap, -y*0.95), fmt.Sprintf("wall %s; hole cut %s, burrs off", keep(d.both(h.Wall)), keep(d.dia(h.Diameter))), true},
	)
	return sc
}

func (d *sheet) stopperJoint(b path.Box, h geometry.Hole, name string) scale {
	t := h.Stopper
	y := max(t.Top/2, h.Diameter/2) + 6
	deep := drawnDeep(t)
	v, sc, words := d.detail(b, name, -max(deep, h.Wall)-6, t.Length-deep+6, -y, y, 0, 1)
	d.cutWall(v, h, y)
	k := length(v.k)
	d.section(path.Polygon(v.poly(path.Pt(-deep, -t.Bottom/2), path.Pt(-deep, t.Bottom/2),
		path.Pt(t.Length-deep, t.Top/2), path.Pt(t.Length-deep, -t.Top/2))...), t.Bottom*k, -hatchAngle)
	d.Line(render.Centre, v.pt(-deep-4, 0), v.pt(t.Length-deep+4, 0))
	d.detailNotes(words,
		note{v.pt(t.Length-deep, t.Top*0.4), fmt.Sprintf("rubber stopper No. %s, %s to %s over %s", t.Number, keep(d.dia(t.Top)), keep(d.dia(t.Bottom)), keep(d.both(t.Length))), false},
		note{v.pt(-deep*0.5, -t.Bottom*0.2), d.stopperWords(t), true},
		note{v.pt(-h.Wall/2-geometry.Sagitta(h.Radius, 2*(y-2)), -y+2), fmt.Sprintf("wall %s; hole cut %s", keep(d.both(h.Wall)), keep(d.dia(h.Diameter))), true},
	)
	return sc
}

// clearanceWords says how much larger than the pipe the hole is.
func (d *sheet) clearanceWords(h geometry.Hole) string {
	if h.Clearance < 0 {
		return "too small for the pipe by " + keep(d.both(-h.Clearance))
	}
	return "clearance " + keep(d.both(h.Clearance))
}

// drawnDeep is how deep a stopper is drawn: one that does not go in with its
// narrow end at the wall, one that goes right through with its wide end there.
func drawnDeep(t geometry.StopperFit) length { return max(0, min(t.SeatDepth, t.Length)) }

// stopperWords says how a stopper goes in, or that it does not hold.
func (d *sheet) stopperWords(t geometry.StopperFit) string {
	switch {
	case t.SeatDepth <= 0:
		return "too large for the hole: it does not go in"
	case t.SeatDepth >= t.Length:
		return "too small for the hole: it goes right through"
	}
	return fmt.Sprintf("%s of it goes into the hole; push and twist it in from outside, wet", keep(d.both(t.SeatDepth)))
}
