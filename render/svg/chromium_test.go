package svg

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"testing"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/render"
	"silowright/render/outside"
)

// A browser's own measure of every template's cut lines: length by
// getTotalLength, area by the shoelace sum over points along the path, size by
// getBBox, in user units, which the file's width says are millimetres.
const measurePage = `<!doctype html><body>%s<pre id="out"></pre><script>
const svg = document.querySelector('svg'), out = {length: 0, area: 0, x0: 1e9, y0: 1e9, x1: -1e9, y1: -1e9};
out.width = svg.width.baseVal.valueInSpecifiedUnits; out.view = svg.viewBox.baseVal.width;
for (const p of svg.querySelectorAll('#cut path')) {
  const n = 4000, l = p.getTotalLength(); let a = 0; const s = p.getPointAtLength(0); let q = s;
  for (let i = 1; i <= n; i++) { const r = p.getPointAtLength(l * i / n); a += q.x * r.y - r.x * q.y; q = r; }
  a += q.x * s.y - s.x * q.y;
  out.length += l; out.area += Math.abs(a) / 2;
  const b = p.getBBox();
  out.x0 = Math.min(out.x0, b.x); out.x1 = Math.max(out.x1, b.x + b.width);
  out.y0 = Math.min(out.y0, b.y); out.y1 = Math.max(out.y1, b.y + b.height);
}
document.getElementById('out').textContent = JSON.stringify(out);
</script></body>`

var printed = regexp.MustCompile(`<pre id="out">(\{.*?\})</pre>`)

func TestChromiumMeasuresTemplates(t *testing.T) {
	d := geometry.Drum{Label: "lot", Count: 1, Outside: 582, Height: 880, Wall: 4.8, FootOutside: 540, FootHeight: 55, HeadRecess: 22,
		Hoops: []geometry.Hoop{{From: 265, To: 300, Outside: 606}, {From: 580, To: 615, Outside: 606}}}
	silos, err := geometry.Solve(geometry.Job{Kinds: []geometry.Spec{geometry.DefaultSpec(d, measure.UnitMM)}})
	if err != nil {
		t.Fatal(err)
	}
	for _, tp := range silos[0].Templates {
		var buf bytes.Buffer
		if err := Write(&buf, render.FromTemplate(tp)); err != nil {
			t.Fatal(err)
		}
		_, body, _ := bytes.Cut(buf.Bytes(), []byte("?>"))
		file := outside.File(t, "template.html", fmt.Appendf(nil, measurePage, body))
		dom := outside.Run(t, "chromium", "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
			"--disable-background-networking", "--disable-component-update", "--disable-sync",
			"--user-data-dir="+t.TempDir(), "--dump-dom", "file://"+file)
		m := printed.FindSubmatch(dom)
		if m == nil {
			t.Fatalf("%s: the browser printed no measures", tp.ID)
		}
		var got struct{ Length, Area, X0, Y0, X1, Y1, Width, View float64 }
		if err := json.Unmarshal(m[1], &got); err != nil {
			t.Fatal(err)
		}
		if got.Width != got.View {
			t.Errorf("%s: %v mm wide for %v units", tp.ID, got.Width, got.View)
		}
		if want := tp.OpenArea.MM2(); math.Abs(got.Area/want-1) > 1e-3 {
			t.Errorf("%s: area %.2f mm² in the browser, %.2f by closed form", tp.ID, got.Area, want)
		}
		if want := tp.CutLength.MM(); math.Abs(got.Length/want-1) > 1e-3 {
			t.Errorf("%s: cut length %.3f mm in the browser, %.3f worked out", tp.ID, got.Length, want)
		}
		x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
		for _, sh := range tp.Shapes {
			if sh.Role == geometry.Cut {
				b := sh.Path.Bounds()
				x0, x1 = math.Min(x0, b.Min.X.MM()), math.Max(x1, b.Max.X.MM())
				y0, y1 = math.Min(y0, tp.Height.MM()-b.Max.Y.MM()), math.Max(y1, tp.Height.MM()-b.Min.Y.MM())
			}
		}
		for _, c := range [][2]float64{{got.X0, x0}, {got.X1, x1}, {got.Y0, y0}, {got.Y1, y1}} {
			if math.Abs(c[0]-c[1]) > 0.05 {
				t.Errorf("%s: an edge lies at %.4f mm in the browser, %.4f worked out", tp.ID, c[0], c[1])
			}
		}
	}
}
