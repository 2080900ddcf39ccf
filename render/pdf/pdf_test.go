package pdf_test

import (
	"bytes"
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
	"silowright/render/outside"
	"silowright/render/pdf"
)

const glyphs = "1/8 ⅛ Ø × ° 10 1/2 in (266.7 mm) 1 1/8 in 1⅛ Ø33 2×4 45° ±½ ≤ ≥ ≈ π √ ″ ′ −"

// plate is a page with a line of every layer, a fill, and words in both faces.
func plate() render.Drawing {
	d := render.Drawing{Title: "plate", Width: 215.9, Height: 279.4}
	for i, l := range render.Layers() {
		y := measure.Length(30 + 8*i)
		d.Line(l, path.Pt(20, y), path.Pt(120, y))
	}
	d.Circle(render.Cut, path.Pt(60, 180), 33.35)
	d.Shade(path.Circle(path.Pt(160, 180), 20), 0.5)
	d.Words(path.Pt(20, 250), 3.5, render.Left, glyphs)
	d.BoldWords(path.Pt(195, 240), 3.5, render.Right, "bold ⅝ Ø")
	d.TurnedWords(path.Pt(200, 100), 3.5, render.Middle, 90*measure.Degree, "turned ¾")
	return d
}

// book writes pages made by fill.
func book(t testing.TB, fill func(b *pdf.Book) error) []byte {
	t.Helper()
	b := pdf.New(pdf.Meta{Title: "Trial <&> Ø", Subject: "a (test)"})
	if err := fill(b); err != nil {
		t.Fatal(err)
	}
	var buf bytes.Buffer
	n, err := b.WriteTo(&buf)
	if err != nil || n != int64(buf.Len()) {
		t.Fatalf("wrote %d of %d: %v", n, buf.Len(), err)
	}
	return buf.Bytes()
}

// onePage is a file of one drawing.
func onePage(t testing.TB, d render.Drawing) []byte {
	t.Helper()
	return book(t, func(b *pdf.Book) error { return b.Page(d, "Plate", 0) })
}

// The file is sound to qpdf, its fonts are embedded subsets, its page has the
// size of the drawing, its bookmark is there, viewers are asked not to scale,
// and every glyph reads back.
func TestFileFromOutside(t *testing.T) {
	data := onePage(t, plate())
	file := outside.File(t, "plate.pdf", data)
	outside.Run(t, "qpdf", "--check", file)
	fonts := strings.Split(strings.TrimSpace(string(outside.Run(t, "pdffonts", file))), "\n")[2:]
	if len(fonts) != 2 {
		t.Errorf("%d fonts, want two", len(fonts))
	}
	for _, f := range fonts {
		if !regexp.MustCompile(`TrueType.* yes (yes|no) +yes `).MatchString(f) {
			t.Errorf("not embedded, or without a map to Unicode: %s", f)
		}
	}
	if info := string(outside.Run(t, "pdfinfo", file)); !strings.Contains(info, "612 x 792 pts (letter)") || !strings.Contains(info, "Trial <&> Ø") {
		t.Errorf("poppler sees:\n%s", info)
	}
	plain := string(outside.Run(t, "qpdf", "--qdf", "--object-streams=disable", file, "-"))
	if !strings.Contains(plain, "/PrintScaling /None") || !strings.Contains(plain, "/Outlines") {
		t.Error("no print scaling or no bookmarks in the catalogue")
	}
	if !bytes.HasPrefix(data, []byte("%PDF-1.6")) {
		t.Errorf("the file is %s; print scaling is of PDF 1.6 (ISO 32000-1, table 150)", data[:8])
	}
	text := string(outside.Run(t, "pdftotext", "-layout", file, "-"))
	for _, want := range append(strings.Fields(glyphs), "bold ⅝ Ø", "turned ¾") {
		if !strings.Contains(text, want) {
			t.Errorf("poppler does not read %q in\n%s", want, text)
		}
	}
}

