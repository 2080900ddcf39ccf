package workbook

import (
	"archive/zip"
	"bytes"
	"context"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"

	"silowright/bom"
	"silowright/bom/money"
	"silowright/cmd/internal/plan"
	"silowright/cmd/internal/report"
)

// written is the workbook of a plan.
func written(t *testing.T, p *plan.Plan) []byte {
	t.Helper()
	c, err := report.CostsOf(p)
	if err != nil {
		t.Fatal(err)
	}
	data, err := Of(p, c)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// loaded works a job file out.
func loaded(t *testing.T, path string, c plan.Counts) *plan.Plan {
	t.Helper()
	p, err := plan.LoadFor(path, c)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// opened reads a workbook.
func opened(t *testing.T, data []byte) *excelize.File {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return f
}

// changed writes cells into a workbook, as a person would; it takes no formula
// away.
func changed(t *testing.T, data []byte, cells map[string]any) []byte {
	t.Helper()
	f := opened(t, data)
	for at, v := range cells {
		sheet, name, _ := strings.Cut(at, "!")
		if was, err := f.GetCellFormula(sheet, name); err != nil || was != "" {
			t.Fatalf("%s holds the formula %q (%v)", at, was, err)
		}
		if err := f.SetCellValue(sheet, name, v); err != nil {
			t.Fatal(err)
		}
	}
	out, err := f.WriteToBuffer()
	if err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

var stored = regexp.MustCompile(`</f><v[^>]*>[^<]*</v>`)

// bare is a workbook without the values that its formulas are stored with, so
// that what is read back is what was recomputed.
func bare(t *testing.T, data []byte) []byte {
	t.Helper()
	in, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for _, f := range in.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		b, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		if strings.HasPrefix(f.Name, "xl/worksheets/") {
			b = stored.ReplaceAll(b, []byte("</f>"))
		}
		to, err := w.Create(f.Name)
		if err != nil {
			t.Fatal(err)
		}
		to.Write(b)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// recomputed has LibreOffice work every formula out anew, in one run.
func recomputed(t *testing.T, books map[string][]byte) map[string]*excelize.File {
	t.Helper()
	office, err := exec.LookPath("soffice")
	if err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal("soffice is missing; .ci/run installs it")
		}
		t.Skip("soffice is not installed")
	}
	dir := t.TempDir()
	args := []string{"-env:UserInstallation=file://" + filepath.Join(dir, "profile"), "--headless", "--convert-to", "xlsx", "--outdir", filepath.Join(dir, "out")}
	for name, data := range books {
		file := filepath.Join(dir, name+".xlsx")
		if err := os.WriteFile(file, bare(t, data), 0o644); err != nil {
			t.Fatal(err)
		}
		args = append(args, file)
	}
	ctx, stop := context.WithTimeout(t.Context(), 120*time.Second)
	defer stop()
	if out, err := exec.CommandContext(ctx, office, args...).CombinedOutput(); err != nil {
		t.Fatalf("soffice: %v\n%s", err, out)
	}
	done := map[string]*excelize.File{}
	for name := range books {
		data, err := os.ReadFile(filepath.Join(dir, "out", name+".xlsx"))
		if err != nil {
			t.Fatal(err)
		}
		done[name] = opened(t, data)
	}
	return done
}

// value is what a cell holds, not as it is shown.
func value(t *testing.T, f *excelize.File, sheet, cell string) string {
	t.Helper()
	v, err := f.GetCellValue(sheet, cell, excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// rowOf finds a row by what stands in a column.
func rowOf(t *testing.T, f *excelize.File, sheet, column, label string) int {
	t.Helper()
	rows, err := f.GetRows(sheet)
	if err != nil {
		t.Fatal(err)
	}
	for i := range rows {
		if value(t, f, sheet, ref(column, i+1)) == label {
			return i + 1
		}
	}
	t.Fatalf("%s: no %q under %s", sheet, label, column)
	return 0
}

// minor is a sum of Sums in whole coins; one that is not within a thousandth
// of a whole coin fails.
func minor(t *testing.T, f *excelize.File, c money.Currency, label string) int64 {
	t.Helper()
	v := value(t, f, sumsSheet, ref("B", rowOf(t, f, sumsSheet, "A", label)))
	x, err := strconv.ParseFloat(v, 64)
	coins := x * math.Pow10(c.Digits())
	if err != nil || math.Abs(coins-math.Round(coins)) > 1e-3 {
		t.Errorf("%s: %q is no amount in %s", label, v, c)
	}
	return int64(math.Round(coins))
}

// formulas calls f for every cell of a workbook that holds a formula.
func formulas(t *testing.T, book *excelize.File, f func(sheet, cell, formula string)) int {
	t.Helper()
	n := 0
	for _, sheet := range book.GetSheetList() {
		rows, err := book.GetRows(sheet)
		if err != nil {
			t.Fatal(err)
		}
		for r := range rows {
			for c := range max(len(rows[r]), len(buyHeadings)) {
				cell, err := excelize.CoordinatesToCellName(c+1, r+1)
				if err != nil {
					t.Fatal(err)
				}
				formula, err := book.GetCellFormula(sheet, cell)
				if err != nil {
					t.Fatal(err)
				}
				if formula != "" {
					n++
					f(sheet, cell, formula)
				}
			}
		}
	}
	return n
}

// terms is an invented job with everything that orders, work and contingency
// depend on; suppliers are the names that its price list has.
type terms struct {
	currency  money.Currency
	drums     int
	pipes     int
	suppliers []string
	buying    string         // further text of the job file
	price     map[int]string // in place of the price of a row of the list
	leave     int            // rows of the list left without a price
}

const frame = `name = "Gannet Rock, a build to be checked (invented)"
units = "in"
drum_silos = %d
pipe_silos = %d
currency = %q

[[drum]]
label = "grey"
count = %[1]d
circumference = "72 7/8"
height = "34 7/8"
wall = "0.2"
foot_outside = "21 3/8"
foot_height = "2 3/8"
head_recess = "3/4"
hoops = [
  {from = "10 7/8", to = "12 3/8", outside = "24 1/8"},
  {from = "23 1/8", to = "24 5/8", outside = "24 1/8"},
]

[prices]
file = "prices.csv"

`

// file writes the job and a price list of one offer an item, and returns the
// job's path.
func (j terms) file(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	path := filepath.Join(dir, "job.toml")
	put := func(name, text string) {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	put("job.toml", fmt.Sprintf(frame, j.drums, j.pipes, j.currency)+j.buying)
	head := "item,pack,unit,price,supplier,quoted\n"
	put("prices.csv", head)
	packs := map[bom.Kind]string{bom.Each: "3,each", bom.Length: "6,m", bom.Area: "2,m2", bom.Volume: "250,mL"}
	list := head
	for i, l := range loaded(t, path, plan.Counts{}).Cost.Bill.Lines {
		m := money.Money{Minor: int64(i*i*7%2900 + 35), Currency: j.currency}
		price := m.Plain()
		if p, ok := j.price[i]; ok {
			price = p
		}
		if i < j.leave {
			price = ""
		}
		list += fmt.Sprintf("%s,%s,%s,\"%s\",2031-02-03\n", l.Item, packs[l.Kind], price, strings.ReplaceAll(j.suppliers[i%len(j.suppliers)], `"`, `""`))
	}
	put("prices.csv", list)
	return path
}

// quays are two invented suppliers with conditions that come into play.
var quays = []string{"North quay (invented)", "South quay (invented)"}

const quayTerms = `[buying]
tax = "8.25 %"
tax_shipping = true
contingency = "7.5 %"

[[supplier]]
name = "North quay (invented)"
shipping = "35"
free_from = "90000"
tax = "6.125 %"

[[supplier]]
name = "South quay (invented)"
shipping = "48"
minimum = "700"

[work]
wage = "27"
learning = 0.87
`
