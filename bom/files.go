package bom

import (
	"bytes"
	"encoding/csv"
	"regexp"
	"strconv"
	"strings"
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
// metric units and again in US customary ones; left_over is in need_unit.
var billColumns = []string{"category", "item", "description", "need", "need_unit", "need_us", "need_us_unit",
	"pack", "packs", "price", "amount", "currency", "drum_silos_share", "pipe_silos_share", "left_over",
	"supplier", "quoted", "choice", "why"}

// CSV is the bill as a table: a row an item, then the sums. Amounts have the
// currency's own digits and no thousands mark; a sum that leaves items out
// says so in its first column.
func (b Bill) CSV() []byte {
	currency := string(b.Total.Currency)
	rows := [][]string{billColumns}
	for _, l := range b.Lines {
		need, unit := l.Kind.metric(l.Total())
		us, usUnit := l.Kind.customary(l.Total())
		row := []string{l.Category, l.Item, l.Description, need, unit, us, usUnit, "", "", "", "no price", currency, "", "", "", "", "", "", l.Why}
		if o := l.Offer; o != nil {
			left, _ := l.Kind.metric(l.Left)
			copy(row[7:], []string{o.Pack, strconv.FormatInt(l.Packs, 10), o.Price.Plain(), l.Amount.Plain(), currency,
				l.Drums.Plain(), l.Pipes.Plain(), left, o.Supplier, o.Quoted, l.Choice})
		}
		rows = append(rows, row)
	}
	sum := func(name, amount string, items, missing int) {
		row := make([]string, len(billColumns))
		row[0], row[10], row[11] = name, amount, currency
		if missing > 0 {
			row[0] += ", incomplete: " + strconv.Itoa(missing) + " without a price"
		}
		if items > 0 && missing == items {
			row[10] = "no price"
		}
		rows = append(rows, row)
	}
	for _, c := range b.Categories {
		sum("sum of "+c.Category, c.Sum.Plain(), c.Items, c.Missing)
	}
	items, missing := len(b.Lines), len(b.Missing)
	sum("total", b.Total.Plain(), items, missing)
	if b.DrumSilos > 0 {
		sum("each drum silo", b.PerDrum.Plain(), items, missing)
	}
	if b.PipeSilos > 0 {
		sum("each pipe silo", b.PerPipe.Plain(), items, missing)
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
