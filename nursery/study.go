package nursery

import (
	"fmt"
	"math"

	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/manifold"
	"silowright/nursery/sea"
	"silowright/nursery/seed"
)

// FlowFrom says where the flows of a study are from.
type FlowFrom string

// Where flows are from, the surest first.
const (
	// FromPump: pump and pipes were solved.
	FromPump FlowFrom = "the pump"
	// FromGuess: the same, with a pump guessed from its power.
	FromGuess FlowFrom = "a guess at the pump"
	// FromJob: every silo is given the job's water.flow.
	FromJob FlowFrom = "the job"
	// FromSeed: nobody told; every silo is given what its seed asks, by the
	// least water of FAO Fisheries Technical Paper 471, §6.6.2, or by the plan's.
	FromSeed FlowFrom = "the seed's need"
)

// Study is water and seed of a whole farm, worked out.
type Study struct {
	Farm  Farm
	Given Given
	Water sea.Water
	From  FlowFrom

	// Silos in the order they stand on the manifold, Groups by kind, those with
	// a pipe silo apart.
	Silos  []SiloFlow
	Groups []Group
	// Total, Mean and Evenness (least over mean) are of the drum silos; Least
	// and Most are places in Silos.
	Total, Mean measure.Flow
	Evenness    float64
	Least, Most int

	// Pumping is nil without a described pump, Asks without a flow to reckon it
	// by or a source whose level is known, Failure without such a source, Seed
	// without a plan.
	Pumping *Pumping
	Asks    *Asks
	Failure *manifold.Failure
	Seed    *SeedStudy
}

// SiloFlow is what one silo gets.
type SiloFlow struct {
	Place  int // 1 for the first on the manifold
	Group  int // in Study.Groups
	Drum   string
	Piped  bool // a pipe silo hangs in it
	Flow   measure.Flow
	Level  measure.Length // above the outlet's invert
	ToSill measure.Length // freeboard to the handle slots; negative when they spill
	ToRim  measure.Length
	// Upwelling is the speed in the plain bore, Bed how the seed on the mesh
	// stands, PipeBed that on the pipe silo's screen.
	Upwelling    measure.Speed
	Bed, PipeBed flow.State
	Head         measure.Length // asked at the outer end of its inlet, above the outlet's invert
	// Starved: the pump does not lift water into it; Short is the head wanting.
	Starved bool
	Short   measure.Length
}

// Solve works out water and seed of a farm. It fails in one line that begins
// with the key at fault.
func Solve(counts []Count, f Farm) (Study, error) {
	if err := f.Check(); err != nil {
		return Study{}, err
	}
	for i, c := range counts {
		if c.Silo == nil {
			return Study{}, fmt.Errorf("drum_silos: kind %d of %d is no silo, allowed: solved kinds; hint: solve the job first", i+1, len(counts))
		}
	}
	w, err := f.water()
	if err != nil {
		return Study{}, err
	}
	rooms, of, err := f.rooms(counts, w)
	if err != nil {
		return Study{}, err
	}
	s := Study{Farm: f, Given: f.Given(), Water: w}
	flows := make([]measure.Flow, len(of))
	switch {
	case s.Given.Pump:
		s.From = FromPump
		if s.Given.Guess {
			s.From = FromGuess
		}
		if s.Pumping, err = f.pumping(w, rooms, of); err != nil {
			return Study{}, err
		}
		for i, l := range s.Pumping.Result.Laterals {
			flows[i] = l.Flow
		}
	case s.Given.Flow:
		s.From = FromJob
		for i := range flows {
			flows[i] = f.Supply.Each
		}
	default:
		s.From = FromSeed
		for i, k := range of {
			flows[i] = f.seedsFlow(rooms[k])
		}
	}
	s.stand(rooms, of, flows)
	if err := s.group(rooms, of); err != nil {
		return Study{}, err
	}
	if s.Pumping != nil {
		s.Pumping.mark(&s)
	}
	if s.Asks, err = f.asks(w, rooms, of); err != nil {
		return Study{}, err
	}
	if s.Given.Source {
		if s.Failure, err = f.failure(&s, rooms, of); err != nil {
			return Study{}, err
		}
	}
	if s.Given.Plan {
		if s.Seed, err = f.seeds(s.Total, counts); err != nil {
			return Study{}, err
		}
	}
	return s, nil
}

