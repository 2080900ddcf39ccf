package render

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"silowright/geometry/measure"
	"silowright/geometry/path"
)

// anyDrawing is a sheet of random lines, circles and curves, some of them at
// the very edge.
func anyDrawing(r *rand.Rand) Drawing {
	side := func() length { return length(20 + 1300*r.Float64()*r.Float64()) }
	d := Drawing{Title: "outline", Width: side(), Height: side()}
	at := func() path.Point {
		return path.Pt(d.Width*length(r.Float64()), d.Height*length(r.Float64()))
	}
	for range 1 + r.IntN(4) {
		switch r.IntN(4) {
		case 0:
			d.Line(Cut, at(), at())
		case 1:
			c := at()
			d.Circle(Cut, c, min(c.X, c.Y, d.Width-c.X, d.Height-c.Y)*length(r.Float64()))
		case 2:
			var p path.Path
			p.MoveTo(at())
			p.CurveTo(at(), at(), at())
			d.PathOn(Mark, p)
		default:
			d.Rect(Cut, path.Pt(0, 0), path.Pt(d.Width, d.Height))
		}
	}
	return d
}

func anyPaper(r *rand.Rand) Paper {
	if r.IntN(6) == 0 {
		return Paper{Name: "roll", Width: length(200 + 800*r.Float64()), Roll: true}
	}
	if r.IntN(4) == 0 {
		return Paper{Name: "odd", Width: length(150 + 400*r.Float64()), Height: length(150 + 400*r.Float64())}
	}
	return papers[r.IntN(len(papers))]
}

// For any drawing, paper, margin and overlap: every point of every line is on
// a sheet, sheets keep out of the margin, neighbours share just the overlap
// asked for, and only sheets without a line are left out.
func TestTilesCoverEveryStroke(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	laid := 0
	for range 1500 {
		d, paper := anyDrawing(r), anyPaper(r)
		margin, overlap := length(12*r.Float64()), 4+length(21*r.Float64())
		g, err := Lay(d, paper, margin, overlap)
		if err != nil {
			if !strings.Contains(err.Error(), "hint:") {
				t.Fatal(err)
			}
			continue
		}
		laid++
		for _, s := range d.Strokes {
			for _, chain := range s.Path.Flatten(0.01) {
				for _, p := range chain {
					if !onASheet(g, p) {
						t.Fatalf("%v × %v mm on %s: (%v, %v) is on no sheet", d.Width, d.Height, paper.Name, p.X, p.Y)
					}
				}
			}
		}
		lo, hi := g.At, path.Pt(g.At.X+g.Window.X, g.At.Y+g.Window.Y)
		if lo.X < margin-sheetSlack || lo.Y < margin-sheetSlack || hi.X > g.Sheet.Width-margin+sheetSlack || hi.Y > g.Sheet.Height-margin+sheetSlack {
			t.Fatalf("the window %v to %v is in the margin %v of %v", lo, hi, margin, g.Sheet)
		}
		if len(g.Tiles)+g.Empty != g.Cols*g.Rows {
			t.Fatalf("%d sheets and %d empty ones are not %d × %d", len(g.Tiles), g.Empty, g.Cols, g.Rows)
		}
		for _, a := range g.Tiles {
			for _, b := range g.Tiles {
				if b.Row == a.Row && b.Col == a.Col+1 && math.Abs(float64(a.Part.Max.X-b.Part.Min.X-overlap)) > 1e-9 {
					t.Fatalf("%s and %s share %v, want %v", a.Name(), b.Name(), a.Part.Max.X-b.Part.Min.X, overlap)
				}
				if b.Col == a.Col && b.Row == a.Row+1 && math.Abs(float64(b.Part.Max.Y-a.Part.Min.Y-overlap)) > 1e-9 {
					t.Fatalf("%s and %s share %v, want %v", a.Name(), b.Name(), b.Part.Max.Y-a.Part.Min.Y, overlap)
				}
			}
		}
	}
	if laid < 1000 {
		t.Errorf("only %d of 1500 could be laid", laid)
	}
}

