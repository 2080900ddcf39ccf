package views

import (
	"fmt"

	"silowright/geometry"
	"silowright/geometry/path"
	"silowright/render"
)

func couplingsDrawing() jointDrawing {
	return jointDrawing{
		name:   "two couplings",
		detail: (*sheet).couplingJoint,
		side: func(d *sheet, v view, h geometry.Hole, side, r, z length) length {
			f, long, w := h.Coupling.Outside/2, couplingLong(h), h.Wall
			d.PathOn(render.Outline, box(side*r, z-f, side*(r+long), z+f).Transform(v.to()))
			d.PathOn(render.Outline, box(side*(r-w-h.Coupling.FaceGap), z-f, side*(r-w-h.Coupling.FaceGap-long), z+f).Transform(v.to()))
			return r + long
		},
		onPipe: sideOnPipe,
		above: func(h geometry.Hole, r, w length, add func(x1, y1, x2, y2 length)) {
			f, long, in := h.Coupling.Outside/2, couplingLong(h), w+h.Coupling.FaceGap
			add(r, f, r+long, f)
			add(r-in-long, f, r-in, f)
		},
		picture: couplingsPicture,
		mouth:   func(h geometry.Hole) (at, deep length) { return couplingLong(h), h.Coupling.Depth },
		inner:   func(h geometry.Hole) length { return h.Coupling.FaceGap + couplingLong(h) },
	}
}

// couplingLong is a coupling's length: two sockets and the stop between them,
// taken as 1/8 in (common practice, no source).
func couplingLong(h geometry.Hole) length { return 2*h.Coupling.Depth + 3.2 }

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

func couplingsPicture(p picture, h geometry.Hole) {
	long, apart := couplingLong(h), h.Coupling.Depth*0.7
	y := max(h.Coupling.Outside/2*1.15, h.Diameter/2+8)
	in := h.Wall + h.Coupling.FaceGap
	w := 2*long + in + 2*apart
	k := min(float64(boxW(p.area)/w), float64(boxH(p.area)/(2*y+10)))
	v := view{k, path.Pt(midX(p.area)+in/2*length(k), midY(p.area)+1)}
	p.cutCouplings(v, h, y, apart)
	yl := v.y(-h.Coupling.Outside/2) - 4
	x1, x2 := v.x(long*0.9+apart), v.x(apart+2)
	p.arrowLine(path.Pt(x1, yl), path.Pt(x2, yl))
	p.arrowLine(path.Pt(v.x(-in-apart-long*0.9), yl), path.Pt(v.x(-in-apart-2), yl))
}
