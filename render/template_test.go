package render

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/path"
)

// silos are solved for drums of 0.3, 0.58 and 1.2 m.
func silos(t *testing.T) []geometry.Silo {
	t.Helper()
	var out []geometry.Silo
	for _, d := range []geometry.Drum{
		{Label: "small", Count: 1, Outside: 300, Height: 500, Wall: 3, FootOutside: 280, FootHeight: 30, HeadRecess: 12,
			Hoops: []geometry.Hoop{{From: 150, To: 170, Outside: 312}, {From: 330, To: 350, Outside: 312}}},
		{Label: "usual", Count: 1, Outside: 582, Height: 880, Wall: 4.8, FootOutside: 540, FootHeight: 55, HeadRecess: 22,
			Hoops: []geometry.Hoop{{From: 265, To: 300, Outside: 606}, {From: 580, To: 615, Outside: 606}}},
		{Label: "large", Count: 1, Outside: 1200, Height: 1250, Wall: 8, FootOutside: 1150, FootHeight: 60, HeadRecess: 25,
			Hoops: []geometry.Hoop{{From: 380, To: 430, Outside: 1240}, {From: 820, To: 870, Outside: 1240}}},
	} {
		s, err := geometry.Solve(geometry.Job{Kinds: []geometry.Spec{geometry.DefaultSpec(d, measure.UnitMM)}})
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, s...)
	}
	return append(out, pipeSilos(t)...)
}

// pipeSilos are an invented drum, in inches for the longer words, with pipe
// silos of 8 in pipe and of the narrowest sewer pipes of the tables, 4 in and 110 mm.
func pipeSilos(t *testing.T) []geometry.Silo {
	t.Helper()
	const inch = measure.Inch
	d := geometry.Drum{Label: "blue", Count: 1, Outside: geometry.OutsideFromCircumference(72.125 * inch), Height: 34.5 * inch,
		Wall: 0.1875 * inch, FootOutside: 21.125 * inch, FootHeight: 2.25 * inch, HeadRecess: 0.875 * inch,
		Hoops: []geometry.Hoop{{From: 10.5 * inch, To: 12 * inch, Outside: 23.875 * inch}, {From: 22.75 * inch, To: 24.25 * inch, Outside: 23.875 * inch}}}
	var out []geometry.Silo
	for i, p := range []geometry.PipeSiloSpec{
		{Pipe: geometry.PipeRef{Size: "8", Series: "sdr35"}, Saw: 2.5 * inch, PipeOut: geometry.PipeRef{Size: "1 1/2", Series: "sch40"}},
		{Pipe: geometry.PipeRef{Size: "4", Series: "sdr35"}, Saw: 2.5 * inch, PipeOut: geometry.PipeRef{Size: "1 1/2", Series: "sch40"}},
		{Pipe: geometry.PipeRef{Size: "110", Series: "en1401-sn4"}, Saw: 65, PipeOut: geometry.PipeRef{Size: "50", Series: "pn10"}},
		{Pipe: geometry.PipeRef{Size: "110", Series: "en1401-sn8"}, Saw: 40, PipeOut: geometry.PipeRef{Size: "25", Series: "pn10"}},
	} {
		u := measure.UnitInch
		if p.PipeOut.Series == "pn10" {
			u = measure.UnitMM
		}
		q := geometry.DefaultSpec(d, u)
		q.Drum.Label = fmt.Sprintf("blue %d", i+1)
		q.Pipe.Pipe, q.Pipe.Saw, q.Pipe.PipeOut = p.Pipe, p.Saw, p.PipeOut
		s, err := geometry.Solve(geometry.Job{Kinds: []geometry.Spec{q}})
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, s...)
	}
	return out
}

