package views

import (
	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
)

// strip writes the title strip along the lower edge: the data ISO 7200 asks
// for, in two rows of our own.
func (d *sheet) strip(main scale) {
	w := d.size.Width
	const half = stripTall / 2
	d.Line(render.Outline, path.Pt(0.25, stripTall), path.Pt(w-0.25, stripTall))
	d.Line(render.Thin, path.Pt(0.25, half), path.Pt(w-0.25, half))
	units := "in (mm)"
	if d.units == measure.UnitMM {
		units = "mm (in)"
	}
	upper, bar := []cell{
		{"title", d.Title + " · " + d.part, 0.42, true},
		{"drum kind", d.drum, 0.19, true},
		{"scale", main.name, 0.12, true},
	}, 0.27
	if d.projects {
		upper = []cell{
			{"title", d.Title + " · " + d.part, 0.34, true},
			{"drum kind", d.drum, 0.16, true},
			{"scale", main.name, 0.12, true},
			{"projection", "", 0.16, false},
		}
		bar = 0.22
		d.projectionSymbol(path.Pt(w*0.62+2, half+1), w*0.16-3)
	}
	d.cells(half, append(upper, cell{share: bar}))
	d.cells(0, []cell{
		{"job", d.size.Job, 0.26, false},
		{"document", "shop drawing", 0.16, false},
		{"dimensions", units, 0.12, false},
		{"revision", d.size.Revision, 0.1, false},
		{"date", d.size.Date, 0.12, false},
		{"drawn, approved", "", 0.14, false},
		{"sheet", d.size.Sheet, 0.1, true},
	})
	d.scaleBar(path.Pt(w*length(1-bar)+4, half+2.6), w*length(bar)-8, main)
}

type cell struct {
	name, words string
	share       float64
	bold        bool
}

func (d *sheet) cells(y length, row []cell) {
	x := length(0)
	const half = stripTall / 2
	for i, c := range row {
		w := d.size.Width * length(c.share)
		if i > 0 {
			d.Line(render.Thin, path.Pt(x, y+0.25), path.Pt(x, y+half))
		}
		if c.name != "" {
			d.Words(path.Pt(x+1.5, y+half-caption-0.9), caption, render.Left, c.name)
		}
		d.fitWords(path.Pt(x+1.5, y+1.5), w-3, small+0.5*boolTo(c.bold), c.bold, c.words)
		x += w
	}
}

func boolTo(b bool) length {
	if b {
		return 1
	}
	return 0
}

// fitWords writes words on one line no longer than room: smaller where they
// must be, then shortened.
func (d *sheet) fitWords(at path.Point, room, size length, bold bool, words string) {
	for size > caption && render.TextWidth(words, size, bold) > room {
		size = max(caption, size-0.25)
	}
	for r := []rune(words); render.TextWidth(words, size, bold) > room && len(r) > 1; {
		r = r[:len(r)-1]
		words = string(r) + "."
	}
	if words == "" {
		return
	}
	if bold {
		d.BoldWords(at, size, render.Left, words)
		return
	}
	d.Words(at, size, render.Left, words)
}

// scaleBar draws a bar a whole number of inches and one of millimetres long.
func (d *sheet) scaleBar(at path.Point, room length, sc scale) {
	if sc.name == "" || sc.name == noScale {
		return
	}
	room -= 16
	bars := []struct {
		step  length
		unit  string
		count []float64
	}{
		{measure.Inch, "in", []float64{48, 24, 12, 6, 4, 2, 1}},
		{1, "mm", []float64{1000, 500, 200, 100, 50, 20}},
	}
	for i, b := range bars {
		y := at.Y + 3.2*length(1-i)
		for _, n := range b.count {
			long := b.step * length(n*sc.k)
			if long > room {
				continue
			}
			const parts = 4
			for j := range parts {
				x := at.X + long*length(j)/parts
				if j%2 == 0 {
					d.Shade(path.Rect(path.Box{Min: path.Pt(x, y), Max: path.Pt(x+long/parts, y+1.1)}), 1)
				}
			}
			d.Rect(render.Thin, path.Pt(at.X, y), path.Pt(at.X+long, y+1.1))
			d.Words(path.Pt(at.X+long+1.2, y-0.3), caption, render.Left, number(n)+" "+b.unit)
			break
		}
	}
}
