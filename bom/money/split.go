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
	for _, w := range weights {
		if w.Sign() < 0 {
			return nil, fmt.Errorf("weight %s: %w", w.RatString(), ErrShare)
		}
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
	parts, sum := whole(weights)
	if sum.Sign() == 0 {
		return nil, fmt.Errorf("%s by weights of 0: %w", m, ErrShare)
	}
	size, sign := new(big.Int).Abs(big.NewInt(m.Minor)), int64(1)
	if m.Minor < 0 {
		sign = -1
	}
	rest := make([]big.Int, len(weights)) // over sum
	left := size.Int64()
	var share big.Int
	for i, w := range parts {
		w.Mul(w, size)
		share.QuoRem(w, sum, &rest[i])
		out[i].Minor = sign * share.Int64()
		left -= share.Int64()
	}
	order := make([]int, len(weights))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return rest[b].Cmp(&rest[a]) })
	for _, i := range order[:left] { // fewer than the remainders above 0
		out[i].Minor += sign
	}
	return out, nil
}

// whole is the weights in whole numbers of one size, and their sum.
func whole(weights []*big.Rat) (parts []*big.Int, sum *big.Int) {
	size := big.NewInt(1) // the least common multiple of the denominators
	var common big.Int
	for _, w := range weights {
		common.GCD(nil, nil, size, w.Denom())
		size.Mul(size, common.Quo(w.Denom(), &common))
	}
	sum = new(big.Int)
	for _, w := range weights {
		part := new(big.Int).Quo(size, w.Denom())
		parts = append(parts, part.Mul(part, w.Num()))
		sum.Add(sum, part)
	}
	return parts, sum
}
