package sheets

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render/pdf"
)

// withShop adds invented costs, orders, cutting plans and hours to a pack.
func withShop(p Pack) Pack {
	in, ft := measure.Inch, measure.Foot
	sums := func(g, s, t, o string) OrderSums { return OrderSums{"USD " + g, s, t, o} }
	p.Orders = []Order{
		{Supplier: "Tidewrack Hardware, invented", Sums: sums("612.40", "25.00", "42.87", "680.27"), Notes: []string{"Minimum order USD 50.00: met.", "Free of shipping from USD 750.00."},
			Rows: []OrderRow{
				{"pipe-2", "pipe NPS 2 Schedule 40", "stick of 10 ft", "12", "USD 14.20", "USD 170.40", "2026-03-01"},
				{"coupling-2", "coupling NPS 2", "bag of 10", "8", "USD 22.00", "USD 176.00", "2026-03-01"},
				{"cement", "solvent cement, medium body, can of 16 fl oz", "can", "2", "USD 11.50", "USD 23.00", "2025-06-11"}}},
		{Supplier: "Cove Mesh Works, invented", Sums: sums("388.00", "18.50", "", "406.50"),
			Rows: []OrderRow{{"mesh-1/8", "plastic mesh, 1/8 in opening, 48 in wide", "yard", "16", "USD 24.25", "USD 388.00", "2026-02-10"}}},
		{Supplier: "a neighbour, invented", Sums: OrderSums{Goods: "USD 400.00", Total: "USD 400.00"},
			Rows: []OrderRow{{"drum", "closed-head plastic drum, used", "1 drum", "20", "USD 20.00", "USD 400.00", ""}, {"acetone", "", "can", "1", "", "", ""}}},
	}
	p.Cost = &Cost{Currency: "USD", Suppliers: p.Orders, Bought: sums("1,400.40", "43.50", "42.87", "1,486.77"), Total: "USD 3,102.51", Built: 20, Counted: "drum silos", Invented: true,
		Points: []CostPoint{{"5", "USD 1,210.10", "USD 205.11", "USD 61.20", "USD 121.00", false}, {"10", "USD 1,880.32", "USD 151.40", "USD 47.95", "USD 118.25", false},
			{"20", "USD 3,102.51", "USD 126.60", "USD 41.10", "USD 112.07", true}, {"50", "USD 6,700.00", "USD 111.02", "USD 36.66", "USD 109.10", false}},
		Shares: []Share{{"Labour", "USD 1,150.00", 0.371}, {"Pipework", "USD 431.20", 0.139}, {"Drums", "USD 400.00", 0.129}, {"Mesh and screen", "USD 388.00", 0.125},
			{"Contingency", "USD 282.05", 0.091}, {"Consumables", "USD 181.20", 0.058}, {"Tools", "USD 110.00", 0.035}, {"Sealant and cement", "USD 73.69", 0.024}, {"Shipping", "USD 43.50", 0.014}, {"Tax", "USD 42.87", 0.0138}},
		Lines: []Amount{{"Hours of work", "46 h"}, {"Rate", "USD 25.00 an hour"}, {"Contingency, 10 %", "USD 282.05"}, {"Leftovers are worth", "USD 61.18"}, {"Tools, kept for the next build", "USD 110.00"}, {"Next drum silo", "USD 112.07"}},
		Stale: []string{"1 price was quoted longer ago than 180 days: cement, 2025-06-11"}, Missing: []string{"acetone"}}
	for n := 1; n <= 50; n++ {
		v := (180 + 88*float64(n) + 72*float64((n+4)/5) + 140*float64((n+9)/10)) / float64(n)
		p.Cost.Curve = append(p.Cost.Curve, CurvePoint{n, v, fmt.Sprintf("USD %.2f", v)})
	}
	nipple, stub, silo := BarCut{"outlet nipple", 4 * in}, BarCut{"inlet stub", 6.5 * in}, BarCut{"pipe silo", 22 * in}
	times := func(c BarCut, n int, more ...BarCut) []BarCut {
		var out []BarCut
		for range n {
			out = append(out, c)
		}
		return append(out, more...)
	}
	p.Bars = []Bars{
		{Item: "Pipe NPS 2 Schedule 40", Says: []string{"4 × 10 ft, USD 56.80, proven least", "1 stick from the rack is used first and not bought."}, Sticks: []Bar{
			{Count: 1, Length: 50 * in, FromRack: true, Trim: in / 2, Kerf: in / 8, Cuts: times(stub, 7), Offcut: 3.125 * in},
			{Count: 3, Length: 10 * ft, Trim: in / 2, Kerf: in / 8, Cuts: times(stub, 12, times(nipple, 8)...), Offcut: 7 * in, Offname: "A"},
			{Count: 1, Length: 10 * ft, Trim: in / 2, Kerf: in / 8, Cuts: times(nipple, 16), Offcut: 53.5 * in, Offname: "B", Keep: true}}},
		{Item: "Pipe NPS 8 SDR 35", Says: []string{"3 × 10 ft, USD 210.00, best found, not proven least, since its price goes by the count: at most USD 12.00 above the bound"}, Sticks: []Bar{
			{Count: 2, Length: 10 * ft, Trim: in / 2, Kerf: in / 8, Cuts: times(silo, 5), Offcut: 8.875 * in, Offname: "C"},
			{Count: 1, Length: 10 * ft, Trim: in / 2, Kerf: in / 8, Cuts: times(silo, 2), Offcut: 75 * in, Offname: "D", Keep: true}}},
	}
	disc := Roll{Item: "Plastic mesh, 1/8 in opening", Pattern: "zigzag", Piece: "mesh disc", Says: []string{"16 yd of 48 in, USD 388.00; at least 14.6 yd by the bound, best found"},
		Width: 48 * in, Discs: true, Across: 22.5 * in, Count: 40}
	for i := range 40 {
		disc.Places = append(disc.Places, path.Pt(11.25*in+length(i/2)*22.5*in, 11.25*in+length(i%2)*25.5*in))
	}
	disc.Length = 20 * 22.5 * in
	squares := Roll{Item: "Screen, 250 µm", Pattern: "rows", Piece: "screen square", Says: []string{"1 m of 1.02 m, USD 48.00, proven least"}, Width: 1020, Length: 600, Across: 290, Count: 6}
	for i := range 6 {
		squares.Places = append(squares.Places, path.Pt(145+length(i/3)*290, 145+length(i%3)*290))
	}
	p.Rolls = []Roll{disc, squares}
	p.Plates = []Sheet{{Item: "Plywood 1/4 in", Says: []string{"1 sheet, USD 21.00"}, Width: 48 * in, Height: 96 * in, Count: 1, Parts: []Rect{
		{0, 0, 23 * in, 23 * in, "lattice template"}, {23.2 * in, 0, 23 * in, 23 * in, "ring former"}, {0, 23.2 * in, 4 * in, 40 * in, "handle slot template"}, {5 * in, 23.2 * in, 2 * in, 2 * in, "gauge"}}}}
	w := &Work{Lines: []Amount{{"Learning: each doubling takes", "90 % of the minutes"}, {"Crew", "2 people"}, {"Hours a day", "7 h"}, {"Band clamps that cure at once", "4"}},
		Stages: []string{"Part the drums, saw the lattices", "Bore and cut the handles", "Mesh and ring", "Seal the ring", "Outlets and drains", "Pipe silos", "Leak test, rinse"},
		Operations: []WorkRow{{"Set up the shop", "", "", "", "90", "1.5", "once for the batch"}, {"Part the drum", "m of cut", "1.83", "6", "11", "2.6", ""}, {"Saw the lattice", "m of jigsaw", "6.4", "5", "32", "7.4", ""},
			{"Bore wall holes", "hole", "3", "4", "12", "2.8", ""}, {"Screw the ring", "screw", "36", "0.6", "21.6", "5", ""}, {"Seal the ring's edge", "m of bead", "1.8", "4", "7.2", "1.7", ""}},
		Total: WorkRow{Name: "All operations", First: "173.8", Whole: "46"}, Notes: []string{"The sealant's cure, 24 h, decides: the leak test of the last silos waits for it."}}
	for d := 1; d <= 5; d++ {
		x := WorkDay{Name: fmt.Sprint(d), Hours: "14 h"}
		for s := range w.Stages {
			does, cures := "", ""
			if s == d || s == d-1 {
				does = fmt.Sprint(8 + s)
			}
			if s == d-1 && (s == 3 || s == 5) {
				cures = "sealant, 24 h"
			}
			x.Does, x.Cures = append(x.Does, does), append(x.Cures, cures)
		}
		w.Days = append(w.Days, x)
	}
	p.Work = w
	p.Have = []string{"Jigsaw", "Snips", "hole saw 2 1/2 in (63.5 mm)", "Lathe"}
	p.Bill.Rows[0].Have = "2 on hand, used first"
	return p
}

