package render

import (
	"bytes"
	"fmt"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"silowright/geometry/path"
)

// RegularTTF and BoldTTF are the two faces all words are set in: the Go fonts
// (BSD licence), which hold the fractions, Ø, × and the arrows that core PDF
// fonts lack. Each call returns bytes of the caller's own: the PDF library
// writes into those it is given.
func RegularTTF() []byte { return bytes.Clone(goregular.TTF) }

// BoldTTF is the bold face.
func BoldTTF() []byte { return bytes.Clone(gobold.TTF) }

// widthsTo is past the last rune of the fonts' own blocks.
const widthsTo = 0x2700

// face holds a font's widths in ems, so that measuring words is a look-up.
type face struct {
	cap   float64             // height of the capitals in ems
	width [widthsTo]float32   // 0 and !has: not in the font
	has   [widthsTo / 8]uint8 // a bit a rune
}

var (
	regular = sync.OnceValue(func() *face { return loadFace(goregular.TTF) })
	bold    = sync.OnceValue(func() *face { return loadFace(gobold.TTF) })
)

// loadFace reads an embedded font; it cannot fail on the fonts compiled in.
func loadFace(ttf []byte) *face {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		panic(err) // the font is part of the program
	}
	var buf sfnt.Buffer
	em := fixed.I(1000)
	out := &face{}
	if m, err := f.Metrics(&buf, em, font.HintingNone); err == nil {
		out.cap = float64(m.CapHeight) / 64 / 1000
	}
	for r := rune(0x20); r < widthsTo; r++ {
		g, err := f.GlyphIndex(&buf, r)
		if err != nil || g == 0 {
			continue
		}
		a, err := f.GlyphAdvance(&buf, g, em, font.HintingNone)
		if err != nil {
			continue
		}
		out.width[r] = float32(float64(a) / 64 / 1000)
		out.has[r/8] |= 1 << (r % 8)
	}
	return out
}

func faceOf(b bool) *face {
	if b {
		return bold()
	}
	return regular()
}

func (f *face) holds(r rune) bool { return r >= 0 && r < widthsTo && f.has[r/8]&(1<<(r%8)) != 0 }

// CapRatio is the height of a face's capitals over its em: a letter height of
// s mm needs a font size of s/CapRatio mm.
func CapRatio(bold bool) float64 { return faceOf(bold).cap }

// TextWidth is how long a line of words comes out with capitals size high.
func TextWidth(words string, size length, bold bool) length {
	f := faceOf(bold)
	sum := 0.0
	for _, r := range words {
		if f.holds(r) {
			sum += float64(f.width[r])
		}
	}
	return size * length(sum/f.cap)
}

// HasGlyphs reports whether every rune of words is in the fonts.
func HasGlyphs(words string) bool {
	for _, r := range words {
		if !regular().holds(r) || !bold().holds(r) {
			return false
		}
	}
	return true
}

// missingGlyph is the error of the first rune of words that is not in the
// fonts, nil when all are.
func missingGlyph(words string) error {
	for _, r := range words {
		if !regular().holds(r) || !bold().holds(r) {
			return fmt.Errorf("the fonts have no %q (%U) for %q", r, r, words)
		}
	}
	return nil
}

// Corners are the corners of the box round t's letters, from its base line's
// left end on; letters reach a quarter of their height below the line.
func (t Text) Corners() [4]path.Point {
	w := TextWidth(t.Words, t.Size, t.Bold)
	left := length(0)
	switch t.Anchor {
	case Middle:
		left = -w / 2
	case Right:
		left = -w
	}
	low, high := -t.Size*0.28, t.Size
	m := path.Rotate(t.Turn).Then(path.Translate(t.At.X, t.At.Y))
	return [4]path.Point{
		m.Apply(path.Pt(left, low)), m.Apply(path.Pt(left+w, low)),
		m.Apply(path.Pt(left+w, high)), m.Apply(path.Pt(left, high)),
	}
}
