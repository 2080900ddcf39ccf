package workbook

import (
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"silowright/bom"
	"silowright/bom/basket"
	"silowright/bom/money"
	"silowright/bom/work"
	"silowright/cmd/internal/plan"
)

// checks are workbooks to recompute and what has to come out.
type checks struct {
	books map[string][]byte
	then  map[string]func(t *testing.T, f *excelize.File)
}

// The workbook, recomputed by LibreOffice without the values it was written
// with, comes to the program's total to the cent: as written, and after prices,
// packs, counts and conditions were changed in it and in the program alike.
func TestLibreOffice(t *testing.T) {
	c := checks{map[string][]byte{}, map[string]func(*testing.T, *excelize.File){}}
	c.asWritten(t)
	c.price(t)
	c.packs(t)
	c.counts(t)
	c.conditions(t)
	done := recomputed(t, c.books)
	for _, name := range slices.Sorted(maps.Keys(done)) {
		t.Run(name, func(t *testing.T) { c.then[name](t, done[name]) })
	}
}

// add has a workbook recomputed as it is, every formula to its own value.
func (c *checks) add(t *testing.T, name string, p *plan.Plan) {
	data := written(t, p)
	c.books[name] = data
	before := opened(t, data)
	c.then[name] = func(t *testing.T, f *excelize.File) {
		n := formulas(t, before, func(sheet, cell, formula string) {
			want, got := value(t, before, sheet, cell), value(t, f, sheet, cell)
			x, errX := strconv.ParseFloat(want, 64)
			y, errY := strconv.ParseFloat(got, 64)
			if errX == nil && errY == nil && math.Abs(x-y) <= 1e-9*max(1, math.Abs(x)) || want == got {
				return
			}
			t.Errorf("%s %s: %s is written as %q, recomputed to %q", sheet, cell, formula, want, got)
		})
		if n < 30 {
			t.Errorf("only %d formulas", n)
		}
		totals(t, f, p)
	}
}

// totals compares every sum of money with the program's.
func totals(t *testing.T, f *excelize.File, p *plan.Plan) {
	t.Helper()
	b := p.Cost.Bill
	for label, want := range map[string]money.Money{"total": p.Cost.Total, "goods": b.Goods, "top-up of orders": b.TopUp, "shipping": b.Shipping, "tax": b.Tax,
		"all orders": b.Total, "contingency": p.Cost.Contingency, "of that, at no supplier listed": {}} {
		if got := minor(t, f, p.Currency, label); got != want.Minor {
			t.Errorf("%s: %d, the program has %d", label, got, want.Minor)
		}
	}
	if got := minor(t, f, p.Currency, "labour, drum silos") + minor(t, f, p.Currency, "labour, pipe silos"); got != p.Cost.Labour.Minor {
		t.Errorf("labour: %d, the program has %d", got, p.Cost.Labour.Minor)
	}
	// The shares may differ by the smallest coin where a half is rounded.
	for label, want := range map[string]money.Money{"drum silos' share of the total": p.Cost.Drums, "pipe silos' share of the total": p.Cost.Pipes,
		"each drum silo": p.Cost.PerDrum, "each pipe silo": p.Cost.PerPipe} {
		if got := minor(t, f, p.Currency, label); got < want.Minor-1 || got > want.Minor+1 {
			t.Errorf("%s: %d, the program has %d", label, got, want.Minor)
		}
	}
}

