package render

import (
	"math"
	"strings"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/font/sfnt"
)

// opentypeFace is the font library's own typesetter, one em 1000 pixels.
func opentypeFace(t *testing.T, ttf []byte) font.Face {
	t.Helper()
	f, err := sfnt.Parse(ttf)
	if err != nil {
		t.Fatal(err)
	}
	face, err := opentype.NewFace(f, &opentype.FaceOptions{Size: 1000, DPI: 72})
	if err != nil {
		t.Fatal(err)
	}
	return face
}

// Widths against the font library's own measuring, without kerning, which
// neither PDF nor we apply. A capital H is as high as Size says: the height of
// its own outline, not of the metrics table.
func TestTextWidthAndCapHeight(t *testing.T) {
	for _, bold := range []bool{false, true} {
		ttf := RegularTTF()
		if bold {
			ttf = BoldTTF()
		}
		face := opentypeFace(t, ttf)
		box, _, ok := face.GlyphBounds('H')
		if !ok {
			t.Fatal("no H")
		}
		high := float64(box.Max.Y-box.Min.Y) / 64 / 1000
		if math.Abs(high-CapRatio(bold)) > 0.005 {
			t.Errorf("bold %v: an H is %.4f em high, CapRatio says %.4f", bold, high, CapRatio(bold))
		}
		for _, words := range []string{"Retaining ring", "10 1/2 in (266.7 mm)", "1⅛ Ø × ° ± ≤ ≥ ≈ π √ ″ ′ − ½ ¼ ¾ ⅜ ⅝ ⅞", "→ ▲ ■ □", ""} {
			sum := 0.0
			for _, r := range words {
				a, ok := face.GlyphAdvance(r)
				if !ok {
					t.Fatalf("no %q", r)
				}
				sum += float64(a) / 64 / 1000
			}
			got, want := float64(TextWidth(words, 3.5, bold)), 3.5*sum/CapRatio(bold)
			if math.Abs(got-want) > 0.002*want {
				t.Errorf("bold %v %q: %.3f mm, want %.3f", bold, words, got, want)
			}
			if !HasGlyphs(words) {
				t.Errorf("%q is said to lack a glyph", words)
			}
		}
	}
	for _, r := range "⌀☐✓\u0001\U0001F9F0\uFFFD" {
		if HasGlyphs("a" + string(r)) {
			t.Errorf("%q is said to be in the fonts", r)
		}
	}
}

// For any words and width: no line is too long (but for a single rune), none is
// empty unless all are, and nothing but blanks is lost.
func FuzzWrap(f *testing.F) {
	f.Add("each with a small picture, the tool, tick boxes", 40.0, false)
	f.Add("unbreakablewordthatislongerthantheline and more", 20.0, true)
	f.Add("  ", 10.0, false)
	f.Add("⅛ ⅛⅛⅛⅛⅛⅛", 0.1, false)
	f.Add("\x01\x02", 1.0, false)
	f.Fuzz(func(t *testing.T, words string, width float64, bold bool) {
		if !(width > 0 && width < 1e4) || len(words) > 2000 || strings.ToValidUTF8(words, "") != words {
			t.Skip()
		}
		lines := Wrap(words, 2.5, bold, length(width))
		if len(lines) == 0 {
			t.Fatal("no line")
		}
		for _, l := range lines {
			if len([]rune(l)) > 1 && float64(TextWidth(l, 2.5, bold)) > width {
				t.Errorf("%q is longer than %v mm", l, width)
			}
			if l == "" && len(lines) > 1 {
				t.Error("an empty line")
			}
		}
		bare := func(s string) string { return strings.Join(strings.Fields(s), "") }
		if got := bare(strings.Join(lines, "")); got != bare(words) {
			t.Errorf("%q became %q", words, got)
		}
	})
}