// A template is drawn at its own size: what its cut lines enclose is its open
// area, their length its cut length, and each hole to drill has its centre
// marked by a cross inside it. It can be printed, in one colour, on any sheet.
func TestFromTemplate(t *testing.T) {
	for _, s := range silos(t) {
		for _, tp := range s.Templates {
			d := FromTemplate(tp)
			name := tp.Drum + " " + tp.Title
			if err := Check(d); err != nil {
				t.Fatal(err)
			}
			for _, o := range Overlaps(d) {
				t.Errorf("%s: %s", name, o)
			}
			for _, x := range d.Texts {
				if strings.Contains(x.Words, " mm") != strings.Contains(x.Words, " in") {
					t.Errorf("%s: %q is in one unit only", name, x.Words)
				}
			}
			area, cut := measure.Area(0), length(0)
			for _, q := range d.Strokes {
				switch q.Layer {
				case Cut:
					area += q.Path.Area()
					cut += q.Path.Length()
				case Drill:
					b := q.Path.Bounds()
					if !crossed(d, path.Pt((b.Min.X+b.Max.X)/2, (b.Min.Y+b.Max.Y)/2)) {
						t.Errorf("%s: a hole at %v has no centre", name, b)
					}
				}
			}
			if math.Abs(float64(area-tp.OpenArea)) > 1e-6*math.Abs(float64(area)) {
				t.Errorf("%s: its lines enclose %v mm², it says %v", name, area, tp.OpenArea)
			}
			if math.Abs(float64(cut-tp.CutLength)) > 0.1 {
				t.Errorf("%s: its lines are %v mm long, it says %v", name, cut, tp.CutLength)
			}
			if tp.Width != d.Width || tp.Height != d.Height || d.Title == "" || d.Description == "" {
				t.Errorf("%s: %v × %v, %q, %q", name, d.Width, d.Height, d.Title, d.Description)
			}
		}
	}
}

// crossed reports whether two mark lines have their middles at p.
func crossed(d Drawing, p path.Point) bool {
	n := 0
	for _, q := range d.Strokes {
		b := q.Path.Bounds()
		if q.Layer == Mark && (b.Min.X+b.Max.X-2*p.X).Abs() < 1e-9 && (b.Min.Y+b.Max.Y-2*p.Y).Abs() < 1e-9 && b.Max.X-b.Min.X < 5 && b.Max.Y-b.Min.Y < 5 {
			n++
		}
	}
	return n == 2
}

// Every template of every drum goes on letter, A4 and a roll, and what each
// sheet shows under its own words and marks is sound.
func TestTemplatesOnPaper(t *testing.T) {
	for _, name := range []string{"letter", "A4", "roll 36 in", "roll 610 mm"} {
		paper, err := PaperNamed(name, measure.UnitMM)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range silos(t) {
			for _, tp := range s.Templates {
				g, err := OnPaper(FromTemplate(tp), paper, 6.35, 12.7, Stretch{})
				if err != nil {
					t.Fatal(err)
				}
				for _, tile := range g.Tiles {
					sheet := TileSheet(g, tile, TileWords{Title: tp.Title + " (drum kind " + tp.Drum + ")", Part: tp.Part, Up: tp.Up, Job: "Trial"})
					if err := Check(sheet); err != nil {
						t.Error(err)
					}
					for _, o := range Overlaps(sheet) {
						t.Errorf("%s, %s on %s: %s", tp.Drum, tp.Title, name, o)
					}
				}
				if tp.Strip && paper.Roll && len(g.Tiles) > 1 && min(tp.Width, tp.Height) < paper.Width-40 {
					t.Errorf("%s, %s on %s: %d sheets, it fits lengthwise", tp.Drum, tp.Title, name, len(g.Tiles))
				}
			}
		}
	}
}

// A strip longer than the roll is wide lies along it, and is stretched for the
// printer along the paper's axes, not its own.
func TestOnRoll(t *testing.T) {
	d := Drawing{Title: "strip", Width: 1900, Height: 200}
	d.Rect(Cut, path.Pt(10, 10), path.Pt(1890, 190))
	k, err := PrintedAs("99x102")
	if err != nil {
		t.Fatal(err)
	}
	roll := Paper{Name: "roll", Width: 914.4, Roll: true}
	g, err := OnPaper(d, roll, 6, 12, k)
	if err != nil {
		t.Fatal(err)
	}
	if !g.Turned || len(g.Tiles) != 1 {
		t.Fatalf("turned %v, %d sheets", g.Turned, len(g.Tiles))
	}
	b := g.Lines().Strokes[0].Path.Bounds()
	if w, h := float64(b.Max.X-b.Min.X)*0.99, float64(b.Max.Y-b.Min.Y)*1.02; math.Abs(w-180) > 1e-9 || math.Abs(h-1880) > 1e-9 {
		t.Errorf("printed it is %v × %v mm, want 180 × 1880", w, h)
	}
	// on sheets the paper is turned, not the drawing
	if g, err := OnPaper(d, papers[3], 6, 12, k); err != nil || g.Turned {
		t.Errorf("%v, turned %v", err, g.Turned)
	}
}
