package bom

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"
)

// Harmless returns a field that no spreadsheet runs as a formula: one that
// begins with =, +, -, @, a tab or a return gets an apostrophe before it,
// unless it is a plain number.
func Harmless(s string) string {
	if s == "" || !strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		return s
	}
	if _, err := strconv.ParseFloat(s, 64); err == nil {
		return s
	}
	return "'" + s
}

// Table writes rows as CSV (RFC 4180), every field made harmless.
func Table(rows [][]string) []byte {
	var buf bytes.Buffer
	w := csv.NewWriter(&buf)
	w.UseCRLF = true
	for _, r := range rows {
		out := make([]string, len(r))
		for i, f := range r {
			out[i] = Harmless(f)
		}
		w.Write(out) // a bytes.Buffer does not fail
	}
	w.Flush()
	return buf.Bytes()
}

// CSV is the bill as a table: a row an item, then the totals. Quantities are
// in the unit named beside them; amounts have the currency's own digits.
func (b Bill) CSV() []byte {
	rows := [][]string{{"category", "item", "description", "need", "need_unit", "pack", "packs", "price", "amount", "currency", "supplier", "quoted", "left_over", "how"}}
	for _, l := range b.Lines {
		row := []string{l.Category, l.Item, l.Description, number(l.Total()), string(l.Kind), "", "", "", "", string(b.Total.Currency), "", "", "", l.Why}
		if o := l.Offer; o != nil {
			row[5], row[6], row[7], row[8] = o.Pack, strconv.FormatInt(l.Packs, 10), o.Price.Plain(), l.Amount.Plain()
			row[10], row[11], row[12] = o.Supplier, o.Quoted, number(l.Left)
		} else {
			row[8] = "no price"
		}
		rows = append(rows, row)
	}
	total := func(name, amount string) {
		r := make([]string, len(rows[0]))
		r[0], r[8], r[9] = name, amount, string(b.Total.Currency)
		rows = append(rows, r)
	}
	for _, c := range b.Categories {
		total("sum of "+c.Category, c.Sum.Plain())
	}
	name := "total"
	if !b.Complete() {
		name = "total, INCOMPLETE: no price for " + strings.Join(b.Missing, " ")
	}
	total(name, b.Total.Plain())
	if b.DrumSilos > 0 {
		total("each drum silo", b.PerDrum.Plain())
	}
	if b.PipeSilos > 0 {
		total("each pipe silo", b.PerPipe.Plain())
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

// number writes a quantity to three decimals without trailing zeros.
func number(x float64) string { return trim(x, 3) }
