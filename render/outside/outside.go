// Package outside runs the programs that tests measure with: poppler, mutool,
// qpdf, rsvg-convert, xmllint. One that is missing skips its test with a
// reason; where CI is set it fails it.
package outside

import (
	"bytes"
	"encoding/xml"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// Run runs a program and returns what it prints, failing the test when it
// does not exit with 0.
func Run(t testing.TB, program string, args ...string) []byte {
	t.Helper()
	path, err := exec.LookPath(program)
	if err != nil {
		if os.Getenv("CI") != "" {
			t.Fatalf("%s is missing; .ci/run installs it", program)
		}
		t.Skipf("%s is not installed", program)
	}
	cmd := exec.Command(path, args...)
	var out, errs bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &errs
	if err := cmd.Run(); err != nil {
		t.Fatalf("%s %v: %v\n%s", program, args, err, errs.Bytes())
	}
	return out.Bytes()
}

// File writes data to a new file of the test's own and returns its path.
func File(t testing.TB, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// Word is one word of a page, points from the page's upper left.
type Word struct {
	XMin float64 `xml:"xMin,attr"`
	YMin float64 `xml:"yMin,attr"`
	XMax float64 `xml:"xMax,attr"`
	YMax float64 `xml:"yMax,attr"`
	Text string  `xml:",chardata"`
}

// Page is one page as poppler reads it.
type Page struct {
	Width  float64 `xml:"width,attr"`
	Height float64 `xml:"height,attr"`
	Words  []Word  `xml:"word"`
}

// Pages reads the words of a PDF file by pdftotext -bbox.
func Pages(t testing.TB, file string) []Page {
	t.Helper()
	var doc struct {
		Pages []Page `xml:"body>doc>page"`
	}
	if err := xml.Unmarshal(Run(t, "pdftotext", "-bbox", file, "-"), &doc); err != nil {
		t.Fatal(err)
	}
	return doc.Pages
}
