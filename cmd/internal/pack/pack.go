// Package pack makes the files of a shop pack from a plan: the PDF to build
// from, one SVG a template, the tables and the report. It writes nothing: the
// files go to package output.
package pack

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"sync"

	"silowright/bom"
	"silowright/cmd/internal/output"
	"silowright/cmd/internal/plan"
	"silowright/cmd/internal/report"
	"silowright/cmd/internal/workbook"
	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/render"
	"silowright/render/pdf"
	"silowright/render/sheets"
	"silowright/render/svg"
)

// Options are what a user chooses about the pack.
type Options struct {
	Paper   render.Paper   // for templates
	Margin  measure.Length // what the printer cannot reach
	Overlap measure.Length // of neighbouring template sheets
	Stretch render.Stretch // what the printer measured calls for
	Page    sheets.Paper   // for documents
	Sheet   render.Paper   // board or sheet that a laser or router shop cuts patterns from
	Strips  bool           // wrap strips round body and base too
	Only    []string       // sections of the PDF; empty is all (see Sections)
}

// DefaultOptions are letter paper for inch jobs, A4 for metric ones, a margin
// of 1/4 in (6 mm) and an overlap of 1/2 in (12 mm).
func DefaultOptions(u measure.Unit) Options {
	name, o := "letter", Options{Margin: measure.Inch / 4, Overlap: measure.Inch / 2}
	if u == measure.UnitMM {
		name, o = "A4", Options{Margin: 6, Overlap: 12}
	}
	o.Paper, _ = render.PaperNamed(name, u)
	o.Page = sheets.Letter
	o.Sheet = render.Paper{Name: "4 x 8 ft", Width: 4 * measure.Foot, Height: 8 * measure.Foot}
	if u == measure.UnitMM {
		o.Page = sheets.A4
		o.Sheet = render.Paper{Name: "1220 x 2440", Width: 1220, Height: 2440}
	}
	return o
}

// Made is a finished pack.
type Made struct {
	Files  []output.File
	Pages  int // of documents
	Sheets int // of templates
}

// Make draws and writes all files of the pack.
func Make(p *plan.Plan, o Options) (Made, error) {
	var m Made
	add := func(name string, data []byte) { m.Files = append(m.Files, output.File{Name: name, Data: data}) }

	costed := inBackground(func() (report.Costs, error) { return report.CostsOf(p) })
	viewed := inBackground(func() ([]drawingPage, error) { return drawingPages(p, o.Page), nil })
	tilings, err := layTemplates(p, o)
	if err != nil {
		return m, err
	}
	drawn := inBackground(func() ([]output.File, error) { return vectors(tilings, o) })
	costs, err := costed()
	if err != nil {
		return m, err
	}
	sums := inBackground(func() ([]byte, error) { return workbook.Of(p, costs) })
	told := inBackground(func() ([]byte, error) { return told(p, costs, tilings) })
	book, err := shopPack(p, o, content{costs, tilings, viewed}, &m)
	if err != nil {
		return m, err
	}
	add("shop-pack.pdf", book)
	files, err := drawn()
	if err != nil {
		return m, err
	}
	m.Files = append(m.Files, files...)
	add("bill.csv", marked(p.Cost.Bill.CSV()))
	m.Files = append(m.Files, orderFiles(p)...)
	table, err := sums()
	if err != nil {
		return m, err
	}
	add("costs.xlsx", table)
	add("cuts.csv", marked(bom.CutsCSV(p.Cuts)))
	add("holes.csv", marked(holesCSV(p)))
	data, err := told()
	if err != nil {
		return m, err
	}
	add("report.json", data)
	return m, nil
}

// told is report.json.
func told(p *plan.Plan, costs report.Costs, tilings []laid) ([]byte, error) {
	var written []geometry.Template
	for _, t := range tilings {
		written = append(written, t.template)
	}
	return report.Of(p, costs, written).JSON()
}

// marked puts a byte-order mark before a table, by which every spreadsheet
// knows UTF-8.
func marked(table []byte) []byte { return append([]byte("\ufeff"), table...) }

// inBackground begins a part; what it returns waits for it. Parts do not depend
// on one another, so that the order they are made in does not show.
func inBackground[T any](make func() (T, error)) func() (T, error) {
	var part T
	var err error
	var wait sync.WaitGroup
	wait.Go(func() { part, err = make() })
	return func() (T, error) {
		wait.Wait()
		return part, err
	}
}

// vectors are the templates at true size, one by one and nested on sheets.
func vectors(tilings []laid, o Options) ([]output.File, error) {
	var out []output.File
	for _, t := range tilings {
		var buf bytes.Buffer
		if err := svg.Write(&buf, t.drawing); err != nil {
			return nil, err
		}
		out = append(out, output.File{Name: "templates/" + t.template.ID + ".svg", Data: buf.Bytes()})
	}
	nested, err := combinedSheets(tilings, o.Sheet)
	return append(out, nested...), err
}

// revision is printed on every page; a pack carries no date, so that packs can
// be compared.
const revision = "A"

// laid is a template with its drawing and its sheets of paper.
type laid struct {
	template geometry.Template
	drawing  render.Drawing
	tiling   render.Tiling // without sheets when it is not printed
}

