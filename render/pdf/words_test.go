package pdf_test

import (
	"slices"
	"strings"
	"testing"

	"silowright/geometry/measure"
	"silowright/render"
	"silowright/render/outside"
)

// Every word that poppler reads on the sheets of the templates, and it reads
// those that are clipped too, stands whole in the sheet's window or whole beside
// it; and each line of a template's words is on one of its sheets.
func TestTemplateWordsByPoppler(t *testing.T) {
	const mm = 72 / 25.4
	s := solved(t)
	across := 0
	for _, name := range []string{"letter", "A4", "148x210"} {
		paper, err := render.PaperNamed(name, measure.UnitMM)
		if err != nil {
			t.Fatal(err)
		}
		for _, tp := range s.Templates {
			g, err := render.OnPaper(render.FromTemplate(tp), paper, 6.35, 12.7, render.Stretch{})
			if err != nil {
				t.Fatal(err)
			}
			pages := outside.Pages(t, outside.File(t, "t.pdf", tiled(t, g)))
			if len(pages) != len(g.Tiles) {
				t.Fatalf("%d pages of %d sheets", len(pages), len(g.Tiles))
			}
			said := make([][]string, len(pages))
			for i, p := range pages {
				left, right := g.At.X.MM()*mm, (g.At.X+g.Window.X).MM()*mm
				top, foot := p.Height-(g.At.Y+g.Window.Y).MM()*mm, p.Height-g.At.Y.MM()*mm
				for _, w := range p.Words {
					// the box is as high as the font, a quarter more than capitals at either end
					low, high := w.YMin+(w.YMax-w.YMin)/4, w.YMax-(w.YMax-w.YMin)/4
					in := w.XMin > left-0.1 && w.XMax < right+0.1 && low > top-0.1 && high < foot+0.1
					out := w.XMax < left || w.XMin > right || high < top || low > foot
					if !in && !out {
						t.Errorf("%s on %s, sheet %s: %q is cut by the window", tp.Title, name, g.Tiles[i].Name(), w.Text)
					}
					if in {
						said[i] = append(said[i], w.Text)
					}
				}
			}
			for _, l := range tp.Labels {
				if !slices.ContainsFunc(said, func(words []string) bool {
					return !slices.ContainsFunc(strings.Fields(l.Text), func(w string) bool { return !slices.Contains(words, w) })
				}) {
					t.Errorf("%s on %s: %q is on no sheet", tp.Title, name, l.Text)
				}
			}
			across += len(g.Tiles) - 1
		}
	}
	if across < 40 {
		t.Errorf("only %d sheets are joined", across)
	}
}
