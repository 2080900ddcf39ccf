package pdf_test

import (
	"math"
	"regexp"
	"strconv"
	"testing"

	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
	"silowright/render/outside"
	"silowright/render/pdf"
)

// tiled writes a tiling's sheets.
func tiled(t *testing.T, g render.Tiling) []byte {
	t.Helper()
	return book(t, func(b *pdf.Book) error {
		for _, tile := range g.Tiles {
			sheet := render.TileSheet(g, tile, render.TileWords{Title: "Trial", Part: "base", Up: "rim upwards", Job: "Trial"})
			if err := b.Window(sheet, "d", g.Lines(), tile.Part, g.At, "", 0); err != nil {
				return err
			}
		}
		return nil
	})
}

// onSheet is where a point of the drawing should be on a tile's sheet.
func onSheet(g render.Tiling, tile render.Tile, p path.Point) (x, y float64) {
	return float64(p.X - tile.Part.Min.X + g.At.X), float64(p.Y - tile.Part.Min.Y + g.At.Y)
}

// mark measures a match mark on a sheet: the middle of its ring, from readings
// all round between the arms of its cross (poppler moves straight lines to
// whole pixels, but not curves).
func (p picture) mark(t *testing.T, x, y, r float64) (mx, my float64) {
	t.Helper()
	n := 0.0
	for quarter := range 4 {
		for deg := 20; deg <= 70; deg += 5 {
			sin, cos := math.Sincos(float64(90*quarter+deg) * math.Pi / 180)
			s, ok := p.middle(x+r*cos, y+r*sin, cos, sin, 0.6)
			if !ok {
				t.Fatalf("no match mark at (%.2f, %.2f)", x, y)
			}
			mx, my, n = mx+s*cos, my+s*sin, n+1
		}
	}
	// a ring moved by m reads s = m·u along u, and u·u averages one half
	return x + 2*mx/n, y + 2*my/n
}

// Sheets joined by nothing but their match marks, as a person would with
// scissors and tape, give the outline back: every reading of the ring's two
// circles within 0.05 mm of true, their areas within 0.1 % of πr².
func TestSheetsJoinedByTheirMatchMarks(t *testing.T) {
	const big, small = 285.75, 190.5 // 22 1/2 and 15 in across
	d := render.Drawing{Title: "ring", Width: 2*big + 12, Height: 2*big + 12}
	centre := path.Pt(big+6, big+6)
	d.Circle(render.Cut, centre, big)
	d.Circle(render.Cut, centre, small)
	for _, name := range []string{"letter", "A3", "roll 400 mm"} {
		t.Run(name, func(t *testing.T) {
			paper, err := render.PaperNamed(name, measure.UnitMM)
			if err != nil {
				t.Fatal(err)
			}
			g, err := render.Lay(d, paper, 6, 12)
			if err != nil {
				t.Fatal(err)
			}
			sheets := pictures(t, outside.File(t, "tiles.pdf", tiled(t, g)))
			if len(sheets) != len(g.Tiles) || len(sheets) < 2 {
				t.Fatalf("%d pictures of %d sheets", len(sheets), len(g.Tiles))
			}
			for i := range sheets {
				sheets[i].top = float64(g.Sheet.Height) * perMM
			}
			shift := join(t, g, sheets)
			for _, r := range []float64{big, small} {
				measureCircle(t, g, sheets, shift, centre, r)
			}
		})
	}
}

// offset moves a point of a sheet to the first sheet's frame, mm.
type offset struct{ x, y float64 }

// join lines the sheets up by the match marks each has in common with one that
// already lies.
func join(t *testing.T, g render.Tiling, sheets []picture) []offset {
	t.Helper()
	r := min(2.5, float64(g.Overlap)/4)
	lie := make([]offset, len(sheets))
	done := make([]bool, len(sheets))
	done[0] = true
	for left := len(sheets) - 1; left > 0; {
		before := left
		for a := range sheets {
			for b := range sheets {
				if !done[a] || done[b] {
					continue
				}
				n, sum := 0.0, offset{}
				for _, p := range g.Joins(g.Tiles[a]) {
					for _, q := range g.Joins(g.Tiles[b]) {
						if math.Hypot(float64(p.X-q.X), float64(p.Y-q.Y)) > 1e-6 {
							continue
						}
						xa, ya := onSheet(g, g.Tiles[a], p)
						xb, yb := onSheet(g, g.Tiles[b], q)
						xa, ya = sheets[a].mark(t, xa, ya, r)
						xb, yb = sheets[b].mark(t, xb, yb, r)
						n, sum = n+1, offset{sum.x + xa - xb, sum.y + ya - yb}
					}
				}
				if n == 0 {
					continue
				}
				lie[b] = offset{lie[a].x + sum.x/n, lie[a].y + sum.y/n}
				done[b] = true
				left--
			}
		}
		if left == before {
			t.Fatal("a sheet has no match mark in common with the others")
		}
	}
	return lie
}

