package sheets

import (
	"fmt"
	"math"
	"math/rand"
	"regexp"
	"strings"
	"testing"

	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
)

func shop(t *testing.T) Pack { return withShop(small1(t)) }

// holds reports the words that are missing from a section's pages, in order:
// each is looked for behind the one before it.
func holds(t *testing.T, p Pack, id string, words ...string) {
	t.Helper()
	rest := wordsOf(section(t, p, id)...)
	for _, w := range words {
		i := strings.Index(rest, w)
		if i < 0 {
			t.Errorf("%s: no %q in the words after the one before it", id, w)
			continue
		}
		rest = rest[i+len(w):]
	}
}

// One page answers the three questions of issue 4 in their order, with the
// warnings above every number.
func TestCostAnswersThreeQuestions(t *testing.T) {
	p := shop(t)
	holds(t, p, "cost", "The whole build: USD 3,102.51, for 20 drum silos and 12 pipe silos.", "invented for this example", "incomplete: 1 item has no price: acetone",
		"quoted longer ago than 180 days", "What do I buy?", "Goods, USD", "Tidewrack Hardware", "612.40", "25.00", "42.87", "680.27", "All suppliers", "1,486.77",
		"What does one cost?", "One more, USD", "20, this build", "3,102.51", "126.60", "41.10", "112.07", "number of drum silos built", "Cost of each, USD (from 100 up; off the scale up to 2, 1 at 480.00)",
		"this build: 20, 125.40", "Where does the money go?", "Labour", "1,150.00 · 37 %", "Tax", "42.87 · 1 %", "Hours of work", "46 h", "Leftovers are worth", "USD 61.18")
	p.Cost.Invented, p.Cost.Missing, p.Cost.Stale = false, nil, nil
	if got := wordsOf(section(t, p, "cost")...); strings.Contains(got, "invented for") || strings.Contains(got, "incomplete") || strings.Contains(got, "longer ago") {
		t.Error("the cost page warns without reason")
	}
}

// A total that is a sentence is set whole, with its own currency alone.
func TestTotalInWords(t *testing.T) {
	p := shop(t)
	p.Cost.Total = "incomplete: 12 items without a price, the others USD 3,102.51"
	holds(t, p, "cost", "The whole build: incomplete: 12 items without a price, the others", "USD 3,102.51, for 20 drum silos and 12 pipe silos.")
	if got := wordsOf(section(t, p, "cost")...); strings.Contains(got, "USD incomplete") {
		t.Errorf("a currency stands before words: %.200s", got)
	}
}

// Eight suppliers, a dozen categories and every warning still are one page.
func TestCostIsOnePage(t *testing.T) {
	p := shop(t)
	for i := range 5 {
		o := p.Orders[i%3]
		o.Supplier = fmt.Sprintf("supplier %d of the far side of the bay, invented", i)
		p.Orders = append(p.Orders, o)
	}
	p.Cost.Suppliers = p.Orders
	p.Cost.Points = append(p.Cost.Points, CostPoint{"100", "USD 12,900.12", "USD 101.02", "USD 33.33", "USD 99.00", false})
	p.Cost.Shares = append(p.Cost.Shares, Share{"Screws", "USD 12.00", 0.004}, Share{"Abrasives", "USD 2.00", 0.001})
	for i := range 9 {
		p.Cost.Missing = append(p.Cost.Missing, fmt.Sprintf("an item of the price list, number %d", i))
	}
	for _, paper := range []Paper{Letter, A4} {
		secs, err := Sections(p, paper, "cost")
		if err != nil {
			t.Fatal(err)
		}
		if len(secs[0].Pages) != 1 {
			t.Errorf("%d pages on paper %s mm high", len(secs[0].Pages), paper.Height.Metric())
		}
		checkPage(t, "cost", secs[0].Pages[0])
	}
	holds(t, p, "cost", "; and 6 more.", "supplier 4 of the far side", "Abrasives", "2.00 · under 1 %", "Leftovers are worth")
}