// Same input, same bytes, whatever order the maps underneath are walked in.
func TestSameBytes(t *testing.T) {
	make1 := func() []byte {
		return book(t, func(b *pdf.Book) error {
			for i := range 6 {
				if err := b.Page(plate(), fmt.Sprint("page ", i), i%2); err != nil {
					return err
				}
				window := path.Box{Min: path.Pt(10, 10), Max: path.Pt(110, 110)}
				if err := b.Window(render.Drawing{Title: "w", Width: 150, Height: 150}, fmt.Sprint("form ", i%3), plate(), window, path.Pt(20, 20), "", 0); err != nil {
					return err
				}
			}
			return nil
		})
	}
	first := make1()
	for range 10 {
		if !bytes.Equal(first, make1()) {
			t.Fatal("two files of the same pages differ")
		}
	}
}

// A drawing shown in many windows is in the file once: forty windows cost less
// than four times one, and words that are on no page but in the form still
// read.
func TestFormIsStoredOnce(t *testing.T) {
	whole := plate()
	for i := range 3000 {
		x, y := measure.Length(20+i%100), measure.Length(100+i/100)
		whole.Circle(render.Thin, path.Pt(x, y), 0.3+measure.Length(i)/1e5)
	}
	windows := func(n int) []byte {
		return book(t, func(b *pdf.Book) error {
			for range n {
				window := path.Box{Max: path.Pt(whole.Width, whole.Height)}
				if err := b.Window(render.Drawing{Title: "w", Width: 220, Height: 290}, "plate", whole, window, path.Pt(2, 5), "", 0); err != nil {
					return err
				}
			}
			return nil
		})
	}
	one, forty := windows(1), windows(40)
	if extra := len(forty) - len(one); extra > 40*800 {
		t.Errorf("one window %d bytes, forty %d", len(one), len(forty))
	}
	file := outside.File(t, "w.pdf", forty)
	outside.Run(t, "qpdf", "--check", file)
	if text := string(outside.Run(t, "pdftotext", file, "-")); !strings.Contains(text, "1⅛ Ø33 2×4 45°") {
		t.Errorf("poppler does not read the words of a form:\n%s", text)
	}
}

// What cannot be drawn faithfully is refused, then and at the end; and a file
// without pages is none.
func TestRefuses(t *testing.T) {
	bad := []func(*render.Drawing){
		func(d *render.Drawing) { d.Line(render.Cut, path.Pt(0, 0), path.Pt(measure.Length(math.NaN()), 3)) },
		func(d *render.Drawing) { d.Circle(render.Cut, path.Pt(50, 50), measure.Length(math.Inf(1))) },
		func(d *render.Drawing) { d.Words(path.Pt(50, 50), 3.5, render.Left, "⌀") },
		func(d *render.Drawing) { d.Words(path.Pt(200, 50), 3.5, render.Left, "past the edge of the page") },
		func(d *render.Drawing) {
			d.TurnedWords(path.Pt(50, 5), 3.5, render.Right, 90*measure.Degree, "over the foot")
		},
		func(d *render.Drawing) { d.Words(path.Pt(50, 50), measure.Length(math.Inf(1)), render.Left, "inlet") },
		func(d *render.Drawing) { d.Line(render.Cut, path.Pt(10, 10), path.Pt(10, 280)) },
		func(d *render.Drawing) { d.Shade(path.Circle(path.Pt(1, 50), 3), 0.5) },
		func(d *render.Drawing) { d.Width = measure.Length(math.NaN()) },
	}
	large := render.Drawing{Title: "large", Width: 100, Height: 5081}
	if err := pdf.New(pdf.Meta{}).Page(large, "", 0); err == nil {
		t.Error("a page larger than 14 400 points is made")
	}
	for i, spoil := range bad {
		d := plate()
		spoil(&d)
		b := pdf.New(pdf.Meta{})
		if err := b.Page(d, "", 0); err == nil {
			t.Errorf("%d: a page is made", i)
		}
		if _, err := b.WriteTo(&bytes.Buffer{}); err == nil {
			t.Errorf("%d: a file is made", i)
		}
		b = pdf.New(pdf.Meta{})
		if err := b.Window(plate(), "k", d, path.Box{Max: path.Pt(10, 10)}, path.Pt(0, 0), "", 0); err == nil {
			t.Errorf("%d: a window is made", i)
		}
	}
	if _, err := pdf.New(pdf.Meta{}).WriteTo(&bytes.Buffer{}); err == nil {
		t.Error("a file without pages is made")
	}
}
