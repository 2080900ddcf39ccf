package views

import (
	"fmt"
	"math"

	"silowright/geometry"
	"silowright/geometry/path"
	"silowright/render"
)

// drawRing draws the retaining ring in place from above, and its strip laid flat,
// broken in the middle.
func drawRing(s geometry.Silo, size Size) render.Drawing {
	d := begin(s, size, "Retaining ring", "body, inside at the foot")
	upper, lower := rows(d.area, 0.66, 4)
	r, t := s.Ring, s.Spec.Drum.Wall
	out := r.InnerRadius + t
	p := d.planIn(upper, "In place, from above", 2*out, 2)
	v := p.view
	k := length(v.k)
	d.Circle(render.Outline, v.at, out*k)
	d.Circle(render.Outline, v.at, r.InnerRadius*k)
	d.Line(render.Centre, v.pt(-out-20, 0), v.pt(out+20, 0))
	d.Line(render.Centre, v.pt(0, -out-20), v.pt(0, out+20))
	// the joint lies at the top, a saw cut wide on paper
	j := math.Pi / 2
	d.Line(render.Outline, v.pt(0, r.InnerRadius), v.pt(0, out))
	var screws []float64
	at := j + float64(r.JointEdge/r.InnerRadius)
	for i := range r.Screws {
		screws = append(screws, at+float64(i)*float64(r.Step/r.InnerRadius))
	}
	for _, a := range screws {
		q, w := polar(r.InnerRadius-3/k, a), polar(out+3/k, a)
		d.Line(render.Centre, v.pt(q.X, q.Y), v.pt(w.X, w.Y))
	}
	on := func(rad length, a float64) path.Point { q := polar(rad, a); return v.pt(q.X, q.Y) }
	near := screws[0]
	for _, a := range screws {
		if math.Cos(a) > math.Cos(near)-1e-9 {
			near = a
		}
	}
	d.planNotes(p, []note{
		{on(out, j), fmt.Sprintf("joint: ends meet; a screw %s from each end", keep(d.both(r.JointEdge))), false},
		{on(r.InnerRadius, near), fmt.Sprintf("%d screws %s in all, evenly: %s along the inner face, dividers at %s", r.Screws,
			keep(screwWords(s.Spec.Screws)+" × "+d.both(s.Spec.Screws.Length)), keep(d.both(r.Step)), keep(d.both(r.Chord))), false},
		{on(r.InnerRadius, -math.Pi/5), fmt.Sprintf("sealant bead %s square along the upper edge, %s round", keep(d.both(s.Spec.Sealant.Bead)), keep(d.both(s.Sealant.Run))), false},
		{on(out, -math.Pi/3), "the outer face lies on the mesh, the mesh on the wall; the strip's length holds on the middle of its thickness", false},
	})
	d.span(v.at.X-r.InnerRadius*k, v.at.X+r.InnerRadius*k, p.low-tier, v.at.Y, "inner face "+d.dia(2*r.InnerRadius))
	strip := d.strip2(lower, s)
	return d.finish(named(p.scale, strip))
}

// strip2 draws the ring's strip laid flat: both ends true to scale, the middle
// broken out.
func (d *sheet) strip2(b path.Box, s geometry.Silo) scale {
	r, w := s.Ring, s.Spec.Ring.Width
	surplus := max(0, r.Surplus)
	right := surplus + r.JointEdge + min(r.Step, 60)
	left := r.JointEdge + r.Step
	in := inner(b, wide(d.both(w))+12, 26, 8+2*tier+4, 2*tier+3)
	sc := fit(left+right+40, w, boxW(in), boxH(in), 1)
	d.heading(b, "Strip laid flat, middle broken out", sc)
	k := length(sc.k)
	x0, x1 := in.Min.X, in.Max.X
	y := midY(in) - w*k/2
	breakL, breakR := x0+left*k+6, x1-right*k-6
	for _, yy := range []length{y, y + w*k} {
		d.Line(render.Outline, path.Pt(x0, yy), path.Pt(breakL, yy))
		d.Line(render.Outline, path.Pt(breakR, yy), path.Pt(x1, yy))
	}
	d.Line(render.Outline, path.Pt(x0, y), path.Pt(x0, y+w*k))
	d.Line(render.Outline, path.Pt(x1, y), path.Pt(x1, y+w*k))
	for _, x := range []length{breakL, breakR} {
		m := y + w*k/2
		d.PathOn(render.Thin, path.Polyline(path.Pt(x, y-3), path.Pt(x, m-1.5), path.Pt(x-1.5, m-0.7), path.Pt(x+1.5, m+0.7), path.Pt(x, m+1.5), path.Pt(x, y+w*k+3)))
	}
	trim := x1 - surplus*k
	d.Line(render.Cut, path.Pt(trim, y-2), path.Pt(trim, y+w*k+2))
	ym := y + w*k/2
	for _, x := range []length{x0 + r.JointEdge*k, x0 + (r.JointEdge+r.Step)*k, trim - r.JointEdge*k} {
		d.Circle(render.Drill, path.Pt(x, ym), max(0.6, 2*k))
		d.Line(render.Centre, path.Pt(x, y-3), path.Pt(x, y+w*k+3))
	}
	d.span(x0, x0+r.JointEdge*k, y+w*k+5, y+w*k, d.both(r.JointEdge))
	d.span(x0+r.JointEdge*k, x0+(r.JointEdge+r.Step)*k, y+w*k+5+tier, y+w*k, d.both(r.Step))
	d.rise(x0-6, y, y+w*k, x0, -1, d.both(w))
	d.span(trim, x1, y+w*k+5, y+w*k, "trim "+d.both(surplus))
	d.span(x0, trim, y-tier-1, y, "trimmed "+d.both(r.Length))
	d.span(x0, x1, y-2*tier-1, y, "as cut from the drum "+d.both(r.StripLength))
	return sc
}
