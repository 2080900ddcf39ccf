package workbook

import (
	"fmt"
	"math/big"

	"silowright/bom/money"
)

// The rows of Sums that other sheets refer to.
const (
	drumsRow = iota + 4
	pipesRow
)

// part is n·num/den rounded half away from zero, and 0 for no den. All are 0 or
// above.
func part(n, num, den int64) int64 {
	if den == 0 {
		return 0
	}
	m, err := money.Money{Minor: n}.TimesRat(big.NewRat(num, den))
	if err != nil {
		return 0
	}
	return m.Minor
}

var sumsWidths = []float64{38, 14, 14, 14, 14, 14, 30}

// sums is the sheet that adds all up.
func (w *writing) sums() *sheet {
	s := &sheet{name: sumsSheet, widths: sumsWidths, frozen: 2}
	s.add(cell{value: "What the build costs", look: title})
	s.add(headings("", "value", "note", "", "", "", "")...)
	line := func(label string, v cell, text string) int {
		return s.add(wordsOf(label), v, cell{value: text, look: note})
	}
	job, bill, c := w.plan.Job, w.costs.Bill, w.coin
	line("job", wordsOf(job.Name), "")
	line("drum silos (input)", cell{value: int64(job.DrumSilos), look: inputWhole}, zeroNote(job.DrumSilos, "drum"))
	line("pipe silos (input)", cell{value: int64(job.PipeSilos), look: inputWhole}, zeroNote(job.PipeSilos, "pipe"))
	line("currency", wordsOf(string(w.plan.Currency)), "boxed cells, here and on the other sheets, are inputs; all else follows from them")
	now := fmt.Sprintf("as worked out: %d drum silos and %d pipe silos", job.DrumSilos, job.PipeSilos)
	line("check: counts", cell{value: now, formula: fmt.Sprintf(`IF(AND(%s=%d,%s=%d),%s,%s)`, ref("B", drumsRow), job.DrumSilos, ref("B", pipesRow), job.PipeSilos,
		quoted(now), quoted(fmt.Sprintf("counts changed from %d and %d: %s", job.DrumSilos, job.PipeSilos, w.stale())))}, "")
	missing := len(bill.Missing)
	count := "COUNTIF(" + w.column(amountColumn) + "," + quoted(noPrice) + ")"
	check := len(s.rows) + 1
	line("check: prices", cell{value: incomplete(missing), formula: "IF(" + count + "=0," + quoted(complete) + `,"incomplete: "&` + count + "&" + quoted(withoutPrice) + ")"}, "")
	line("prices", wordsOf(w.pricesNote()), "")
	s.add()

	money := func(label, formula string, m money.Money, l look, note string) string {
		return ref("$B$", line(label, cell{value: c.of(m), formula: formula, look: l}, note))
	}
	end := max(2, 1+len(w.sellers))
	of := func(column string) string { return "SUM(" + span(suppliersSheet, column, 2, end) + ")" }
	goods := money("goods", c.tidy("SUM("+w.column(amountColumn)+")"), bill.Goods, amount, "")
	nowhere := money("of that, at no supplier listed", c.tidy(goods+"-"+of("G")), zero(w), amount, "0 as long as every supplier under Buy stands under Suppliers; no shipping, no tax")
	topUp := money("top-up of orders", c.tidy(of("O")), bill.TopUp, amount, "to be spent on anything else, to reach a least order or free shipping")
	shipping := money("shipping", c.tidy(of("P")), bill.Shipping, amount, "")
	tax := money("tax", c.tidy(of("Q")), bill.Tax, amount, "")
	orders := money("all orders", c.tidy(of("R")+"+"+nowhere), bill.Total, bold, "")
	wage := func(column string) string { return fix(workSheet, column, w.effort.block+labourRow) }
	drumLabour := money("labour, drum silos", wage("D"), w.effort.drum, amount, "")
	pipeLabour := money("labour, pipe silos", wage("E"), w.effort.pipe, amount, "")
	before := c.tidy(orders + "+" + drumLabour + "+" + pipeLabour)
	rate := ref("$B$", line("contingency, part of all above (input)", cell{value: float64(w.plan.Site.Contingency) / 1e6, look: inputPercent}, "for what nobody thought of"))
	extra := money("contingency", c.share(before, rate), w.costs.Contingency, amount, "")
	status := cell{look: says, formula: "IF(" + count + "=0,\"\"," + ref("$B$", check) + ")", value: ""}
	if missing > 0 {
		status.value = incomplete(missing)
	}
	total := money("total", c.tidy(before+"+"+extra), w.costs.Total, bold, "")
	s.rows[len(s.rows)-1][2] = status

	goodsD := "SUM(" + w.column(shareColumn) + ")"
	restD := of("T")
	mine := c.tidy(goodsD + "+" + restD + "+" + drumLabour)
	drums := money("drum silos' share of the total", c.tidy(mine+"+IF("+before+">0,"+c.amount(c.coins(extra)+"*"+c.coins(mine)+"/"+c.coins(before))+",0)"),
		w.costs.Drums, amount, "the shares may differ from the program's by one smallest coin; the total does not")
	pipes := money("pipe silos' share of the total", c.tidy(total+"-"+drums), w.costs.Pipes, amount, "")
	each := func(sum string, row int) string {
		n := ref("$B$", row)
		return "IF(" + n + ">0," + c.amount(c.coins(sum)+"/MAX(1,"+n+")") + ",0)"
	}
	money("each drum silo", each(drums, drumsRow), w.costs.PerDrum, bold, "")
	money("each pipe silo", each(pipes, pipesRow), w.costs.PerPipe, bold, "")
	w.categories(s)
	w.orderSums(s, [4]string{topUp, shipping, tax, orders})
	return s
}

