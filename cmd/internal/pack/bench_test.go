package pack

import (
	"bytes"
	"slices"
	"testing"
	"time"

	"github.com/jung-kurt/gofpdf"

	"silowright/cmd/internal/plan"
	"silowright/cmd/internal/report"
	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
	"silowright/render/sheets"
)

// BenchmarkDemoPack is the whole main job in memory, job file to all files,
// held against its floor: the PDF library alone, by its own calls, writing the
// words and lines of the same pages in the same two embedded fonts. They are
// laid out beforehand, and the two run in turn; the ratio is of medians.
func BenchmarkDemoPack(b *testing.B) {
	pages := floorPages(b)
	var own, floor []time.Duration
	for b.Loop() {
		begin := time.Now()
		p, err := plan.Demo()
		if err != nil {
			b.Fatal(err)
		}
		make1(b, p)
		own = append(own, time.Since(begin))
		b.StopTimer()
		begin = time.Now()
		bare(b, pages)
		floor = append(floor, time.Since(begin))
		b.StartTimer()
	}
	slices.Sort(own)
	slices.Sort(floor)
	middle := len(own) / 2
	b.ReportMetric(float64(own[middle])/float64(floor[middle]), "x-bare-pdf")
	b.ReportMetric(float64(floor[middle])/1e6, "ms-bare-pdf")
}

// BenchmarkDemoFindings is job file to findings and bill, nothing drawn.
func BenchmarkDemoFindings(b *testing.B) {
	for b.Loop() {
		if _, err := plan.Demo(); err != nil {
			b.Fatal(err)
		}
	}
}

// floorPages are the pages of the demo's pack, laid out.
func floorPages(b *testing.B) []render.Drawing {
	p, err := plan.Demo()
	if err != nil {
		b.Fatal(err)
	}
	tilings, err := layTemplates(p, DefaultOptions(measure.UnitInch))
	if err != nil {
		b.Fatal(err)
	}
	costs, err := report.CostsOf(p)
	if err != nil {
		b.Fatal(err)
	}
	sections, err := sheets.Sections(sheetsPack(p, costs, tilings), sheets.Letter)
	if err != nil {
		b.Fatal(err)
	}
	var pages []render.Drawing
	for _, s := range sections {
		pages = append(pages, s.Pages...)
	}
	for _, l := range tilings {
		for _, t := range l.tiling.Tiles {
			pages = append(pages, render.TileSheet(l.tiling, t, render.TileWords{Title: l.template.Title}))
		}
		if len(l.tiling.Tiles) > 0 {
			pages = append(pages, l.tiling.Lines())
		}
	}
	for _, d := range drawingPages(p, sheets.Letter) {
		pages = append(pages, d.page)
	}
	return pages
}

func bare(b *testing.B, pages []render.Drawing) {
	f := gofpdf.NewCustom(&gofpdf.InitType{UnitStr: "mm", Size: gofpdf.SizeType{Wd: 210, Ht: 297}})
	f.SetAutoPageBreak(false, 0)
	f.AddUTF8FontFromBytes("go", "", render.RegularTTF())
	f.AddUTF8FontFromBytes("go", "B", render.BoldTTF())
	for _, d := range pages {
		f.AddPageFormat("P", gofpdf.SizeType{Wd: float64(d.Width), Ht: float64(d.Height)})
		for _, t := range d.Texts {
			style := ""
			if t.Bold {
				style = "B"
			}
			f.SetFont("go", style, float64(t.Size)*3.9)
			f.Text(float64(t.At.X), float64(d.Height-t.At.Y), t.Words)
		}
		for _, s := range d.Strokes {
			for _, q := range s.Path.Beziers() {
				x, y := float64(q.To.X), float64(d.Height-q.To.Y)
				switch q.Kind {
				case path.Move:
					f.MoveTo(x, y)
				case path.Curve:
					f.CurveBezierCubicTo(float64(q.C1.X), float64(d.Height-q.C1.Y), float64(q.C2.X), float64(d.Height-q.C2.Y), x, y)
				case path.Close:
					f.ClosePath()
				default:
					f.LineTo(x, y)
				}
			}
			f.DrawPath("D")
		}
	}
	var buf bytes.Buffer
	if err := f.Output(&buf); err != nil {
		b.Fatal(err)
	}
}
