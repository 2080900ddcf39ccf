package seed

import (
	"math"

	"silowright/geometry/measure"
)

// Limit is what sets the number of silos.
type Limit int

// The limits, in the order in which a tie is told.
const (
	ByDepth     Limit = iota // the depth of the bed
	ByLoad                   // the mass on an area of mesh
	ByWater                  // the water for the mass
	ByWaterEach              // the water for the number
)

var limitNames = [...]string{"bed depth", "load", "water for the weight", "water for the number"}

// String returns the limit in words.
func (l Limit) String() string {
	if l < 0 || int(l) >= len(limitNames) {
		return "unknown"
	}
	return limitNames[l]
}

// MarshalText writes the limit in words.
func (l Limit) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// PerSilo is what lies in one silo when the lot is shared evenly.
type PerSilo struct {
	Count int            `json:"count"`
	Mass  measure.Mass   `json:"mass_kg"`
	Load  Load           `json:"load_kg_m2"`
	Depth measure.Length `json:"depth_mm"`
	Flow  measure.Flow   `json:"flow_mm3_s"`
	// Speed is the mean upwelling through the mesh's clear area.
	Speed measure.Speed `json:"speed_mm_s"`
}

// Share returns what lies in each of n silos of the given clear mesh area when
// count seed of mass m and the given live mass a volume are shared evenly over
// them, without water. All zero when n, the area or bulk is not positive.
func Share(count int, m measure.Mass, bulk measure.Density, area measure.Area, n int) PerSilo {
	if n < 1 || !(area > 0) || !(bulk > 0) {
		return PerSilo{}
	}
	s := PerSilo{Count: int(math.Round(float64(count) / float64(n))), Mass: m / measure.Mass(n)}
	s.Load = LoadOf(s.Mass, area)
	s.Depth = measure.Length(float64(s.Load) / float64(bulk) * 1000) // m to mm
	return s
}

// Week is the lot at the beginning of one week.
type Week struct {
	// Week of the season, 1 for the first.
	Week int `json:"week"`
	// Shell is the mean; Smallest and Largest are what the smallest and the
	// largest seed of the whole lot are held by.
	Shell    Shell        `json:"shell_mm"`
	Smallest Sieve        `json:"smallest_sieve_mm"`
	Largest  Sieve        `json:"largest_sieve_mm"`
	Each     measure.Mass `json:"each_kg"`
	Count    int          `json:"count"`
	Mass     measure.Mass `json:"mass_kg"`
	// PerLitre is the number of seed in a litre of drained seed.
	PerLitre float64 `json:"per_litre"`
	// In says in which silos it lies and Mesh on what; Held is false when no
	// mesh holds the smallest seed, and Mesh is then empty.
	In   Kind `json:"in"`
	Mesh Mesh `json:"mesh"`
	Held bool `json:"held"`
	// Drum and Pipe are the silos needed; one of them is zero.
	Drum int `json:"drum_silos"`
	Pipe int `json:"pipe_silos"`
	// Flow is the water for the whole lot.
	Flow    measure.Flow `json:"flow_mm3_s"`
	Governs Limit        `json:"governs"`
	PerSilo PerSilo      `json:"per_silo"`
	Food    Food         `json:"food"`
	// What is done this week. Moved: from pipe to drum silos. NewMesh: to a
	// coarser mesh. Split: over more silos than the week before. Grade: the
	// spread of sizes has passed the limit. Leaves: it has the size to leave.
	Moved   bool `json:"moved"`
	NewMesh bool `json:"new_mesh"`
	Split   bool `json:"split"`
	Grade   bool `json:"grade"`
	Leaves  bool `json:"leaves"`
}

// Peak is the most of each that any week needs, and in which week first.
type Peak struct {
	Drum     int          `json:"drum_silos"`
	Pipe     int          `json:"pipe_silos"`
	Flow     measure.Flow `json:"flow_mm3_s"`
	DrumWeek int          `json:"drum_week"`
	PipeWeek int          `json:"pipe_week"`
	FlowWeek int          `json:"flow_week"`
}

