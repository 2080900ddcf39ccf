package sheets

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/stock"
	"silowright/render"
)

// wordsOf is all that is set on pages, line by line.
func wordsOf(pages ...render.Drawing) string {
	var b strings.Builder
	for _, d := range pages {
		for _, t := range d.Texts {
			b.WriteString(t.Words)
			b.WriteByte(' ')
		}
	}
	return b.String()
}

func section(t *testing.T, p Pack, id string) []render.Drawing {
	t.Helper()
	secs, err := Sections(p, Letter, id)
	if err != nil {
		t.Fatal(err)
	}
	if len(secs) != 1 || secs[0].ID != id {
		t.Fatalf("asked for %s, got %d sections", id, len(secs))
	}
	return secs[0].Pages
}

// A stop is the first thing on the first page, above every caution.
func TestStopsComeFirst(t *testing.T) {
	p := small1(t)
	in := measure.Inch
	p.Findings = append(p.Findings, geometry.Finding{ID: "outlet.saw-pipe", Drum: "blue", Level: geometry.Stop, Key: "outlet.saw",
		Measured: (2 * in).Quantity(), Limit: (2.375 * in).Quantity(), Says: "the pipe does not go through", Basis: geometry.Basis{Kind: geometry.JobSetting}})
	first := wordsOf(section(t, p, "findings")[0])
	stop, care := strings.Index(first, "1 stop: cut nothing"), strings.Index(first, "Cautions of this job")
	if stop < 0 || care >= 0 && care < stop {
		t.Errorf("stop at %d, cautions at %d of the first page", stop, care)
	}
	for _, w := range []string{"The pipe does not go through.", "2 in (50.8 mm)", "2 3/8 in (60.3 mm)", "To change: outlet.saw", "job's own setting"} {
		if !strings.Contains(first, w) {
			t.Errorf("the first page lacks %q", w)
		}
	}
	p.Findings = p.Findings[:len(p.Findings)-1]
	if got := wordsOf(section(t, p, "findings")[0]); strings.Contains(got, "cut nothing") || !strings.Contains(got, "No stop among") {
		t.Error("a pack without a stop still warns of one")
	}
}

// The level is told by a word as well as by a sign, in black and white.
func TestEveryCheckIsListed(t *testing.T) {
	p := small1(t)
	all := ""
	for _, s := range p.Silos {
		p.Findings = append(p.Findings, s.Findings...)
	}
	all = strings.ReplaceAll(wordsOf(section(t, p, "findings")...), " ", "")
	for _, x := range p.Findings {
		if !strings.Contains(all, strings.ReplaceAll(x.ID, " ", "")) {
			t.Errorf("check %s is not on the pages", x.ID)
		}
	}
}

// The numbers that cautions name. Solvents and resin: OSHA 29 CFR 1910.1000,
// tetrahydrofuran 200 ppm, styrene 100 ppm, NIOSH 50 ppm. Current: 29 CFR
// 1910.304(b)(3), near 5 mA; 30 mA elsewhere (from memory). Lifting: NIOSH Pub.
// 94-110, 23 kg or 51 lb. Hand hold: its coupling notes, 0.25 in (from memory).
// Silicone: up to 7 days (makers).
func TestCautionsSayTheirNumbers(t *testing.T) {
	want := map[string]string{
		"200 ppm": "29 CFR 1910.1000", "100 ppm and 50 ppm": "OSHA 100 ppm, NIOSH 50 ppm", "near 5 mA": "29 CFR 1910.304(b)(3)", "a 30 mA": "30 mA from memory",
		"51 lb (23 kg)": "NIOSH lifting equation, Pub. 94-110", "1/4 in (6.4 mm)": "coupling notes, from memory", "up to 7 days": "makers' usual cure times",
		"recycling code 2": "common practice, no source",
	}
	said := map[string]bool{}
	for _, c := range Cautions() {
		rest := c[0]
		for number, source := range want {
			if strings.Contains(c[0], number) {
				said[number] = true
				rest = strings.ReplaceAll(rest, number, "")
				if !strings.Contains(c[1], source) {
					t.Errorf("%q rests on %q, want %q", c[0], c[1], source)
				}
			}
		}
		if i := strings.IndexAny(strings.ReplaceAll(rest, "step 1", ""), "0123456789"); i >= 0 {
			t.Errorf("a number without a check: %q", c[0])
		}
	}
	if len(said) != len(want) {
		t.Errorf("only %v are said", said)
	}
}

