package views

import (
	"math"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
)

func pictureMesh(p picture, s geometry.Silo) {
	f := bodyProfile(s)
	m := s.Disc
	r := max(f.widest(), m.Across/2)
	gap := m.Across * 0.17
	high := s.Stations.Rim * 0.55
	v := p.fitted(r, r, high+gap+m.Across*tilt)
	// the body's upper half, the disc above it
	var low profile
	for _, q := range f {
		if q.Y > s.Stations.Rim-high {
			low = append(low, path.Pt(q.X, q.Y-(s.Stations.Rim-high)))
		}
	}
	low = append(profile{path.Pt(f.at(s.Stations.Rim-high), 0)}, low...)
	if len(low) < 3 {
		low = append(low[:1], path.Pt(low[0].X, high/2), low[len(low)-1])
	}
	p.solid(v, low, s.Spec.Drum.Wall)
	z := high + gap + m.Across/2*tilt
	disc := view{v.k, v.pt(0, z)}
	p.Shade(hoopLine(disc, m.Across/2, 0, true), 0.15)
	p.line(render.Outline, hoopLine(disc, m.Across/2, 0, true))
	p.line(render.Hidden, hoopLine(disc, m.Bend/2, 0, true))
	for i := range m.Snips {
		a := 2 * math.Pi * float64(i) / float64(m.Snips)
		q, w := polar(m.Across/2, a), polar(m.Across/2-m.SnipDepth, a)
		p.line(render.Outline, path.Polyline(disc.pt(q.X, q.Y*tilt), disc.pt(w.X, w.Y*tilt)))
	}
	p.arrowLine(v.pt(0, z-m.Across/2*tilt-1/length(v.k)), v.pt(0, high-r*tilt*0.2))
}

// ringPicture places the section at the ring.
func ringPicture(p picture, s geometry.Silo) (ringFigure, view) {
	f := newRingFigure(s)
	in, out := f.in+14, f.out
	k := min(float64(boxW(p.area)/(in+out)), float64(boxH(p.area)/(f.high+4)))
	return f, view{k, path.Pt(midX(p.area)+(in-out)/2*length(k), p.area.Min.Y+1)}
}

func pictureRing(p picture, s geometry.Silo) {
	f, v := ringPicture(p, s)
	f.draw(p.sheet, v, true, false)
	// a screwdriver
	at := v.pt(f.head-3.5, f.zs)
	p.PathOn(render.Outline, box(at.X-6, at.Y-0.5, at.X, at.Y+0.5))
	p.PathOn(render.Outline, box(max(p.area.Min.X, at.X-15), at.Y-1.6, at.X-6, at.Y+1.6))
}

func pictureSealant(p picture, s geometry.Silo) {
	f, v := ringPicture(p, s)
	f.draw(p.sheet, v, true, true)
	// the nozzle of a sealant gun, from above inside
	at := v.pt(f.ringOut(f.z2)-s.Spec.Drum.Wall-1, f.z2+2)
	m := path.Rotate(measure.FullTurn / 8).Then(path.Translate(at.X-0.6, at.Y+0.6))
	p.PathOn(render.Outline, path.Polygon(path.Pt(-0.5, 0), path.Pt(0.5, 0), path.Pt(1.1, 6), path.Pt(-1.1, 6)).Transform(m))
	p.PathOn(render.Outline, path.Polyline(path.Pt(-2.6, 11), path.Pt(-2.6, 6), path.Pt(2.6, 6), path.Pt(2.6, 11)).Transform(m))
}

func pictureOutlet(p picture, s geometry.Silo) { drawingOf(s.Outlet).picture(p, s.Outlet) }

func pictureInlet(p picture, s geometry.Silo) {
	r := baseProfile(s).widest()
	left, right := max(r, inletEnd(s)), max(r, s.Spec.Drum.Outside/2+s.Drain.Stopper.Length)
	k := min(float64((boxW(p.area)-14)/(left+right)), float64(boxH(p.area)/(s.Stations.BaseHeight+20)))
	// the inlet is drawn at the left here, whichever way the section lies
	side := sideOf(s, s.Inlet.Round)
	if side > 0 {
		left, right = right, left
	}
	v := view{k, path.Pt(midX(p.area)+(left-right)/2*length(k), midY(p.area)-s.Stations.BaseHeight/2*length(k))}
	p.cutBase(v, s)
	ro := s.Spec.Drum.Outside / 2
	p.sideJoint(v, s.Inlet, side, ro, s.Inlet.Height)
	if start, end := stubStart(s), inletEnd(s); end > start {
		p.pipeBetween(v, side*start, side*end, s.Inlet.Height, s.Inlet.PipeOutside)
	}
	p.sideJoint(v, s.Drain, -side, ro, s.Drain.Height)
	at := v.pt(-side*(ro+s.Drain.Stopper.Length), s.Drain.Height+s.Drain.Stopper.Top)
	p.arrowLine(path.Pt(at.X-side*5, at.Y), path.Pt(at.X+side*0.5, at.Y))
}
