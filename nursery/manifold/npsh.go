package manifold

import (
	"math"

	"silowright/geometry/measure"
)

// standardAir is the standard atmosphere in Pa (CGPM 1954).
const standardAir = 101325.0

// NPSH is the net positive suction head: what stands at the pump's inlet above
// the pressure at which the water boils.
type NPSH struct {
	Available measure.Length
	// Required is off the pump's curve and Margin what is over it; both hold
	// only when Known.
	Required, Margin measure.Length
	Known            bool
	// Ends is the flow of the last point told of what the pump requires, when
	// the pump draws more; else 0. Past it Required goes on straight, as a rule
	// too low, for the curve steepens.
	Ends measure.Flow
	// Lift is how far the pump stands above the source, under 0 when flooded.
	Lift measure.Length
}

// NPSHAt is the net positive suction head when the pump draws q: (Pair −
// Pvapour)/ρg + source − pump − losses − (α − 1)V²/2g (Çengel & Cimbala,
// section 14-2 and example 14-3). An error names the input at fault.
func (s System) NPSHAt(q measure.Flow) (NPSH, error) {
	if err := checkWater(s.Water); err != nil {
		return NPSH{}, err
	}
	if err := s.Suction.check(); err != nil {
		return NPSH{}, err
	}
	if !within(q.M3S(), 0, maxFlow) {
		return NPSH{}, badFlow("flow", q)
	}
	if len(s.Pump.NPSHRequired) > 0 {
		if err := checkNPSH(s.Pump.NPSHRequired); err != nil {
			return NPSH{}, err
		}
	}
	return s.npsh(q.M3S()), nil
}

func (s System) npsh(q float64) NPSH {
	u := s.Suction
	air := float64(u.Air)
	if air == 0 {
		air = standardAir
	}
	h := (air-float64(s.Water.Vapour))/(float64(s.Water.Density)*gravity) + (u.Source - u.Pump).Metres()
	if u.Pipe.Bore != 0 {
		p := u.Pipe
		p.K += u.Strainer + u.FootValve
		l := newLoss(p, s.Water)
		lost, _ := l.at(q)
		v := q / l.area
		h -= lost + (math.Max(u.Alpha, 1)-1)*v*v/(2*gravity)
	}
	n := NPSH{Available: headOf(h), Lift: u.Pump - u.Source}
	if c := s.Pump.NPSHRequired; len(c) > 1 {
		x, y := make([]float64, len(c)), make([]float64, len(c))
		for i, p := range c {
			x[i], y[i] = p.Flow.M3S(), p.Head.Metres()
		}
		sp := newSpline(x, y)
		v := y[0]
		if q > x[0] {
			v, _ = sp.at(q)
		}
		n.Required, n.Known = headOf(v), true
		if last := x[len(x)-1]; q > last*(1+1e-9) {
			n.Ends = flowOf(last)
		}
		n.Margin = n.Available - n.Required
	}
	return n
}
