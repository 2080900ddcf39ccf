package pack

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"silowright/cmd/internal/plan"
	"silowright/geometry/measure"
	"silowright/render"
	"silowright/render/outside"
)

// Every job's PDF is sound to qpdf, its fonts are embedded, and poppler finds
// every word inside its page.
func TestPDFFromOutside(t *testing.T) {
	for name, p := range jobs(t) {
		t.Run(name, func(t *testing.T) {
			m := make1(t, p)
			file := outside.File(t, "pack.pdf", fileNamed(t, m, "shop-pack.pdf"))
			outside.Run(t, "qpdf", "--check", file)
			fonts := string(outside.Run(t, "pdffonts", file))
			for _, line := range strings.Split(strings.TrimSpace(fonts), "\n")[2:] {
				if !strings.Contains(line, " yes ") {
					t.Errorf("a font is not embedded: %s", line)
				}
			}
			pages := outside.Pages(t, file)
			if len(pages) != m.Pages+m.Sheets {
				t.Errorf("poppler sees %d pages, %d were made", len(pages), m.Pages+m.Sheets)
			}
			for i, pg := range pages {
				for _, w := range pg.Words {
					const slack = 0.5 // points
					if w.XMin < -slack || w.YMin < -slack || w.XMax > pg.Width+slack || w.YMax > pg.Height+slack {
						t.Errorf("page %d: %q is off the page", i+1, w.Text)
					}
				}
			}
		})
	}
}

// curve matches a Bézier of mutool's trace, its end point last, and the matrix
// it is drawn under.
var (
	matrixRE = regexp.MustCompile(`transform="([-0-9.e]+) ([-0-9.e]+) ([-0-9.e]+) ([-0-9.e]+) ([-0-9.e]+) ([-0-9.e]+)"`)
	pointRE  = regexp.MustCompile(`<(?:moveto|lineto) x="([-0-9.e]+)" y="([-0-9.e]+)"|<curveto .*x3="([-0-9.e]+)" y3="([-0-9.e]+)"`)
)

// printedWidth is how wide and high the thickest lines (the cut lines) of a PDF
// page are drawn, mm, by mutool's own numbers.
func printedSize(t *testing.T, trace string) (w, h float64) {
	t.Helper()
	num := func(s string) float64 {
		x, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, block := range strings.Split(trace, "<stroke_path")[1:] {
		head, body, _ := strings.Cut(block, ">")
		width := regexp.MustCompile(`linewidth="([0-9.]+)"`).FindStringSubmatch(head)
		m := matrixRE.FindStringSubmatch(head)
		if width == nil || m == nil || math.Abs(num(width[1])-0.5*72/25.4) > 0.01 {
			continue
		}
		body, _, _ = strings.Cut(body, "</stroke_path>")
		for _, q := range pointRE.FindAllStringSubmatch(body, -1) {
			sx, sy := q[1], q[2]
			if sx == "" {
				sx, sy = q[3], q[4]
			}
			x := num(m[1])*num(sx) + num(m[3])*num(sy) + num(m[5])
			y := num(m[2])*num(sx) + num(m[4])*num(sy) + num(m[6])
			x0, x1 = math.Min(x0, x), math.Max(x1, x)
			y0, y1 = math.Min(y0, y), math.Max(y1, y)
		}
	}
	return (x1 - x0) * 25.4 / 72, (y1 - y0) * 25.4 / 72
}

// A printer that shrinks to 99.4 % across and 100.3 % up gives true size again
// when the pack is drawn for it: the outlet's outline, printed and shrunk, is
// as wide as the developed hole and as high as the saw's, within 0.05 mm. The
// same without correction on a true printer.
func TestPrinterCorrected(t *testing.T) {
	p, err := plan.Demo()
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		measured string
		x, y     float64 // what the printer does
	}{{"", 1, 1}, {"99.4x100.3", 0.994, 1.003}, {"101.25 x 98.5", 1.0125, 0.985}} {
		o := DefaultOptions(measure.UnitInch)
		o.Only = []string{"templates"}
		if tt.measured != "" {
			if o.Stretch, err = render.PrintedAs(tt.measured); err != nil {
				t.Fatal(err)
			}
		}
		m, err := Make(p, o)
		if err != nil {
			t.Fatal(err)
		}
		file := outside.File(t, "pack.pdf", fileNamed(t, m, "shop-pack.pdf"))
		page := 0
		for i, pg := range outside.Pages(t, file) {
			for _, w := range pg.Words {
				if w.Text == "Outlet" {
					page = i + 1
				}
			}
		}
		if page == 0 {
			t.Fatal("no outlet sheet")
		}
		w, h := printedSize(t, string(outside.Run(t, "mutool", "trace", file, strconv.Itoa(page))))
		hole := p.Silos[0].Outlet
		if got, want := w*tt.x, hole.Arc.MM(); math.Abs(got-want) > 0.05 {
			t.Errorf("printed as %q: %.3f mm across, want %.3f", tt.measured, got, want)
		}
		if got, want := h*tt.y, hole.Diameter.MM(); math.Abs(got-want) > 0.05 {
			t.Errorf("printed as %q: %.3f mm up, want %.3f", tt.measured, got, want)
		}
	}
}
