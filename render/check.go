package render

import (
	"errors"
	"fmt"

	"silowright/geometry/measure"
	"silowright/geometry/path"
)

// ErrDrawing is wrapped by the errors of Check.
var ErrDrawing = errors.New("drawing")

// pageSlack is how far a mark may pass the page's edge by rounding alone.
const pageSlack length = 0.05

// Check refuses a drawing that cannot be printed faithfully: a number that is
// not finite, a path without a beginning, a layer that is none, a rune that is
// not in the fonts, words, lines or fills off the page.
func Check(d Drawing) error {
	bad := func(format string, args ...any) error {
		return fmt.Errorf("%w %q: %w", ErrDrawing, d.Title, fmt.Errorf(format, args...))
	}
	if !(d.Width > 0 && d.Height > 0) || !d.Width.Finite() || !d.Height.Finite() {
		return bad("has no size: %v × %v mm", float64(d.Width), float64(d.Height))
	}
	for _, f := range d.Fills {
		if !f.Path.Finite() || !(f.Shade >= 0 && f.Shade <= 1) {
			return bad("a fill is not finite")
		}
		if !begun(f.Path) {
			return bad("a fill does not begin with a move")
		}
		if b := f.Path.Bounds(); off(d, b.Min) || off(d, b.Max) {
			return bad("a fill from (%.1f, %.1f) to (%.1f, %.1f) mm is off the page of %.1f × %.1f",
				float64(b.Min.X), float64(b.Min.Y), float64(b.Max.X), float64(b.Max.Y), float64(d.Width), float64(d.Height))
		}
	}
	for i, s := range d.Strokes {
		if !s.Path.Finite() {
			return bad("stroke %d is not finite", i)
		}
		if !begun(s.Path) {
			return bad("stroke %d does not begin with a move", i)
		}
		if !known(s.Layer) {
			return bad("stroke %d is on no layer", i)
		}
		if b := s.Path.Bounds(); off(d, b.Min) || off(d, b.Max) {
			return bad("a %s line from (%.1f, %.1f) to (%.1f, %.1f) mm is off the page of %.1f × %.1f", s.Layer.Group(),
				float64(b.Min.X), float64(b.Min.Y), float64(b.Max.X), float64(b.Max.Y), float64(d.Width), float64(d.Height))
		}
	}
	for _, t := range d.Texts {
		if !t.At.X.Finite() || !t.At.Y.Finite() || !t.Size.Finite() || t.Size <= 0 || !measure.Length(t.Turn).Finite() {
			return bad("%q stands nowhere", t.Words)
		}
		if !known(t.Layer) {
			return bad("%q is on no layer", t.Words)
		}
		if err := missingGlyph(t.Words); err != nil {
			return bad("%w", err)
		}
		for _, c := range t.Corners() {
			if off(d, c) {
				return bad("%q is off the page at (%.1f, %.1f) mm", t.Words, float64(c.X), float64(c.Y))
			}
		}
	}
	return nil
}

// begun reports whether a path says where its first segment starts.
func begun(p path.Path) bool { return len(p) == 0 || p[0].Kind == path.Move }

// known reports whether a layer is one that is drawn.
func known(l Layer) bool { return l >= Cut && l <= Water }

func off(d Drawing, p path.Point) bool {
	return p.X < -pageSlack || p.Y < -pageSlack || p.X > d.Width+pageSlack || p.Y > d.Height+pageSlack
}
