package rolls_test

import (
	"bytes"
	"fmt"
	"image/png"
	"math"
	"strings"
	"testing"

	"silowright/bom/rolls"
	"silowright/geometry/measure"
	"silowright/render/outside"
)

func TestFit(t *testing.T) {
	for _, c := range []struct {
		reason             string
		p                  rolls.Piece
		width, length, gap float64
		n                  int
		turned, best       bool
	}{
		{"4 discs of 570 take 1692.6 of a 1000 roll", disc(570), 1000, 1692.6, 0, 4, false, true},
		{"and 3 take what is a little less", disc(570), 1000, 1692.4, 0, 3, false, true},
		{"the same sheet the other way round", disc(570), 1692.6, 1000, 0, 4, false, true},
		{"45 in triples across the roll", disc(1), 22.4244, 2.1404, 0, 45, true, false},
		{"3 × 4 squares", square(300), 1000, 1200, 0, 12, false, true},
		{"a kerf of 5 leaves 3 × 3", square(300), 1000, 1200, 5, 9, false, true},
		{"3 squares and 2 kerfs are just the width, 4 and 3 the length", square(300), 910, 1215, 5, 12, false, true},
		{"too narrow", disc(570), 569, 5000, 0, 0, false, true},
		{"too short", square(570), 5000, 569, 0, 0, false, true},
		{"columns of 4 and 3, seven of them", disc(1), 4, 1 + 3*math.Sqrt(3), 0, 25, false, false},
		{"the same turned", disc(1), 1 + 3*math.Sqrt(3), 4, 0, 25, false, false},
	} {
		l, err := rolls.Fit(c.p, measure.Length(c.width), measure.Length(c.length), measure.Length(c.gap))
		if err != nil {
			t.Fatalf("%s: %v", c.reason, err)
		}
		if l.Count != c.n || l.Best != c.best || l.Length.MM() > c.length+1e-9 {
			t.Errorf("%s: %d pieces, %v long, best %v, want %d, %v", c.reason, l.Count, l.Length, l.Best, c.n, c.best)
		}
		if c.turned && !l.Turned {
			t.Errorf("%s: not turned", c.reason)
		}
		lies(t, l)
	}
}

// A longer or a wider piece of roll never gives fewer, and one of half a
// million discs is counted without laying them.
func TestFitGrows(t *testing.T) {
	for w := 1.0; w < 5; w += 0.173 {
		last := 0
		for e := 0.9; e < 9; e += 0.217 {
			l, err := rolls.Fit(disc(1), measure.Length(w), measure.Length(e), 0)
			if err != nil {
				t.Fatal(err)
			}
			back, err := rolls.Fit(disc(1), measure.Length(e), measure.Length(w), 0)
			if err != nil {
				t.Fatal(err)
			}
			if l.Count < last || l.Count != back.Count {
				t.Errorf("%g × %g gives %d, a shorter one %d, turned round %d", w, e, l.Count, last, back.Count)
			}
			last = l.Count
		}
	}
	l, err := rolls.Fit(disc(10), 500, 1_000_000, 0)
	if err != nil {
		t.Fatal(err)
	}
	if square := 50 * 100_000; l.Count <= square || float64(l.Count) > 500*1e6/100*2/math.Sqrt(3) {
		t.Errorf("%d discs, square rows give %d", l.Count, square)
	}
}

// Discs drawn and filled by an outside rasteriser cover n·π·d²/4: two that
// overlap or one off the drawing would cover less.
func TestCovered(t *testing.T) {
	for _, c := range []struct {
		n        int
		d, width float64
		gap      measure.Length
	}{{7, 570, 1000, 0}, {20, 300, 1000, 3}, {45, 100, 214.04, 0}, {13, 300, 1050, 0}} {
		l, err := rolls.Shortest(disc(c.d), c.n, measure.Length(c.width), c.gap)
		if err != nil {
			t.Fatal(err)
		}
		scale := 1500 / l.Length.MM()
		var svg strings.Builder
		fmt.Fprintf(&svg, `<svg xmlns="http://www.w3.org/2000/svg" width="1500" height="%d">`, int(math.Ceil(c.width*scale)))
		for _, p := range l.Places() {
			fmt.Fprintf(&svg, `<circle cx="%f" cy="%f" r="%f"/>`, p.X.MM()*scale, p.Y.MM()*scale, c.d/2*scale)
		}
		svg.WriteString("</svg>")
		img, err := png.Decode(bytes.NewReader(outside.Run(t, "rsvg-convert", "-b", "white", outside.File(t, "discs.svg", []byte(svg.String())))))
		if err != nil {
			t.Fatal(err)
		}
		dark := 0.0
		for y := img.Bounds().Min.Y; y < img.Bounds().Max.Y; y++ {
			for x := img.Bounds().Min.X; x < img.Bounds().Max.X; x++ {
				_, g, _, _ := img.At(x, y).RGBA()
				dark += 1 - float64(g)/0xffff
			}
		}
		got, want := dark/scale/scale, float64(c.n)*math.Pi/4*c.d*c.d
		if math.Abs(got/want-1) > 0.003 {
			t.Errorf("%d discs of %g in %q cover %.0f mm², want %.0f within 0.3 %%", c.n, c.d, l.Pattern, got, want)
		}
	}
}

// Whatever is asked: an error with a hint, or pieces that lie clear.
func FuzzShortest(f *testing.F) {
	f.Add(570.0, 1000.0, 0.0, 4, false)
	f.Add(1.0, 2.1404, 0.0, 45, false)
	f.Add(300.0, 910.0, 5.0, 7, true)
	f.Add(1.0, 1.9, 1e300, 5, false)
	f.Add(math.NaN(), math.Inf(1), -1.0, 0, true)
	f.Add(5e-324, 5e-324, 0.0, 3, false)
	f.Fuzz(func(t *testing.T, across, width, gap float64, n int, isSquare bool) {
		p := disc(across)
		if isSquare {
			p.Shape = rolls.Square
		}
		l, err := rolls.Shortest(p, n, measure.Length(width), measure.Length(gap))
		if err != nil {
			if !strings.Contains(err.Error(), "; hint: ") {
				t.Errorf("no hint: %v", err)
			}
			return
		}
		if !l.Length.Finite() || l.Length < p.Across || !l.Bound.Finite() || l.Bound > l.Length {
			t.Errorf("length %v, bound %v", l.Length, l.Bound)
		}
		if n <= 2000 && across > 1e-3 && width < 1e6 && gap < 1e6 {
			lies(t, l)
		}
	})
}
