package svg_test

import (
	"math"
	"regexp"
	"testing"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/render"
)

var (
	cutGroup = regexp.MustCompile(`(?s)<g id="cut"[^>]*>(.*?)</g>`)
	svgTag   = regexp.MustCompile(`(?s)^.*?<svg[^>]*>`)
)

// Librsvg's pixels: the file's own cut group, filled, is as large as the
// template's open area, within 0.1 % (0.2 % for a single small opening).
func TestTemplateAreasByLibrsvg(t *testing.T) {
	d := geometry.Drum{Label: "lot", Count: 1, Outside: 582, Height: 880, Wall: 4.8, FootOutside: 540, FootHeight: 55, HeadRecess: 22,
		Hoops: []geometry.Hoop{{From: 265, To: 300, Outside: 606}, {From: 580, To: 615, Outside: 606}}}
	silos, err := geometry.Solve(geometry.Job{Kinds: []geometry.Spec{geometry.DefaultSpec(d, measure.UnitMM)}})
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, tp := range silos[0].Templates {
		if tp.Strip {
			continue // as the patches, and two metres long
		}
		seen[tp.ID] = true
		file := write(t, render.FromTemplate(tp))
		head, group := svgTag.Find(file), cutGroup.FindSubmatch(file)
		if head == nil || group == nil {
			t.Fatalf("%s: no cut group", tp.ID)
		}
		filled := string(head) + `<g fill="black" stroke="none">` + string(group[1]) + `</g></svg>`
		img := raster(t, []byte(filled))
		sum := 0.0
		for y := range img.Rect.Dy() {
			for _, g := range img.Pix[y*img.Stride : y*img.Stride+img.Rect.Dx()] {
				sum += 1 - float64(g)/255
			}
		}
		tol := 0.002
		if tp.OpenArea.MM2() > 1e5 {
			tol = 0.001
		}
		if got, want := sum/100, tp.OpenArea.MM2(); math.Abs(got/want-1) > tol {
			t.Errorf("%s: %.1f mm² painted, want %.1f", tp.ID, got, want)
		}
		for _, c := range []struct {
			pixels int
			want   measure.Length
		}{{img.Rect.Dx(), tp.Width}, {img.Rect.Dy(), tp.Height}} {
			if math.Abs(float64(c.pixels)/10-c.want.MM()) > 0.11 { // whole pixels, rounded up
				t.Errorf("%s: the picture is %v pixels for %.2f mm", tp.ID, c.pixels, c.want.MM())
			}
		}
	}
	for _, id := range []string{"lattice", "outlet", "handle-slot", "pipe-wrap"} {
		if !seen["lot-"+id] {
			t.Errorf("no template %s", id)
		}
	}
}
