package sheets

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
	"silowright/render/views"
)

// drum is an invented drum in inches.
func drum(label string, n int, outside float64) geometry.Drum {
	in := func(x float64) length { return length(x) * measure.Inch }
	return geometry.Drum{Label: label, Count: n, Outside: in(outside), Height: in(34.5), Wall: in(0.16),
		FootOutside: in(outside - 1.2), FootHeight: in(2.5), HeadRecess: in(1.1),
		Hoops: []geometry.Hoop{{From: in(10.5), To: in(12), Outside: in(outside + 0.8)}, {From: in(22.5), To: in(24), Outside: in(outside + 0.8)}}}
}

// packOf is an invented build of the kinds given.
func packOf(t *testing.T, u measure.Unit, pipes int, drums ...geometry.Drum) Pack {
	t.Helper()
	job := geometry.Job{Name: "Invented build", Units: u, PipeSilos: pipes}
	for _, d := range drums {
		job.DrumSilos += d.Count
		job.Kinds = append(job.Kinds, geometry.DefaultSpec(d, u))
	}
	silos, err := geometry.Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	p := Pack{Name: "Tidewrack Cove, invented build", Units: u, Revision: "rev. 3 · 12 parts", DrumSilos: job.DrumSilos,
		PipeSilos: pipes, Silos: silos,
		Defaulted: []geometry.Default{{Key: "outlet.saw", Value: "2 1/2"}, {Key: "saw.kerf", Value: "1/16"}},
		Bill: Bill{Currency: "USD", Invented: true, PriceFile: "prices.csv", Total: "1,234.50", Missing: []string{"mesh disc", "acetone"},
			Categories: []Amount{{"pipework", "434.00"}, {"drums", "800.50"}}, PerSilo: []Amount{{"each drum silo", "61.70"}},
			Rows: []BillRow{{"drums", "closed-head plastic drum", "20", "1 drum", "20", "40.03", "800.50", "a neighbour, invented", ""},
				{"pipework", "coupling 2", "40", "bag of 10", "4", "108.50", "434.00", "", ""},
				{"pipework", "mesh disc", "20 m²", "roll of 10 m", "2", "", "", "", ""}}},
	}
	for _, s := range silos {
		p.Cuts = append(p.Cuts, CutRow{Stock: "2 sch40 pipe", Piece: "outlet nipple", Drum: s.Spec.Drum.Label, Count: s.Build, Length: s.Outlet.Coupling.Nipple, Note: "square ends"},
			CutRow{Stock: "mesh roll", Piece: "mesh disc", Drum: s.Spec.Drum.Label, Count: s.Build, Length: s.Disc.Across, Width: s.Disc.Across})
		for _, tm := range s.Templates {
			p.Templates = append(p.Templates, TemplateRow{Title: tm.Title, Drum: tm.Drum, Count: tm.Count, Width: tm.Width, Height: tm.Height, Sheets: 6})
		}
	}
	p.Pictures = map[string]render.Drawing{}
	for _, s := range stepsOf(&Pack{})[:8] {
		p.Pictures[s.id] = picture()
	}
	p.Figures = []render.Drawing{figureOf(250, 180)}
	return p
}

// Every build step has a picture in the order of the steps, and no picture is
// without a step.
func TestEveryStepHasItsPicture(t *testing.T) {
	var steps, pictures []string
	for _, s := range stepsOf(&Pack{}) {
		steps = append(steps, s.id)
	}
	p := packOf(t, measure.UnitInch, 1, drum("invented", 1, 23))
	for _, v := range views.Steps(p.Silos[0]) {
		pictures = append(pictures, v.ID)
	}
	if diff := cmp.Diff(steps, pictures); diff != "" {
		t.Error(diff)
	}
}

// picture is a stand-in figure: a frame with a word in it.
func picture() render.Drawing { return figureOf(70, 45) }

func figureOf(w, h length) render.Drawing {
	f := &flow{w: w, h: h, pages: []render.Drawing{{Title: "figure", Width: w, Height: h}}, replaced: []bool{false}}
	f.frame(1, 1, w-1, h-1, render.Outline)
	f.put(w/2, h/2, "picture", medium, false, render.Middle)
	return f.pages[0]
}

