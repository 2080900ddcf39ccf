package main

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"silowright/cmd/internal/pack"
	"silowright/cmd/internal/plan"
	"silowright/cmd/internal/report"
	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/nursery"
)

var waterCommand = command{
	name:    "water",
	args:    "[JOB]",
	summary: "how much water each silo gets, how high it stands, what spills first; exit 1 on a stop",
	example: "silowright water my-silos/job.toml",
	run:     runWater,
}

func runWater(e *env, args []string) error {
	fs := newFlags("water")
	asJSON := fs.Bool("json", false, "write it as JSON")
	p, err := planOf(e, fs, args)
	if err != nil {
		return err
	}
	if p.Water == nil {
		return usagef("water: %s", noWater(p))
	}
	findings := p.Water.Findings(p.Job.Units)
	if *asJSON {
		err = writeJSON(e, report.WaterOf(p))
	} else {
		err = printWater(e.stdout, p, findings)
	}
	return endOf(err, findings)
}

// noWater says why a plan has no water.
func noWater(p *plan.Plan) string {
	for _, f := range p.Findings {
		switch {
		case f.ID != "water.reckoned":
		case strings.Contains(f.Says, "; hint: "):
			return f.Says
		default:
			return f.Says + "; hint: silowright check lists what is wrong with the silo"
		}
	}
	return "the job builds no drum silo; hint: look at drum_silos"
}

// writeJSON writes v indented.
func writeJSON(e *env, v any) error {
	data, err := report.Indented(v)
	if err == nil {
		_, err = e.stdout.Write(data)
	}
	return err
}

// silosShown is how many silos a screen lists.
const silosShown = 24

func printWater(w io.Writer, p *plan.Plan, findings []geometry.Finding) error {
	var b strings.Builder
	s, u := p.Water, p.Job.Units
	fmt.Fprintf(&b, "%s: %d drum silos; sea water %g g/kg at %s; flows from %s\n", p.Job.Name, len(s.Silos), s.Water.Salinity, s.Water.Temperature.Both(u), s.From)
	fmt.Fprintf(&b, "all %s, each on average %s, the least %s of the average\n\n", s.Total.Both(u), s.Mean.Both(u), measure.Percent(s.Evenness))
	rows := [][]string{{"silo", "water", "stands over the invert", "below the handle slots", "wells up at", "seed", "valve"}}
	for _, i := range shown(s) {
		o := s.Silos[i]
		rows = append(rows, []string{strconv.Itoa(o.Place), o.Flow.Both(u), o.Level.Both(u), o.ToSill.Both(u), o.Upwelling.Both(u), o.Bed.String(), valveText(s, i)})
	}
	b.WriteString(columns(rows, "rllllll"))
	if len(s.Silos) > silosShown {
		fmt.Fprintf(&b, "  … %d silos in all; the first, the last, the least and the most are shown\n", len(s.Silos))
	}
	if q := s.Pumping; q != nil {
		at := q.Result.Pump
		fmt.Fprintf(&b, "\npump      %s at %s", at.Flow.Both(u), at.Head.BothLong(u))
		if at.Input > 0 {
			fmt.Fprintf(&b, ", draws %s, %s a year%s", at.Input.Both(u), q.Energy().Text(u), energyText(p))
		}
		b.WriteString("\n")
	}
	if a := s.Asks; a != nil {
		fmt.Fprintf(&b, "asks      a pump that gives %s at %s\n", a.Total.Both(u), a.Head.BothLong(u))
	}
	b.WriteString("\n")
	for _, lv := range []geometry.Level{geometry.Stop, geometry.Caution, geometry.OK} {
		for _, f := range findings {
			if f.Level == lv {
				fmt.Fprintf(&b, "%-8s %s: %s\n", f.Level, f.ID, f.Says)
			}
		}
	}
	if s.Failure != nil {
		b.WriteString("\nwhen the power fails\n")
		for _, line := range report.FailureSays(*s.Failure, u) {
			fmt.Fprintf(&b, "  %s\n", line)
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// energyText is what the energy costs.
func energyText(p *plan.Plan) string {
	if p.Energy == nil {
		return ""
	}
	return ", " + p.Energy.String()
}

// shown are the places of the silos that a screen lists.
func shown(s *nursery.Study) []int {
	var out []int
	for i := range s.Silos {
		if len(s.Silos) <= silosShown || i == 0 || i == len(s.Silos)-1 || i == s.Least || i == s.Most {
			out = append(out, i)
		}
	}
	return out
}

// valveText is how far a silo's valve is to stand open; empty without a pump.
func valveText(s *nursery.Study, i int) string {
	if s.Pumping == nil || i >= len(s.Pumping.Settings.Settings) {
		return ""
	}
	return pack.ValveSays(s.Pumping.Settings.Settings[i])
}
