package pdf_test

import (
	"bytes"
	"math"
	"testing"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
	"silowright/render/outside"
	"silowright/render/pdf"
)

// solved is a silo of an invented drum, 582 mm across.
func solved(t testing.TB) geometry.Silo {
	t.Helper()
	d := geometry.Drum{Label: "lot", Count: 1, Outside: 582, Height: 880, Wall: 4.8, FootOutside: 540, FootHeight: 55, HeadRecess: 22,
		Hoops: []geometry.Hoop{{From: 265, To: 300, Outside: 606}, {From: 580, To: 615, Outside: 606}}}
	silos, err := geometry.Solve(geometry.Job{Kinds: []geometry.Spec{geometry.DefaultSpec(d, measure.UnitMM)}})
	if err != nil {
		t.Fatal(err)
	}
	return silos[0]
}

func templateOf(t testing.TB, s geometry.Silo, part string) geometry.Template {
	t.Helper()
	for _, tp := range s.Templates {
		if tp.ID == "lot-"+part {
			return tp
		}
	}
	t.Fatalf("no template %q", part)
	return geometry.Template{}
}

// enclosed is the area that the lines of a picture enclose, mm²: what is white
// and out of reach from the corner, and half of the lines themselves, whose
// middle is the edge.
func (p picture) enclosed() float64 {
	seen := make([]bool, len(p.px))
	stack := []int{0}
	seen[0] = true
	for len(stack) > 0 {
		k := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		for _, n := range [4]struct {
			to int
			ok bool
		}{{k - 1, k%p.w > 0}, {k + 1, k%p.w < p.w-1}, {k - p.w, k >= p.w}, {k + p.w, k < len(p.px)-p.w}} {
			if n.ok && !seen[n.to] && p.px[n.to] >= 128 {
				seen[n.to] = true
				stack = append(stack, n.to)
			}
		}
	}
	white, ink := 0.0, 0.0
	for k, g := range p.px {
		ink += 1 - float64(g)/255
		if !seen[k] && g >= 128 {
			white += float64(g) / 255
		}
	}
	return (white + ink/2) / (perMM * perMM)
}

// developed is the area of a round hole of diameter d, sawn square into a wall
// of radius r, once the wall lies flat: its width at height y from the middle
// is 2r·asin(√(d²/4 − y²)/r). By Simpson's rule over y = (d/2)·sin u.
func developed(r, d float64) float64 {
	f := func(u float64) float64 {
		c := d / 2 * math.Cos(u)
		return 2 * r * math.Asin(c/r) * c
	}
	const n = 2000
	h := math.Pi / n
	sum := f(-math.Pi/2) + f(math.Pi/2)
	for i := 1; i < n; i++ {
		sum += f(-math.Pi/2+float64(i)*h) * float64(2+2*(i%2))
	}
	return sum * h / 3
}

