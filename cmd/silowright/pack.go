package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"silowright/cmd/internal/output"
	"silowright/cmd/internal/pack"
	"silowright/cmd/internal/plan"
	"silowright/geometry"
)

var packCommand = command{
	name:    "pack",
	args:    "[JOB]",
	summary: "write the shop pack: PDF, templates, bill, cut list, hole schedule, report",
	example: "silowright pack my-silos/job.toml --out my-silos/shop-pack",
	run:     runPack,
}

func runPack(e *env, args []string) error {
	fs := newFlags("pack")
	out := fs.String("out", "shop-pack", "directory to write to")
	rest, err := parseFlags(fs, args, 0, 1)
	if err != nil {
		return err
	}
	if *out == "" {
		return usagef("pack: --out is empty; hint: name a directory, or leave --out away for shop-pack")
	}
	p, err := loadPlan(e, rest)
	if err != nil {
		return err
	}
	made, err := pack.Make(p, pack.DefaultOptions(p.Job.Units))
	if err != nil {
		return err
	}
	if err := output.Replace(e.path(*out), made.Files); err != nil {
		return err
	}
	return printSummary(e.stdout, p, made, *out)
}

// printSummary tells in a few lines what was found and written.
func printSummary(w io.Writer, p *plan.Plan, made pack.Made, dir string) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %d drum silos, %d pipe silos\n", p.Job.Name, p.Job.DrumSilos, p.Job.PipeSilos)
	fmt.Fprintf(&b, "findings  %s\n", p.Tally())
	for _, f := range p.Findings {
		if f.Level == geometry.Stop {
			fmt.Fprintf(&b, "  stop    %s: %s\n", f.ID, f.Says)
		}
	}
	fmt.Fprintf(&b, "sheets    %d pages to read, %d template sheets\n", made.Pages, made.Sheets)
	b.WriteString(totals(p))
	fmt.Fprintf(&b, "written   %s\n", filepath.Join(dir, "shop-pack.pdf"))
	_, err := io.WriteString(w, b.String())
	return err
}

// totals are the lines that say what the build costs.
func totals(p *plan.Plan) string {
	var b strings.Builder
	note := ""
	if p.Invented {
		note = " (invented demo prices)"
	}
	fmt.Fprintf(&b, "total     %s%s\n", p.Bill.Total, note)
	if !p.Bill.Complete() {
		fmt.Fprintf(&b, "  INCOMPLETE: no price for %s\n", strings.Join(p.Bill.Missing, ", "))
	}
	if p.Bill.DrumSilos > 0 {
		fmt.Fprintf(&b, "each      drum silo %s\n", p.Bill.PerDrum)
	}
	if p.Bill.PipeSilos > 0 {
		fmt.Fprintf(&b, "each      pipe silo %s\n", p.Bill.PerPipe)
	}
	return b.String()
}
