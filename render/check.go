package render

import (
	"errors"
	"fmt"

	"silowright/geometry/path"
)

// ErrDrawing is wrapped by the errors of Check.
var ErrDrawing = errors.New("drawing")

// pageSlack is how far a mark may pass the page's edge by rounding alone.
const pageSlack length = 0.05

// Check refuses a drawing that cannot be printed faithfully: a number that is
// not finite, a rune that is not in the fonts, words or lines off the page.
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
	}
	for i, s := range d.Strokes {
		if !s.Path.Finite() {
			return bad("stroke %d is not finite", i)
		}
		if b := s.Path.Bounds(); off(d, b.Min) || off(d, b.Max) {
			return bad("a %s line from (%.1f, %.1f) to (%.1f, %.1f) mm is off the page of %.1f × %.1f", s.Layer.Group(),
				float64(b.Min.X), float64(b.Min.Y), float64(b.Max.X), float64(b.Max.Y), float64(d.Width), float64(d.Height))
		}
	}
	for _, t := range d.Texts {
		if !t.At.X.Finite() || !t.At.Y.Finite() || !t.Size.Finite() || t.Size <= 0 {
			return bad("%q stands nowhere", t.Words)
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

func off(d Drawing, p path.Point) bool {
	return p.X < -pageSlack || p.Y < -pageSlack || p.X > d.Width+pageSlack || p.Y > d.Height+pageSlack
}
