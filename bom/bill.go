package bom

import (
	"errors"
	"fmt"
	"math"
	"math/big"
	"slices"
	"strings"

	"silowright/bom/money"
)

// Line is one item of a bill.
type Line struct {
	Need
	Supplier string       `json:"supplier"` // "" when none is named, or nothing is bought
	Buys     []Purchase   `json:"buys"`     // what is bought; none when there is no price or the rack holds enough
	Rack     float64      `json:"from_the_rack"`
	Choice   string       `json:"choice"` // why that offer, when there were several; or why none
	Amount   *money.Money `json:"amount"` // of goods; nil when there is no price
	Proven   bool         `json:"proven_least"`
	Left     float64      `json:"left_over"` // bought and not used, in the need's unit
	Worth    *money.Money `json:"left_over_worth"`
	Drums    *money.Money `json:"drum_silos_share"`
	Pipes    *money.Money `json:"pipe_silos_share"`
	Cutting  *Cutting     `json:"cutting,omitempty"`
	Lays     []Lay        `json:"lays,omitempty"`
}

// Bill is what a build costs in material, with shipping and tax: nothing is
// added for work. When prices are missing every sum leaves those items out.
type Bill struct {
	DrumSilos  int         `json:"drum_silos"`
	PipeSilos  int         `json:"pipe_silos"`
	Lines      []Line      `json:"lines"`
	Categories []Subtotal  `json:"categories"` // of goods
	Orders     []Order     `json:"orders"`     // one a supplier, in the order of the price list
	Goods      money.Money `json:"goods"`
	TopUp      money.Money `json:"top_up"`
	Shipping   money.Money `json:"shipping"`
	Tax        money.Money `json:"tax"`
	Total      money.Money `json:"total"`            // goods, top-up, shipping and tax
	Drums      money.Money `json:"drum_silos_share"` // Drums + Pipes = Total
	Pipes      money.Money `json:"pipe_silos_share"`
	PerDrum    money.Money `json:"per_drum_silo"` // Drums over DrumSilos, half away from zero; 0 for none
	PerPipe    money.Money `json:"per_pipe_silo"`
	Leftovers  money.Money `json:"left_over_worth"` // what is left in packs and kept offcuts, at the price paid
	Missing    []string    `json:"missing_prices"`  // items the sums leave out
	Warnings   []string    `json:"warnings"`        // old quotations; things on the rack, choices and suppliers that nothing uses
	Proven     bool        `json:"orders_proven_least"`
	Over       money.Money `json:"orders_at_most_above"` // how far the orders are at most above the least possible
}

// Subtotal is what one category comes to.
type Subtotal struct {
	Category string      `json:"category"`
	Sum      money.Money `json:"sum"`
	Items    int         `json:"items"`
	Missing  int         `json:"missing_prices"` // of Items: how many the sum leaves out
}

// Text is the sum for a reader: "no price" when no item of the category has
// one, and marked when some have none.
func (s Subtotal) Text() string { return sumText(s.Sum.Plain(), s.Items, s.Missing) }

// InCurrency is Text with the currency and thousands apart.
func (s Subtotal) InCurrency() string { return sumText(s.Sum.String(), s.Items, s.Missing) }

func sumText(sum string, items, missing int) string {
	switch {
	case items > 0 && missing == items:
		return "no price"
	case missing > 0:
		return "incomplete: " + sum
	}
	return sum
}

// Complete reports whether every item had a price.
func (b Bill) Complete() bool { return len(b.Missing) == 0 }

// Incomplete is a sum over all items for a reader: "incomplete: 3 items without
// a price, the others USD 12.00" when prices are missing.
func (b Bill) Incomplete(sum money.Money) string {
	switch n := len(b.Missing); {
	case n == 0:
		return sum.String()
	case n == 1:
		return "incomplete: 1 item without a price, the others " + sum.String()
	default:
		return fmt.Sprintf("incomplete: %d items without a price, the others %s", n, sum)
	}
}

