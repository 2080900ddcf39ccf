package bom

import (
	"fmt"
	"math/big"
	"slices"

	"silowright/bom/basket"
	"silowright/bom/money"
)

// Order is what is sent to one supplier.
type Order struct {
	Supplier string      `json:"supplier"` // "" when the list names none
	Items    []string    `json:"items"`    // of the bill's lines
	Goods    money.Money `json:"goods"`
	TopUp    money.Money `json:"top_up"` // to be spent on anything else, to reach the least order or free shipping
	Shipping money.Money `json:"shipping"`
	Tax      money.Money `json:"tax"`
	Total    money.Money `json:"total"`
}

// amount is a named amount of money.
type amount struct {
	Name string
	Sum  money.Money
}

// amounts are an order's amounts in the order they are added up, without those
// that are nothing.
func (o Order) amounts() []amount {
	out := []amount{{"goods", o.Goods}}
	for _, x := range []amount{{"to be spent on anything else", o.TopUp}, {"shipping", o.Shipping}, {"tax", o.Tax}} {
		if x.Sum.Minor != 0 {
			out = append(out, x)
		}
	}
	return append(out, amount{"order total", o.Total})
}

// shopping is a bill being made.
type shopping struct {
	list   *PriceList
	terms  Terms
	names  []string // of suppliers, in the order of the list
	sells  []basket.Seller
	offers map[string][][]*Offer // by item and supplier
	asked  []asked
	bill   Bill
}

// asked is one need with the ways it can be had, one a supplier.
type asked struct {
	need    Need
	rack    float64
	held    []Held
	options []option
	ok      []bool
	offers  int    // rows of the list
	sources int    // suppliers that can fill it
	why     string // why nobody can
}

// sellers lists the suppliers and sorts the offers by item and supplier.
func (s *shopping) sellers() error {
	s.offers = map[string][][]*Offer{}
	for i := range s.list.Offers {
		o := &s.list.Offers[i]
		if o.Price.Currency != s.terms.Currency {
			return fmt.Errorf("%s:%d: price: %s in a bill in %s: %w; hint: one currency a job", s.list.Name, o.Row, o.Price.Currency, s.terms.Currency, money.ErrCurrency)
		}
		at := slices.IndexFunc(s.names, func(n string) bool { return n == o.Supplier || itemKey(n) == itemKey(o.Supplier) })
		if at < 0 {
			at = len(s.names)
			s.names = append(s.names, o.Supplier)
		}
		key := o.key
		if key == "" {
			key = itemKey(o.Item)
		}
		for len(s.offers[key]) <= at {
			s.offers[key] = append(s.offers[key], nil)
		}
		s.offers[key][at] = append(s.offers[key][at], o)
	}
	for _, name := range s.names {
		c := s.terms.supplier(name)
		b := basket.Seller{Shipping: c.Shipping.Minor, Minimum: c.Minimum.Minor, FreeFrom: -1, Tax: int64(s.terms.Tax), TaxShipping: s.terms.TaxShipping}
		if c.FreeFrom != nil {
			b.FreeFrom = c.FreeFrom.Minor
		}
		if c.Tax != nil {
			b.Tax = int64(*c.Tax)
		}
		s.sells = append(s.sells, b)
	}
	return nil
}

// offered works out how a need can be had from each supplier. Its errors begin
// where the name of the price list ends.
func (s *shopping) offered(n Need, held []Held) error {
	a, err := ask(n, held, s.terms)
	if err != nil {
		return err
	}
	q := asked{need: n, held: held, options: make([]option, len(s.names)+1), ok: make([]bool, len(s.names)+1)}
	rack := len(s.names) // the last option is the rack alone
	if q.options[rack], q.ok[rack], err = a.from(nil); err != nil {
		return err
	}
	q.rack = a.used
	if !q.ok[rack] {
		if err := s.askAll(a, &q); err != nil {
			return err
		}
	}
	s.asked = append(s.asked, q)
	return nil
}

