package nursery

import (
	"fmt"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/manifold"
	"silowright/nursery/seed"
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
	for first, g := range s.Groups {
		if first > 0 && s.Groups[first-1].Drum == g.Drum && s.Groups[first-1].Piped {
			continue // told with its like
		}
		start := len(out)
		for k := first; k < len(s.Groups) && s.Groups[k].Drum == g.Drum && (k == first || !s.Groups[k].Piped); k++ {
			g := s.Groups[k]
			out = s.worst(out, start, WaterFindings(g.Most, g.Drum, u), g.MostAt)
			if g.LeastAt != g.MostAt && g.Least.Flow < g.Most.Flow {
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
	if s.Silos[s.Most].Flow > s.Silos[s.Least].Flow || len(s.Groups) > 1 {
		which := ""
		switch at {
		case s.Most:
			which = ", which gets the most"
		case s.Least:
			which = ", which gets the least"
		}
		f.Says = fmt.Sprintf("silo %d%s: %s", at+1, which, f.Says)
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

// flowFindings say what each kind takes and where the flow is from.
func (s Study) flowFindings(u measure.Unit) (out []geometry.Finding) {
	for _, g := range s.Groups {
		if g.Over {
			q := s.Silos[g.MostAt].Flow
			out = append(out, geometry.Finding{ID: "water.flow", Drum: g.Drum, Level: geometry.Stop, Key: "water.flow", Measured: q.Quantity(), Limit: flow.MostFlow.Quantity(), Basis: worked,
				Says: fmt.Sprintf("silo %d gets %s, more than is reckoned with: all that is said of it holds for %s; spread the water over more silos", g.MostAt+1, q.Both(u), flow.MostFlow.Both(u))})
		}
		spill, ok := g.First()
		if !ok {
			continue
		}
		with := ""
		if g.Piped {
			with = " with a pipe silo"
		}
		f := geometry.Finding{ID: "water.first", Drum: g.Drum, Key: "water.flow", Measured: g.Most.Flow.Quantity(), Limit: spill.From.Quantity(), Basis: levelBasis,
			Says: fmt.Sprintf("a silo%s takes up to %s; the first to leave it beside what the outlet takes is %s; the most that one gets is %s", with, spill.From.Both(u), spill.What, g.Most.Flow.Both(u))}
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
	return append(out, geometry.Finding{ID: "water.told", Level: geometry.Caution, Key: key, Measured: s.Mean.Quantity(), Limit: s.Mean.Quantity(), Says: says, Basis: seedsMinimum})
}

func percent(x float64) measure.Quantity { return measure.Quantity{Value: 100 * x, Unit: "%"} }

// manifoldFindings are on evenness, speeds and the flow wanted.
func (s Study) manifoldFindings(u measure.Unit) (out []geometry.Finding) {
	p := s.Pumping
	if p == nil {
		return nil
	}
	if !s.Given.Manifold {
		out = append(out, geometry.Finding{ID: "manifold.told", Level: geometry.Caution, Key: "manifold.pipe", Measured: s.Mean.Quantity(), Limit: s.Mean.Quantity(), Basis: worked,
			Says: "the manifold's pipe is not told and taken to lose nothing: its silos will get less water than said here, the far ones least; give manifold.pipe"})
	} else {
		out = append(out, s.evenness(u))
		out = append(out, s.speed("manifold.speed", "manifold.pipe", "the manifold", p.MostSpeed, u)...)
		if z := p.Sizes; z != nil {
			out = append(out, s.sizesFinding(u))
		}
	}
	if s.Given.Main {
		out = append(out, s.speed("main.speed", "main.pipe", "the main", p.Result.Main.Speed, u)...)
	}
	hose := measure.Speed(0)
	for _, l := range p.Result.Laterals {
		hose = max(hose, l.Speed)
	}
	out = append(out, s.speed("lateral.speed", "lateral.hose_bore", "the fastest hose", hose, u)...)
	if sh := p.Shut; sh != nil && sh.GainsMost > 0 {
		f := geometry.Finding{ID: "manifold.shut", Key: "lateral.valve_open", Measured: sh.Flow.Quantity(), Limit: s.Silos[sh.GainsMost-1].Flow.Quantity(), Basis: pipesBasis,
			Says: fmt.Sprintf("with silo %d shut the others get more: silo %d %s in place of %s", sh.Place, sh.GainsMost, sh.Flow.Both(u), s.Silos[sh.GainsMost-1].Flow.Both(u))}
		if sh.Spills {
			f.Level = geometry.Caution
			f.Limit = sh.What.From.Quantity()
			f.Says += fmt.Sprintf(", past the %s from which it loses %s: throttle the rest before you shut one", sh.What.From.Both(u), sh.What.What)
		}
		out = append(out, f)
	}
	return out
}

func (s Study) evenness(u measure.Unit) geometry.Finding {
	p := s.Pumping
	least, most := s.Silos[s.Least], s.Silos[s.Most]
	f := geometry.Finding{ID: "manifold.evenness", Key: "manifold.pipe", Measured: percent(s.Evenness), Limit: percent(s.Farm.Limits.Evenness), Basis: pipesBasis,
		Says: fmt.Sprintf("silo %d gets the least, %s, and silo %d the most, %s: the least is %.0f %% of the mean", least.Place, least.Flow.Both(u), most.Place, most.Flow.Both(u), 100*s.Evenness)}
	if s.Evenness < s.Farm.Limits.Evenness {
		f.Level = geometry.Caution
		n := 0
		for _, set := range p.Settings.Settings {
			if set.Throttle {
				n++
			}
		}
		if p.Settings.Possible && n > 0 {
			f.Says += fmt.Sprintf("; throttle %d valves as listed and each gets %s, or take a wider manifold", n, p.Settings.Flow.Both(u))
		} else {
			f.Says += "; take a wider manifold"
		}
	}
	return f
}

func (s Study) speed(id, key, where string, v measure.Speed, u measure.Unit) []geometry.Finding {
	limit := s.Farm.Limits.Speed
	if limit == 0 || v == 0 {
		return nil
	}
	f := geometry.Finding{ID: id, Key: key, Measured: v.Quantity(), Limit: limit.Quantity(), Basis: practice,
		Says: fmt.Sprintf("water runs at %s in %s, within %s", v.Both(u), where, limit.Both(u))}
	if v > limit {
		f.Level = geometry.Caution
		f.Says = fmt.Sprintf("water runs at %s in %s, faster than %s: it costs head and hammers when a valve is shut; take a wider bore", v.Both(u), where, limit.Both(u))
	}
	return []geometry.Finding{f}
}

func (s Study) sizesFinding(u measure.Unit) geometry.Finding {
	z := s.Pumping.Sizes
	name := z.Manifold + " " + z.ManifoldSeries + " for the manifold"
	if z.Main != "" {
		name = z.Main + " " + z.MainSeries + " for the main and " + name
	}
	f := geometry.Finding{ID: "manifold.size", Key: "manifold.pipe", Measured: percent(z.Evenness), Limit: percent(s.Farm.Limits.Evenness), Basis: pipesBasis}
	switch {
	case !z.Held:
		f.Level = geometry.Caution
		f.Says = fmt.Sprintf("no size of the series holds %.0f %% evenness and %s everywhere; %s comes nearest, with %.0f %% and %s", 100*s.Farm.Limits.Evenness, s.Farm.Limits.Speed.Both(u), name, 100*z.Evenness, z.Speed.Both(u))
	case z.Same:
		f.Says = fmt.Sprintf("%s is the smallest that holds the limits", name)
	default:
		f.Says = fmt.Sprintf("%s is the smallest that holds the limits: %.0f %% evenness, %s at most, %s to each silo", name, 100*z.Evenness, z.Speed.Both(u), z.Each.Both(u))
	}
	return f
}

// pumpFindings are on what the pump lifts, its curve and its suction.
func (s Study) pumpFindings(u measure.Unit) (out []geometry.Finding) {
	p := s.Pumping
	if p == nil {
		if a := s.Asks; a != nil {
			out = append(out, geometry.Finding{ID: "pump.asks", Key: "pump.curve", Measured: a.Total.Quantity(), Limit: a.Head.Quantity(), Basis: affinity,
				Says: fmt.Sprintf("for %s to each silo a pump must give %s at %s of head; look for that point on its curve", a.Each.Both(u), a.Total.Both(u), a.Head.Both(u))})
		}
		return out
	}
	pt := p.Result.Pump
	out = append(out, s.reaches(u))
	beyond := geometry.Finding{ID: "pump.curve", Key: "pump.curve", Measured: pt.Flow.Quantity(), Limit: pt.Flow.Quantity(), Basis: geometry.Basis{Kind: geometry.JobSetting, Source: "pump.curve"},
		Says: fmt.Sprintf("the pump runs at %s and %s of head, on its curve", pt.Flow.Both(u), pt.Head.Both(u))}
	if n := len(s.Farm.Pump.Points); n > 0 {
		beyond.Limit = s.Farm.Pump.Points[n-1].Flow.Quantity()
	}
	switch {
	case pt.Beyond:
		beyond.Level = geometry.Caution
		beyond.Says = fmt.Sprintf("the pump runs at %s, past the last point of its curve: the flow is a guess and the motor may be overloaded; throttle it, or give more of the curve", pt.Flow.Both(u))
	case pt.Estimated:
		beyond.Level = geometry.Caution
		beyond.Key = "pump.power"
		beyond.Basis = geometry.Basis{Kind: geometry.Published, Source: "ρgQH = ηP, Çengel and Cimbala, Fluid Mechanics, chapter 14"}
		beyond.Says = fmt.Sprintf("the pump's curve is guessed from its power: %s at %s of head is a first look only; give its curve before you buy by it", pt.Flow.Both(u), pt.Head.Both(u))
	}
	out = append(out, beyond)
	return append(out, s.npsh(u)...)
}

func (s Study) reaches(u measure.Unit) geometry.Finding {
	p := s.Pumping
	starved := 0
	for _, o := range s.Silos {
		if o.Starved {
			starved++
		}
	}
	each := s.Farm.Supply.Each
	f := geometry.Finding{ID: "pump.reaches", Key: "pump.curve", Measured: s.Silos[s.Least].Flow.Quantity(), Limit: each.Quantity(), Basis: affinity}
	switch {
	case starved > 0:
		f.Level = geometry.Stop
		o := s.Silos[s.Least]
		f.Says = fmt.Sprintf("the pump lifts no water into %d of %d silos; silo %d wants %s more head: lower the silos' outlets, take wider pipes or a pump of more head", starved, len(s.Silos), o.Place, o.Short.Both(u))
	case each > 0 && p.MostEven < each:
		f.Level = geometry.Caution
		f.Measured = p.MostEven.Quantity()
		f.Says = fmt.Sprintf("even with every valve set the pump gives each silo no more than %s of the %s wanted: take fewer silos, wider pipes or a larger pump", p.MostEven.Both(u), each.Both(u))
	case each > 0:
		f.Says = fmt.Sprintf("the pump can give every silo the %s wanted, up to %s with the valves set", each.Both(u), p.MostEven.Both(u))
	default:
		f.Limit = f.Measured
		f.Says = fmt.Sprintf("the pump reaches every silo, with %s in all", s.Total.Both(u))
	}
	if f.Level == geometry.Stop && s.soft() {
		f.Level = geometry.Caution
		f.Says += "; the pump is a guess from its power"
	}
	return f
}

// leastMargin is what the net positive suction head should have over what the
// pump requires: 0.6 m (2 ft; common practice, no source).
const leastMargin = 2 * measure.Foot

func (s Study) npsh(u measure.Unit) []geometry.Finding {
	n := s.Pumping.Result.NPSH
	if !s.Given.Suction && !s.Given.NPSH {
		return nil
	}
	f := geometry.Finding{ID: "pump.npsh", Key: "suction.lift", Measured: n.Available.Quantity(), Limit: n.Required.Quantity(), Basis: npshBasis}
	switch {
	case n.Available <= 0 || n.Known && n.Margin < 0:
		f.Level = geometry.Stop
		f.Says = fmt.Sprintf("the suction leaves the pump %s of net positive suction head and it requires %s: it cavitates; set it lower, shorten or widen its suction, or throttle it", n.Available.Both(u), n.Required.Both(u))
		if s.From == FromGuess {
			f.Level = geometry.Caution
			f.Says += "; the pump is a guess from its power"
		}
	case n.Known && n.Margin < leastMargin:
		f.Level = geometry.Caution
		f.Says = fmt.Sprintf("the suction leaves the pump %s of net positive suction head, only %s over what it requires: a fouled strainer makes it cavitate; set it lower or widen its suction", n.Available.Both(u), n.Margin.Both(u))
	case n.Known:
		f.Says = fmt.Sprintf("the suction leaves the pump %s of net positive suction head, %s over what it requires", n.Available.Both(u), n.Margin.Both(u))
	default:
		f.Limit = f.Measured
		f.Says = fmt.Sprintf("the suction leaves the pump %s of net positive suction head; what it requires is not told: see its curve and give pump.npsh", n.Available.Both(u))
	}
	return []geometry.Finding{f}
}

// failureFindings say what a power failure does to the worst silo.
func (s Study) failureFindings(u measure.Unit) (out []geometry.Finding) {
	fail := s.Failure
	if fail == nil {
		return nil
	}
	worst := 0
	for i, o := range fail.Silos {
		w := fail.Silos[worst]
		if o.Bare && !w.Bare || o.Part && !w.Bare && !w.Part {
			worst = i
		}
	}
	dry := geometry.Finding{ID: "failure.drains", Key: "failure.check_valve", Measured: measure.Count(fail.Dry), Limit: measure.Count(0), Basis: standsBasis}
	dry.Says = fmt.Sprintf("when the power fails no seed is left dry; silo %d: water %s at %s above the ground; how long seed lives in still water is not worked out", worst+1, standing(fail.Silos[worst]), fail.Silos[worst].Level.Both(u))
	if fail.Dry > 0 {
		dry.Level = geometry.Caution
		dry.Says = fmt.Sprintf("when the power fails seed is left dry in %d of %d silos; silo %d: water %s, to %s above the ground: fit a check valve that holds, or an air break above the seed", fail.Dry, len(fail.Silos), worst+1, standing(fail.Silos[worst]), fail.Silos[worst].Level.Both(u))
	}
	siphon := geometry.Finding{ID: "failure.siphon", Key: "failure.air_break", Measured: measure.Count(fail.Siphons), Limit: measure.Count(0), Basis: standsBasis,
		Says: "when the power fails no siphon draws a silo down"}
	if fail.Siphons > 0 {
		siphon.Level = geometry.Caution
		siphon.Says = fmt.Sprintf("when the power fails a siphon draws down %d of %d silos: fit an air break on the highest point, or a check valve", fail.Siphons, len(fail.Silos))
	}
	prime := geometry.Finding{ID: "failure.prime", Key: "suction.foot_valve", Measured: s.Farm.Suction.Lift.Quantity(), Limit: measure.Length(0).Quantity(), Basis: standsBasis,
		Says: "when the power fails the pump keeps its water"}
	if !fail.Prime {
		prime.Level = geometry.Caution
		prime.Says = "when the power fails the pump loses its water and does not start again by itself: fit a foot valve or a check valve that holds, or flood it"
	}
	out = append(out, dry, siphon)
	if s.Given.Pump {
		out = append(out, prime)
	}
	return out
}

func standing(f manifold.SiloFailure) string {
	if f.Way == manifold.Stays {
		return string(f.Way)
	}
	return "runs " + string(f.Way)
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
