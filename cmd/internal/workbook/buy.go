package workbook

import (
	"strings"

	"silowright/bom"
)

// The columns of Buy.
const (
	eachDrumColumn = "D"
	eachPipeColumn = "E"
	needColumn     = "F"
	rackColumn     = "H"
	holdsColumn    = "J"
	packsColumn    = "K"
	priceColumn    = "L"
	amountColumn   = "M"
	supplierColumn = "N"
	partColumn     = "Q"
	shareColumn    = "R"
)

// noPrice stands where an item has none.
const noPrice = "no price"

var buyHeadings = headings("category", "item", "description", "each drum silo needs", "each pipe silo needs", "need", "unit", "on the rack, used first",
	"pack", "a pack holds", "packs (input)", "price of a pack (input)", "amount", "supplier (input)", "quoted", "where the packs come from",
	"drum silos' part", "drum silos' share", "why")

var buyWidths = []float64{14, 20, 28, 10, 10, 10, 6, 10, 14, 9, 9, 10, 11, 22, 11, 36, 9, 11, 70}

// purchase is one row of Buy: a purchase of a line, or a line of which nothing
// is bought.
type purchase struct {
	line  bom.Line
	buy   *bom.Purchase // nil when nothing is bought
	first bool          // of its line
	rows  int           // of its line
	packs packs
}

// purchases lists the rows of Buy, which begins at row 2.
func (w *writing) purchases() []purchase {
	even := proportional(w.plan)
	var out []purchase
	for _, l := range w.costs.Bill.Lines {
		if len(l.Buys) == 0 {
			out = append(out, purchase{line: l, first: true, rows: 1, packs: w.packsOf(l, even)})
			continue
		}
		for i := range l.Buys {
			out = append(out, purchase{line: l, buy: &l.Buys[i], first: i == 0, rows: len(l.Buys), packs: w.packsOf(l, even)})
		}
	}
	return out
}

// last is the last row of Buy that sums go over.
func (w *writing) last() int { return max(2, 1+len(w.buys)) }

// column is a column of Buy, for a sum.
func (w *writing) column(name string) string { return span(buySheet, name, 2, w.last()) }

// buy is the sheet of what is bought.
func (w *writing) buy() *sheet {
	s := &sheet{name: buySheet, widths: buyWidths, frozen: 1, print: "P"}
	s.add(buyHeadings...)
	for _, p := range w.buys {
		s.add(w.row(p, len(s.rows)+1)...)
	}
	return s
}

// row is a row of Buy.
func (w *writing) row(p purchase, row int) []cell {
	l := p.line
	u := unitOf(l.Kind, w.plan.Job.Units)
	out := make([]cell, len(buyHeadings))
	set := func(column string, c cell) { out[column[0]-'A'] = c }
	set("A", cell{value: l.Category, look: wrapped})
	set("B", cell{value: l.Item, look: wrapped})
	set("C", cell{value: l.Description, look: wrapped})
	set("G", wordsOf(u.name))
	drums, pipes := fix(sumsSheet, "B", drumsRow), fix(sumsSheet, "B", pipesRow)
	if p.first {
		need := cell{value: l.Total() / u.per, look: quantity}
		if p.packs.even {
			set(eachDrumColumn, cell{value: l.EachDrum / u.per, look: quantity})
			set(eachPipeColumn, cell{value: l.EachPipe / u.per, look: quantity})
			need.formula = u.millionths(drums + "*" + ref(eachDrumColumn, row) + "+" + pipes + "*" + ref(eachPipeColumn, row))
		}
		set(needColumn, need)
		set(rackColumn, cell{value: l.Rack / u.per, look: quantity})
	}
	w.bought(p, row, u, set)
	set("P", cell{value: p.packs.says, look: wrapped})
	if p.first {
		w.shared(p, row, set)
		set("S", cell{value: strings.Trim(l.Choice+"; "+l.Why, "; "), look: wrapped})
	}
	return out
}

// bought sets what of a row is bought.
func (w *writing) bought(p purchase, row int, u unit, set func(string, cell)) {
	packs, price := ref(packsColumn, row), ref(priceColumn, row)
	sum := cell{look: amount, formula: "IF(AND(ISNUMBER(" + packs + "),OR(ISNUMBER(" + price + ")," + packs + "=0))," +
		w.coin.tidy(packs+"*N("+price+")") + "," + quoted(noPrice) + ")"}
	switch {
	case p.buy != nil:
		o := p.buy.Offer
		set("I", wordsOf(o.Pack))
		if o.Kind == p.line.Kind && o.Width == 0 {
			set(holdsColumn, cell{value: o.Holds / u.per, look: quantity})
		}
		n := cell{value: p.buy.Packs, look: inputWhole}
		if p.packs.live {
			n.look = whole
			n.formula = "ROUNDUP(MAX(0,(" + ref(needColumn, row) + "-" + ref(rackColumn, row) + ")/" + ref(holdsColumn, row) + "-" + plain(hair) + "),0)"
		}
		set(packsColumn, n)
		set(priceColumn, cell{value: w.coin.of(p.buy.Price), look: inputAmount})
		sum.value = w.coin.of(p.buy.Amount)
		set(supplierColumn, cell{value: w.nameOf(p.line.Supplier), look: inputWords})
		set("O", wordsOf(o.Quoted))
	case p.line.Amount != nil: // the rack holds enough
		set(packsColumn, cell{value: int64(0), look: inputWhole})
		set(priceColumn, cell{value: "", look: inputAmount})
		sum.value = w.coin.of(*p.line.Amount)
		set(supplierColumn, cell{value: "", look: inputWords})
	default:
		set(packsColumn, cell{value: "", look: inputWhole})
		set(priceColumn, cell{value: noPrice, look: inputAmount})
		sum.value = noPrice
		set(supplierColumn, cell{value: "", look: inputWords})
	}
	set(amountColumn, sum)
}

// shared sets the drum silos' share of a line: of all its rows, on the first.
func (w *writing) shared(p purchase, row int, set func(string, cell)) {
	l := p.line
	part := cell{value: 0.0, look: quantity}
	if sum := l.Drum + l.Pipe; sum > 0 {
		part.value = l.Drum / sum
	}
	if p.packs.even {
		part.formula = "IF(" + ref(needColumn, row) + ">0," + fix(sumsSheet, "B", drumsRow) + "*" + ref(eachDrumColumn, row) + "/(" +
			fix(sumsSheet, "B", drumsRow) + "*" + ref(eachDrumColumn, row) + "+" + fix(sumsSheet, "B", pipesRow) + "*" + ref(eachPipeColumn, row) + "),0)"
	}
	set(partColumn, part)
	share := cell{value: 0.0, look: amount}
	if l.Drums != nil {
		share.value = w.coin.of(*l.Drums)
	}
	share.formula = w.coin.amount(w.coin.coins("SUM("+ref(amountColumn, row)+":"+ref(amountColumn, row+p.rows-1)+")") + "*" + ref(partColumn, row))
	set(shareColumn, share)
}