// askAll asks every supplier that may sell the item.
func (s *shopping) askAll(a *asker, q *asked) error {
	only := s.terms.chosen(a.need.Item)
	known := only == ""
	for i, offers := range s.offers[itemKey(a.need.Item)] {
		if len(offers) == 0 {
			continue
		}
		q.offers += len(offers)
		o, ok, err := a.from(offers)
		if err != nil {
			return err
		}
		if itemKey(only) == itemKey(s.names[i]) {
			known = true
		}
		if q.options[i], q.ok[i] = o, ok && (only == "" || itemKey(only) == itemKey(s.names[i])); q.ok[i] {
			q.sources++
		}
	}
	switch {
	case q.sources > 0 || q.offers == 0:
	case !known:
		q.why = "the supplier that the job chooses, " + only + ", has no offer"
	case len(a.need.Pieces) > 0:
		q.why = "no pack is as long as the longest piece"
	case len(a.need.Flats) > 0:
		q.why = "no roll or sheet is as wide and long as the largest part"
	}
	return nil
}

// order picks the suppliers and makes the lines and the orders.
func (s *shopping) order() error {
	var items []basket.Item
	var at []int
	for i, q := range s.asked {
		if q.sources == 0 {
			continue
		}
		item := make(basket.Item, len(s.names))
		for k := range item {
			if item[k] = -1; q.ok[k] {
				item[k] = q.options[k].goods.Minor
			}
		}
		items, at = append(items, item), append(at, i)
	}
	got, err := basket.Cheapest(items, s.sells)
	if err != nil {
		return fmt.Errorf("%s: total: %w", s.list.Name, money.ErrTooLarge)
	}
	seller := make([]int, len(s.asked))
	for i := range seller {
		seller[i] = -1
	}
	for k, i := range at {
		seller[i] = got.Seller[k]
	}
	s.bill.Proven, s.bill.Over.Minor = got.Proven, got.Cost-got.Bound
	for i, q := range s.asked {
		l, err := s.line(q, seller[i])
		if err != nil {
			return fmt.Errorf("%s: %s: %w", s.list.Name, q.need.Item, err)
		}
		if err := s.bill.take(l); err != nil {
			return fmt.Errorf("%s: total with %s: %w", s.list.Name, q.need.Item, err)
		}
	}
	for k, o := range got.Orders {
		if err := s.send(k, o); err != nil {
			return fmt.Errorf("%s: total: %w", s.list.Name, err)
		}
	}
	return s.close()
}

// line is the bill's line for what was asked, from one seller, or from none.
func (s *shopping) line(q asked, seller int) (Line, error) {
	l := Line{Need: q.need, Buys: []Purchase{}, Choice: q.why, Rack: q.rack}
	var o option
	switch {
	case seller >= 0:
		o = q.options[seller]
		l.Supplier, l.Choice = s.names[seller], q.choice(s.terms)
	case q.ok[len(s.names)]:
		o = q.options[len(s.names)]
		l.Choice = "on the rack"
	default:
		return l, nil
	}
	if o.buys != nil {
		l.Buys = o.buys
	}
	amount := o.goods
	amount.Currency = s.terms.Currency
	l.Amount, l.Proven, l.Left, l.Cutting, l.Lays = &amount, o.proven, o.left, o.cut, o.lay
	worth, err := o.worth(amount)
	if err != nil {
		return l, err
	}
	l.Worth = &worth
	l.Rack = q.fromRack(o)
	shares, err := amount.Split(bigRat(q.need.Drum), bigRat(q.need.Pipe))
	if err != nil {
		return l, err
	}
	l.Drums, l.Pipes = &shares[0], &shares[1]
	return l, nil
}

