package render

import "silowright/geometry"

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
	}
	for _, l := range t.Labels {
		d.Words(l.At, l.Size, Middle, l.Text)
	}
	return d
}
