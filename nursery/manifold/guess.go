package manifold

import "math"

// guess starts the laterals that are on. From one flow for all, every loss is
// made a straight line through nothing and its last point and the tree solved
// over, each flow going to the mean of old and new; those that would run
// backwards are closed on the way and opened again when their tee has head for
// it. A handful of such rounds finds which silos get water, where Newton's
// method would go from kink to kink.
func (n *network) guess(s *state, count int) {
	first := n.alike(count)
	for i := range n.lat {
		s.q[i] = 0
		if l := &n.lat[i]; !l.off {
			h, _ := n.at(i, first)
			l.stiff = 100 * (h - l.still + 1e-6) / first
			s.q[i] = first
		}
	}
	d := newStep(len(s.q))
	n.fill(s)
	calm := 0
	for range 40 {
		turned, moved := n.round(s, d, first)
		if calm++; turned > 0 || moved > 0.3 {
			calm = 0
		}
		if calm == 2 || n.bad != 0 {
			break
		}
	}
	for i := range n.lat {
		// d.a holds the tees' heads: a silo that asks more starts in balance
		// on the far side of its kink.
		if l := &n.lat[i]; !l.off && s.q[i] <= 0 {
			s.q[i] = math.Min(d.a[i]-l.still, -1e-9) / l.stiff
		}
	}
}

// round is one such round; it leaves the tees' heads in d.a and returns how
// many laterals it closed or opened and the greatest change of a flow.
func (n *network) round(s *state, d *step, first float64) (turned int, moved float64) {
	last := len(s.q) - 1
	line := func(h, slope, q float64) float64 {
		if q = math.Abs(q); q > 1e-9*first {
			return math.Abs(h) / q
		}
		return slope
	}
	for i := range s.q {
		d.a[i], d.b[i], d.q[i] = 0, 0, 0
		if l := &n.lat[i]; !l.off && s.q[i] > 0 {
			d.q[i] = math.Max((s.h[i]-l.still)/s.q[i], 1e-9*l.stiff)
			d.b[i] = 1 / d.q[i]
			d.a[i] = -l.still / d.q[i]
		}
	}
	for i := range s.sq {
		s.sr[i] = line(s.sh[i], s.sr[i], s.sq[i])
	}
	for i := last; i > n.feed; i-- {
		d.fold(i, i-1, 0, s.sr[i-1])
	}
	for i := 0; i < n.feed; i++ {
		d.fold(i, i+1, 0, s.sr[i])
	}
	f := n.feed
	head := (s.sup + s.dsup*(d.a[f]-s.total)) / (1 - s.dsup*d.b[f])
	turn := func(i int, head float64) {
		d.a[i] = head
		l := &n.lat[i]
		if l.off {
			return
		}
		if s.q[i] <= 0 {
			if head > l.still {
				turned++
				s.q[i] = 0.1 * first
			}
			return
		}
		q := (head - l.still) / d.q[i]
		if q <= 0 {
			turned++
			s.q[i] = 0
			return
		}
		q = (q + s.q[i]) / 2
		moved = math.Max(moved, math.Abs(q-s.q[i])/q)
		s.q[i] = q
	}
	at := head
	turn(f, at)
	for i := f + 1; i <= last; i++ {
		at = (at - s.sr[i-1]*d.a[i]) / (1 + d.b[i]*s.sr[i-1])
		turn(i, at)
	}
	at = head
	for i := f - 1; i >= 0; i-- {
		at = (at - s.sr[i]*d.a[i]) / (1 + d.b[i]*s.sr[i])
		turn(i, at)
	}
	n.fill(s)
	return turned, moved
}

// alike is the one flow at which, taken by all laterals that are on, the one
// that asks least would take what the pump gives.
func (n *network) alike(count int) float64 {
	best := -1
	for i := range n.lat {
		if !n.lat[i].off && (best < 0 || n.lat[i].still < n.lat[best].still) {
			best = i
		}
	}
	low, high := 0.0, maxFlow
	for range 200 {
		mid := low + (high-low)/2
		if low > 0 && high > 4*low {
			mid = math.Sqrt(low * high)
		} else if low == 0 {
			mid = high / 4
		}
		have, _ := n.supply(mid * float64(count))
		ask, _ := n.at(best, mid)
		if ask < have {
			low = mid
		} else {
			high = mid
		}
		if high-low < 1e-3*high || high < 1e-15 {
			break
		}
	}
	return high
}
