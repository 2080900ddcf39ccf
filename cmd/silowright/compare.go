package main

import (
	"fmt"
	"io"
	"strings"

	"silowright/cmd/internal/plan"
	"silowright/cmd/internal/report"
)

var compareCommand = command{
	name:    "compare",
	args:    "JOB-A JOB-B",
	summary: "set two jobs side by side: cost, hours, open area, findings",
	example: "silowright compare couplings/job.toml grommets/job.toml",
	run:     runCompare,
}

func runCompare(e *env, args []string) error {
	fs := newFlags("compare")
	asJSON := fs.Bool("json", false, "write the comparison as JSON")
	rest, err := parseFlags(fs, args, 2, 2)
	if err != nil {
		return err
	}
	a, err := plan.Load(e.path(rest[0]))
	if err != nil {
		return err
	}
	b, err := plan.Load(e.path(rest[1]))
	if err != nil {
		return err
	}
	c, err := report.Compare(a, b)
	if err != nil {
		return err
	}
	if *asJSON {
		data, err := c.JSON()
		if err == nil {
			_, err = e.stdout.Write(data)
		}
		return err
	}
	return printComparison(e.stdout, c)
}

func printComparison(w io.Writer, c report.Comparison) error {
	var b strings.Builder
	fmt.Fprintf(&b, "A  %s\nB  %s\n\n", c.A, c.B)
	rows := [][]string{{"", "A", "B", "B less A"}}
	group := ""
	for _, r := range c.Rows {
		if r.Group != group {
			group = r.Group
			rows = append(rows, []string{group, "", "", ""})
		}
		rows = append(rows, []string{"  " + r.Name, r.A, r.B, r.More})
	}
	b.WriteString(columns(rows, "lrrr"))
	if len(c.Only) > 0 {
		b.WriteString("\nfindings that differ\n")
	}
	for _, f := range c.Only {
		fmt.Fprintf(&b, "  %s: A %s, B %s: %s\n", f.ID, f.A, f.B, f.Says)
	}
	_, err := io.WriteString(w, b.String())
	return err
}
