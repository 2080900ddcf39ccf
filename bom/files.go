package bom

import (
	"bytes"
	"encoding/csv"
	"regexp"
	"strconv"
	"strings"

	"silowright/bom/money"
)

// plainNumber is a number that a spreadsheet reads as one and runs nothing for.
var plainNumber = regexp.MustCompile(`^[+-]?[0-9]+(\.[0-9]+)?$`)

// Harmless returns a field that no spreadsheet runs as a formula: one whose
// first character that shows is =, +, - or @ (wide forms too), or that begins
// with a tab or a line's end, gets an apostrophe before it, unless it is a
// plain number. Zero bytes are left out.
func Harmless(s string) string {
	s = strings.ReplaceAll(s, "\x00", "")
	seen := strings.TrimLeft(s, " \u00a0\u200b\ufeff")
	if seen == "" || !strings.ContainsAny(string([]rune(seen)[0]), "=+-@\t\r\n＝＋－＠−") || plainNumber.MatchString(s) {
		return s
	}
	return "'" + s
}

// Table writes rows as CSV (RFC 4180) in UTF-8, every field made harmless.
func Table(rows [][]string) []byte {
	var buf bytes.Buffer
	w := csv.NewWriter(&buf)
	w.UseCRLF = true
	for _, r := range rows {
		out := make([]string, len(r))
		for i, f := range r {
			out[i] = Harmless(f)
		}
		_ = w.Write(out) // a bytes.Buffer does not fail
	}
	w.Flush()
	return buf.Bytes()
}

// billColumns are the headings of bill.csv. need is what the build uses, in
// metric units and again in US customary ones; from_the_rack and left_over are
// in need_unit.
var billColumns = []string{"category", "item", "description", "need", "need_unit", "need_us", "need_us_unit", "from_the_rack",
	"pack", "packs", "price", "amount", "currency", "drum_silos_share", "pipe_silos_share", "left_over", "left_over_worth",
	"supplier", "quoted", "choice", "why"}

// CSV is the bill as a table: a row an item, and a further row for each
// further pack of the same item, then the sums. Amounts have the currency's own
// digits and no thousands mark; a sum that leaves items out says so in its
// first column.
func (b Bill) CSV() []byte {
	rows := [][]string{billColumns}
	for _, l := range b.Lines {
		rows = append(rows, lineRows(l, string(b.Total.Currency))...)
	}
	return Table(append(rows, b.sumRows()...))
}

// lineRows are the rows of one item.
func lineRows(l Line, currency string) [][]string {
	need, unit := l.Kind.metric(l.Total())
	us, usUnit := l.Kind.customary(l.Total())
	rack, _ := l.Kind.metric(l.Rack)
	row := []string{l.Category, l.Item, l.Description, need, unit, us, usUnit, rack, "", "", "", "no price", currency, "", "", "", "", "", "", l.Choice, l.Why}
	if l.Amount == nil {
		return [][]string{row}
	}
	left, _ := l.Kind.metric(l.Left)
	row[11] = l.Amount.Plain()
	copy(row[13:], []string{l.Drums.Plain(), l.Pipes.Plain(), left, l.Worth.Plain(), l.Supplier})
	out := [][]string{}
	for _, b := range l.Buys {
		copy(row[8:], []string{b.Offer.Pack, strconv.FormatInt(b.Packs, 10), b.Price.Plain(), b.Amount.Plain()})
		row[18] = b.Offer.Quoted
		out = append(out, row)
		row = make([]string, len(billColumns))
		copy(row, []string{l.Category, l.Item, l.Description})
		row[12], row[17] = currency, l.Supplier
	}
	if len(out) == 0 {
		out = append(out, row)
	}
	return out
}

// sumRows are the rows below the items.
func (b Bill) sumRows() [][]string {
	var rows [][]string
	currency := string(b.Total.Currency)
	sum := func(name, amount string, items, missing int) {
		row := make([]string, len(billColumns))
		row[0], row[11], row[12] = name, amount, currency
		if missing > 0 {
			row[0] += ", incomplete: " + strconv.Itoa(missing) + " without a price"
		}
		if items > 0 && missing == items {
			row[11] = "no price"
		}
		rows = append(rows, row)
	}
	for _, c := range b.Categories {
		sum("sum of "+c.Category, c.Sum.Plain(), c.Items, c.Missing)
	}
	items, missing := len(b.Lines), len(b.Missing)
	for _, x := range []struct {
		name string
		m    money.Money
	}{{"top-up of orders", b.TopUp}, {"shipping", b.Shipping}, {"tax", b.Tax}} {
		if x.m.Minor != 0 {
			sum(x.name, x.m.Plain(), 0, 0)
		}
	}
	sum("total", b.Total.Plain(), items, missing)
	if b.DrumSilos > 0 {
		sum("each drum silo", b.PerDrum.Plain(), items, missing)
	}
	if b.PipeSilos > 0 {
		sum("each pipe silo", b.PerPipe.Plain(), items, missing)
	}
	return rows
}

// OrderCSV is one supplier's buy list as a table, to send.
func (b Bill) OrderCSV(o Order) []byte {
	currency := string(b.Total.Currency)
	rows := [][]string{{"item", "description", "pack", "packs", "price", "amount", "currency", "quoted"}}
	for _, l := range b.Lines {
		if l.Supplier != o.Supplier {
			continue
		}
		for _, y := range l.Buys {
			rows = append(rows, []string{l.Item, l.Description, y.Offer.Pack, strconv.FormatInt(y.Packs, 10), y.Price.Plain(), y.Amount.Plain(), currency, y.Offer.Quoted})
		}
	}
	for _, x := range o.amounts() {
		rows = append(rows, []string{x.Name, "", "", "", "", x.Sum.Plain(), currency, ""})
	}
	return Table(rows)
}

// CutsCSV is the cut list as a table, lengths in mm and in inches to 1/16.
func CutsCSV(cuts []Cut) []byte {
	rows := [][]string{{"from", "piece", "drum", "count", "length_mm", "length_in", "width_mm", "width_in", "note"}}
	for _, c := range cuts {
		row := []string{c.From, c.Piece, c.Drum, strconv.Itoa(c.Count), c.Length.Metric(), c.Length.Inch(16), "", "", c.Note}
		if c.Width > 0 {
			row[6], row[7] = c.Width.Metric(), c.Width.Inch(16)
		}
		rows = append(rows, row)
	}
	return Table(rows)
}
