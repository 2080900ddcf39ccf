package sweep

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"

	"silowright/cmd/internal/pack"
	"silowright/cmd/internal/plan"
	"silowright/render/outside"
)

// popplerFaults has poppler read every word of a PDF: it is to stand inside its
// page, and be a number where it looks like one.
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
			const slack = 0.5 // points
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

// traceFaults has mutool list the lines and fills of the pages to read: none is
// to lie off its page by more than half its width. What stands under a clip is
// left out.
func traceFaults(file string, pages int) []string {
	program, err := exec.LookPath("mutool")
	if err != nil || pages == 0 {
		return nil // the tests of the pack fail for it
	}
	data, err := exec.Command(program, "trace", file, fmt.Sprintf("1-%d", pages)).Output()
	if err != nil {
		return []string{"mutool: " + err.Error()}
	}
	return offTrace(data)
}

// lintFaults has xmllint read the SVGs of a pack, beside file.
func lintFaults(file string, m pack.Made) []string {
	program, err := exec.LookPath("xmllint")
	if err != nil {
		return nil // the tests of the pack fail for it
	}
	args := []string{"--noout"}
	for _, f := range m.Files {
		if strings.HasSuffix(f.Name, ".svg") {
			args = append(args, fmt.Sprintf("%s.%d.svg", file, len(args)))
			if err := os.WriteFile(args[len(args)-1], f.Data, 0o644); err != nil {
				return []string{err.Error()}
			}
		}
	}
	if out, err := exec.Command(program, args...).CombinedOutput(); err != nil || len(out) > 0 {
		return []string{fmt.Sprintf("xmllint: %v: %.300s", err, out)}
	}
	return nil
}

// offTrace reads a trace of mutool.
func offTrace(data []byte) (out []string) {
	d := xml.NewDecoder(bytes.NewReader(data))
	d.Strict = false
	var page string
	var box [4]float64
	var m [6]float64
	var slack float64
	clips, marks := 0, 0
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return append(out, "mutool: "+err.Error())
		}
		e, ok := tok.(xml.StartElement)
		if !ok {
			continue
		}
		at := map[string]string{}
		for _, a := range e.Attr {
			at[a.Name.Local] = a.Value
		}
		switch name := e.Name.Local; {
		case name == "page":
			page = at["number"]
			fmt.Sscan(at["mediabox"], &box[0], &box[1], &box[2], &box[3])
		case strings.HasPrefix(name, "clip_"):
			clips++
		case name == "pop_clip":
			clips--
		case name == "fill_path" || name == "stroke_path":
			fmt.Sscan(at["transform"], &m[0], &m[1], &m[2], &m[3], &m[4], &m[5])
			slack = 0.2 // points
			if w, err := strconv.ParseFloat(at["linewidth"], 64); err == nil {
				slack += w / 2
			}
		case name == "moveto" || name == "lineto" || name == "curveto":
			if marks++; clips > 0 {
				continue
			}
			for _, end := range []string{"", "1", "2", "3"} {
				x, errX := strconv.ParseFloat(at["x"+end], 64)
				y, errY := strconv.ParseFloat(at["y"+end], 64)
				if at["x"+end] == "" {
					continue
				}
				px, py := m[0]*x+m[2]*y+m[4], m[1]*x+m[3]*y+m[5]
				if errX != nil || errY != nil || !(px >= box[0]-slack && px <= box[2]+slack && py >= box[1]-slack && py <= box[3]+slack) {
					out = append(out, fmt.Sprintf("page %s: a mark at (%.2f, %.2f) points is off the page of %v", page, px, py, box))
				}
			}
		}
	}
	if marks == 0 {
		out = append(out, "mutool sees no line")
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
