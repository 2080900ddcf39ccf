package manifold

import (
	"errors"
	"math"
)

// Steady flow is the one low point of a convex function of the flows (the
// content of Millar, Phil. Mag. 42, 1951): its gradient is the misfit of
// energy, its curvature the slopes of the losses. Newton's method on a tree
// costs one sweep from the dead ends to the pump and one back. A step that
// overshoots the low point along its own line is cut, so that it always ends.

const (
	mostSteps = 2000
	settled   = 1e-13 // of each flow
)

var errUnsettled = errors.New("laterals: the flows do not settle; hint: look for a silo whose head falls as its flow rises, or a size that is far out")

// state is a set of flows with all that follows from it.
type state struct {
	q, h, r    []float64 // laterals: flow, head asked, slope
	sq, sh, sr []float64 // segments, flow positive away from the feed
	total      float64
	sup, dsup  float64
}

func newState(n int) *state {
	b := make([]float64, 3*n+3*(n-1))
	cut := func(k int) []float64 { c := b[:k:k]; b = b[k:]; return c }
	return &state{q: cut(n), h: cut(n), r: cut(n), sq: cut(n - 1), sh: cut(n - 1), sr: cut(n - 1)}
}

// fill reckons everything from the lateral flows; mass is kept by summing.
func (n *network) fill(s *state) {
	last := len(s.q) - 1
	s.total = 0
	run := 0.0
	for i := last; i > n.feed; i-- {
		run += s.q[i]
		s.sq[i-1] = run
	}
	s.total = run
	run = 0
	for i := 0; i < n.feed; i++ {
		run += s.q[i]
		s.sq[i] = run
	}
	s.total += run + s.q[n.feed]
	for i := range s.sq {
		s.sh[i], s.sr[i] = n.seg[i].at(s.sq[i])
	}
	s.sup, s.dsup = n.supply(s.total)
	for i := range s.q {
		if !n.lat[i].off {
			s.h[i], s.r[i] = n.at(i, s.q[i])
		}
	}
	// A lateral that is off asks what its tee has; set outwards from the feed.
	if n.lat[n.feed].off {
		s.h[n.feed] = s.sup
	}
	for i := n.feed + 1; i <= last; i++ {
		if n.lat[i].off {
			s.h[i] = s.h[i-1] - s.sh[i-1]
		}
	}
	for i := n.feed - 1; i >= 0; i-- {
		if n.lat[i].off {
			s.h[i] = s.h[i+1] - s.sh[i]
		}
	}
}

// step is a Newton step: the change of each flow.
type step struct {
	q, sq, a, b []float64
	total       float64
}

func newStep(n int) *step {
	m := make([]float64, 4*n)
	return &step{q: m[:n], sq: m[n : 2*n-1], a: m[2*n : 3*n], b: m[3*n:]}
}

// newton solves the system made straight at s. A tee's change of outflow is
// a + b·δ, δ the change of its head.
func (n *network) newton(s *state, d *step) {
	last := len(s.q) - 1
	floor := 1e-12 * (math.Abs(s.sup) + math.Abs(n.source) + 1) / (math.Abs(s.total) + 1e-9)
	for i := range s.q {
		d.a[i], d.b[i] = 0, 0
		if !n.lat[i].off {
			d.b[i] = 1 / math.Max(s.r[i], floor)
		}
	}
	for i := last; i > n.feed; i-- {
		d.fold(i, i-1, s.h[i-1]-s.h[i]-s.sh[i-1], s.sr[i-1])
	}
	for i := 0; i < n.feed; i++ {
		d.fold(i, i+1, s.h[i+1]-s.h[i]-s.sh[i], s.sr[i])
	}
	f := n.feed
	delta := (s.sup - s.h[f] + s.dsup*d.a[f]) / (1 - s.dsup*d.b[f])
	d.total = d.a[f] + d.b[f]*delta
	up := delta
	d.q[f] = up
	for i := f + 1; i <= last; i++ {
		m := s.h[i-1] - s.h[i] - s.sh[i-1]
		d.sq[i-1] = (d.a[i] + d.b[i]*(up+m)) / (1 + d.b[i]*s.sr[i-1])
		up += m - s.sr[i-1]*d.sq[i-1]
		d.q[i] = up
	}
	up = delta
	for i := f - 1; i >= 0; i-- {
		m := s.h[i+1] - s.h[i] - s.sh[i]
		d.sq[i] = (d.a[i] + d.b[i]*(up+m)) / (1 + d.b[i]*s.sr[i])
		up += m - s.sr[i]*d.sq[i]
		d.q[i] = up
	}
	// Until here d.q held each tee's change of head.
	for i := range d.q {
		if n.lat[i].off {
			d.q[i] = 0
			continue
		}
		d.q[i] /= math.Max(s.r[i], floor)
	}
}

