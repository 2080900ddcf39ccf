// Package outside runs the programs that tests measure with: poppler, mutool,
// qpdf, rsvg-convert, xmllint, the solvers GLPK and CBC, an emulator of another
// processor. One that is missing skips its test with a reason; where CI is set
// it fails it.
package outside

import (
	"bytes"
	"encoding/xml"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"
)

// Find returns where a program is.
func Find(t testing.TB, program string) string {
	t.Helper()
	path, err := exec.LookPath(program)
	if err != nil {
		if os.Getenv("CI") != "" {
			t.Fatalf("%s is missing; .ci/run installs it", program)
		}
		t.Skipf("%s is not installed", program)
	}
	return path
}

// Run runs a program and returns what it prints, failing the test when it
// does not exit with 0.
func Run(t testing.TB, program string, args ...string) []byte {
	t.Helper()
	cmd := exec.Command(Find(t, program), args...)
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

var (
	glpkOptimum = regexp.MustCompile(`Status: +INTEGER OPTIMAL\nObjective: +cost = (\S+)`)
	cbcOptimum  = regexp.MustCompile(`Result - Optimal solution found\s+Objective value: +(\S+)`)
)

// Least solves a mixed integer program, in a file in the CPLEX LP format whose
// least value of the objective cost is a whole number, by GLPK and by CBC.
func Least(t testing.TB, file string) (glpk, cbc int64) {
	t.Helper()
	glpk = optimum(t, glpkOptimum, Run(t, "glpsol", "--lp", file, "-o", "/dev/stdout"))
	return glpk, optimum(t, cbcOptimum, Run(t, "cbc", file, "-solve"))
}

func optimum(t testing.TB, found *regexp.Regexp, out []byte) int64 {
	t.Helper()
	m := found.FindSubmatch(out)
	if m == nil {
		t.Fatalf("no optimum in\n%s", out)
	}
	v, err := strconv.ParseFloat(string(m[1]), 64)
	if err != nil || math.Abs(v-math.Round(v)) > 0.01 {
		t.Fatalf("optimum %s is not whole: %v", m[1], err)
	}
	return int64(math.Round(v))
}