func TestOrdersStandTogether(t *testing.T) {
	p := shop(t)
	holds(t, p, "orders", "invented for this example. Send nothing", "Order to Tidewrack Hardware", "pipe-2", "NPS 2 Schedule 40", "2026-03-01", "stick of 10 ft", "12", "14.20", "170.40",
		"Goods", "612.40", "Shipping", "25.00", "Tax", "42.87", "Order total", "680.27", "Minimum order USD 50.00: met.", "Order to Cove Mesh", "Order total", "406.50",
		"acetone", "no price")
	// A list that fits on a page is not broken: its heading and its total are on one.
	for i := range 12 {
		o := p.Orders[0]
		o.Supplier = fmt.Sprintf("supplier %d", i)
		p.Orders = append(p.Orders, o)
	}
	for i, d := range section(t, p, "orders") {
		w := wordsOf(d)
		if a, b := strings.Count(w, "Order to "), strings.Count(w, "Order total"); a != b || a == 0 {
			t.Errorf("page %d has %d lists and %d totals", i+1, a, b)
		}
	}
}

func TestCuttingPlanIsWritten(t *testing.T) {
	holds(t, shop(t), "cutting", "Pipe NPS 2 Schedule 40", "4 × 10 ft, USD 56.80, proven least", "1 ×", "offcut, 3 1/8 in, scrap", "from the rack, stick 50 in: 7 a",
		"3 ×", "offcut A, 7 in, scrap", "stick 120 in: 12 a + 8 b", "offcut B, 53 1/2 in, keep", "inlet stub", "6 1/2 in (165.1 mm)", "43", "outlet nipple", "4 in (101.6 mm)", "40",
		"Pieces from each", "12 a + 8 b", "trim 1/2 in (12.7 mm)", "kerf 1/8 in (3.2 mm)", "keep as B",
		"at most USD 12.00 above the bound", "a pipe silo", "22 in", "Offcuts to keep", "B", "Pipe NPS 2", "53 1/2 in (1358.9 mm)", "D", "Pipe NPS 8",
		"Plastic mesh", "Zigzag: 40 × mesh disc, 22 1/2 in (571.5 mm) across", "16 yd of 48 in, USD 388.00", "48 in", "of 450 in (11430 mm) used", "of 40 are drawn",
		"Rows: 6 × screen square, 11 7/16 in (290 mm) square", "Plywood 1/4 in", "a lattice template", "scale 1:20", "handle slot template")
}

func TestWorkIsWritten(t *testing.T) {
	holds(t, shop(t), "work", "the job's own numbers", "Learning: each doubling takes", "90 % of the minutes", "Saw the lattice", "m of jigsaw", "6.4", "5", "32", "7.4", "All operations", "46",
		"Day plan: 5 days", "Day 1", "Day 5", "Seal the ring", "11", "sets", "Hours of work", "14 h",
		"What sets overnight", "day 4", "Seal the ring: sealant, 24 h", "The sealant's cure, 24 h, decides")
}

// However long the table above it, the day plan's heading is on the page of its
// table, as a plan that fits on a page is not broken.
func TestDayPlanStaysUnderItsHeading(t *testing.T) {
	p := shop(t)
	work := *p.Work
	p.Work = &work
	turned := 0
	for range 50 {
		work.Operations = append(work.Operations, work.Operations[0])
		for i, d := range section(t, p, "work") {
			w := wordsOf(d)
			plan := strings.Index(w, "Day plan: ")
			if plan < 0 {
				continue
			}
			turned = max(turned, i)
			if rest := w[plan:]; !strings.Contains(rest, "Day 1") || !strings.Contains(rest, "Hours of work") {
				t.Errorf("%d operations: the plan is not on the page of its heading", len(work.Operations))
			}
		}
	}
	if turned < 1 {
		t.Error("the plan never came on a further page")
	}
}

// A section that is given nothing says so in one sentence.
func TestNothingWorkedOut(t *testing.T) {
	for id, want := range map[string]string{"cost": "No costs were", "orders": "No orders were", "cutting": "No cutting plan was", "work": "No hours were"} {
		p := section(t, small1(t), id)
		if len(p) != 1 || !strings.Contains(wordsOf(p...), want+" worked out for this pack.") {
			t.Errorf("%s: %q", id, wordsOf(p...))
		}
	}
}

