package workbook

import (
	"archive/zip"
	"bytes"
	"io"
	"strings"
	"testing"

	"silowright/cmd/internal/plan"
)

// ECMA-376 files are zip archives; the same plan gives the same bytes, and no
// part of the file says when it was written.
func TestSameBytes(t *testing.T) {
	p, err := plan.Demo()
	if err != nil {
		t.Fatal(err)
	}
	first := written(t, p)
	for range 3 {
		again, err := plan.Demo()
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(first, written(t, again)) {
			t.Fatal("two workbooks of one plan differ")
		}
	}
	z, err := zip.NewReader(bytes.NewReader(first), int64(len(first)))
	if err != nil {
		t.Fatal(err)
	}
	if z.File[0].Name != "[Content_Types].xml" {
		t.Errorf("begins with %s", z.File[0].Name)
	}
	for _, f := range z.File {
		if !f.Modified.Equal(fixed) {
			t.Errorf("%s is of %v", f.Name, f.Modified)
		}
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		b, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		if f.Name == "docProps/core.xml" && strings.Count(string(b), "1980-01-01T00:00:00Z") != 2 {
			t.Errorf("created and modified: %s", b)
		}
	}
	book := opened(t, first)
	if calc, err := book.GetCalcProps(); err != nil || calc.FullCalcOnLoad == nil || !*calc.FullCalcOnLoad {
		t.Errorf("is not recomputed when opened: %v", err)
	}
}

// Text of the job's and the price list's is never run: none of it is a formula,
// and none would become one when a cell is typed again or saved as CSV.
func TestNothingRuns(t *testing.T) {
	p := loaded(t, terms{currency: "USD", drums: 3, pipes: 2, suppliers: []string{"=1+1", "@SUM(1)", `=HYPERLINK("x")`}}.file(t), plan.Counts{})
	p.Job.Name = "=1+1"
	lines := p.Cost.Bill.Lines
	lines[0].Item, lines[1].Item, lines[2].Description, lines[3].Why, lines[4].Category = "=1+1", "+1+1", "-1+cmd", "\t=1+1", "@x"
	p.Cost.Hours.Operations[0].Name = "=1+1"
	f := opened(t, written(t, p))
	seen := 0
	for _, sheet := range f.GetSheetList() {
		rows, err := f.GetRows(sheet)
		if err != nil {
			t.Fatal(err)
		}
		for r := range rows {
			for c := range rows[r] {
				cell := ref(string(rune('A'+c)), r+1)
				v := value(t, f, sheet, cell)
				if formula, _ := f.GetCellFormula(sheet, cell); formula != "" {
					if strings.Contains(formula, "1+1") || strings.Contains(formula, "HYPERLINK") || strings.Contains(formula, "cmd") {
						t.Errorf("%s %s runs %q", sheet, cell, formula)
					}
					continue
				}
				if strings.Contains(v, "=1+1") || strings.Contains(v, "+1+1") || strings.Contains(v, "-1+cmd") {
					seen++
				}
				if v != "" && strings.ContainsAny(strings.TrimSpace(v)[:1], "=+-@") && !plainNumber(v) {
					t.Errorf("%s %s would run %q", sheet, cell, v)
				}
			}
		}
	}
	if seen < 6 {
		t.Errorf("only %d of the texts are there", seen)
	}
}

func plainNumber(v string) bool {
	return strings.Trim(v, "0123456789.eE+-") == ""
}

// Without prices the cells say so, and the total is marked.
func TestMissingPrices(t *testing.T) {
	p := loaded(t, terms{currency: "USD", drums: 3, pipes: 2, suppliers: quays, buying: quayTerms, leave: 4}.file(t), plan.Counts{})
	missing := len(p.Cost.Bill.Missing)
	if missing < 4 {
		t.Fatalf("the job has prices for all: %v", p.Cost.Bill.Missing)
	}
	f := opened(t, written(t, p))
	for _, item := range p.Cost.Bill.Missing {
		row := rowOf(t, f, buySheet, "B", item)
		for _, column := range []string{priceColumn, amountColumn} {
			if v := value(t, f, buySheet, ref(column, row)); v != noPrice {
				t.Errorf("%s: %s is %q", item, column, v)
			}
		}
	}
	for at, row := range map[string]int{"B": rowOf(t, f, sumsSheet, "A", "check: prices"), "C": rowOf(t, f, sumsSheet, "A", "total")} {
		if v := value(t, f, sumsSheet, ref(at, row)); !strings.HasPrefix(v, "incomplete: "+number(missing)) {
			t.Errorf("Sums %s%d: %q", at, row, v)
		}
	}
}
