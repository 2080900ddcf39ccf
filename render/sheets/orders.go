package sheets

import "silowright/render"

// Order is what one supplier is sent.
type Order struct {
	Supplier string
	Rows     []OrderRow
	Sums     OrderSums
	Notes    []string // such as a minimum order
}

// OrderRow is one line of an order, amounts written out.
type OrderRow struct {
	Item        string // the price list's own name
	Description string
	Pack        string // what it is sold in
	Packs       string // how many of those
	Each        string // price of one pack; "" when there is none
	Amount      string
	Quoted      string // date of the quotation
}

// OrderSums are the sums at the foot of an order, written out; "" leaves a
// line out.
type OrderSums struct{ Goods, Shipping, Tax, Total string }

func setOrders(f *flow, p *Pack) {
	if len(p.Orders) == 0 {
		f.para("No orders were worked out for this pack.")
		return
	}
	f.para("One list to send to each supplier. Ask for the prices again before you order: they are those quoted on the date beside them.")
	if p.Bill.Invented || p.Cost != nil && p.Cost.Invented {
		f.box(true, boxed{words: "Suppliers and prices are invented for this example. Send nothing.", bold: true, size: medium, mark: careMark})
	}
	for _, o := range p.Orders {
		f.order(o, p.Bill.Currency)
	}
}

// order sets one supplier's list, on one page where a page can hold it.
func (f *flow) order(o Order, currency string) {
	t := o.table(currency)
	tall := f.tallOf(t)
	for _, n := range o.Notes {
		tall += length(len(render.Wrap(f.safe(n), small, false, f.wide()-5)))*lead(small) + 1.2
	}
	room := f.tableStart(t)
	if tall+14 <= f.bottom()-topY {
		room = tall
	}
	f.headingOver("Order to "+o.Supplier, room)
	f.table(t)
	f.items(o.Notes...)
}

// table is an order's list with its sums at the foot.
func (o Order) table(currency string) table {
	b, unit := Bill{Currency: currency}, ""
	if currency != "" {
		unit = ", " + currency
	}
	t := table{cols: []column{{head: "Sent", share: 12}, {head: "Item", share: 56, bold: true}, {head: "Quoted", share: 25}, {head: "Sold in", share: 26},
		{head: "Packs", share: 15, right: true}, {head: "Each" + unit, share: 24, right: true}, {head: "Sum" + unit, share: 26, right: true}}}
	for _, r := range o.Rows {
		each, sum := b.bare(r.Each), b.bare(r.Amount)
		if sum == "" {
			each, sum = "–", "no price"
		}
		t.add(cell{mark: tickBox, paras: []string{""}}, strong(r.Item, r.Description), say(r.Quoted), say(r.Pack), say(r.Packs), say(each), say(sum))
	}
	for _, a := range []Amount{{"Goods", o.Sums.Goods}, {"Shipping", o.Sums.Shipping}, {"Tax", o.Sums.Tax}, {"Order total", o.Sums.Total}} {
		if a.Sum == "" {
			continue
		}
		sum := say(b.bare(a.Sum))
		sum.bold = a.Name == "Order total"
		foot := []cell{say(""), say(a.Name), {}, {}, {}, {}, sum}
		for i := range foot {
			foot[i].shade = 0.05
		}
		t.add(foot...)
	}
	return t
}
