package sheets

import (
	"encoding/xml"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"silowright/render/pdf"
)

// poppler's own reading of the finished file: every page is there, every word
// lies inside its page's margins, and the words read as they were set.
func TestPopplerReadsThePages(t *testing.T) {
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal("pdftotext (poppler-utils) is missing")
		}
		t.Skip("pdftotext (poppler-utils) is not installed")
	}
	secs, err := Sections(small1(t), Letter)
	if err != nil {
		t.Fatal(err)
	}
	book := pdf.New(pdf.Meta{Title: "sheets"})
	pages := 0
	for _, s := range secs {
		for _, d := range s.Pages {
			pages++
			if err := book.Page(d, "", 0); err != nil {
				t.Fatal(err)
			}
		}
	}
	file := filepath.Join(t.TempDir(), "sheets.pdf")
	w, err := os.Create(file)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := book.WriteTo(w); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(tool, "-bbox", file, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	var html struct {
		Pages []struct {
			Width  float64 `xml:"width,attr"`
			Height float64 `xml:"height,attr"`
			Words  []struct {
				XMin float64 `xml:"xMin,attr"`
				XMax float64 `xml:"xMax,attr"`
				YMin float64 `xml:"yMin,attr"`
				YMax float64 `xml:"yMax,attr"`
				Text string  `xml:",chardata"`
			} `xml:"word"`
		} `xml:"body>doc>page"`
	}
	dec := xml.NewDecoder(strings.NewReader(string(out)))
	dec.Strict, dec.AutoClose, dec.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	if err := dec.Decode(&html); err != nil {
		t.Fatal(err)
	}
	if len(html.Pages) != pages {
		t.Fatalf("poppler finds %d pages, %d were set", len(html.Pages), pages)
	}
	const point = 72 / 25.4 // points in a mm
	var all strings.Builder
	for i, p := range html.Pages {
		if d := p.Width/point - float64(Letter.Width); d > 0.1 || d < -0.1 {
			t.Errorf("page %d is %.2f mm wide", i+1, p.Width/point)
		}
		if len(p.Words) < 15 {
			t.Errorf("page %d has only %d words", i+1, len(p.Words))
		}
		for _, x := range p.Words {
			all.WriteString(x.Text + " ")
			if x.XMin < 19*point || x.XMax > p.Width-11*point || x.YMin < 5*point || x.YMax > p.Height-5*point {
				t.Errorf("page %d: %q at (%.0f, %.0f) to (%.0f, %.0f) pt leaves the margins", i+1, x.Text, x.XMin, x.YMin, x.XMax, x.YMax)
			}
		}
	}
	for _, s := range secs {
		if !strings.Contains(all.String(), s.Title) {
			t.Errorf("poppler does not read %q", s.Title)
		}
	}
}
