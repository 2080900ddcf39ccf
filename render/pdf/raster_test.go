package pdf_test

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"

	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
	"silowright/render/outside"
)

// picture is a grey page, ten pixels a millimetre, as poppler paints it.
type picture struct {
	w, h int
	px   []byte
	top  float64 // the page's height in pixels: a picture may have a part of one more
}

const perMM = 10

var header = regexp.MustCompile(`^P5\s+(\d+)\s+(\d+)\s+255\s`)

// pictures rasterises every page of a file.
func pictures(t *testing.T, file string) []picture {
	t.Helper()
	dir := t.TempDir()
	outside.Run(t, "pdftoppm", "-r", "254", "-gray", file, filepath.Join(dir, "p"))
	names, err := filepath.Glob(filepath.Join(dir, "*.pgm"))
	if err != nil || len(names) == 0 {
		t.Fatal("no pictures ", err)
	}
	var out []picture
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		m := header.FindSubmatch(data)
		if m == nil {
			t.Fatalf("%s is no grey picture", name)
		}
		w, _ := strconv.Atoi(string(m[1]))
		h, _ := strconv.Atoi(string(m[2]))
		out = append(out, picture{w, h, bytes.Clone(data[len(m[0]):]), float64(h)})
	}
	return out
}

// ink is how dark the page is at (x, y) mm from its lower left, from 0 to 1,
// between the middles of the pixels round it.
func (p picture) ink(x, y float64) float64 {
	u, v := x*perMM-0.5, p.top-y*perMM-0.5
	i, j := math.Floor(u), math.Floor(v)
	at := func(i, j float64) float64 {
		if i < 0 || j < 0 || int(i) >= p.w || int(j) >= p.h {
			return 0
		}
		return 1 - float64(p.px[int(j)*p.w+int(i)])/255
	}
	a, b := u-i, v-j
	return (1-a)*(1-b)*at(i, j) + a*(1-b)*at(i+1, j) + (1-a)*b*at(i, j+1) + a*b*at(i+1, j+1)
}

// middle is where the ink lies along the way from (x, y) in the direction (dx,
// dy), a unit step, within reach: the middle of a line crossed there. ok is
// false where there is none.
func (p picture) middle(x, y, dx, dy, reach float64) (s float64, ok bool) {
	sum, moment := 0.0, 0.0
	for s := -reach; s <= reach; s += 0.02 {
		k := p.ink(x+s*dx, y+s*dy)
		sum += k
		moment += k * s
	}
	if sum*0.02 < 0.08 { // a line of 0.18 mm is the thinnest
		return 0, false
	}
	return moment / sum, true
}

// A filled circle, a sector of 100° and a rectangle with a hole cover as much
// of poppler's page as the closed forms say, within 0.1 %.
func TestFilledAreas(t *testing.T) {
	sector := func(r measure.Length, a measure.Angle) path.Path {
		var p path.Path
		p.MoveTo(path.Pt(100, 100))
		p.LineTo(path.Pt(100+r, 100))
		p.ArcTo(path.Pt(100, 100), a)
		p.ClosePath()
		return p
	}
	frame := append(path.Rect(path.Box{Min: path.Pt(20, 20), Max: path.Pt(180, 150)}), path.Circle(path.Pt(90, 80), 31)...)
	for _, c := range []struct {
		name string
		p    path.Path
		want float64
	}{
		{"circle, πr²", path.Circle(path.Pt(100, 100), 63.5), math.Pi * 63.5 * 63.5},
		{"sector, ½r²φ", sector(80, 100*measure.Degree), 0.5 * 80 * 80 * 100 * math.Pi / 180},
		{"rectangle less a circle", frame, 160*130 - math.Pi*31*31},
	} {
		d := render.Drawing{Title: "area", Width: 200, Height: 200}
		d.Shade(c.p, 1)
		pic := pictures(t, outside.File(t, "a.pdf", onePage(t, d)))[0]
		sum := 0.0
		for _, g := range pic.px {
			sum += 1 - float64(g)/255
		}
		if got := sum / (perMM * perMM); math.Abs(got-c.want) > c.want/1000 {
			t.Errorf("%s: %.1f mm², want %.1f", c.name, got, c.want)
		}
	}
}

// Capital letters are as high on the page as Size says (ISO 3098: the height
// of capitals is the nominal size), and a line of words as long as TextWidth
// says, in both faces.
func TestLettersAreTrue(t *testing.T) {
	for _, bold := range []bool{false, true} {
		d := render.Drawing{Title: "letters", Width: 200, Height: 60}
		d.Texts = []render.Text{{Layer: render.Notes, At: path.Pt(20, 20), Size: 10, Bold: bold, Words: "HHHHHHHH"}}
		pic := pictures(t, outside.File(t, "l.pdf", onePage(t, d)))[0]
		x0, x1, y0, y1 := 1e9, -1e9, 1e9, -1e9
		for j := range pic.h {
			for i := range pic.w {
				if pic.px[j*pic.w+i] < 128 {
					x, y := (float64(i)+0.5)/perMM, (float64(pic.h-j)-0.5)/perMM
					x0, x1, y0, y1 = min(x0, x), max(x1, x), min(y0, y), max(y1, y)
				}
			}
		}
		if high := y1 - y0 + 0.1; math.Abs(high-10) > 0.15 || math.Abs(y0-20) > 0.15 {
			t.Errorf("bold %v: capitals are %.2f mm high from %.2f, want 10 from 20", bold, high, y0)
		}
		// ink stops short of the advance by the side bearings, under a tenth of
		// a letter each
		long := float64(render.TextWidth("HHHHHHHH", 10, bold))
		if got := x1 - x0; got > long || got < long*(1-0.25/8) {
			t.Errorf("bold %v: eight letters are %.2f mm long, TextWidth says %.2f", bold, got, long)
		}
	}
}
