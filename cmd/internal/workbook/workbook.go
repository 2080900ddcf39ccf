// Package workbook writes what a build costs as a spreadsheet (ECMA-376, the
// .xlsx of many programs) whose totals are live: change a price, a count or a
// supplier's condition there and they follow, by the rules and the rounding of
// the program itself. The package works nothing out that the plan has not: every
// formula carries the plan's own value with it.
package workbook

import (
	"silowright/cmd/internal/plan"
	"silowright/cmd/internal/report"
)

// The sheets, in order.
const (
	sumsSheet      = "Sums"
	buySheet       = "Buy"
	suppliersSheet = "Suppliers"
	workSheet      = "Work"
	curveSheet     = "Curve"
)

// Of is the workbook of a plan and its costs: the sums, what is bought a row a
// purchase, the suppliers' conditions and orders, the work, and the cost curve.
// The same plan gives the same bytes. Text from the job and the price list is
// stored as text that no spreadsheet runs. It fails only when a sheet cannot be
// written.
func Of(p *plan.Plan, c report.Costs) ([]byte, error) {
	b, err := newBook(p)
	if err != nil {
		return nil, err
	}
	defer b.file.Close()
	w := writing{book: b, plan: p, costs: c, coin: coin{p.Currency.Digits()}}
	w.buys = w.purchases()
	w.sellers = w.suppliers()
	w.effort = w.efforts()
	for _, s := range []*sheet{w.sums(), w.buy(), w.orders(), w.work(), w.curve()} {
		if err := b.put(s); err != nil {
			return nil, err
		}
	}
	return b.bytes()
}

// writing is a workbook being written.
type writing struct {
	book    *book
	plan    *plan.Plan
	costs   report.Costs
	coin    coin
	buys    []purchase
	sellers []seller
	effort  effort
}
