package work

// block is work on one stage without a break.
type block struct {
	stage int
	from  int   // index of the first silo worked on
	n     int   // silos ended in it
	open  bool  // one more is left for the morning
	begun bool  // the first was begun the day before
	start ticks // by the clock
	work  ticks
}

// stretch is silos of one stage that were ended one after the other.
type stretch struct {
	from, n int
	first   ticks // end of the first; the others follow a silo's time apart
}

// rule says which stage the crew turns to when several could be done.
type rule struct {
	order []int // stages, the most pressing first
	lots  bool  // stay with a stage while it has silos ready, else turn at once to a more pressing one
}

// shopState is a build under way.
type shopState struct {
	*shop
	t       ticks
	next    []int // per stage: silos ended
	done    [][]stretch
	cursor  [][]int // per stage and wait: the stretch of the stage waited for
	held    int     // clamps
	blocks  []block
	pending int   // stage with a silo begun, or -1
	part    ticks // worked on it
	last    int   // stage worked on before, or -1
}

const never = ticks(1) << 62

// run lays the build out by a rule. It gives up once what is left to do
// goes past the limit of days, and returns false.
func (s *shop) run(r rule, limit int) (*shopState, bool) {
	st := s.begin()
	left, toDo := s.jobs(), s.toDo()
	for left > 0 {
		st.t = s.open(st.t)
		if s.daysTo(s.after(st.t, toDo)) > limit {
			return nil, false
		}
		k := st.choose(r)
		if k < 0 {
			t := st.nextEvent()
			if t == never {
				return nil, false
			}
			st.t = t
			continue
		}
		left -= st.work(k, st.lot(k, r))
		toDo -= st.blocks[len(st.blocks)-1].work
	}
	return st, true
}

func (s *shop) begin() *shopState {
	st := &shopState{shop: s, pending: -1, last: -1, next: make([]int, len(s.stages)), done: make([][]stretch, len(s.stages)), cursor: make([][]int, len(s.stages))}
	for i, g := range s.stages {
		st.cursor[i] = make([]int, len(g.waits))
	}
	return st
}

// ready is when the next silo of a stage may be begun as far as earlier stages
// go, or never while they are not ended.
func (st *shopState) ready(k int) ticks {
	at := ticks(0)
	for w := range st.stages[k].waits {
		t := st.ended(k, w)
		if t == never {
			return never
		}
		at = max(at, t+st.stages[k].waits[w].hold)
	}
	return at
}

// ended is when stage k's next silo ended the stage it waits for.
func (st *shopState) ended(k, w int) ticks {
	on := st.stages[k].waits[w].on
	i := min(st.next[k], st.stages[on].n-1)
	if i >= st.next[on] {
		return never
	}
	d := st.done[on]
	c := &st.cursor[k][w]
	for d[*c].from+d[*c].n <= i {
		*c++
	}
	return d[*c].first + ticks(i-d[*c].from)*st.stages[on].ticks
}

// can reports whether a stage's next silo can be begun now.
func (st *shopState) can(k int) bool {
	g := &st.stages[k]
	return st.next[k] < g.n && !(g.takes && st.held >= st.clamps) &&
		st.start(st.t, g.ticks, g.whole) == st.t && st.ready(k) <= st.t
}

func (st *shopState) choose(r rule) int {
	if st.pending >= 0 {
		return st.pending
	}
	if r.lots && st.last >= 0 && st.can(st.last) {
		return st.last
	}
	for _, k := range r.order {
		if st.can(k) {
			return k
		}
	}
	return -1
}

// nextEvent is when a stage can next be begun, if nothing is done till then.
func (st *shopState) nextEvent() ticks {
	at := never
	for k, g := range st.stages {
		if st.next[k] >= g.n || g.takes && st.held >= st.clamps {
			continue
		}
		if t := st.ready(k); t != never {
			at = min(at, st.start(max(t, st.t), g.ticks, g.whole))
		}
	}
	return at
}

