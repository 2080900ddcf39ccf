package workbook

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"silowright/bom/money"
)

// coin is the smallest coin of the currency: 10^-digits. Sums of money are
// numbers in the currency's whole units, which a spreadsheet holds in binary;
// wherever a half may have to be rounded, the formula counts in coins, which are
// whole numbers and so exact to 2^53.
type coin struct{ digits int }

// format is how a spreadsheet shows an amount.
func (c coin) format() string {
	if c.digits == 0 {
		return "#,##0"
	}
	return "#,##0." + strings.Repeat("0", c.digits)
}

// of is the amount as a cell's value.
func (c coin) of(m money.Money) float64 {
	x, _ := strconv.ParseFloat(m.Plain(), 64) // digits and a point
	return x
}

// tidy is an expression rid of what binary sums leave behind.
func (c coin) tidy(x string) string { return fmt.Sprintf("ROUND(%s,%d)", x, c.digits) }

// coins is how many coins an amount is.
func (c coin) coins(x string) string {
	if c.digits == 0 {
		return "ROUND(" + x + ",0)"
	}
	return fmt.Sprintf("ROUND((%s)*%d,0)", x, c.scale())
}

func (c coin) scale() int { return int(math.Pow10(c.digits)) }

// amount is a number of coins, rounded half away from zero, as an amount.
func (c coin) amount(coins string) string {
	if c.digits == 0 {
		return "ROUND(" + coins + ",0)"
	}
	return fmt.Sprintf("ROUND(%s,0)/%d", coins, c.scale())
}

// share is a share of an amount, the share held in parts per million.
func (c coin) share(x, share string) string {
	return c.amount(c.coins(x) + "*ROUND(" + share + "*1000000,0)/1000000")
}

// ref is a cell's name.
func ref(column string, row int) string { return column + number(row) }

// fix is a cell's name that does not move when a formula is copied, with its
// sheet.
func fix(sheet, column string, row int) string { return sheet + "!$" + column + "$" + number(row) }

// span is a part of a column of another sheet.
func span(sheet, column string, from, to int) string {
	return fmt.Sprintf("%s!$%s$%d:$%s$%d", sheet, column, from, column, to)
}

func number(n int) string { return strconv.Itoa(n) }

// plain writes a number into a formula.
func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// quoted writes a text into a formula.
func quoted(s string) string { return `"` + strings.ReplaceAll(s, `"`, `""`) + `"` }

// wordsOf is a text cell.
func wordsOf(s string) cell { return cell{value: s} }

func headings(names ...string) []cell {
	out := make([]cell, len(names))
	for i, n := range names {
		out[i] = cell{value: n, look: heading}
	}
	return out
}
