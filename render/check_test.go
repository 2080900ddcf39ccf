package render

import (
	"errors"
	"math"
	"strings"
	"testing"

	"silowright/geometry/measure"
	"silowright/geometry/path"
)

// A drawing with one thing wrong is refused, and the message says which.
func TestCheckRefuses(t *testing.T) {
	nan, inf := measure.Length(math.NaN()), measure.Length(math.Inf(1))
	word := func(change func(*Text)) func(*Drawing) {
		return func(d *Drawing) {
			x := Text{Layer: Notes, At: path.Pt(50, 50), Size: 3.5, Words: "drain"}
			change(&x)
			d.Texts = append(d.Texts, x)
		}
	}
	for _, c := range []struct {
		reason string
		spoil  func(*Drawing)
		says   string
	}{
		{"no width", func(d *Drawing) { d.Width = 0 }, "has no size"},
		{"endless height", func(d *Drawing) { d.Height = inf }, "has no size"},
		{"a width that is no number", func(d *Drawing) { d.Width = nan }, "has no size"},
		{"a line to nowhere", func(d *Drawing) { d.Line(Cut, path.Pt(1, 1), path.Pt(nan, 1)) }, "not finite"},
		{"an arc about nowhere", func(d *Drawing) { d.Circle(Cut, path.Pt(inf, 1), 3) }, "not finite"},
		{"a fill to nowhere", func(d *Drawing) { d.Shade(path.Circle(path.Pt(9, 9), nan), 1) }, "not finite"},
		{"a shade beyond black", func(d *Drawing) { d.Shade(path.Circle(path.Pt(9, 9), 1), 1.5) }, "not finite"},
		{"a shade that is no number", func(d *Drawing) { d.Shade(path.Circle(path.Pt(9, 9), 1), math.NaN()) }, "not finite"},
		{"a path without a beginning", func(d *Drawing) { d.PathOn(Cut, path.Path{{Kind: path.Line, To: path.Pt(3, 3)}}) }, "begin with a move"},
		{"a fill without a beginning", func(d *Drawing) { d.Shade(path.Path{{Kind: path.Line, To: path.Pt(3, 3)}}, 1) }, "begin with a move"},
		{"a layer that is none", func(d *Drawing) { d.Circle(Layer(42), path.Pt(9, 9), 3) }, "no layer"},
		{"words on a layer that is none", word(func(x *Text) { x.Layer = -1 }), "no layer"},
		{"a line off the left edge", func(d *Drawing) { d.Line(Cut, path.Pt(-0.1, 1), path.Pt(5, 1)) }, "off the page"},
		{"an arc over the top", func(d *Drawing) { d.Circle(Mark, path.Pt(50, 95), 6) }, "off the page"},
		{"a fill past the right edge", func(d *Drawing) { d.Shade(path.Circle(path.Pt(97, 50), 4), 1) }, "off the page"},
		{"words past the right edge", word(func(x *Text) { x.At.X = 99 }), "off the page"},
		{"words turned over the foot", word(func(x *Text) { x.At.Y, x.Turn = 4, -90*measure.Degree }), "off the page"},
		{"words of no height", word(func(x *Text) { x.Size = 0 }), "stands nowhere"},
		{"words turned to nowhere", word(func(x *Text) { x.Turn = measure.Angle(math.NaN()) }), "stands nowhere"},
		{"a glyph the fonts lack", word(func(x *Text) { x.Words = "⌀ 2 in" }), "U+2300"},
		{"a rune past U+FFFF", word(func(x *Text) { x.Words = "𝛑" }), "U+1D6D1"},
		{"a line break", word(func(x *Text) { x.Words = "a\nb" }), "U+000A"},
		{"broken UTF-8", word(func(x *Text) { x.Words = "a\xff" }), "U+FFFD"},
	} {
		d := plate()
		if err := Check(d); err != nil {
			t.Fatal(err)
		}
		c.spoil(&d)
		err := Check(d)
		if !errors.Is(err, ErrDrawing) || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: got %v, want %q", c.reason, err, c.says)
		}
	}
}

// plate is a good drawing that touches all four edges of its page.
func plate() Drawing {
	d := Drawing{Title: "plate", Width: 100, Height: 100}
	d.Rect(Cut, path.Pt(0, 0), path.Pt(100, 100))
	d.Shade(path.Circle(path.Pt(20, 20), 5), 0.5)
	d.Words(path.Pt(50, 40), 3.5, Middle, "1 1/8 in, ⅛ Ø × ° ± ≤ π")
	return d
}

// What Overlaps calls a clash and what it does not, with words 10 mm high and
// their width by the font.
func TestOverlaps(t *testing.T) {
	const words = "HHH"
	w := TextWidth(words, 10, false)
	base := func() Drawing {
		d := Drawing{Width: 200, Height: 200}
		d.Words(path.Pt(100, 100), 10, Left, words)
		return d
	}
	for _, c := range []struct {
		reason string
		add    func(*Drawing)
		clash  bool
	}{
		{"a line through", func(d *Drawing) { d.Line(Thin, path.Pt(90, 105), path.Pt(190, 105)) }, true},
		{"a line that ends short of it", func(d *Drawing) { d.Line(Thin, path.Pt(90, 105), path.Pt(99, 105)) }, false},
		{"a line that starts within", func(d *Drawing) { d.Line(Thin, path.Pt(105, 105), path.Pt(105, 190)) }, true},
		{"a line above", func(d *Drawing) { d.Line(Thin, path.Pt(90, 111), path.Pt(190, 111)) }, false},
		{"a line under the tails", func(d *Drawing) { d.Line(Thin, path.Pt(90, 96), path.Pt(190, 96)) }, false},
		{"a ring round it", func(d *Drawing) { d.Circle(Thin, path.Pt(100+w/2, 105), w) }, false},
		{"a ring through it", func(d *Drawing) { d.Circle(Thin, path.Pt(100+w/2, 105), w/4) }, true},
		{"a slanting line past its corner", func(d *Drawing) { d.Line(Thin, path.Pt(80, 105), path.Pt(110, 135)) }, false},
		{"words after it", func(d *Drawing) { d.Words(path.Pt(100.1+w, 100), 10, Left, words) }, false},
		{"words half on it", func(d *Drawing) { d.Words(path.Pt(100+w/2, 100), 10, Left, words) }, true},
		{"words that end before it", func(d *Drawing) { d.Words(path.Pt(99.9, 100), 10, Right, words) }, false},
		{"words centred on it", func(d *Drawing) { d.Words(path.Pt(100, 100), 10, Middle, words) }, true},
		{"a turned word beside it", func(d *Drawing) { d.TurnedWords(path.Pt(97, 90), 10, Left, 90*measure.Degree, words) }, false},
		{"a turned word across it", func(d *Drawing) { d.TurnedWords(path.Pt(110, 90), 10, Left, 90*measure.Degree, words) }, true},
		{"a slanting word whose upright box covers it", func(d *Drawing) { d.TurnedWords(path.Pt(70, 100), 10, Left, 45*measure.Degree, "HHHHHHH") }, false},
	} {
		d := base()
		c.add(&d)
		if got := Overlaps(d); (len(got) > 0) != c.clash {
			t.Errorf("%s: %v", c.reason, got)
		}
	}
}
