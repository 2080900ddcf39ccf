package work_test

import (
	"slices"
	"testing"

	"silowright/bom"
	"silowright/bom/work"
	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/render/views"
)

// Operations come in the order of the printed build steps, each under a step
// that is printed.
func TestOperationsFollowTheBuildSteps(t *testing.T) {
	var steps []string
	drum := geometry.Drum{Label: "invented", Count: 1, Outside: 580, Height: 880, Wall: 5, FootOutside: 540, FootHeight: 55, HeadRecess: 20,
		Hoops: []geometry.Hoop{{From: 270, To: 310, Outside: 602}, {From: 575, To: 615, Outside: 602}}}
	silos, err := geometry.Solve(geometry.Job{Kinds: []geometry.Spec{geometry.DefaultSpec(drum, measure.UnitMM)}})
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range views.Steps(silos[0]) { // one for each printed step, by a test in render/sheets
		steps = append(steps, s.ID)
	}
	h := work.Reckon([]bom.Batch{{Silo: geometry.Silo{}, Drum: 1, Pipe: 1}}, work.DefaultRates())
	at, part := 0, ""
	for _, o := range h.Operations {
		i := slices.Index(steps, o.Step)
		if i < 0 {
			t.Errorf("%s: no step %q", o.ID, o.Step)
		}
		if o.Part != part {
			at, part = 0, o.Part
		}
		if i < at {
			t.Errorf("%s: step %q comes before %q", o.ID, o.Step, steps[at])
		}
		at = i
	}
}
