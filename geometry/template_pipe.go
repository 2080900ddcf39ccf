package geometry

import (
	"silowright/geometry/path"
)

// pipeWrapTemplate goes once round the pipe silo: its upright edges meet when
// the pipe's outside is what the table says. Lower edge: the screened end.
func pipeWrapTemplate(s *Silo) Template {
	u := s.Spec.Units
	p := s.Pipe
	t := newTemplate(s, "pipe-wrap", "Pipe silo wrap", "pipe silo", 0, p.Wrap, s.Spec.Pipe.Length)
	t.Up = "screened end downwards"
	t.mark(path.Rect(path.Box{Min: path.Pt(0, 0), Max: path.Pt(t.Width, t.Height)}))
	c := path.Pt(t.Width/2, p.Hole.Height)
	t.mark(line(path.Pt(c.X, 0), path.Pt(c.X, t.Height)))
	t.mark(line(path.Pt(0, c.Y), path.Pt(t.Width, c.Y)))
	t.cut(moved(p.Hole.Outline(), c))
	t.drill(path.Circle(c, pilotBit/2))
	t.label(path.Pt(t.Width/4, c.Y+4), 2.5, "level line: %s above the screened end", p.Hole.Height.Both(u))
	t.label(path.Pt(t.Width/4, 6), 3.5, "screened end")
	t.label(path.Pt(3*t.Width/4, 6), 2.5, "pipe %s, wrap %s long", p.Outside.Both(u), p.Wrap.Both(u))
	t.label(path.Pt(3*t.Width/4, c.Y+4), 2.5, "hole saw %s", p.Hole.Saw.Both(u))
	return t
}
