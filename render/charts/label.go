package charts

import (
	"silowright/geometry/path"
	"silowright/render"
)

// put sets the first of the candidates that stands clear of all words and
// lines of d and inside the box; it reports whether one did.
func put(d *render.Drawing, in path.Box, candidates ...render.Text) bool {
	for _, c := range candidates {
		if clear(d, in, c) {
			d.Texts = append(d.Texts, c)
			return true
		}
	}
	return false
}

// clear reports whether words stand free, with a little air round them.
func clear(d *render.Drawing, in path.Box, c render.Text) bool {
	if c.Words == "" {
		return false
	}
	air := c
	air.Size *= 1.12
	for _, q := range air.Corners() {
		if q.X < in.Min.X || q.X > in.Max.X || q.Y < in.Min.Y || q.Y > in.Max.Y {
			return false
		}
	}
	alone := render.Drawing{Strokes: d.Strokes, Texts: []render.Text{air}}
	if len(render.Overlaps(alone)) > 0 {
		return false
	}
	for _, t := range d.Texts {
		if len(render.Overlaps(render.Drawing{Texts: []render.Text{t, air}})) > 0 {
			return false
		}
	}
	return true
}

// around are words beside a place, right, left, above and below, near first.
func around(at path.Point, bold bool, words string) []render.Text {
	var out []render.Text
	for _, far := range []length{2, 4, 7, 11, 16} {
		for _, c := range []struct {
			dx, dy length
			a      render.Anchor
		}{{far, 0.6, render.Left}, {-far, 0.6, render.Right}, {far, -far, render.Left}, {-far, far - letters, render.Right},
			{0, far, render.Middle}, {0, -far - letters, render.Middle}, {-far, -far, render.Right}, {far, far, render.Left}} {
			out = append(out, render.Text{Layer: render.Notes, At: path.Pt(at.X+c.dx, at.Y+c.dy), Size: letters, Anchor: c.a, Bold: bold, Words: words})
		}
	}
	return out
}
