package sweep

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"os/exec"
	"strings"

	"github.com/xuri/excelize/v2"

	"silowright/cmd/internal/pack"
	"silowright/cmd/internal/plan"
	"silowright/render/outside"
)

// popplerFaults has poppler read every word of a PDF: it is to stand inside its
// page, and be a number where it looks like one. On template sheets words at
// the edge of a window are clipped, yet told whole.
func popplerFaults(file string, m pack.Made) []string {
	program, err := exec.LookPath("pdftotext")
	if err != nil {
		return nil // the tests of the pack fail for it
	}
	data, err := exec.Command(program, "-bbox", file, "-").Output()
	if err != nil {
		return []string{"pdftotext: " + err.Error()}
	}
	var doc struct {
		Pages []outside.Page `xml:"body>doc>page"`
	}
	if err := xml.Unmarshal(data, &doc); err != nil {
		return []string{"pdftotext: " + err.Error()}
	}
	var out []string
	if len(doc.Pages) != m.Pages+m.Sheets {
		out = append(out, fmt.Sprintf("poppler sees %d pages, %d were made", len(doc.Pages), m.Pages+m.Sheets))
	}
	for i, pg := range doc.Pages {
		for _, w := range pg.Words {
			slack := 0.5 // points
			if i >= m.Pages {
				slack = 250
			}
			if w.XMin < -slack || w.YMin < -slack || w.XMax > pg.Width+slack || w.YMax > pg.Height+slack {
				out = append(out, fmt.Sprintf("page %d: %q is off the page", i+1, w.Text))
			}
			if wrongNumber.MatchString(w.Text) {
				out = append(out, fmt.Sprintf("page %d: %q", i+1, w.Text))
			}
		}
	}
	return out
}

// bookFaults reads a workbook: no cell may be an error or a number that is
// none, and its sums, as stored, are the program's.
func bookFaults(data []byte, p *plan.Plan) []string {
	f, err := excelize.OpenReader(bytes.NewReader(data))
	if err != nil {
		return []string{"costs.xlsx: " + err.Error()}
	}
	defer f.Close()
	var out []string
	want := map[string]int64{"total": p.Cost.Total.Minor, "goods": p.Cost.Bill.Goods.Minor, "top-up of orders": p.Cost.Bill.TopUp.Minor,
		"shipping": p.Cost.Bill.Shipping.Minor, "tax": p.Cost.Bill.Tax.Minor, "all orders": p.Cost.Bill.Total.Minor, "contingency": p.Cost.Contingency.Minor}
	found := map[string]bool{}
	for _, sheet := range f.GetSheetList() {
		rows, err := f.GetRows(sheet, excelize.Options{RawCellValue: true})
		if err != nil {
			return append(out, "costs.xlsx: "+err.Error())
		}
		for _, row := range rows {
			for _, c := range row {
				if wrongNumber.MatchString(c) || strings.HasPrefix(c, "#") && strings.HasSuffix(c, "!") {
					out = append(out, fmt.Sprintf("costs.xlsx: %s holds %q", sheet, c))
				}
			}
			if sum, ok := want[first(row, 0)]; ok && sheet == "Sums" && !found[first(row, 0)] {
				found[first(row, 0)] = true
				if got, fine := nearMinor(first(row, 1), string(p.Currency)); !fine || got != sum {
					out = append(out, fmt.Sprintf("costs.xlsx: %s is %s, the program has %d", row[0], first(row, 1), sum))
				}
			}
		}
	}
	if len(found) != len(want) {
		out = append(out, fmt.Sprintf("costs.xlsx: only %d of %d sums were found", len(found), len(want)))
	}
	return out
}

func first(row []string, i int) string {
	if i < len(row) {
		return row[i]
	}
	return ""
}
