package render

import (
	"silowright/geometry/measure"
	"silowright/geometry/path"
)

// Line strokes from a to b.
func (d *Drawing) Line(l Layer, a, b path.Point) { d.PathOn(l, path.Polyline(a, b)) }

// PathOn strokes a path.
func (d *Drawing) PathOn(l Layer, p path.Path) { d.Strokes = append(d.Strokes, Stroke{l, p}) }

// Circle strokes a circle.
func (d *Drawing) Circle(l Layer, c path.Point, r length) { d.PathOn(l, path.Circle(c, r)) }

// Rect strokes the box between two opposite corners.
func (d *Drawing) Rect(l Layer, a, b path.Point) {
	d.PathOn(l, path.Rect(path.Box{Min: a, Max: b}))
}

// Shade fills a path with grey: 0 white, 1 black.
func (d *Drawing) Shade(p path.Path, grey float64) { d.Fills = append(d.Fills, Fill{p, grey}) }

// Words sets one level line of words.
func (d *Drawing) Words(at path.Point, size length, a Anchor, words string) {
	d.Texts = append(d.Texts, Text{Layer: Notes, At: at, Size: size, Anchor: a, Words: words})
}

// BoldWords sets one level line of bold words.
func (d *Drawing) BoldWords(at path.Point, size length, a Anchor, words string) {
	d.Texts = append(d.Texts, Text{Layer: Notes, At: at, Size: size, Anchor: a, Bold: true, Words: words})
}

// TurnedWords sets a line of words turned about its anchor.
func (d *Drawing) TurnedWords(at path.Point, size length, a Anchor, turn measure.Angle, words string) {
	d.Texts = append(d.Texts, Text{Layer: Notes, At: at, Size: size, Anchor: a, Turn: turn, Words: words})
}

// Place draws another drawing into d with its lower left corner at at, scaled
// by scale; its words are scaled too.
func (d *Drawing) Place(o Drawing, at path.Point, scale float64) {
	d.moved(o, path.Scale(scale, scale).Then(path.Translate(at.X, at.Y)), func(t *Text) { t.Size *= length(scale) })
}

// moved draws o into d, moved by m; words keep their size and direction but
// for what word does to them.
func (d *Drawing) moved(o Drawing, m path.Affine, word func(*Text)) {
	for _, f := range o.Fills {
		d.Fills = append(d.Fills, Fill{f.Path.Transform(m), f.Shade})
	}
	for _, s := range o.Strokes {
		d.Strokes = append(d.Strokes, Stroke{s.Layer, s.Path.Transform(m)})
	}
	for _, t := range o.Texts {
		t.At = m.Apply(t.At)
		word(&t)
		d.Texts = append(d.Texts, t)
	}
}

// stretched returns d stretched by x and y from its lower left corner, for a
// printer that does not print true; words keep their size.
func (d Drawing) stretched(x, y float64) Drawing {
	out := Drawing{Title: d.Title, Description: d.Description, Width: d.Width * length(x), Height: d.Height * length(y)}
	out.moved(d, path.Scale(x, y), func(*Text) {})
	return out
}

// QuarterTurn returns d turned a quarter, counter-clockwise, words with it.
func (d Drawing) QuarterTurn() Drawing {
	out := Drawing{Title: d.Title, Description: d.Description, Width: d.Height, Height: d.Width}
	out.moved(d, path.Affine{B: 1, C: -1, E: d.Height}, func(t *Text) { t.Turn += 90 * measure.Degree })
	return out
}
