package nursery

import (
	"fmt"

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

// seeds works the plan out. Silos of several kinds count as the smallest of
// them, and none is given more water than it takes without spilling.
func (f Farm) seeds(s *Study, counts []Count) (*SeedStudy, error) {
	p := *f.Plan
	out := &SeedStudy{Flow: s.Total}
	var drum, pipe seed.House
	var meshes []seed.Mesh
	known := func(m seed.Mesh) {
		for _, o := range meshes {
			if o.In == m.In && o.Opening == m.Opening {
				return
			}
		}
		meshes = append(meshes, m)
	}
	for _, c := range counts {
		if c.Drum == 0 {
			continue
		}
		out.Drums += c.Drum
		out.Pipes += min(c.Pipe, c.Drum)
		if a := flow.Disc(2 * c.Silo.Ring.InnerRadius); drum.Area == 0 || a < drum.Area {
			drum.Area = a
		}
		if a := flow.Disc(c.Silo.Pipe.Inside); pipe.Area == 0 || a < pipe.Area {
			pipe.Area = a
		}
		known(seed.Mesh{Name: c.Silo.Spec.Drum.Label + ", mesh", In: seed.Drum, Opening: c.Silo.Spec.Mesh.Opening})
		known(seed.Mesh{Name: c.Silo.Spec.Drum.Label + ", screen", In: seed.Pipe, Opening: c.Silo.Spec.Pipe.Screen})
	}
	if p.DrumHouse.Area <= 0 {
		p.DrumHouse.Area = drum.Area
	}
	if p.PipeHouse.Area <= 0 {
		p.PipeHouse.Area = pipe.Area
	}
	if len(p.Meshes) == 0 {
		p.Meshes = meshes
	}
	for _, g := range s.Groups {
		takes := max(g.BeforeSlots, measure.LitrePerMinute)
		if g.Piped {
			takes = min(takes, max(g.BeforePipeRim, measure.LitrePerMinute))
			p.PipeHouse.Most = min(p.PipeHouse.Most, takes)
		} else {
			p.DrumHouse.Most = min(p.DrumHouse.Most, takes)
		}
	}
	if p.PipeSilosAtHand == 0 {
		p.PipeSilosAtHand = out.Pipes
	}
	out.Plan = p
	var err error
	out.Need, err = seed.Need(p)
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
	water := geometry.Finding{ID: "seed.flow", Key: "pump.curve", Measured: peak.Flow.Quantity(), Limit: d.Flow.Quantity(), Basis: worked,
		Says: fmt.Sprintf("the %s given are enough every week; the seed needs %s at most", d.Flow.Both(u), peak.Flow.Both(u))}
	if !s.Given.Pump {
		water.Key = "water.flow"
	}
	if peak.Flow > d.Flow {
		water.Level = geometry.Caution
		water.Says = fmt.Sprintf("week %d needs %s and the silos are given %s: a larger pump, or fewer seed", peak.FlowWeek, peak.Flow.Both(u), d.Flow.Both(u))
	}
	out = append(out, drums)
	if s.From != FromSeed {
		out = append(out, water)
	}
	return out
}
