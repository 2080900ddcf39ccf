package views

import (
	"fmt"

	"silowright/geometry"
	"silowright/geometry/path"
	"silowright/render"
)

// ringFigure is the body's foot in upright section at a screw, the outside to
// the right, the wall's outside where it stands at x = 0.
type ringFigure struct {
	s         geometry.Silo
	p         profile
	in, out   length // how far it reaches inwards and outwards
	high      length
	up        length // mesh up the wall
	z1, z2    length // the ring's edges
	zs        length // the screw's height
	head, tip length // of the screw
}

func newRingFigure(s geometry.Silo) ringFigure {
	sp := s.Spec
	f := ringFigure{s: s, p: bodyProfile(s)}
	f.up = (s.Disc.Across - s.Disc.Bend) / 2
	f.z1 = sp.Drum.Wall + sp.Mesh.Thickness
	f.z2 = f.z1 + sp.Ring.Width
	f.zs = (f.z1 + f.z2) / 2
	f.high = max(f.up+sp.Drum.Wall, f.z2) + 8
	f.in = min(s.Lattice.Ledge+sp.Drum.Wall+6, 60)
	f.head = f.ringOut(f.zs) - sp.Drum.Wall
	f.tip = f.head + sp.Screws.Length
	f.out = f.x(f.high) + max(2, s.Ring.Protrudes) + 4
	return f
}

// x is the wall's outside, inside the wall's inside and ringOut the ring's
// outer face at a height.
func (f ringFigure) x(z length) length       { return f.p.at(z) - f.p.at(0) }
func (f ringFigure) inside(z length) length  { return f.x(z) - f.s.Spec.Drum.Wall }
func (f ringFigure) ringOut(z length) length { return f.inside(z) - f.s.Spec.Mesh.Thickness }

// edge is where the foot ends towards the middle.
func (f ringFigure) edge() length {
	_, circle := latticeEdges(f.s)
	return max(-f.in, circle-f.p.at(0))
}

// shank and pan are half the thickness of the screw's shank and of its head
// as drawn (common practice, no source).
const (
	shank length = 1.8
	pan   length = 3.6
)

// draw draws the figure; without sealant or screw where the step has not got
// to them yet.
func (f ringFigure) draw(d *sheet, v view, screw, sealant bool) {
	sp := f.s.Spec
	t, m := sp.Drum.Wall, sp.Mesh.Thickness
	k := length(v.k)
	end := f.x(f.zs)
	if screw {
		d.avoid = append(d.avoid,
			[4]path.Point{v.pt(f.head, f.zs-shank), v.pt(min(f.tip, end+2), f.zs-shank), v.pt(min(f.tip, end+2), f.zs+shank), v.pt(f.head, f.zs+shank)},
			[4]path.Point{v.pt(f.head-2.4, f.zs-pan), v.pt(f.head, f.zs-pan), v.pt(f.head, f.zs+pan), v.pt(f.head-2.4, f.zs+pan)})
	}
	bend := sp.Drum.FootHeight
	foot := []path.Point{path.Pt(f.edge(), 0), path.Pt(0, 0)}
	if bend < f.high {
		foot = append(foot, path.Pt(f.x(bend), bend))
	}
	foot = append(foot, path.Pt(f.x(f.high), f.high), path.Pt(f.inside(f.high), f.high))
	if bend < f.high {
		foot = append(foot, path.Pt(f.inside(bend), bend))
	}
	foot = append(foot, path.Pt(f.inside(t), t), path.Pt(f.edge(), t))
	d.section(path.Polygon(v.poly(foot...)...), t*k, hatchAngle)

	mesh := []path.Point{path.Pt(-f.in, t+m/2), path.Pt(f.inside(t+m/2)-m/2, t+m/2)}
	if bend > t+m && bend < t+f.up {
		mesh = append(mesh, path.Pt(f.inside(bend)-m/2, bend))
	}
	mesh = append(mesh, path.Pt(f.inside(t+f.up)-m/2, t+f.up))
	d.broken(render.Hidden, v.poly(mesh...))

	ring := []path.Point{path.Pt(f.ringOut(f.z1)-t, f.z1), path.Pt(f.ringOut(f.z1), f.z1), path.Pt(f.ringOut(f.z2), f.z2), path.Pt(f.ringOut(f.z2)-t, f.z2)}
	d.section(path.Polygon(v.poly(ring...)...), t*k, -hatchAngle)
	if sealant {
		bead := sp.Sealant.Bead
		seal := path.Polygon(v.poly(path.Pt(f.ringOut(f.z2)-t, f.z2), path.Pt(f.ringOut(f.z2), f.z2), path.Pt(f.ringOut(f.z2+bead), f.z2+bead))...)
		d.Shade(seal, 0.6)
		d.PathOn(render.Thin, seal)
	}
	d.avoid = nil
	if screw {
		f.screw(d, v)
	}
}

