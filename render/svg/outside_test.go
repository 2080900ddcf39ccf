package svg_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"html"
	"image"
	"image/draw"
	"image/png"
	"math"
	"regexp"
	"strings"
	"testing"

	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
	"silowright/render/outside"
)

// sector of a circle about the middle of a 200 mm plate.
func sector(r measure.Length, a measure.Angle) path.Path {
	var p path.Path
	c := path.Pt(100, 100)
	p.MoveTo(c)
	p.LineTo(path.Pt(100+r, 100))
	p.ArcTo(c, a)
	p.ClosePath()
	return p
}

// areas are shapes with closed forms. The sectors run both ways and past half a
// turn, so that an arc's flags cannot be wrong unseen.
var areas = []struct {
	name string
	p    path.Path
	area float64
}{
	{"circle, πr²", path.Circle(path.Pt(100, 100), 63.5), math.Pi * 63.5 * 63.5},
	{"sector of 100°, ½r²φ", sector(80, 100*measure.Degree), 0.5 * 80 * 80 * 100 * math.Pi / 180},
	{"sector of 250°, ½r²φ", sector(80, 250*measure.Degree), 0.5 * 80 * 80 * 250 * math.Pi / 180},
	{"sector of −200°, ½r²φ", sector(80, -200*measure.Degree), 0.5 * 80 * 80 * 200 * math.Pi / 180},
	{"rectangle less a circle", append(path.Rect(path.Box{Min: path.Pt(20, 20), Max: path.Pt(180, 150)}), path.Circle(path.Pt(90, 80), 31)...), 160*130 - math.Pi*31*31},
}

func raster(t *testing.T, data []byte) *image.Gray {
	t.Helper()
	file := outside.File(t, "a.svg", data)
	img, err := png.Decode(bytes.NewReader(outside.Run(t, "rsvg-convert", "-d", "254", "-p", "254", "-b", "white", file)))
	if err != nil {
		t.Fatal(err)
	}
	grey := image.NewGray(img.Bounds())
	draw.Draw(grey, grey.Rect, img, img.Bounds().Min, draw.Src)
	return grey
}

// librsvg paints each shape as large as its closed form, within 0.1 %, on a
// picture of the drawing's own size at ten pixels a millimetre.
func TestAreasByLibrsvg(t *testing.T) {
	for _, c := range areas {
		d := render.Drawing{Title: c.name, Width: 200, Height: 200}
		d.Shade(c.p, 1)
		img := raster(t, write(t, d))
		if b := img.Bounds(); b.Dx() != 2000 || b.Dy() != 2000 {
			t.Fatalf("the picture is %v", b)
		}
		sum, mx, my := 0.0, 0.0, 0.0
		for y := range 2000 {
			for x := range 2000 {
				k := 1 - float64(img.Pix[y*img.Stride+x])/255
				sum += k
				mx += k * (float64(x) + 0.5) / 10
				my += k * (200 - (float64(y)+0.5)/10)
			}
		}
		if got := sum / 100; math.Abs(got-c.area) > c.area/1000 {
			t.Errorf("%s: %.1f mm², want %.1f", c.name, got, c.area)
		}
		// its middle is where the path's own is: nothing is upside down
		wx, wy := middle(c.p)
		if math.Hypot(mx/sum-wx, my/sum-wy) > 0.02 {
			t.Errorf("%s: its middle is (%.3f, %.3f), want (%.3f, %.3f)", c.name, mx/sum, my/sum, wx, wy)
		}
	}
}

// middle is the centroid of what a path encloses by the even-odd rule, from
// its chords.
func middle(p path.Path) (x, y float64) {
	sum := 0.0
	for i, chain := range p.Flatten(0.001) {
		a, cx, cy := 0.0, 0.0, 0.0
		for j, q := range chain {
			n := chain[(j+1)%len(chain)]
			k := float64(q.X*n.Y - n.X*q.Y)
			a, cx, cy = a+k, cx+k*float64(q.X+n.X)/3, cy+k*float64(q.Y+n.Y)/3
		}
		if (a < 0) != (i > 0) { // the first is an outline, others are holes
			a, cx, cy = -a, -cx, -cy
		}
		sum, x, y = sum+a, x+cx, y+cy
	}
	return x / sum, y / sum
}

// xmllint has nothing to say about the file.
func TestWellFormedByLibxml(t *testing.T) {
	outside.Run(t, "xmllint", "--noout", outside.File(t, "p.svg", write(t, plate())))
}

// A browser's own geometry: the length of every path and the box round it, to
// a hundredth of a millimetre, and one unit is one millimetre at 96 pixels an
// inch (CSS Values, absolute lengths).
func TestGeometryByChromium(t *testing.T) {
	d := render.Drawing{Title: "plate", Width: 200, Height: 200}
	for _, c := range areas {
		d.PathOn(render.Cut, c.p)
	}
	var curve path.Path
	curve.MoveTo(path.Pt(10, 20))
	curve.CurveTo(path.Pt(60, 190), path.Pt(120, -30), path.Pt(190, 110))
	curve.ArcTo(path.Pt(160, 110), -1)
	d.PathOn(render.Cut, curve)
	page := `<!doctype html><body style="margin:0">` + string(svgElement(write(t, d))) + `<script>
const out = {size: [document.querySelector('svg').getBoundingClientRect().width], paths: []};
for (const p of document.querySelectorAll('path')) {
  const b = p.getBBox();
  out.paths.push([p.getTotalLength(), b.x, b.y, b.width, b.height]);
}
document.body.innerHTML = '<pre>' + JSON.stringify(out) + '</pre>';
</script>`
	file := outside.File(t, "p.html", []byte(page))
	dom := string(outside.Run(t, "chromium", "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync", "--user-data-dir="+t.TempDir(), "--dump-dom", "file://"+file))
	m := regexp.MustCompile(`<pre>(.*)</pre>`).FindStringSubmatch(dom)
	if m == nil {
		t.Fatalf("the browser says %.500s", dom)
	}
	var got struct {
		Size  []float64
		Paths [][5]float64
	}
	if err := json.Unmarshal([]byte(html.UnescapeString(m[1])), &got); err != nil {
		t.Fatal(err)
	}
	if want := 200 * 96 / 25.4; math.Abs(got.Size[0]-want) > 0.05 {
		t.Errorf("the drawing is %v pixels wide, want %v", got.Size[0], want)
	}
	if len(got.Paths) != len(d.Strokes) {
		t.Fatalf("%d paths of %d", len(got.Paths), len(d.Strokes))
	}
	for i, g := range got.Paths {
		p := d.Strokes[i].Path
		b := p.Bounds()
		want := [5]float64{float64(p.Length()), float64(b.Min.X), 200 - float64(b.Max.Y), float64(b.Max.X - b.Min.X), float64(b.Max.Y - b.Min.Y)}
		for k := range want {
			// the browser reckons in floats of 24 bits and measures curves by
			// chords: two parts in ten thousand of a length
			tol := 0.01
			if k == 0 {
				tol = math.Max(tol, 2e-4*want[0])
			}
			if math.Abs(g[k]-want[k]) > tol {
				t.Errorf("path %d: %s", i, fmt.Sprintf("%.3f, want %.3f", g, want))
				break
			}
		}
	}
}

// svgElement is the file without its XML declaration, to stand in a page.
func svgElement(data []byte) []byte {
	return data[strings.Index(string(data), "<svg"):]
}
