package work

import (
	"slices"
)

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

// lay lays a build out in the fewest days it can find, at most limit. It
// returns nil when there is none.
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
	var leadEnd ticks = never
	for _, r := range s.rules() {
		st := try(r, limit)
		if best != nil && best.proven {
			return best
		}
		if st != nil && st.finish() < leadEnd {
			lead, leadEnd = r, st.finish()
		}
	}
	if leadEnd != never && s.jobs() <= searchJobs {
		s.exchange(lead, leadEnd, limit, try, func() bool { return best.proven })
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

// rules are the orders tried first. A stage is the more pressing the longer
// the time from its begin to the silo's last day (the critical path), the
// closer it is to the end (the least silos in hand), or by its part.
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
	part := func(first string) func(a, b int) int {
		return func(a, b int) int { return side(s.stages[a].part, first) - side(s.stages[b].part, first) }
	}
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
	var out []rule
	for _, o := range [][]int{
		order(clamp, longest),
		order(longest),
		order(part(PipeSilo), longest),
		order(part(DrumSilo), longest),
		order(part(PipeSilo), last),
		order(last),
	} {
		out = append(out, rule{order: o, lots: true}, rule{order: o})
	}
	return out
}

// clampRank puts clamps that come off first, then those that go on.
func (s *shop) clampRank(k int) int {
	switch g := s.stages[k]; {
	case g.frees:
		return 0
	case g.takes:
		return 1
	}
	return 2
}

func side(part, first string) int {
	if part == first {
		return 0
	}
	return 1
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
func (s *shop) exchange(lead rule, end ticks, limit int, try func(rule, int) *shopState, enough func() bool) {
	n := len(lead.order)
	seed := uint32(1)
	draw := func(n int) int { // a linear congruential sequence (Numerical Recipes' constants)
		seed = seed*1664525 + 1013904223
		return int(uint64(seed) * uint64(n) >> 32)
	}
	for i := 0; i < searchRuns && n > 1 && !enough(); i++ {
		r := rule{order: slices.Clone(lead.order), lots: i%4 == 3}
		for range 1 + draw(3) {
			a, b := draw(n), draw(n)
			r.order[a], r.order[b] = r.order[b], r.order[a]
		}
		if st := try(r, limit); st != nil && st.finish() <= end {
			lead, end = r, st.finish()
		}
	}
}