func layTemplates(p *plan.Plan, o Options) ([]laid, error) {
	var out []laid
	for i, s := range p.Silos {
		for _, t := range s.Templates {
			if t.Strip && !o.Strips {
				continue
			}
			t.Count = templateCount(t, p.Cost.Batches[i])
			l := laid{template: t, drawing: render.FromTemplate(t)}
			if !t.Compass {
				var err error
				if l.tiling, err = render.OnPaper(l.drawing, o.Paper, o.Margin, o.Overlap, o.Stretch); err != nil {
					return nil, err
				}
			}
			out = append(out, l)
		}
	}
	return out, nil
}

// content is what the PDF is set from beside the plan.
type content struct {
	costs   report.Costs
	tilings []laid
	views   func() ([]drawingPage, error) // the shop drawings
}

// shopPack sets the document pages, the drawings and the template sheets into
// one PDF.
func shopPack(p *plan.Plan, o Options, c content, m *Made) ([]byte, error) {
	only, err := o.chosen()
	if err != nil {
		return nil, err
	}
	b := pdf.New(pdf.Meta{Title: p.Job.Name + ": shop pack", Subject: "silos, templates and bill"})
	if err := setPages(b, p, o, c, only, m); err != nil {
		return nil, err
	}
	var buf bytes.Buffer
	_, err = b.WriteTo(&buf)
	return buf.Bytes(), err
}

// setPages sets the parts wanted, one page after the other.
func setPages(b pager, p *plan.Plan, o Options, c content, only []string, m *Made) error {
	var docs []string
	for _, id := range only {
		if slices.Contains(sheets.IDs(), id) {
			docs = append(docs, id)
		}
	}
	sections := map[string]sheets.Section{}
	if len(docs) > 0 {
		set, err := sheets.Sections(sheetsPack(p, c.costs, c.tilings), o.Page, docs...)
		if err != nil {
			return err
		}
		for _, s := range set {
			sections[s.ID] = s
		}
	}
	for _, id := range only {
		var err error
		switch id {
		case drawingsPart:
			err = drawings(b, c.views, m)
		case templatesPart:
			err = templateSheets(b, p, o, c.tilings, m)
		default:
			err = documents(b, sections[id], m)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// documents adds one section's pages.
func documents(b pager, s sheets.Section, m *Made) error {
	for i, d := range s.Pages {
		mark := ""
		if i == 0 {
			mark = s.Title
		}
		if err := b.Page(d, mark, 0); err != nil {
			return err
		}
		m.Pages++
	}
	return nil
}

// drawings adds the shop drawings.
func drawings(b pager, views func() ([]drawingPage, error), m *Made) error {
	pages, err := views()
	if err != nil {
		return err
	}
	for _, d := range pages {
		if err := b.Page(d.page, "Drawing: "+d.title, 0); err != nil {
			return err
		}
		m.Pages++
	}
	return nil
}

// templateSheets adds the check squares and every template's sheets.
func templateSheets(b pager, p *plan.Plan, o Options, tilings []laid, m *Made) error {
	if err := b.Page(render.TestSquare(o.Paper, p.Job.Name, o.Stretch), "Templates: measure these squares first", 0); err != nil {
		return err
	}
	m.Sheets++
	for _, l := range tilings {
		t := l.template
		words := render.TileWords{Title: t.Title + " (drum kind " + t.Drum + ")",
			Part: fmt.Sprintf("%s, to mark %d", t.Part, t.Count), Up: t.Up, Job: p.Job.Name + ", revision " + revision, Stretch: o.Stretch}
		for i, tile := range l.tiling.Tiles {
			mark := ""
			if i == 0 {
				mark = words.Title
			}
			sheet := render.TileSheet(l.tiling, tile, words)
			if err := b.Window(sheet, t.ID, l.tiling.Lines(), tile.Part, l.tiling.At, mark, 1); err != nil {
				return err
			}
			m.Sheets++
		}
	}
	return nil
}

// templatesPart is the part of the PDF that is the template sheets.
const templatesPart = "templates"

// Parts are the words that Options.Only may hold, in the PDF's order.
func Parts() []string {
	var out []string
	for _, id := range sheets.IDs() {
		out = append(out, id)
		if id == drawingsAfter {
			out = append(out, drawingsPart)
		}
	}
	return append(out, templatesPart)
}

// chosen are the parts wanted, in the PDF's order.
func (o Options) chosen() ([]string, error) {
	for _, w := range o.Only {
		if !slices.Contains(Parts(), w) {
			return nil, fmt.Errorf("only: %q is no part of the pack; hint: one or more of %s", w, strings.Join(Parts(), ", "))
		}
	}
	if len(o.Only) == 0 {
		return Parts(), nil
	}
	return slices.DeleteFunc(Parts(), func(id string) bool { return !slices.Contains(o.Only, id) }), nil
}

// templateCount is how many parts a template marks in this build.
func templateCount(t geometry.Template, b bom.Batch) int {
	if t.Part == "pipe silo" {
		return b.Pipe
	}
	if b.Silo.Build == 0 {
		return 0
	}
	return t.Count / b.Silo.Build * b.Drum
}
