package main

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"silowright/cmd/internal/plan"
	"silowright/geometry"
)

var checkCommand = command{
	name:    "check",
	args:    "[JOB]",
	summary: "list the findings of a job; exit 1 when one is a stop",
	example: "silowright check my-silos/job.toml",
	run:     runCheck,
}

func runCheck(e *env, args []string) error {
	fs := newFlags("check")
	asJSON := fs.Bool("json", false, "write the findings as JSON")
	all := fs.Bool("all", false, "list the checks that are ok too")
	rest, err := parseFlags(fs, args, 0, 1)
	if err != nil {
		return err
	}
	p, err := loadPlan(e, rest)
	if err != nil {
		return err
	}
	if *asJSON {
		enc := json.NewEncoder(e.stdout)
		enc.SetIndent("", "  ")
		enc.SetEscapeHTML(false)
		err = enc.Encode(p.Findings)
	} else {
		err = printFindings(e.stdout, p, *all)
	}
	if err == nil && geometry.Worst(p.Findings) == geometry.Stop {
		return stopError{}
	}
	return err
}

// loadPlan reads the job named by rest, or the demo.
func loadPlan(e *env, rest []string) (*plan.Plan, error) {
	if len(rest) == 0 {
		return plan.Demo()
	}
	return plan.Load(e.path(rest[0]))
}

func printFindings(w io.Writer, p *plan.Plan, all bool) error {
	var b strings.Builder
	several := len(p.Silos) > 1
	for _, lv := range []geometry.Level{geometry.Stop, geometry.Caution, geometry.OK} {
		if lv == geometry.OK && !all {
			continue
		}
		for _, f := range p.Findings {
			if f.Level != lv {
				continue
			}
			where := f.ID
			if several && f.Drum != "" {
				where += " (" + f.Drum + ")"
			}
			fmt.Fprintf(&b, "%-8s %s: %s\n         change: %s; basis: %s\n", f.Level, where, f.Says, f.Key, f.Basis)
		}
	}
	b.WriteString(p.Tally() + "\n")
	_, err := io.WriteString(w, b.String())
	return err
}
