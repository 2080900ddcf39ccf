package nursery

import (
	"fmt"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/nursery/flow"
)

// What the farm's findings rest on.
var (
	pipesBasis   = geometry.Basis{Kind: geometry.Published, Source: "Darcy and Weisbach with the Colebrook equation, minor losses of Çengel and Cimbala, Fluid Mechanics, chapter 8"}
	affinity     = geometry.Basis{Kind: geometry.Published, Source: "energy along the pipes, Çengel and Cimbala, Fluid Mechanics, chapters 8 and 14"}
	npshBasis    = geometry.Basis{Kind: geometry.Published, Source: "net positive suction head, Çengel and Cimbala, Fluid Mechanics, section 14-2"}
	practice     = geometry.Basis{Kind: geometry.CommonPractice}
	worked       = geometry.Basis{Kind: geometry.Worked}
	standsBasis  = geometry.Basis{Kind: geometry.Published, Source: "hydrostatics, Çengel and Cimbala, Fluid Mechanics, chapter 3; oxygen: no published basis was found and none is reckoned"}
	seedsMinimum = geometry.Basis{Kind: geometry.Published, Source: "10 L/min/kg, the least of a barge nursery, FAO Fisheries Technical Paper 471, §6.6.2"}
)

// Findings holds the study against what spills, washes out, starves and runs
// dry, for a reader who works in u: for each kind of silo the worst of each
// check, then manifold, pump, power failure and seed.
func (s Study) Findings(u measure.Unit) []geometry.Finding {
	out := s.siloFindings(u)
	for _, find := range []func(measure.Unit) []geometry.Finding{s.flowFindings, s.manifoldFindings, s.pumpFindings, s.failureFindings, s.seedFindings} {
		out = append(out, find(u)...)
	}
	return out
}

// soft reports whether flows are too unsure to stop a build by.
func (s Study) soft() bool { return s.From == FromSeed || s.From == FromGuess }

// siloFindings are those of the silos, one of each check for each kind: the
// worst of the silos that get the most and the least.
func (s Study) siloFindings(u measure.Unit) []geometry.Finding {
	var out []geometry.Finding
	told := map[string]bool{}
	for _, kind := range s.Groups {
		if told[kind.Drum] {
			continue
		}
		told[kind.Drum] = true
		start := len(out)
		for _, g := range s.Groups {
			if g.Drum != kind.Drum {
				continue
			}
			out = s.worst(out, start, WaterFindings(g.Most, g.Drum, u), g.MostAt)
			if g.Least.Flow < g.Most.Flow {
				out = s.worst(out, start, WaterFindings(g.Least, g.Drum, u), g.LeastAt)
			}
		}
	}
	return out
}

// worst takes each of more that is worse than its like in out from start on.
func (s Study) worst(out []geometry.Finding, start int, more []geometry.Finding, at int) []geometry.Finding {
	for _, f := range more {
		f = s.place(f, at)
		known := false
		for i := start; i < len(out) && !known; i++ {
			if out[i].ID == f.ID {
				known = true
				if f.Level > out[i].Level {
					out[i] = f
				}
			}
		}
		if !known {
			out = append(out, f)
		}
	}
	return out
}

// place says of which silo a finding is, and that an unsure flow stops nothing.
func (s Study) place(f geometry.Finding, at int) geometry.Finding {
	uneven := s.Silos[s.Most].Flow > s.Silos[s.Least].Flow
	if uneven || len(s.Groups) > 1 {
		which := ""
		switch {
		case uneven && at == s.Most:
			which = ", which gets the most"
		case uneven && at == s.Least:
			which = ", which gets the least"
		}
		f.Says = fmt.Sprintf("silo %d%s: %s", at+1, which, f.Says)
	}
	if size := s.untold(f.ID); size != "" && f.Level != geometry.OK {
		f.Level = geometry.Caution
		f.Says += fmt.Sprintf("; the seed's size is not told and taken as %.1f openings: give %s", overOpening, size)
	}
	if f.Level == geometry.Stop && s.soft() {
		f.Level = geometry.Caution
		switch s.From {
		case FromGuess:
			f.Says += "; the flow is a guess from the pump's power: give pump.curve"
		default:
			f.Says += "; the flow is only what the seed's weight asks: give water.flow or a pump"
		}
	}
	return f
}

// untold is the key of the seed's size where a finding hangs on it and the job
// does not tell it.
func (s Study) untold(id string) string {
	switch {
	case id == "water.seed" && s.Farm.Bed.Size == 0:
		return "bed.size"
	case id == "water.pipe-seed" && s.Farm.Bed.PipeSize == 0:
		return "bed.pipe_size"
	}
	return ""
}

// flowFindings say what each kind takes and where the flow is from.
func (s Study) flowFindings(u measure.Unit) (out []geometry.Finding) {
	for _, g := range s.Groups {
		if g.Over {
			q := s.Silos[g.MostAt].Flow
			gets, most := measure.Apart(q.Quantity(), flow.MostFlow.Quantity(), u)
			out = append(out, geometry.Finding{ID: "water.flow", Drum: g.Drum, Level: geometry.Stop, Key: "water.flow", Measured: q.Quantity(), Limit: flow.MostFlow.Quantity(), Basis: worked,
				Says: fmt.Sprintf("silo %d gets %s, more than is reckoned with: all that is said of it holds for %s; spread the water over more silos", g.MostAt+1, gets, most)})
		}
		spill, ok := g.First()
		if !ok {
			continue
		}
		with, id := "", "water.first"
		if g.Piped {
			with, id = " with a pipe silo", "water.first-piped"
		}
		gets, takes := measure.Apart(g.Most.Flow.Quantity(), spill.From.Quantity(), u)
		f := geometry.Finding{ID: id, Drum: g.Drum, Key: "water.flow", Measured: g.Most.Flow.Quantity(), Limit: spill.From.Quantity(), Basis: levelBasis,
			Says: fmt.Sprintf("a silo%s takes up to %s; the first to leave it beside what the outlet takes is %s; the most that one gets is %s", with, takes, spill.What, gets)}
		if g.Most.Flow >= spill.From {
			f.Level = geometry.Caution
			f.Says += ": throttle it, or change the outlet"
		}
		out = append(out, f)
	}
	if s.From != FromSeed {
		return out
	}
	key, says := "water.flow", fmt.Sprintf("no flow and no pump are told: each silo is reckoned with what its seed asks, %s at most; give water.flow or a pump", s.Silos[s.Most].Flow.Both(u))
	if s.Silos[s.Most].Flow == 0 {
		says = "no flow, no pump and no seed are told: only what the silos take is reckoned; give water.flow or a pump"
	}
	return append(out, geometry.Finding{ID: "water.told", Level: geometry.Caution, Key: key, Measured: s.Mean.Quantity(), Says: says, Basis: seedsMinimum})
}
