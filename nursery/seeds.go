package nursery

import (
	"fmt"
	"slices"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/seed"
)

// SeedStudy is the seed plan on the job's own silos.
type SeedStudy struct {
	Plan seed.Plan // what it left out filled in from the silos
	Need seed.SiloNeed
	// What there is.
	Drums, Pipes int
	Flow         measure.Flow
}

// PlanOn is the farm's plan with what it leaves out filled in from the kinds of
// silo: the area that seed lies on, the meshes, and no more water than they take
// without spilling. Silos of several kinds count as the smallest of them. It is
// the plan that seed.Need tells the silos needed by, before their number is
// known. An error names the key; without a plan it is the zero Plan.
func PlanOn(kinds []*geometry.Silo, f Farm) (seed.Plan, error) {
	if f.Plan == nil {
		return seed.Plan{}, nil
	}
	w, err := f.water()
	if err != nil {
		return seed.Plan{}, err
	}
	p := *f.Plan
	var drum, pipe measure.Area
	var meshes []seed.Mesh
	known := func(m seed.Mesh) {
		if !slices.ContainsFunc(meshes, func(o seed.Mesh) bool { return o.In == m.In && o.Opening == m.Opening }) {
			meshes = append(meshes, m)
		}
	}
	for _, s := range kinds {
		if a := flow.Disc(2 * s.Ring.InnerRadius); drum == 0 || a < drum {
			drum = a
		}
		if a := flow.Disc(s.Pipe.Inside); pipe == 0 || a < pipe {
			pipe = a
		}
		known(seed.Mesh{Name: s.Spec.Drum.Label + ", mesh", In: seed.Drum, Opening: s.Spec.Mesh.Opening})
		known(seed.Mesh{Name: s.Spec.Drum.Label + ", screen", In: seed.Pipe, Opening: s.Spec.Pipe.Screen})
		for _, piped := range []bool{false, true} {
			d, err := flow.Solve(w, OfSilo(s, f.stocking(s, piped)), 0)
			if err != nil {
				return seed.Plan{}, fmt.Errorf("%s: %w", s.Spec.Drum.Label, err)
			}
			if !piped {
				p.DrumHouse.Most = min(p.DrumHouse.Most, max(d.BeforeSlots, measure.LitrePerMinute))
			} else {
				p.PipeHouse.Most = min(p.PipeHouse.Most, max(min(d.BeforeSlots, d.Pipe.BeforeRim), measure.LitrePerMinute))
			}
		}
	}
	if p.DrumHouse.Area <= 0 {
		p.DrumHouse.Area = drum
	}
	if p.PipeHouse.Area <= 0 {
		p.PipeHouse.Area = pipe
	}
	if len(p.Meshes) == 0 {
		p.Meshes = meshes
	}
	return p, nil
}

// seeds works the plan out on the silos that there are.
func (f Farm) seeds(total measure.Flow, counts []Count) (*SeedStudy, error) {
	out := &SeedStudy{Flow: total}
	var kinds []*geometry.Silo
	for _, c := range counts {
		if c.Drum > 0 {
			kinds = append(kinds, c.Silo)
			out.Drums += c.Drum
			out.Pipes += min(c.Pipe, c.Drum)
		}
	}
	var err error
	if out.Plan, err = PlanOn(kinds, f); err != nil {
		return nil, err
	}
	if out.Plan.PipeSilosAtHand == 0 {
		out.Plan.PipeSilosAtHand = out.Pipes
	}
	out.Need, err = seed.Need(out.Plan)
	return out, err
}

// seedFindings are the plan's own and whether the job's silos and water are
// enough for it.
func (s Study) seedFindings(u measure.Unit) []geometry.Finding {
	d := s.Seed
	if d == nil {
		return nil
	}
	out := seed.Findings(d.Plan, d.Need, u)
	peak := d.Need.Peak
	drums := geometry.Finding{ID: "seed.drum-silos", Key: "drum_silos", Measured: measure.Count(peak.Drum), Limit: measure.Count(d.Drums), Basis: worked,
		Says: fmt.Sprintf("the %d drum silos are enough every week; the seed needs %d at most", d.Drums, peak.Drum)}
	if peak.Drum > d.Drums {
		drums.Level = geometry.Caution
		drums.Says = fmt.Sprintf("week %d needs %d drum silos and the job has %d: build more, take in fewer seed, or sell some earlier", peak.DrumWeek, peak.Drum, d.Drums)
	}
	if d.Plan.PipeSilosAtHand == 0 && peak.Pipe > d.Pipes {
		// The plan's own check wants some at hand.
		out = append(out, geometry.Finding{ID: "seed.pipe-silos", Level: geometry.Stop, Key: "pipe_silos", Measured: measure.Count(peak.Pipe), Limit: measure.Count(d.Pipes), Basis: worked,
			Says: fmt.Sprintf("week %d needs %d pipe silos and the job has none: build them, put a finer mesh in a drum, or take in larger seed", peak.PipeWeek, peak.Pipe)})
	}
	water := geometry.Finding{ID: "seed.flow", Key: "pump.curve", Measured: peak.Flow.Quantity(), Limit: d.Flow.Quantity(), Basis: worked}
	needs, given := water.Texts(u)
	water.Says = fmt.Sprintf("the %s given are enough every week; the seed needs %s at most", given, needs)
	if !s.Given.Pump {
		water.Key = "water.flow"
	}
	if peak.Flow > d.Flow {
		water.Level = geometry.Caution
		water.Says = fmt.Sprintf("week %d needs %s and the silos are given %s: a larger pump, or fewer seed", peak.FlowWeek, needs, given)
	}
	out = append(out, drums)
	if s.From != FromSeed {
		out = append(out, water)
	}
	return out
}