// A line is ticked when all it names is on hand, whatever the capitals, and a
// tool no list names is not lost.
func TestToolsOnHand(t *testing.T) {
	p := Pack{Have: []string{"Steel rule", "hole saw 2 1/2 in", "jigsaw", "shears", "square", "tape measure", "lathe"}}
	for _, c := range []struct {
		item, says string
		all        bool
	}{
		{"Jigsaw", "on hand", true}, {"Jigsaw blade for plastics", "", false}, {"hole saw 2 1/2 in (63.5 mm)", "on hand", true}, {"hole saw 2 in (50.8 mm)", "", false},
		{"Tape measure, steel rule, square", "on hand", true}, {"Square and a plumb line", "on hand: square", false}, {"Snips or shears", "on hand", true}, {"", "", false},
	} {
		all, _ := p.has(c.item)
		if got := p.onHand(c.item); got != c.says || all != c.all {
			t.Errorf("%q: %v, %q; want %v, %q", c.item, all, got, c.all, c.says)
		}
	}
	ticked := func(have ...string) int {
		q := small1(t)
		q.Have = have
		n := 0
		for _, d := range section(t, q, "tools") {
			for _, s := range d.Strokes {
				if len(s.Path) == 3 { // the tick: two strokes of the pen
					n++
				}
			}
		}
		return n
	}
	if a, b := ticked(), ticked("jigsaw", "hole saw 2 1/2 in (63.5 mm)"); a != 0 || b != 2 {
		t.Errorf("%d ticks without and %d with two tools on hand", a, b)
	}
	q := small1(t)
	q.Have = []string{"jigsaw", "lathe"}
	holds(t, q, "tools", "Also on hand: lathe.")
	q.Bill.Rows[0].Have = "2 of them on hand"
	holds(t, q, "buy", "closed-head plastic drum", "2 of them on hand")
}

// Pieces of a stick are drawn to scale: by hand, a stick of 1000 mm with 5 off
// its end, cuts of 600 and 300 and a saw of 3 has its kerfs at 605 and 908.
func TestBarsAreToScale(t *testing.T) {
	p := Pack{Bars: []Bars{{Item: "pipe", Sticks: []Bar{{Count: 7, Length: 1000, Trim: 5, Kerf: 3, Offcut: 89, Cuts: []BarCut{{"long", 600}, {"short", 300}}}}}}}
	d := section(t, p, "cutting")[0]
	var stick path.Box
	for _, s := range d.Strokes {
		if b := s.Path.Bounds(); s.Layer == render.Outline && math.Abs(float64(b.Max.Y-b.Min.Y-barHigh)) < 1e-6 {
			stick = b
		}
	}
	k := (stick.Max.X - stick.Min.X) / 1000
	var kerfs []length
	for _, f := range d.Fills {
		if b := f.Path.Bounds(); f.Shade == 1 && b.Min.Y >= stick.Min.Y-0.01 && b.Max.Y <= stick.Max.Y+0.01 && b.Max.Y-b.Min.Y > barHigh-0.01 {
			kerfs = append(kerfs, b.Min.X, b.Max.X)
		}
	}
	want := []length{605, 608, 908, 911}
	if len(kerfs) != len(want) {
		t.Fatalf("%d edges of kerfs, want %d", len(kerfs), len(want))
	}
	for i, w := range want {
		if got := (kerfs[i] - stick.Min.X) / k; math.Abs(float64(got-w)) > 0.01 {
			t.Errorf("kerf edge %d at %.2f mm of the stick, want %.2f", i, float64(got), float64(w))
		}
	}
}

