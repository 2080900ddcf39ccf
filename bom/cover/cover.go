// Package cover finds the packs that hold at least a quantity for the least
// money: boxes, cartridges, cans of several sizes, each with a price that may
// fall with the number bought. Quantities and money are whole numbers; there
// is no floating point and no clock in it.
package cover

import (
	"errors"
	"fmt"
)

// Limit is the largest need, content of a pack, price and cost, and the
// largest From of a tier.
const Limit = 1_000_000_000_000_000

var (
	// ErrTooLarge is wrapped by the error for a need that no choice of packs
	// meets at a cost of at most Limit.
	ErrTooLarge = errors.New("too large")
	// ErrInput is wrapped by the errors for a need or a pack out of range.
	ErrInput = errors.New("out of range")
)

// Tier is the price of one pack when From packs or more of its kind are
// bought, up to the next tier's From. It holds for all of them (an all-units
// discount), so that From packs may cost less than From−1.
type Tier struct {
	From  int64 // packs, 1 to Limit
	Price int64 // of one pack in minor units of money, 0 to Limit
}

// Pack is a kind of pack on sale. Its tiers stand with From rising. The first
// From above 1 is the least number that is sold at all. A price may rise from
// tier to tier, too: what is bought is then not split into smaller orders.
type Pack struct {
	Holds int64 // in the unit of the need, 1 to Limit
	Tiers []Tier
}

// Choice is what to buy.
type Choice struct {
	Counts []int64 // packs of each kind
	Cost   int64   // minor units of money
	Bound  int64   // no choice costs less; equal to Cost when Proven
	Proven bool    // Cost is the least there is
}

// The limits of the search in steps, of about 20 ns each: for the least cost,
// and then for the fewest packs at that cost.
const (
	costSteps = 200_000
	tieSteps  = 50_000
)

// Least finds the packs that hold need or more at the least cost. Buying more
// than is needed to reach a lower tier is allowed. Of choices that cost the
// same it takes the one with the fewest packs, then the one with more of the
// earlier pack; where there are so many that the step limit ends the
// comparison, the best of those seen. A need of 0 takes nothing.
//
// The work does not grow with need. When the step limit ends the search for
// the cost, Proven is false, Cost the best found and Bound still certain.
//
// Errors wrap ErrInput, or ErrTooLarge when every choice found costs more
// than Limit.
func Least(need int64, packs []Pack) (Choice, error) {
	return least(need, packs, costSteps, tieSteps)
}

func least(need int64, packs []Pack, costSteps, tieSteps int) (Choice, error) {
	if err := check(need, packs); err != nil {
		return Choice{}, err
	}
	if need == 0 {
		return Choice{Counts: make([]int64, len(packs)), Proven: true}, nil
	}
	s, unit := newSearch(need, packs)
	s.singles()
	proven, bound := true, s.cost
	if len(s.kinds) > 1 {
		proven, bound = s.run(costSteps, tieSteps)
	}
	if s.cost > s.most {
		return Choice{}, fmt.Errorf("need: %d takes packs for more than %d in minor units of money, %w; hint: is the unit of the need that of the packs?",
			need, int64(Limit), ErrTooLarge)
	}
	return Choice{Counts: s.best, Cost: s.cost * unit, Bound: bound * unit, Proven: proven}, nil
}

func check(need int64, packs []Pack) error {
	if need < 0 || need > Limit {
		return fmt.Errorf("need: %d is %w, allowed: 0 to %d; hint: a coarser unit", need, ErrInput, int64(Limit))
	}
	if len(packs) == 0 && need > 0 {
		return fmt.Errorf("packs: there are none, %w, allowed: 1 or more; hint: give the item a price", ErrInput)
	}
	for i, p := range packs {
		if p.Holds < 1 || p.Holds > Limit {
			return fmt.Errorf("packs[%d].holds: %d is %w, allowed: 1 to %d; hint: what one pack holds", i, p.Holds, ErrInput, int64(Limit))
		}
		if len(p.Tiers) == 0 {
			return fmt.Errorf("packs[%d].tiers: there are none, %w, allowed: 1 or more; hint: leave a pack without a price out", i, ErrInput)
		}
		last := int64(0)
		for k, t := range p.Tiers {
			if t.From <= last || t.From > Limit {
				return fmt.Errorf("packs[%d].tiers[%d].from: %d is %w, allowed: %d to %d; hint: tiers stand with their quantity rising",
					i, k, t.From, ErrInput, last+1, int64(Limit))
			}
			if t.Price < 0 || t.Price > Limit {
				return fmt.Errorf("packs[%d].tiers[%d].price: %d is %w, allowed: 0 to %d; hint: minor units of money", i, k, t.Price, ErrInput, int64(Limit))
			}
			last = t.From
		}
	}
	return nil
}
