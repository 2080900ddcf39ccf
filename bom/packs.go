package bom

import (
	"fmt"
	"math"
	"math/big"
	"slices"

	"silowright/bom/cover"
	"silowright/bom/money"
)

// Purchase is one row of what is bought: so many packs of an offer.
type Purchase struct {
	Offer  *Offer      `json:"offer"`
	Packs  int64       `json:"packs"`
	Price  money.Money `json:"price"` // of one pack, at this many
	Amount money.Money `json:"amount"`
}

// pack is what one supplier sells under one description: an offer with its
// tiers, the price for the fewest first.
type pack struct{ tiers []*Offer }

func (p pack) first() *Offer { return p.tiers[0] }

// at is the tier that so many packs are bought at; nil when that is fewer than
// are sold.
func (p pack) at(n int64) *Offer {
	var out *Offer
	for _, o := range p.tiers {
		if n >= o.From {
			out = o
		}
	}
	return out
}

// cheapest is the lowest price of one, in minor units, at whatever count.
func (p pack) cheapest() int64 {
	least := p.first().Price.Minor
	for _, t := range p.tiers {
		least = min(least, t.Price.Minor)
	}
	return least
}

// mostMixed is how many whole packs of a mixture are gone through.
const mostMixed = 100_000

// leastMixed is a certain bound, in minor units, on what a length costs out of
// packs of every kind together. Whole packs, of each of which trim is lost, are
// gone through by their count where they are of one kind, and the rest is cut to
// length; else the whole length is taken at the lowest price for a length, and for
// no less than one pack.
func leastMixed(length, trim float64, packs []pack) int64 {
	if length <= 0 {
		return 0
	}
	rate, one := math.Inf(1), int64(math.MaxInt64)
	var whole, cut []pack
	for _, p := range packs {
		one = min(one, p.cheapest())
		rate = min(rate, float64(p.cheapest())/p.first().Holds)
		if p.first().ByLength {
			cut = append(cut, p)
		} else {
			whole = append(whole, p)
		}
	}
	up := func(x float64) int64 { return int64(math.Ceil(x * (1 - 1e-9))) }
	least := max(one, up(length*rate))
	if len(whole) != 1 || len(cut) != 1 || length > mostMixed*(whole[0].first().Holds-trim) {
		return least
	}
	best := int64(math.MaxInt64)
	for k := int64(0); ; k++ {
		left := length - float64(k)*(whole[0].first().Holds-trim)
		cost := k * whole[0].cheapest()
		if left <= 0 {
			return max(least, min(best, cost))
		}
		best = min(best, cost+up(left/cut[0].first().Holds)*cut[0].cheapest())
	}
}

// buy is so many of the pack.
func (p pack) buy(n int64) (Purchase, error) {
	o := p.at(n)
	amount, err := o.Price.Times(n)
	if err != nil {
		return Purchase{}, fmt.Errorf(":%d: price: %d packs of %s: %w", o.Row, n, o.Item, err)
	}
	return Purchase{o, n, o.Price, amount}, nil
}

// atLeast is the purchase that holds at least so many of the pack for the least
// money: more of them than are needed where a tier makes them cost less.
func (p pack) atLeast(n int64) (Purchase, error) {
	best, err := p.buy(max(n, p.first().From))
	if err != nil {
		return best, err
	}
	for _, t := range p.tiers {
		if t.From <= n {
			continue
		}
		if more, err := p.buy(t.From); err == nil && more.Amount.Minor < best.Amount.Minor {
			best = more
		}
	}
	return best, nil
}

// falls reports whether a pack never costs more when more are bought, so that
// what is needed is bought in one purchase.
func (p pack) falls() bool {
	for i := range p.tiers[1:] {
		if p.tiers[i+1].Price.Minor > p.tiers[i].Price.Minor {
			return false
		}
	}
	return true
}

// leastFor turns low, a certain bound in minor units with every pack at its
// lowest price, into one at the price of the count that it stands for. It holds
// where nothing but this pack is sold.
func (p pack) leastFor(low int64) int64 {
	if !p.falls() || p.cheapest() <= 0 {
		return low
	}
	n := (low + p.cheapest() - 1) / p.cheapest()
	if n == 0 {
		return low
	}
	b, err := p.atLeast(n)
	if err != nil {
		return low
	}
	return max(low, b.Amount.Minor)
}

