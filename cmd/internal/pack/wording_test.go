package pack

import (
	"regexp"
	"strings"
	"testing"
)

// What the pages must not say of the jobs at hand: a row of silos from one to
// itself, a least and a most of what is the same all round, an area's unit with
// a 2 on the line, a total cut short.
func TestPagesReadWell(t *testing.T) {
	row := regexp.MustCompile(`\b(\d+)–(\d+)\b`)
	square := regexp.MustCompile(`\b(mm|cm|m|in|ft|yd)2\b`)
	for name, p := range jobs(t) {
		pages, err := Pages(p, DefaultOptions(p.Job.Units))
		if err != nil {
			t.Fatal(err)
		}
		for i, pg := range pages {
			for _, x := range pg.Drawing.Texts {
				for _, m := range row.FindAllStringSubmatch(x.Words, -1) {
					if m[1] == m[2] {
						t.Errorf("%s, page %d, %s: %q", name, i+1, pg.Title, x.Words)
					}
				}
				if square.MatchString(x.Words) {
					t.Errorf("%s, page %d, %s: %q", name, i+1, pg.Title, x.Words)
				}
				if strings.Contains(x.Words, "the least is 100 % of the average") && name != "demo" {
					t.Errorf("%s, page %d: %q", name, i+1, x.Words)
				}
			}
			if strings.HasPrefix(pg.Title, "What it costs") {
				var said []string
				for _, x := range pg.Drawing.Texts {
					said = append(said, x.Words)
				}
				if all := strings.Join(said, " "); strings.Contains(all, "…") || !strings.Contains(all, p.Cost.Total.String()) {
					t.Errorf("%s: the cost page is cut short, or does not say %s: %s", name, p.Cost.Total, all)
				}
			}
		}
	}
}
