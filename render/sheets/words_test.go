package sheets

import (
	"math"
	"strings"
	"testing"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/render"
)

// Whatever a user writes as a name, label or note, every page stays sound.
func FuzzAnyWords(f *testing.F) {
	f.Add("blue", "note")
	f.Add("", " \n\t ")
	f.Add(strings.Repeat("W", 500), strings.Repeat("i ", 900))
	f.Add(strings.Repeat("M", 3000), strings.Repeat("ab cd ", 100))
	f.Add("\xff\xfe broken", "😀 名前 \u202e turned \u0301")
	f.Add("a-b.c/d_e,f"+strings.Repeat("-x", 200), "1/2 in 3/4 in (1/2 in) 7 mm")
	f.Fuzz(func(t *testing.T, label, note string) {
		if len(label)+len(note) > 4000 {
			t.Skip("longer than a job file's lines")
		}
		s := geometry.Silo{Build: 3}
		s.Spec.Drum.Label = label
		p := Pack{Name: label, Revision: note, DrumSilos: 3, PipeSilos: 1, Silos: []geometry.Silo{s, s},
			Findings:  []geometry.Finding{{ID: label, Drum: note, Level: geometry.Stop, Key: label, Says: note, Basis: geometry.Basis{Kind: label, Source: note}}},
			Defaulted: []geometry.Default{{Key: label, Value: note}},
			Bill:      Bill{Currency: label, Total: note, Missing: []string{label}, Rows: []BillRow{{label, note, label, note, "1", label, note, label, note}}},
			Cuts:      []CutRow{{Stock: label, Piece: note, Drum: label, Count: 1, Length: 10, Note: note}},
			Templates: []TemplateRow{{Title: label, Drum: note, Width: 10, Height: 10}},
			Have:      []string{label, note},
			Orders: []Order{{Supplier: label, Rows: []OrderRow{{label, note, label, note, label, note, label}},
				Sums: OrderSums{label, note, label, note}, Notes: []string{label, note}}},
			Bars: []Bars{{Item: label, Says: []string{note, label}, Sticks: []Bar{{Count: 1, Length: 1000, Kerf: 3, Trim: 5, Keep: true, Offname: label, Offcut: 92,
				Cuts: []BarCut{{note, 600}, {label, 300}}}}}},
			Rolls:  []Roll{{Item: label, Says: []string{note}, Pattern: note, Piece: label, Width: 1000, Length: 500, Across: 450, Count: 1}},
			Plates: []Sheet{{Item: note, Says: []string{label}, Width: 1000, Height: 500, Count: 1, Parts: []Rect{{0, 0, 400, 400, label}, {500, 0, 20, 20, note}}}},
			Work: &Work{Operations: []WorkRow{{label, note, label, note, label, note, label}}, Lines: []Amount{{note, label}}, Stages: []string{label, note},
				Days: []WorkDay{{Name: note, Does: []string{label, note}, Cures: []string{note, label}, Hours: label}}, Notes: []string{label}}}
		p.Cost = &Cost{Currency: note, Suppliers: p.Orders, Bought: p.Orders[0].Sums, Total: label, Points: []CostPoint{{note, label, note, label, note, true}}, Counted: label,
			Curve: []CurvePoint{{1, 9, note}, {2, 5, label}}, Built: 2, Shares: []Share{{label, note, 0.7}, {note, label, 0.3}}, Lines: []Amount{{label, note}},
			Stale: []string{note}, Missing: []string{label, note}}
		secs, err := Sections(p, Letter)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range secs {
			for _, d := range s.Pages {
				checkPage(t, s.ID, d)
			}
		}
	})
}

// A silo without sizes prints zeros, never "NaN".
func TestNoNumberIsNotFinite(t *testing.T) {
	secs, err := Sections(Pack{PipeSilos: 1, Silos: make([]geometry.Silo, 2)}, A4)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range secs {
		if w := wordsOf(s.Pages...); strings.Contains(w, "NaN") || strings.Contains(w, "Inf") {
			t.Errorf("%s prints a number that is not finite", s.ID)
		}
	}
}

// Paper of any allowed size carries every section.
func TestAnyPaper(t *testing.T) {
	p := small1(t)
	for _, paper := range []Paper{{180, 200}, {182, 257}, {215.9, 355.6}, {297, 420}, {420, 297}, {1000, 1400}} {
		secs, err := Sections(p, paper)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range secs {
			for _, d := range s.Pages {
				checkPage(t, s.ID+" on "+paper.Width.Both(measure.UnitMM), d)
			}
		}
	}
}

// A picture without a size, or with one that is not a number, is left out
// rather than spoiling the step.
func TestBadPictures(t *testing.T) {
	p := small1(t)
	for _, w := range []length{0, -5, length(math.NaN()), length(math.Inf(1))} {
		p.Pictures = map[string]render.Drawing{"drum": {Width: w, Height: 40}, "mark": {Width: 40, Height: w}}
		p.Figures = []render.Drawing{{Width: w, Height: w}}
		for _, d := range section(t, p, "steps") {
			checkPage(t, "steps", d)
		}
		for _, d := range section(t, p, "build") {
			checkPage(t, "build", d)
		}
	}
}
