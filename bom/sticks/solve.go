package sticks

// solver holds the best plan and bound so far.
type solver struct {
	in    *inst
	ks    *knapsack
	unit  int64
	best  []bar
	cost  int64
	bound int64
	cuts  []cut
	sub   bool // part of another's search: its bound is given
}

func newSolver(in *inst) *solver {
	return &solver{in: in, ks: newKnapsack(len(in.w)), unit: in.priceUnit(), cost: -1}
}

func (s *solver) proven() bool { return s.cost >= 0 && s.cost <= s.bound }

// offer keeps the bars if they are cheaper than the best.
func (s *solver) offer(bars []bar) {
	bars = s.in.tidy(bars)
	if c := cost(s.in, bars); s.cost < 0 || c < s.cost {
		s.best, s.cost = bars, c
	}
}

func (s *solver) run() {
	in := s.in
	lp := newRelax(in, s.ks)
	lp.solve()
	c := cut{u: lp.u, most: lp.most}
	if b, ok := c.bound(in, s.unit); ok {
		s.bound = max(s.bound, b)
	}
	st, bars := lp.floor(in.state())
	if out, ok := in.fill(st, bars, -1, c.u, s.ks); ok {
		s.offer(out)
	}
	if s.proven() {
		return
	}
	for only := -1; only < len(in.st); only++ {
		st, bars := lp.floor(in.state())
		if out, ok := in.fill(st, bars, only, nil, s.ks); ok {
			s.offer(out)
		}
		if out, ok := in.fill(in.state(), nil, only, nil, s.ks); ok {
			s.offer(out)
		}
		if s.proven() {
			return
		}
	}
	s.cuts = append(s.cuts, s.sharpen(lp.y))
	if s.ks.tired() { // the relaxation is not at its end: lengths bound too
		lengths := make([]float64, len(in.w))
		for i, w := range in.w {
			lengths[i] = float64(w)
		}
		c := s.sharpen(lengths)
		if b, ok := c.bound(in, s.unit); ok {
			s.bound = max(s.bound, b)
		}
		s.cuts = append(s.cuts, c)
	}
	if !s.sub {
		if n := s.fewest(); n != nil {
			s.within(n)
		}
	}
	if s.proven() {
		return
	}
	s.diving(lp)
	if s.proven() {
		return
	}
	s.exact(lp)
}

// within looks for a plan with no more than n sticks of each stock.
func (s *solver) within(n []int64) {
	part := *s.in
	part.st = make([]stick, 0, len(n)+1)
	miss := stick{from: -1, have: -1, price: 1}
	bound := int64(0)
	for j, st := range s.in.st {
		st.have = n[j]
		bound += n[j] * st.price
		miss.room, miss.price = max(miss.room, st.room), max(miss.price, st.price)
		part.st = append(part.st, st)
	}
	miss.short, miss.price = miss.room, min(100*miss.price, s.cost+1)
	part.st = append(part.st, miss)
	sub := &solver{in: &part, ks: s.ks, unit: s.unit, cost: -1, bound: bound, sub: true}
	sub.run()
	for _, b := range sub.best {
		if b.st == len(n) {
			return
		}
	}
	s.offer(sub.best)
}

// floor takes the whole sticks of the relaxation.
func (r *relax) floor(st state) (state, []bar) {
	var bars []bar
	for k, b := range r.basis {
		if b < 0 {
			continue
		}
		n := int64(r.x[k] + 1e-7)
		c := &r.cols[b]
		n = min(n, st.times(c.st, c.takes)) // no surplus
		if n > 0 {
			st.saw(c.st, c.takes, n)
			bars = append(bars, bar{c.st, n, c.takes})
		}
	}
	return st, bars
}

// rest is the instance of what a state still wants.
func (in *inst) rest(st state) *inst {
	out := &inst{free: in.free}
	for i, d := range st.d {
		if d > 0 {
			out.w = append(out.w, in.w[i])
			out.d = append(out.d, d)
			out.long = append(out.long, in.long[i])
			out.item = append(out.item, i)
		}
	}
	out.st = append([]stick(nil), in.st...)
	for j := range out.st {
		out.st[j].have = st.have[j]
	}
	return out
}

// widen gives takes of a part in terms of the whole.
func (in *inst) widen(part *inst, takes []int64) []int64 {
	out := make([]int64, len(in.w))
	for i, a := range takes {
		out[part.item[i]] = a
	}
	return out
}

// diving rounds the relaxation one stick at a time and solves it again for what
// is left, until the bound of the rest shows that it leads nowhere.
func (s *solver) diving(lp *relax) {
	in := s.in
	st, bars := lp.floor(in.state())
	for !st.done() {
		if s.ks.tired() {
			return
		}
		part := in.rest(st)
		r := newRelax(part, s.ks)
		r.solve()
		c := cut{u: r.u, most: r.most}
		b, ok := c.bound(part, s.unit)
		if !ok || s.cost >= 0 && cost(in, bars)+b >= s.cost {
			return
		}
		ps := part.state()
		_, more := r.floor(ps)
		if len(more) == 0 {
			pick := -1
			for k, b := range r.basis {
				if b >= 0 && part.st[r.cols[b].st].have != 0 && (pick < 0 || r.x[k] > r.x[pick]) {
					pick = k
				}
			}
			if pick < 0 {
				return
			}
			c := &r.cols[r.basis[pick]]
			more = []bar{{c.st, 1, c.takes}}
		}
		for _, b := range more {
			b.takes = in.widen(part, b.takes)
			st.saw(b.st, b.takes, b.n)
			bars = append(bars, b)
		}
		if out, ok := in.fill(state{append([]int64(nil), st.d...), append([]int64(nil), st.have...)}, append([]bar(nil), bars...), -1, nil, s.ks); ok {
			s.offer(out)
			if s.proven() {
				return
			}
		}
	}
	s.offer(bars)
}

// exact runs branch and bound: over what the relaxation rounded down leaves,
// and then over everything.
func (s *solver) exact(lp *relax) {
	in := s.in
	st, bars := lp.floor(in.state())
	if len(bars) > 0 {
		s.search(st, bars, 300000)
		if s.proven() {
			return
		}
		// One stick of each pattern less rounded down leaves more freedom.
		st, less := in.state(), []bar(nil)
		for _, b := range bars {
			if b.n > 1 {
				less = append(less, bar{b.st, b.n - 1, b.takes})
				st.saw(b.st, b.takes, b.n-1)
			}
		}
		if len(less) > 0 {
			s.search(st, less, 300000)
			if s.proven() {
				return
			}
		}
	}
	if !s.sub && s.search(in.state(), nil, 3000000) {
		s.bound = s.cost
	}
}
