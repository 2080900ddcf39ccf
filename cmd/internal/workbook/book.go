package workbook

import (
	"archive/zip"
	"bytes"
	"cmp"
	"io"
	"regexp"
	"slices"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"

	"silowright/bom"
	"silowright/cmd/internal/plan"
	"silowright/geometry/measure"
)

// look is how a cell is set.
type look int

const (
	words look = iota
	wrapped
	title
	note
	says // words that a formula gives
	heading
	figures // a heading over numbers
	amount
	bold // an amount that matters
	quantity
	minutes
	whole
	percent
	inputs // from here on the same as above, boxed: to be changed by hand
	inputAmount
	inputQuantity
	inputMinutes
	inputWhole
	inputPercent
	inputWords
	looks
)

// cell is one cell: a value, or a formula with the value it has now.
type cell struct {
	value   any // string, float64 or int64
	formula string
	look    look
}

// sheet is a sheet being filled.
type sheet struct {
	name   string
	widths []float64 // of the columns, in characters
	rows   [][]cell  // from row 1 on
	frozen int       // rows that stay in sight, and head every printed page
	print  string    // the last column that is printed; "" for all
	chart  *excelize.Chart
	at     string // where the chart stands
}

// add puts cells as the next row and returns its number. The row is the sheet's
// own: headings are the same for every workbook and are set to their numbers'
// side in each (see settle).
func (s *sheet) add(cells ...cell) int {
	s.rows = append(s.rows, slices.Clone(cells))
	return len(s.rows)
}

// book is the file being written.
type book struct {
	file  *excelize.File
	style [looks]int
	paper int
	any   bool
}

// fixed is the time the file says it is of: the first that a zip file can hold.
var fixed = time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)

// Paper sizes as ECMA-376 numbers them (18.3.1.63, pageSetup).
const (
	letter = 1
	a4     = 9
)

func newBook(p *plan.Plan) (*book, error) {
	b := &book{file: excelize.NewFile(), paper: letter}
	if p.Job.Units == measure.UnitMM {
		b.paper = a4
	}
	stamp := fixed.Format(time.RFC3339)
	if err := b.file.SetDocProps(&excelize.DocProperties{Creator: "silowright", LastModifiedBy: "silowright",
		Title: text(p.Job.Name), Created: stamp, Modified: stamp, Language: "en"}); err != nil {
		return nil, err
	}
	if err := b.file.SetAppProps(&excelize.AppProperties{Application: "silowright"}); err != nil {
		return nil, err
	}
	yes := true
	if err := b.file.SetCalcProps(&excelize.CalcPropsOptions{FullCalcOnLoad: &yes}); err != nil {
		return nil, err
	}
	return b, b.styles(coin{p.Currency.Digits()})
}

// styles sets the looks up. An input is boxed and its heading says so; the pale
// ground is besides.
func (b *book) styles(c coin) error {
	format := map[look]string{words: "@", wrapped: "@", title: "@", note: "@", says: "General", heading: "@", figures: "@", amount: c.format(), bold: c.format(),
		quantity: "#,##0.####", minutes: "#,##0.0", whole: "#,##0", percent: "0.00##%"}
	for k, of := range map[look]look{inputAmount: amount, inputQuantity: quantity, inputMinutes: minutes, inputWhole: whole, inputPercent: percent, inputWords: words} {
		format[k] = format[of]
	}
	for l := range looks {
		f, ok := format[l]
		if !ok {
			continue
		}
		st := &excelize.Style{CustomNumFmt: &f, Alignment: &excelize.Alignment{Vertical: "top", WrapText: wraps(l)}, Font: &excelize.Font{Size: 10, Family: "Arial"}}
		switch {
		case l == title:
			st.Font.Bold, st.Font.Size = true, 14
		case l == bold:
			st.Font.Bold = true
			st.Border = []excelize.Border{{Type: "top", Color: "000000", Style: 1}}
		case l == heading, l == figures:
			st.Font.Bold = true
			st.Border = []excelize.Border{{Type: "bottom", Color: "000000", Style: 2}}
		case l > inputs:
			st.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"FFF7DC"}}
			for _, side := range []string{"left", "right", "top", "bottom"} {
				st.Border = append(st.Border, excelize.Border{Type: side, Color: "606060", Style: 1})
			}
		}
		if l >= figures && l != inputWords { // apart from words that follow
			st.Alignment.Horizontal, st.Alignment.Indent = "right", 1
		}
		id, err := b.file.NewStyle(st)
		if err != nil {
			return err
		}
		b.style[l] = id
	}
	return nil
}

func wraps(l look) bool { return l == wrapped || l == heading || l == figures }

// settle sets headings over numbers to the numbers' side.
func (s *sheet) settle() {
	for i := range len(s.rows) - 1 {
		for k := range min(len(s.rows[i]), len(s.rows[i+1])) {
			below := s.rows[i+1][k].look
			if c := &s.rows[i][k]; c.look == heading && below >= amount && below != inputWords {
				c.look = figures
			}
		}
	}
}

// height is how high a row is, in points, so that what wraps is seen: an
// estimate, as spreadsheets do not all work it out on opening.
func (s *sheet) height(row []cell) float64 {
	const line, size = 13.0, 14.0 // points, of text and of a title
	lines := 1
	for k, c := range row {
		t, ok := c.value.(string)
		if !ok || !wraps(c.look) || k >= len(s.widths) {
			continue
		}
		n, used := 1, 0.0
		for _, word := range strings.Fields(t) {
			w := float64(utf8.RuneCountInString(word))*0.95 + 1
			if used += w; used > s.widths[k] && used > w {
				n, used = n+1, w
			}
			n += int(w / (s.widths[k] + 1))
		}
		lines = max(lines, n)
	}
	if len(row) > 0 && row[0].look == title {
		return size + 6
	}
	return min(400, float64(lines)*line+2) // a row holds at most 409 points
}

