package cover

import (
	"slices"

	"silowright/bom/ratio"
)

// option is one tier of a kind: any count from lo to hi at one price.
type option struct {
	lo, hi int64
	price  int64
	least  int64 // cost of lo packs
	cap    int64 // in the case at hand no count of lo+cap or more is needed
	up     bool  // count upward: further packs never lower the bound
}

// kind is a pack in the search; its last option, the top, has no upper end.
type kind struct {
	at      int // its place among the packs
	holds   int64
	options []option
}

func (k *kind) top() *option { return &k.options[len(k.options)-1] }

// level is a kind whose count the case at hand enumerates, with what the
// levels after it can do.
type level struct {
	*kind
	options      []option
	reach        int64 // the most that later levels can hold
	price, holds int64 // the best value of later levels
	simple       bool  // that value is the closing pack's, which has no least number left
}

// search works in cases: in case j, kind j is the first (by value of its top
// tier) that is bought at its top tier. It is the closing pack, whose count
// follows from the others'. In a last case nobody's top tier is reached, and
// all counts are bounded.
//
// Dominance. Let u be the closing pack and i another, at a tier whose value
// is no better than u's. If i is lo+h(u)/g packs or more, g = gcd(h(i),h(u)),
// then h(u)/g of them can be given up for h(i)/g of u: the same content, i
// still at its tier, u still at its top, no more money. Hence less than
// lo+h(u)/g are enough, whatever the need. At equal value the exchange is made
// only where it also wins by the rule for ties.
type search struct {
	need  int64
	kinds []kind // best value of the top tier first
	hmax  int64
	most  int64 // Limit in the unit of the prices

	close  *kind // or nil in the last case
	levels []level
	n      []int64 // counts at hand

	best        []int64
	cost, packs int64

	ties  bool
	steps int
	open  int64 // least bound of what the step limit left unseen
}

// newSearch states the problem in the largest units that divide all contents
// and all prices; unit is that of the prices.
func newSearch(need int64, packs []Pack) (s *search, unit int64) {
	var g, tiers int64
	for _, p := range packs {
		g, tiers = gcd(g, p.Holds), tiers+int64(len(p.Tiers))
		for _, t := range p.Tiers {
			unit = gcd(unit, t.Price)
		}
	}
	unit = max(unit, 1)
	counts := make([]int64, 2*len(packs))
	s = &search{
		need: upto(need, g), kinds: make([]kind, len(packs)), most: Limit / unit,
		n: counts[len(packs):], best: counts[:len(packs):len(packs)],
	}
	s.cost = s.most + 1
	options := make([]option, tiers)
	for i, p := range packs {
		k := kind{at: i, holds: p.Holds / g, options: options[:len(p.Tiers):len(p.Tiers)]}
		options = options[len(p.Tiers):]
		for j, t := range p.Tiers {
			o := option{lo: t.From, hi: huge, price: t.Price / unit}
			o.least = times(o.lo, o.price)
			if j+1 < len(p.Tiers) {
				o.hi = p.Tiers[j+1].From - 1
			}
			k.options[j] = o
		}
		s.hmax = max(s.hmax, k.holds)
		j := i
		for ; j > 0 && before(&k, &s.kinds[j-1]); j-- {
			s.kinds[j] = s.kinds[j-1]
		}
		s.kinds[j] = k
	}
	return s, unit
}

// before orders kinds by value of the top tier, then the larger pack, then
// place.
func before(a, b *kind) bool {
	c := ratio.Compare(a.top().price, a.holds, b.top().price, b.holds)
	return c < 0 || c == 0 && (a.holds > b.holds || a.holds == b.holds && a.at < b.at)
}

// take keeps the counts at hand when they are better than the best.
func (s *search) take(cost, packs int64) {
	switch {
	case cost > s.most || cost > s.cost:
		return
	case cost == s.cost && (packs > s.packs || packs == s.packs && slices.Compare(s.n, s.best) <= 0):
		return
	}
	copy(s.best, s.n)
	s.cost, s.packs = cost, packs
}

// singles tries every kind alone.
func (s *search) singles() {
	for i := range s.kinds {
		s.finish(&s.kinds[i], s.kinds[i].options, s.need, 0, 0)
	}
}

// finish buys the rest from one kind.
func (s *search) finish(k *kind, options []option, rest, cost, packs int64) {
	n := upto(rest, k.holds)
	for i := range options {
		if o := &options[i]; n <= o.hi {
			s.n[k.at] = max(n, o.lo)
			s.take(cost+times(s.n[k.at], o.price), packs+s.n[k.at])
		}
	}
	s.n[k.at] = 0
}

// run searches all cases twice: for the cost, then for the ties.
func (s *search) run(costSteps, tieSteps int) (proven bool, bound int64) {
	s.levels = make([]level, 0, len(s.kinds))
	s.open, s.steps = huge, costSteps
	s.cases()
	bound = min(s.cost, s.open)
	s.ties, s.steps = true, tieSteps
	s.cases()
	return bound == s.cost, bound
}

func (s *search) cases() {
	for j := range s.kinds {
		s.setUp(j)
		top := s.close.top()
		s.n[s.close.at] = top.lo
		s.visit(-1, s.need-times(top.lo, s.close.holds), top.least, top.lo)
		s.n[s.close.at] = 0
	}
	if s.setUp(len(s.kinds)); len(s.levels) > 0 && s.reach(0) >= s.need {
		s.visit(-1, s.need, 0, 0)
	}
}

