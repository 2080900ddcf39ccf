package work

import "slices"

// The search's limits; they count steps, so that the answer is the same on any
// machine.
const (
	searchJobs = 2000    // larger builds are laid out by the rules alone
	searchRuns = 200     // orders tried by exchange
	exactJobs  = 40      // builds that are searched through
	exactNodes = 100_000 // begun orders looked at
)

// laid is a build laid out.
type laid struct {
	shop   *shop
	state  *shopState
	days   int
	proven bool
}

// lay lays a build out in the fewest days it can find. A large build is given
// up past limit; nil says that nothing was found. What is found up to limit does
// not depend on it, so that Plan can rely on what fewer people would find.
func (s *shop) lay(b bound, limit int) *laid {
	var best *laid
	try := func(r rule, most int) *shopState {
		st, ok := s.run(r, most)
		if !ok {
			return nil
		}
		if d := s.daysTo(st.finish()); best == nil || d < best.days {
			best = &laid{shop: s, state: st, days: d, proven: d <= b.days}
		}
		return st
	}
	most := func() int {
		if best == nil {
			return limit
		}
		return best.days - 1
	}
	var lead rule
	leadEnd := never
	small := s.jobs() <= searchJobs
	if small {
		limit = MaxDays // the exchange starts from the same lead whatever is asked for
	}
	for _, r := range s.rules() {
		most := most()
		if small && best != nil {
			most = best.days // one that ends earlier on the same day is a better lead
		}
		st := try(r, most)
		if best != nil && best.proven {
			return best
		}
		if st != nil && st.finish() < leadEnd {
			lead, leadEnd = r, st.finish()
		}
	}
	if leadEnd != never && small {
		s.exchange(lead, leadEnd, try, func() (int, bool) { return best.days, best.proven })
	}
	if (best == nil || !best.proven) && s.jobs() <= exactJobs {
		st, all := s.exact(most())
		if st != nil {
			best = &laid{shop: s, state: st, days: s.daysTo(st.finish())}
		}
		if best != nil {
			best.proven = best.days <= b.days || all
		}
	}
	return best
}

// rules are the orders tried first, each with lots or without. A stage is the
// more pressing the longer the time from its begin to the silo's last day (the
// critical path); the clamps' stages and what they need go before that, or all
// of the pipe silos', or of the pipe silos first what is nearest its end.
func (s *shop) rules() []rule {
	n := len(s.stages)
	tail := make([]ticks, n)
	place := make([]int, n)
	for _, c := range s.chains {
		for i, k := range c {
			place[k] = i
		}
		for i := len(c) - 1; i >= 0; i-- {
			for j := i + 1; j < len(c); j++ {
				for _, w := range s.stages[c[j]].waits {
					if w.on == c[i] {
						tail[c[i]] = max(tail[c[i]], w.hold+tail[c[j]])
					}
				}
			}
			tail[c[i]] += s.stages[c[i]].ticks
		}
	}
	longest := func(a, b int) int { return cmp64(tail[b], tail[a]) }
	last := func(a, b int) int { return place[b] - place[a] }
	pipe := func(a, b int) int { return drumLast(s.stages[a].part) - drumLast(s.stages[b].part) }
	clamp := func(a, b int) int { return s.clampRank(a) - s.clampRank(b) }
	order := func(by ...func(a, b int) int) []int {
		out := make([]int, n)
		for i := range out {
			out[i] = i
		}
		slices.SortStableFunc(out, func(a, b int) int {
			for _, f := range by {
				if c := f(a, b); c != 0 {
					return c
				}
			}
			return 0
		})
		return out
	}
	fed, long, pipes, few := order(clamp, longest), order(longest), order(pipe, longest), order(pipe, last)
	return []rule{{fed, true}, {fed, false}, {long, false}, {pipes, true}, {pipes, false}, {few, true}}
}

// clampRank puts clamps that come off first, then those that go on, then what
// has to be ready for them.
func (s *shop) clampRank(k int) int {
	switch g := s.stages[k]; {
	case g.frees:
		return 0
	case g.takes:
		return 1
	}
	for _, c := range s.chains {
		if k < c[0] || k > c[len(c)-1] {
			continue
		}
		for _, later := range c[k-c[0]:] {
			if s.stages[later].takes {
				return 2
			}
		}
	}
	return 3
}

func drumLast(part string) int {
	if part == DrumSilo {
		return 1
	}
	return 0
}

func cmp64(a, b ticks) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// exchange climbs from the best rule by exchanging two stages in its order.
func (s *shop) exchange(lead rule, end ticks, try func(rule, int) *shopState, best func() (days int, proven bool)) {
	n := len(lead.order)
	seed := uint32(1)
	draw := func(n int) int { // a linear congruential sequence (Numerical Recipes' constants)
		seed = seed*1664525 + 1013904223
		return int(uint64(seed) * uint64(n) >> 32)
	}
	for i := 0; i < searchRuns && n > 1; i++ {
		days, proven := best()
		if proven {
			return
		}
		r := rule{order: slices.Clone(lead.order), lots: i%4 == 3}
		for range 1 + draw(3) {
			a, b := draw(n), draw(n)
			r.order[a], r.order[b] = r.order[b], r.order[a]
		}
		if st := try(r, days); st != nil && st.finish() <= end {
			lead, end = r, st.finish()
		}
	}
}
