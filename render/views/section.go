package views

import (
	"math"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
)

const hatchAngle measure.Angle = measure.FullTurn / 8

// cutBody draws the body in section through two openings of its lattice, the
// plane through the outlet. The strokes from beyond on are of what lies behind it.
func (d *sheet) cutBody(v view, s geometry.Silo) (beyond int) {
	p := bodyProfile(s)
	t := s.Spec.Drum.Wall
	rim := s.Stations.Rim
	paper := t * length(v.k)
	for _, side := range []length{1, -1} {
		parts := [][2]length{{0, rim}}
		if side == sideOf(s, s.Outlet.Round) {
			r := s.Outlet.Diameter / 2
			parts = [][2]length{{0, s.Outlet.Height - r}, {s.Outlet.Height + r, rim}}
			for _, z := range []length{s.Outlet.Height - r, s.Outlet.Height + r} {
				d.Line(render.Thin, v.pt(side*(p.at(z)-t), z), v.pt(side*p.at(z), z))
			}
		}
		for _, z := range parts {
			d.section(p.wall(side, t, z[0], z[1]).Transform(v.to()), paper, hatchAngle)
		}
		hub, circle := latticeEdges(s)
		foot := p.at(0)
		d.section(box(side*circle, 0, side*(foot-0.01), t).Transform(v.to()), paper, hatchAngle)
		if side > 0 {
			d.section(box(-hub, 0, hub, t).Transform(v.to()), paper, hatchAngle)
		}
	}
	// what is seen beyond the plane: rim, foot, the far bars' edges
	beyond = len(d.Strokes)
	d.Line(render.Outline, v.pt(-p.at(rim), rim), v.pt(p.at(rim), rim))
	d.Line(render.Thin, v.pt(-p.at(t)+t, t), v.pt(p.at(t)-t, t))
	d.Line(render.Thin, v.pt(-p.at(0), 0), v.pt(p.at(0), 0))
	for _, h := range s.Stations.BodyHoops {
		for _, z := range []length{h.From, h.To} {
			if z < rim {
				d.Line(render.Thin, v.pt(-p.at(z)+t, z), v.pt(p.at(z)-t, z))
			}
		}
	}
	// the far handle slot, where it lies behind the plane
	for _, sl := range s.Slots {
		if x, far := behind(s, sl.Round); far {
			d.slotSeen(v, x, rim-sl.Sill, rim-sl.Top, seenLong(s, sl), render.Outline)
			break
		}
	}
	return beyond
}

// behind is where a place round the wall is seen in a section whose plane
// holds the outlet on its right or left, and whether it is behind that plane.
func behind(s geometry.Silo, round length) (x length, far bool) {
	r := s.Spec.Drum.Outside / 2
	a := measure.Angle((round - s.Outlet.Round) / r)
	return sideOf(s, s.Outlet.Round) * r * length(a.Cos()), a.Sin() > 0.3
}

// seenLong is how long a slot behind the plane looks, turned away as it is.
func seenLong(s geometry.Silo, sl geometry.Slot) length {
	r := s.Spec.Drum.Outside / 2
	a := measure.Angle((sl.Round - s.Outlet.Round) / r)
	return 2 * r * length(math.Abs(a.Sin()*math.Sin(float64(sl.Length/2/r))))
}

// slotSeen draws a slot of that height with rounded ends, as long as it looks.
func (d *sheet) slotSeen(v view, x, low, high, long length, l render.Layer) {
	o := geometry.Slot{Top: 0, Sill: high - low, Length: max(long, high-low), CornerR: (high - low) / 2}.Outline()
	squeeze := float64(long / max(long, high-low))
	d.PathOn(l, o.Transform(path.Scale(squeeze, 1).Then(path.Translate(x, (low+high)/2)).Then(v.to())))
}

