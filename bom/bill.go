package bom

import (
	"fmt"
	"math"
	"math/big"
	"slices"

	"silowright/bom/money"
)

// Line is one item of a bill.
type Line struct {
	Need
	Offer  *Offer       `json:"offer"`     // what is bought; nil when there is no price
	Choice string       `json:"choice"`    // why that offer, when there were several; or why none
	Packs  int64        `json:"packs"`     // 0 when there is no price
	Amount *money.Money `json:"amount"`    // nil when there is no price
	Left   float64      `json:"left_over"` // bought and not used, in the need's unit
	Drums  *money.Money `json:"drum_silos_share"`
	Pipes  *money.Money `json:"pipe_silos_share"`
}

// Bill is what a build costs in material: nothing is added for tax, freight or
// work. When prices are missing every sum leaves those items out.
type Bill struct {
	DrumSilos  int         `json:"drum_silos"`
	PipeSilos  int         `json:"pipe_silos"`
	Lines      []Line      `json:"lines"`
	Categories []Subtotal  `json:"categories"`
	Total      money.Money `json:"total"`
	Drums      money.Money `json:"drum_silos_share"` // Drums + Pipes = Total
	Pipes      money.Money `json:"pipe_silos_share"`
	PerDrum    money.Money `json:"per_drum_silo"` // Drums over DrumSilos, half away from zero; 0 for none
	PerPipe    money.Money `json:"per_pipe_silo"`
	Missing    []string    `json:"missing_prices"` // items the sums leave out
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

// TotalText is the total for a reader: "incomplete: 3 items without a price,
// the others USD 12.00" when prices are missing.
func (b Bill) TotalText() string {
	switch n := len(b.Missing); {
	case n == 0:
		return b.Total.String()
	case n == 1:
		return "incomplete: 1 item without a price, the others " + b.Total.String()
	default:
		return fmt.Sprintf("incomplete: %d items without a price, the others %s", n, b.Total)
	}
}

// Price prices what a build of so many drum and pipe silos needs, in currency
// c: each item in whole packs of the offer that costs least for the quantity,
// the earlier row of two that cost the same. Pieces are not joined: what is
// sawn comes from whole packs, each as long as its longest piece (see sticks).
// A line is shared between drum and
// pipe silos in proportion to what each uses of it, to whole minor units, so
// that the shares add up to the line and those of all lines to the total. An
// item without a price is listed in Missing and is in no sum. It fails when a
// list is in another currency, when an offer is sold in the wrong kind of
// unit, on a need that is no finite quantity, and past money.Limit.
func Price(needs []Need, list *PriceList, c money.Currency, drums, pipes int) (Bill, error) {
	zero := money.Money{Currency: c}
	b := Bill{DrumSilos: drums, PipeSilos: pipes, Lines: []Line{}, Categories: []Subtotal{}, Missing: []string{},
		Total: zero, Drums: zero, Pipes: zero}
	offers := map[string][]*Offer{}
	for i := range list.Offers {
		o := &list.Offers[i]
		if o.Price.Currency != c {
			return b, fmt.Errorf("%s:%d: price: %s in a bill in %s: %w; hint: one currency a job", list.Name, o.Row, o.Price.Currency, c, money.ErrCurrency)
		}
		offers[itemKey(o.Item)] = append(offers[itemKey(o.Item)], o)
	}
	for _, n := range needs {
		l, err := priced(n, offers[itemKey(n.Item)])
		if err != nil {
			return b, fmt.Errorf("%s%w", list.Name, err)
		}
		if err := b.take(l); err != nil {
			return b, fmt.Errorf("%s: total with %s: %w", list.Name, n.Item, err)
		}
	}
	b.PerDrum, b.PerPipe = b.Drums.Over(int64(drums)), b.Pipes.Over(int64(pipes))
	return b, nil
}

// priced picks the offer for one need. Its errors begin where the name of the
// price list ends.
func priced(n Need, offers []*Offer) (Line, error) {
	l := Line{Need: n}
	need, ok := exact(n.Total())
	drum, pipe := new(big.Rat).SetFloat64(n.Drum), new(big.Rat).SetFloat64(n.Pipe)
	if !ok || drum == nil || pipe == nil || drum.Sign() < 0 || pipe.Sign() < 0 {
		return l, fmt.Errorf(": %s: the quantity needed is out of range; hint: look for a size that is far out", n.Item)
	}
	for _, o := range offers {
		if o.Kind != n.Kind {
			return l, fmt.Errorf(":%d: unit: %s is sold by %q, but a build needs it %s, allowed: %s; hint: what one pack holds",
				o.Row, o.Item, o.Pack, n.Kind.by(), unitNames(n.Kind))
		}
		packs, err := packsFor(need, o.holds)
		if len(n.Pieces) > 0 && err == nil {
			whole := false
			if packs, whole = sticks(n.Pieces, o.holds); !whole {
				continue
			}
		}
		if err != nil {
			return l, fmt.Errorf(":%d: pack: %s: %w", o.Row, o.Item, err)
		}
		amount, err := o.Price.Times(packs)
		if err != nil {
			return l, fmt.Errorf(":%d: price: %d packs of %s: %w", o.Row, packs, o.Item, err)
		}
		if l.Offer == nil || amount.Minor < l.Amount.Minor {
			left := new(big.Rat).Mul(new(big.Rat).SetInt64(packs), o.holds)
			l.Left, _ = left.Sub(left, need).Float64()
			l.Left = max(0, l.Left) // the last piece of a stick needs no kerf
			l.Offer, l.Packs, l.Amount = o, packs, &amount
		}
	}
	if l.Offer == nil {
		if len(offers) > 0 {
			l.Choice = "no pack is as long as the longest piece"
		}
		return l, nil
	}
	if len(offers) > 1 {
		l.Choice = fmt.Sprintf("cheapest of %d offers for this quantity", len(offers))
	}
	shares, err := l.Amount.Split(drum, pipe)
	if err != nil {
		return l, fmt.Errorf(": %s: %w", n.Item, err)
	}
	l.Drums, l.Pipes = &shares[0], &shares[1]
	return l, nil
}

// exact is x as a ratio of the decimal it is held to (see Need.Total).
func exact(x float64) (*big.Rat, bool) {
	if math.IsNaN(x) || math.IsInf(x, 0) || x < 0 || x > largestPack*1e6 {
		return nil, false
	}
	r, ok := new(big.Rat).SetString(fmt.Sprintf("%.6f", x))
	return r, ok
}

// packsFor is the least number of packs that hold a need, at least one for a
// need above 0.
func packsFor(need, holds *big.Rat) (int64, error) {
	q := new(big.Rat).Quo(need, holds)
	n, rest := new(big.Int).QuoRem(q.Num(), q.Denom(), new(big.Int))
	if rest.Sign() > 0 {
		n.Add(n, big.NewInt(1))
	}
	if !n.IsInt64() || n.Int64() > money.Limit {
		return 0, money.ErrTooLarge
	}
	return n.Int64(), nil
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
	}{{&cat.Sum, *l.Amount}, {&b.Total, *l.Amount}, {&b.Drums, *l.Drums}, {&b.Pipes, *l.Pipes}} {
		sum, err := add.to.Plus(add.m)
		if err != nil {
			return err
		}
		*add.to = sum
	}
	return nil
}