// screw draws the screw; what sticks out of the wall, to be nipped off, is
// dashed.
func (f ringFigure) screw(d *sheet, v view) {
	end := f.x(f.zs)
	d.Shade(box(f.head, f.zs-shank, min(f.tip, end+0.5), f.zs+shank).Transform(v.to()), 0)
	d.PathOn(render.Outline, box(f.head-2.4, f.zs-pan, f.head, f.zs+pan).Transform(v.to()))
	for _, s := range []length{1, -1} {
		d.Line(render.Outline, v.pt(f.head, f.zs+s*shank), v.pt(min(end, f.tip), f.zs+s*shank))
	}
	if f.tip > end {
		back := max(end, f.tip-2.5)
		d.PathOn(render.Hidden, path.Polyline(v.poly(path.Pt(end, f.zs+shank), path.Pt(back, f.zs+shank), path.Pt(f.tip, f.zs),
			path.Pt(back, f.zs-shank), path.Pt(end, f.zs-shank))...))
	}
	d.Line(render.Centre, v.pt(f.head-6, f.zs), v.pt(max(end, f.tip)+4, f.zs))
}

// screwWords calls a screw as the trade does.
func screwWords(s geometry.ScrewSpec) string {
	if s.Size != "" && s.Size[0] >= '0' && s.Size[0] <= '9' {
		return "No. " + s.Size
	}
	return s.Size
}

// ringJoint draws ring, mesh, screw and sealant with their notes.
func (d *sheet) ringJoint(b path.Box, s geometry.Silo) scale {
	sp := s.Spec
	f := newRingFigure(s)
	t, m, bead := sp.Drum.Wall, sp.Mesh.Thickness, sp.Sealant.Bead
	v, sc, words := d.detail(b, "Ring, mesh, screw and sealant", -f.in, f.out, -2, f.high, 0, 2)
	f.draw(d, v, true, true)
	d.PathOn(render.Thin, path.Polyline(v.poly(path.Pt(f.x(f.high)+1, f.high-1.5), path.Pt(f.inside(f.high)-1, f.high+1.5))...))
	point := "its point stays inside the wall"
	if s.Ring.Protrudes > 0 {
		point = fmt.Sprintf("its point stands out %s: nip it off and file it smooth", keep(d.both(s.Ring.Protrudes)))
	}
	d.detailNotes(words,
		note{v.pt(f.ringOut(f.z2+bead*0.3)-t*0.3, f.z2+bead*0.3), fmt.Sprintf("sealant bead %s on the ring's upper edge, smoothed so that no seed gets behind", keep(d.both(bead))), true},
		note{v.pt(f.inside(t+f.up*0.97)-m/2, t+f.up*0.97), fmt.Sprintf("mesh %s thick, turned up %s", keep(d.both(m)), keep(d.both(f.up))), false},
		note{v.pt(max(f.x(f.zs), f.tip-1), f.zs), fmt.Sprintf("screw %s × %s through ring, mesh and wall (%s together); %s", screwWords(sp.Screws), keep(d.both(sp.Screws.Length)), keep(d.both(s.Ring.Stack)), point), false},
		note{v.pt(f.ringOut(f.z1+sp.Ring.Width*0.2)-t*0.5, f.z1+sp.Ring.Width*0.2), fmt.Sprintf("ring %s wide, cut from the drum's own wall", keep(d.both(sp.Ring.Width))), true},
		note{v.pt((f.edge()+f.inside(t))/2, t/2), fmt.Sprintf("foot, %s thick; ledge %s wide", keep(d.both(t)), keep(d.both(s.Lattice.Ledge))), true},
	)
	return sc
}