// Discs and squares stand where they are laid, at the scale that is written:
// distances measured on paper, times the scale, are those given.
func TestRollsAreToScale(t *testing.T) {
	r := Roll{Item: "mesh", Pattern: "rows", Piece: "disc", Width: 1000, Length: 1170, Discs: true, Across: 450, Count: 4,
		Places: []path.Point{path.Pt(225, 225), path.Pt(225, 775), path.Pt(945, 225), path.Pt(945, 775)}}
	d := section(t, Pack{Rolls: []Roll{r}}, "cutting")[0]
	scale := length(0)
	if m := regexp.MustCompile(`scale 1:(\d+)`).FindStringSubmatch(wordsOf(d)); m != nil {
		fmt.Sscan(m[1], &scale)
	}
	var at []path.Point
	for _, s := range d.Strokes {
		b := s.Path.Bounds()
		if w, h := b.Max.X-b.Min.X, b.Max.Y-b.Min.Y; (w-450/scale).Abs() < 0.01 && (h-450/scale).Abs() < 0.01 {
			at = append(at, path.Pt((b.Min.X+b.Max.X)/2, (b.Min.Y+b.Max.Y)/2))
		}
	}
	if len(at) != 4 {
		t.Fatalf("%d discs of 450 mm at 1:%v, want 4", len(at), float64(scale))
	}
	for i := range at {
		dx, dy := (at[i].X-at[0].X)*scale, (at[i].Y-at[0].Y)*scale
		if (dx-(r.Places[i].X-225)).Abs() > 0.1 || (dy-(r.Places[i].Y-225)).Abs() > 0.1 {
			t.Errorf("disc %d is %.1f along and %.1f across from the first", i, float64(dx), float64(dy))
		}
	}
}

// Whatever is given, nothing leaves the page, no words run into others.
func TestAnyShop(t *testing.T) {
	r := rand.New(rand.NewSource(4))
	for i := range 30 {
		p := anyShop(r)
		paper := []Paper{Letter, A4, {180, 200}}[i%3]
		secs, err := Sections(p, paper, "buy", "cost", "orders", "cutting", "work")
		if err != nil {
			t.Fatalf("%d: %v", i, err)
		}
		checkSections(t, i, secs)
	}
}