// huge is a pack far beyond any shop: three kinds, a thousand silos, sixty
// findings made worse, long names and letters no face holds.
func huge(t *testing.T) Pack {
	long := strings.Repeat("averyveryverylongwordwithoutanybreak", 6)
	p := packOf(t, measure.UnitInch, 400, drum("north shed, tall "+long, 500, 23), drum("b", 400, 22.5), drum("south\tlot 名前 😀", 100, 23.5))
	p.Name = "Job " + long
	p.Revision = long
	for i := range 60 {
		p.Findings = append(p.Findings, geometry.Finding{ID: fmt.Sprintf("outlet.invented-check-%d", i), Drum: "b", Level: geometry.Level(i % 3),
			Key: "outlet.saw", Measured: measure.Length(63.5).Quantity(), Limit: measure.Length(60).Quantity(),
			Says: "the finding says at length what is the matter with " + long + " and what to change", Basis: geometry.Basis{Kind: geometry.CommonPractice}})
	}
	p.Findings = append(p.Findings, geometry.Finding{ID: "endless", Level: geometry.Stop, Says: strings.Repeat("it goes on and on; ", 700)})
	for i := range 150 {
		p.Bill.Rows = append(p.Bill.Rows, BillRow{Category: []string{"drums", "sundries"}[i/100], Item: "item " + long, Need: "12 ft 3 in (3733.8 mm)", Pack: "stick of 10 ft", Packs: "3", Price: "999,999,999.99", Total: "1,999,999,999.99"})
		p.Bill.Missing = append(p.Bill.Missing, "item "+long)
	}
	return p
}

func small1(t *testing.T) Pack { return packOf(t, measure.UnitInch, 12, drum("blue", 20, 23)) }

// every section of every pack is checked for what a page must be.
func TestPagesAreSound(t *testing.T) {
	for _, c := range []struct {
		name  string
		pack  Pack
		paper Paper
	}{
		{"one kind, letter", small1(t), Letter},
		{"one kind, metric, A4", packOf(t, measure.UnitMM, 3, drum("blau", 5, 23)), A4},
		{"no pipe silos", packOf(t, measure.UnitInch, 0, drum("blue", 1, 23)), Letter},
		{"nothing in it", Pack{}, A4},
		{"huge, letter", huge(t), Letter},
		{"huge, small paper", huge(t), Paper{180, 200}},
	} {
		t.Run(c.name, func(t *testing.T) {
			secs, err := Sections(c.pack, c.paper)
			if err != nil {
				t.Fatal(err)
			}
			if len(secs) != len(IDs()) {
				t.Fatalf("%d sections, want %d", len(secs), len(IDs()))
			}
			n := 0
			for _, s := range secs {
				for i, d := range s.Pages {
					n++
					checkPage(t, fmt.Sprintf("%s page %d", s.ID, i+1), d)
				}
			}
			if n > 500 {
				t.Errorf("%d pages: more than a shop can carry", n)
			}
		})
	}
}

func checkPage(t *testing.T, name string, d render.Drawing) {
	t.Helper()
	if err := render.Check(d); err != nil {
		t.Errorf("%s: %v", name, err)
	}
	if o := render.Overlaps(d); len(o) > 0 {
		t.Errorf("%s: words overlap: %v", name, o[0])
	}
	if len(d.Texts) < 4 {
		t.Errorf("%s: only %d lines of words", name, len(d.Texts))
	}
	for _, x := range d.Texts {
		lo, hi := x.Corners()[0], x.Corners()[0]
		for _, c := range x.Corners() {
			lo, hi = path.Pt(min(lo.X, c.X), min(lo.Y, c.Y)), path.Pt(max(hi.X, c.X), max(hi.Y, c.Y))
		}
		if lo.X < 10 || hi.X > d.Width-8 || lo.Y < 7 || hi.Y > d.Height-7 {
			t.Errorf("%s: %q leaves the page: x %.1f to %.1f, y %.1f", name, x.Words, float64(lo.X), float64(hi.X), float64(x.At.Y))
		}
		if !render.HasGlyphs(x.Words) {
			t.Errorf("%s: %q has a letter the face lacks", name, x.Words)
		}
	}
}
