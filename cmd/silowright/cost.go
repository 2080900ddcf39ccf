package main

import (
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"silowright/bom"
	"silowright/cmd/internal/plan"
	"silowright/cmd/internal/report"
	"silowright/geometry/measure"
)

var costCommand = command{
	name:    "cost",
	args:    "[JOB]",
	summary: "price a build: what to buy, what one silo costs, where the money goes",
	example: "silowright cost my-silos/job.toml --drum-silos 10 --pipe-silos 4",
	run:     runCost,
}

// mostSilos bounds the counts, as the job file does.
const mostSilos = 100000

func runCost(e *env, args []string) error {
	fs := newFlags("cost")
	drums := fs.Int("drum-silos", 0, "drum silos to price; left out: as many as the job says")
	pipes := fs.Int("pipe-silos", 0, "pipe silos to price; left out: as many as the job says")
	date := fs.String("date", "", "the day quotations are aged by, as in 2031-02-28; left out: the job's")
	items := fs.Bool("items", false, "list every item with the packs to buy")
	asJSON := fs.Bool("json", false, "write bill, hours and costs as JSON")
	asCSV := fs.Bool("csv", false, "write the bill as CSV")
	rest, err := parseFlags(fs, args, 0, 1)
	if err != nil {
		return err
	}
	for _, pair := range [][2]string{{"json", "csv"}, {"json", "items"}, {"csv", "items"}} {
		if fs.Changed(pair[0]) && fs.Changed(pair[1]) {
			return usagef("cost: --%s and --%s exclude each other; hint: give one", pair[0], pair[1])
		}
	}
	c := plan.Counts{Date: *date, Dry: true}
	for _, f := range []struct {
		name string
		n    *int
		to   **int
	}{{"drum-silos", drums, &c.Drum}, {"pipe-silos", pipes, &c.Pipe}} {
		if !fs.Changed(f.name) {
			continue
		}
		if *f.n < 0 || *f.n > mostSilos {
			return usagef("cost: --%s: %d is out of range, allowed 0 to %d; hint: a whole number of silos", f.name, *f.n, mostSilos)
		}
		*f.to = f.n
	}
	if err := c.Check(); err != nil {
		return usagef("cost: --%v", err)
	}
	var p *plan.Plan
	if len(rest) == 0 {
		p, err = plan.DemoFor(c)
	} else {
		p, err = plan.LoadFor(e.path(rest[0]), c)
	}
	if err != nil {
		return err
	}
	switch {
	case *asCSV:
		_, err = e.stdout.Write(p.Cost.Bill.CSV())
		return err
	case *asJSON:
		costs, err := report.CostsOf(p)
		if err != nil {
			return err
		}
		data, err := costs.JSON()
		if err == nil {
			_, err = e.stdout.Write(data)
		}
		return err
	case *items:
		return printItems(e.stdout, p)
	}
	return printCost(e.stdout, p)
}

// printItems writes the bill for a reader: what to buy, category by category
// with its sum, then what it comes to.
func printItems(w io.Writer, p *plan.Plan) error {
	var b strings.Builder
	bill := p.Cost.Bill
	b.WriteString(costHead(p) + "\n\n")
	rows := [][]string{{"buy", "needed", "packs", "of", "each", "sum", "", "from, and why"}}
	for _, c := range bill.Categories {
		rows = append(rows, []string{c.Category, "", "", "", "", "", c.Text()})
		for _, l := range bill.Lines {
			if l.Category == c.Category {
				rows = append(rows, costRows(l, p.Job.Units)...)
			}
		}
	}
	if len(bill.Lines) > 0 {
		b.WriteString(columns(rows, "llrlrrrl") + "\n")
	}
	b.WriteString(totals(p))
	_, err := io.WriteString(w, b.String())
	return err
}

// costHead is the line that says what is priced.
func costHead(p *plan.Plan) string {
	return fmt.Sprintf("%s: %d drum silos, %d pipe silos; prices in %s from %s", p.Job.Name, p.Cost.Bill.DrumSilos, p.Cost.Bill.PipeSilos, p.Currency, p.Prices.Name)
}

func costRows(l bom.Line, u measure.Unit) [][]string {
	row := []string{"  " + l.Item, l.Text(l.Total(), u), "", "", "", "no price", "", l.Choice}
	if l.Rack > 0 {
		row[7] = strings.Trim(l.Text(l.Rack, u)+" off the rack; "+l.Choice, "; ")
	}
	if l.Amount == nil {
		return [][]string{row}
	}
	row[5] = l.Amount.Plain()
	from := []string{l.Supplier, row[7]}
	if l.Cutting != nil {
		from = append(from, l.Cutting.Says())
	}
	row[7] = joined(from)
	var out [][]string
	for _, b := range l.Buys {
		copy(row[2:], []string{strconv.FormatInt(b.Packs, 10), b.Offer.Pack, b.Price.Plain(), b.Amount.Plain()})
		out = append(out, row)
		row = []string{"", "", "", "", "", "", "", l.Supplier}
	}
	if len(out) == 0 {
		out = append(out, row)
	}
	return out
}

// joined puts what is said of a thing in one line.
func joined(parts []string) string {
	var out []string
	for _, p := range parts {
		if p != "" {
			out = append(out, p)
		}
	}
	return strings.Join(out, "; ")
}

// columns writes rows in columns two blanks apart, each to the side that its
// letter in sides says: l or r. A last column that is empty below its heading
// is left out.
func columns(rows [][]string, sides string) string {
	used := make([]bool, len(sides))
	widths := make([]int, len(sides))
	for i, r := range rows {
		for k, cell := range r {
			used[k] = used[k] || i > 0 && cell != ""
		}
	}
	for _, r := range rows {
		for k, cell := range r {
			if used[k] {
				widths[k] = max(widths[k], utf8.RuneCountInString(cell))
			}
		}
	}
	var b strings.Builder
	for _, r := range rows {
		var line strings.Builder
		for k, cell := range r {
			if !used[k] {
				continue
			}
			pad := strings.Repeat(" ", widths[k]-utf8.RuneCountInString(cell))
			if sides[k] == 'r' {
				cell, pad = pad+cell, ""
			}
			line.WriteString(cell + pad + "  ")
		}
		b.WriteString(strings.TrimRight(line.String(), " ") + "\n")
	}
	return b.String()
}
