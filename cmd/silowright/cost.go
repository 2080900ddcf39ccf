package main

import (
	"encoding/json"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"silowright/bom"
	"silowright/cmd/internal/plan"
	"silowright/geometry/measure"
)

var costCommand = command{
	name:    "cost",
	args:    "[JOB]",
	summary: "price a build: what to buy, what it comes to, what one silo costs",
	example: "silowright cost my-silos/job.toml --drum-silos 10 --pipe-silos 4",
	run:     runCost,
}

// mostSilos bounds the counts, as the job file does.
const mostSilos = 100000

func runCost(e *env, args []string) error {
	fs := newFlags("cost")
	drums := fs.Int("drum-silos", 0, "drum silos to price; left out: as many as the job says")
	pipes := fs.Int("pipe-silos", 0, "pipe silos to price; left out: as many as the job says")
	asJSON := fs.Bool("json", false, "write the bill as JSON")
	asCSV := fs.Bool("csv", false, "write the bill as CSV")
	rest, err := parseFlags(fs, args, 0, 1)
	if err != nil {
		return err
	}
	if *asJSON && *asCSV {
		return usagef("cost: --json and --csv exclude each other; hint: give one")
	}
	var c plan.Counts
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
		_, err = e.stdout.Write(p.Bill.CSV())
		return err
	case *asJSON:
		enc := json.NewEncoder(e.stdout)
		enc.SetIndent("", "  ")
		enc.SetEscapeHTML(false)
		return enc.Encode(p.Bill)
	}
	return printCost(e.stdout, p)
}

// printCost writes the bill for a reader: what to buy, category by category
// with its sum, then what it comes to.
func printCost(w io.Writer, p *plan.Plan) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %d drum silos, %d pipe silos; prices in %s from %s\n\n", p.Job.Name, p.Bill.DrumSilos, p.Bill.PipeSilos, p.Currency, p.Prices.Name)
	rows := [][]string{{"buy", "needed", "packs", "of", "each", "sum", "", "why this one"}}
	for _, c := range p.Bill.Categories {
		rows = append(rows, []string{c.Category, "", "", "", "", "", c.Text()})
		for _, l := range p.Bill.Lines {
			if l.Category == c.Category {
				rows = append(rows, costRow(l, p.Job.Units))
			}
		}
	}
	if len(p.Bill.Lines) > 0 {
		b.WriteString(columns(rows, "llrlrrrl") + "\n")
	}
	b.WriteString(totals(p))
	_, err := io.WriteString(w, b.String())
	return err
}

func costRow(l bom.Line, u measure.Unit) []string {
	row := []string{"  " + l.Item, l.Text(l.Total(), u), "", "", "", "no price", "", l.Choice}
	if o := l.Offer; o != nil {
		row = []string{row[0], row[1], strconv.FormatInt(l.Packs, 10), o.Pack, o.Price.Plain(), l.Amount.Plain(), "", ""}
		if l.Choice != "" {
			row[7] = strings.TrimSpace(o.Supplier + " " + l.Choice)
		}
	}
	return row
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

// totals are the lines that say what the build costs.
func totals(p *plan.Plan) string {
	var b strings.Builder
	note := ""
	if p.Invented {
		note = " (invented demo prices)"
	}
	bill := p.Bill
	fmt.Fprintf(&b, "total     %s%s\n", bill.TotalText(), note)
	part := ""
	if !bill.Complete() {
		fmt.Fprintf(&b, "  INCOMPLETE: no price for %s\n", strings.Join(bill.Missing, ", "))
		part = ", incomplete"
	}
	if len(bill.Missing) < len(bill.Lines) {
		if bill.DrumSilos > 0 {
			fmt.Fprintf(&b, "each      drum silo %s%s\n", bill.PerDrum, part)
		}
		if bill.PipeSilos > 0 {
			fmt.Fprintf(&b, "each      pipe silo %s%s\n", bill.PerPipe, part)
		}
	}
	return b.String()
}
