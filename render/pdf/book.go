// Package pdf writes drawings as the pages of a PDF file at true size. Paths
// are written by this package itself, to a ten-thousandth of a point, with
// arcs as cubics of at most 45°; the library underneath keeps pages, fonts and
// bookmarks. It knows nothing of silos.
package pdf

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"time"
	"unicode/utf16"
	"unicode/utf8"

	"github.com/jung-kurt/gofpdf"

	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
)

// Meta is what the file says of itself.
type Meta struct {
	Title   string
	Subject string
}

// Book is a PDF file being made. It is not for use by several goroutines.
type Book struct {
	f     *gofpdf.Fpdf
	forms map[string]gofpdf.Template
	err   error
}

// epoch is the date every file carries, so that the same input gives the same
// bytes.
var epoch = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// New begins a file.
func New(m Meta) *Book {
	f := gofpdf.NewCustom(&gofpdf.InitType{UnitStr: "mm", Size: gofpdf.SizeType{Wd: 210, Ht: 297}})
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	f.SetCreationDate(epoch)
	f.SetModificationDate(epoch)
	f.SetCatalogSort(true)
	f.SetCompression(false) // see finish
	f.SetTitle(safe(m.Title), true)
	f.SetSubject(safe(m.Subject), true)
	f.SetProducer("silowright", true)
	f.AddUTF8FontFromBytes(family, "", render.RegularTTF())
	f.AddUTF8FontFromBytes(family, "B", render.BoldTTF())
	f.SetFont(family, "", 10) // bookmarks are written as Unicode only while such a font is set
	return &Book{f: f, forms: map[string]gofpdf.Template{}}
}

const family = "go"

// Page adds a page as large as d. A bookmark points at it unless empty; level
// 0 is a chapter, 1 lies below it.
func (b *Book) Page(d render.Drawing, bookmark string, level int) error {
	if err := b.begin(d, bookmark, level); err != nil {
		return err
	}
	draw(b.f, d)
	return b.lib()
}

// Window adds a page as large as d that shows, under d, the part of whole that
// lies in window, with the window's lower left corner at at. The whole drawing
// is kept in the file once, under key, however many windows show it.
func (b *Book) Window(d render.Drawing, key string, whole render.Drawing, window path.Box, at path.Point, bookmark string, level int) error {
	if err := b.begin(d, bookmark, level); err != nil {
		return err
	}
	form, ok := b.forms[key]
	if !ok {
		if err := render.Check(whole); err != nil {
			return b.fail(err)
		}
		size := gofpdf.SizeType{Wd: float64(whole.Width), Ht: float64(whole.Height)}
		form = b.f.CreateTemplateCustom(gofpdf.PointType{}, size, func(t *gofpdf.Tpl) { draw(&t.Fpdf, whole) })
		b.forms[key] = form
	}
	w, h := window.Max.X-window.Min.X, window.Max.Y-window.Min.Y
	b.f.ClipRect(float64(at.X), float64(d.Height-at.Y-h), float64(w), float64(h), false)
	corner := gofpdf.PointType{X: float64(at.X - window.Min.X), Y: float64(d.Height - (at.Y - window.Min.Y) - whole.Height)}
	b.f.UseTemplateScaled(form, corner, gofpdf.SizeType{Wd: float64(whole.Width), Ht: float64(whole.Height)})
	b.f.ClipEnd()
	draw(b.f, d)
	return b.lib()
}

// begin starts a page for d.
func (b *Book) begin(d render.Drawing, bookmark string, level int) error {
	if b.err != nil {
		return b.err
	}
	if err := render.Check(d); err != nil {
		return b.fail(err)
	}
	if max(d.Width, d.Height) > largest {
		return b.fail(fmt.Errorf("pdf: %q: a page of %s by %s mm is larger than a PDF can have, allowed to %s mm; hint: lay it on sheets",
			d.Title, d.Width.Metric(), d.Height.Metric(), largest.Metric()))
	}
	b.f.AddPageFormat("P", gofpdf.SizeType{Wd: float64(d.Width), Ht: float64(d.Height)})
	if bookmark != "" {
		b.f.Bookmark(safe(bookmark), level, 0)
	}
	return nil
}

// safe is s as the library can turn it into UTF-16: it takes every rune for one
// of three bytes at most and reads past the end of a broken one. Runes above
// U+FFFF go in as their two halves of three bytes each, broken ones as U+FFFD.
func safe(s string) string {
	var b strings.Builder
	for _, r := range s {
		if high, low := utf16.EncodeRune(r); high != utf8.RuneError {
			for _, half := range []rune{high, low} {
				b.Write([]byte{0xE0 | byte(half>>12), 0x80 | byte(half>>6)&0x3F, 0x80 | byte(half)&0x3F})
			}
			continue
		}
		b.WriteRune(r)
	}
	return b.String()
}

func (b *Book) fail(err error) error {
	b.err = err
	return err
}

func (b *Book) lib() error {
	if err := b.f.Error(); err != nil {
		return b.fail(fmt.Errorf("pdf: %w", err))
	}
	return nil
}

// WriteTo finishes the file and writes it. It fails when a page has failed or
// there is none.
func (b *Book) WriteTo(w io.Writer) (int64, error) {
	if b.err != nil {
		return 0, b.err
	}
	if b.f.PageCount() == 0 {
		return 0, fmt.Errorf("pdf: no pages")
	}
	var buf bytes.Buffer
	if err := b.f.Output(&buf); err != nil {
		return 0, fmt.Errorf("pdf: %w", err)
	}
	out, err := finish(buf.Bytes())
	if err != nil {
		return 0, err
	}
	n, err := w.Write(out)
	return int64(n), err
}

// largest is the longest side of a page, 14 400 points (ISO 32000-1, annex C.2).
const largest = 200 * measure.Inch

// points are 72 to the inch.
const points = 72 / float64(measure.Inch)
