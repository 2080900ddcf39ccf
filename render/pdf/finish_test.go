package pdf

import (
	"bytes"
	"strings"
	"testing"

	"github.com/jung-kurt/gofpdf"

	"silowright/render"
)

// library is a file of two pages and a form as the library writes it, with a
// face embedded or without.
func library(t testing.TB, compressed, embedded bool) []byte {
	t.Helper()
	f := gofpdf.NewCustom(&gofpdf.InitType{UnitStr: "mm", Size: gofpdf.SizeType{Wd: 210, Ht: 297}})
	f.SetCompression(compressed)
	f.SetCreationDate(epoch)
	f.SetModificationDate(epoch)
	f.SetCatalogSort(true)
	f.SetFont("Helvetica", "", 10)
	if embedded {
		f.AddUTF8FontFromBytes(family, "", render.RegularTTF())
		f.SetFont(family, "", 10)
	}
	form := f.CreateTemplate(func(t *gofpdf.Tpl) { t.Line(1, 2, 3, 4) })
	for _, words := range []string{"Ø 2 1/2 in", strings.Repeat("stream endstream >> /Length 5 >> ", 40)} {
		f.AddPage()
		f.Text(20, 20, words)
		f.UseTemplate(form)
	}
	var b bytes.Buffer
	if err := f.Output(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// Compressed here or by the library, the file is the same to the byte, pages
// and forms compressed and all places right.
func TestFinishCompressesAsTheLibraryDoes(t *testing.T) {
	here, err := finish(library(t, false, true))
	if err != nil {
		t.Fatal(err)
	}
	there, err := finish(library(t, true, true))
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(here, there) {
		t.Errorf("%d bytes, by the library %d", len(here), len(there))
	}
	if n := bytes.Count(here, []byte("/Filter /FlateDecode")); n < 3 {
		t.Errorf("%d compressed streams", n)
	}
	if !bytes.Contains(here, []byte("/ViewerPreferences <</PrintScaling /None>>")) || !bytes.HasPrefix(here, []byte("%PDF-1.6\n")) {
		t.Error("no print scaling")
	}
}

// A file that is not the library's is refused.
func FuzzFinish(f *testing.F) {
	whole := library(f, false, false)
	f.Add(whole)
	f.Add(library(f, true, false))
	f.Add(whole[:len(whole)/2])
	f.Add(whole[:len(whole)-1])
	f.Add([]byte("%PDF-1.3\nxref\n0 1\n0000000000 65535 f \ntrailer\nstartxref\n9\n%%EOF\n"))
	f.Add([]byte("%PDF-1.3\n1 0 obj\nxref\n0 2\n0000000000 65535 f \n0000000009 00000 n \ntrailer\nstartxref\n17\n%%EOF\n"))
	f.Add([]byte(""))
	f.Fuzz(func(t *testing.T, pdf []byte) {
		out, err := finish(pdf)
		switch {
		case err == nil && !bytes.HasPrefix(out, []byte("%PDF-1.6")):
			t.Errorf("%.40q became %.40q", pdf, out)
		case err != nil && !strings.HasPrefix(err.Error(), "pdf: "):
			t.Error(err)
		}
	})
}
