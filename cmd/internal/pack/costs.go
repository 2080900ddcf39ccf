package pack

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"silowright/bom"
	"silowright/bom/build"
	"silowright/bom/money"
	"silowright/cmd/internal/output"
	"silowright/cmd/internal/plan"
	"silowright/cmd/internal/report"
	"silowright/geometry"
	"silowright/render/sheets"
)

// costPage hands the costs to their page, amounts written out.
func costPage(p *plan.Plan, c report.Costs) *sheets.Cost {
	b := c.Bill
	out := &sheets.Cost{Currency: string(p.Currency), Total: p.TotalText(), Counted: "drum silos", Built: p.Job.DrumSilos,
		Bought: sheets.OrderSums{Goods: b.Goods.String(), Shipping: b.Shipping.String(), Tax: b.Tax.String(), Total: b.Total.String()},
		Stale:  b.Warnings, Missing: b.Missing, Invented: p.Invented}
	if p.Job.DrumSilos == 0 {
		out.Counted, out.Built = "pipe silos", p.Job.PipeSilos
	}
	for _, o := range b.Orders {
		out.Suppliers = append(out.Suppliers, sheets.Order{Supplier: supplierName(o.Supplier), Sums: sumsOf(o)})
	}
	for _, q := range c.Points {
		n, _ := counted(p, q)
		row := sheets.CostPoint{Silos: strconv.Itoa(n), Total: q.Total.String(), EachDrum: either(q.Drums, q.PerDrum), EachPipe: either(q.Pipes, q.PerPipe), Next: q.NextDrum.String(), Own: q.Own}
		if q.Drums > 0 && q.Pipes > 0 {
			row.Silos = fmt.Sprintf("%d + %d pipe silos", q.Drums, q.Pipes)
		}
		if p.Job.DrumSilos == 0 {
			row.Next = q.NextPipe.String()
		}
		out.Points = append(out.Points, row)
	}
	for _, q := range c.Curve {
		n, each := counted(p, q)
		out.Curve = append(out.Curve, sheets.CurvePoint{N: n, Each: each.Major(), Says: each.String()})
	}
	for _, q := range largestFirst(c.Parts) {
		out.Shares = append(out.Shares, sheets.Share{Name: q.Name, Sum: q.Sum.String(), Part: q.Share})
	}
	out.Lines = costLines(p, c)
	return out
}

// counted is what a point of the curve counts, and what one of them costs.
func counted(p *plan.Plan, q build.Point) (int, money.Money) {
	if p.Job.DrumSilos == 0 {
		return q.Pipes, q.PerPipe
	}
	return q.Drums, q.PerDrum
}

// either is an amount written out, or nothing when nothing of it is built.
func either(n int, m money.Money) string {
	if n == 0 {
		return ""
	}
	return m.String()
}

func largestFirst(parts []build.Part) []build.Part {
	out := slices.Clone(parts)
	slices.SortStableFunc(out, func(a, b build.Part) int {
		switch {
		case a.Sum.Minor > b.Sum.Minor:
			return -1
		case a.Sum.Minor < b.Sum.Minor:
			return 1
		}
		return 0
	})
	return out
}

// wholeBuild names the sum of all, for so many items without a price.
func wholeBuild(missing int) string {
	switch missing {
	case 0:
		return "the whole build"
	case 1:
		return "the whole build, incomplete: without 1 item"
	}
	return fmt.Sprintf("the whole build, incomplete: without %d items", missing)
}

// costLines are the sums of the cost page.
func costLines(p *plan.Plan, c report.Costs) []sheets.Amount {
	out := []sheets.Amount{{Name: "all orders, with shipping and tax", Sum: c.Bill.Total.String()},
		{Name: fmt.Sprintf("labour: %s at %s an hour", p.Cost.Hours.Total.Text(), p.Site.Wage), Sum: c.Labour.String()},
		{Name: "contingency, " + p.Site.Contingency.Percent() + " of both", Sum: c.Contingency.String()},
		{Name: wholeBuild(len(c.Bill.Missing)), Sum: p.Cost.Total.String()}}
	if p.Job.DrumSilos > 0 {
		out = append(out, sheets.Amount{Name: "each drum silo", Sum: c.PerDrum.String()})
	}
	if p.Job.PipeSilos > 0 {
		out = append(out, sheets.Amount{Name: "each pipe silo", Sum: c.PerPipe.String()})
	}
	if c.Bill.Leftovers.Minor > 0 {
		out = append(out, sheets.Amount{Name: "of which is left over in packs and offcuts worth keeping", Sum: c.Bill.Leftovers.String()})
	}
	if !c.Bill.Proven {
		out = append(out, sheets.Amount{Name: "orders: best found, at most so much above the least", Sum: c.Bill.Over.String()})
	}
	return out
}

func supplierName(s string) string {
	if s == "" {
		return "a supplier that the list does not name"
	}
	return s
}

func sumsOf(o bom.Order) sheets.OrderSums {
	out := sheets.OrderSums{Goods: o.Goods.String(), Total: o.Total.String()}
	if o.Shipping.Minor != 0 {
		out.Shipping = o.Shipping.String()
	}
	if o.Tax.Minor != 0 {
		out.Tax = o.Tax.String()
	}
	return out
}

// orderPages are the buy lists to send.
func orderPages(p *plan.Plan) []sheets.Order {
	var out []sheets.Order
	for _, o := range p.Cost.Bill.Orders {
		q := sheets.Order{Supplier: supplierName(o.Supplier), Sums: sumsOf(o)}
		for _, l := range p.Cost.Bill.Lines {
			if l.Supplier != o.Supplier {
				continue
			}
			for _, b := range l.Buys {
				q.Rows = append(q.Rows, sheets.OrderRow{Item: l.Item, Description: l.Description, Pack: packSays(b.Offer),
					Packs: strconv.FormatInt(b.Packs, 10), Each: b.Price.String(), Amount: b.Amount.String(), Quoted: b.Offer.Quoted})
			}
		}
		if o.TopUp.Minor > 0 {
			q.Notes = append(q.Notes, "Spend "+o.TopUp.String()+" more here on anything of use: the order is then large enough, or ships free, for less.")
		}
		out = append(out, q)
	}
	return out
}

// orderFiles are the buy lists as tables.
func orderFiles(p *plan.Plan) []output.File {
	var out []output.File
	for i, o := range p.Cost.Bill.Orders {
		name := geometry.Slug(o.Supplier)
		if name == "" {
			name = "supplier"
		}
		out = append(out, output.File{Name: fmt.Sprintf("orders/%d-%s.csv", i+1, name), Data: marked(p.Cost.Bill.OrderCSV(o))})
	}
	return out
}

// onHand names the tools that the rack holds, as the tool lists write them.
func onHand(p *plan.Plan) []string {
	var out []string
	for _, l := range p.Cost.Bill.Lines {
		if l.Category == bom.Tools && l.Rack > 0 && len(l.Buys) == 0 {
			out = append(out, l.Description)
		}
	}
	slices.Sort(out)
	return out
}

// packSays is a pack as it is sold, areas as on the rest of the page: "15 ft²".
func packSays(o *bom.Offer) string {
	if unit, ok := strings.CutSuffix(o.Pack, "2"); ok && unit != "" && unicode.IsLetter(rune(unit[len(unit)-1])) {
		return unit + "²"
	}
	return o.Pack
}