// Where the work can hurt, the caution stands in the step, above what to do.
func TestCautionsStandAtTheirStep(t *testing.T) {
	p := packOf(t, measure.UnitInch, 3, drum("blue", 4, 23))
	all := wordsOf(section(t, p, "steps")...)
	at := func(after, what string) {
		t.Helper()
		i := strings.Index(all, after)
		if i < 0 {
			t.Fatalf("no step %q", after)
		}
		rest := all[i+len(after):]
		if j := strings.Index(rest, "Tool:"); j >= 0 {
			if k := strings.Index(rest[j+5:], "Tool:"); k >= 0 {
				rest = rest[:j+5+k] // up to the next step
			}
		}
		if !strings.Contains(rest, what) {
			t.Errorf("step %q lacks %q", after, what)
		}
	}
	at("Choose, clean and measure the drum", "HSE FOD 8-2010")
	at("Choose, clean and measure the drum", "§5166")
	at("Bore the wall holes", "Clamp the curved wall")
	at("Bore the wall holes", "Eye protection")
	at("Fit and screw the retaining ring", "nip and file every one flush")
	at("Seal the ring's edge", "rinse and soak")
	at("Fit the outlet", "200 ppm")
	at("Stretch the screen and bond it", "OSHA 100 ppm")
	at("Seat the body in the base", "51 lb (23 kg)")
	at("Cure, rinse and soak", "No seed before")
	at("Set up and run", "1910.304(b)(3)")
	drumStep, firstSaw := strings.Index(all, "residue in its seams"), strings.Index(all, "Saw round right under the hoop")
	if drumStep < 0 || firstSaw < drumStep {
		t.Error("the used-drum caution does not come before the first cut")
	}
	if !strings.Contains(all, "local codes") {
		t.Error("nothing defers to local codes")
	}
}

// No length stands in one unit alone: each "x in" has its mm beside it and the
// other way round. Nominal pipe sizes and the sentences that name a unit for
// itself are let through.
func TestBothUnitsOnEveryLength(t *testing.T) {
	inch := regexp.MustCompile(`[0-9] in\b`)
	inchOK := regexp.MustCompile(`[0-9] in \(−?-?[0-9.]+ mm\)|\(-?[0-9 /.]+ in\)`)
	mm := regexp.MustCompile(`[0-9] mm\b`)
	mmOK := regexp.MustCompile(`\(−?-?[0-9.]+ mm\)|[0-9] mm \([^)]* in\)`)
	nominal := regexp.MustCompile(`(mm to 0\.1|nominal [0-9/ ]+ to [0-9/ ]+ in|1/16 in adds)`)
	for _, u := range []measure.Unit{measure.UnitInch, measure.UnitMM} {
		p := packOf(t, u, 3, drum("blue", 4, 23))
		p.Figures, p.Pictures = nil, nil
		secs, err := Sections(p, A4, "build", "tools", "cuts", "holes", "steps", "marking", "traveller")
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range secs {
			all := nominal.ReplaceAllString(wordsOf(s.Pages...), "")
			if a, b := len(inch.FindAllString(all, -1)), len(inchOK.FindAllString(all, -1)); a == 0 || a > b {
				t.Errorf("%v, %s: %d lengths in inches, %d of them with mm", u, s.ID, a, b)
			}
			if a, b := len(mm.FindAllString(all, -1)), len(mmOK.FindAllString(all, -1)); a == 0 || a > b {
				t.Errorf("%v, %s: %d lengths in mm, %d of them with inches", u, s.ID, a, b)
			}
		}
	}
}