// Poppler's pixels: the cut lines of every template enclose its open area, and
// a hole on the wall the integral of its own outline, within 0.1 % of a large
// area and 0.3 % of a small one (poppler moves straight lines to whole pixels).
func TestTemplateAreasByPoppler(t *testing.T) {
	s := solved(t)
	saw := func(h geometry.Hole, radius measure.Length) float64 {
		return developed(radius.MM(), h.Diameter.MM())
	}
	wall := s.Spec.Drum.Outside / 2
	slot := s.Slots[0]
	for _, c := range []struct {
		part string
		want float64
		tol  float64
	}{
		{"lattice", s.Lattice.OpenArea.MM2(), 0.001},
		{"mesh-disc", math.Pi / 4 * s.Disc.Across.MM() * s.Disc.Across.MM(), 0.001},
		{"outlet", saw(s.Outlet, wall), 0.003},
		{"inlet", saw(s.Inlet, wall), 0.003},
		{"drain", saw(s.Drain, wall), 0.003},
		{"pipe-wrap", saw(s.Pipe.Hole, s.Pipe.Outside/2), 0.003},
		{"handle-slot", (slot.Length-slot.Height()).MM()*slot.Height().MM() + math.Pi/4*slot.Height().MM()*slot.Height().MM(), 0.003},
	} {
		t.Run(c.part, func(t *testing.T) {
			tp := templateOf(t, s, c.part)
			cuts := render.FromTemplate(tp)
			cuts.Texts = nil
			var only []render.Stroke
			for _, q := range cuts.Strokes {
				if q.Layer == render.Cut {
					only = append(only, q)
				}
			}
			cuts.Strokes = only
			pic := pictures(t, outside.File(t, "t.pdf", onePage(t, cuts)))[0]
			got := pic.enclosed()
			if math.Abs(got/c.want-1) > c.tol {
				t.Errorf("poppler's lines enclose %.1f mm², want %.1f", got, c.want)
			}
			if math.Abs(tp.OpenArea.MM2()/c.want-1) > 1e-4 {
				t.Errorf("the template says %.2f mm², want %.2f", tp.OpenArea.MM2(), c.want)
			}
			t.Logf("poppler %.1f, template %.1f, want %.1f mm²", got, tp.OpenArea.MM2(), c.want)
		})
	}
}

// BenchmarkTemplatesPDF lays every template of a silo on letter sheets and
// writes them.
func BenchmarkTemplatesPDF(b *testing.B) {
	s := solved(b)
	letter, err := render.PaperNamed("letter", measure.UnitMM)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	size := 0
	for b.Loop() {
		out := pdf.New(pdf.Meta{Title: "templates"})
		for _, tp := range s.Templates {
			g, err := render.OnPaper(render.FromTemplate(tp), letter, 6.35, 12.7, render.Stretch{})
			if err != nil {
				b.Fatal(err)
			}
			for _, tile := range g.Tiles {
				sheet := render.TileSheet(g, tile, render.TileWords{Title: tp.Title, Part: tp.Part, Up: tp.Up, Job: "Trial"})
				if err := out.Window(sheet, tp.ID, g.Lines(), tile.Part, g.At, "", 0); err != nil {
					b.Fatal(err)
				}
			}
		}
		var buf bytes.Buffer
		if _, err := out.WriteTo(&buf); err != nil {
			b.Fatal(err)
		}
		size = buf.Len()
	}
	b.ReportMetric(float64(size), "B/file")
}

// Words are as long on the page as TextWidth says, by poppler's own boxes
// round them, within 2 %.
func TestWordsAreAsLongAsMeasured(t *testing.T) {
	words := []string{"Retaining", "1/8", "⅛", "Ø33.4", "2×4", "45°", "10", "(266.7", "mm)", "≤0.5", "WWWW", "iiii,lll.", "plenum", "−½±¾"}
	for _, bold := range []bool{false, true} {
		for _, size := range []measure.Length{2.5, 3.5, 7} {
			d := render.Drawing{Title: "words", Width: 200, Height: 300}
			for i, w := range words {
				d.Texts = append(d.Texts, render.Text{Layer: render.Notes, At: path.Pt(20, 280-measure.Length(i)*15), Size: size, Bold: bold, Words: w})
			}
			got := outside.Pages(t, outside.File(t, "w.pdf", onePage(t, d)))[0].Words
			if len(got) != len(words) {
				t.Fatalf("poppler reads %d words of %d: %v", len(got), len(words), got)
			}
			for i, w := range got {
				if w.Text != words[i] {
					t.Errorf("%q reads back as %q", words[i], w.Text)
				}
				if long, want := (w.XMax-w.XMin)*25.4/72, render.TextWidth(words[i], size, bold).MM(); math.Abs(long/want-1) > 0.02 {
					t.Errorf("bold %v, %v mm: %q is %.3f mm long, TextWidth says %.3f", bold, size, words[i], long, want)
				}
				if x := w.XMin * 25.4 / 72; math.Abs(x-20) > 0.05 {
					t.Errorf("%q begins at %.3f mm, want 20", words[i], x)
				}
			}
		}
	}
}
