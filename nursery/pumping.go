package nursery

import (
	"math"

	"silowright/geometry/measure"
	"silowright/nursery/manifold"
	"silowright/nursery/sea"
)

// Pumping is the described pump on its pipes.
type Pumping struct {
	Result manifold.Result
	// KWhAYear is the energy drawn in a year of 365 days; 0 when the
	// efficiency is not known.
	KWhAYear float64
	// MostEven is the greatest flow that every silo can have at once by
	// throttling. Settings are the valves for the job's water.flow when the pump
	// can give it, else for MostEven; Wanted says that it is the job's flow.
	MostEven measure.Flow
	Settings manifold.Throttling
	Wanted   bool
	// Shut is what one silo's valve shut does.
	Shut *Shut
	// Sizes are the pipes recommended; nil without a described manifold.
	Sizes *Sizes
	// MostSpeed is the fastest water in the manifold.
	MostSpeed measure.Speed
	sys       manifold.System
}

// Energy is KWhAYear with its unit.
func (p Pumping) Energy() measure.Quantity { return measure.Quantity{Value: p.KWhAYear, Unit: "kWh"} }

// Shut is what comes of shutting the valve of the silo that gets most.
type Shut struct {
	Place      int // of the silo that is shut
	GainsMost  int // place of the one that gains most; 0 when there is no other
	Flow       measure.Flow
	Ratio      float64 // its flow after over before; 0 when it had none
	Spills     bool    // and something of it spills or washes out that did not
	What       Spill
	TotalAfter measure.Flow
}

// pumping solves the pump on its pipes.
func (f Farm) pumping(w sea.Water, rooms []room, of []int) (*Pumping, error) {
	c, err := f.curve(w)
	if err != nil {
		return nil, err
	}
	sys, err := f.system(w, c, rooms, of)
	if err != nil {
		return nil, err
	}
	p := &Pumping{sys: sys}
	if p.Result, err = manifold.Solve(sys); err != nil {
		return nil, err
	}
	p.KWhAYear = p.Result.Pump.KWhPerYear(f.Pump.HoursADay)
	for _, seg := range p.Result.Segments {
		p.MostSpeed = max(p.MostSpeed, seg.Speed)
	}
	if p.MostEven, err = manifold.MostEven(sys); err != nil {
		return nil, err
	}
	if each := f.Supply.Each; each > 0 && each <= p.MostEven {
		p.Wanted = true
		p.Settings, err = manifold.Throttle(sys, each)
	} else if p.MostEven > 0 {
		p.Settings, err = manifold.Throttle(sys, p.MostEven)
	}
	if err != nil {
		return nil, err
	}
	if err := p.shut(sys); err != nil {
		return nil, err
	}
	if f.Given().Manifold {
		if p.Sizes, err = f.sizes(sys, rooms); err != nil {
			return nil, err
		}
	}
	return p, nil
}

// shut solves the system with the valve of the silo that gets most shut.
func (p *Pumping) shut(sys manifold.System) error {
	k := p.Result.Most
	if k < 0 || len(sys.Laterals) < 2 {
		return nil
	}
	sys.Laterals = append([]manifold.Lateral(nil), sys.Laterals...)
	sys.Laterals[k].Valve.Shut = true
	after, err := manifold.Solve(sys)
	if err != nil {
		return err
	}
	p.Shut = &Shut{Place: k + 1, TotalAfter: after.Total}
	best := measure.Flow(math.Inf(-1))
	for i, l := range after.Laterals {
		before := p.Result.Laterals[i].Flow
		if i == k || l.Flow-before <= best {
			continue
		}
		best = l.Flow - before
		p.Shut.GainsMost, p.Shut.Flow, p.Shut.Ratio = i+1, l.Flow, 0
		if before > 0 {
			p.Shut.Ratio = float64(l.Flow / before)
		}
	}
	return nil
}

// mark says what spills when one valve is shut.
func (p *Pumping) mark(s *Study) {
	if p.Shut == nil || p.Shut.GainsMost == 0 {
		return
	}
	o := s.Silos[p.Shut.GainsMost-1]
	for _, spill := range s.Groups[o.Group].Spills {
		if spill.From > o.Flow && spill.From <= p.Shut.Flow {
			p.Shut.Spills, p.Shut.What = true, spill
			return
		}
	}
}

// Heads are the pump's head, and the head that pipes and silos ask, by the
// flow, for a plot; the two cross at Result.Pump. A point of the system's is
// where the pump would run at another speed; a speed at which that cannot be
// found is left out.
func (p *Pumping) Heads() (pump, system []manifold.Point) {
	const points = 24
	top := p.Result.Total * 3 / 2
	for i := range points + 1 {
		q := top * measure.Flow(i) / points
		h := p.sys.Pump.Curve.Head(q)
		if h < 0 {
			break
		}
		pump = append(pump, manifold.Point{Flow: q, Head: h})
	}
	ratios := []float64{0.5, 0.65, 0.8, 0.9, 1, 1.1, 1.2}
	if len(p.sys.Laterals) > 1000 {
		ratios = []float64{0.7, 1, 1.2}
	}
	for _, ratio := range ratios {
		if r, err := p.atSpeed(ratio); err == nil && r.Total > 0 {
			system = append(system, manifold.Point{Flow: r.Total, Head: r.Pump.Head})
		}
	}
	return pump, system
}

// atSpeed solves the system with the pump turning at a part of its speed.
func (p *Pumping) atSpeed(ratio float64) (manifold.Result, error) {
	if ratio == 1 {
		return p.Result, nil
	}
	turned := p.sys
	var err error
	if turned.Pump.Curve, err = turned.Pump.Curve.AtSpeed(ratio); err != nil {
		return manifold.Result{}, err
	}
	return manifold.Solve(turned)
}

// Asks is what a pump must give so that every silo has its flow, the valve of
// the one that asks most wide open: what to look for on a maker's curve.
type Asks struct {
	Each, Total measure.Flow
	Head        measure.Length
	Water       measure.Power // ρgQH; the motor's is this over both efficiencies
}

// asks works the duty out backwards from the silos; nil where no flow is to be
// had or the source's level is not known.
func (f Farm) asks(w sea.Water, rooms []room, of []int) (*Asks, error) {
	each := f.Supply.Each
	if each == 0 && !f.Pump.Described() {
		for _, r := range rooms {
			each = max(each, f.seedsFlow(r))
		}
	}
	if each <= 0 || !f.Supply.BelowKnown {
		return nil, nil
	}
	// Any pump will do, so long as it is strong: what it has over is taken off.
	strong, err := manifold.CurveByDuty(900*metre, manifold.Point{Flow: 100 * measure.CubicMetrePerSec, Head: 899 * metre})
	if err != nil {
		return nil, err
	}
	sys, err := f.system(w, strong, rooms, of)
	if err != nil {
		return nil, err
	}
	t, err := manifold.Throttle(sys, each)
	if err != nil {
		return nil, err
	}
	over := math.Inf(1)
	for i, set := range t.Settings {
		bore := sys.Laterals[i].Valve.Bore
		if bore == 0 {
			bore = sys.Laterals[i].Hose.Bore
		}
		v := each.M3S() / (math.Pi / 4 * bore.Metres() * bore.Metres())
		over = math.Min(over, (set.K-set.Wide)*v*v/(2*sea.Gravity))
	}
	a := &Asks{Each: each, Total: each * measure.Flow(len(of)), Head: t.Pump.Head - measure.Length(over)*metre}
	a.Water = measure.Power(w.Weight() * a.Total.M3S() * a.Head.Metres())
	return a, nil
}
