package render

import (
	"silowright/geometry"
	"silowright/geometry/path"
)

// FromTemplate draws a template at true size: cut lines heavy, corner holes
// with their centres, marks light, words on top.
func FromTemplate(t geometry.Template) Drawing {
	d := Drawing{Title: t.Title, Description: t.Part + ", drum " + t.Drum + ": " + t.Up, Width: t.Width, Height: t.Height}
	for _, s := range t.Shapes {
		l := Mark
		switch s.Role {
		case geometry.Cut:
			l = Cut
		case geometry.Drill:
			l = Drill
		case geometry.Note:
			l = Notes
		}
		d.PathOn(l, s.Path)
		if l == Drill {
			d.punch(s.Path.Bounds())
		}
	}
	for _, l := range t.Labels {
		d.Words(l.At, l.Size, Middle, l.Text)
	}
	return d
}

// punch marks the centre of a hole to be drilled, for the point of a punch: a
// cross well inside the hole's edge.
func (d *Drawing) punch(hole path.Box) {
	c := path.Pt((hole.Min.X+hole.Max.X)/2, (hole.Min.Y+hole.Max.Y)/2)
	r := min(2, (hole.Max.X-hole.Min.X)/4)
	d.Line(Mark, path.Pt(c.X-r, c.Y), path.Pt(c.X+r, c.Y))
	d.Line(Mark, path.Pt(c.X, c.Y-r), path.Pt(c.X, c.Y+r))
}