// cutBase draws the base in section through inlet and drain, which are turned
// into the plane when they lie off it. It returns the side the inlet is on.
func (d *sheet) cutBase(v view, s geometry.Silo) (inletSide length) {
	p := baseProfile(s)
	t := s.Spec.Drum.Wall
	top, paper := s.Stations.BaseHeight, t*length(v.k)
	inletSide = sideOf(s, s.Inlet.Round)
	for _, side := range []length{1, -1} {
		h := s.Inlet
		if side != inletSide {
			h = s.Drain
		}
		r := h.Diameter / 2
		for _, z := range [][2]length{{0, h.Height - r}, {h.Height + r, top}} {
			if z[1] > z[0] {
				d.section(p.wall(side, t, z[0], z[1]).Transform(v.to()), paper, hatchAngle)
			}
		}
	}
	head := s.Stations.HeadPanel
	r := p.at(0) - t
	d.section(box(-r, max(0, head-t), r, head).Transform(v.to()), paper, hatchAngle)
	d.Line(render.Outline, v.pt(-p.at(top), top), v.pt(p.at(top), top))
	z := s.Stations.BaseHoop.From
	d.Line(render.Thin, v.pt(-p.at(z)+t, z), v.pt(p.at(z)-t, z))
	return inletSide
}

// cutRing draws the ring in place in the body's foot: left white so that it is
// told from the blacked-in wall.
func (d *sheet) cutRing(v view, s geometry.Silo, z length) {
	t := s.Spec.Drum.Wall
	for _, side := range []length{1, -1} {
		d.PathOn(render.Thin, box(side*s.Ring.InnerRadius, z, side*(s.Ring.InnerRadius+t), z+s.Spec.Ring.Width).Transform(v.to()))
	}
	d.Line(render.Thin, v.pt(-s.Ring.InnerRadius, z+s.Spec.Ring.Width), v.pt(s.Ring.InnerRadius, z+s.Spec.Ring.Width))
}

// cutMesh draws the mesh lying at height z and turned up the wall.
func (d *sheet) cutMesh(v view, s geometry.Silo, z length) {
	r := s.Disc.Bend / 2
	up := (s.Disc.Across - s.Disc.Bend) / 2
	d.PathOn(render.Hidden, path.Polyline(v.poly(path.Pt(-r, z+up), path.Pt(-r, z), path.Pt(r, z), path.Pt(r, z+up))...))
}

// sideJoint draws a joint through a wall whose outside is at radius r, on one
// side, in section at small scale: outlines and a centre line. It returns how
// far it reaches outwards from the axis.
func (d *sheet) sideJoint(v view, h geometry.Hole, side, r, z length) length {
	out := drawingOf(h).side(d, v, h, side, r, z)
	d.Line(render.Centre, v.pt(side*(r-h.Wall-h.Footprint*0.6), z), v.pt(side*(out+8), z))
	return out
}

// pipeBetween draws a pipe's two edges from x1 to x2.
func (d *sheet) pipeBetween(v view, x1, x2, z, across length) {
	for _, s := range []length{1, -1} {
		d.Line(render.Outline, v.pt(x1, z+s*across/2), v.pt(x2, z+s*across/2))
	}
	d.Line(render.Outline, v.pt(x2, z-across/2), v.pt(x2, z+across/2))
}

// flow draws an arrow of the water's way through points.
func (d *sheet) flow(v view, pts ...path.Point) {
	q := v.poly(pts...)
	d.PathOn(render.Water, path.Polyline(q...))
	n := len(q)
	d.arrowOf(q[n-2], q[n-1], 3, 0.8)
}

// waterLevel draws a water line with its sign.
func (d *sheet) waterLevel(v view, x1, x2, z length) {
	d.Line(render.Water, v.pt(x1, z), v.pt(x2, z))
	at := v.pt(x1+(x2-x1)*0.22, z)
	d.PathOn(render.Water, path.Polygon(path.Pt(at.X, at.Y+0.3), path.Pt(at.X-1.6, at.Y+3), path.Pt(at.X+1.6, at.Y+3)))
	for i := range 3 {
		w := 1.8 - 0.6*length(i)
		y := at.Y - 0.9*length(i+1)
		d.Line(render.Water, path.Pt(at.X-w, y), path.Pt(at.X+w, y))
	}
}