// put writes a sheet into the file.
func (b *book) put(s *sheet) error {
	f := b.file
	if b.any {
		if _, err := f.NewSheet(s.name); err != nil {
			return err
		}
	} else if err := f.SetSheetName(f.GetSheetName(0), s.name); err != nil {
		return err
	}
	b.any = true
	yes, across, one, none := true, "landscape", 1, 0
	if err := f.SetSheetProps(s.name, &excelize.SheetPropsOptions{FitToPage: &yes}); err != nil {
		return err
	}
	if err := f.SetPageLayout(s.name, &excelize.PageLayoutOptions{Size: &b.paper, Orientation: &across, FitToWidth: &one, FitToHeight: &none}); err != nil {
		return err
	}
	if err := f.SetHeaderFooter(s.name, &excelize.HeaderFooterOptions{OddFooter: "&L&A&Rpage &P of &N"}); err != nil {
		return err
	}
	if s.chart != nil {
		if err := f.AddChart(s.name, s.at, s.chart); err != nil {
			return err
		}
	}
	if s.frozen > 0 {
		rows := "$1:$" + number(s.frozen)
		if err := f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: s.name + "!" + rows, Scope: s.name}); err != nil {
			return err
		}
	}
	if s.print != "" {
		area := span(s.name, "A", 1, len(s.rows))
		area = strings.Replace(area, ":$A$", ":$"+s.print+"$", 1)
		if err := f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Area", RefersTo: area, Scope: s.name}); err != nil {
			return err
		}
	}
	s.settle()
	return b.fill(s)
}

// fill writes the cells.
func (b *book) fill(s *sheet) error {
	w, err := b.file.NewStreamWriter(s.name)
	if err != nil {
		return err
	}
	if s.frozen > 0 {
		if err := w.SetPanes(&excelize.Panes{Freeze: true, YSplit: s.frozen, TopLeftCell: ref("A", s.frozen+1), ActivePane: "bottomLeft"}); err != nil {
			return err
		}
	}
	for i, width := range s.widths {
		if err := w.SetColWidth(i+1, i+1, width); err != nil {
			return err
		}
	}
	for i, row := range s.rows {
		out := make([]any, len(row))
		for k, c := range row {
			if c == (cell{}) {
				continue
			}
			v := c.value
			if c.formula != "" && c.look == words {
				c.look = says // a formula typed anew into a cell of words would become words
			}
			if t, ok := v.(string); ok && c.formula == "" {
				if v = text(t); t == "" {
					v = nil
				}
			}
			out[k] = excelize.Cell{StyleID: b.style[c.look], Formula: c.formula, Value: v}
		}
		if err := w.SetRow(ref("A", i+1), out, excelize.RowOpts{Height: s.height(row)}); err != nil {
			return err
		}
	}
	return w.Flush()
}

// bytes are the file: its parts in order of name, all of one time.
func (b *book) bytes() ([]byte, error) {
	raw, err := b.file.WriteToBuffer()
	if err != nil {
		return nil, err
	}
	in, err := zip.NewReader(bytes.NewReader(raw.Bytes()), int64(raw.Len()))
	if err != nil {
		return nil, err
	}
	// Readers look for the list of contents first.
	order := func(f *zip.File) string { return strings.TrimPrefix(f.Name, "[") }
	slices.SortFunc(in.File, func(x, y *zip.File) int {
		if first := strings.HasPrefix(x.Name, "["); first != strings.HasPrefix(y.Name, "[") {
			if first {
				return -1
			}
			return 1
		}
		return cmp.Compare(order(x), order(y))
	})
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for _, f := range in.File {
		if err := again(w, f); err != nil {
			return nil, err
		}
	}
	err = w.Close()
	return out.Bytes(), err
}

func again(w *zip.Writer, f *zip.File) error {
	from, err := f.Open()
	if err != nil {
		return err
	}
	defer from.Close()
	to, err := w.CreateHeader(&zip.FileHeader{Name: f.Name, Method: zip.Deflate, Modified: fixed})
	if err != nil {
		return err
	}
	part, err := io.ReadAll(from)
	if err == nil {
		_, err = to.Write(settled(f.Name, part))
	}
	return err
}

var ending = regexp.MustCompile(`<Default [^>]*?(/>|></Default>)`)

// settled puts the file endings that the list of contents explains in order:
// the library writes them in any.
func settled(name string, part []byte) []byte {
	if name != "[Content_Types].xml" {
		return part
	}
	all := ending.FindAllString(string(part), -1)
	slices.Sort(all)
	return ending.ReplaceAllFunc(part, func([]byte) []byte {
		next := all[0]
		all = all[1:]
		return []byte(next)
	})
}

// longest bounds the text of a cell, in characters; a cell holds 32,767
// (ECMA-376 leaves it open; it is common practice, no source).
const longest = 4000

// text is what a cell may hold of a text of the job's: harmless, printable,
// and not too long to read.
func text(s string) string {
	s = strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r == 0xFFFE || r == 0xFFFF {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(s, "�"))
	if r := []rune(s); len(r) > longest {
		s = string(r[:longest-1]) + "…"
	}
	return bom.Harmless(s)
}
