package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"silowright/cmd/internal/output"
	"silowright/cmd/internal/pack"
	"silowright/cmd/internal/plan"
	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/render"
	"silowright/render/sheets"
)

var packCommand = command{
	name:    "pack",
	args:    "[JOB]",
	summary: "write the shop pack: PDF, templates, bill, cut list, hole schedule, report",
	example: "silowright pack my-silos/job.toml --out my-silos/shop-pack",
	run:     runPack,
}

// packAsk is what the flags of pack say.
type packAsk struct {
	out, paper, margin, overlap, printed, page, sheet string
	only                                              []string
	strips                                            bool
}

func packFlags(a *packAsk) *pflag.FlagSet {
	fs := newFlags("pack")
	fs.StringVar(&a.out, "out", "shop-pack", "directory to write to")
	fs.StringVar(&a.paper, "paper", "", `paper for templates: letter, A4, A0, ARCH-D, a size such as "24x36", or "roll 36"; left out: letter, or A4 for a job in mm`)
	fs.StringVar(&a.margin, "margin", "", "what the printer cannot reach on each side")
	fs.StringVar(&a.overlap, "overlap", "", "how much neighbouring template sheets share")
	fs.StringVar(&a.printed, "printed-as", "", "what the 100 mm check square measured, across and up: 99.4x100.3")
	fs.StringVar(&a.page, "page", "", "paper for the pages to read: letter or A4")
	fs.StringVar(&a.sheet, "sheet", "", "sheet that a laser or router shop cuts patterns from; left out: 48x96 in, or 1220x2440 mm")
	fs.StringSliceVar(&a.only, "only", nil, "parts of the PDF to write: "+strings.Join(pack.Parts(), ", "))
	fs.BoolVar(&a.strips, "strips", false, "templates that go once round body and base too")
	return fs
}

func runPack(e *env, args []string) error {
	var a packAsk
	rest, err := parseFlags(packFlags(&a), args, 0, 1)
	if err != nil {
		return err
	}
	if a.out == "" {
		return usagef("pack: --out is empty; hint: name a directory, or leave --out away for shop-pack")
	}
	p, err := loadPlan(e, rest)
	if err != nil {
		return err
	}
	o, err := a.options(p.Job.Units)
	if err != nil {
		return err
	}
	made, err := pack.Make(p, o)
	if err != nil {
		return err
	}
	if err := output.Replace(e.path(a.out), made.Files); err != nil {
		return err
	}
	return printSummary(e.stdout, p, made, a.out)
}

// options turns the flags into the pack's options, bare numbers in u.
func (a packAsk) options(u measure.Unit) (pack.Options, error) {
	o := pack.DefaultOptions(u)
	o.Only, o.Strips = a.only, a.strips
	var err error
	if a.paper != "" {
		if o.Paper, err = render.PaperNamed(a.paper, u); err != nil {
			return o, usagef("pack: --paper: %w", err)
		}
	}
	if a.sheet != "" {
		if o.Sheet, err = render.PaperNamed(a.sheet, u); err != nil {
			return o, usagef("pack: --sheet: %w", err)
		}
	}
	for _, f := range []struct {
		flag, text string
		to         *measure.Length
	}{{"margin", a.margin, &o.Margin}, {"overlap", a.overlap, &o.Overlap}} {
		if f.text == "" {
			continue
		}
		if *f.to, err = measure.ParseLength(f.text, u); err != nil {
			return o, usagef("pack: --%s: %w", f.flag, err)
		}
	}
	if a.printed != "" {
		if o.Stretch, err = render.PrintedAs(a.printed); err != nil {
			return o, usagef("pack: --printed-as: %w", err)
		}
	}
	switch strings.ToLower(a.page) {
	case "":
	case "letter":
		o.Page = sheets.Letter
	case "a4":
		o.Page = sheets.A4
	default:
		return o, usagef("pack: --page: %q is not known; hint: letter or A4", a.page)
	}
	return o, nil
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