func TestTravellerHasARowForEachSilo(t *testing.T) {
	p := packOf(t, measure.UnitInch, 5, drum("blue", 30, 23), drum("white", 12, 22.5))
	p.FirstSerial = 101
	all := wordsOf(section(t, p, "traveller")...)
	for _, w := range []string{"D-101", "D-142", "P-101", "P-105", "Leak test", "Cure from", "Signed"} {
		if !strings.Contains(all, w) {
			t.Errorf("the traveller lacks %s", w)
		}
	}
	for _, w := range []string{"D-100 ", "D-143", "P-106"} {
		if strings.Contains(all, w) {
			t.Errorf("the traveller has %s, a silo that is not built", w)
		}
	}
	if !strings.Contains(all, "D-130 blue") || !strings.Contains(all, "D-131 white") {
		t.Error("the kinds do not follow their counts")
	}
	p.DrumSilos = 1000
	pages := section(t, p, "traveller")
	if last := wordsOf(pages...); !strings.Contains(last, "D-341 to D-1100") {
		t.Error("nothing says where the rows past the limit go")
	}
	if len(pages) > 30 {
		t.Errorf("%d traveller pages for 1000 silos", len(pages))
	}
}

// The bill says when prices are invented and when the total is incomplete,
// and keeps quiet otherwise.
func TestBillSaysWhatItIs(t *testing.T) {
	p := small1(t)
	all := wordsOf(section(t, p, "buy")...)
	for _, w := range []string{"invented for this example", "2 items have no price", "mesh disc; acetone", "no price", "1,234.50", "All goods, incomplete"} {
		if !strings.Contains(all, w) {
			t.Errorf("the bill lacks %q", w)
		}
	}
	p.Bill.Invented, p.Bill.Missing = false, nil
	all = wordsOf(section(t, p, "buy")...)
	for _, w := range []string{"invented for", "incomplete"} {
		if strings.Contains(all, w) {
			t.Errorf("the bill says %q without reason", w)
		}
	}
}

// Pages are numbered through all sections, and the head of a long table stands
// on each of its pages.
func TestRunningOn(t *testing.T) {
	secs, err := Sections(huge(t), Letter)
	if err != nil {
		t.Fatal(err)
	}
	total, n := 0, 0
	for _, s := range secs {
		total += len(s.Pages)
	}
	for _, s := range secs {
		for _, d := range s.Pages {
			n++
			if !strings.Contains(wordsOf(d), pageOf(n, total)) {
				t.Fatalf("page %d of %d is not numbered", n, total)
			}
		}
	}
	for _, d := range section(t, small1(t), "findings")[2:] {
		if !strings.Contains(wordsOf(d), "Measured, and limit") {
			t.Error("a page of the check table has no head")
		}
	}
}

// A letter no face holds is shown as a box, and the page says so.
func TestLettersTheFaceLacks(t *testing.T) {
	p := small1(t)
	p.Cuts[0].Piece = "nipple 名 \x00 end"
	d := section(t, p, "cuts")[0]
	if all := wordsOf(d); !strings.Contains(all, "nipple □ □ end") || !strings.Contains(all, "□ = a letter the printing face lacks") {
		t.Errorf("got %q", all)
	}
	p.Cuts[0].Piece = "nipple ½ ⌀ end"
	if all := wordsOf(section(t, p, "cuts")[0]); !strings.Contains(all, "½") {
		t.Error("½ was replaced though the face holds it")
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		paper Paper
		only  []string
		want  string
	}{
		{Paper{100, 297}, nil, "allowed from 180 × 200"},
		{Paper{}, nil, "paper 0 × 0 mm"},
		{Letter, []string{"recipe"}, `"recipe" is not a section; hint: one of [findings build`},
	} {
		_, err := Sections(small1(t), c.paper, c.only...)
		if !errors.Is(err, ErrSheets) || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v %v: %v, want %q", c.paper, c.only, err, c.want)
		}
	}
}

