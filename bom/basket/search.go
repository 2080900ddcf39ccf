package basket

import (
	"math"
	"slices"
)

// stepLimit ends the search; a step is the work of some 64 costs looked at.
const stepLimit = 600_000

// none stands for a bound of what cannot be.
const none = math.MaxInt64

// Whether a seller gets an order of more than 0.
type state int8

const (
	undecided state = iota
	open
	closed
)

// search branches first on which sellers get an order, then on the items.
// Its bounds are in units of 1/unit of a minor unit of money, so that the
// shares of tax that are rounded away in them do not add up.
type search struct {
	sellers []Seller
	m       int
	items   []int   // those with a choice, by their place in the input
	cost    []int64 // m for each item
	weight  []int64 // cost and its tax, rounded down, in bound units
	base    []int64 // goods of the items without a choice

	unit, den int64 // unit·den = Million

	best  []int // seller of each of items
	total int64
	steps int
	left  int64 // least bound of what the step limit left unseen

	// At the node.
	state  []state
	goods  []int64
	value  []int64 // of each item: what its seller costs at least
	at     []int   // seller of each item, −1 not yet
	slack  []int64
	given  []int   // at, while others are tried
	order  []int   // of items, those as cheap elsewhere first
	lists  [][]int // per seller: items sold there, least extra cost for their goods first
	choice []int   // m for each item: its sellers as they are tried
}

// newSearch sets the items nobody sells and those without a choice in chosen,
// and keeps the others.
func newSearch(items []Item, sellers []Seller, chosen []int) *search {
	m := len(sellers)
	s := &search{sellers: sellers, m: m, base: make([]int64, m), unit: Million, den: 1}
	sum := int64(0)
	for _, t := range sellers {
		sum += t.Shipping + t.Minimum
	}
	for i, item := range items {
		chosen[i] = -1
		sold, dearest := 0, int64(0)
		for j, c := range item {
			if dearest = max(dearest, c); c < 0 {
				continue
			}
			if sold++; sold == 1 || c == 0 && item[chosen[i]] > 0 {
				chosen[i] = j
			}
		}
		if sum += dearest; sold == 0 {
			continue
		}
		if c := item[chosen[i]]; sold == 1 || c == 0 {
			s.base[chosen[i]] += c
			continue
		}
		s.items = append(s.items, i)
	}
	// With tax and shipping's tax no bound is above 2·sum, but for the steps
	// to free shipping, which are taken only where they cost less.
	for ; sum > math.MaxInt64/8/s.unit; s.den *= 10 {
		s.unit = Million / (s.den * 10)
	}
	s.trim(items, chosen)
	n := len(s.items)
	s.cost, s.weight = make([]int64, n*m), make([]int64, n*m)
	for k, i := range s.items {
		for j, c := range items[i] {
			s.cost[k*m+j], s.weight[k*m+j] = c, none
			if c >= 0 {
				s.weight[k*m+j] = s.with(j, c)
			}
		}
	}
	return s
}

// with is goods and their tax at j in bound units, rounded down.
func (s *search) with(j int, goods int64) int64 {
	return scale(goods, Million+s.sellers[j].Tax, s.den)
}

// trim takes choices away that cannot help, and with them the items that have
// one choice left. A choice cannot help when another seller, who has an order
// in any case, is cheaper with tax, and the seller has neither a minimum nor
// shipping that becomes free: there the total rises by the goods and their tax
// at least, while with the other it rises by them at most, as what an order
// costs beyond goods and tax does not rise with its goods. Rounding moves
// either by less than 1.
func (s *search) trim(items []Item, chosen []int) {
	for again := true; again; {
		again = false
		kept := s.items[:0]
		for _, i := range s.items {
			sold, last := 0, -1
			for j := range s.sellers {
				if items[i][j] >= 0 && !s.useless(items[i], j) {
					sold, last = sold+1, j
				}
			}
			if sold == 1 {
				chosen[i], again = last, true
				s.base[last] += items[i][last]
				continue
			}
			kept = append(kept, i)
		}
		s.items = kept
	}
}

