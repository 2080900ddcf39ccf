package nursery

import (
	"fmt"

	"silowright/geometry"
	"silowright/geometry/measure"
)

func percent(x float64) measure.Quantity { return measure.Quantity{Value: 100 * x, Unit: "%"} }

// manifoldFindings are on evenness, speeds and the flow wanted.
func (s Study) manifoldFindings(u measure.Unit) (out []geometry.Finding) {
	p := s.Pumping
	if p == nil {
		return nil
	}
	if !s.Given.Manifold {
		out = append(out, geometry.Finding{ID: "manifold.told", Level: geometry.Caution, Key: "manifold.pipe", Measured: s.Mean.Quantity(), Basis: worked,
			Says: "the manifold's pipe is not told and taken to lose nothing: its silos will get less water than said here, the far ones least; give manifold.pipe"})
	} else {
		out = append(out, s.evenness(u))
		out = append(out, s.speed("manifold.speed", "manifold.pipe", "the manifold", p.MostSpeed, u)...)
		out = append(out, s.sideBySide(u)...)
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
	out = append(out, s.throttling(u)...)
	if sh := p.Shut; sh != nil && sh.GainsMost > 0 {
		gets, got := measure.Apart(sh.Flow.Quantity(), s.Silos[sh.GainsMost-1].Flow.Quantity(), u)
		f := geometry.Finding{ID: "manifold.shut", Key: "lateral.valve_open", Measured: sh.Flow.Quantity(), Limit: s.Silos[sh.GainsMost-1].Flow.Quantity(), Basis: pipesBasis,
			Says: fmt.Sprintf("with silo %d shut the others get more: silo %d %s in place of %s", sh.Place, sh.GainsMost, gets, got)}
		if sh.Spills {
			f.Level = geometry.Caution
			f.Limit = sh.What.From.Quantity()
			f.Says += fmt.Sprintf(", past the %s from which it loses %s: throttle the rest before you shut one", sh.What.From.Both(u), sh.What.What)
		}
		out = append(out, f)
	}
	return out
}

// sideBySide says whether silos as wide as these stand beside one another with
// their tees as far apart as the job says. By default they do.
func (s Study) sideBySide(u measure.Unit) []geometry.Finding {
	apart, widest := s.Farm.Manifold.Spacing, measure.Length(0)
	for _, g := range s.Groups {
		widest = max(widest, g.Widest)
	}
	if apart <= 0 || len(s.Silos) < 2 {
		return nil
	}
	f := geometry.Finding{ID: "manifold.spacing", Key: "manifold.spacing", Measured: apart.Quantity(), Limit: widest.Quantity(), Basis: worked}
	tees, across := measure.Apart(f.Measured, f.Limit, u)
	f.Says = fmt.Sprintf("the tees are %s apart and a silo is %s across its hoops: they stand side by side in one row", tees, across)
	if widest-apart > widest*1e-9 { // at the limit it holds in inches and in millimetres
		f.Level = geometry.Caution
		f.Says = fmt.Sprintf("the tees are %s apart and a silo is %s across its hoops: in one row they do not stand side by side; set them on both sides of the manifold, or give the true manifold.spacing", tees, across)
	}
	return []geometry.Finding{f}
}

// throttling says what the valves can be set to, and whether each silo takes
// that.
func (s Study) throttling(u measure.Unit) []geometry.Finding {
	p := s.Pumping
	if !p.Settings.Possible || p.Settings.Flow == 0 {
		return nil
	}
	n := 0
	for _, set := range p.Settings.Settings {
		if set.Throttle {
			n++
		}
	}
	f := geometry.Finding{ID: "manifold.throttle", Key: "lateral.valve_open", Measured: s.Mean.Quantity(), Limit: p.Settings.Flow.Quantity(), Basis: pipesBasis,
		Says: fmt.Sprintf("with %d of %d valves throttled as listed every silo gets %s", n, len(s.Silos), p.Settings.Flow.Both(u))}
	first := Spill{From: p.Settings.Flow}
	for _, g := range s.Groups {
		if spill, ok := g.First(); ok && spill.From <= first.From {
			first = spill
		}
	}
	switch {
	case first.What != "":
		f.Level = geometry.Caution
		f.Says += fmt.Sprintf(", past the %s from which one loses %s: set them for less", first.From.Both(u), first.What)
	default:
		f.Says += ", and all of it leaves by the outlets"
	}
	return []geometry.Finding{f}
}

func (s Study) evenness(u measure.Unit) geometry.Finding {
	least, most := s.Silos[s.Least], s.Silos[s.Most]
	even, _ := measure.ApartPercent(s.Evenness, s.Farm.Limits.Evenness)
	f := geometry.Finding{ID: "manifold.evenness", Key: "manifold.pipe", Measured: percent(s.Evenness), Limit: percent(s.Farm.Limits.Evenness), Basis: pipesBasis,
		Says: fmt.Sprintf("silo %d gets the least, %s, and silo %d the most, %s: the least is %s of the mean", least.Place, least.Flow.Both(u), most.Place, most.Flow.Both(u), even)}
	if s.Evenness < s.Farm.Limits.Evenness {
		f.Level = geometry.Caution
		f.Says += "; throttle the near ones or take a wider manifold"
	}
	return f
}

func (s Study) speed(id, key, where string, v measure.Speed, u measure.Unit) []geometry.Finding {
	limit := s.Farm.Limits.Speed
	if limit == 0 || v == 0 {
		return nil
	}
	runs, most := measure.Apart(v.Quantity(), limit.Quantity(), u)
	f := geometry.Finding{ID: id, Key: key, Measured: v.Quantity(), Limit: limit.Quantity(), Basis: practice,
		Says: fmt.Sprintf("water runs at %s in %s, within %s", runs, where, most)}
	if v > limit {
		f.Level = geometry.Caution
		f.Says = fmt.Sprintf("water runs at %s in %s, faster than %s: it costs head and hammers when a valve is shut; take a wider bore", runs, where, most)
	}
	return []geometry.Finding{f}
}

func (s Study) sizesFinding(u measure.Unit) geometry.Finding {
	z := s.Pumping.Sizes
	name := z.Manifold.String() + " for the manifold"
	if z.Main.Size != "" {
		name = z.Main.String() + " for the main and " + name
	}
	f := geometry.Finding{ID: "manifold.size", Key: "manifold.pipe", Measured: percent(z.GivesEvenness), Limit: percent(z.Evenness), Basis: pipesBasis}
	even, _ := measure.ApartPercent(z.GivesEvenness, s.Farm.Limits.Evenness)
	gives := fmt.Sprintf("%s evenness, %s to the last and water at %s at most", even, z.GivesLeast.Both(u), z.GivesSpeed.Both(u))
	switch {
	case !z.Held:
		f.Level = geometry.Caution
		f.Says = fmt.Sprintf("no size of the series keeps the water under %s; %s comes nearest, with %s: feed the manifold at its centre, or by two mains", z.Speed.Both(u), name, gives)
	case z.Same:
		f.Says = fmt.Sprintf("%s is the smallest that does, with %s", name, gives)
	default:
		f.Says = fmt.Sprintf("%s would be the smallest that does, with %s", name, gives)
	}
	if z.EvennessShort {
		f.Level = geometry.Caution
		f.Says += fmt.Sprintf("; no pipe gives the %s wanted, for the silos themselves differ or the pump is short: throttle them", measure.Percent(s.Farm.Limits.Evenness))
	}
	if z.FlowShort {
		f.Level = geometry.Caution
		f.Says += fmt.Sprintf("; no pipe gives each silo the %s wanted: that takes another pump", s.wanted().Both(u))
	}
	return f
}

// wanted is the flow that each silo is to have: the job's, or what its seed
// asks.
func (s Study) wanted() measure.Flow {
	q := s.Farm.Supply.Each
	for _, g := range s.Groups {
		if s.Farm.Supply.Each == 0 {
			q = max(q, g.SeedAsks)
		}
	}
	return q
}
