package pack

import (
	"testing"

	"silowright/render"
	"silowright/render/sheets"
)

// No drawing of any job has words that run into each other or a line through
// words, on either document paper.
func TestDrawingsAreClean(t *testing.T) {
	for name, p := range jobs(t) {
		for paper, size := range map[string]sheets.Paper{"letter": sheets.Letter, "A4": sheets.A4} {
			for _, d := range drawingPages(p, size) {
				if err := render.Check(d.page); err != nil {
					t.Errorf("%s, %s, %s: %v", name, paper, d.title, err)
				}
				for _, o := range render.Overlaps(d.page) {
					t.Errorf("%s, %s, %s: %s", name, paper, d.title, o)
				}
			}
		}
	}
}
