package nursery

import (
	"sort"

	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/sea"
)

// Group is the silos of one kind that are alike: with a pipe silo, or without.
type Group struct {
	Drum  string
	Piped bool
	Count int
	Silo  flow.Silo
	// Least and Most are the studies of the silo that gets the least and the
	// most, LeastAt and MostAt their places in Study.Silos.
	Least, Most     flow.Study
	LeastAt, MostAt int
	// Spills is what leaves the silo by another way than its outlet, or leaves
	// it that should stay, and the flow from which it does, least first.
	Spills []Spill
	// Over says that the most flow is past flow.MostFlow, for which Most is
	// then the study.
	Over bool
	// Crown, Sill and Rim are levels over the outlet's invert, PipeRim likewise.
	Crown, Sill, Rim  measure.Length
	PipeRim           measure.Length // of the pipe silo; 0 without one
	BeforeSlots       measure.Flow
	BeforeRim         measure.Flow
	BeforePipeRim     measure.Flow   // 0 without a pipe silo
	SeedAsks          measure.Flow   // by FlowFrom FromSeed
	OutletInvertAbove measure.Length // the ground
	Widest            measure.Length // across the drum's hoops
}

// Spill is something that leaves a silo from a flow up.
type Spill struct {
	What string
	From measure.Flow
}

// LevelPoint is a level at a flow.
type LevelPoint struct {
	Flow  measure.Flow
	Level measure.Length
}

// First is what spills or washes out first; ok is false when nothing does at
// any flow that is reckoned with.
func (g Group) First() (Spill, bool) {
	if len(g.Spills) == 0 {
		return Spill{}, false
	}
	return g.Spills[0], true
}

// group studies every kind at its least and its most flow.
func (s *Study) group(rooms []room, of []int) error {
	s.Groups = make([]Group, len(rooms))
	for k := range s.Groups {
		s.Groups[k].LeastAt, s.Groups[k].MostAt = -1, -1
	}
	for i, k := range of {
		g, q := &s.Groups[k], s.Silos[i].Flow
		if g.LeastAt < 0 || q < s.Silos[g.LeastAt].Flow {
			g.LeastAt = i
		}
		if g.MostAt < 0 || q > s.Silos[g.MostAt].Flow {
			g.MostAt = i
		}
	}
	for k, r := range rooms {
		g := &s.Groups[k]
		g.Drum, g.Piped, g.Count, g.Silo = r.kind.Spec.Drum.Label, r.piped, r.count, r.silo
		g.OutletInvertAbove, g.Widest = r.raised+r.silo.Invert, r.kind.Spec.Drum.Widest()
		g.SeedAsks = s.Farm.seedsFlow(r)
		least, most := s.Silos[g.LeastAt].Flow, s.Silos[g.MostAt].Flow
		g.Over = most > flow.MostFlow
		var err error
		if g.Most, err = flow.Solve(s.Water, r.silo, min(most, flow.MostFlow)); err != nil {
			return err
		}
		g.Least = g.Most
		if least < most {
			if g.Least, err = flow.Solve(s.Water, r.silo, min(least, flow.MostFlow)); err != nil {
				return err
			}
		}
		g.limits(s)
	}
	return nil
}

// limits fills in what a silo takes before something leaves it.
func (g *Group) limits(s *Study) {
	si := g.Silo
	g.Crown, g.Rim = si.Outlet.Bore, si.Rim-si.Invert
	g.Sill = g.Rim
	add := func(what string, q measure.Flow) {
		if q < flow.MostFlow {
			g.Spills = append(g.Spills, Spill{what, max(q, 0)})
		}
	}
	g.BeforeSlots, g.BeforeRim = g.Most.BeforeSlots, g.Most.BeforeRim
	if si.Slots > 0 {
		g.Sill = si.Sill - si.Invert
		add("water by the handle slots", g.BeforeSlots)
	}
	add("water over the rim", g.BeforeRim)
	across := flow.Disc(si.BedAcross)
	if q, ok := seedLeaves(s, si.Seed, across, si.Invert-si.MeshTop); ok {
		add("the drum silo's seed", q)
	}
	if p := si.Pipe; p != nil && g.Most.Pipe != nil {
		g.PipeRim, g.BeforePipeRim = p.Rim-si.Invert, g.Most.Pipe.BeforeRim
		add("water into the pipe silo over its rim", g.BeforePipeRim)
		if q, ok := seedLeaves(s, p.Seed, flow.Disc(p.Inside), p.Invert-p.Bottom); ok {
			add("the pipe silo's seed", q)
		}
	}
	sort.SliceStable(g.Spills, func(i, j int) bool { return g.Spills[i].From < g.Spills[j].From })
}

// Levels is the level over the outlet's invert by the flow, from none to past
// what spills over the rim, for a plot.
func (g Group) Levels(w sea.Water) []LevelPoint {
	const points = 24
	top := min(max(g.BeforeRim*5/4, g.Most.Flow*11/10, measure.LitrePerMinute), flow.MostFlow)
	var out []LevelPoint
	for i := range points + 1 {
		q := top * measure.Flow(i) / points
		out = append(out, LevelPoint{q, g.Silo.Level(w, q)})
	}
	return out
}

// seedLeaves is the flow from which seed leaves with the water: it washes out,
// or its bed has swollen up to the room over the mesh; ok is false without seed.
func seedLeaves(s *Study, b flow.Bed, across measure.Area, room measure.Length) (measure.Flow, bool) {
	still := b.At(s.Water, across, 0)
	if b.Mass <= 0 || across <= 0 {
		return 0, false
	}
	flowAt := func(v measure.Speed) measure.Flow { return measure.Flow(float64(v) * float64(across)) }
	if still.Depth >= room {
		return 0, true
	}
	low, high := still.Fluidises, still.Sinks
	for range 24 {
		mid := (low + high) / 2
		if d := b.At(s.Water, across, mid); d.State == flow.WashingOut || d.Depth >= room {
			high = mid
		} else {
			low = mid
		}
	}
	return flowAt(high), true
}
