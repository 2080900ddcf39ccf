package views

import (
	"fmt"

	"silowright/geometry"
	"silowright/geometry/path"
	"silowright/render"
)

// ringJoint draws the body's foot in upright section at a screw: wall, ledge,
// mesh, ring, screw and sealant, the outside to the right.
func (d *sheet) ringJoint(b path.Box, s geometry.Silo) scale {
	sp := s.Spec
	t, m, w := sp.Drum.Wall, sp.Mesh.Thickness, sp.Ring.Width
	p := bodyProfile(s)
	r0 := p.at(0)
	up := (s.Disc.Across - s.Disc.Bend) / 2
	high := max(up+t, w+t+m) + 8
	reachIn := min(s.Lattice.Ledge+t+6, 60)
	out := p.at(high) - r0 + max(2, s.Ring.Protrudes) + 4
	v, sc, words := d.detail(b, "Ring, mesh, screw and sealant", -reachIn, out, -2, high, 0, 2)
	k := length(v.k)
	x := func(z length) length { return p.at(z) - r0 } // the wall's outside
	inx := func(z length) length { return x(z) - t }
	// the screw, level, half way up the ring: head inside, point outside
	z1, z2 := t+m, t+m+w
	ox := func(z length) length { return inx(z) - m }
	zs := z1 + w/2
	head := ox(zs) - t
	shank, big := length(1.8), length(3.6)
	tip := head + sp.Screws.Length
	outEnd := x(zs)
	d.avoid = [][4]path.Point{{v.pt(head, zs-shank), v.pt(min(tip, outEnd+2), zs-shank), v.pt(min(tip, outEnd+2), zs+shank), v.pt(head, zs+shank)},
		{v.pt(head-2.4, zs-big), v.pt(head, zs-big), v.pt(head, zs+big), v.pt(head-2.4, zs+big)}}
	// wall and foot are one part
	var foot []path.Point
	edge := -reachIn
	if _, circle := latticeEdges(s); circle-r0 > edge {
		edge = circle - r0
	}
	foot = append(foot, path.Pt(edge, 0), path.Pt(0, 0), path.Pt(x(high), high), path.Pt(inx(high), high), path.Pt(inx(t), t), path.Pt(edge, t))
	if sp.Drum.FootHeight < high {
		foot = append(foot[:2:2], path.Pt(x(sp.Drum.FootHeight), sp.Drum.FootHeight), path.Pt(x(high), high), path.Pt(inx(high), high),
			path.Pt(inx(sp.Drum.FootHeight), sp.Drum.FootHeight), path.Pt(inx(t), t), path.Pt(edge, t))
	}
	d.section(path.Polygon(v.poly(foot...)...), t*k, hatchAngle)
	d.PathOn(render.Thin, path.Polyline(v.poly(path.Pt(x(high)+1, high-1.5), path.Pt(inx(high)-1, high+1.5))...))
	// mesh
	mesh := v.poly(path.Pt(-reachIn, t+m/2), path.Pt(inx(t+m/2)-m/2, t+m/2), path.Pt(inx(t+up)-m/2, t+up))
	d.PathOn(render.Hidden, path.Polyline(mesh...))
	// ring
	ring := []path.Point{path.Pt(ox(z1)-t, z1), path.Pt(ox(z1), z1), path.Pt(ox(z2), z2), path.Pt(ox(z2)-t, z2)}
	d.section(path.Polygon(v.poly(ring...)...), t*k, -hatchAngle)
	// sealant on the ring's edge
	bead := sp.Sealant.Bead
	seal := path.Polygon(v.poly(path.Pt(ox(z2)-t, z2), path.Pt(ox(z2), z2), path.Pt(ox(z2+bead), z2+bead))...)
	d.Shade(seal, 0.6)
	d.PathOn(render.Thin, seal)
	d.avoid = nil
	d.PathOn(render.Outline, box(head-2.4, zs-big, head, zs+big).Transform(v.to()))
	d.Shade(box(head, zs-shank, min(tip, x(zs)+0.5), zs+shank).Transform(v.to()), 0)
	for _, sgn := range []length{1, -1} {
		d.Line(render.Outline, v.pt(head, zs+sgn*shank), v.pt(min(outEnd, tip), zs+sgn*shank))
	}
	if tip > outEnd {
		d.PathOn(render.Hidden, path.Polyline(v.poly(path.Pt(outEnd, zs+shank), path.Pt(max(outEnd, tip-2.5), zs+shank), path.Pt(tip, zs), path.Pt(max(outEnd, tip-2.5), zs-shank), path.Pt(outEnd, zs-shank))...))
	}
	d.Line(render.Centre, v.pt(head-6, zs), v.pt(max(outEnd, tip)+4, zs))
	point := "its point stays inside the wall"
	if s.Ring.Protrudes > 0 {
		point = fmt.Sprintf("its point stands out %s: nip it off and file it smooth", keep(d.both(s.Ring.Protrudes)))
	}
	d.detailNotes(words,
		note{v.pt(ox(z2+bead*0.3)-t*0.3, z2+bead*0.3), fmt.Sprintf("sealant bead %s on the ring's upper edge, smoothed so that no seed gets behind", keep(d.both(bead))), true},
		note{v.pt(inx(t+up*0.97)-m/2, t+up*0.97), fmt.Sprintf("mesh %s thick, turned up %s", keep(d.both(m)), keep(d.both(up))), false},
		note{v.pt(max(outEnd, tip-1), zs), fmt.Sprintf("screw No. %s × %s through ring, mesh and wall (%s together); %s", sp.Screws.Size, keep(d.both(sp.Screws.Length)), keep(d.both(s.Ring.Stack)), point), false},
		note{v.pt(ox(z1+w*0.2)-t*0.5, z1+w*0.2), fmt.Sprintf("ring %s wide, cut from the drum's own wall", keep(d.both(w))), true},
		note{v.pt((edge+inx(t))/2, t/2), fmt.Sprintf("foot, %s thick; ledge %s wide", keep(d.both(t)), keep(d.both(s.Lattice.Ledge))), true},
	)
	return sc
}