func TestSamePagesTwice(t *testing.T) {
	a, err := Sections(huge(t), A4)
	if err != nil {
		t.Fatal(err)
	}
	b, _ := Sections(huge(t), A4)
	if !cmp.Equal(a, b) {
		t.Error("two runs differ")
	}
}

// Little of a thing is not written as none of it.
func TestLittleIsNotNothing(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{littleVolume(0.04*measure.Millilitre, measure.UnitMM), "0.04 mL (0.0014 fl oz)"},
		{mass(0.03, measure.UnitMM), "0.03 kg (0.1 lb)"},
		{volume(0, measure.UnitMM), "0 L (0 gal)"},
		{volume(208.2*measure.Litre, measure.UnitMM), "208 L (55 gal)"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}

// The rounding error of the marking tables, by hand: 10 mm is 6.30 sixteenths
// of an inch and 6/16 in is 9.525 mm; 900 mm is 566.93 sixteenths and 567 of
// them are 900.11 mm.
func TestRoundingError(t *testing.T) {
	for _, c := range []struct {
		l    length
		want string
	}{{10, "−0.5"}, {11, "+0.1"}, {25.4, "0"}, {0, "0"}, {25.42, "0"}, {900, "+0.1"}} {
		if got := off(c.l); got != c.want {
			t.Errorf("%v mm: off %s, want %s", float64(c.l), got, c.want)
		}
	}
}

func TestWrapKeepsNumbersWhole(t *testing.T) {
	for _, l := range render.Wrap("saw 10 1/2 in (266.7 mm) and then 10 1/2 in (266.7 mm) and again", small, false, 30) {
		if strings.HasSuffix(l, "10") || strings.HasPrefix(l, "in ") || strings.HasPrefix(l, "mm") || strings.HasPrefix(l, "1/2") {
			t.Errorf("a measure is broken: %q", l)
		}
		if w := width(l, small, false); w > 30 {
			t.Errorf("%q is %.1f wide", l, float64(w))
		}
	}
}

func BenchmarkSections(b *testing.B) {
	t := &testing.T{}
	p := small1(t)
	b.ResetTimer()
	for b.Loop() {
		if _, err := Sections(p, Letter); err != nil {
			b.Fatal(err)
		}
	}
}

// Every series of the pipe tables has the name that stands on the pipe.
func TestPipeNames(t *testing.T) {
	for _, s := range stock.Series() {
		if seriesNames[s] == "" {
			t.Errorf("series %s has no name", s)
		}
	}
	for _, c := range []struct {
		size, series, want string
	}{{"1 1/2", "sch40", "NPS 1 1/2 Schedule 40"}, {"63", "pn10", "63 PN 10"}, {"110", "en1401-sn4", "110 EN 1401 SN 4"}, {"8", "new", "8 new"}} {
		if got := pipeName(geometry.PipeRef{Size: c.size, Series: c.series}); got != c.want {
			t.Errorf("%s %s is called %q, want %q", c.size, c.series, got, c.want)
		}
	}
}

// checkSections looks at every page of the i-th pack tried.
func checkSections(t *testing.T, i int, secs []Section) {
	t.Helper()
	for _, s := range secs {
		for n, d := range s.Pages {
			checkPage(t, fmt.Sprintf("%d: %s page %d", i, s.ID, n+1), d)
			if w := wordsOf(d); strings.Contains(w, "NaN") || strings.Contains(w, "Inf") {
				t.Errorf("%d: %s prints a number that is none", i, s.ID)
			}
		}
	}
}

// The heads of narrow columns are not broken within a word on any page size.
func TestHeadsAreNotBrokenWithinWords(t *testing.T) {
	for _, paper := range []Paper{Letter, A4} {
		secs, err := Sections(small1(t), paper, "marking")
		if err != nil {
			t.Fatal(err)
		}
		if all := wordsOf(secs[0].Pages...); !strings.Contains(all, "Done Step Do") {
			t.Errorf("%v mm wide: no head Done, Step, Do", float64(paper.Width))
		}
	}
}
