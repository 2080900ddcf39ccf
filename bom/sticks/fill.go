package sticks

import "math"

// bar is a number of sticks sawn alike.
type bar struct {
	st    int
	n     int64
	takes []int64
}

func cost(in *inst, bars []bar) int64 {
	c := int64(0)
	for _, b := range bars {
		c += b.n * in.st[b.st].price
	}
	return c
}

// state is what is still wanted and the sticks still there.
type state struct {
	d    []int64
	have []int64
}

func (in *inst) state() state {
	s := state{append([]int64(nil), in.d...), make([]int64, len(in.st))}
	for j := range in.st {
		s.have[j] = in.st[j].have
	}
	return s
}

func (s *state) done() bool {
	for _, d := range s.d {
		if d > 0 {
			return false
		}
	}
	return true
}

// times is how often the pattern can be sawn before a piece is cut in surplus.
func (s *state) times(st int, takes []int64) int64 {
	n := int64(math.MaxInt64)
	for i, a := range takes {
		if a > 0 {
			n = min(n, s.d[i]/a)
		}
	}
	if h := s.have[st]; h >= 0 {
		n = min(n, h)
	}
	return n
}

// saw takes n sticks of the pattern; pieces in surplus are not counted.
func (s *state) saw(st int, takes []int64, n int64) {
	for i, a := range takes {
		if a > 0 {
			s.d[i] = max(0, s.d[i]-a*n)
		}
	}
	if s.have[st] >= 0 {
		s.have[st] -= n
	}
}

// decreasing fills one stick with the longest pieces first.
func (s *state) decreasing(in *inst, st int, takes []int64) (used int64) {
	k := &in.st[st]
	clear(takes)
	long := false
	for i, w := range in.w {
		room := k.short
		if long || in.long[i] {
			room = k.room
		}
		if s.d[i] > 0 && room-used >= w {
			a := min(s.d[i], (room-used)/w)
			takes[i] = a
			used += a * w
			long = long || in.long[i]
		}
	}
	return used
}

// fill saws what is wanted stick by stick. With only ≥ 0 it takes that stock
// alone, first fit decreasing; else the stick whose pattern is cheapest for its
// worth, of all stocks, worths being u or, without, lengths.
func (in *inst) fill(s state, bars []bar, only int, u []int64, ks *knapsack) ([]bar, bool) {
	m := len(in.w)
	part := *in
	part.d = s.d
	try, best := make([]int64, m), make([]int64, m)
	for !s.done() {
		pick, rate := -1, math.Inf(1)
		if u != nil {
			ks.load(&part, u)
		}
		for j := range in.st {
			if s.have[j] == 0 || only >= 0 && j != only {
				continue
			}
			var worth float64
			if u == nil {
				worth = float64(s.decreasing(in, j, try))
			} else if ks.solve(&in.st[j], 0) {
				worth = float64(ks.value)
				copy(try, ks.best)
			}
			if worth <= 0 {
				continue
			}
			price := float64(in.st[j].price)
			r := price / worth
			if price == 0 {
				r = -worth
			}
			if r < rate {
				pick, rate = j, r
				copy(best, try)
			}
		}
		if pick < 0 {
			if u != nil { // pieces without worth are left
				return in.fill(s, bars, only, nil, ks)
			}
			return nil, false
		}
		n := s.times(pick, best)
		bars = append(bars, bar{pick, n, append([]int64(nil), best...)})
		s.saw(pick, best, n)
	}
	return bars, true
}

// tidy takes surplus pieces off the bars and, where a cheaper stick gives what
// is left on one, takes that.
func (in *inst) tidy(bars []bar) []bar {
	over := make([]int64, len(in.d))
	have := in.state().have
	for i := range over {
		over[i] = -in.d[i]
	}
	for _, b := range bars {
		for i, a := range b.takes {
			over[i] += a * b.n
		}
		if have[b.st] >= 0 {
			have[b.st] -= b.n
		}
	}
	var out []bar
	for k := len(bars) - 1; k >= 0; k-- {
		out = in.shed(bars[k], over, out)
	}
	bars = out[:0:0]
	for k := len(out) - 1; k >= 0; k-- {
		b := out[k]
		used, long, any := int64(0), false, false
		for i, a := range b.takes {
			used += a * in.w[i]
			long = long || a > 0 && in.long[i]
			any = any || a > 0
		}
		if !any {
			if have[b.st] >= 0 {
				have[b.st] += b.n
			}
			continue
		}
		for b.n > 0 {
			to := b.st
			for j := range in.st {
				if in.st[j].price < in.st[to].price && have[j] != 0 && in.st[j].allowed(used, long) {
					to = j
				}
			}
			n := b.n
			if to != b.st {
				if have[to] >= 0 {
					n = min(n, have[to])
					have[to] -= n
				}
				if have[b.st] >= 0 {
					have[b.st] += n
				}
			}
			bars = append(bars, bar{to, n, b.takes})
			b.n -= n
		}
	}
	return bars
}

// shed takes surplus pieces off one bar and appends what is left of it.
func (in *inst) shed(b bar, over []int64, out []bar) []bar {
	for b.n > 0 {
		// One stick loses what it can; as many lose the same as there is surplus.
		cut := append([]int64(nil), b.takes...)
		n, any := b.n, false
		for i, a := range b.takes {
			if off := min(a, over[i]); off > 0 {
				cut[i] -= off
				n = min(n, over[i]/off)
				any = true
			}
		}
		if !any {
			return append(out, b)
		}
		for i, a := range b.takes {
			over[i] -= (a - cut[i]) * n
		}
		out = append(out, bar{b.st, n, cut})
		b.n -= n
	}
	return out
}