func (c *checks) asWritten(t *testing.T) {
	demo, err := plan.Demo()
	if err != nil {
		t.Fatal(err)
	}
	c.add(t, "demo", demo)
	c.add(t, "metric", loaded(t, "../../../testdata/metric/job.toml", plan.Counts{}))
	c.add(t, "two-kinds", loaded(t, "../../../testdata/two-kinds/job.toml", plan.Counts{}))
	c.add(t, "terms", loaded(t, terms{currency: "USD", drums: 14, pipes: 9, suppliers: quays, buying: quayTerms}.file(t), plan.Counts{}))
	c.add(t, "many", loaded(t, terms{currency: "USD", drums: 10000, pipes: 3333, suppliers: quays, buying: quayTerms}.file(t), plan.Counts{}))
	c.add(t, "no-drum-silos", loaded(t, terms{currency: "USD", drums: 0, pipes: 7, suppliers: quays, buying: quayTerms}.file(t), plan.Counts{}))
	c.add(t, "no-digits", loaded(t, terms{currency: "JPY", drums: 5, pipes: 40, suppliers: quays, buying: quayTerms}.file(t), plan.Counts{}))
	c.add(t, "three-digits", loaded(t, terms{currency: "KWD", drums: 5, pipes: 3, suppliers: quays, buying: quayTerms}.file(t), plan.Counts{}))
	c.add(t, "missing", loaded(t, terms{currency: "USD", drums: 5, pipes: 3, suppliers: quays, buying: quayTerms, leave: 5}.file(t), plan.Counts{}))
	// Names that a search in a spreadsheet would take for a pattern or a condition.
	c.add(t, "names", loaded(t, terms{currency: "USD", drums: 5, pipes: 3, suppliers: []string{"*", "", ">5", "=1+1", "S?lt ~ lane", "<>", "5", `say "hello"`}, buying: quayTerms}.file(t), plan.Counts{}))
	none := 0
	c.add(t, "nothing", loaded(t, terms{currency: "USD", drums: 1, pipes: 0, suppliers: quays, buying: quayTerms}.file(t), plan.Counts{Drum: &none}))
	c.halves(t, demo)
	c.even(t, demo)
	c.random(t, demo)
}

// halves has labour come to half a coin in decimals, which binary minutes are
// only near: 17 × 12.3 min at 1.00 an hour are 3.485. The program's side of the
// half holds.
func (c *checks) halves(t *testing.T, demo *plan.Plan) {
	for i, each := range []work.Minutes{12.3, 12.9, 36.9} {
		p := *demo
		p.Site.Work = work.Rates{Clean: each, PipeRinse: each / 3, Learning: 1, People: 1, Day: 480, Clamps: 4}
		p.Site.Wage.Minor = 100
		p.Job.DrumSilos, p.Job.PipeSilos = 17, 17
		var err error
		if p.Cost, err = p.Site.Cost(17, 17); err != nil {
			t.Fatal(err)
		}
		c.add(t, fmt.Sprintf("half-%d", i), &p)
	}
}

// even has a top-up to free shipping cost just what it saves: it is not made.
func (c *checks) even(t *testing.T, demo *plan.Plan) {
	p := *demo
	p.Site.Terms.Tax, p.Site.Terms.Suppliers = 0, nil
	for _, o := range demo.Cost.Bill.Orders {
		saves := money.Money{Minor: 1234, Currency: p.Currency}
		p.Site.Terms.Suppliers = append(p.Site.Terms.Suppliers, bom.Supplier{Name: o.Supplier, Shipping: saves, Minimum: money.Money{Currency: p.Currency},
			FreeFrom: &money.Money{Minor: o.Goods.Minor + saves.Minor, Currency: p.Currency}})
		p.Site.Terms.Choose = append(p.Site.Terms.Choose, chosen(o)...)
	}
	var err error
	if p.Cost, err = p.Site.Cost(p.Job.DrumSilos, p.Job.PipeSilos); err != nil {
		t.Fatal(err)
	}
	for i, o := range p.Cost.Bill.Orders {
		if was := demo.Cost.Bill.Orders[i]; o.Goods != was.Goods || o.TopUp.Minor != 0 || o.Shipping.Minor != 1234 {
			t.Fatalf("%s: %+v", o.Supplier, o)
		}
	}
	c.add(t, "even", &p)
}

// chosen keeps an order's items where they are.
func chosen(o bom.Order) []bom.Chosen {
	var out []bom.Chosen
	for _, item := range o.Items {
		out = append(out, bom.Chosen{Item: item, Supplier: o.Supplier})
	}
	return out
}