// measureCircle reads where a circle's line runs, at every degree, on every
// sheet that shows it.
func measureCircle(t *testing.T, g render.Tiling, sheets []picture, lie []offset, c path.Point, r float64) {
	t.Helper()
	type reading struct{ x, y float64 }
	var round []reading
	worst := 0.0
	cx, cy := onSheet(g, g.Tiles[0], c) // the first sheet's frame is all sheets'
	for deg := range 360 {
		sin, cos := math.Sincos(float64(deg) * math.Pi / 180)
		p := path.Pt(c.X+measure.Length(r*cos), c.Y+measure.Length(r*sin))
		seen := 0
		var mean reading
		for i, tile := range g.Tiles {
			const edge = 3 // window lines and rulers keep further away
			if b := tile.Part; p.X < b.Min.X+edge || p.X > b.Max.X-edge || p.Y < b.Min.Y+edge || p.Y > b.Max.Y-edge {
				continue
			}
			x, y := onSheet(g, tile, p)
			s, ok := sheets[i].middle(x, y, cos, sin, 1)
			if !ok {
				t.Fatalf("no line at %d° on sheet %s", deg, tile.Name())
			}
			x, y = x+s*cos+lie[i].x, y+s*sin+lie[i].y
			worst = math.Max(worst, math.Abs(math.Hypot(x-cx, y-cy)-r))
			mean, seen = reading{mean.x + x, mean.y + y}, seen+1
		}
		if seen == 0 {
			t.Fatalf("%d° is on no sheet", deg)
		}
		round = append(round, reading{mean.x / float64(seen), mean.y / float64(seen)})
	}
	area := 0.0
	for i, a := range round {
		b := round[(i+1)%len(round)]
		area += (a.x*b.y - b.x*a.y) / 2
	}
	// 360 chords enclose sin(1°)/1° of the circle
	area /= math.Sin(math.Pi/180) / (math.Pi / 180)
	if want := math.Pi * r * r; math.Abs(area-want) > want/1000 {
		t.Errorf("r %.2f: area %.1f mm², want %.1f", r, area, want)
	}
	if worst > 0.05 {
		t.Errorf("r %.2f: off by %.3f mm at worst", r, worst)
	}
	t.Logf("r %.2f: off by %.3f mm at worst", r, worst)
}

var curveRE = regexp.MustCompile(`<curveto x1="([-0-9.e]+)" y1="([-0-9.e]+)" x2="([-0-9.e]+)" y2="([-0-9.e]+)" x3="([-0-9.e]+)" y3="([-0-9.e]+)"`)
var moveRE = regexp.MustCompile(`<moveto x="([-0-9.e]+)" y="([-0-9.e]+)"`)

// The numbers in the file, as mutool reads them: every point of a circle of
// 285 mm lies within 0.003 mm of it (cubics of 45° are off by 0.0012 mm).
func TestCircleInTheFile(t *testing.T) {
	const r = 285.0
	d := render.Drawing{Title: "circle", Width: 600, Height: 640}
	d.Circle(render.Cut, path.Pt(300, 310), r)
	trace := string(outside.Run(t, "mutool", "trace", outside.File(t, "c.pdf", onePage(t, d))))
	mm := func(s string) float64 {
		x, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return x * 25.4 / 72
	}
	m := moveRE.FindStringSubmatch(trace)
	curves := curveRE.FindAllStringSubmatch(trace, -1)
	if m == nil || len(curves) < 8 {
		t.Fatalf("%d curves in\n%s", len(curves), trace)
	}
	var p path.Path
	p.MoveTo(path.Pt(measure.Length(mm(m[1])), measure.Length(mm(m[2]))))
	for _, c := range curves {
		var v [6]measure.Length
		for i := range v {
			v[i] = measure.Length(mm(c[i+1]))
		}
		p.CurveTo(path.Pt(v[0], v[1]), path.Pt(v[2], v[3]), path.Pt(v[4], v[5]))
	}
	for _, chain := range p.Flatten(0.0005) {
		for _, q := range chain {
			if off := math.Abs(math.Hypot(float64(q.X)-300, float64(q.Y)-310) - r); off > 0.003 {
				t.Fatalf("(%v, %v) is off by %.4f mm", q.X, q.Y, off)
			}
		}
	}
	if want := math.Pi * r * r; math.Abs(float64(p.Area())-want) > want*1e-5 {
		t.Errorf("area %v, want %v", p.Area(), want)
	}
}
