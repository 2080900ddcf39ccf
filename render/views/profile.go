package views

import (
	"math"

	"silowright/geometry"
	"silowright/geometry/path"
)

// profile is a round part's outside radius (X) over its height (Y), piecewise
// straight, lowest first.
type profile []path.Point

// bodyProfile is the body's outside from foot to rim. A hoop's flanks are
// drawn sloping over a fifth of its width: their shape is not measured.
func bodyProfile(s geometry.Silo) profile {
	d, rim := s.Spec.Drum, s.Stations.Rim
	r := d.Outside / 2
	p := profile{path.Pt(d.FootOutside/2, 0), path.Pt(r, d.FootHeight)}
	for _, h := range s.Stations.BodyHoops {
		to := min(h.To, rim)
		if h.From < d.FootHeight || to <= h.From {
			continue
		}
		e := (to - h.From) / 5
		p = append(p, path.Pt(r, h.From), path.Pt(h.Outside/2, h.From+e), path.Pt(h.Outside/2, to-e), path.Pt(r, to))
	}
	return append(p, path.Pt(r, rim))
}

// baseProfile is the base's outside from the ground to its mouth, which the
// hoop has widened; it widens over the hoop's lowest third, as the seat is
// worked out.
func baseProfile(s geometry.Silo) profile {
	r, h := s.Spec.Drum.Outside/2, s.Stations.BaseHoop
	third := (h.To - h.From) / 3
	return profile{path.Pt(r, 0), path.Pt(r, h.From), path.Pt(h.Outside/2, h.From+third), path.Pt(h.Outside/2, h.To)}
}

// at is the outside radius at a height.
func (p profile) at(y length) length {
	for i := 0; i+1 < len(p); i++ {
		a, b := p[i], p[i+1]
		if y >= a.Y && y <= b.Y && b.Y > a.Y {
			return a.X + (b.X-a.X)*(y-a.Y)/(b.Y-a.Y)
		}
	}
	if len(p) > 0 && y < p[0].Y {
		return p[0].X
	}
	return p[len(p)-1].X
}

// wall is the cut wall between two heights on one side (1 right, -1 left).
func (p profile) wall(side, thick, from, to length) path.Path {
	ys := []length{from}
	for _, q := range p {
		if q.Y > from && q.Y < to {
			ys = append(ys, q.Y)
		}
	}
	ys = append(ys, to)
	var pts []path.Point
	for _, y := range ys {
		pts = append(pts, path.Pt(side*p.at(y), y))
	}
	for i := len(ys) - 1; i >= 0; i-- {
		pts = append(pts, path.Pt(side*(p.at(ys[i])-thick), ys[i]))
	}
	return path.Polygon(pts...)
}

// outline is the whole part as seen from the side.
func (p profile) outline() path.Path {
	var pts []path.Point
	for _, q := range p {
		pts = append(pts, q)
	}
	for i := len(p) - 1; i >= 0; i-- {
		pts = append(pts, path.Pt(-p[i].X, p[i].Y))
	}
	return path.Polygon(pts...)
}

// widest is the profile's largest radius.
func (p profile) widest() length {
	r := length(0)
	for _, q := range p {
		r = max(r, q.X)
	}
	return r
}

// sideOf is the side of a section on which a place round the wall is drawn:
// right for the half nearer to the datum.
func sideOf(s geometry.Silo, round length) length {
	if math.Cos(float64(2*round/s.Spec.Drum.Outside)) < -1e-9 {
		return -1
	}
	return 1
}

// latticeEdges are where the foot's cut face meets an opening along the
// opening's middle line: at the hub and at the circle.
func latticeEdges(s geometry.Silo) (hub, circle length) {
	l := s.Lattice
	hub = length(math.Hypot(float64(l.Corners[0].X), float64(l.Corners[0].Y)))
	circle = s.Spec.Lattice.Across / 2
	if s.Spec.Lattice.Edge == geometry.EdgeStraight {
		a, b := l.Corners[1], l.Corners[2]
		circle = length(math.Hypot(float64(a.X+b.X)/2, float64(a.Y+b.Y)/2))
	}
	return hub, circle
}

func box(x1, y1, x2, y2 length) path.Path {
	return path.Rect(path.Box{Min: path.Pt(min(x1, x2), min(y1, y2)), Max: path.Pt(max(x1, x2), max(y1, y2))})
}
