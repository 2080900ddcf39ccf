package nursery

import (
	"fmt"
	"math"
	"sync"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/manifold"
	"silowright/nursery/sea"
)

// Count is how many of one kind of silo stand on the manifold. Silos stand in
// the order of the kinds, from the main's end on; of each kind the first carry
// its pipe silos.
type Count struct {
	Silo       *geometry.Silo
	Drum, Pipe int
}

// mostSilos is how many drum silos one manifold is solved with.
const mostSilos = 20_000

// Losses of fittings as in flow.LossTable, in velocity heads.
const (
	elbow      = 0.9
	teeBranch  = 2.0
	teeRun     = 0.9
	swingCheck = 2.0
	hingedFoot = 1.4
	poppetFoot = 7.5
)

// standApart is what silos stand apart, tee to tee, past the widest drum when
// the job does not tell (common practice, no source).
const standApart measure.Length = 150

// lossless is the bore of a pipe that nobody described: so wide that it takes
// no head worth naming.
const lossless = 2 * metre

// room is one kind of silo, with or without a pipe silo, as water sees it.
type room struct {
	kind   *geometry.Silo
	piped  bool
	silo   flow.Silo
	head   *headTable
	raised measure.Length // its foot above the ground
	count  int
}

// rooms are the kinds of silo, and of each silo on the manifold its room.
func (f Farm) rooms(counts []Count, w sea.Water) ([]room, []int, error) {
	var rooms []room
	var of []int
	all := 0
	for _, c := range counts {
		all += max(0, c.Drum)
	}
	if all > mostSilos {
		return nil, nil, fmt.Errorf("drum_silos: %d, more than one manifold is solved with, allowed: 1 to %d; hint: one pump and manifold at a time", all, mostSilos)
	}
	for _, c := range counts {
		if c.Drum < 0 || c.Pipe < 0 {
			return nil, nil, fmt.Errorf("drum_silos: %d with %d pipe silos, not a number of silos, allowed: 0 to %d; hint: count again", c.Drum, c.Pipe, mostSilos)
		}
		piped := min(c.Pipe, c.Drum)
		for _, r := range []room{{kind: c.Silo, piped: true, count: piped}, {kind: c.Silo, count: c.Drum - piped}} {
			if r.count == 0 {
				continue
			}
			r.silo = OfSilo(c.Silo, f.stocking(c.Silo, r.piped))
			r.raised = c.Silo.Seat.FootHeight
			if err := r.silo.Check(); err != nil {
				return nil, nil, fmt.Errorf("%s: %w", c.Silo.Spec.Drum.Label, err)
			}
			for range r.count {
				of = append(of, len(rooms))
			}
			rooms = append(rooms, r)
		}
	}
	if len(of) == 0 {
		return nil, nil, fmt.Errorf("drum_silos: 0, no silo to give water to, allowed: 1 to %d; hint: say how many stand on the manifold", mostSilos)
	}
	var tables sync.WaitGroup
	for i := range rooms {
		r := &rooms[i]
		tables.Go(func() { r.head = tableOf(flow.InWater{Silo: r.silo, Water: w}) })
	}
	tables.Wait()
	return rooms, of, nil
}

// overOpening is the size of seed over the mesh's opening when none is told:
// the smallest that the mesh holds with a fifth to spare (common practice, no
// source). It is the first to wash out.
const overOpening = 1.2

// stocking is how the farm stocks a silo.
func (f Farm) stocking(s *geometry.Silo, piped bool) Stocking {
	bed := func(m measure.Mass, size, opening measure.Length) flow.Bed {
		if size == 0 {
			size = opening * overOpening
		}
		return flow.Bed{Mass: m, Size: max(size, 0.1), Density: f.Bed.Density, Voidage: f.Bed.Voidage, Sphericity: f.Bed.Sphericity}
	}
	q := Stocking{
		Seed:       bed(s.Spec.Load.Seed, f.Bed.Size, s.Spec.Mesh.Opening),
		MeshFouled: f.Supply.MeshFouled, ScreenFouled: f.Supply.ScreenFouled,
		Hose:         f.Supply.Hose,
		WithPipeSilo: piped,
	}
	if q.Hose.Length > 0 {
		q.Hose.Roughness = flow.HoseRoughness
		q.Hose.K += float64(f.Supply.HoseBends) * elbow
	}
	if piped {
		q.PipeSeed = bed(f.Bed.PipeMass, f.Bed.PipeSize, s.Spec.Pipe.Screen)
	}
	return q
}

