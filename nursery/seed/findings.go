package seed

import (
	"fmt"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// Sizes at which clams begin to suit upwelling and the meshes that seed leaves
// for: FAO Fisheries Technical Paper 471.
const (
	clamUpwelling Shell = 0.5
	leastLeaveOn  Sieve = 7
	mostLeaveOn   Sieve = 12
)

// The water for a kilogram in a barge nursery, litres a minute: FAO Fisheries
// Technical Paper 471, §6.6.2.
const leastWater, mostWater WaterPerMass = 10, 20

// mostShare is the share of the water cleared above which the seed at the top
// of the bed is likely short of food: common practice, no source.
const mostShare = 0.5

// Findings holds the plan and what it comes to against what is published and
// against the silos at hand. n must be what Need returned for p; u is the unit
// the sentences lead with.
func Findings(p Plan, n SiloNeed, u measure.Unit) []geometry.Finding {
	if len(n.Weeks) == 0 {
		return nil
	}
	var out []geometry.Finding
	for _, f := range []func(Plan, SiloNeed, measure.Unit) []geometry.Finding{
		findHeld, findHand, findSize, findLeave, findWater, findLoad, findWeight, findGrowth, findFood} {
		out = append(out, f(p, n, u)...)
	}
	return out
}

// one makes a list of one finding.
func one(id string, l geometry.Level, key string, measured, limit measure.Quantity, b geometry.Basis, format string, args ...any) []geometry.Finding {
	return []geometry.Finding{{ID: "seed." + id, Level: l, Key: "seed." + key, Measured: measured, Limit: limit, Says: fmt.Sprintf(format, args...), Basis: b}}
}

func findHeld(p Plan, n SiloNeed, u measure.Unit) []geometry.Finding {
	for _, w := range n.Weeks {
		if w.Held {
			continue
		}
		most := LargestOpening(w.Smallest, p.MeshMargin)
		return one("held", geometry.Stop, meshKey(w.In), w.Smallest.Length().Quantity(), most.Quantity(), practice(),
			"in week %d no mesh of the %s silos holds the smallest seed; add one with an opening of at most %s, or take in larger seed", w.Week, w.In, most.Both(u))
	}
	w := n.Weeks[0]
	return one("held", geometry.OK, meshKey(w.In), w.Smallest.Length().Quantity(), w.Mesh.Square().Length().Quantity(), practice(),
		"the smallest seed is held every week; on arrival by a mesh of %s", w.Mesh.Opening.Both(u))
}

func findHand(p Plan, n SiloNeed, _ measure.Unit) []geometry.Finding {
	if p.PipeSilosAtHand == 0 || !p.uses(Pipe) {
		return nil
	}
	have, need := measure.Count(p.PipeSilosAtHand), measure.Count(n.Peak.Pipe)
	if w, short := n.ShortOf(n.Peak.Drum, p.PipeSilosAtHand); short {
		return one("pipe-silos", geometry.Stop, "pipe_silos_at_hand", need, have, geometry.Basis{Kind: geometry.Worked},
			"week %d needs %d pipe silos and %d are at hand, and no drum mesh holds the seed yet; build more, take in fewer seed, or put a finer mesh in a drum", w.Week, w.Pipe, p.PipeSilosAtHand)
	}
	return one("pipe-silos", geometry.OK, "pipe_silos_at_hand", need, have, geometry.Basis{Kind: geometry.Worked},
		"the pipe silos at hand are enough every week")
}

func findSize(p Plan, _ SiloNeed, u measure.Unit) []geometry.Finding {
	if p.Species != Clam {
		return nil
	}
	measured, limit, b := p.Size.Length().Quantity(), clamUpwelling.Length().Quantity(), published(srcFAO)
	if p.Size < clamUpwelling {
		return one("size", geometry.Caution, "size", measured, limit, b, "clams suit upwelling from about %s; smaller ones are better raised otherwise until then", clamUpwelling.Both(u))
	}
	return one("size", geometry.OK, "size", measured, limit, b, "clams of this size suit upwelling")
}

func findLeave(p Plan, n SiloNeed, u measure.Unit) (out []geometry.Finding) {
	measured, b := p.LeaveOn.Length().Quantity(), published(srcFAO)
	switch {
	case p.LeaveOn < leastLeaveOn:
		out = one("leave", geometry.Caution, "leave_on", measured, leastLeaveOn.Length().Quantity(), b, "seed usually leaves for mesh of %s to %s; smaller seed falls through", leastLeaveOn.Both(u), mostLeaveOn.Both(u))
	case p.LeaveOn > mostLeaveOn:
		out = one("leave", geometry.Caution, "leave_on", measured, mostLeaveOn.Length().Quantity(), b, "seed usually leaves for mesh of %s to %s; held longer it takes many silos", leastLeaveOn.Both(u), mostLeaveOn.Both(u))
	default:
		out = one("leave", geometry.OK, "leave_on", measured, leastLeaveOn.Length().Quantity(), b, "the seed leaves for a mesh that is usual")
	}
	last := n.Weeks[len(n.Weeks)-1]
	if !n.Reached {
		out = append(out, one("reached", geometry.Caution, "weeks", last.Shell.Sieve(p.SieveRatio).Length().Quantity(), p.LeaveOn.Length().Quantity(), geometry.Basis{Kind: geometry.Worked},
			"after %d weeks the seed has not the size to leave; the peak may come later: reckon more weeks", len(n.Weeks))...)
	}
	return out
}

func findWater(p Plan, _ SiloNeed, u measure.Unit) []geometry.Finding {
	q := func(w WaterPerMass) measure.Quantity {
		return measure.Quantity{Value: float64(w), Unit: "L/min/kg"}
	}
	b := published(srcFAO + ", §6.6.2, a barge nursery")
	switch {
	case p.Water < leastWater:
		return one("water", geometry.Caution, "water", q(p.Water), q(leastWater), b,
			"%s is less water than the %s to %s of a barge nursery; seed at the top of the bed may go hungry", p.Water.Both(u), leastWater.Both(u), mostWater.Both(u))
	case p.Water > mostWater:
		return one("water", geometry.OK, "water", q(p.Water), q(mostWater), b,
			"%s is more water than the %s to %s of a barge nursery; the pump is the dearer for it", p.Water.Both(u), leastWater.Both(u), mostWater.Both(u))
	}
	return one("water", geometry.OK, "water", q(p.Water), q(leastWater), b,
		"%s is within the %s to %s of a barge nursery", p.Water.Both(u), leastWater.Both(u), mostWater.Both(u))
}

// bargeLoad is the most a container of 1 m² holds in a barge nursery: FAO
// Fisheries Technical Paper 471, §6.6.2.
const bargeLoad Load = 120

func findLoad(_ Plan, n SiloNeed, u measure.Unit) []geometry.Finding {
	worst := n.Weeks[0]
	for _, w := range n.Weeks {
		if w.PerSilo.Load > worst.PerSilo.Load {
			worst = w
		}
	}
	m, b := worst.PerSilo.Load, published(srcFAO+", §6.6.2, a barge nursery")
	if m > bargeLoad {
		return one("load", geometry.Caution, "load", m.Quantity(), bargeLoad.Quantity(), b,
			"in week %d the mesh bears %s, more than a barge nursery of larger seed; lower the load, or see that the bed moves and the lattice bears it", worst.Week, m.Both(u))
	}
	return one("load", geometry.OK, "load", m.Quantity(), bargeLoad.Quantity(), b, "the load on the mesh is within a barge nursery's")
}

// farWeight is how far a table of weights may lie from the published ones
// either way: half as much again (common practice, no source).
const farWeight = 1.5

// findWeight holds the grower's table against the published weights that its
// sizes reach.
func findWeight(p Plan, _ SiloNeed, _ measure.Unit) (out []geometry.Finding) {
	hold := func(id string, at Shell, least, most measure.Mass, b geometry.Basis) {
		m, err := p.each(at)
		if err != nil {
			return
		}
		level, says := geometry.OK, "the table of weights agrees with the published weight"
		if m < least/farWeight || m > most*farWeight {
			level, says = geometry.Caution, "the table of weights is far from the published weight: weigh a counted sample; every silo and every litre hangs on it"
		}
		out = append(out, one(id, level, KeyWeights, m.Quantity(), most.Quantity(), b, "%s", says)...)
	}
	if m, b, err := Weight(p.Species, 1); err == nil {
		hold("weight-1mm", 1, m, m, b)
	}
	if least, most, b, err := WeightOnSieve(p.Species, 7); err == nil {
		hold("weight-7mm-sieve", Sieve(7).Shell(p.SieveRatio), least, most, b)
	}
	return out
}

// findGrowth holds growth told by shell length against the fastest published
// for the kind.
func findGrowth(p Plan, _ SiloNeed, u measure.Unit) []geometry.Finding {
	if p.Growth != ByLength {
		return nil
	}
	fastest := p.GrowthLength
	for _, w := range p.WeekTable {
		fastest = max(fastest, w.Length)
	}
	var most measure.Length
	var b geometry.Basis
	for _, g := range GrowthFigures() {
		if _, m, ok := g.PerWeek(); ok && g.Species == p.Species && m > most {
			most, b = m, g.Basis
		}
	}
	reckoned, published := measure.Apart(fastest.Quantity(), most.Quantity(), u)
	switch {
	case most == 0:
		return nil
	case fastest > most:
		return one("growth", geometry.Caution, "growth_length", fastest.Quantity(), most.Quantity(), b,
			"growth is reckoned at %s a week; the fastest published here is %s: if it is slower, silos are needed for longer", reckoned, published)
	}
	return one("growth", geometry.OK, "growth_length", fastest.Quantity(), most.Quantity(), b, "growth is within what is published")
}

func findFood(_ Plan, n SiloNeed, _ measure.Unit) []geometry.Finding {
	worst := -1
	for i, w := range n.Weeks {
		if w.Food.Reckoned && (worst < 0 || w.Food.Share > n.Weeks[worst].Food.Share) {
			worst = i
		}
	}
	if worst < 0 {
		return nil
	}
	w := n.Weeks[worst]
	percent := func(x float64) measure.Quantity { return measure.Quantity{Value: 100 * x, Unit: "%"} }
	level, says := geometry.OK, "enough passes by"
	if w.Food.Share > mostShare {
		level, says = geometry.Caution, "give more water or expect slower growth"
	}
	return one("food", level, "water", percent(w.Food.Share), percent(mostShare), w.Food.Basis,
		"in week %d the seed clears %s %% of the water it is given; %s", w.Week, figures(100*w.Food.Share), says)
}
