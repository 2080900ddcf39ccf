package main

import (
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

var holeCommand = command{
	name:    "hole",
	summary: "say whether a hole saw is right for a pipe, and what the joint needs",
	example: `silowright hole --pipe "1 1/2" --saw "2"`,
	run:     runHole,
}

// holeAsk is what the flags of hole say.
type holeAsk struct {
	pipe, saw, schedule, series, joint             string
	radius, wall, oversize, nipple, label, outside string
	stopper, units                                 string
	json                                           bool
}

func holeFlags(a *holeAsk) *pflag.FlagSet {
	fs := newFlags("hole")
	fs.StringVar(&a.pipe, "pipe", "", `pipe size as the trade names it: "1 1/2", "63"`)
	fs.StringVar(&a.saw, "saw", "", `hole saw's nominal size: "2", "2 1/2 in", "65 mm"`)
	fs.StringVar(&a.schedule, "schedule", "40", "schedule of pressure pipe: 40 or 80")
	fs.StringVar(&a.series, "series", "", "another series of pipe: "+strings.Join(stock.Series(), ", "))
	fs.StringVar(&a.joint, "joint", "couplings", geometry.JointNames())
	fs.StringVar(&a.radius, "wall-radius", "11 1/2 in", "outside radius of the wall")
	fs.StringVar(&a.wall, "wall", "3/16 in", "thickness of the wall")
	fs.StringVar(&a.oversize, "oversize", "1/32 in", "how much larger than nominal a hole comes out")
	fs.StringVar(&a.nipple, "nipple", "", "length of the pipe through the wall; left out: the longest that lets the couplings close")
	fs.StringVar(&a.label, "label", "", "the hole that the grommet's label or the bulkhead fitting's maker asks for")
	fs.StringVar(&a.outside, "coupling-outside", "", "the coupling's outside as measured")
	fs.StringVar(&a.stopper, "stopper", "", "number of the stopper: 11")
	fs.StringVar(&a.units, "units", "in", "unit of bare numbers, written first: in or mm")
	fs.BoolVar(&a.json, "json", false, "write the answer as JSON")
	return fs
}

// holeAnswer is what hole --json writes; lengths are in mm.
type holeAnswer struct {
	Fits     bool               `json:"fits"`
	Saw      float64            `json:"saw_mm"`
	Hole     float64            `json:"hole_mm"`
	Arc      float64            `json:"arc_round_wall_mm"`
	Pipe     string             `json:"pipe,omitempty"`
	Outside  float64            `json:"pipe_outside_mm,omitempty"`
	Findings []geometry.Finding `json:"findings"`
	Saws     []string           `json:"saws_that_do"`
}

func runHole(e *env, args []string) error {
	var a holeAsk
	fs := holeFlags(&a)
	if _, err := parseFlags(fs, args, 0, 0); err != nil {
		return err
	}
	spec, units, err := a.spec()
	if err != nil {
		return err
	}
	h, err := geometry.SolveHole(spec)
	if err != nil {
		return usagef("hole: --%w", err)
	}
	findings := geometry.HoleChecks(h, units)
	ans := holeAnswer{Fits: geometry.Worst(findings) != geometry.Stop, Saw: h.Saw.MM(), Hole: h.Diameter.MM(),
		Arc: h.Arc.MM(), Outside: h.PipeOutside.MM(), Findings: findings, Saws: []string{}}
	if h.Joint.Makeup().Piped {
		ans.Pipe = h.Pipe.String()
	}
	for _, s := range geometry.SawsFor(h) {
		ans.Saws = append(ans.Saws, s.Name(units))
	}
	if a.json {
		enc := json.NewEncoder(e.stdout)
		enc.SetIndent("", "  ")
		err = enc.Encode(ans)
	} else {
		err = printHole(e.stdout, h, ans, units)
	}
	if err == nil && !ans.Fits {
		return stopError{}
	}
	return err
}

// spec turns the flags into a hole to solve.
func (a holeAsk) spec() (geometry.HoleSpec, measure.Unit, error) {
	var q geometry.HoleSpec
	units, err := measure.ParseUnit(a.units)
	if err != nil {
		return q, units, usagef("hole: --units: %w", err)
	}
	q = geometry.HoleSpec{Name: "outlet", Part: "wall", Joint: geometry.Joint(a.joint)}
	if !slices.Contains(geometry.Joints(), q.Joint) {
		return q, units, usagef("hole: --joint: %q is not known; hint: %s", a.joint, geometry.JointNames())
	}
	if a.saw == "" {
		return q, units, usagef(`hole: --saw is missing; hint: --saw "2 1/2"`)
	}
	var label, outside measure.Length
	for _, f := range []struct {
		flag, text string
		to         *measure.Length
		zero       bool
	}{
		{"saw", a.saw, &q.Saw, false}, {"wall-radius", a.radius, &q.Radius, false}, {"wall", a.wall, &q.Wall, false},
		{"oversize", a.oversize, &q.Oversize, true}, {"nipple", a.nipple, &q.Nipple, false},
		{"label", a.label, &label, false}, {"coupling-outside", a.outside, &outside, false},
	} {
		if f.text == "" {
			continue
		}
		v, err := measure.ParseLength(f.text, units)
		if err != nil {
			return q, units, usagef("hole: --%s: %w", f.flag, err)
		}
		if v < 0 || (v == 0 && !f.zero) {
			return q, units, usagef("hole: --%s: %q; hint: a size larger than nothing", f.flag, f.text)
		}
		*f.to = v
	}
	if !q.Joint.Makeup().Piped {
		if a.stopper == "" {
			return q, units, usagef(`hole: --stopper is missing; hint: --joint stopper --stopper 11`)
		}
		q.Stopper = a.stopper
		return q, units, nil
	}
	if a.pipe == "" {
		return q, units, usagef(`hole: --pipe is missing; hint: --pipe "1 1/2"`)
	}
	series := a.series
	if series == "" {
		if a.schedule != "40" && a.schedule != "80" {
			return q, units, usagef("hole: --schedule: %q is not known; hint: 40 or 80", a.schedule)
		}
		series = "sch" + a.schedule
	}
	size := stock.NormalSize(a.pipe)
	if _, ok := stock.PipeOf(size, series); !ok {
		sizes := stock.PipeSizes(series)
		if sizes == nil {
			return q, units, usagef("hole: --series: %q is not known; hint: one of %s", series, strings.Join(stock.Series(), ", "))
		}
		return q, units, usagef("hole: --pipe: %q is not a size of %s; hint: one of %s", a.pipe, series, strings.Join(sizes, ", "))
	}
	q.Pipe = geometry.PipeRef{Size: size, Series: series}
	if label > 0 {
		q.Fittings = q.Fittings.WithLabel(q.Joint, size, label)
	}
	if outside > 0 {
		q.Fittings = geometry.Fittings{Couplings: map[string]geometry.CouplingMeasure{size: {Outside: outside}}}.Over(q.Fittings)
	}
	if q.Nipple == 0 && q.Joint.Makeup().Nipple {
		q.Nipple = geometry.LongestNipple(q)
	}
	return q, units, nil
}

func printHole(w io.Writer, h geometry.Hole, a holeAnswer, u measure.Unit) error {
	var b strings.Builder
	if a.Fits {
		b.WriteString("fits\n")
	} else {
		b.WriteString("does not fit\n")
	}
	if a.Pipe != "" {
		fmt.Fprintf(&b, "  pipe   %s, %s outside\n", a.Pipe, h.PipeOutside.Both(u))
	}
	fmt.Fprintf(&b, "  hole   %s; laid flat on this wall %s round\n", h.Diameter.Both(u), h.Arc.Both(u))
	for _, f := range a.Findings {
		fmt.Fprintf(&b, "%-8s %s\n         basis: %s\n", f.Level, f.Says, f.Basis)
	}
	if len(a.Saws) == 0 {
		b.WriteString("saws of the series that would do: none\n")
	} else {
		fmt.Fprintf(&b, "saws of the series that would do: %s\n", strings.Join(a.Saws, ", "))
	}
	_, err := io.WriteString(w, b.String())
	return err
}
