package plan

import (
	"math"
	"path/filepath"
	"strings"
	"testing"

	"silowright/geometry/measure"
)

// Every finding of the jobs at hand tells its measure from its limit, in the
// unit the reader works in, and is held against nothing of another kind. What
// is its own limit by chance, and not by having none, is listed.
func TestFindingsTellMeasureFromLimit(t *testing.T) {
	same := map[string]string{
		"pipe-silo.saw-grommet": "the saw is what the grommet asks for",
		"failure.drains":        "none of none",
		"failure.siphon":        "none of none",
		"seed.leave":            "the demo's seed leaves for the finest usual mesh",
		"seed.water":            "the demo's water is the least of a barge nursery",
		"seed.weight-1mm":       "the table begins with the published weight",
		"handle.hand-length":    "the slot is as long as a hand wants",
	}
	jobs, err := filepath.Glob("../../../testdata/*/job.toml")
	if err != nil || len(jobs) < 3 {
		t.Fatalf("jobs %v: %v", jobs, err)
	}
	for _, path := range append([]string{""}, jobs...) {
		p, err := Demo()
		if path != "" {
			p, err = Load(path)
		}
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range p.Findings {
			for _, u := range []measure.Unit{measure.UnitInch, measure.UnitMM} {
				measured, limit := f.Texts(u)
				if limit == "" {
					continue
				}
				if f.Measured.Unit != f.Limit.Unit {
					t.Errorf("%s %s: %s is held against %s", path, f.ID, measured, limit)
				}
				own, held, _ := strings.Cut(measured, " (")
				if limit, _, _ := strings.Cut(limit, " ("); limit != own {
					continue
				}
				if math.Abs(f.Measured.Value-f.Limit.Value) > 1e-9*math.Abs(f.Limit.Value) {
					t.Errorf("%s %s: %v and its limit %v both read %s (%s", path, f.ID, f.Measured, f.Limit, own, held)
				} else if same[f.ID] == "" {
					t.Errorf("%s %s: %s is its own limit", path, f.ID, measured)
				}
			}
		}
	}
}
