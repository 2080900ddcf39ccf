package main

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"silowright/bom/build"
	"silowright/cmd/internal/plan"
)

// printCost answers a builder's three questions on one screen.
func printCost(w io.Writer, p *plan.Plan) error {
	points, err := p.Site.Points(p.Job.DrumSilos, p.Job.PipeSilos)
	if err != nil {
		return err
	}
	var b strings.Builder
	b.WriteString(costHead(p) + "\n")
	if bill := p.Cost.Bill; len(bill.Orders) > 0 {
		b.WriteString("\nWhat do I buy?  (each item: silowright cost --items)\n")
		rows := [][]string{{"  from", "items", "goods", "top-up", "shipping", "tax", "order"}}
		for _, o := range bill.Orders {
			rows = append(rows, []string{"  " + supplierName(o.Supplier), strconv.Itoa(len(o.Items)), o.Goods.Plain(), unless0(o.TopUp.Minor, o.TopUp.Plain()),
				unless0(o.Shipping.Minor, o.Shipping.Plain()), unless0(o.Tax.Minor, o.Tax.Plain()), o.Total.Plain()})
		}
		b.WriteString(columns(rows, "lrrrrrr"))
	}
	b.WriteString("\nWhat does one cost?\n" + pointTable(points))
	if len(p.Cost.Parts) > 0 {
		b.WriteString("\nWhere does the money go?\n" + partTable(p.Cost.Parts))
	}
	b.WriteString("\n" + totals(p))
	_, err = io.WriteString(w, b.String())
	return err
}

func supplierName(s string) string {
	if s == "" {
		return "no supplier named"
	}
	return s
}

// unless0 is text, or nothing when n is 0.
func unless0(n int64, text string) string {
	if n == 0 {
		return ""
	}
	return text
}

func pointTable(points []build.Point) string {
	rows := [][]string{{"  drum silos", "pipe silos", "total", "each drum silo", "each pipe silo", "one drum silo more", "one pipe silo more", ""}}
	for _, q := range points {
		own := ""
		if q.Own {
			own = "this build"
		}
		rows = append(rows, []string{strconv.Itoa(q.Drums), strconv.Itoa(q.Pipes), q.Total.Plain(), unless0(int64(q.Drums), q.PerDrum.Plain()),
			unless0(int64(q.Pipes), q.PerPipe.Plain()), q.NextDrum.Plain(), q.NextPipe.Plain(), own})
	}
	return columns(rows, "rrrrrrrl")
}

// partTable shows where the money goes, a bar of one mark for each 2 %.
func partTable(parts []build.Part) string {
	var rows [][]string
	rows = append(rows, make([]string, 4))
	for _, q := range parts {
		rows = append(rows, []string{"  " + q.Name, q.Sum.Plain(), shareText(q.Share), strings.Repeat("=", int(50*q.Share+0.5))})
	}
	_, table, _ := strings.Cut(columns(rows, "lrrl"), "\n")
	return table
}

// shareText writes a share of one in tenths of one per cent; what rounds to none
// is said to be less than one.
func shareText(x float64) string {
	if x > 0 && x < 0.0005 {
		return "under 0.1 %"
	}
	return fmt.Sprintf("%.1f %%", 100*x)
}

// totals are the lines that say what the build costs.
func totals(p *plan.Plan) string {
	var b strings.Builder
	note := ""
	if p.Invented {
		note = " (invented demo prices)"
	}
	bill, c := p.Cost.Bill, p.Cost
	fmt.Fprintf(&b, "total     %s%s\n", p.TotalText(), note)
	part := ""
	if !bill.Complete() {
		fmt.Fprintf(&b, "  INCOMPLETE: no price for %s\n", strings.Join(bill.Missing, ", "))
		for _, l := range bill.Lines {
			if l.Amount == nil && l.Choice != "" {
				fmt.Fprintf(&b, "    %s is offered, but %s\n", l.Item, l.Choice)
			}
		}
		part = ", incomplete"
	}
	if len(bill.Missing) < len(bill.Lines) {
		if bill.DrumSilos > 0 {
			fmt.Fprintf(&b, "each      drum silo %s%s\n", c.PerDrum, part)
		}
		if bill.PipeSilos > 0 {
			fmt.Fprintf(&b, "each      pipe silo %s%s\n", c.PerPipe, part)
		}
	}
	fmt.Fprintf(&b, "work      %s, labour %s\n", c.Hours.Total.Text(), c.Labour)
	if bill.Leftovers.Minor > 0 {
		fmt.Fprintf(&b, "left over %s in packs and offcuts worth keeping\n", bill.Leftovers)
	}
	if !bill.Proven {
		fmt.Fprintf(&b, "orders    best found, at most %s above the least\n", bill.Over)
	}
	for _, l := range bill.Lines {
		if l.Cutting != nil && !l.Cutting.Proven {
			fmt.Fprintf(&b, "sawing    %s: %s\n", l.Item, l.Cutting.Says())
		}
	}
	for _, w := range bill.Warnings {
		fmt.Fprintf(&b, "caution   %s\n", w)
	}
	return b.String()
}
