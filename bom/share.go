package bom

import (
	"math/big"

	"silowright/bom/money"
	"silowright/geometry/measure"
)

// Share is a part of a whole in parts per million, exact: 8.25 % is 82,500.
type Share int64

// Whole is the share that is everything.
const Whole Share = 1_000_000

// Of is that share of m, rounded half away from zero to a whole minor unit. It
// fails past money.Limit.
func (s Share) Of(m money.Money) (money.Money, error) {
	return m.TimesRat(big.NewRat(int64(s), int64(Whole)))
}

// Percent writes the share as "8.25 %".
func (s Share) Percent() string { return measure.Number(float64(s)/1e4, 4) + " %" }
