package workbook

import (
	"slices"

	"silowright/bom"
)

// seller is one row of Suppliers.
type seller struct {
	name  string // as the bill has it
	shown string
	terms bom.Supplier
	tax   bom.Share
	order bom.Order // nothing when nothing is ordered
	drums float64   // drum silos' share of its goods
	extra float64   // and of top-up, shipping and tax
}

// suppliers lists the suppliers of the price list in its order.
func (w *writing) suppliers() []seller {
	var out []seller
	for _, o := range w.plan.Prices.Offers {
		if slices.ContainsFunc(out, func(s seller) bool { return same(s.name, o.Supplier) }) {
			continue
		}
		s := seller{name: o.Supplier, shown: text(o.Supplier), terms: bom.Supplier{Name: o.Supplier}, tax: w.plan.Site.Terms.Tax}
		for _, t := range w.plan.Site.Terms.Suppliers {
			if same(t.Name, o.Supplier) {
				s.terms = t
				break
			}
		}
		if s.terms.Tax != nil {
			s.tax = *s.terms.Tax
		}
		out = append(out, s)
	}
	for i := range out {
		for out[i].shown == "" || slices.ContainsFunc(out[:i], func(s seller) bool { return same(s.shown, out[i].shown) }) {
			out[i].shown += "(not named)"
		}
		for _, o := range w.costs.Bill.Orders {
			if o.Supplier == out[i].name {
				out[i].order = o
			}
		}
		w.shareOut(&out[i])
	}
	return out
}

// shareOut fills in the drum silos' shares of an order.
func (w *writing) shareOut(s *seller) {
	var drums int64
	for _, l := range w.costs.Bill.Lines {
		if len(l.Buys) > 0 && l.Supplier == s.name && l.Drums != nil {
			drums += l.Drums.Minor
		}
	}
	extra := s.order.TopUp.Minor + s.order.Shipping.Minor + s.order.Tax.Minor
	m := s.order.Goods
	m.Currency, m.Minor = w.plan.Currency, drums
	s.drums = w.coin.of(m)
	m.Minor = part(extra, drums, s.order.Goods.Minor)
	s.extra = w.coin.of(m)
}

// nameOf is a supplier's name as the workbook shows it.
func (w *writing) nameOf(name string) string {
	for _, s := range w.sellers {
		if s.name == name {
			return s.shown
		}
	}
	return name
}

var orderHeadings = headings("supplier", "shipping of an order (input)", "goods from which shipping is free; empty: never (input)", "least goods of an order (input)",
	"tax (input)", "shipping is taxed: yes or no (input)", "goods", "spent at least", "shipping then", "tax then", "total then",
	"spent for free shipping", "total with it", "free shipping is worth a top-up", "top-up: to be spent on anything else", "shipping", "tax", "order total",
	"drum silos' share of goods", "drum silos' share of the rest")

var orderWidths = []float64{28, 11, 13, 11, 9, 11, 12, 12, 10, 10, 12, 12, 12, 11, 13, 10, 10, 12, 12, 12}

// orders is the sheet of suppliers: their conditions and what each order comes
// to, by the rule of the program: the least that can be spent on an order that
// holds the goods, a top-up to free shipping only where that makes it cheaper.
func (w *writing) orders() *sheet {
	s := &sheet{name: suppliersSheet, widths: orderWidths, frozen: 1}
	s.add(orderHeadings...)
	for _, o := range w.sellers {
		s.add(w.orderRow(o, len(s.rows)+1)...)
	}
	return s
}

