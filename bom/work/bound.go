package work

import "fmt"

// bound is a number of days that no order of the work can beat.
type bound struct {
	days int
	why  string
}

func (b *bound) raise(days int, why func() string) {
	if days > b.days {
		b.days, b.why = days, why()
	}
}

// least is the largest of four bounds:
//
//   - all work, at the crew's full time a day;
//   - one silo of each part alone, its work and what it waits for;
//   - the bound of the one-machine problem with heads and tails (J. Carlier,
//     1982): all silos through a run of stages need at least the time till the
//     first can begin, the run's work, and what the last one still has before it
//     from its end on. It is taken for every run of stages of one part, and for
//     every pair of runs of both that begin at the beginning;
//   - the clamps in turn: the silo that gets a clamp for the second time waits
//     for the first.
func (s *shop) least() bound {
	var b bound
	b.raise(s.daysTo(s.after(0, s.toDo())), func() string {
		return fmt.Sprintf("all the work, %s a day with a crew of %d", Minutes(float64(s.day)/float64(minute)).Text(), s.crew)
	})
	for _, c := range s.chains {
		s.boundRuns(&b, c)
		s.boundClamps(&b, c)
	}
	if len(s.chains) == 2 {
		s.boundBoth(&b, s.chains[0], s.chains[1])
	}
	return b
}

// boundRuns takes every run of stages of one chain.
func (s *shop) boundRuns(b *bound, c []int) {
	starts := s.starts(c)
	for i := range c {
		work := ticks(0)
		for j := i; j < len(c); j++ {
			g := s.stages[c[j]]
			work += ticks(g.n) * g.ticks
			days := s.daysTo(s.alone(c, j, s.after(starts[i], work)))
			b.raise(days, func() string {
				if g.n == 1 {
					return "one " + g.part + ", its work and what it waits for"
				}
				return fmt.Sprintf("all %ss as far as %q, and what the last of them still waits for", g.part, g.name)
			})
		}
	}
}

// boundBoth takes all pairs of runs from the beginning.
func (s *shop) boundBoth(b *bound, c, d []int) {
	one := ticks(0)
	for i := range c {
		one += ticks(s.stages[c[i]].n) * s.stages[c[i]].ticks
		both := one
		for j := range d {
			both += ticks(s.stages[d[j]].n) * s.stages[d[j]].ticks
			t := s.after(0, both)
			end := min(s.alone(c, i, t), s.alone(d, j, t))
			b.raise(s.daysTo(end), func() string {
				g, h := s.stages[c[i]], s.stages[d[j]]
				return fmt.Sprintf("%ss as far as %q and %ss as far as %q, and what the last of them still waits for", g.part, g.name, h.part, h.name)
			})
		}
	}
}

// boundClamps takes the clamps in turn.
func (s *shop) boundClamps(b *bound, c []int) {
	takes, frees := -1, -1
	for i, k := range c {
		if s.stages[k].takes {
			takes = i
		}
		if s.stages[k].frees {
			frees = i
		}
	}
	if takes < 0 || frees < takes {
		return
	}
	g, off := s.stages[c[takes]], s.stages[c[frees]]
	rounds := (g.n + s.clamps - 1) / s.clamps
	last := ticks(g.n - (rounds-1)*s.clamps) // silos of the last round
	// The first silo of each round follows the first of the one before.
	t := s.after(s.starts(c)[takes], g.ticks)
	all := s.after(s.starts(c)[takes], last*g.ticks)
	for range rounds - 1 {
		ends := s.ends(c[:frees+1], takes, t)
		trim := s.begin1(c, frees, takes, ends)
		// As many clamps come off as go on in the last round, all of them after
		// the first has begun to.
		all = s.after(trim, last*(off.ticks+g.ticks))
		t = s.after(s.start(ends[frees], g.ticks, g.whole), g.ticks)
	}
	end := max(s.alone(c, takes, t), s.alone(c, takes, all))
	b.raise(s.daysTo(end), func() string {
		return fmt.Sprintf("%d pipe silos on %d clamps, %d after each other", g.n, s.clamps, rounds)
	})
}

// starts are the earliest begins of a chain's stages for a silo alone.
func (s *shop) starts(c []int) []ticks {
	first := s.stages[c[0]]
	ends := s.ends(c, 0, s.after(s.start(0, first.ticks, first.whole), first.ticks))
	out := make([]ticks, len(c))
	for i := range c[1:] {
		out[i+1] = s.begin1(c, i+1, 0, ends)
	}
	return out
}

// alone is when a silo that ended stage i of a chain at t ends the last one,
// if it never waits for the crew.
func (s *shop) alone(c []int, i int, t ticks) ticks {
	ends := s.ends(c, i, t)
	return ends[len(ends)-1]
}

// ends are the ends of a chain's stages for a silo alone that ended stage i at
// t. What it waits for from before is taken as over.
func (s *shop) ends(c []int, i int, t ticks) []ticks {
	out := make([]ticks, len(c))
	out[i] = t
	for j := i + 1; j < len(c); j++ {
		out[j] = s.after(s.begin1(c, j, i, out), s.stages[c[j]].ticks)
	}
	return out
}

// begin1 is when a silo alone can begin stage j, given the ends of the stages
// from i on.
func (s *shop) begin1(c []int, j, i int, ends []ticks) ticks {
	g := s.stages[c[j]]
	at := ticks(0)
	for _, w := range g.waits {
		// a chain's stages lie side by side in the shop
		if p := w.on - c[0]; p >= i {
			at = max(at, ends[p]+w.hold)
		}
	}
	return s.start(at, g.ticks, g.whole)
}
