package main

import (
	"encoding/json"
	"fmt"
	"io"
	"strconv"
	"strings"
	"text/tabwriter"

	"silowright/cmd/internal/plan"
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

func printCost(w io.Writer, p *plan.Plan) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %d drum silos, %d pipe silos; prices from %s\n\n", p.Job.Name, p.Bill.DrumSilos, p.Bill.PipeSilos, p.Prices.Name)
	t := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	fmt.Fprintln(t, "item\tneed\tpacks\tof\teach\tamount")
	for _, l := range p.Bill.Lines {
		packs, pack, price, amount := "-", "-", "-", "no price"
		if l.Offer != nil {
			packs, pack, price, amount = strconv.FormatInt(l.Packs, 10), l.Offer.Pack, l.Offer.Price.Plain(), l.Amount.Plain()
		}
		fmt.Fprintf(t, "%s\t%s\t%s\t%s\t%s\t%s\n", l.Item, l.Text(l.Total(), p.Job.Units), packs, pack, price, amount)
	}
	fmt.Fprintln(t, "\t\t\t\t\t")
	for _, c := range p.Bill.Categories {
		fmt.Fprintf(t, "%s\t\t\t\t\t%s\n", c.Category, c.Sum.Plain())
	}
	t.Flush()
	b.WriteString("\n" + totals(p))
	_, err := io.WriteString(w, b.String())
	return err
}
