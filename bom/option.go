package bom

import (
	"fmt"
	"math/big"

	"silowright/bom/money"
)

// option is how one item can be had from one supplier, or off the rack alone.
type option struct {
	buys   []Purchase
	goods  money.Money
	left   float64 // bought and not used, in the need's unit
	keep   float64 // of that, worth keeping: whole packs, long offcuts
	bought float64 // in the need's unit
	proven bool
	bound  int64 // goods cannot cost less, in minor units
	cut    *Cutting
	lay    []Lay
}

// total adds the goods up.
func (o *option) total(c money.Currency) error {
	o.goods = money.Money{Currency: c}
	o.bought = 0
	for _, b := range o.buys {
		var err error
		if o.goods, err = o.goods.Plus(b.Amount); err != nil {
			return fmt.Errorf(":%d: price: %w", b.Offer.Row, err)
		}
	}
	return nil
}

// asker works out how a need can be had.
type asker struct {
	need   Need
	exact  *big.Rat // the need's total, exactly as far as it is held
	held   []Held
	used   float64 // off the rack, in the need's unit
	terms  Terms
	remain *big.Rat // what has to be bought, where the need is not cut
}

// ask begins with what is on the rack.
func ask(n Need, held []Held, t Terms) (*asker, error) {
	a := &asker{need: n, held: held, terms: t}
	var ok bool
	if a.exact, ok = exact(n.Total()); !ok || n.Drum < 0 || n.Pipe < 0 {
		return nil, fmt.Errorf(": %s: the quantity needed is out of range; hint: look for a size that is far out", n.Item)
	}
	a.remain = new(big.Rat).Set(a.exact)
	if len(n.Pieces) == 0 && len(n.Flats) == 0 {
		for _, h := range held {
			a.remain.Sub(a.remain, h.all())
		}
		if a.remain.Sign() < 0 {
			a.remain = new(big.Rat)
		}
		a.used, _ = new(big.Rat).Sub(a.exact, a.remain).Float64()
	}
	return a, nil
}

// from works out the least that the item costs at one supplier, whose offers
// these are; ok is false when no pack of theirs will do. No offers at all ask
// whether the rack is enough. Its errors begin where the name of the price list
// ends.
func (a *asker) from(offers []*Offer) (o option, ok bool, err error) {
	for _, f := range offers {
		if !a.sold(f) {
			return o, false, fmt.Errorf(":%d: unit: %s is sold by %q, but a build needs it %s, allowed: %s; hint: what one pack holds",
				f.Row, f.Item, f.Pack, a.need.Kind.by(), unitNames(a.need.Kind))
		}
	}
	packs := packsOf(offers)
	switch {
	case len(a.need.Pieces) > 0:
		o, ok, err = a.sawn(packs)
	case len(a.need.Flats) > 0:
		o, ok, err = a.laid(packs)
	case a.remain.Sign() == 0:
		return option{goods: money.Money{Currency: a.terms.Currency}, proven: true}, true, nil
	case len(packs) == 0:
		return o, false, nil
	default:
		o, err = covered(a.remain, packs)
		o.keep, ok = o.left, true
	}
	if err == nil && ok {
		err = o.total(a.terms.Currency)
	}
	return o, ok, err
}

// sold reports whether an offer is in a unit that the need can be bought in:
// its own, or for what is cut out of a roll by the roll's length.
func (a *asker) sold(o *Offer) bool {
	if len(a.need.Flats) > 0 && o.Kind == Length && o.Width > 0 {
		return true
	}
	return o.Kind == a.need.Kind && o.Width == 0
}