// onASheet reports whether a printed window holds p.
func onASheet(g Tiling, p path.Point) bool {
	for _, tile := range g.Tiles {
		if b := tile.Part; p.X >= b.Min.X-1e-9 && p.X <= b.Max.X+1e-9 && p.Y >= b.Min.Y-1e-9 && p.Y <= b.Max.Y+1e-9 {
			return true
		}
	}
	return false
}

// The fewest sheets: a drawing just as large as what a sheet shows takes one,
// a hair's rounding more still one, a tenth of a millimetre more two; and a
// drawing that fits lying only is laid lying.
func TestSheetCount(t *testing.T) {
	a4, err := PaperNamed("a4", measure.UnitMM)
	if err != nil {
		t.Fatal(err)
	}
	const margin, overlap = 6, 12
	w, h := a4.Width-2*margin-sideStrip, a4.Height-2*margin-foot(a4.Width)
	for _, c := range []struct {
		reason        string
		width, height length
		sheets        int
		lying         bool
	}{
		{"just fits", w, h, 1, false},
		{"fits but for rounding", w + 1e-6, h + 1e-6, 1, false},
		{"a tenth too wide", w + 0.1, h, 2, false},
		{"two wide, joined by the overlap", 2*w - overlap, h, 2, false},
		{"lying", a4.Height - 2*margin - sideStrip, 100, 1, true},
	} {
		d := Drawing{Title: "plate", Width: c.width, Height: c.height}
		d.Rect(Cut, path.Pt(0, 0), path.Pt(c.width, c.height))
		g, err := Lay(d, a4, margin, overlap)
		if err != nil {
			t.Fatal(err)
		}
		if len(g.Tiles) != c.sheets || (g.Sheet.Width > g.Sheet.Height) != c.lying {
			t.Errorf("%s: %d sheets of %v × %v mm, want %d", c.reason, len(g.Tiles), g.Sheet.Width, g.Sheet.Height, c.sheets)
		}
	}
}

// For any paper, margin and overlap a drawing just n windows by m, joined by
// their overlaps, takes n × m sheets one way round and never more; however
// little is added, never more than one row and one column are.
func TestNoSheetTooMany(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 400 {
		p := papers[r.IntN(len(papers))]
		margin, overlap := length(12*r.Float64()), minOverlap+length(16*r.Float64())
		n, m := 1+r.IntN(6), 1+r.IntN(6)
		w, h := p.Width-2*margin-sideStrip, p.Height-2*margin-foot(p.Width)
		full := func(k int, window length) length { return length(k)*(window-overlap) + overlap }
		for _, more := range []length{-1, 0, 1e-9, sheetSlack / 2, 0.3} {
			d := Drawing{Title: "plate", Width: full(n, w) + more, Height: full(m, h) + more}
			for x := length(0); x <= d.Width; x += w / 9 { // a line on every sheet
				d.Line(Cut, path.Pt(x, 0), path.Pt(x, d.Height))
			}
			d.Rect(Cut, path.Pt(0, 0), path.Pt(d.Width, d.Height))
			g, err := layOn(d, p, margin, overlap)
			if err != nil {
				t.Fatal(err)
			}
			cols, rows := n, m
			if more > sheetSlack {
				cols, rows = n+1, m+1
			}
			if g.Cols != cols || g.Rows != rows || len(g.Tiles) != cols*rows {
				t.Errorf("%s, margin %.2f, overlap %.2f, %d × %d windows and %v mm: %d × %d, %d sheets", p.Name, margin, overlap, n, m, float64(more), g.Cols, g.Rows, len(g.Tiles))
			}
			best, err := Lay(d, p, margin, overlap)
			if err != nil || len(best.Tiles) > cols*rows {
				t.Errorf("%s: %d sheets where %d do, %v", p.Name, len(best.Tiles), cols*rows, err)
			}
			for _, tile := range g.Tiles {
				for _, x := range []length{tile.Part.Min.X, tile.Part.Min.Y, tile.Part.Max.X, tile.Part.Max.Y} {
					if !x.Finite() {
						t.Fatalf("sheet %s shows %v", tile.Name(), tile.Part)
					}
				}
			}
		}
	}
}