// SiloNeed is a plan worked out week by week.
type SiloNeed struct {
	Weeks []Week `json:"weeks"`
	Peak  Peak   `json:"peak"`
	// Reached says that the seed gets to the size to leave within the weeks.
	Reached bool `json:"reached"`
}

// lot is the state that is carried from week to week.
type lot struct {
	count         float64
	mean          Shell
	least, most   Shell // of the whole lot
	gLeast, gMost Shell // of one graded part, about the mean
	in            Kind
	mesh          Mesh
	silos         int
	started       bool
}

// Need works p out: how many silos and how much water, week by week, until the
// mean seed is held by LeaveOn or the weeks are over. Error when p.Check finds
// one, or when the seed grows past the plan's table of weights.
//
// The lot is reckoned as one: its mass is its number times the weight of the
// mean seed, and its mesh is the one that holds its smallest. Growth spreads
// the sizes; grading is told when, in a part graded the last time, the largest
// is GradeAt times the smallest.
func Need(p Plan) (SiloNeed, error) {
	if err := p.Check(); err != nil {
		return SiloNeed{}, err
	}
	l := lot{count: float64(p.Count), mean: p.Size}
	l.least, l.most = p.spread(l.mean)
	l.gLeast, l.gMost = l.least, l.most
	var out SiloNeed
	for i := range p.Weeks {
		w, err := p.week(&l, p.Arrival+i)
		if err != nil {
			return SiloNeed{}, err
		}
		out.Weeks = append(out.Weeks, w)
		out.Peak.take(w.Week, w.Drum, w.Pipe, w.Flow)
		if w.Leaves {
			out.Reached = true
			break
		}
		if i+1 < p.Weeks {
			if err := p.grow(&l, i); err != nil {
				return SiloNeed{}, err
			}
		}
	}
	return out, nil
}

// spread returns the smallest and largest of a lot just graded.
func (p Plan) spread(mean Shell) (least, most Shell) {
	return mean * Shell(1-p.Spread), mean * Shell(1+p.Spread)
}

// grow carries the lot over week i of the plan.
func (p Plan) grow(l *lot, i int) error {
	rate := WeekRate{p.GrowthLength, p.GrowthWeight, p.Survival}
	if i < len(p.WeekTable) {
		rate = p.WeekTable[i]
	}
	next := l.mean + Shell(rate.Length)
	if p.Growth == ByWeight {
		each, err := p.each(l.mean)
		if err != nil {
			return err
		}
		if next, err = p.shellOf(each * measure.Mass(math.Exp(7*rate.Weight))); err != nil {
			return err
		}
	}
	d := max(0, next-l.mean)
	slow, fast := d*Shell(1-p.GrowthSpread), d*Shell(1+p.GrowthSpread)
	l.mean += d
	l.least, l.most = l.least+slow, l.most+fast
	l.gLeast, l.gMost = l.gLeast+slow, l.gMost+fast
	l.count *= rate.Survival
	return nil
}

