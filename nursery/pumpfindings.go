package nursery

import (
	"fmt"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// pumpFindings are on what the pump lifts, its curve and its suction.
func (s Study) pumpFindings(u measure.Unit) (out []geometry.Finding) {
	p := s.Pumping
	if p == nil {
		if a := s.Asks; a != nil {
			out = append(out, geometry.Finding{ID: "pump.asks", Key: "pump.curve", Measured: a.Total.Quantity(), Basis: affinity,
				Says: fmt.Sprintf("for %s to each silo a pump must give %s at %s of head; look for that point on its curve", a.Each.Both(u), a.Total.Both(u), a.Head.BothLong(u))})
		}
		return out
	}
	pt := p.Result.Pump
	out = append(out, s.reaches(u))
	beyond := geometry.Finding{ID: "pump.curve", Key: "pump.curve", Measured: pt.Flow.Quantity(), Basis: geometry.Basis{Kind: geometry.JobSetting, Source: "pump.curve"},
		Says: fmt.Sprintf("the pump runs at %s and %s of head, on its curve", pt.Flow.Both(u), pt.Head.BothLong(u))}
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
		beyond.Says = fmt.Sprintf("the pump's curve is guessed from its power: %s at %s of head is a first look only; give its curve before you buy by it", pt.Flow.Both(u), pt.Head.BothLong(u))
	}
	out = append(out, beyond)
	out = append(out, s.npsh(u)...)
	return append(out, s.energy(u))
}

// energy is what the motor draws.
func (s Study) energy(u measure.Unit) geometry.Finding {
	p := s.Pumping
	f := geometry.Finding{ID: "pump.energy", Key: "pump.efficiency", Measured: p.Energy(),
		Basis: geometry.Basis{Kind: geometry.Published, Source: "ρgQH over the efficiencies given, Çengel and Cimbala, Fluid Mechanics, chapter 14"}}
	f.Says = fmt.Sprintf("the motor draws %s, %s in a year at %s h a day, the pump taken at %s %% and the motor at %s %%",
		p.Result.Pump.Input.Both(u), f.Measured.Text(u), plain(s.Farm.Pump.HoursADay), plain(100*s.Farm.Pump.Efficiency), plain(100*s.Farm.Pump.Motor))
	if p.Result.Pump.Input == 0 {
		f.Says = "what the motor draws is not worked out: no head is asked of the pump where it runs, or no water moves"
	}
	return f
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
		f.Says = fmt.Sprintf("the pump lifts no water into %d of %d silos; silo %d wants %s more head: lower the silos' outlets, take wider pipes or a pump of more head", starved, len(s.Silos), o.Place, o.Short.BothLong(u))
	case each > 0 && p.MostEven < each:
		f.Level = geometry.Caution
		f.Measured = p.MostEven.Quantity()
		gives, wanted := f.Texts(u)
		f.Says = fmt.Sprintf("even with every valve set the pump gives each silo no more than %s of the %s wanted: take fewer silos, wider pipes or a larger pump", gives, wanted)
	case each > 0:
		f.Says = fmt.Sprintf("the pump can give every silo the %s wanted, up to %s with the valves set", each.Both(u), p.MostEven.Both(u))
	default:
		f.Limit = measure.Quantity{} // none
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
	f := geometry.Finding{ID: "pump.npsh", Key: "suction.lift", Measured: n.Available.Head(), Limit: n.Required.Head(), Basis: npshBasis}
	leaves, requires := measure.ApartLong(n.Available, n.Required, u)
	switch {
	case n.Available <= 0 || n.Known && n.Margin < 0:
		f.Level = geometry.Stop
		f.Says = fmt.Sprintf("the suction leaves the pump %s of net positive suction head and it requires %s: it cavitates; set it lower, shorten or widen its suction, or throttle it", leaves, requires)
		if s.From == FromGuess {
			f.Level = geometry.Caution
			f.Says += "; the pump is a guess from its power"
		}
	case n.Known && n.Margin < leastMargin:
		f.Level = geometry.Caution
		f.Says = fmt.Sprintf("the suction leaves the pump %s of net positive suction head, only %s over what it requires: a fouled strainer makes it cavitate; set it lower or widen its suction", n.Available.BothLong(u), n.Margin.BothLong(u))
	case n.Known:
		f.Says = fmt.Sprintf("the suction leaves the pump %s of net positive suction head, %s over what it requires", n.Available.BothLong(u), n.Margin.BothLong(u))
	default:
		f.Limit = measure.Quantity{} // none
		f.Says = fmt.Sprintf("the suction leaves the pump %s of net positive suction head; what it requires is not told: see its curve and give pump.npsh", n.Available.BothLong(u))
	}
	if n.Ends > 0 {
		if f.Level == geometry.OK {
			f.Level, f.Key = geometry.Caution, "pump.npsh"
		}
		f.Says += fmt.Sprintf("; what it requires is told up to %s and guessed straight on from there, as a rule too low: give pump.npsh up to %s", n.Ends.Both(u), s.Pumping.Result.Pump.Flow.Both(u))
	}
	return []geometry.Finding{f}
}