// bookOf writes sections to a PDF file.
func bookOf(t *testing.T, secs []Section) []byte {
	t.Helper()
	book := pdf.New(pdf.Meta{Title: "sheets"})
	for _, s := range secs {
		for _, d := range s.Pages {
			if err := book.Page(d, "", 0); err != nil {
				t.Fatal(err)
			}
		}
	}
	var buf bytes.Buffer
	if _, err := book.WriteTo(&buf); err != nil {
		t.Fatal(err)
	}
	return buf.Bytes()
}

// shopParts are the sections of buying and costing.
var shopParts = []string{"tools", "buy", "cost", "orders", "cutting", "work"}

// The pages of the invented build, to be looked at: SHEETS_OUT names a
// directory they are written to.
func TestShopPages(t *testing.T) {
	for name, c := range map[string]struct {
		u     measure.Unit
		paper Paper
	}{"letter": {measure.UnitInch, Letter}, "A4": {measure.UnitMM, A4}} {
		secs, err := Sections(withShop(packOf(t, c.u, 12, drum("blue", 20, 23))), c.paper, shopParts...)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range secs {
			for i, d := range s.Pages {
				checkPage(t, fmt.Sprintf("%s, %s page %d", name, s.ID, i+1), d)
			}
			if s.ID == "cost" && len(s.Pages) != 1 {
				t.Errorf("%s: the cost takes %d pages, want one", name, len(s.Pages))
			}
		}
		if dir := os.Getenv("SHEETS_OUT"); dir != "" {
			if err := os.WriteFile(filepath.Join(dir, name+".pdf"), bookOf(t, secs), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}
