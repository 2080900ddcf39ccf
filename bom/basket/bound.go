package basket

// over is what an order of goods ≥ 0 at j costs beyond the goods and their
// tax, in bound units and rounded down. It does not rise with goods: with
// z ≥ 0 the money spent beyond goods, it is the least of z, its tax and the
// shipping of goods+z, over all z with goods+z ≥ Minimum, and more goods lower
// the shipping of each z and allow more of them.
func (s *search) over(j int, goods int64) int64 {
	t := &s.sellers[j]
	y := max(goods, t.Minimum)
	if t.FreeFrom >= 0 && y >= t.FreeFrom {
		return s.with(j, y-goods)
	}
	ship := t.Shipping * s.unit
	if t.TaxShipping {
		ship = s.with(j, t.Shipping)
	}
	least := s.with(j, y-goods) + ship
	if t.FreeFrom >= 0 && t.FreeFrom-y <= t.Shipping*2 {
		least = min(least, s.with(j, t.FreeFrom-goods))
	}
	return least
}

// half is what rounding can take off an order at j.
func (s *search) half(j int) int64 {
	if s.sellers[j].Tax > 0 {
		return s.unit / 2
	}
	return 0
}

// The bound. Give every item a value v. Any choice costs
// Σv + Σ over sellers of (cost of the order − Σ of the v of its items),
// and each seller can be looked at by itself. With w the weight of an item at
// the seller, its part is at least over(goods) + Σ(w − v) over the items it
// gets, less the rounding. A seller that is undecided may be left out, which
// is 0; if it is opened, over is at least that of all goods it could get, so
// that the part is 0 or more as long as Σ max(0, v − w) is not above that
// less the rounding.
// For an open seller all w ≥ v; see part.

// sellerBound is the bound of a node with sellers undecided. The values are
// raised item by item, first to the second cheapest seller, then as far as the
// slack of the undecided sellers allows.
func (s *search) sellerBound() int64 {
	m := s.m
	bound := int64(0)
	for j := range m {
		s.slack[j] = 0
		most := s.base[j]
		for k := range s.items {
			most += max(0, s.cost[k*m+j])
		}
		switch {
		case s.state[j] == open:
			bound += s.with(j, s.base[j]) + s.over(j, most) - s.half(j)
		case s.state[j] == undecided:
			s.slack[j] = s.over(j, most) - s.half(j)
			if s.slack[j] < 0 {
				bound, s.slack[j] = bound+s.slack[j], 0
			}
		}
	}
	for k := range s.items {
		w := s.weight[k*m : (k+1)*m]
		least, second := int64(none), int64(none)
		for j := range w {
			if s.state[j] == closed {
				continue
			}
			if w[j] < least {
				least, second = w[j], least
			} else {
				second = min(second, w[j])
			}
		}
		s.value[k] = least
		s.raise(k, second)
	}
	for k := range s.items {
		s.raise(k, none)
		bound += s.value[k]
	}
	return bound
}

// raise raises the value of item k to at most most.
func (s *search) raise(k int, most int64) {
	w := s.weight[k*s.m : (k+1)*s.m]
	v := s.value[k]
	for j := range w {
		if s.state[j] != closed && w[j] < none {
			most = min(most, max(v, w[j])+s.slack[j])
		}
	}
	if most <= v {
		return
	}
	for j := range w {
		if s.state[j] != closed && w[j] < most {
			s.slack[j] -= most - max(v, w[j])
		}
	}
	s.value[k] = most
}

// part is the least that the order at the open seller j adds to the values of
// the items not yet assigned: the goods it has with their tax, and the least
// of over plus the extra cost w − v of the items that come to it. Items
// without extra cost come in any case. Further goods are worth their extra
// cost only where over falls by them: there it falls by the goods and their
// tax, which is at least their extra cost, so that the fall is best used to its
// end. Hence three amounts need be looked at: the goods as they are, the
// minimum, the goods of free shipping. The extra cost of reaching them is that
// of the continuous knapsack.
//
// It tells the extra cost in it, too, and the last item that is brought, or −1.
func (s *search) part(j int) (part, extra int64, item int) {
	t := &s.sellers[j]
	sure, most, settled := s.goods[j], s.goods[j], true
	for _, k := range s.lists[j] {
		if s.at[k] < 0 {
			settled = false
			c := s.cost[k*s.m+j]
			if most += c; s.weight[k*s.m+j] == s.value[k] {
				sure += c
			}
		}
	}
	if settled {
		return OrderOf(s.goods[j], *t).Total * s.unit, 0, -1
	}
	least, item := s.over(j, sure), -1
	for _, g := range [2]int64{min(t.Minimum, most), min(t.FreeFrom, most)} {
		if g <= sure {
			continue
		}
		d, k := s.extra(j, g-sure)
		if n := s.over(j, g) + d; n < least {
			least, extra, item = n, d, k
		}
	}
	return s.with(j, s.goods[j]) + least - s.half(j), extra, item
}

// extra is the least extra cost of bringing goods more to j, rounded down, and
// the last item brought.
func (s *search) extra(j int, goods int64) (sum int64, item int) {
	for _, k := range s.lists[j] {
		c, d := s.cost[k*s.m+j], s.weight[k*s.m+j]-s.value[k]
		if s.at[k] >= 0 || d == 0 {
			continue
		}
		if item = k; c >= goods {
			return sum + scale(d, goods, c), item
		}
		sum, goods = sum+d, goods-c
	}
	return sum, item
}
