package manifold

import (
	"fmt"
	"math"
)

// network is a System made ready: SI floats and coefficients.
type network struct {
	curve   Curve
	source  float64
	suction *loss
	main    loss
	seg     []loss
	lat     []lateral
	feed    int
	bad     int // 1 + index of a lateral whose silo's head is no number
}

// lateral is one Lateral in SI: h = rise + silo(q) + hose(q) + k·q².
type lateral struct {
	hose  loss
	valve float64 // of the valve alone, m per (m³/s)²
	rest  float64 // branch and barb
	perK  float64 // of one K in the valve's bore
	rise  float64
	silo  SiloHead
	off   bool // shut, or found starved
	still float64
	stiff float64 // slope against flow out of the silo, m per m³/s
	wideK float64
}

func newNetwork(s System) *network {
	n := &network{
		curve: s.Pump.Curve, source: s.Suction.Source.Metres(), feed: s.Feed,
		main: newLoss(s.Main, s.Water), seg: make([]loss, len(s.Segments)), lat: make([]lateral, len(s.Laterals)),
	}
	if s.Suction.Pipe.Bore != 0 {
		p := s.Suction.Pipe
		p.K += s.Suction.Strainer + s.Suction.FootValve
		l := newLoss(p, s.Water)
		n.suction = &l
	}
	for i, p := range s.Segments {
		n.seg[i] = newLoss(p, s.Water)
	}
	for i, l := range s.Laterals {
		vb, bb := l.Valve.Bore, l.Barb.Bore
		if vb == 0 {
			vb = l.Hose.Bore
		}
		if bb == 0 {
			bb = l.Hose.Bore
		}
		n.lat[i] = lateral{
			hose: newLoss(l.Hose, s.Water), perK: minor(1, vb), valve: minor(l.Valve.K, vb),
			rest: minor(l.Branch, l.Hose.Bore) + minor(l.Barb.K, bb),
			rise: l.Rise.Metres(), silo: l.Silo, off: l.Valve.Shut, wideK: l.Valve.wide(),
		}
		n.lat[i].still, _ = n.need(i, 0)
	}
	return n
}

// beyondAny is a head, m, that stands for all that no pump reaches.
const beyondAny = 1e12

// need is the head asked by silo i at its hose's end, rise and all.
func (n *network) need(i int, q float64) (h, slope float64) {
	l := &n.lat[i]
	if l.silo == nil {
		return l.rise, 0
	}
	hl, m := l.silo.Head(flowOf(q))
	h, slope = hl.Metres(), m*1e6
	if h > beyondAny {
		return l.rise + beyondAny, 0
	}
	if !(h >= -beyondAny) || math.IsNaN(slope) {
		n.bad = i + 1
		return l.rise, 0
	}
	return l.rise + h, math.Min(math.Max(slope, 0), 1e15)
}

// at is the head that lateral i asks at its tee. Flow out of a silo is given a
// steep straight line: it is only a step on the way to finding it starved.
func (n *network) at(i int, q float64) (h, slope float64) {
	l := &n.lat[i]
	if q < 0 {
		return l.still + l.stiff*q, l.stiff
	}
	h, slope = n.need(i, q)
	hp, mp := l.hose.at(q)
	k := l.valve + l.rest
	return h + hp + k*q*q, slope + mp + 2*k*q
}

// supply is the head that reaches the tee Feed when the pump gives q.
func (n *network) supply(q float64) (h, slope float64) {
	h, slope = n.curve.at(q)
	m, dm := n.main.at(q)
	h, slope = n.source+h-m, slope-dm
	if n.suction != nil {
		s, ds := n.suction.at(q)
		h, slope = h-s, slope-ds
	}
	return h, slope
}

// err is what went wrong with a silo's own head, if anything.
func (n *network) err() error {
	if n.bad == 0 {
		return nil
	}
	return fmt.Errorf("laterals.%d.silo: the head it asks is no number at some flow; hint: look for a size that is far out", n.bad)
}

// active counts the laterals that may flow and the lowest head any asks.
func (n *network) active() (count int, lowest float64) {
	lowest = math.Inf(1)
	for i := range n.lat {
		if !n.lat[i].off {
			count++
			lowest = math.Min(lowest, n.lat[i].still)
		}
	}
	return count, lowest
}