// packsOf puts offers that differ in from and price alone together as tiers.
func packsOf(offers []*Offer) []pack {
	var out []pack
	for _, o := range offers {
		at := slices.IndexFunc(out, func(p pack) bool {
			q := p.first()
			return q.holds.Cmp(o.holds) == 0 && q.Width == o.Width && q.ByLength == o.ByLength && q.Kind == o.Kind &&
				!slices.ContainsFunc(p.tiers, func(t *Offer) bool { return t.From == o.From })
		})
		if at < 0 {
			out = append(out, pack{})
			at = len(out) - 1
		}
		out[at].tiers = append(out[at].tiers, o)
	}
	for _, p := range out {
		slices.SortStableFunc(p.tiers, func(a, b *Offer) int { return int(min(max(a.From-b.From, -1), 1)) })
	}
	return out
}

// covered buys packs that hold at least need, for the least money. Its errors
// begin where the name of the price list ends.
func covered(need *big.Rat, packs []pack) (option, error) {
	var o option
	sizes := make([]*big.Rat, len(packs))
	for i, p := range packs {
		sizes[i] = p.first().holds
	}
	whole, holds, ok := inWholes(need, sizes)
	if !ok {
		return o, fmt.Errorf(":%d: pack: %s: %w", packs[0].first().Row, packs[0].first().Item, money.ErrTooLarge)
	}
	ask := make([]cover.Pack, len(packs))
	for i, p := range packs {
		ask[i].Holds = holds[i]
		for _, t := range p.tiers {
			ask[i].Tiers = append(ask[i].Tiers, cover.Tier{From: t.From, Price: t.Price.Minor})
		}
	}
	got, err := cover.Least(whole, ask)
	if err != nil {
		return o, fmt.Errorf(":%d: pack: %s: %w", packs[0].first().Row, packs[0].first().Item, money.ErrTooLarge)
	}
	bought := new(big.Rat)
	for i, n := range got.Counts {
		if n == 0 {
			continue
		}
		b, err := packs[i].buy(n)
		if err != nil {
			return o, err
		}
		o.buys = append(o.buys, b)
		bought.Add(bought, new(big.Rat).Mul(new(big.Rat).SetInt64(n), sizes[i]))
	}
	o.proven, o.bound = got.Proven, got.Bound
	o.left, _ = bought.Sub(bought, need).Float64()
	o.left = max(0, o.left)
	return o, nil
}

// inWholes writes a need and pack sizes as whole numbers of one small unit:
// exactly where that stays in range, else in millionths of the kind's unit, the
// need rounded up and the packs down. It is false past any range.
func inWholes(need *big.Rat, sizes []*big.Rat) (int64, []int64, bool) {
	scale := new(big.Int).Set(need.Denom())
	for _, s := range sizes {
		g := new(big.Int).GCD(nil, nil, scale, s.Denom())
		scale.Mul(scale, new(big.Int).Quo(s.Denom(), g))
	}
	for _, by := range []*big.Int{scale, big.NewInt(1_000_000), big.NewInt(1)} {
		n, ok := scaled(need, by, true)
		out := make([]int64, len(sizes))
		for i, s := range sizes {
			h, fits := scaled(s, by, false)
			out[i], ok = h, ok && fits && h > 0
		}
		if ok {
			return n, out, true
		}
	}
	return 0, nil, false
}

// scaled is r times by as a whole number, rounded up or down; false when it is
// out of range.
func scaled(r *big.Rat, by *big.Int, up bool) (int64, bool) {
	n := new(big.Int).Mul(r.Num(), by)
	q, rest := n.QuoRem(n, r.Denom(), new(big.Int))
	if up && rest.Sign() > 0 {
		q.Add(q, big.NewInt(1))
	}
	return q.Int64(), q.IsInt64() && q.Int64() <= 1_000_000_000_000_000
}
