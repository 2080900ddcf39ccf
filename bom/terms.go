package bom

import (
	"silowright/bom/money"
	"silowright/geometry/measure"
)

// Terms are what a build is bought on: the suppliers' own conditions, tax, how
// old a quotation may be, and what the saw can hold.
type Terms struct {
	Currency    money.Currency
	Tax         Share      // of goods, at suppliers that state none of their own
	TaxShipping bool       // shipping is taxed too
	Suppliers   []Supplier // conditions by name; a supplier not listed ships free
	Choose      []Chosen   // items that come from one supplier whatever another asks
	Date        string     // the day quotations are aged by, ISO 8601; empty: the newest quotation's own
	QuoteDays   int        // a quotation older than this is warned of; 0 never
	Saw         Bench
}

// Supplier is what one supplier asks of an order.
type Supplier struct {
	Name     string
	Shipping money.Money  // for each order
	FreeFrom *money.Money // goods from which shipping is free; nil never
	Minimum  money.Money  // least goods of an order
	Tax      *Share       // nil takes the terms' own
}

// Chosen fixes the supplier of an item.
type Chosen struct{ Item, Supplier string }

// Bench is how pipe is sawn.
type Bench struct {
	Trim measure.Length // cut off one end of every stick first
	Hold measure.Length // the shortest piece the saw's clamp can hold
	Keep measure.Length // offcuts at least this long go back on the rack
}

// supplier finds the conditions of a supplier by name.
func (t Terms) supplier(name string) Supplier {
	for _, s := range t.Suppliers {
		if itemKey(s.Name) == itemKey(name) {
			return s
		}
	}
	return Supplier{Name: name}
}

// chosen is the supplier fixed for an item; "" for none.
func (t Terms) chosen(item string) string {
	for _, c := range t.Choose {
		if itemKey(c.Item) == itemKey(item) {
			return c.Supplier
		}
	}
	return ""
}
