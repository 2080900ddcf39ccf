package sticks

import (
	"math/big"
	"slices"
)

// cut says that the sticks taken are together worth the demand at least: with a
// worth for each piece, no stick of stock j is worth more than most[j].
type cut struct {
	u     []int64
	most  []int64
	worth int64 // of all pieces
}

// bound is the least cost of sticks, in part if need be, that are worth the
// demand d, rounded up to a whole multiple of unit. It is exact. It is false if
// all sticks together are not worth it.
func (c *cut) bound(in *inst, unit int64) (int64, bool) {
	var a, b big.Int
	need := new(big.Int)
	for i, d := range in.d {
		need.Add(need, a.Mul(a.SetInt64(c.u[i]), b.SetInt64(d)))
	}
	order := make([]int, 0, len(in.st))
	for j := range in.st {
		if c.most[j] > 0 {
			order = append(order, j)
		}
	}
	slices.SortStableFunc(order, func(i, j int) int { // the cheapest worth first
		return a.Mul(a.SetInt64(in.st[i].price), b.SetInt64(c.most[j])).Cmp(
			new(big.Int).Mul(big.NewInt(in.st[j].price), big.NewInt(c.most[i])))
	})
	cost := new(big.Int)
	for _, j := range order {
		if need.Sign() <= 0 {
			break
		}
		s := &in.st[j]
		if s.have >= 0 {
			a.Mul(a.SetInt64(c.most[j]), b.SetInt64(s.have))
			if a.Cmp(need) <= 0 {
				need.Sub(need, &a)
				cost.Add(cost, a.Mul(a.SetInt64(s.price), b.SetInt64(s.have)))
				continue
			}
		}
		// price × need / most, rounded up
		a.Mul(need, b.SetInt64(s.price))
		a.Add(&a, b.SetInt64(c.most[j]-1))
		cost.Add(cost, a.Quo(&a, b.SetInt64(c.most[j])))
		need.SetInt64(0)
	}
	if need.Sign() > 0 || !cost.IsInt64() {
		return 0, false
	}
	return roundUp(cost.Int64(), unit), true
}

// roundUp is n, or the next multiple of unit above it.
func roundUp(n, unit int64) int64 {
	if unit > 1 && n%unit != 0 {
		n += unit - n%unit
	}
	return n
}

// priceUnit is the greatest number that every cost is a multiple of, or 0 where
// all sticks are free.
func (in *inst) priceUnit() int64 {
	g := int64(0)
	for j := range in.st {
		g = gcd(g, in.st[j].price)
	}
	return g
}