// A margin, an overlap or a drawing that is no number is refused.
func TestLayRefuses(t *testing.T) {
	nan, inf := length(math.NaN()), length(math.Inf(1))
	for _, c := range []struct{ margin, overlap length }{{nan, 12}, {inf, 12}, {-1, 12}, {6, nan}, {6, inf}, {6, 0}, {6, minOverlap - 0.01}, {6, 200}, {140, 12}} {
		for _, p := range []Paper{papers[0], {Name: "roll", Width: 610, Height: 610, Roll: true}} {
			if c.margin == 140 && p.Roll {
				continue // a roll of 610 mm has room for it
			}
			if g, err := Lay(plate(), p, c.margin, c.overlap); err == nil && !(p.Roll && c.overlap == 200) {
				t.Errorf("%s, margin %v, overlap %v: %d sheets", p.Name, float64(c.margin), float64(c.overlap), len(g.Tiles))
			}
		}
	}
	d := plate()
	d.Line(Cut, path.Pt(1, 1), path.Pt(nan, 1))
	if _, err := Lay(d, papers[0], 6, 12); err == nil {
		t.Error("a line to nowhere is laid")
	}
	d = Drawing{Title: "endless", Width: 5e5, Height: 100}
	d.Rect(Cut, path.Pt(0, 0), path.Pt(d.Width, d.Height))
	if _, err := Lay(d, papers[0], 6, 12); err == nil || !strings.Contains(err.Error(), "too many") {
		t.Errorf("half a kilometre is laid: %v", err)
	}
}

// A strip longer than any PDF page (14 400 points, ISO 32000-1 annex C.2) is cut
// into lengths of the roll that overlap like any other sheets.
func TestRollIsCutToPages(t *testing.T) {
	d := Drawing{Title: "strip", Width: 200, Height: 9000}
	d.Rect(Cut, path.Pt(0, 0), path.Pt(200, 9000))
	g, err := Lay(d, Paper{Name: "roll", Width: 610, Roll: true}, 6, 12)
	if err != nil {
		t.Fatal(err)
	}
	if len(g.Tiles) != 2 || g.Sheet.Height > 14400*measure.Inch/72 {
		t.Errorf("%d sheets of %v mm", len(g.Tiles), g.Sheet.Height)
	}
}

// The middle sheet of a ring holds no line and is left out; its neighbours
// have no match marks towards it.
func TestEmptyTileLeftOut(t *testing.T) {
	d := Drawing{Title: "ring", Width: 900, Height: 900}
	d.Circle(Cut, path.Pt(450, 450), 449)
	p, err := PaperNamed("600x640", measure.UnitMM)
	if err != nil {
		t.Fatal(err)
	}
	p.Width, p.Height = 340, 360 // three by three
	g, err := Lay(d, p, 6, 12)
	if err != nil {
		t.Fatal(err)
	}
	if g.Cols != 3 || g.Rows != 3 || g.Empty != 1 || len(g.Tiles) != 8 || g.has(1, 1) {
		t.Fatalf("%d × %d, %d empty", g.Cols, g.Rows, g.Empty)
	}
	for _, tile := range g.Tiles {
		want := 6 // three marks on each of two joins; a middle of a side has two as well
		if got := len(g.Joins(tile)); got != want {
			t.Errorf("%s has %d match marks, want %d", tile.Name(), got, want)
		}
	}
}

// Neighbours put their match marks at the same places of the drawing, in the
// middle of the overlap.
func TestMatchMarksMeet(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 2))
	for range 200 {
		d := anyDrawing(r)
		g, err := Lay(d, papers[r.IntN(4)], 6, length(5+15*r.Float64()))
		if err != nil {
			t.Fatal(err)
		}
		count := map[path.Point]int{}
		for _, tile := range g.Tiles {
			for _, p := range g.Joins(tile) {
				// to a thousandth of a millimetre
				count[path.Pt(length(math.Round(float64(p.X)*1000)), length(math.Round(float64(p.Y)*1000)))]++
				if b := tile.Part; p.X < b.Min.X || p.X > b.Max.X || p.Y < b.Min.Y || p.Y > b.Max.Y {
					t.Errorf("a mark of %s is off its window", tile.Name())
				}
			}
		}
		for p, n := range count {
			if n%2 != 0 {
				t.Errorf("the mark at %v is on %d sheets", p, n)
			}
		}
	}
}

