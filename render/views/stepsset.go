package views

import (
	"silowright/geometry"
	"silowright/geometry/path"
	"silowright/render"
)

func pictureSeat(p picture, s geometry.Silo) {
	body, base := bodyProfile(s), baseProfile(s)
	r := max(body.widest(), base.widest())
	st := s.Stations
	gap := st.Rim * 0.3
	v := p.fitted(r, r, st.BaseHeight+gap+st.Rim)
	p.solid(v, base, s.Spec.Drum.Wall)
	up := view{v.k, v.pt(0, st.BaseHeight+gap)}
	p.solid(up, body, s.Spec.Drum.Wall)
	p.wallShape(render.Outline, up, s.Spec.Drum.Outside/2, 0, s.Outlet.Height, s.Outlet.Outline())
	for _, x := range []length{-1, 1} {
		p.arrowLine(v.pt(x*r*1.12, st.BaseHeight+gap*1.6), v.pt(x*r*1.12, st.BaseHeight+gap*0.1))
	}
}

// towerPicture places the seated silo in section with room on both sides.
func towerPicture(p picture, s geometry.Silo) (view, length) {
	left, right := reach(s, -1)+25, reach(s, 1)+25
	total := s.Seat.FootHeight + s.Stations.Rim
	k := min(float64(boxW(p.area)/(left+right)), float64(boxH(p.area)/(total*1.1)))
	spare := boxW(p.area) - (left+right)*length(k)
	return view{k, path.Pt(p.area.Min.X+spare/2+left*length(k), p.area.Min.Y+1+(boxH(p.area)-total*1.1*length(k))/2)}, total
}

// filled shades the water in the seated silo up to a height above the foot.
func (p picture) filled(v, body view, s geometry.Silo, surface length) {
	d := s.Spec.Drum
	r := d.Bore() / 2
	p.Shade(box(-r, s.Stations.HeadPanel, r, s.Seat.FootHeight).Transform(v.to()), 0.13)
	f := d.FootInside() / 2
	p.Shade(path.Polygon(body.poly(path.Pt(-f, 0), path.Pt(f, 0), path.Pt(r, d.FootHeight), path.Pt(r, surface), path.Pt(-r, surface), path.Pt(-r, d.FootHeight))...), 0.13)
}

func pictureLeak(p picture, s geometry.Silo) {
	v, _ := towerPicture(p, s)
	body := view{v.k, v.pt(0, s.Seat.FootHeight)}
	p.filled(v, body, s, s.Outlet.Height)
	p.tower(v, s)
	r := s.Spec.Drum.Bore() / 2
	p.waterLevel(body, -r, r*0.6, s.Outlet.Height)
	// drops to look for under the joints and at the seat
	for _, at := range []path.Point{
		v.pt(reach(s, 1)*0.86, s.Inlet.Height-s.Inlet.Footprint), v.pt(-s.Spec.Drum.Outside*0.56, s.Drain.Height-s.Drain.Footprint),
		v.pt(s.Spec.Drum.Outside*0.55, s.Stations.BaseHeight*0.8), v.pt(-s.Spec.Drum.Outside*0.55, s.Stations.BaseHeight*0.8),
	} {
		p.drop(at)
	}
}

// drop is a drop of water, a little over 2 mm high.
func (p picture) drop(at path.Point) {
	var q path.Path
	q.MoveTo(path.Pt(at.X, at.Y+1.2))
	q.CurveTo(path.Pt(at.X+0.4, at.Y+0.4), path.Pt(at.X+1, at.Y), path.Pt(at.X+0.7, at.Y-0.7))
	q.CurveTo(path.Pt(at.X+0.4, at.Y-1.2), path.Pt(at.X-0.4, at.Y-1.2), path.Pt(at.X-0.7, at.Y-0.7))
	q.CurveTo(path.Pt(at.X-1, at.Y), path.Pt(at.X-0.4, at.Y+0.4), path.Pt(at.X, at.Y+1.2))
	q.ClosePath()
	p.Shade(q, 0.5)
	p.PathOn(render.Thin, q)
}

func pictureCure(p picture, s geometry.Silo) {
	body := bodyProfile(s)
	r := body.widest()
	st := s.Stations
	v := p.fitted(r*1.3, r*1.3, st.Rim*1.35)
	p.solid(v, body, s.Spec.Drum.Wall)
	p.wallShape(render.Outline, v, s.Spec.Drum.Outside/2, 0, s.Outlet.Height, s.Outlet.Outline())
	// a hose from the upper right, water falling in
	end := v.pt(-r*0.1, st.Rim*1.2)
	for _, o := range []length{-1.1, 1.1} {
		var q path.Path
		q.MoveTo(path.Pt(end.X-o, end.Y))
		q.CurveTo(path.Pt(end.X-o, end.Y+4+o), path.Pt(end.X+5, end.Y+5+o), path.Pt(end.X+16, end.Y+3+o))
		p.PathOn(render.Outline, q)
	}
	p.Line(render.Outline, path.Pt(end.X-1.1, end.Y), path.Pt(end.X+1.1, end.Y))
	for _, o := range []length{-0.6, 0, 0.6} {
		p.Line(render.Water, path.Pt(end.X+o, end.Y-0.8), path.Pt(end.X+o*1.6, v.y(st.Rim)-0.6))
	}
	for _, x := range []length{-0.6, -0.2, 0.2, 0.6} {
		p.drop(v.pt(x*r, -r*tilt*0.4-6/length(v.k)*0.3-r*0.05))
	}
}

func pictureWork(p picture, s geometry.Silo) {
	v, _ := towerPicture(p, s)
	body := view{v.k, v.pt(0, s.Seat.FootHeight)}
	p.filled(v, body, s, s.Outlet.Height)
	t := s.Spec.Drum.Wall
	// seed on the mesh
	f := s.Spec.Drum.FootInside()/2 - 2*t
	p.Shade(box(-f, t, f, t+s.Outlet.Height*0.16).Transform(body.to()), 0.45)
	_, inletSide := p.tower(v, s)
	r := s.Spec.Drum.Bore() / 2
	p.flow(v, path.Pt(inletSide*(inletEnd(s)+20), s.Inlet.Height), path.Pt(inletSide*r*0.4, s.Inlet.Height))
	for _, x := range []length{-0.6, 0, 0.6} {
		p.flow(body, path.Pt(x*f, s.Outlet.Height*0.22), path.Pt(x*f, s.Outlet.Height*0.62))
	}
	side := sideOf(s, s.Outlet.Round)
	at, _ := drawingOf(s.Outlet).mouth(s.Outlet)
	p.flow(body, path.Pt(side*r*0.4, s.Outlet.Height), path.Pt(side*(s.Spec.Drum.Outside/2+max(at, 3.2)+25), s.Outlet.Height))
}