// lot is how many silos of stage k are begun from now without a look round: as
// many as are ready in turn, have a clamp, and do not keep a more pressing
// stage waiting. At least one.
func (st *shopState) lot(k int, r rule) int {
	g := &st.stages[k]
	head := g.ticks
	if st.pending == k {
		head -= st.part
	}
	n := g.n - st.next[k]
	if g.takes {
		free := st.clamps - st.held
		if st.pending == k {
			free++ // it has its own
		}
		n = min(n, free)
	}
	for w := range g.waits {
		n = min(n, st.flows(k, w, head))
	}
	if r.lots {
		return max(1, n)
	}
	for _, h := range r.order {
		if h == k {
			break
		}
		if t := st.pressing(h, k, head); t < never {
			// the lot ends with the first silo ended at t or later
			n = min(n, 1+int((max(0, t-st.t-head)+g.ticks-1)/g.ticks))
		}
	}
	return max(1, n)
}

// flows is how many silos of stage k in a row are ready in time by wait w.
func (st *shopState) flows(k, w int, head ticks) int {
	g := &st.stages[k]
	on := g.waits[w].on
	if st.stages[on].n == 1 && g.n > 1 {
		return g.n
	}
	first := st.ended(k, w)
	d := st.done[on][st.cursor[k][w]]
	n := d.from + d.n - st.next[k]
	// Silo j is ready at first + hold + j·(its time there) and begun at
	// t + head + (j−1)·(its time here).
	pace := st.stages[on].ticks - g.ticks
	slack := st.t + head - g.ticks - first - g.waits[w].hold
	switch {
	case slack-pace < 0:
		return 1
	case pace <= 0:
		return n
	}
	return min(n, 1+int(slack/pace))
}

// pressing is when stage h could be begun while the crew is at stage k, never
// when that does not come about by k alone.
func (st *shopState) pressing(h, k int, head ticks) ticks {
	g := &st.stages[h]
	if st.next[h] >= g.n {
		return never
	}
	at := ticks(0)
	for w, q := range g.waits {
		t := never
		if q.on != k {
			t = st.ended(h, w)
		} else if need := min(st.next[h], st.stages[k].n-1) - st.next[k]; need < 0 {
			t = st.ended(h, w)
		} else {
			t = st.t + head + ticks(need)*st.stages[k].ticks
		}
		if t == never {
			return never
		}
		at = max(at, t+q.hold)
	}
	if g.takes && st.held >= st.clamps {
		if !st.stages[k].frees {
			return never
		}
		at = max(at, st.t+head)
	}
	if g.whole && st.start(at, g.ticks, true) >= st.evening(st.t) {
		return never
	}
	return at
}

// work does up to n silos of stage k today and returns how many were ended.
func (st *shopState) work(k, n int) int {
	g := &st.stages[k]
	b := block{stage: k, from: st.next[k], start: st.t, begun: st.pending == k}
	head := g.ticks
	if b.begun {
		head -= st.part
	} else if g.takes {
		st.held++
	}
	left := st.evening(st.t) - st.t
	b.n = min(n, fit(left, head, g.ticks))
	if g.takes && b.n > 1 {
		st.held += b.n - 1
	}
	if b.n > 0 {
		b.work = head + ticks(b.n-1)*g.ticks
		st.end(k, b.n, st.t+head)
		st.pending, st.part = -1, 0
	}
	if b.n < n && b.work < left && !g.whole {
		// what is left of the day goes into one more
		if b.n > 0 && g.takes {
			st.held++
		}
		rest := left - b.work
		if b.begun && b.n == 0 {
			st.part += rest
		} else {
			st.part = rest
		}
		st.pending, b.open = k, true
		b.work = left
	}
	if g.frees {
		st.held -= b.n
	}
	st.t += b.work
	st.last = k
	st.blocks = append(st.blocks, b)
	return b.n
}

// fit is how many silos end in so much time when the first takes head and the
// others each each.
func fit(left, head, each ticks) int {
	if head > left {
		return 0
	}
	return 1 + int((left-head)/each)
}

// end books n silos of stage k, the first ended at t.
func (st *shopState) end(k, n int, t ticks) {
	d := st.done[k]
	if e := len(d) - 1; e >= 0 && d[e].first+ticks(d[e].n)*st.stages[k].ticks == t {
		d[e].n += n
	} else {
		st.done[k] = append(d, stretch{st.next[k], n, t})
	}
	st.next[k] += n
}

// finish is when the last work ended.
func (st *shopState) finish() ticks { return st.t }