// leastWater is what a kilogram of seed is given when nobody told: the least of
// a barge nursery, FAO Fisheries Technical Paper 471, §6.6.2.
const leastWater seed.WaterPerMass = 10

// seedsFlow is the flow that the seed in a silo asks: that on the drum silo's
// mesh or in the pipe silo, whichever asks more, for both get the same water.
func (f Farm) seedsFlow(r room) measure.Flow {
	water := leastWater
	if f.Plan != nil && f.Plan.Water > 0 {
		water = f.Plan.Water
	}
	q := water.Of(r.silo.Seed.Mass)
	if r.silo.Pipe != nil {
		q = max(q, water.Of(r.silo.Pipe.Seed.Mass))
	}
	return min(q, flow.MostFlow)
}

// stand fills in what each silo gets at its flow.
func (s *Study) stand(rooms []room, of []int, flows []measure.Flow) {
	type limits struct{ drum, pipe flow.BedState }
	beds := make([]limits, len(rooms))
	for i, r := range rooms {
		across := flow.Disc(r.silo.BedAcross)
		beds[i].drum = r.silo.Seed.At(s.Water, across, 0)
		if p := r.silo.Pipe; p != nil {
			beds[i].pipe = p.Seed.At(s.Water, flow.Disc(p.Inside), 0)
		}
	}
	s.Silos = make([]SiloFlow, len(of))
	for i, k := range of {
		r, q := rooms[k], flows[i]
		o := &s.Silos[i]
		if i > 0 && of[i-1] == k && flows[i-1] == q {
			*o = s.Silos[i-1]
		} else {
			*o = SiloFlow{Group: k, Drum: r.kind.Spec.Drum.Label, Piped: r.piped, Flow: q}
			o.Level = r.silo.Level(s.Water, q)
			o.ToRim = r.silo.Rim - r.silo.Invert - o.Level
			o.ToSill = o.ToRim
			if r.silo.Slots > 0 {
				o.ToSill = r.silo.Sill - r.silo.Invert - o.Level
			}
			o.Upwelling = q.Through(flow.Disc(r.silo.Bore))
			o.Bed = stateOf(beds[k].drum, r.silo.Seed.Mass, q.Through(flow.Disc(r.silo.BedAcross)))
			if p := r.silo.Pipe; p != nil {
				o.PipeBed = stateOf(beds[k].pipe, p.Seed.Mass, q.Through(flow.Disc(p.Inside)))
			}
			o.Head, _ = r.head.Head(q)
		}
		o.Place = i + 1
		if s.Pumping != nil {
			l := s.Pumping.Result.Laterals[i]
			o.Starved, o.Short = l.Starved, l.Short
		}
		s.Total += q
		if q < s.Silos[s.Least].Flow {
			s.Least = i
		}
		if q > s.Silos[s.Most].Flow {
			s.Most = i
		}
	}
	s.Mean = s.Total / measure.Flow(len(of))
	if s.Mean > 0 {
		s.Evenness = math.Min(float64(s.Silos[s.Least].Flow/s.Mean), 1)
	}
}

// stateOf is how a bed stands by the speeds at which it changes.
func stateOf(b flow.BedState, m measure.Mass, v measure.Speed) flow.State {
	switch {
	case m <= 0:
		return flow.NoSeed
	case v >= b.Sinks:
		return flow.WashingOut
	case v >= b.Fluidises:
		return flow.Fluidised
	}
	return flow.Packed
}
