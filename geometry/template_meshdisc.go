package geometry

import (
	"silowright/geometry/measure"
	"silowright/geometry/path"
)

// meshDiscTemplate is the mesh disc with its bend and its snips.
func meshDiscTemplate(s *Silo) Template {
	m := s.Disc
	u := s.Spec.Units
	edge := length(8)
	side := m.Across + 2*edge
	t := newTemplate(s, "mesh-disc", "Mesh disc", "mesh", s.Build, side, side)
	t.Sheet = MeshRoll
	t.Up = "either way up"
	t.Compass = true
	c := path.Pt(side/2, side/2)
	t.cut(path.Circle(c, m.Across/2))
	t.mark(path.Circle(c, m.Bend/2))
	t.cross(c, 8)
	for i := range m.Snips {
		a := measure.Angle(i) * measure.FullTurn / measure.Angle(m.Snips)
		from, to := polar(m.Across/2, a), polar(m.Across/2-m.SnipDepth, a)
		snip := line(path.Pt(c.X+from.X, c.Y+from.Y), path.Pt(c.X+to.X, c.Y+to.Y))
		t.Shapes = append(t.Shapes, Shape{Cut, snip})
		t.CutLength += m.SnipDepth
	}
	t.label(path.Pt(c.X, c.Y+24), 3.5, "mesh disc %s across", m.Across.Both(u))
	t.label(path.Pt(c.X, c.Y+16), 2.5, "light circle: bend, %s across", m.Bend.Both(u))
	t.label(path.Pt(c.X, c.Y-20), 2.5, "%d snips, %s deep", m.Snips, m.SnipDepth.Both(u))
	return t
}
