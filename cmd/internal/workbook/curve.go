package workbook

import (
	"github.com/xuri/excelize/v2"

	"silowright/bom/build"
	"silowright/bom/money"
)

var curveWidths = []float64{12, 12, 15, 15, 15, 15, 15, 12}

// curve is the sheet of what other sizes of build cost: values of the program,
// which nothing on other sheets changes.
func (w *writing) curve() *sheet {
	s := &sheet{name: curveSheet, widths: curveWidths, frozen: 2, at: "I2"}
	s.add(cell{value: "What other counts cost: the program's values, which do not follow changes made here", look: title})
	s.add(headings("drum silos", "pipe silos", "total", "each drum silo", "each pipe silo", "one drum silo more adds", "one pipe silo more adds", "")...)
	for _, p := range w.costs.Points {
		row := w.point(p)
		s.add(append(row, w.money(p.NextDrum), w.money(p.NextPipe), mark(p))...)
	}
	if len(w.costs.Curve) == 0 {
		return s
	}
	s.add()
	s.add(headings("drum silos", "pipe silos", "total", "each drum silo", "each pipe silo", "", "", "")...)
	from := len(s.rows) + 1
	for _, p := range w.costs.Curve {
		s.add(append(w.point(p), cell{}, cell{}, mark(p))...)
	}
	count, each, name := "A", "D", "each drum silo"
	if w.plan.Job.DrumSilos <= 0 {
		count, each, name = "B", "E", "each pipe silo"
	}
	dark := excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"1F3B57"}}
	axis := func(title string) excelize.ChartAxis {
		return excelize.ChartAxis{MajorGridLines: true, Font: excelize.Font{Size: 9, Color: "303030"}, Title: excelize.ChartTitle{Paragraph: []excelize.RichTextRun{{Text: title}}}}
	}
	s.chart = &excelize.Chart{Type: excelize.Scatter, Dimension: excelize.ChartDimension{Width: 720, Height: 400},
		Title:  excelize.ChartTitle{Paragraph: []excelize.RichTextRun{{Text: name + ", by the size of the build"}}},
		Legend: excelize.ChartLegend{Position: "none"},
		Series: []excelize.ChartSeries{{Name: quoted(name), Categories: span(curveSheet, count, from, len(s.rows)), Values: span(curveSheet, each, from, len(s.rows)),
			Fill: dark, Line: excelize.LineOptions{Type: excelize.LineSolid, Width: 1.5}, Marker: excelize.ChartMarker{Symbol: "circle", Size: 5, Fill: dark}}},
		XAxis: axis("silos built"), YAxis: axis(string(w.plan.Currency))}
	return s
}

func (w *writing) money(m money.Money) cell { return cell{value: w.coin.of(m), look: amount} }

func (w *writing) point(p build.Point) []cell {
	return []cell{{value: int64(p.Drums), look: whole}, {value: int64(p.Pipes), look: whole}, w.money(p.Total), w.money(p.PerDrum), w.money(p.PerPipe)}
}

func mark(p build.Point) cell {
	if p.Own {
		return wordsOf("this build")
	}
	return cell{}
}
