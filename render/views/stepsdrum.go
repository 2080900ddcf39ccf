package views

import (
	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
)

// drumProfile is the whole drum before any cut.
func drumProfile(s geometry.Silo) profile {
	d := s.Spec.Drum
	r := d.Outside / 2
	f := profile{path.Pt(d.FootOutside/2, 0), path.Pt(r, d.FootHeight)}
	for _, h := range d.Hoops {
		if h.From < f[len(f)-1].Y || h.To >= d.Height {
			continue
		}
		e := (h.To - h.From) / 5
		f = append(f, path.Pt(r, h.From), path.Pt(h.Outside/2, h.From+e), path.Pt(h.Outside/2, h.To-e), path.Pt(r, h.To))
	}
	return append(f, path.Pt(r, d.Height))
}

// above is the part of the standing drum that becomes the base, from the cut
// up.
func above(s geometry.Silo) profile {
	d := s.Spec.Drum
	h := s.Stations.BaseHoop
	hoop := h.To - h.From
	r := d.Outside / 2
	z := s.Stations.BaseCut
	return profile{path.Pt(h.Outside/2, z), path.Pt(h.Outside/2, z+hoop*2/3), path.Pt(r, z+hoop), path.Pt(r, d.Height)}
}

// lidded draws the head sunk in the chime on top of a standing drum.
func (p picture) lidded(v view, s geometry.Silo) {
	d := s.Spec.Drum
	r := d.Outside/2 - d.Wall*2
	p.line(render.Thin, hoopLine(v, r, d.Height, true))
	for _, x := range []length{-0.55, 0.55} {
		m := path.Scale(1, tilt).Then(path.Translate(x*r, d.Height)).Then(v.to())
		p.line(render.Thin, path.Circle(path.Point{}, r*0.14).Transform(m))
	}
}

func pictureDrum(p picture, s geometry.Silo) {
	f := drumProfile(s)
	r := f.widest()
	v := p.fitted(r*1.5, r*1.5, s.Spec.Drum.Height)
	mid := s.Spec.Drum.Hoops[0].From * 0.55
	if n := len(s.Spec.Drum.Hoops); n > 1 {
		mid = (s.Spec.Drum.Hoops[n-2].To + s.Spec.Drum.Hoops[n-1].From) / 2
	}
	// the tape round the wall, its end hanging down at the right
	p.solid(v, f, 0)
	p.lidded(v, s)
	ro := s.Spec.Drum.Outside / 2
	for _, dz := range []length{0, 1.4} {
		p.line(render.Thin, hoopLine(v, ro, mid+dz/length(v.k), false))
	}
	for i := -7; i <= 7; i++ {
		a := ro * length(i) * 0.19
		at := onWall(v, ro, a, mid)
		p.Line(render.Thin, at, path.Pt(at.X, at.Y+0.8))
	}
	// a rule for the height beside it
	x := v.x(r * 1.3)
	p.Rect(render.Thin, path.Pt(x, v.y(0)), path.Pt(x+1.8, v.y(s.Spec.Drum.Height)))
	for i := range 13 {
		y := v.y(s.Spec.Drum.Height * length(i) / 12)
		p.Line(render.Thin, path.Pt(x, y), path.Pt(x+0.9, y))
	}
	p.Line(render.Thin, path.Pt(v.x(r), v.y(s.Spec.Drum.Height)), path.Pt(x+3, v.y(s.Spec.Drum.Height)))
}

func pictureMark(p picture, s geometry.Silo) {
	f := drumProfile(s)
	r := f.widest()
	v := p.fitted(r, r, s.Spec.Drum.Height)
	p.solid(v, f, 0)
	p.lidded(v, s)
	ro := s.Spec.Drum.Outside / 2
	st := s.Stations
	p.Line(render.Outline, onWall(v, ro, 0, 0), onWall(v, ro, 0, s.Spec.Drum.Height))
	for _, z := range []length{st.BaseCut, st.RingBottom} {
		p.line(render.Outline, hoopLine(v, ro+2, z, false))
	}
	cross := func(a, z length) {
		c := onWall(v, ro, a, z)
		p.Line(render.Outline, path.Pt(c.X-1.3, c.Y), path.Pt(c.X+1.3, c.Y))
		p.Line(render.Outline, path.Pt(c.X, c.Y-1.3), path.Pt(c.X, c.Y+1.3))
	}
	cross(0, s.Outlet.Height)
	cross(0, s.Spec.Drum.Height-s.Inlet.Height)
}

