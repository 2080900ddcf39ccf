package manifold

import (
	"fmt"
	"math"

	"silowright/geometry/measure"
)

// Setting is how one valve is set.
type Setting struct {
	Name string
	// K is what the valve must have for the target flow, on the speed through
	// its bore. It is under Wide when the silo cannot be given that flow.
	K, Wide float64
	// Open is the fraction of a ball valve's travel that has K; InTable is
	// whether the ball valve's table reaches that far. A valve whose Wide is
	// not the ball valve's has no opening: Open is 0 and InTable false.
	Open    float64
	InTable bool
	// Throttle is whether the valve must be closed further than it is set.
	Throttle bool
	// Possible is whether the valve can be set so; if not, Short is the head
	// that is wanting at the tee with the valve wide open.
	Possible bool
	Short    measure.Length
	Shut     bool
}

// Throttling is a set of valve settings that gives every open silo one flow.
type Throttling struct {
	Flow     measure.Flow // of each silo that is not shut
	Pump     PumpPoint
	NPSH     NPSH
	Settings []Setting // in the order of the laterals
	// Possible is whether every valve can be set so.
	Possible bool
}

// Throttle finds what each valve must be set to so that every silo that is not
// shut gets the flow each. With all flows known each head follows from the
// pump outwards, so the answer is exact and no search: what head a tee has over
// what its silo, hose and barb ask is what its valve must take. An error names
// the input at fault; a flow that cannot be had is no error but not Possible.
func Throttle(s System, each measure.Flow) (Throttling, error) {
	if err := s.check(); err != nil {
		return Throttling{}, err
	}
	if !within(each.M3S(), minFlow, maxFlow) {
		return Throttling{}, badFlow("flow", each)
	}
	n := newNetwork(s)
	t := n.throttle(s, each.M3S())
	return t, n.err()
}

// MostEven is the greatest flow that every silo that is not shut can have at
// once, the valve of the worst of them wide open; Throttle gives the settings.
// It is 0 when some silo stands too high for any. An error names the input.
func MostEven(s System) (measure.Flow, error) {
	if err := s.check(); err != nil {
		return 0, err
	}
	n := newNetwork(s)
	count, _ := n.active()
	if count == 0 {
		return 0, fmt.Errorf("laterals: every valve is shut; hint: open one")
	}
	st := newState(len(n.lat))
	most := mostOver(func(q float64) float64 { return n.spare(st, q) }, maxFlow/float64(count))
	return flowOf(most), n.err()
}

// mostOver is the greatest flow under high at which spare, which falls with it,
// is still not negative; 0 when that is under minFlow. It comes down by
// quarters, halves the rest in logarithms, and then takes steps of false
// position with one end's value halved when the other moved twice (the Illinois
// rule: Dowell and Jarratt, BIT 11, 1971), or of halving where those stay slow.
func mostOver(spare func(q float64) float64, high float64) float64 {
	low, atLow, atHigh := 0.0, 0.0, 0.0
	moved, slow := 0, 0 // +1: low was moved last, −1: high; slow: steps that did not halve the rest
	for low < high*(1-1e-15) && high > minFlow {
		var mid float64
		switch near := 4e-16 * high; {
		case low == 0:
			mid = high / 4
		case high > 4*low:
			mid = math.Sqrt(low * high)
		case slow < 3 && atHigh < atLow:
			mid = low + (high-low)*atLow/(atLow-atHigh)
			mid = math.Min(math.Max(mid, low+near), high-near)
		default:
			mid, slow = low+(high-low)/2, 0
		}
		if mid <= low || mid >= high {
			break
		}
		rest := high - low
		if f := spare(mid); f >= 0 {
			low, atLow = mid, f
			if moved > 0 {
				atHigh /= 2
			}
			moved = 1
		} else {
			high, atHigh = mid, f
			if moved < 0 {
				atLow /= 2
			}
			moved = -1
		}
		if high-low > rest/2 {
			slow++
		}
	}
	return low
}

// even fills st with q in every lateral that is on and returns the tees' heads.
func (n *network) even(st *state, q float64) []float64 {
	for i := range st.q {
		st.q[i] = 0
		if !n.lat[i].off {
			st.q[i] = q
		}
	}
	n.fill(st)
	return n.tees(st)
}

// over is the head at tee over what lateral i asks at q without its valve.
func (n *network) over(i int, tee, q float64) float64 {
	need, _ := n.need(i, q)
	hose, _ := n.lat[i].hose.at(q)
	return tee - need - hose - n.lat[i].rest*q*q
}

// spare is the least head left over at any tee when all have q with their
// valves wide open.
func (n *network) spare(st *state, q float64) float64 {
	least := math.Inf(1)
	for i, tee := range n.even(st, q) {
		if l := &n.lat[i]; !l.off {
			least = math.Min(least, n.over(i, tee, q)-l.perK*l.wideK*q*q)
		}
	}
	return least
}

func (n *network) throttle(s System, q float64) Throttling {
	st := newState(len(n.lat))
	tees := n.even(st, q)
	t := Throttling{
		Flow: flowOf(q), Pump: s.Pump.point(s.Water, st.total), NPSH: s.npsh(st.total),
		Settings: make([]Setting, len(tees)), Possible: true,
	}
	for i, tee := range tees {
		l, v := &n.lat[i], s.Laterals[i].Valve
		set := Setting{Name: s.Laterals[i].Name, Wide: l.wideK, Shut: v.Shut, Possible: true}
		if !v.Shut {
			set.K = n.over(i, tee, q) / (l.perK * q * q)
			if set.K < l.wideK {
				// The last digits of the head may hide a valve that is just open.
				short := (l.wideK - set.K) * l.perK * q * q
				if short <= 1e-10*(1+math.Abs(tee)) {
					set.K = l.wideK
				} else {
					set.Possible, set.Short, t.Possible = false, headOf(short), false
				}
			}
			set.Throttle = set.K > v.K*(1+1e-6)+1e-9
			if set.Possible && l.wideK == ballOpen {
				set.Open, set.InTable = BallOpening(set.K)
			}
		}
		t.Settings[i] = set
	}
	return t
}

// WithSettings is the system with its valves set as t says. Valves that cannot
// be set so are left wide open.
func (s System) WithSettings(t Throttling) System {
	s.Laterals = append([]Lateral(nil), s.Laterals...)
	for i := range s.Laterals {
		if i < len(t.Settings) && !t.Settings[i].Shut {
			s.Laterals[i].Valve.K = math.Max(t.Settings[i].K, t.Settings[i].Wide)
		}
	}
	return s
}
