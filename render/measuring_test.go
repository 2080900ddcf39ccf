package render

import (
	"strings"
	"testing"

	"silowright/geometry/measure"
	"silowright/geometry/path"
)

func TestMeasuringSheet(t *testing.T) {
	for _, c := range []struct {
		unit          measure.Unit
		width, height measure.Length
		source        string
	}{
		{measure.UnitInch, 8.5 * measure.Inch, 11 * measure.Inch, "letter, ANSI/ASME Y14.1 size A"},
		{measure.UnitMM, 210, 297, "A4, ISO 216"},
	} {
		g := MeasuringSheet(c.unit)
		if (g.Width-c.width).Abs() > 1e-6 || (g.Height-c.height).Abs() > 1e-6 {
			t.Errorf("page is %v × %v mm; want %s", g.Width, g.Height, c.source)
		}
		if err := Check(g); err != nil {
			t.Error(err)
		}
		for _, o := range Overlaps(g) {
			t.Errorf("%s: %s", c.unit, o)
		}
		inside := func(p path.Point, what string) {
			const edge = 10 // a printer's unprintable edge, common practice, no source
			if p.X < edge || p.Y < edge || p.X > g.Width-edge || p.Y > g.Height-edge {
				t.Errorf("%s: %s at %v lies off the page", c.unit, what, p)
			}
		}
		for _, s := range g.Strokes {
			for _, seg := range s.Path {
				inside(seg.To, "a stroke")
			}
		}
		var all []string
		for _, x := range g.Texts {
			inside(x.At, x.Words)
			// a sans serif runs to half an em a letter on average
			// (common practice, no source), an em is 1/0.7 of a capital's height
			if x.Anchor == Left {
				inside(path.Pt(x.At.X+0.5*x.Size/0.7*measure.Length(len(x.Words)), x.At.Y), x.Words)
			}
			all = append(all, x.Words)
		}
		words := strings.Join(all, "\n")
		for _, key := range []string{"circumference", "height", "wall", "foot_outside", "foot_height", "head_recess",
			"from", "to", "outside", "label", "count", "explode", "Never use one without its label"} {
			if !strings.Contains(words, key) {
				t.Errorf("%s: the sheet does not say %q", c.unit, key)
			}
		}
		for _, letter := range strings.Split("ABCDEFGHIJKL", "") {
			if n := count(all, letter); n != 2 {
				t.Errorf("%s: letter %s stands %d times; want once in the picture and once at its blank", c.unit, letter, n)
			}
		}
	}
}

func count(all []string, word string) int {
	n := 0
	for _, w := range all {
		if w == word {
			n++
		}
	}
	return n
}