// random varies what a total depends on, on the demo's own prices.
func (c *checks) random(t *testing.T, demo *plan.Plan) {
	r := rand.New(rand.NewPCG(4, 20))
	for i := range 4 {
		p := *demo
		site := p.Site
		site.Terms.Tax, site.Terms.TaxShipping = bom.Share(r.IntN(250000)), r.IntN(2) == 0
		site.Contingency = bom.Share(r.IntN(300000))
		site.Wage = money.Money{Minor: r.Int64N(6000), Currency: p.Currency}
		site.Work.Learning = []float64{1, 0.5, 0.5000001, 0.9, 0.8 + 0.2*r.Float64()}[r.IntN(5)]
		site.Terms.Suppliers = nil
		for _, o := range demo.Cost.Bill.Orders {
			s := bom.Supplier{Name: o.Supplier, Shipping: money.Money{Minor: r.Int64N(15000), Currency: p.Currency}, Minimum: money.Money{Currency: p.Currency}}
			if r.IntN(2) == 0 {
				s.Minimum.Minor = r.Int64N(2 * o.Goods.Minor)
			}
			if r.IntN(3) > 0 {
				s.FreeFrom = &money.Money{Minor: o.Goods.Minor + r.Int64N(20000) - 5000, Currency: p.Currency}
			}
			site.Terms.Suppliers = append(site.Terms.Suppliers, s)
		}
		p.Site = site
		p.Job.DrumSilos, p.Job.PipeSilos = r.IntN(80), r.IntN(80)
		var err error
		if p.Cost, err = site.Cost(p.Job.DrumSilos, p.Job.PipeSilos); err != nil {
			t.Fatal(err)
		}
		c.add(t, fmt.Sprintf("random-%d", i), &p)
	}
}

// simple are the rows of Buy whose packs follow from the counts.
func simple(t *testing.T, f *excelize.File) []int {
	t.Helper()
	var out []int
	formulas(t, f, func(sheet, cell, _ string) {
		if sheet == buySheet && strings.HasPrefix(cell, packsColumn) {
			n, err := strconv.Atoi(cell[len(packsColumn):])
			if err != nil {
				t.Fatal(err)
			}
			out = append(out, n)
		}
	})
	return out
}

// price changes the price of a simple item in the workbook and in the list.
func (c *checks) price(t *testing.T) {
	j := terms{currency: "USD", drums: 14, pipes: 9, suppliers: quays, buying: quayTerms}
	data := written(t, loaded(t, j.file(t), plan.Counts{}))
	rows := simple(t, opened(t, data))
	if len(rows) < 8 {
		t.Fatalf("only rows %v follow from the counts", rows)
	}
	j.price = map[int]string{}
	cells := map[string]any{}
	for i, row := range []int{rows[1], rows[len(rows)-1]} {
		price := []float64{12.37, 99.05}[i]
		cells[buySheet+"!"+ref(priceColumn, row)] = price
		j.price[row-2] = plain(price) // the list has the bill's lines in order
	}
	c.books["price"] = changed(t, data, cells)
	want := loaded(t, j.file(t), plan.Counts{})
	c.then["price"] = func(t *testing.T, f *excelize.File) { totals(t, f, want) }
}

// packs changes a pack count by hand: the order is what the program's own rule
// makes of the goods then.
func (c *checks) packs(t *testing.T) {
	p := loaded(t, terms{currency: "USD", drums: 14, pipes: 9, suppliers: quays, buying: quayTerms}.file(t), plan.Counts{})
	data := written(t, p)
	var line bom.Line
	for _, l := range p.Cost.Bill.Lines {
		if l.Category == bom.Tools && len(l.Buys) == 1 {
			line = l
		}
	}
	f := opened(t, data)
	more := int64(17)
	c.books["packs"] = changed(t, data, map[string]any{buySheet + "!" + ref(packsColumn, rowOf(t, f, buySheet, "B", line.Item)): line.Buys[0].Packs + more})
	want := p.Cost.Labour.Minor
	for _, o := range p.Cost.Bill.Orders {
		goods := o.Goods.Minor
		if o.Supplier == line.Supplier {
			goods += more * line.Buys[0].Price.Minor
		}
		terms := p.Site.Terms
		for _, s := range terms.Suppliers {
			if s.Name == o.Supplier {
				b := basket.Seller{Shipping: s.Shipping.Minor, FreeFrom: -1, Minimum: s.Minimum.Minor, Tax: int64(terms.Tax), TaxShipping: terms.TaxShipping}
				if s.Tax != nil {
					b.Tax = int64(*s.Tax)
				}
				if s.FreeFrom != nil {
					b.FreeFrom = s.FreeFrom.Minor
				}
				want += basket.OrderOf(goods, b).Total
			}
		}
	}
	extra, err := p.Site.Contingency.Of(money.Money{Minor: want, Currency: p.Currency})
	if err != nil {
		t.Fatal(err)
	}
	want += extra.Minor
	c.then["packs"] = func(t *testing.T, f *excelize.File) {
		if got := minor(t, f, p.Currency, "total"); got != want || got == p.Cost.Total.Minor {
			t.Errorf("total: %d, by the program's rules %d, before %d", got, want, p.Cost.Total.Minor)
		}
	}
}