// fold adds tee i, seen through its segment, to the tee before it.
func (d *step) fold(i, to int, misfit, slope float64) {
	k := 1 + d.b[i]*slope
	d.a[to] += (d.a[i] + d.b[i]*misfit) / k
	d.b[to] += d.b[i] / k
}

// along is the slope of the content along d at s, under 0 while d still leads
// down.
func (n *network) along(s *state, d *step) float64 {
	sum := -s.sup * d.total
	for i := range d.q {
		if !n.lat[i].off {
			sum += s.h[i] * d.q[i]
		}
	}
	for i := range d.sq {
		sum += s.sh[i] * d.sq[i]
	}
	return sum
}

// size is the greatest change of a flow against that flow. A flow under a
// millionth of the mean counts as that, and a change too small to show in the
// last digits of the heads as none.
func (n *network) size(s *state, d *step) float64 {
	least := 1e-6*math.Abs(s.total)/float64(len(s.q)) + 1e-18
	digits := 16 * 0x1p-52 * (math.Abs(s.sup) + math.Abs(n.source) + math.Abs(s.h[n.feed]) + 1)
	most := 0.0
	count := func(q, dq, slope float64) {
		dq = math.Abs(dq)
		if !(dq*slope <= digits && dq <= 1e-6*math.Abs(s.total)) {
			most = math.Max(most, dq/(math.Abs(q)+least))
		}
	}
	count(s.total, d.total, -s.dsup)
	for i, q := range s.q {
		count(q, d.q[i], s.r[i])
	}
	for i, q := range s.sq {
		count(q, d.sq[i], s.sr[i])
	}
	return most
}

// descend goes from s to the answer for the laterals that are on.
func (n *network) descend(s *state) (*state, error) {
	d, next := newStep(len(s.q)), newState(len(s.q))
	n.fill(s)
	before := math.Inf(1)
	for k := range mostSteps {
		n.newton(s, d)
		size := n.size(s, d)
		if math.IsNaN(size) || n.bad != 0 {
			break
		}
		if size <= settled || size < 1e-9 && size >= before {
			return s, nil
		}
		before = size
		n.search(s, next, d, size, k)
		s, next = next, s
	}
	if err := n.err(); err != nil {
		return nil, err
	}
	return nil, errUnsettled
}

// search sets next to s and as much of the step d as leads down. The whole step
// is taken when the content falls to its end, or nearly: after the k-th step
// nearly will not do, for past a sharp bend the content may have risen all the
// same. Else the low point along d is closed in on from both sides.
func (n *network) search(s, next *state, d *step, size float64, k int) {
	start := n.along(s, d)
	past := -0.2 * start
	if k > 30 {
		past = 0
	}
	low, high := 0.0, math.Inf(1)
	atLow, atHigh, t := start, 0.0, 1.0
	for range 60 {
		for i := range s.q {
			next.q[i] = s.q[i] + t*d.q[i]
		}
		n.fill(next)
		at := n.along(next, d)
		switch {
		case size*t < 1e-6 || at <= past && (t == 1 || at >= 0.5*start):
			return
		case at <= 0:
			low, atLow = t, at
		default:
			high, atHigh = t, at
		}
		part := -atLow / (atHigh - atLow)
		t = low + (high-low)*math.Min(math.Max(part, 0.1), 0.9)
	}
}

// solve finds the flows. A silo that would run backwards into the manifold
// falls until it stands in balance, so in steady flow it gets nothing; closing
// it lowers every head, so a silo once found starved stays so, and the rounds
// end.
func (n *network) solve() (*state, error) {
	s := newState(len(n.lat))
	for {
		count, lowest := n.active()
		if err := n.err(); err != nil {
			return nil, err
		}
		still, _ := n.supply(0)
		if count == 0 || still <= lowest {
			for i := range n.lat {
				n.lat[i].off = true
				s.q[i] = 0
			}
			n.fill(s)
			return s, n.err()
		}
		if s.total <= 0 {
			n.guess(s, count)
		}
		var err error
		if s, err = n.descend(s); err != nil {
			return nil, err
		}
		clean := true
		for i := range s.q {
			if s.q[i] < 0 {
				n.lat[i].off, s.q[i], clean = true, 0, false
			}
		}
		if clean {
			return s, nil
		}
	}
}