// Buy prices what a build of so many drum and pipe silos needs, on the terms
// given: what is on the rack is used first, and the rest bought in whole packs,
// each item from one supplier, so that all orders with shipping and tax come to
// least. Pieces are sawn by the least costly cutting plan, flat parts laid on
// the shortest length found. A line is shared between drum and pipe silos in
// proportion to what each uses of it, to whole minor units, and an order's
// shipping and tax in proportion to its goods, so that the shares add up to the
// total. An item without a price is listed in Missing and is in no sum. It
// fails when a list is in another currency than the terms, when an offer is
// sold in the wrong kind of unit, on a need that is no finite quantity, on
// something held that cannot be of use, and past money.Limit.
func Buy(needs []Need, list *PriceList, held []Held, t Terms, drums, pipes int) (Bill, error) {
	b, err := buy(needs, list, held, t, drums, pipes)
	if errors.Is(err, money.ErrTooLarge) && !strings.Contains(err.Error(), "; hint: ") {
		err = fmt.Errorf("%w; hint: look for a price, a pack or a count that is far out", err)
	}
	return b, err
}

func buy(needs []Need, list *PriceList, held []Held, t Terms, drums, pipes int) (Bill, error) {
	s := shopping{list: list, terms: t, bill: Bill{DrumSilos: drums, PipeSilos: pipes, Lines: []Line{}, Categories: []Subtotal{},
		Orders: []Order{}, Missing: []string{}, Warnings: []string{}}}
	for _, m := range s.bill.sums() {
		m.Currency = t.Currency
	}
	if list.Currency != t.Currency {
		return s.bill, fmt.Errorf("%s: prices in %s in a bill in %s: %w; hint: one currency a job", list.Name, list.Currency, t.Currency, money.ErrCurrency)
	}
	if err := s.sellers(); err != nil {
		return s.bill, err
	}
	rack := rackOf(held)
	for _, n := range needs {
		h, err := rack.of(n)
		if err != nil {
			return s.bill, err
		}
		if err := s.offered(n, h); err != nil {
			return s.bill, fmt.Errorf("%s%w", list.Name, err)
		}
	}
	if err := s.order(); err != nil {
		return s.bill, err
	}
	s.warn(needs, held)
	return s.bill, nil
}

// sums are the bill's amounts of money.
func (b *Bill) sums() []*money.Money {
	return []*money.Money{&b.Goods, &b.TopUp, &b.Shipping, &b.Tax, &b.Total, &b.Drums, &b.Pipes, &b.Leftovers, &b.Over}
}

// exact is x as a ratio of the decimal it is held to (see Need.Total).
func exact(x float64) (*big.Rat, bool) {
	if math.IsNaN(x) || math.IsInf(x, 0) || x < 0 || x > largestPack*1e6 {
		return nil, false
	}
	if n := math.Round(x * 1e6); n < 1<<53 {
		return big.NewRat(int64(n), 1e6), true
	}
	r, ok := new(big.Rat).SetString(fmt.Sprintf("%.6f", x))
	return r, ok
}

// take puts a line on the bill and into its sums.
func (b *Bill) take(l Line) error {
	b.Lines = append(b.Lines, l)
	at := slices.IndexFunc(b.Categories, func(s Subtotal) bool { return s.Category == l.Category })
	if at < 0 {
		at = len(b.Categories)
		b.Categories = append(b.Categories, Subtotal{Category: l.Category, Sum: money.Money{Currency: b.Total.Currency}})
	}
	cat := &b.Categories[at]
	cat.Items++
	if l.Amount == nil {
		cat.Missing++
		b.Missing = append(b.Missing, l.Item)
		return nil
	}
	for _, add := range []struct {
		to *money.Money
		m  money.Money
	}{{&cat.Sum, *l.Amount}, {&b.Goods, *l.Amount}, {&b.Drums, *l.Drums}, {&b.Pipes, *l.Pipes}, {&b.Leftovers, *l.Worth}} {
		sum, err := add.to.Plus(add.m)
		if err != nil {
			return err
		}
		*add.to = sum
	}
	return nil
}
