package manifold

import (
	"math"

	"silowright/geometry/measure"
	"silowright/nursery/sea"
)

// Result is steady flow.
type Result struct {
	// Laterals in the order of the system's.
	Laterals []LateralFlow
	// Segments in the order of the system's; the flow is from the feed out.
	Segments []PipeFlow
	Main     PipeFlow
	Suction  PipeFlow
	Pump     PumpPoint
	NPSH     NPSH
	// Total is the pump's flow. Mean and Evenness leave shut laterals out:
	// Evenness is the least flow over the mean, 0 when nothing flows.
	Total, Mean measure.Flow
	Evenness    float64
	// Least and Most are the indices of the laterals with the least and the
	// most flow, the first of equals; −1 when all are shut.
	Least, Most int
	// MassError and EnergyError are the greatest misfits left: of flow at a
	// tee, of head between a tee and its silo.
	MassError   measure.Flow
	EnergyError measure.Length
}

// LateralFlow is what one silo gets.
type LateralFlow struct {
	Name  string
	Flow  measure.Flow
	Speed measure.Speed
	// Tee is the head at its tee, an elevation above the datum.
	Tee measure.Length
	// Valve, Hose and Fittings (branch and barb) are the heads lost on the
	// way, Silo what is left above its Rise at the hose's end.
	Valve, Hose, Fittings, Silo measure.Length
	Shut                        bool
	// Starved is a lateral that is open and gets nothing, because the silo's
	// still level is higher than the head at its tee. Short is by how much:
	// its water falls through an open hose until it stands that much lower.
	Starved bool
	Short   measure.Length
}

// PumpPoint is where the pump runs.
type PumpPoint struct {
	Flow measure.Flow
	Head measure.Length
	// Water is the power that the water takes up, ρgQH.
	Water measure.Power
	// Efficiency is the pump's there, 0 when it is not known, and then Shaft
	// and Input are 0 too; so they are where the pump gives no head, past the
	// end of its curve, for ρgQH over the efficiency tells nothing there. Input
	// is what the motor draws.
	Efficiency   float64
	Shaft, Input measure.Power
	// Estimated is a point on a guessed curve, Beyond one past its last point.
	Estimated, Beyond bool
}

// KWhPerYear is the energy drawn in a year of 365 days in kilowatt hours, when
// the pump runs the given hours a day; 0 when the power is not known or the
// hours are not from 0 to 24.
func (p PumpPoint) KWhPerYear(hoursPerDay float64) float64 {
	if !within(hoursPerDay, 0, 24) {
		return 0
	}
	return float64(p.Input) / 1000 * hoursPerDay * 365
}

// Solve finds the flow to every silo. Each flow is settled to 1e-12 of itself
// or to the last digits of the heads, whichever is coarser; MassError and
// EnergyError say what is left. An error names the input at fault.
func Solve(s System) (Result, error) {
	if err := s.check(); err != nil {
		return Result{}, err
	}
	n := newNetwork(s)
	st, err := n.solve()
	if err != nil {
		return Result{}, err
	}
	return n.result(s, st), nil
}

func (n *network) result(s System, st *state) Result {
	r := Result{
		Laterals: make([]LateralFlow, len(st.q)), Segments: make([]PipeFlow, len(st.sq)),
		Main: n.main.pipeFlow(st.total), Total: flowOf(st.total), Least: -1, Most: -1,
	}
	for i := range st.sq {
		r.Segments[i] = n.seg[i].pipeFlow(st.sq[i])
	}
	if n.suction != nil {
		r.Suction = n.suction.pipeFlow(st.total)
	}
	tee := n.tees(st)
	count, sum := 0, 0.0
	for i, q := range st.q {
		l := &n.lat[i]
		f := LateralFlow{Name: s.Laterals[i].Name, Flow: flowOf(q), Speed: l.hose.speed(q), Tee: headOf(tee[i]), Shut: s.Laterals[i].Valve.Shut}
		hose, _ := l.hose.at(q)
		need, _ := n.need(i, q)
		f.Valve, f.Hose, f.Fittings, f.Silo = headOf(l.valve*q*q), headOf(hose), headOf(l.rest*q*q), headOf(need-l.rise)
		r.Laterals[i] = f
		if f.Shut {
			continue
		}
		if l.off {
			r.Laterals[i].Starved, r.Laterals[i].Short = true, headOf(math.Max(l.still-tee[i], 0))
		} else {
			e := math.Abs(tee[i] - need - hose - (l.valve+l.rest)*q*q)
			r.EnergyError = max(r.EnergyError, headOf(e))
		}
		count, sum = count+1, sum+q
		if r.Least < 0 || q < st.q[r.Least] {
			r.Least = i
		}
		if r.Most < 0 || q > st.q[r.Most] {
			r.Most = i
		}
	}
	if sum > 0 {
		mean := sum / float64(count)
		r.Mean, r.Evenness = flowOf(mean), st.q[r.Least]/mean
	}
	r.MassError = n.massError(st)
	r.Pump = s.Pump.point(s.Water, st.total)
	r.NPSH = s.npsh(st.total)
	return r
}

// tees marches the heads from the pump out.
func (n *network) tees(st *state) []float64 {
	h := make([]float64, len(st.q))
	h[n.feed] = st.sup
	for i := n.feed + 1; i < len(h); i++ {
		h[i] = h[i-1] - st.sh[i-1]
	}
	for i := n.feed - 1; i >= 0; i-- {
		h[i] = h[i+1] - st.sh[i]
	}
	return h
}

// massError is the greatest misfit of flow at a tee.
func (n *network) massError(st *state) measure.Flow {
	most := 0.0
	for i, q := range st.q {
		in, out := st.total, q
		if i > 0 {
			if i > n.feed {
				in = st.sq[i-1]
			} else {
				out += st.sq[i-1]
			}
		}
		if i < len(st.sq) {
			if i < n.feed {
				in = st.sq[i]
			} else {
				out += st.sq[i]
			}
		}
		most = math.Max(most, math.Abs(in-out))
	}
	return flowOf(most)
}

func (p Pump) point(w sea.Water, q float64) PumpPoint {
	h, _ := p.Curve.at(q)
	pt := PumpPoint{
		Flow: flowOf(q), Head: headOf(h), Water: measure.Power(float64(w.Density) * gravity * q * h),
		Estimated: p.Curve.Estimated(), Beyond: p.Curve.Beyond(flowOf(q)),
	}
	if pt.Efficiency = p.efficiencyAt(q); pt.Efficiency > 0 && pt.Water > 0 {
		motor := p.Motor
		if motor == 0 {
			motor = 1
		}
		pt.Shaft = pt.Water / measure.Power(pt.Efficiency)
		pt.Input = pt.Shaft / measure.Power(motor)
	}
	return pt
}
