package money

import (
	"fmt"
	"math/big"
	"slices"
)

// Split shares m in proportion to weights, to whole minor units, so that the
// shares add up to m exactly: each share is first rounded towards zero, and
// the minor units left over go one each to the largest remainders, the first
// of equal ones first. A weight of 0 gets nothing. It fails (ErrShare) on a
// negative weight, and when m is not zero and no weight is above 0;
// and past Limit (ErrTooLarge).
func (m Money) Split(weights ...*big.Rat) ([]Money, error) {
	sum := new(big.Rat)
	for _, w := range weights {
		if w.Sign() < 0 {
			return nil, fmt.Errorf("weight %s: %w", w.RatString(), ErrShare)
		}
		sum.Add(sum, w)
	}
	out := make([]Money, len(weights))
	for i := range out {
		out[i].Currency = m.Currency
	}
	if m.Minor == 0 {
		return out, nil
	}
	if m.Minor > Limit || m.Minor < -Limit {
		return nil, ErrTooLarge
	}
	if sum.Sign() == 0 {
		return nil, fmt.Errorf("%s by weights of 0: %w", m, ErrShare)
	}
	size, sign := new(big.Int).Abs(big.NewInt(m.Minor)), int64(1)
	if m.Minor < 0 {
		sign = -1
	}
	rest := make([]*big.Rat, len(weights))
	left := new(big.Int).Set(size)
	for i, w := range weights {
		part := new(big.Rat).SetInt(size)
		part.Mul(part, w).Quo(part, sum)
		whole := new(big.Int).Quo(part.Num(), part.Denom())
		rest[i] = part.Sub(part, new(big.Rat).SetInt(whole))
		out[i].Minor = sign * whole.Int64()
		left.Sub(left, whole)
	}
	order := make([]int, len(weights))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return rest[b].Cmp(rest[a]) })
	for _, i := range order[:left.Int64()] { // fewer than the remainders above 0
		out[i].Minor += sign
	}
	return out, nil
}
