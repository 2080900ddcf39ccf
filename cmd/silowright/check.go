package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/pflag"

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
	p, err := planOf(e, fs, args)
	if err != nil {
		return err
	}
	if *asJSON {
		err = writeJSON(e, p.Findings)
	} else {
		err = printFindings(e.stdout, p, *all)
	}
	return endOf(err, p.Findings)
}

// loadPlan reads the job named by rest, or the demo.
func loadPlan(e *env, rest []string) (*plan.Plan, error) {
	if len(rest) == 0 {
		return plan.Demo()
	}
	return plan.Load(e.path(rest[0]))
}

// planOf reads the flags of a command that takes a job or none, and its job.
func planOf(e *env, fs *pflag.FlagSet, args []string) (*plan.Plan, error) {
	rest, err := parseFlags(fs, args, 0, 1)
	if err != nil {
		return nil, err
	}
	return loadPlan(e, rest)
}

// endOf is how a command ends that showed findings: as err says, or by a stop.
func endOf(err error, findings []geometry.Finding) error {
	if err == nil && geometry.Worst(findings) == geometry.Stop {
		return stopError{}
	}
	return err
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
