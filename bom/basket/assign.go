package basket

import (
	"cmp"
	"slices"
)

// assignAll branches on the items, all sellers being open or closed.
func (s *search) assignAll(above int64) {
	m := s.m
	for j := range s.lists {
		s.lists[j] = s.lists[j][:0]
	}
	for k := range s.items {
		s.order[k], s.value[k] = k, none
		tried := s.choice[k*m : k*m : (k+1)*m]
		for j, w := range s.weight[k*m : (k+1)*m] {
			if s.state[j] == open && w < none {
				tried = append(tried, j)
				s.value[k] = min(s.value[k], w)
				s.lists[j] = append(s.lists[j], k)
			}
		}
		slices.SortFunc(tried, func(a, b int) int {
			return cmp.Or(cmp.Compare(s.weight[k*m+a], s.weight[k*m+b]), cmp.Compare(a, b))
		})
		for j := len(tried); j < m; j++ {
			s.choice[k*m+j] = -1
		}
	}
	for j, list := range s.lists {
		slices.SortFunc(list, func(a, b int) int {
			return cmp.Or(steeper(s.weight[a*m+j]-s.value[a], s.cost[a*m+j], s.weight[b*m+j]-s.value[b], s.cost[b*m+j]), cmp.Compare(a, b))
		})
	}
	slices.SortFunc(s.order, func(a, b int) int {
		return cmp.Or(cmp.Compare(s.regret(b), s.regret(a)), cmp.Compare(a, b))
	})
	s.assign(0, above)
}

// regret is what the second cheapest seller of item k costs more than the
// cheapest.
func (s *search) regret(k int) int64 {
	tried := s.choice[k*s.m : (k+1)*s.m]
	if tried[1] < 0 {
		return none
	}
	return s.weight[k*s.m+tried[1]] - s.weight[k*s.m+tried[0]]
}

// assign gives the items from order[d] on a seller.
func (s *search) assign(d int, above int64) {
	if s.stop(above) {
		return
	}
	s.steps -= 1 + (len(s.order)-d)*s.m/64
	if d == len(s.order) {
		s.keep()
		return
	}
	bound := int64(0)
	for _, k := range s.order[d:] {
		bound += s.value[k]
	}
	for j := range s.lists {
		if s.state[j] == open {
			bound += s.part(j)
		}
	}
	if bound = max(bound, above); s.cut(bound) {
		return
	}
	k := s.order[d]
	for _, j := range s.choice[k*s.m : (k+1)*s.m] {
		if j < 0 {
			break
		}
		s.at[k] = j
		s.goods[j] += s.cost[k*s.m+j]
		s.assign(d+1, bound)
		s.goods[j] -= s.cost[k*s.m+j]
	}
	s.at[k] = -1
}

// keep takes the choice at hand when it is cheaper than the best.
func (s *search) keep() {
	total := int64(0)
	for j, g := range s.goods {
		total += OrderOf(g, s.sellers[j]).Total
	}
	if total < s.total {
		s.total = total
		copy(s.best, s.at)
	}
}