// counts changes the counts: simple items follow, and with the program's packs
// for what is cut, laid or bought once the total is the program's.
func (c *checks) counts(t *testing.T) {
	path := terms{currency: "USD", drums: 14, pipes: 9, suppliers: quays, buying: quayTerms}.file(t)
	for name, n := range map[string][2]int{"fewer": {3, 1}, "more": {37, 21}} {
		data := written(t, loaded(t, path, plan.Counts{}))
		p := loaded(t, path, plan.Counts{Drum: &n[0], Pipe: &n[1]})
		f := opened(t, data)
		live := simple(t, f)
		cells := map[string]any{sumsSheet + "!" + ref("B", drumsRow): n[0], sumsSheet + "!" + ref("B", pipesRow): n[1]}
		for _, l := range p.Cost.Bill.Lines {
			row := rowOf(t, f, buySheet, "B", l.Item)
			if isLive := slices.Contains(live, row); !isLive && len(l.Buys) == 1 {
				cells[buySheet+"!"+ref(packsColumn, row)] = l.Buys[0].Packs
			} else if len(l.Buys) != 1 {
				t.Fatalf("%s is bought in %d ways", l.Item, len(l.Buys))
			}
		}
		c.books[name] = changed(t, data, cells)
		c.then[name] = func(t *testing.T, f *excelize.File) {
			for _, l := range p.Cost.Bill.Lines {
				row := rowOf(t, f, buySheet, "B", l.Item)
				if got := value(t, f, buySheet, ref(packsColumn, row)); got != strconv.FormatInt(l.Buys[0].Packs, 10) {
					t.Errorf("%s: %s packs, the program buys %d", l.Item, got, l.Buys[0].Packs)
				}
			}
			b := p.Cost.Bill
			for label, want := range map[string]money.Money{"total": p.Cost.Total, "goods": b.Goods, "all orders": b.Total, "contingency": p.Cost.Contingency} {
				if got := minor(t, f, p.Currency, label); got != want.Minor {
					t.Errorf("%s: %d, the program has %d", label, got, want.Minor)
				}
			}
			if v := value(t, f, sumsSheet, ref("B", rowOf(t, f, sumsSheet, "A", "check: counts"))); !strings.HasPrefix(v, "counts changed from 14 and 9") {
				t.Errorf("the counts were changed, and the check says %q", v)
			}
		}
	}
}

// conditions changes a supplier's conditions, the tax, the wage and the
// contingency, in the workbook and in the job.
func (c *checks) conditions(t *testing.T) {
	j := terms{currency: "USD", drums: 14, pipes: 9, suppliers: quays, buying: quayTerms}
	p := loaded(t, j.file(t), plan.Counts{})
	data := written(t, p)
	f := opened(t, data)
	var south bom.Order
	for _, o := range p.Cost.Bill.Orders {
		if o.Supplier == quays[1] {
			south = o
		}
	}
	free := money.Money{Minor: south.Goods.Minor + 1500, Currency: p.Currency} // a top-up of 15.00 saves 48.00
	row := rowOf(t, f, suppliersSheet, "A", quays[1])
	block := rowOf(t, f, workSheet, "A", "both sorts")
	c.books["conditions"] = changed(t, data, map[string]any{
		suppliersSheet + "!" + ref("C", row): float64(free.Minor) / 100,
		suppliersSheet + "!" + ref("D", row): 0,
		suppliersSheet + "!" + ref("E", row): 0.05,
		sumsSheet + "!" + ref("B", rowOf(t, f, sumsSheet, "A", "contingency, part of all above (input)")): 0.1,
		workSheet + "!" + ref("D", block+wageRow):                                                         31.4,
		workSheet + "!" + ref("D", block+learningRow):                                                     0.95,
		workSheet + "!" + ref("E", block+learningRow):                                                     0.95,
	})
	j.buying = strings.NewReplacer(`minimum = "700"`, `free_from = "`+free.Plain()+`"`+"\ntax = 0.05", `"7.5 %"`, "0.1", `wage = "27"`, `wage = "31.40"`, "0.87", "0.95").Replace(quayTerms)
	want := loaded(t, j.file(t), plan.Counts{})
	if want.Cost.Bill.TopUp.Minor == 0 {
		t.Fatal("no order is topped up")
	}
	c.then["conditions"] = func(t *testing.T, f *excelize.File) { totals(t, f, want) }
}
