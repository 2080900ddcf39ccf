package basket

import (
	"cmp"
	"slices"

	"silowright/bom/ratio"
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
			return cmp.Or(ratio.Compare(s.weight[a*m+j]-s.value[a], s.cost[a*m+j], s.weight[b*m+j]-s.value[b], s.cost[b*m+j]), cmp.Compare(a, b))
		})
	}
	slices.SortFunc(s.order, func(a, b int) int {
		// As unsigned numbers less 1, a regret of 0 is the largest.
		return cmp.Or(cmp.Compare(uint64(s.regret(b)-1), uint64(s.regret(a)-1)), cmp.Compare(s.value[b], s.value[a]), cmp.Compare(a, b))
	})
	s.assign(len(s.items), above)
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

// assign gives the items not yet assigned, left of them, a seller.
func (s *search) assign(left int, above int64) {
	if s.stop(above) {
		return
	}
	s.steps -= 1 + len(s.items)*s.m/64
	if left == 0 {
		s.keep()
		return
	}
	bound := int64(0)
	for k, v := range s.value {
		if s.at[k] < 0 {
			bound += v
		}
	}
	// The item to branch on is the one that is only in part brought to a
	// seller, where that part costs most.
	pick, target, most := -1, -1, int64(-1)
	for j := range s.lists {
		if s.state[j] == open {
			part, extra, item := s.part(j)
			if bound += part; extra > most && item >= 0 {
				pick, target, most = item, j, extra
			}
		}
	}
	if bound = max(bound, above); s.cut(bound) {
		return
	}
	if pick < 0 {
		// Nothing is brought anywhere: all items where they are cheapest cost
		// what the bound says, but for rounding and for items that are as cheap
		// at another seller, who counts on them as well.
		if s.rest(); s.cut(bound) {
			return
		}
		for _, k := range s.order {
			if s.at[k] < 0 {
				pick, target = k, s.choice[k*s.m]
				break
			}
		}
	}
	s.give(pick, target, left, bound)
	for _, j := range s.choice[pick*s.m : (pick+1)*s.m] {
		if j < 0 {
			break
		}
		if j != target {
			s.give(pick, j, left, bound)
		}
	}
}

// give looks at the choices with item k at j.
func (s *search) give(k, j, left int, bound int64) {
	s.at[k] = j
	s.goods[j] += s.cost[k*s.m+j]
	s.assign(left-1, bound)
	s.goods[j] -= s.cost[k*s.m+j]
	s.at[k] = -1
}

// rest tries the items not yet assigned where they are cheapest.
func (s *search) rest() {
	copy(s.given, s.at)
	for k, j := range s.given {
		if j < 0 {
			s.at[k] = s.choice[k*s.m]
			s.goods[s.at[k]] += s.cost[k*s.m+s.at[k]]
		}
	}
	s.keep()
	for k, j := range s.given {
		if j < 0 {
			s.goods[s.at[k]] -= s.cost[k*s.m+s.at[k]]
		}
	}
	copy(s.at, s.given)
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