// source and pumpAt are the elevations of water and pump.
func (f Farm) source() measure.Length { return -f.Supply.Below }
func (f Farm) pumpAt() measure.Length { return f.source() + f.Suction.Lift }

// system is the farm's pump and pipes with the silos on them.
func (f Farm) system(w sea.Water, c manifold.Curve, rooms []room, of []int) (manifold.System, error) {
	s := manifold.System{
		Water: w,
		Pump:  manifold.Pump{Curve: c, Efficiency: []manifold.EfficiencyPoint{{Efficiency: f.Pump.Efficiency}}, Motor: f.Pump.Motor, NPSHRequired: f.Pump.NPSH},
		Main:  flow.Pipe{Bore: lossless},
	}
	var err error
	if s.Suction, err = f.suction(); err != nil {
		return s, err
	}
	run := flow.Pipe{Bore: lossless}
	if g := f.Given(); g.Manifold {
		if run, err = pipeOf("manifold", f.Manifold.Pipe); err != nil {
			return s, err
		}
		run.Length, run.K = f.spacing(rooms), teeRun
		s.Main = flow.Pipe{Bore: run.Bore, Roughness: run.Roughness}
	}
	if f.Main.Pipe.Size != "" {
		if s.Main, err = pipeOf("main", f.Main.Pipe); err != nil {
			return s, err
		}
	}
	s.Main.Length = f.Main.Length + f.Manifold.First
	s.Main.K = float64(f.Main.Bends) * elbow
	if f.Failure.CheckValve && (f.Main.Pipe.Size != "" || f.Manifold.Pipe.Size != "") {
		s.Main.K += swingCheck
	}
	s.Segments = make([]flow.Pipe, len(of)-1)
	for i := range s.Segments {
		s.Segments[i] = run
	}
	if f.Manifold.Feed == FedAtCentre {
		s.Feed = (len(of) - 1) / 2
	}
	laterals := make([]manifold.Lateral, len(rooms))
	for i := range rooms {
		if laterals[i], err = f.lateral(&rooms[i]); err != nil {
			return s, err
		}
	}
	s.Laterals = make([]manifold.Lateral, len(of))
	for i, k := range of {
		s.Laterals[i] = laterals[k]
		s.Laterals[i].Name = fmt.Sprintf("silo %d", i+1)
	}
	return s, nil
}

func (f Farm) suction() (manifold.Suction, error) {
	out := manifold.Suction{Source: f.source(), Pump: f.pumpAt()}
	u := f.Suction
	if u.Length == 0 {
		return out, nil
	}
	p, err := pipeOf("suction", u.Pipe)
	if err != nil {
		return out, err
	}
	p.Length, p.K = u.Length, reachesIn+float64(u.Bends)*elbow
	out.Pipe, out.Strainer = p, u.StrainerK
	switch u.FootValve {
	case HingedFootValve:
		out.FootValve = hingedFoot
	case PoppetFootValve:
		out.FootValve = poppetFoot
	}
	return out, nil
}

// spacing is from tee to tee.
func (f Farm) spacing(rooms []room) measure.Length {
	if f.Manifold.Spacing > 0 {
		return f.Manifold.Spacing
	}
	var widest measure.Length
	for _, r := range rooms {
		widest = max(widest, r.kind.Spec.Drum.Outside)
	}
	return widest + standApart
}

// lateral is the way to a silo of a room.
func (f Farm) lateral(r *room) (manifold.Lateral, error) {
	bore := f.Lateral.HoseBore
	if bore == 0 {
		bore = r.silo.Inlet.Bore
	}
	v, err := manifold.BallValve(f.Lateral.ValveOpen)
	if err != nil {
		return manifold.Lateral{}, err
	}
	v.Bore = f.Lateral.ValveBore
	return manifold.Lateral{
		Branch: teeBranch, Valve: v,
		Hose: flow.Pipe{Bore: bore, Length: f.Lateral.Hose, Roughness: flow.HoseRoughness},
		Barb: manifold.Fitting{K: 2*flow.Barb(bore, f.Lateral.BarbBore) + step(bore, r.silo.Inlet.Bore)},
		Rise: r.raised + r.silo.Invert, Silo: r.head,
	}, nil
}

// step is K of the step from the hose's bore to the inlet's, on the speed in
// the hose.
func step(hose, inlet measure.Length) float64 {
	return flow.Widening(hose, inlet) + flow.Narrowing(hose, inlet)*math.Pow(float64(hose/inlet), 4)
}
