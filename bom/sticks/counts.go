package sticks

import (
	"math"
	"slices"
)

// counter finds the cheapest whole numbers of sticks that satisfy every cut: a
// bound that knows that sticks are bought whole.
type counter struct {
	in    *inst
	cuts  []cut
	need  []int64 // worth still wanted, for each cut
	order []int   // stocks that cost something, few ones first, then the cheapest worth last
	rate  [][]float64
	n     []int64
	best  []int64
	cost  int64 // of best, or a cost to beat
	floor int64 // a cost that cannot be beaten
	unit  int64
	left  int
}

const counterNodes = 20000

// whole is the least cost of whole sticks, below a cost known, and how many of
// each; from a node limit on it is the bound given. All of it is in whole
// numbers but for the pruning, which keeps a margin.
func (s *solver) whole() (int64, []int64) {
	in := s.in
	c := &counter{in: in, cuts: s.cuts, n: make([]int64, len(in.st)), cost: s.cost, floor: s.bound, unit: s.unit, left: counterNodes}
	for i := range s.cuts {
		c.need = append(c.need, s.cuts[i].worth)
	}
	for j := range in.st {
		st := &in.st[j]
		if st.price > 0 {
			c.order = append(c.order, j)
			continue
		}
		if st.have < 0 {
			return s.bound, nil // free without end
		}
		c.n[j] = st.have
		for i := range c.cuts {
			c.need[i] = less(c.need[i], c.cuts[i].most[j], st.have)
		}
	}
	main := &s.cuts[0]
	few := func(j int) bool { return in.st[j].have >= 0 && in.st[j].have <= 64 }
	slices.SortStableFunc(c.order, func(a, b int) int {
		if few(a) != few(b) { // the few first: what is left is then without end
			if few(a) {
				return -1
			}
			return 1
		}
		x := float64(in.st[a].price) / float64(max(1, main.most[a]))
		y := float64(in.st[b].price) / float64(max(1, main.most[b]))
		switch {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
	for i := range c.cuts { // the least price of worth from each stock on
		rate := make([]float64, len(c.order)+1)
		rate[len(c.order)] = math.Inf(1)
		for k := len(c.order) - 1; k >= 0; k-- {
			j := c.order[k]
			rate[k] = min(rate[k+1], float64(in.st[j].price)/float64(c.cuts[i].most[j]))
		}
		c.rate = append(c.rate, rate)
	}
	c.count(0, 0)
	if c.left < 0 {
		return s.bound, nil
	}
	return c.cost, c.best
}

// less is need − most × n, not below 0.
func less(need, most, n int64) int64 {
	if most > 0 && n >= (need+most-1)/most {
		return 0
	}
	return need - most*n
}

func (c *counter) count(k int, cost int64) {
	if c.left--; c.left < 0 || c.best != nil && c.cost <= c.floor {
		return
	}
	rest, done := 0.0, true
	for i, need := range c.need {
		if need > 0 {
			done = false
			rest = max(rest, float64(need)*c.rate[i][k])
		}
	}
	if done {
		if cost < c.cost {
			c.cost = cost
			c.best = append(c.best[:0], c.n...)
		}
		return
	}
	if k == len(c.order) || rest*(1-1e-12) > float64(c.cost-cost) ||
		roundUp(cost+int64(math.Ceil(rest*(1-1e-12)-1e-6)), c.unit) >= c.cost {
		return
	}
	j := c.order[k]
	st := &c.in.st[j]
	// As many as all cuts want are enough.
	most := int64(0)
	for i, need := range c.need {
		if v := c.cuts[i].most[j]; need > 0 && v > 0 {
			most = max(most, (need+v-1)/v)
		}
	}
	if st.have >= 0 {
		most = min(most, st.have)
	}
	least := int64(0)
	if k == len(c.order)-1 {
		least = most
	}
	before := append([]int64(nil), c.need...)
	for n := least; n <= most && c.left >= 0; n++ {
		if n > 0 && (c.cost-cost)/n < st.price {
			break
		}
		c.n[j] = n
		over := false
		for i := range c.need {
			v, rate := c.cuts[i].most[j], c.rate[i][k+1]
			c.need[i] = less(before[i], v, n)
			// Where the others give worth for less, more of this is dearer still.
			over = over || c.need[i] > 0 && float64(st.price) >= float64(v)*rate &&
				float64(cost+n*st.price)+float64(float64(c.need[i])*rate*(1-1e-12))-1e-6 >= float64(c.cost)
		}
		if over {
			break
		}
		c.count(k+1, cost+n*st.price)
	}
	copy(c.need, before)
	c.n[j] = 0
}

// sharpen makes a cut of worths y: whole numbers, small ones where the worths
// are fractions of a small denominator, and the exact most of each stock.
func (s *solver) sharpen(y []float64) cut {
	in := s.in
	m := len(in.w)
	c := cut{u: make([]int64, m), most: make([]int64, len(in.st))}
	if !s.fraction(y, c.u) {
		scale, sum := math.Inf(1), 0.0
		for i := range m {
			for j := range in.st {
				if y[i] > 0 {
					scale = min(scale, float64(int64(1)<<49)*float64(in.w[i])/(float64(in.st[j].room)*y[i]))
				}
			}
			sum += float64(max(0, y[i]) * float64(in.d[i]))
		}
		if math.IsInf(scale, 1) {
			return c
		}
		scale = min(scale, float64(int64(1)<<60)/sum)
		for i := range m {
			c.u[i] = int64(max(0, y[i]) * scale)
		}
	}
	for i, u := range c.u {
		c.worth += u * in.d[i]
	}
	s.ks.load(in, c.u)
	for j := range in.st {
		s.ks.solve(&in.st[j], 0)
		c.most[j] = int64(s.ks.upper)
	}
	return c
}

// fraction sets u to whole numbers in the ratio of y, if small ones are.
func (s *solver) fraction(y []float64, u []int64) bool {
	top := 0.0
	for i := range u {
		top = max(top, y[i])
	}
	if top <= 0 {
		return false
	}
	for q := 1.0; q <= 2000; q++ {
		ok := true
		for i := range u {
			v := max(0, y[i]) / top * q
			if n := math.Round(v); math.Abs(v-n) > 1e-7 {
				ok = false
				break
			}
		}
		if ok {
			for i := range u {
				u[i] = int64(math.Round(max(0, y[i]) / top * q))
			}
			return true
		}
	}
	return false
}

// fewest raises the bound by whole numbers of sticks: the cheapest that all
// cuts allow are tried in the relaxation; if they do not do, that is a cut
// more. It returns numbers that do, or nil.
func (s *solver) fewest() []int64 {
	for range 40 {
		if s.ks.tired() {
			return nil
		}
		b, n := s.whole()
		s.bound = max(s.bound, b)
		if n == nil || s.proven() {
			return nil
		}
		part := *s.in
		part.st = make([]stick, 0, len(n)+1)
		miss := stick{from: -1, price: 1, have: -1}
		for j, st := range s.in.st {
			st.have, st.price = n[j], 0
			part.st = append(part.st, st)
			miss.room = max(miss.room, st.room)
		}
		miss.short = miss.room
		part.st = append(part.st, miss)
		r := newRelax(&part, s.ks)
		r.solve()
		lack := 0.0
		for k, id := range r.basis {
			if id >= 0 && r.cols[id].st == len(n) {
				lack += r.x[k]
			}
		}
		if lack < 1e-7 {
			return n
		}
		c := s.sharpen(r.y)
		held := c.worth
		for j := range n {
			held = less(held, c.most[j], n[j])
		}
		if held == 0 {
			return n // not certain that it does not do
		}
		s.cuts = append(s.cuts, c)
	}
	return nil
}
