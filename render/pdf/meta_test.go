package pdf_test

import (
	"bytes"
	"strings"
	"testing"

	"silowright/render/outside"
	"silowright/render/pdf"
)

// Titles and bookmarks that a user may have thought of, with what poppler is
// to read.
var titles = []struct{ is, reads string }{
	{"Tidewrack Cove", "Tidewrack Cove"},
	{"½ in × 3 (a\\b)", "½ in × 3 (a\\b)"},
	{"貝 苗", "貝 苗"},
	{"tools 🧰 out", "tools 🧰 out"},
	{"cut\xffshort\xe2\x82", "cut\uFFFDshort\uFFFD\uFFFD"},
	{"", ""},
}

// Any title and any bookmark make a sound file that reads back.
func TestTitles(t *testing.T) {
	for _, c := range titles {
		b := pdf.New(pdf.Meta{Title: c.is, Subject: c.is})
		if err := b.Page(plate(), c.is, 0); err != nil {
			t.Fatal(err)
		}
		var buf bytes.Buffer
		if _, err := b.WriteTo(&buf); err != nil {
			t.Fatal(err)
		}
		file := outside.File(t, "t.pdf", buf.Bytes())
		outside.Run(t, "qpdf", "--check", file)
		if info := string(outside.Run(t, "pdfinfo", file)); c.reads != "" && !strings.Contains(info, c.reads+"\n") {
			t.Errorf("%q reads back as\n%s", c.is, info)
		}
		// mutool writes a backslash before a backslash
		outline := string(outside.Run(t, "mutool", "show", file, "outline"))
		if c.reads != "" && !strings.Contains(outline, strings.ReplaceAll(c.reads, `\`, `\\`)) {
			t.Errorf("the bookmark %q reads back as %s", c.is, outline)
		}
		// title and bookmark are marked as UTF-16 (ISO 32000-1, 7.9.2.2)
		if n := bytes.Count(buf.Bytes(), []byte("/Title (\xfe\xff")); c.is != "" && n != 2 {
			t.Errorf("%q: %d titles are UTF-16, want 2", c.is, n)
		}
	}
}

// Nothing in a title or a bookmark makes the writer fail.
func FuzzTitles(f *testing.F) {
	for _, c := range titles {
		f.Add(c.is, c.is)
	}
	f.Fuzz(func(t *testing.T, title, bookmark string) {
		b := pdf.New(pdf.Meta{Title: title, Subject: title})
		if err := b.Page(plate(), bookmark, 0); err != nil {
			t.Fatal(err)
		}
		var buf bytes.Buffer
		if _, err := b.WriteTo(&buf); err != nil {
			t.Fatal(err)
		}
		if bytes.Count(buf.Bytes(), []byte("\nstartxref\n")) != 1 {
			t.Fatal("the file has not one table")
		}
	})
}
