package basket

import "slices"

// rounds limits the improvement of a first choice.
const rounds = 50

// start makes a first choice: every item where it is cheapest, or all that it
// sells at one seller; then moves of one item, dropping a seller, and bringing
// to a seller all that is cheaper there, as long as they help.
func (s *search) start() {
	s.total = none
	for from := -1; from < s.m; from++ {
		copy(s.goods, s.base)
		for k := range s.items {
			at := s.cheapest(k, func(int) bool { return true })
			if from >= 0 && s.cost[k*s.m+from] >= 0 {
				at = from
			}
			s.at[k] = at
			s.goods[at] += s.cost[k*s.m+at]
		}
		if from < 0 {
			s.improve()
		}
		s.keep()
	}
	copy(s.at, s.best)
	copy(s.goods, s.base)
	for k, j := range s.at {
		s.goods[j] += s.cost[k*s.m+j]
	}
	s.improve()
	s.keep()
}

// cheapest is the seller of least weight for item k among those allowed, or −1.
func (s *search) cheapest(k int, allowed func(j int) bool) int {
	at, least := -1, int64(none)
	for j, w := range s.weight[k*s.m : (k+1)*s.m] {
		if w < least && allowed(j) {
			at, least = j, w
		}
	}
	return at
}

func (s *search) improve() {
	for range rounds {
		better := s.moveOne()
		for j := range s.m {
			better = s.whole(func(k int) int { return s.without(k, j) }) || better
			better = s.whole(func(k int) int { return s.toward(k, j) }) || better
		}
		if !better {
			return
		}
	}
}

// moveOne moves single items where that costs less.
func (s *search) moveOne() (better bool) {
	for k, a := range s.at {
		for b, c := range s.cost[k*s.m : (k+1)*s.m] {
			if c < 0 || b == a {
				continue
			}
			now := s.order1(a, s.goods[a]) + s.order1(b, s.goods[b])
			if s.order1(a, s.goods[a]-s.cost[k*s.m+a])+s.order1(b, s.goods[b]+c) < now {
				s.goods[a] -= s.cost[k*s.m+a]
				s.goods[b] += c
				s.at[k], a, better = b, b, true
			}
		}
	}
	return better
}

func (s *search) order1(j int, goods int64) int64 { return OrderOf(goods, s.sellers[j]).Total }

// without is where item k goes when seller j is dropped: the cheapest that has
// an order, else the cheapest.
func (s *search) without(k, j int) int {
	if s.at[k] != j {
		return s.at[k]
	}
	if at := s.cheapest(k, func(b int) bool { return b != j && s.goods[b] > 0 }); at >= 0 {
		return at
	}
	return s.cheapest(k, func(b int) bool { return b != j })
}

// toward is where item k goes when seller j is opened.
func (s *search) toward(k, j int) int {
	if w := s.weight[k*s.m+j]; w < s.weight[k*s.m+s.at[k]] {
		return j
	}
	return s.at[k]
}

// whole moves all items as to tells, when that costs less.
func (s *search) whole(to func(k int) int) bool {
	goods, moved := slices.Clone(s.base), make([]int, len(s.at))
	for k := range s.at {
		j := to(k)
		if j < 0 {
			return false
		}
		moved[k] = j
		goods[j] += s.cost[k*s.m+j]
	}
	change := int64(0)
	for j := range s.m {
		change += s.order1(j, goods[j]) - s.order1(j, s.goods[j])
	}
	if change >= 0 {
		return false
	}
	copy(s.at, moved)
	copy(s.goods, goods)
	return true
}
