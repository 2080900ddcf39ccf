package pack

import (
	"bytes"
	"flag"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"silowright/cmd/internal/plan"
	"silowright/geometry/measure"
	"silowright/render/outside"
)

var update = flag.Bool("update", false, "draw the README's pictures again")

// The README's pictures show the pack as it is: they are the demo's own pages,
// and a page that has changed much since is told.
func TestReadmePictures(t *testing.T) {
	p, err := plan.Demo()
	if err != nil {
		t.Fatal(err)
	}
	o := DefaultOptions(measure.UnitInch)
	pages, err := Pages(p, o)
	if err != nil {
		t.Fatal(err)
	}
	file := outside.File(t, "pack.pdf", fileNamed(t, make1(t, p), "shop-pack.pdf"))
	page := func(title string, nth int) image.Image {
		first := slices.IndexFunc(pages, func(q Page) bool { return strings.HasPrefix(q.Title, title) })
		if first < 0 {
			t.Fatalf("no page %q", title)
		}
		return rastered(t, file, first+nth+1)
	}
	for name, sheets := range map[string][][]image.Image{
		"pages.png": {{page("Drawing: Assembly", 0), page("Build steps", 2)}},
		"tiles.png": {
			{page("Lattice", 0), page("Lattice", 1)},
			{page("Lattice", 2), page("Lattice", 3)},
			{page("Lattice", 4), page("Lattice", 5)},
		},
	} {
		got := laidOut(sheets)
		at := filepath.Join("../../../testdata/pictures", name)
		if *update {
			var b bytes.Buffer
			if err := png.Encode(&b, got); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(at, b.Bytes(), 0o666); err != nil {
				t.Fatal(err)
			}
		}
		data, err := os.ReadFile(at)
		if err != nil {
			t.Fatalf("%v; hint: go test ./cmd/internal/pack -run Pictures -update", err)
		}
		kept, err := png.Decode(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		if off := unlike(got, kept); off > 0.02 {
			t.Errorf("%s is not the pack's any more, off by %.3f; hint: go test ./cmd/internal/pack -run Pictures -update", name, off)
		}
	}
}

// rastered is a page at 80 dots to the inch, by pdftoppm.
func rastered(t *testing.T, file string, page int) image.Image {
	t.Helper()
	n := fmt.Sprint(page)
	data := outside.Run(t, "pdftoppm", "-png", "-gray", "-r", "80", "-f", n, "-l", n, file)
	img, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return img
}

// laidOut lays pictures out in rows, a little apart.
func laidOut(rows [][]image.Image) *image.Gray {
	const gap = 12
	size := rows[0][0].Bounds().Size()
	for _, row := range rows {
		for _, img := range row {
			size = image.Pt(max(size.X, img.Bounds().Dx()), max(size.Y, img.Bounds().Dy()))
		}
	}
	out := image.NewGray(image.Rect(0, 0, gap+len(rows[0])*(size.X+gap), gap+len(rows)*(size.Y+gap)))
	draw.Draw(out, out.Bounds(), image.NewUniform(color.Gray{200}), image.Point{}, draw.Src)
	for r, row := range rows {
		for c, img := range row {
			at := image.Pt(gap+c*(size.X+gap), gap+r*(size.Y+gap))
			draw.Draw(out, image.Rectangle{at, at.Add(img.Bounds().Size())}, img, img.Bounds().Min, draw.Src)
		}
	}
	return out
}

// unlike is how far two pictures are from one another, each taken as 48 by 48
// fields: the mean difference of a field's grey, from 0 to 1.
func unlike(a, b image.Image) float64 {
	if a.Bounds().Size() != b.Bounds().Size() {
		return 1
	}
	const n = 48
	var sum float64
	size := a.Bounds().Size()
	for y := range n {
		for x := range n {
			field := image.Rect(x*size.X/n, y*size.Y/n, (x+1)*size.X/n, (y+1)*size.Y/n)
			sum += math.Abs(grey(a, field)-grey(b, field)) / n / n
		}
	}
	return sum
}

func grey(img image.Image, in image.Rectangle) float64 {
	sum := 0.0
	for y := in.Min.Y; y < in.Max.Y; y++ {
		for x := in.Min.X; x < in.Max.X; x++ {
			sum += float64(color.GrayModel.Convert(img.At(x, y)).(color.Gray).Y)
		}
	}
	return sum / 255 / float64(in.Dx()*in.Dy())
}

// The comparing above tells pages apart.
func TestUnlike(t *testing.T) {
	a, b := image.NewGray(image.Rect(0, 0, 96, 96)), image.NewGray(image.Rect(0, 0, 96, 96))
	draw.Draw(b, image.Rect(0, 0, 48, 96), image.White, image.Point{}, draw.Src)
	if off := unlike(a, b); math.Abs(off-0.5) > 1e-9 {
		t.Errorf("half of it white: %g", off)
	}
	if off := unlike(a, a); off != 0 {
		t.Errorf("the same: %g", off)
	}
}