// anyShop is a pack of random size with random, long, broken and huge values.
func anyShop(r *rand.Rand) Pack {
	word := func() string {
		return []string{"", "a", "outlet nipple", "pipe silo of the north shed, tall", strings.Repeat("endless", 20), "名 \x00 ½ □", strings.Repeat("many words ", 30)}[r.Intn(7)]
	}
	money := func() string {
		return []string{"", "USD 1.00", "USD 1,234.56", "USD 92,233,720,368,547,758.07", "JPY 5"}[r.Intn(5)]
	}
	long := func(most float64) length {
		switch r.Intn(40) {
		case 0:
			return length(math.NaN())
		case 1:
			return length(math.Inf(1))
		case 2:
			return -5
		case 3:
			return 0
		}
		return length(r.Float64() * most)
	}
	words := func(most int) []string {
		var out []string
		for range r.Intn(most) {
			out = append(out, word())
		}
		return out
	}
	p := Pack{Name: word(), Units: measure.Unit(r.Intn(2)), DrumSilos: r.Intn(2000), PipeSilos: r.Intn(2000), Have: words(4)}
	p.Bill.Currency = "USD"
	sums := func() OrderSums { return OrderSums{money(), money(), money(), money()} }
	for range r.Intn(9) {
		o := Order{Supplier: word(), Sums: sums(), Notes: words(3)}
		for range r.Intn(60) {
			o.Rows = append(o.Rows, OrderRow{word(), word(), word(), money(), money(), money(), "2026-03-01"})
		}
		p.Orders = append(p.Orders, o)
	}
	c := &Cost{Currency: "USD", Suppliers: p.Orders, Bought: sums(), Total: money(), Counted: word(), Stale: words(9), Missing: words(40), Invented: r.Intn(2) == 0, Built: r.Intn(60)}
	for range r.Intn(8) {
		c.Points = append(c.Points, CostPoint{word(), money(), money(), money(), money(), r.Intn(3) == 0})
	}
	for n := range r.Intn(3000) {
		c.Curve = append(c.Curve, CurvePoint{n, float64(long(math.Pow(10, float64(r.Intn(12))))), money()})
	}
	for range r.Intn(14) {
		c.Shares = append(c.Shares, Share{word(), money(), r.Float64()*1.2 - 0.1})
		c.Lines = append(c.Lines, Amount{word(), money()})
	}
	p.Cost = c
	for range r.Intn(3) {
		b := Bars{Item: word(), Says: words(3)}
		kinds := make([]BarCut, 1+r.Intn(40))
		for i := range kinds {
			kinds[i] = BarCut{word(), long(1500)}
		}
		for range r.Intn(41) {
			s := Bar{Count: r.Intn(100000), Length: long(6000), FromRack: r.Intn(3) == 0, Trim: long(20), Kerf: long(5), Offcut: long(500), Offname: word(), Keep: r.Intn(2) == 0}
			for range r.Intn(30) {
				s.Cuts = append(s.Cuts, kinds[r.Intn(len(kinds))])
			}
			b.Sticks = append(b.Sticks, s)
		}
		p.Bars = append(p.Bars, b)
	}
	for range r.Intn(4) {
		o := Roll{Item: word(), Says: words(3), Pattern: word(), Piece: word(), Width: long(3000), Length: long(math.Pow(10, 2+3*r.Float64())), Discs: r.Intn(2) == 0, Across: long(800), Count: r.Intn(500), FromRack: r.Intn(2) == 0}
		for range r.Intn(200) {
			o.Places = append(o.Places, path.Pt(long(5000), long(2000)))
		}
		p.Rolls = append(p.Rolls, o)
		s := Sheet{Item: word(), Says: words(3), Width: long(3000), Height: long(3000), Count: r.Intn(9)}
		for range r.Intn(9) { // on a grid, as parts nested do not overlap
			i := length(len(s.Parts))
			s.Parts = append(s.Parts, Rect{i * 300, i * 200, long(300), long(200), word()})
		}
		p.Plates = append(p.Plates, s)
	}
	w := &Work{Lines: c.Lines, Stages: words(12), Notes: words(4), Total: WorkRow{Name: word()}}
	for range r.Intn(30) {
		w.Operations = append(w.Operations, WorkRow{word(), word(), money(), money(), money(), money(), word()})
	}
	for n := range r.Intn(61) {
		d := WorkDay{Name: fmt.Sprint(n + 1), Hours: "7 h"}
		for range w.Stages {
			d.Does, d.Cures = append(d.Does, []string{"", "20", "12 of 20"}[r.Intn(3)]), append(d.Cures, []string{"", "", "cement, 24 h"}[r.Intn(3)])
		}
		w.Days = append(w.Days, d)
	}
	p.Work = w
	return p
}

// A row of pieces too narrow for a letter carries its count above the stick:
// 40 pieces of 25 mm in a stick of 6000 are 0.7 mm wide on paper each.
func TestNarrowPiecesAreCounted(t *testing.T) {
	s := Bar{Count: 1, Length: 6000, Kerf: 2, Offcut: 2920, Cuts: []BarCut{{"long", 2000}}}
	for range 40 {
		s.Cuts = append(s.Cuts, BarCut{"short", 25})
	}
	holds(t, Pack{Bars: []Bars{{Item: "pipe", Sticks: []Bar{s}}}}, "cutting", "40 b", "a long", "stick 236 1/4 in: 1 a + 40 b")
}

// A stage at rest is left out of the days it rests in, but of a plan that
// fits side by side none is.
func TestStagesAtRest(t *testing.T) {
	plan := func(days int) string {
		w := &Work{Stages: []string{"early", "late"}}
		for n := range days {
			d := WorkDay{Name: fmt.Sprint(n + 1), Does: []string{"", ""}}
			d.Does[min(1, n/daysAcross)] = "5"
			w.Days = append(w.Days, d)
		}
		return wordsOf(section(t, Pack{Work: w}, "work")...)
	}
	for days, want := range map[int][2]int{7: {1, 1}, 14: {1, 1}} {
		got := plan(days)
		if e, l := strings.Count(got, "Early"), strings.Count(got, "Late"); e != want[0] || l != want[1] {
			t.Errorf("%d days: early in %d rows, late in %d, want %v", days, e, l, want)
		}
	}
}