// week works the lot out at the beginning of a week.
func (p Plan) week(l *lot, number int) (Week, error) {
	each, err := p.each(l.mean)
	if err != nil {
		return Week{}, err
	}
	w := Week{Week: number, Shell: l.mean, Smallest: l.least.Sieve(p.SieveRatio), Largest: l.most.Sieve(p.SieveRatio),
		Each: each, Count: int(math.Round(l.count)), Mass: each * measure.Mass(l.count)}
	w.PerLitre = float64(p.Bulk.Of(measure.Litre) / each)
	w.Flow = p.demand(l.count, w.Mass)
	w.In = p.kindFor(l, w)
	if m, ok := coarsest(p.Meshes, w.In, w.Smallest, p.MeshMargin); ok {
		w.Mesh, w.Held = m, true
	}
	n, governs := p.silos(w.In, l.count, w.Mass)
	w.Governs, w.PerSilo = governs, p.share(w, n)
	if w.In == Drum {
		w.Drum = n
	} else {
		w.Pipe = n
	}
	w.Food = FoodOf(p.Species, w.Count, w.Shell, w.Each, p.ClearanceEach, w.Flow)
	w.Leaves = float64(l.mean.Sieve(p.SieveRatio)) >= float64(p.LeaveOn)*(1-1e-9)
	if l.started {
		w.Moved = w.In != l.in
		w.NewMesh = w.Held && w.Mesh.Square() > l.mesh.Square()
		w.Split = !w.Moved && n > l.silos
		w.Grade = float64(l.gMost) >= p.GradeAt*float64(l.gLeast)
	}
	if w.Grade {
		l.gLeast, l.gMost = p.spread(l.mean)
	}
	l.started, l.in, l.mesh, l.silos = true, w.In, w.Mesh, n
	return w, nil
}

// demand is the water for the lot: for its weight or for its number, whichever
// is more.
func (p Plan) demand(count float64, m measure.Mass) measure.Flow {
	return max(p.Water.Of(m), p.WaterEach*measure.Flow(count))
}

// kindFor says in which silos the lot lies this week. Seed once in drum silos
// stays there.
func (p Plan) kindFor(l *lot, w Week) Kind {
	switch _, held := coarsest(p.Meshes, Drum, w.Smallest, p.MeshMargin); {
	case !p.uses(Pipe), l.started && l.in == Drum:
		return Drum
	case !held:
		return Pipe
	case p.Move == MoveByMesh:
		return Drum
	}
	if n, _ := p.silos(Pipe, l.count, w.Mass); p.PipeSilosAtHand > 0 && n > p.PipeSilosAtHand {
		return Drum
	}
	return Pipe
}

func (p Plan) house(k Kind) House {
	if k == Drum {
		return p.DrumHouse
	}
	return p.PipeHouse
}

// silos returns how many silos of a kind the lot needs and what sets it.
func (p Plan) silos(k Kind, count float64, m measure.Mass) (int, Limit) {
	h := p.house(k)
	m2 := h.Area.MM2() * 1e-6
	parts := [...]float64{
		ByDepth:     m.Kg() / float64(p.Bulk.Of(h.Area.Times(p.BedDepth))),
		ByLoad:      m.Kg() / (float64(p.Load) * m2),
		ByWater:     float64(p.Water.Of(m) / h.Most),
		ByWaterEach: float64(p.WaterEach) * count / float64(h.Most),
	}
	governs := ByDepth
	for i, x := range parts {
		if x > parts[governs]*(1+1e-12) {
			governs = Limit(i)
		}
	}
	// A silo filled to the brim is one silo: rounding must not make it two.
	return max(1, int(math.Ceil(parts[governs]*(1-1e-9)))), governs
}

// share is what lies in each of n silos.
func (p Plan) share(w Week, n int) PerSilo {
	s := Share(w.Count, w.Mass, p.Bulk, p.house(w.In).Area, n)
	s.Flow = w.Flow / measure.Flow(n)
	s.Speed = s.Flow.Through(p.house(w.In).Area)
	return s
}

// take raises the peak to what a week needs.
func (k *Peak) take(week, drum, pipe int, flow measure.Flow) {
	if drum > k.Drum {
		k.Drum, k.DrumWeek = drum, week
	}
	if pipe > k.Pipe {
		k.Pipe, k.PipeWeek = pipe, week
	}
	if flow > k.Flow {
		k.Flow, k.FlowWeek = flow, week
	}
}

// ShortOf returns the first week in which the need is more than the silos at
// hand; ok is false when they are always enough.
func (n SiloNeed) ShortOf(drum, pipe int) (w Week, ok bool) {
	for _, w := range n.Weeks {
		if w.Drum > drum || w.Pipe > pipe {
			return w, true
		}
	}
	return Week{}, false
}
