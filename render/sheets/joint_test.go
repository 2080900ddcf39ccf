package sheets

import (
	"strings"
	"testing"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// Where a bulkhead fitting's ends are threaded the adapter is put in at its step,
// with tape, tools and caution, on the outlet's inner end too where a pipe silo
// hangs; with sockets no page speaks of one.
func TestAdaptersStandAtTheirSteps(t *testing.T) {
	steps := func(end geometry.End) string {
		p := packOf(t, measure.UnitInch, 3, drum("blue", 4, 23))
		q := geometry.DefaultSpec(drum("blue", 4, 23), measure.UnitInch)
		q.Outlet.Joint, q.Outlet.Saw = geometry.JointBulkhead, 3*measure.Inch
		q.Fittings = geometry.Fittings{Bulkheads: map[string]geometry.BulkheadMeasure{q.Outlet.Pipe.Size: {Ends: end}}}
		silos, err := geometry.Solve(geometry.Job{Kinds: []geometry.Spec{q}})
		if err != nil {
			t.Fatal(err)
		}
		p.Silos = silos
		return wordsOf(section(t, p, "steps")...)
	}
	all := steps(geometry.EndThread)
	_, outlet, _ := strings.Cut(all, "Fit the outlet")
	outlet, _, _ = strings.Cut(outlet, "Fit the inlet")
	_, hung, _ := strings.Cut(all, "Fit the pipe silo's outlet")
	hung, _, _ = strings.Cut(hung, "Seat the body")
	for _, c := range []struct{ step, words, want string }{
		{"outlet", outlet, "thread tape"}, {"outlet", outlet, "A tapered plastic thread splits"}, {"outlet", outlet, "round the male adapter's thread"},
		{"pipe silo's outlet", hung, "thread tape"}, {"pipe silo's outlet", hung, "A tapered plastic thread splits"}, {"pipe silo's outlet", hung, "inner end of the drum silo's outlet is threaded"},
	} {
		if !strings.Contains(c.words, c.want) {
			t.Errorf("the step of the %s lacks %q: %s", c.step, c.want, c.words)
		}
	}
	if sockets := steps(geometry.EndSocket); strings.Contains(sockets, "thread tape") || strings.Contains(sockets, "male adapter") {
		t.Error("an adapter for sockets")
	}
}
