package geometry

import (
	"silowright/geometry/measure"
	"silowright/geometry/path"
)

// latticeTemplate is the foot's pattern seen from below, the circle round it
// and the bars' middle lines marked; it is the same mirrored.
func latticeTemplate(s *Silo) Template {
	l := s.Spec.Lattice
	u := s.Spec.Units
	edge := length(12)
	side := l.Across + 2*edge
	t := newTemplate(s, "lattice", "Lattice", "body, foot", s.Build, side, side)
	t.Sheet = Plywood
	t.Up = "either way up; the arrow points at the datum line"
	c := path.Pt(side/2, side/2)
	for _, o := range s.Lattice.Outlines {
		t.cut(moved(o, c))
	}
	for _, p := range s.Lattice.AllPilots {
		t.drill(path.Circle(path.Pt(p.X+c.X, p.Y+c.Y), l.Pilot/2))
	}
	t.mark(path.Circle(c, l.Across/2))
	for i := range l.Bars {
		a := measure.Angle(i) * measure.FullTurn / measure.Angle(2*l.Bars)
		p := polar(l.Across/2+edge/2, a)
		t.mark(line(path.Pt(c.X-p.X, c.Y-p.Y), path.Pt(c.X+p.X, c.Y+p.Y)))
	}
	// the arrow at the datum's end of the first bar
	tip := path.Pt(c.X+l.Across/2+edge-2, c.Y)
	t.mark(path.Polyline(path.Pt(tip.X-5, tip.Y+2.5), tip, path.Pt(tip.X-5, tip.Y-2.5)))
	if l.BarWidth > 14 && l.Across > 120 {
		t.label(path.Pt(c.X+l.Across/2-14, c.Y+2.5), 2.5, "to the datum")
	}
	far := polar(l.Across/2*0.62, measure.FullTurn/measure.Angle(4*l.Bars))
	at := path.Pt(c.X+far.X, c.Y+far.Y)
	t.label(path.Pt(at.X, at.Y+7), 3.5, "cut out")
	t.label(path.Pt(at.X, at.Y), 2.5, "circle %s", l.Across.Both(u))
	t.label(path.Pt(at.X, at.Y-5), 2.5, "bars %s", l.BarWidth.Both(u))
	t.label(path.Pt(at.X, at.Y-10), 2.5, "pilots %s", l.Pilot.Both(u))
	return t
}
