package sheets

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
}