func (w *writing) orderRow(o seller, row int) []cell {
	r := func(column string) string { return ref(column, row) }
	c := w.coin
	free := cell{value: "", look: inputAmount}
	if o.terms.FreeFrom != nil {
		free.value = c.of(*o.terms.FreeFrom)
	}
	taxed := "no"
	if w.plan.Site.Terms.TaxShipping {
		taxed = "yes"
	}
	is := spending(o, w.plan.Site.Terms.TaxShipping)
	sum := func(formula string, value int64) cell {
		m := o.order.Goods
		m.Minor, m.Currency = value, w.plan.Currency
		return cell{formula: formula, value: c.of(m), look: amount}
	}
	of := func(column string) string {
		return "SUMPRODUCT(--(" + w.column(supplierColumn) + "=" + r("A") + ")," + w.column(column) + ")"
	}
	worth := "no"
	if is.worth {
		worth = "yes"
	}
	share := sum("IF("+r("G")+">0,"+c.amount(c.coins(r("O")+"+"+r("P")+"+"+r("Q"))+"*"+c.coins(r("S"))+"/"+c.coins(r("G")))+",0)", 0)
	share.value = o.extra
	drums := sum(c.tidy(of(shareColumn)), 0)
	drums.value = o.drums
	total := sum(c.tidy(r("G")+"+"+r("O")+"+"+r("P")+"+"+r("Q")), o.order.Total.Minor)
	total.look = bold
	return []cell{
		{value: o.shown, look: words},
		{value: c.of(o.terms.Shipping), look: inputAmount},
		free,
		{value: c.of(o.terms.Minimum), look: inputAmount},
		{value: float64(o.tax) / float64(bom.Whole), look: inputPercent},
		{value: taxed, look: inputWords},
		sum(c.tidy(of(amountColumn)), o.order.Goods.Minor),
		sum("IF("+r("G")+">0,MAX("+r("G")+","+r("D")+"),0)", is.spent),
		sum("IF("+r("G")+">0,IF(ISNUMBER("+r("C")+"),IF("+r("H")+">="+r("C")+",0,"+r("B")+"),"+r("B")+"),0)", is.shipping),
		sum(c.share(r("H")+"+IF("+r("F")+`="yes",`+r("I")+",0)", r("E")), is.tax),
		sum(c.tidy(r("H")+"+"+r("I")+"+"+r("J")), is.total),
		sum("IF(AND("+r("I")+">0,ISNUMBER("+r("C")+")),MAX("+r("H")+","+r("C")+"),0)", is.freeSpent),
		sum(c.tidy(r("L")+"+"+c.share(r("L"), r("E"))), is.freeTotal),
		{formula: "IF(AND(" + r("L") + ">0," + c.tidy(r("K")+"-"+r("M")) + `>0),"yes","no")`, value: worth},
		sum(c.tidy("IF("+r("N")+`="yes",`+r("L")+","+r("H")+")-"+r("G")), o.order.TopUp.Minor),
		sum("IF("+r("N")+`="yes",0,`+r("I")+")", o.order.Shipping.Minor),
		sum("IF("+r("N")+`="yes",`+c.share(r("L"), r("E"))+","+r("J")+")", o.order.Tax.Minor),
		total, drums, share,
	}
}

// spent is an order with what leads to it, in minor units.
type spent struct {
	spent, shipping, tax, total, freeSpent, freeTotal int64
	worth                                             bool
}

// spending fills in the steps between the order's goods and its sums.
func spending(o seller, taxShipping bool) spent {
	var s spent
	goods := o.order.Goods.Minor
	if goods <= 0 {
		return s
	}
	s.spent = max(goods, o.terms.Minimum.Minor)
	if o.terms.FreeFrom == nil || s.spent < o.terms.FreeFrom.Minor {
		s.shipping = o.terms.Shipping.Minor
	}
	taxed := s.spent
	if taxShipping {
		taxed += s.shipping
	}
	s.tax = part(taxed, int64(o.tax), int64(bom.Whole))
	s.total = s.spent + s.shipping + s.tax
	if s.shipping > 0 && o.terms.FreeFrom != nil {
		s.freeSpent = max(s.spent, o.terms.FreeFrom.Minor)
		s.freeTotal = s.freeSpent + part(s.freeSpent, int64(o.tax), int64(bom.Whole))
		s.worth = s.freeTotal < s.total
	}
	return s
}
