package nursery

import (
	"strings"
	"testing"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/sea"
)

// studied is the invented silo at a flow in L/min.
func studied(t *testing.T, q Stocking, lmin float64, change ...func(*flow.Silo)) []geometry.Finding {
	t.Helper()
	w, err := sea.At(30, 15)
	if err != nil {
		t.Fatal(err)
	}
	f := OfSilo(invented(t), q)
	for _, c := range change {
		c(&f)
	}
	d, err := flow.Solve(w, f, measure.Flow(lmin)*measure.LitrePerMinute)
	if err != nil {
		t.Fatal(err)
	}
	return WaterFindings(d, "blue", measure.UnitInch)
}

// Each finding fires where it should and keeps quiet where it should.
func TestWaterFindings(t *testing.T) {
	with := stocking
	with.WithPipeSilo = true
	light := stocking
	light.Seed.Size = 0.4
	heap := stocking
	heap.Seed.Mass = 60
	for _, c := range []struct {
		reason string
		got    []geometry.Finding
		id     string
		level  geometry.Level
		says   string
	}{
		{"little water", studied(t, stocking, 40), "water.sill", geometry.OK, "below the handle slots"},
		{"near the sill", studied(t, stocking, 65), "water.sill", geometry.Caution, "only"},
		{"a pump's full share", studied(t, stocking, 397), "water.sill", geometry.Stop, "leaves by the handle slots too"},
		{"little water", studied(t, stocking, 40), "water.rim", geometry.OK, "below the rim"},
		{"near the rim", studied(t, stocking, 500), "water.rim", geometry.Caution, "only"},
		{"a flood", studied(t, stocking, 900), "water.rim", geometry.Stop, "over the rim"},
		{"clean", studied(t, stocking, 60), "water.seat", geometry.OK, "to spare"},
		{"fouled", studied(t, stocking, 300, func(s *flow.Silo) { s.Mesh.Fouled = 0.96 }), "water.seat", geometry.Caution, "with the mesh fouled as given"},
		{"a body of no weight", studied(t, stocking, 60, func(s *flow.Silo) { s.Body = 0.01; s.Seed.Mass = 0 }), "water.seat", geometry.Caution, "the water lifts the body"},
		{"no seat", studied(t, stocking, 60, func(s *flow.Silo) { s.SeatAcross = 0 }), "water.seat", geometry.Caution, "does not seat"},
		{"slow", studied(t, stocking, 40), "water.seed", geometry.OK, "lies still"},
		{"faster", studied(t, stocking, 300), "water.seed", geometry.OK, "carries the seed"},
		{"small seed", studied(t, light, 400), "water.seed", geometry.Stop, "washes out"},
		{"a heap", studied(t, heap, 500), "water.seed", geometry.Stop, "up to the outlet"},
		{"pipe silo", studied(t, with, 20), "water.pipe-rim", geometry.OK, "below its rim"},
		{"short pipe", studied(t, with, 20, func(s *flow.Silo) { s.Pipe.Rim = s.Pipe.Invert + 50 }), "water.pipe-rim", geometry.Caution, "only"},
		{"a stub", studied(t, with, 30, func(s *flow.Silo) { s.Pipe.Rim = s.Pipe.Invert + 30 }), "water.pipe-rim", geometry.Stop, "past the seed"},
		{"pipe silo", studied(t, with, 20), "water.pipe-seed", geometry.OK, "carries the seed"},
	} {
		var hit *geometry.Finding
		for i := range c.got {
			if c.got[i].ID == c.id {
				hit = &c.got[i]
			}
		}
		if hit == nil {
			t.Errorf("%s: no %s", c.reason, c.id)
			continue
		}
		if hit.Level != c.level || !strings.Contains(hit.Says, c.says) || strings.Contains(hit.Says, "out of range") || hit.Drum != "blue" || hit.Basis.Kind == "" {
			t.Errorf("%s: %s is %v %q, want %v with %q", c.reason, c.id, hit.Level, hit.Says, c.level, c.says)
		}
	}
	// no seed, no finding on seed
	for _, f := range studied(t, Stocking{}, 40) {
		if f.ID == "water.seed" || f.ID == "water.pipe-seed" {
			t.Errorf("%+v", f)
		}
	}
}
