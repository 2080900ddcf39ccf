package sheets

import (
	"strings"
	"testing"

	"silowright/render/outside"
)

// poppler's own reading of the finished file: every page is there, every word
// lies inside its page's margins, and the words read as they were set.
func TestPopplerReadsThePages(t *testing.T) {
	secs, err := Sections(withShop(small1(t)), Letter)
	if err != nil {
		t.Fatal(err)
	}
	pages := 0
	for _, s := range secs {
		pages += len(s.Pages)
	}
	read := outside.Pages(t, outside.File(t, "sheets.pdf", bookOf(t, secs)))
	if len(read) != pages {
		t.Fatalf("poppler finds %d pages, %d were set", len(read), pages)
	}
	const point = 72 / 25.4 // points in a mm
	var all strings.Builder
	for i, p := range read {
		if d := p.Width/point - float64(Letter.Width); d > 0.1 || d < -0.1 {
			t.Errorf("page %d is %.2f mm wide", i+1, p.Width/point)
		}
		if len(p.Words) < 15 {
			t.Errorf("page %d has only %d words", i+1, len(p.Words))
		}
		for _, x := range p.Words {
			all.WriteString(x.Text + " ")
			if x.XMin < 19*point || x.XMax > p.Width-11*point || x.YMin < 5*point || x.YMax > p.Height-5*point {
				t.Errorf("page %d: %q at (%.0f, %.0f) to (%.0f, %.0f) pt leaves the margins", i+1, x.Text, x.XMin, x.YMin, x.XMax, x.YMax)
			}
		}
	}
	for _, s := range secs {
		if !strings.Contains(all.String(), s.Title) {
			t.Errorf("poppler does not read %q", s.Title)
		}
	}
}