// choice says why an offer was taken.
func (q asked) choice(t Terms) string {
	switch {
	case t.chosen(q.need.Item) != "":
		return "supplier set by the job"
	case q.sources > 1:
		return fmt.Sprintf("least with all orders counted, of %d offers from %d suppliers", q.offers, q.sources)
	case q.offers > 1:
		return fmt.Sprintf("cheapest of %d offers for this quantity", q.offers)
	}
	return ""
}

// fromRack is how much comes off the rack, in the need's unit.
func (q asked) fromRack(o option) float64 {
	sum := q.rack
	if o.cut != nil {
		for _, st := range o.cut.Sticks {
			if st.Rack {
				sum += float64(st.Count) * float64(st.Length-st.Offcut)
			}
		}
	}
	for _, l := range o.lay {
		for _, p := range l.Parts {
			if l.Rack {
				sum += float64(l.Count*p.Count) * p.Across.Times(p.Across).MM2()
			}
		}
	}
	return sum
}

// worth is what is worth keeping of what was bought, at the price paid.
func (o option) worth(amount money.Money) (money.Money, error) {
	bought := 0.0
	for _, b := range o.buys {
		one := b.Offer.Holds
		if b.Offer.Width > 0 {
			one *= b.Offer.Width.MM()
		}
		bought += one * float64(b.Packs)
	}
	if bought <= 0 || o.keep <= 0 {
		return money.Money{Currency: amount.Currency}, nil
	}
	return amount.TimesRat(new(big.Rat).SetFloat64(min(1, o.keep/bought)))
}

func bigRat(x float64) *big.Rat { return new(big.Rat).SetFloat64(x) } // needs are finite: see ask

// send puts an order on the bill.
func (s *shopping) send(seller int, o basket.Order) error {
	of := func(minor int64) money.Money { return money.Money{Minor: minor, Currency: s.terms.Currency} }
	out := Order{Supplier: s.names[seller], Items: []string{}, Goods: of(o.Goods), TopUp: of(o.TopUp), Shipping: of(o.Shipping), Tax: of(o.Tax), Total: of(o.Total)}
	drums, pipes := new(big.Rat), new(big.Rat)
	for _, l := range s.bill.Lines {
		if len(l.Buys) > 0 && l.Supplier == out.Supplier {
			out.Items = append(out.Items, l.Item)
			drums.Add(drums, new(big.Rat).SetInt64(l.Drums.Minor))
			pipes.Add(pipes, new(big.Rat).SetInt64(l.Pipes.Minor))
		}
	}
	if len(out.Items) == 0 {
		return nil
	}
	if drums.Sign() == 0 && pipes.Sign() == 0 {
		drums.SetInt64(int64(s.bill.DrumSilos))
		pipes.SetInt64(int64(s.bill.PipeSilos))
	}
	s.bill.Orders = append(s.bill.Orders, out)
	extra := of(o.TopUp + o.Shipping + o.Tax)
	shares, err := extra.Split(drums, pipes)
	if err != nil {
		return err
	}
	return adds(add{&s.bill.TopUp, out.TopUp}, add{&s.bill.Shipping, out.Shipping}, add{&s.bill.Tax, out.Tax},
		add{&s.bill.Drums, shares[0]}, add{&s.bill.Pipes, shares[1]})
}

// close adds the bill up.
func (s *shopping) close() error {
	b := &s.bill
	if err := adds(add{&b.Total, b.Goods}, add{&b.Total, b.TopUp}, add{&b.Total, b.Shipping}, add{&b.Total, b.Tax}); err != nil {
		return fmt.Errorf("%s: total: %w", s.list.Name, err)
	}
	b.PerDrum, b.PerPipe = b.Drums.Over(int64(b.DrumSilos)), b.Pipes.Over(int64(b.PipeSilos))
	return nil
}

// add is an amount and what it is added to.
type add struct {
	to *money.Money
	m  money.Money
}

func adds(list ...add) error {
	for _, a := range list {
		sum, err := a.to.Plus(a.m)
		if err != nil {
			return err
		}
		*a.to = sum
	}
	return nil
}