const (
	complete     = "complete: every item has a price"
	withoutPrice = " without a price; the sums leave them out"
)

func incomplete(n int) string {
	if n == 0 {
		return complete
	}
	return "incomplete: " + number(n) + withoutPrice
}

func zeroNote(n int, sort string) string {
	if n > 0 {
		return ""
	}
	return "none in this build: run the program again to add " + sort + " silos"
}

func (w *writing) pricesNote() string {
	if w.plan.Invented {
		return "every price, supplier and date is invented for the example: put your own price list under [prices]"
	}
	return "of the job's own list"
}

// stale says which rows do not follow the counts.
func (w *writing) stale() string {
	n := 0
	for _, p := range w.buys {
		if !p.packs.live {
			n++
		}
	}
	if n == 0 {
		return "all packs follow; other packs or suppliers may now be cheaper: run the program again"
	}
	return fmt.Sprintf("%d rows of Buy keep their packs (see where the packs come from): run the program again", n)
}

// categories adds what each category comes to.
func (w *writing) categories(s *sheet) {
	if len(w.costs.Bill.Categories) == 0 {
		return
	}
	s.add()
	s.add(headings("goods by category", "value", "", "", "", "", "")...)
	for _, cat := range w.costs.Bill.Categories {
		r := len(s.rows) + 1
		s.add(wordsOf(cat.Category), cell{value: w.coin.of(cat.Sum), look: amount,
			formula: w.coin.tidy("SUMPRODUCT(--(" + w.column("A") + "=" + ref("A", r) + ")," + w.column(amountColumn) + ")")})
	}
}

// orderSums adds what each order comes to.
func (w *writing) orderSums(s *sheet, all [4]string) {
	s.add()
	s.add(headings("orders", "goods", "top-up", "shipping", "tax", "order total", "")...)
	for i, o := range w.sellers {
		row := []cell{{value: o.shown, formula: ref(suppliersSheet+"!$A$", i+2)}}
		for k, m := range []money.Money{o.order.Goods, o.order.TopUp, o.order.Shipping, o.order.Tax, o.order.Total} {
			m.Currency = w.plan.Currency
			row = append(row, cell{value: w.coin.of(m), formula: ref(suppliersSheet+"!$"+string("GOPQR"[k])+"$", i+2), look: amount})
		}
		s.add(row...)
	}
}

func zero(w *writing) money.Money { return money.Money{Currency: w.plan.Currency} }
