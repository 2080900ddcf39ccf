package render

import (
	"math"
	"strings"
	"testing"

	"silowright/geometry/measure"
)

// Sizes from the standards themselves: ISO 216:2007 table 1 (A series, mm),
// ANSI/ASME Y14.1 (A to E, in); the architectural sizes and legal are common
// practice, no source. From memory.
func TestPaperNamed(t *testing.T) {
	const in = 25.4
	for _, c := range []struct {
		name string
		w, h float64
	}{
		{"letter", 8.5 * in, 11 * in}, {"Legal", 8.5 * in, 14 * in}, {"TABLOID", 11 * in, 17 * in},
		{"A4", 210, 297}, {"a3", 297, 420}, {"A2", 420, 594}, {"A1", 594, 841}, {"A0", 841, 1189},
		{"ANSI C", 17 * in, 22 * in}, {"ansi-d", 22 * in, 34 * in}, {"ANSIE", 34 * in, 44 * in},
		{"arch c", 18 * in, 24 * in}, {"ARCH-D", 24 * in, 36 * in}, {"Arch_E", 36 * in, 48 * in}, {"ARCH-E1", 30 * in, 42 * in},
		{"24x36", 24 * in, 36 * in}, {"18 1/2 in x 24 in", 18.5 * in, 24 * in}, {"500mm x 700mm", 500, 700},
		{"roll 36", 36 * in, 0}, {"roll 914 mm", 914, 0},
	} {
		p, err := PaperNamed(c.name, measure.UnitInch)
		if err != nil {
			t.Error(err)
			continue
		}
		if math.Abs(float64(p.Width)-c.w) > 1e-9 || p.Roll != (c.h == 0) || !p.Roll && math.Abs(float64(p.Height)-c.h) > 1e-9 {
			t.Errorf("%s: %v", c.name, p)
		}
	}
	// each A size is half the one before it, to the millimetre below (ISO 216, 4.2)
	for i := 4; i > 0; i-- {
		small, _ := PaperNamed("A"+string(rune('0'+i)), measure.UnitMM)
		large, _ := PaperNamed("A"+string(rune('0'+i-1)), measure.UnitMM)
		if small.Height != large.Width || float64(small.Width) != math.Floor(float64(large.Height)/2) {
			t.Errorf("A%d %v is not half of A%d %v", i, small, i-1, large)
		}
	}
	for _, s := range []string{"", "A9", "x", "8x", "2x2", "6x6", "0x0", "-9x12", "1e9x1e9", "NaNxNaN", "roll", "roll 1", "roll x", "A4 extra"} {
		if p, err := PaperNamed(s, measure.UnitInch); err == nil || !strings.Contains(err.Error(), "hint:") {
			t.Errorf("%q: %v, %v", s, p, err)
		}
	}
}

func FuzzPaperNamed(f *testing.F) {
	for _, s := range []string{"A4", "24x36", "roll 36 in", "210 mm x 297", "8 1/2x11"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		p, err := PaperNamed(s, measure.UnitMM)
		if err != nil {
			return
		}
		if !(p.Width >= minPaper && p.Width <= maxPaper) || !(p.Height >= minPaper && p.Height <= maxPaper) {
			t.Fatalf("%q is %v", s, p)
		}
		// whatever is taken for paper can be printed on
		if err := Check(TestSquare(p, "Trial", Stretch{})); err != nil {
			t.Fatal(err)
		}
		if _, err := Lay(plate(), p, 6, 12); err != nil {
			t.Fatal(err)
		}
	})
}

// A printer that prints by these factors prints the stretched drawing true.
func TestPrintedAs(t *testing.T) {
	for _, c := range []struct {
		s    string
		x, y float64
	}{{"99.4x100.3", 0.994, 1.003}, {" 100 X 100 ", 1, 1}, {"90x110", 0.9, 1.1}} {
		k, err := PrintedAs(c.s)
		if err != nil {
			t.Fatal(err)
		}
		d := plate().stretched(k.across(), k.up())
		b := d.Strokes[0].Path.Bounds()
		if w, h := float64(b.Max.X)*c.x, float64(b.Max.Y)*c.y; math.Abs(w-100) > 1e-9 || math.Abs(h-100) > 1e-9 {
			t.Errorf("%q: the plate of 100 mm comes out %v × %v", c.s, w, h)
		}
		if k.none() != (c.x == 1 && c.y == 1) || (k.String() == "") != k.none() {
			t.Errorf("%q: none %v, says %q", c.s, k.none(), k)
		}
	}
	for _, s := range []string{"", "100", "100x", "x100", "89.9x100", "100x110.1", "NaNx100", "Infx100", "100x100x100", "1e2x-100", "100 mm x 100"} {
		if _, err := PrintedAs(s); err == nil || !strings.Contains(err.Error(), "hint:") {
			t.Errorf("%q: %v", s, err)
		}
	}
	if (Stretch{}).across() != 1 || !(Stretch{}).none() {
		t.Error("the zero Stretch stretches")
	}
}

// On every paper, whatever the printer does, both squares are there and true:
// 100 mm and 4 in along both axes once printed.
func TestTestSquare(t *testing.T) {
	sheets := append([]Paper{{Name: "A5", Width: 148, Height: 210}, {Name: "odd", Width: 210, Height: 150}, {Name: "roll", Width: 150, Height: 150, Roll: true}, {Name: "wide roll", Width: 1067, Height: 1067, Roll: true}}, papers...)
	for _, p := range sheets {
		for _, s := range []string{"100x100", "90x90", "110x110", "99.4x100.3"} {
			k, err := PrintedAs(s)
			if err != nil {
				t.Fatal(err)
			}
			d := TestSquare(p, "Tidewrack Cove nursery, job of twenty silos", k)
			if err := Check(d); err != nil {
				t.Errorf("%s: %v", p.Name, err)
			}
			if p.Roll && d.Width != p.Width {
				t.Errorf("%s: the page is %v mm wide, the roll %v", p.Name, d.Width, p.Width)
			}
			for _, o := range Overlaps(d) {
				t.Errorf("%s printed as %s: %s", p.Name, s, o)
			}
			found := map[float64]bool{}
			for _, q := range d.Strokes {
				b := q.Path.Bounds()
				w, h := float64(b.Max.X-b.Min.X)/k.across(), float64(b.Max.Y-b.Min.Y)/k.up()
				if math.Abs(w-h) > 1e-9 {
					t.Errorf("%s: %v × %v is no square", p.Name, w, h)
				}
				found[math.Round(w*1e6)/1e6] = true
			}
			if !found[100] || !found[101.6] || len(found) != 2 {
				t.Errorf("%s printed as %s: the squares are %v", p.Name, s, found)
			}
			if words := sayings(d); !strings.Contains(words, "100 %") || !strings.Contains(words, "--printed-as") {
				t.Errorf("%s: the page does not say what to do", p.Name)
			}
		}
	}
}
