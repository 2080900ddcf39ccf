package views

import (
	"fmt"
	"math"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
)

// Lattice draws the pattern in the body's foot, seen from below.
func Lattice(s geometry.Silo, size Size) render.Drawing {
	d := begin(s, size, "Lattice", "body, foot seen from below")
	l, sp := s.Lattice, s.Spec.Lattice
	foot := s.Spec.Drum.FootOutside
	edge := "follow the circle"
	if sp.Edge == geometry.EdgeStraight {
		edge = "are straight"
	}
	lines := []string{
		fmt.Sprintf("%d openings of %s each, %s in all: %s of the foot. Outer edges %s. All saw cuts together %s.",
			l.Openings, keep(l.Area.Both(d.units)), keep(l.OpenArea.Both(d.units)), measure.Percent(l.OpenFoot), edge, keep(d.both(l.Travel))),
		"Drill the pilots first; the saw turns in them. It is the same seen from inside.",
	}
	p := d.planIn(d.area, "Foot from below", foot, 2, lines...)
	v := p.view
	d.Circle(render.Outline, v.at, foot/2*length(v.k))
	d.Circle(render.Hidden, v.at, (foot/2-s.Spec.Drum.Wall)*length(v.k))
	d.Circle(render.Mark, v.at, sp.Across/2*length(v.k))
	for _, o := range l.Outlines {
		d.PathOn(render.Cut, o.Transform(v.to()))
	}
	tick := 2.2 / length(v.k)
	for _, q := range l.AllPilots {
		d.Circle(render.Drill, v.pt(q.X, q.Y), sp.Pilot/2*length(v.k))
		d.Line(render.Thin, v.pt(q.X-tick, q.Y), v.pt(q.X+tick, q.Y))
		d.Line(render.Thin, v.pt(q.X, q.Y-tick), v.pt(q.X, q.Y+tick))
	}
	for i := range sp.Bars {
		a := math.Pi * float64(i) / float64(sp.Bars)
		e := polar(foot/2*1.03, a)
		d.Line(render.Centre, v.pt(-e.X, -e.Y), v.pt(e.X, e.Y))
	}
	step := 360.0 / float64(2*sp.Bars)
	first := func(i int) path.Point { return v.pt(l.Pilots[i].X, l.Pilots[i].Y) }
	r, bore := sp.Across/2, foot/2-s.Spec.Drum.Wall
	at := func(r length, a float64) path.Point { q := polar(r, a); return v.pt(q.X, q.Y) }
	bar := path.Pt(r*0.72, 0)
	last := math.Pi - math.Pi/float64(sp.Bars) // a bar in the upper half
	top := polar(r, last*0.5)
	hub := l.AllPilots[len(l.AllPilots)-3] // the apex of the opening below the right bar
	ns := []note{
		{v.pt(hub.X, hub.Y), fmt.Sprintf("pilots %s, %d of them; inner ones: centres %s from the middle", keep(d.dia(sp.Pilot)), len(l.AllPilots), keep(d.both(radius(l.Pilots[0])))), false},
		{first(1), fmt.Sprintf("outer pilots: centres %s from the middle, %s from the bar's middle line", keep(d.both(radius(l.Pilots[1]))), keep(d.both(l.Pilots[1].Y.Abs()))), false},
		{v.pt(bar.X, bar.Y+sp.BarWidth/2), fmt.Sprintf("%d bars %s wide, %s apart, middle lines through the centre", sp.Bars, keep(d.both(sp.BarWidth)), keep(number(step)+"°")), false},
		{v.pt(top.X, top.Y), fmt.Sprintf("circle %s", keep(d.dia(sp.Across))), false},
		{at((r+bore)/2, -math.Pi/4), fmt.Sprintf("ledge %s for the mesh, inside", keep(d.both(l.Ledge))), true},
		{at(bore, -math.Pi/3), fmt.Sprintf("inside of the wall %s", keep(d.dia(2*bore))), false},
	}
	d.planNotes(p, ns)
	k := length(v.k)
	x := v.at.X
	d.span(x-r*k, x+r*k, p.low-tier, v.at.Y, d.dia(sp.Across))
	d.span(x-foot/2*k, x+foot/2*k, p.low-2*tier, v.at.Y, "foot "+d.dia(foot))
	d.list(p.words, lines...)
	return d.finish(p.scale)
}
