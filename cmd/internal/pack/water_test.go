package pack

import (
	"testing"

	"silowright/cmd/internal/plan"
)

// A size that the pack advises is bought by its series: 4 in alone is sold as
// schedule 40, schedule 80 and sewer pipe.
func TestAdvisedPipeNamesItsSeries(t *testing.T) {
	p, err := plan.Demo()
	if err != nil {
		t.Fatal(err)
	}
	sizes := p.Water.Pumping.Sizes
	sizes.Held = true
	sizes.Main.Size, sizes.Main.Series = "4", "sch80"
	sizes.Manifold.Size, sizes.Manifold.Series = "6", "sdr35"
	var got []string
	for _, row := range pipeRows(p.Water, p.Job.Units) {
		got = append(got, row.Advised)
	}
	want := []string{"", "4 sch80", "6 sdr35"}
	if len(got) != len(want) {
		t.Fatalf("pipes advised: %q, want %q", got, want)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("pipes advised: %q, want %q", got, want)
		}
	}
}
