package main

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"silowright/cmd/internal/plan"
	"silowright/cmd/internal/report"
	"silowright/geometry"
)

var seedCommand = command{
	name:    "seed",
	args:    "[JOB]",
	summary: "silos and water that the seed needs week by week, and which mesh holds it; exit 1 on a stop",
	example: "silowright seed",
	run:     runSeed,
}

func runSeed(e *env, args []string) error {
	fs := newFlags("seed")
	asJSON := fs.Bool("json", false, "write it as JSON")
	p, err := planOf(e, fs, args)
	if err != nil {
		return err
	}
	if p.Water == nil {
		return usagef("seed: %s", noWater(p))
	}
	if p.Water.Seed == nil {
		return usagef("seed: the job says nothing of seed; hint: describe it under [seed]: count and size at least")
	}
	var findings []geometry.Finding
	for _, f := range p.Water.Findings(p.Job.Units) {
		if strings.HasPrefix(f.ID, "seed.") {
			findings = append(findings, f)
		}
	}
	if *asJSON {
		err = writeJSON(e, report.SeedOf(p))
	} else {
		err = printSeed(e.stdout, p, findings)
	}
	return endOf(err, findings)
}

func printSeed(w io.Writer, p *plan.Plan, findings []geometry.Finding) error {
	var b strings.Builder
	s, u := p.Water.Seed, p.Job.Units
	fmt.Fprintf(&b, "%s: %d seed of %s, %s\n\n", p.Job.Name, s.Plan.Count, s.Plan.Species, s.Plan.Size.Both(u))
	rows := [][]string{{"week", "shell", "seed", "mass", "mesh", "drum silos", "pipe silos", "water", "set by", ""}}
	for _, q := range s.Need.Weeks {
		rows = append(rows, []string{strconv.Itoa(q.Week), q.Shell.Both(u), strconv.Itoa(q.Count), q.Mass.Both(u), q.Mesh.Name, strconv.Itoa(q.Drum), strconv.Itoa(q.Pipe), q.Flow.Both(u), q.Governs.String(), report.WeekDoes(q)})
	}
	b.WriteString(columns(rows, "rlrllrrlll"))
	k := s.Need.Peak
	fmt.Fprintf(&b, "\nmost      %s; %s; %s, in week %d\n\n", report.SilosAtMost(k.Drum, "drum", k.DrumWeek), report.SilosAtMost(k.Pipe, "pipe", k.PipeWeek), k.Flow.Both(u), k.FlowWeek)
	for _, r := range report.LadderOf(s.Plan, s.Need) {
		fmt.Fprintf(&b, "mesh      %s in %s silos: from a sieve of %s to %s\n", r.Mesh.Name, r.Mesh.In, r.From.Both(u), r.To.Both(u))
	}
	b.WriteString("\n")
	for _, lv := range []geometry.Level{geometry.Stop, geometry.Caution, geometry.OK} {
		for _, f := range findings {
			if f.Level == lv {
				fmt.Fprintf(&b, "%-8s %s: %s\n", f.Level, f.ID, f.Says)
			}
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}