func pictureBaseCut(p picture, s geometry.Silo) {
	d := s.Spec.Drum
	up := above(s)
	r := max(up.widest(), bodyProfile(s).widest())
	gap := d.Height * 0.14
	v := p.fitted(r*1.05, r*1.5, d.Height+gap)
	at := onWall(v, d.Outside/2, d.Outside*0.36, s.Stations.RingTop)
	p.jigsaw(path.Pt(at.X+3, at.Y+0.5), measure.FullTurn*0.75)
	var low profile
	for _, q := range drumProfile(s) {
		if q.Y < s.Stations.RingTop {
			low = append(low, q)
		}
	}
	low = append(low, path.Pt(d.Outside/2, s.Stations.RingTop))
	raised := view{v.k, v.pt(0, gap)}
	p.solid(raised, up, 0)
	p.lidded(raised, s)
	// the lower piece's open edge shows between
	p.solid(v, low, d.Wall)
}

func pictureRingCut(p picture, s geometry.Silo) {
	d, st := s.Spec.Drum, s.Stations
	f := bodyProfile(s)
	r := f.widest()
	gap := st.Rim * 0.2
	w := s.Spec.Ring.Width
	v := p.fitted(r*1.05, r*1.5, st.Rim+gap+w)
	at := onWall(v, d.Outside/2, d.Outside*0.36, st.Rim)
	p.jigsaw(path.Pt(at.X+3, at.Y+0.5), measure.FullTurn*0.75)
	p.solid(v, f, d.Wall)
	p.solid(view{v.k, v.pt(0, st.Rim+gap)}, profile{path.Pt(d.Outside/2, 0), path.Pt(d.Outside/2, w/2), path.Pt(d.Outside/2, w)}, d.Wall)
}

func pictureLattice(p picture, s geometry.Silo) {
	foot := s.Spec.Drum.FootOutside / 2
	k := float64(boxH(p.area)/(2*foot)) * 0.97
	v := view{k, path.Pt(p.Width/2-4, p.Height/2)}
	l := s.Lattice
	// the saw is on its way along the last opening's outer edge
	last := l.Openings - 1
	edge := polar(s.Spec.Lattice.Across/2*0.99, -0.12)
	p.jigsaw(v.pt(edge.X, edge.Y), -measure.FullTurn/4+0.05)
	p.line(render.Outline, path.Circle(v.at, foot*length(k)))
	p.line(render.Thin, path.Circle(v.at, s.Spec.Lattice.Across/2*length(k)))
	for i, o := range l.Outlines {
		q := o.Transform(v.to())
		if i == last {
			p.line(render.Hidden, q)
			continue
		}
		p.Shade(q, 0.2)
		p.line(render.Outline, q)
	}
	for _, q := range l.AllPilots {
		p.line(render.Drill, path.Circle(v.pt(q.X, q.Y), max(0.35, s.Spec.Lattice.Pilot/2*length(k))))
	}
}

func pictureHoles(p picture, s geometry.Silo) {
	f := bodyProfile(s)
	r := f.widest()
	ro := s.Spec.Drum.Outside / 2
	v := p.fitted(r, r*1.75, s.Stations.Rim)
	a := ro * 0.75
	at := onWall(v, ro, a, s.Outlet.Height)
	across := s.Outlet.Diameter * length(v.k)
	p.holeSaw(path.Pt(at.X+2.2, at.Y), -measure.FullTurn/4, across)
	p.solid(v, f, s.Spec.Drum.Wall)
	q := p.wallShape(render.Cut, v, ro, a, s.Outlet.Height, s.Outlet.Outline())
	p.Shade(q, 0.2)
	p.line(render.Mark, path.Polyline(onWall(v, ro, a, 0), onWall(v, ro, a, s.Stations.Rim)))
}

func pictureHandles(p picture, s geometry.Silo) {
	f := bodyProfile(s)
	r := f.widest()
	ro := s.Spec.Drum.Outside / 2
	v := p.fitted(r, r, s.Stations.Rim)
	sl := s.Slots[0]
	z := s.Stations.Rim - (sl.Top+sl.Sill)/2
	at := onWall(v, ro, sl.Length*0.3, z-sl.Height()/2)
	p.jigsaw(path.Pt(at.X, at.Y-1.2), measure.FullTurn/2)
	p.solid(v, f, s.Spec.Drum.Wall)
	q := p.wallShape(render.Cut, v, ro, 0, z, sl.Outline())
	p.Shade(q, 0.2)
}
