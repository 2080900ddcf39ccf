package work

import "slices"

// exact looks through the orders of a small build for one of at most limit
// days. all says that it looked through every order, so that when there is no
// such plan none exists, and that the plan found is the least.
//
// An order fixes the plan: each stage of a silo is begun as early as its waits,
// its clamp, the crew and the day let it. Begun orders are dropped when the
// work left, or one silo's stages left, end after the limit.
func (s *shop) exact(limit int) (best *shopState, all bool) {
	e := &exactSearch{shop: s, limit: limit, next: make([]int, len(s.stages)), ends: make([][]ticks, len(s.stages))}
	for i, g := range s.stages {
		e.ends[i] = make([]ticks, g.n)
	}
	e.jobs, e.left = s.jobs(), s.toDo()
	e.search(0)
	if e.best == nil {
		return nil, e.nodes < exactNodes
	}
	st := s.begin()
	for _, m := range e.best {
		st.t = m.at
		for st.next[m.stage] == m.silo {
			st.t = s.open(st.t)
			st.work(m.stage, 1)
		}
	}
	return st, e.nodes < exactNodes
}

// move is one stage of one silo, and when it is begun.
type move struct {
	stage, silo int
	at          ticks
}

type exactSearch struct {
	*shop
	limit int // days; lowered below each plan found
	jobs  int
	left  ticks // work
	next  []int
	ends  [][]ticks
	path  []move
	best  []move
	nodes int
}

func (e *exactSearch) search(t ticks) {
	if len(e.path) == e.jobs {
		e.best = slices.Clone(e.path)
		e.limit = e.daysTo(t) - 1
		return
	}
	if e.hopeless(t) {
		return
	}
	moves := e.moves(t)
	slices.SortStableFunc(moves, func(a, b move) int { return cmp64(a.at, b.at) })
	for _, m := range moves {
		if e.nodes++; e.nodes >= exactNodes {
			return
		}
		g := e.stages[m.stage]
		end := e.after(m.at, g.ticks)
		e.ends[m.stage][m.silo] = end
		e.next[m.stage]++
		e.left -= g.ticks
		e.path = append(e.path, m)
		e.search(end)
		e.path = e.path[:len(e.path)-1]
		e.left += g.ticks
		e.next[m.stage]--
	}
}

// moves are the stages that can come next. One that would be begun after
// another could be ended is left out: that other could go before it.
func (e *exactSearch) moves(t ticks) []move {
	var out []move
	soonest := never
	for k, g := range e.stages {
		i := e.next[k]
		if i >= g.n {
			continue
		}
		at, ok := t, true
		for _, w := range g.waits {
			j := min(i, e.stages[w.on].n-1)
			if j >= e.next[w.on] {
				ok = false
				break
			}
			at = max(at, e.ends[w.on][j]+w.hold)
		}
		if !ok || g.takes && !e.clampFree(i) {
			continue
		}
		at = e.start(at, g.ticks, g.whole)
		soonest = min(soonest, e.after(at, g.ticks))
		out = append(out, move{k, i, at})
	}
	return slices.DeleteFunc(out, func(m move) bool { return m.at >= soonest })
}

// clampFree reports whether there is a clamp for the pipe silo i.
func (e *exactSearch) clampFree(i int) bool {
	for k, g := range e.stages {
		if g.frees {
			return i-e.next[k] < e.clamps
		}
	}
	return true
}

// hopeless reports whether no order of what is left keeps the limit.
func (e *exactSearch) hopeless(t ticks) bool {
	if e.daysTo(e.after(t, e.left)) > e.limit {
		return true
	}
	for _, c := range e.chains {
		for p, k := range c {
			i := e.next[k]
			if i >= e.stages[k].n {
				continue
			}
			// the first silo still before this stage, from the stage it ended last
			at := t
			ends := make([]ticks, len(c))
			for q := range p {
				ends[q] = e.ends[c[q]][min(i, e.stages[c[q]].n-1)]
				if min(i, e.stages[c[q]].n-1) >= e.next[c[q]] {
					ends[q] = 0
				}
			}
			for q := p; q < len(c); q++ {
				b := max(at, e.begin1(c, q, 0, ends))
				g := e.stages[c[q]]
				ends[q] = e.after(e.start(b, g.ticks, g.whole), g.ticks)
				at = ends[q]
			}
			if e.daysTo(ends[len(c)-1]) > e.limit {
				return true
			}
		}
	}
	return false
}
