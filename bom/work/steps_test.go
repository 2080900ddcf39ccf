package work_test

import (
	"slices"
	"testing"

	"silowright/bom"
	"silowright/bom/work"
	"silowright/geometry"
	"silowright/render/sheets"
)

// Operations come in the order of the printed build steps, each under a step
// that is printed.
func TestOperationsFollowTheBuildSteps(t *testing.T) {
	steps := sheets.StepIDs()
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