// setUp makes the levels of case j, worst value first, so that the many
// packs of nearly best value are counted last.
func (s *search) setUp(j int) {
	s.levels, s.close = s.levels[:0], nil
	if j < len(s.kinds) {
		s.close = &s.kinds[j]
	}
	for i := len(s.kinds) - 1; i >= 0; i-- {
		k := &s.kinds[i]
		l := level{kind: k, options: k.options}
		if i < j {
			l.options = l.options[:len(l.options)-1]
		}
		if i != j && len(l.options) > 0 {
			s.levels = append(s.levels, l)
		}
	}
	var price, holds, reach int64
	simple := s.close != nil
	if simple {
		price, holds, reach = s.close.top().price, s.close.holds, huge
	}
	for d := len(s.levels) - 1; d >= 0; d-- {
		l := &s.levels[d]
		l.price, l.holds, l.reach, l.simple = price, holds, reach, simple
		for i := range l.options {
			o := &l.options[i]
			o.cap, o.up = huge, l.holds == 0 || ratio.Compare(o.price, l.kind.holds, l.price, l.holds) >= 0
			if s.dominated(l.kind, o) {
				o.cap = s.close.holds / gcd(s.close.holds, l.kind.holds)
			}
			if holds == 0 || ratio.Compare(o.price, l.kind.holds, price, holds) < 0 {
				price, holds, simple = o.price, l.kind.holds, false
			}
		}
		reach = min(huge, reach+times(l.options[len(l.options)-1].hi, l.kind.holds))
	}
}

// dominated tells whether packs of k at o can be exchanged for the closing
// pack.
func (s *search) dominated(k *kind, o *option) bool {
	if s.close == nil {
		return false
	}
	c := ratio.Compare(o.price, k.holds, s.close.top().price, s.close.holds)
	return c > 0 || c == 0 && (k.holds < s.close.holds || k.holds == s.close.holds && s.close.at < k.at)
}

// reach is the most that levels from d on can hold.
func (s *search) reach(d int) int64 {
	l := &s.levels[d]
	return min(huge, l.reach+times(l.options[len(l.options)-1].hi, l.kind.holds))
}

// beaten tells whether no choice of cost bound can be the answer.
func (s *search) beaten(bound, rest, packs int64) bool {
	if !s.ties || bound != s.cost {
		return bound >= s.cost
	}
	return packs+upto(max(rest, 0), s.hmax) > s.packs
}

// visit looks at the node after level d with rest still to be held. It returns
// false when the nodes of the same option beyond it have no better bound.
func (s *search) visit(d int, rest, cost, packs int64) bool {
	if s.steps--; rest <= 0 || d == len(s.levels)-1 {
		switch {
		case rest <= 0:
			s.take(cost, packs)
		case s.close != nil:
			n := upto(rest, s.close.holds)
			s.n[s.close.at] += n
			s.take(cost+times(n, s.close.top().price), packs+n)
			s.n[s.close.at] -= n
		}
		if d < 0 || rest <= 0 || s.close == nil {
			return true
		}
	}
	bound, simple := cost, false
	if d >= 0 {
		l := &s.levels[d]
		bound, simple = cost+share(rest, l.price, l.holds), l.simple
		if bound > s.cost || !s.ties && bound == s.cost {
			return false
		}
	}
	if d == len(s.levels)-1 {
		return true
	}
	if !simple {
		bound = max(bound, cost+s.floor(d+1, rest))
	}
	if s.beaten(bound, rest, packs) {
		return true
	}
	if s.steps <= 0 {
		s.open = min(s.open, bound)
		return true
	}
	s.dive(d+1, rest, cost, packs)
	return true
}

// floor is the least that levels from d on and the closing pack can hold rest
// for. An option that contributes q of the rest costs at least lo·price and at
// least q·price/holds; with q ≤ rest both are at least q/rest of what is
// reckoned here, and the contributions add up to rest.
func (s *search) floor(d int, rest int64) int64 {
	least := int64(huge)
	if s.close != nil {
		least = share(rest, s.close.top().price, s.close.holds)
	}
	for ; d < len(s.levels); d++ {
		l := &s.levels[d]
		for i := range l.options {
			if o := &l.options[i]; o.least < least {
				least = min(least, max(o.least, share(rest, o.price, l.kind.holds)))
			}
		}
	}
	return least
}

// dive enumerates the counts of level d.
func (s *search) dive(d int, rest, cost, packs int64) {
	l := &s.levels[d]
	if s.close == nil && d == len(s.levels)-1 {
		s.finish(l.kind, l.options, rest, cost, packs)
		return
	}
	if rest <= l.reach {
		s.visit(d, rest, cost, packs)
	}
	from := upto(max(rest-l.reach, 0), l.kind.holds)
	for i := range l.options {
		o := &l.options[i]
		lo, hi := max(o.lo, from), min(o.hi, max(o.lo, upto(rest, l.kind.holds)), o.lo+o.cap-1)
		n, step := lo, int64(1)
		if !o.up {
			n, step = hi, -1
		}
		for ; lo <= n && n <= hi; n += step {
			s.n[l.at] = n
			left, paid := rest-times(n, l.kind.holds), cost+times(n, o.price)
			if s.steps <= 0 {
				s.open = min(s.open, s.edge(l, left, paid))
				if left < 0 && n > lo && !o.up {
					s.open = min(s.open, s.edge(l, left+l.kind.holds, paid-o.price))
				}
				break
			}
			if !s.visit(d, left, paid, packs+n) {
				break
			}
		}
	}
	s.n[l.at] = 0
}

// edge is the bound of a count at level l. Along an option's counts it never
// falls, but after one that holds more than is needed.
func (s *search) edge(l *level, rest, cost int64) int64 {
	if l.holds == 0 || rest <= 0 {
		return cost
	}
	return cost + share(rest, l.price, l.holds)
}
