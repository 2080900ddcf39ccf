package bom

import (
	"fmt"
	"math"

	"silowright/bom/money"
)

// Line is one item of a bill.
type Line struct {
	Need
	Offer  *Offer      `json:"offer,omitempty"` // nil when there is no price
	Packs  int64       `json:"packs"`
	Amount money.Money `json:"amount"`
	Left   float64     `json:"left_over"` // bought and not used, in the need's unit
	Drums  money.Money `json:"drum_silos_share"`
	Pipes  money.Money `json:"pipe_silos_share"`
}

// Bill is what a build costs in material.
type Bill struct {
	DrumSilos  int         `json:"drum_silos"`
	PipeSilos  int         `json:"pipe_silos"`
	Lines      []Line      `json:"lines"`
	Categories []Subtotal  `json:"categories"`
	Total      money.Money `json:"total"`
	Drums      money.Money `json:"drum_silos_share"`
	Pipes      money.Money `json:"pipe_silos_share"`
	PerDrum    money.Money `json:"per_drum_silo"`
	PerPipe    money.Money `json:"per_pipe_silo"`
	Missing    []string    `json:"missing_prices"` // items the total leaves out
}

// Subtotal is what one category comes to.
type Subtotal struct {
	Category string      `json:"category"`
	Sum      money.Money `json:"sum"`
}

// Complete reports whether every item had a price.
func (b Bill) Complete() bool { return len(b.Missing) == 0 }

// Price prices what a build needs: each item in whole packs of the offer that
// is cheapest for the quantity (the earlier row on a tie). Each line is shared
// between drum and pipe silos by what each uses of it; shares add up to the
// line, and so to the total. An item without a price is listed in Missing and
// left out of the total. It fails when an offer is in the wrong kind of unit
// and on sums past 10^15 minor units.
func Price(needs []Need, list *PriceList, c money.Currency, drums, pipes int) (Bill, error) {
	b := Bill{DrumSilos: drums, PipeSilos: pipes, Lines: []Line{}, Categories: []Subtotal{}, Missing: []string{}, Total: money.Money{Currency: c}}
	b.Drums, b.Pipes = b.Total, b.Total
	offers := map[string][]*Offer{}
	for i := range list.Offers {
		o := &list.Offers[i]
		offers[o.Item] = append(offers[o.Item], o)
	}
	sums := map[string]money.Money{}
	for _, n := range needs {
		l := Line{Need: n, Amount: money.Money{Currency: c}}
		for _, o := range offers[n.Item] {
			if o.kind != n.Kind {
				return b, fmt.Errorf("%s:%d: unit: %s is sold in %q but is needed in %s; hint: one of %s",
					list.Name, o.Row, n.Item, o.Pack, n.Kind, unitNames)
			}
			packs := packsFor(n.Total(), o.holds)
			amount, err := o.Price.Times(packs)
			if err != nil {
				return b, fmt.Errorf("%s:%d: price: %d packs of %s: %w", list.Name, o.Row, packs, n.Item, err)
			}
			if l.Offer == nil || amount.Minor < l.Amount.Minor {
				l.Offer, l.Packs, l.Amount = o, packs, amount
				l.Left = float64(packs)*o.holds - n.Total()
			}
		}
		if l.Offer == nil {
			b.Missing = append(b.Missing, n.Item)
		}
		l.Drums, l.Pipes = l.Amount.Split(n.Drum, n.Pipe)
		b.Lines = append(b.Lines, l)
		for _, add := range []struct {
			to *money.Money
			m  money.Money
		}{{&b.Total, l.Amount}, {&b.Drums, l.Drums}, {&b.Pipes, l.Pipes}} {
			sum, err := add.to.Plus(add.m)
			if err != nil {
				return b, fmt.Errorf("%s: the total: %w", list.Name, err)
			}
			*add.to = sum
		}
		sum, err := sums[n.Category].Plus(l.Amount)
		if err != nil {
			return b, fmt.Errorf("%s: %s: %w", list.Name, n.Category, err)
		}
		sums[n.Category] = sum
	}
	for _, cat := range Categories() {
		if s, ok := sums[cat]; ok {
			b.Categories = append(b.Categories, Subtotal{cat, s})
		}
	}
	b.PerDrum, b.PerPipe = b.Drums.Over(int64(drums)), b.Pipes.Over(int64(pipes))
	return b, nil
}

// packsFor is how many packs hold an amount; a part in 10^9 over a whole pack
// is rounding and buys no further one.
func packsFor(need, holds float64) int64 {
	return int64(math.Ceil(need/holds - 1e-9))
}