func (s *search) useless(item Item, j int) bool {
	t := &s.sellers[j]
	if t.Minimum > 0 || t.FreeFrom > 0 && t.Shipping > 0 {
		return false
	}
	for k, c := range item {
		if k == j || c < 0 || s.base[k] == 0 {
			continue
		}
		up, down := scale(c, Million+s.sellers[k].Tax, 1000)+1, scale(item[j], Million+t.Tax, 1000)
		if s.sellers[k].Tax > 0 {
			up += 1000
		}
		if t.Tax > 0 {
			down -= 1000
		}
		if up <= down {
			return true
		}
	}
	return false
}

// run searches and returns a certain bound, or none when the best is the least.
func (s *search) run(steps int) int64 {
	n, m := len(s.items), s.m
	s.best, s.at = make([]int, n), make([]int, n)
	s.goods = slices.Clone(s.base)
	if n == 0 {
		return none
	}
	s.start()
	s.goods = append(s.goods[:0], s.base...)
	s.state = make([]state, m)
	s.value, s.slack = make([]int64, n), make([]int64, m)
	s.given = make([]int, n)
	s.order, s.choice = make([]int, n), make([]int, n*m)
	s.lists = make([][]int, m)
	all := make([]int, n*m)
	for j := range m {
		s.lists[j] = all[j*n : j*n : (j+1)*n]
		switch {
		case s.base[j] > 0:
			s.state[j] = open
		case !s.sells(j):
			s.state[j] = closed
		}
	}
	for i := range s.at {
		s.at[i] = -1
	}
	s.steps, s.left = steps, none
	s.decide(0)
	return s.left
}

// sells tells whether an item with a choice is sold at j.
func (s *search) sells(j int) bool {
	for k := range s.items {
		if s.cost[k*s.m+j] >= 0 {
			return true
		}
	}
	return false
}

// cut tells whether bound leaves no room for a cheaper choice.
func (s *search) cut(bound int64) bool { return bound > (s.total-1)*s.unit }

// stop tells that the step limit is reached, and notes what bound is left.
func (s *search) stop(bound int64) bool {
	if s.steps > 0 {
		return false
	}
	s.left = min(s.left, (bound+s.unit-1)/s.unit)
	return true
}

// decide branches on the sellers; above is the bound of the node above.
func (s *search) decide(above int64) {
	if s.stop(above) {
		return
	}
	s.steps -= 1 + len(s.items)*s.m/32
	before := slices.Clone(s.state)
	defer copy(s.state, before)
	if !s.force() {
		return
	}
	bound := max(above, s.sellerBound())
	if s.cut(bound) {
		return
	}
	j := s.next()
	if j < 0 {
		s.assignAll(bound)
		return
	}
	first, second := closed, open
	if slices.Contains(s.best, j) {
		first, second = open, closed
	}
	s.state[j] = first
	s.decide(bound)
	s.state[j] = second
	s.decide(bound)
}

// force opens the only seller left of an item; false when there is none.
func (s *search) force() bool {
	for k := range s.items {
		left, last := 0, 0
		for j, c := range s.cost[k*s.m : (k+1)*s.m] {
			if c >= 0 && s.state[j] != closed {
				left, last = left+1, j
			}
		}
		if left == 0 {
			return false
		}
		if left == 1 {
			s.state[last] = open
		}
	}
	return true
}

// next is the undecided seller at which the most goods are cheapest, or −1.
func (s *search) next() int {
	worth := make([]int64, s.m)
	for k := range s.items {
		cheapest := -1
		for j, w := range s.weight[k*s.m : (k+1)*s.m] {
			if s.state[j] != closed && w < none && (cheapest < 0 || w < s.weight[k*s.m+cheapest]) {
				cheapest = j
			}
		}
		worth[cheapest] += 1 + s.cost[k*s.m+cheapest]
	}
	at := -1
	for j, w := range worth {
		if s.state[j] == undecided && (at < 0 || w > worth[at]) {
			at = j
		}
	}
	return at
}