// Every sheet of any tiling can be printed, no words on it run into anything,
// and it says its name, the size to print at and the ways to its neighbours.
func TestTileSheets(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	for range 400 {
		d, paper := anyDrawing(r), anyPaper(r)
		k, err := PrintedAs([]string{"100x100", "99.4x100.3", "110x90"}[r.IntN(3)])
		if err != nil {
			t.Fatal(err)
		}
		margin, overlap := length(4+8*r.Float64()), 4+length(16*r.Float64())
		g, err := Lay(d, paper, margin, overlap)
		if err != nil {
			continue
		}
		for _, tile := range g.Tiles {
			s := TileSheet(g, tile, TileWords{Title: "Base lattice (drum kind A)", Part: "base, to mark 3", Up: "this side up", Job: "Trial", Stretch: k})
			if err := Check(s); err != nil {
				t.Fatalf("%s %.0f × %.0f, drawing %.0f × %.0f: %v", paper.Name, g.Sheet.Width, g.Sheet.Height, d.Width, d.Height, err)
			}
			for _, o := range Overlaps(s) {
				t.Errorf("%s %.0f × %.0f, drawing %.0f × %.0f, margin %.1f overlap %.1f, sheet %s: %s", paper.Name, g.Sheet.Width, g.Sheet.Height, d.Width, d.Height, margin, overlap, tile.Name(), o)
			}
			words := sayings(s)
			for _, n := range []struct{ col, row int }{{-1, 0}, {1, 0}, {0, -1}, {0, 1}} {
				next := Tile{Col: tile.Col + n.col, Row: tile.Row + n.row}
				if g.has(next.Col, next.Row) && !strings.Contains(words, "\n"+next.Name()+"\n") {
					t.Errorf("sheet %s of %s does not point to %s", tile.Name(), paper.Name, next.Name())
				}
			}
			if len(g.Tiles) > 1 && !strings.Contains(words, "sheet "+tile.Name()) {
				t.Errorf("sheet %s does not say its name", tile.Name())
			}
			for _, want := range []string{"print at", "100 %", "this side up", "to mark 3", "Trial"} {
				if !strings.Contains(strings.ReplaceAll(words, "\n", " "), want) {
					t.Errorf("%s %.0f × %.0f: sheet %s does not say %q", paper.Name, g.Sheet.Width, g.Sheet.Height, tile.Name(), want)
				}
			}
			for _, s := range s.Strokes {
				if b := s.Path.Bounds(); b.Min.X < margin-0.1 || b.Min.Y < margin-0.1 || b.Max.X > g.Sheet.Width-margin+0.1 || b.Max.Y > g.Sheet.Height-margin+0.1 {
					t.Errorf("%s %.0f × %.0f: a line from %v to %v is in the margin %.1f", paper.Name, g.Sheet.Width, g.Sheet.Height, b.Min, b.Max, margin)
				}
			}
			for _, x := range s.Texts {
				for _, c := range x.Corners() {
					if c.X < margin-0.1 || c.Y < margin-0.8 || c.X > g.Sheet.Width-margin+0.1 || c.Y > g.Sheet.Height-margin+0.1 {
						t.Errorf("%s %.0f × %.0f: %q is in the margin %.1f", paper.Name, g.Sheet.Width, g.Sheet.Height, x.Words, margin)
					}
				}
			}
			if t.Failed() {
				return
			}
		}
	}
}

func sayings(d Drawing) string {
	var all strings.Builder
	all.WriteString("\n")
	for _, x := range d.Texts {
		all.WriteString(x.Words + "\n")
	}
	return all.String()
}
