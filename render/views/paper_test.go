package views

import (
	"bytes"
	"fmt"
	"image"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strconv"
	"testing"

	"github.com/google/go-cmp/cmp"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/render"
	"silowright/render/outside"
	"silowright/render/pdf"
)

// rasterised prints a drawing and has poppler turn it into 10 pixels a
// millimetre.
func rasterised(t *testing.T, d render.Drawing) *image.Gray {
	t.Helper()
	b := pdf.New(pdf.Meta{Title: d.Title})
	if err := b.Page(d, "", 0); err != nil {
		t.Fatal(err)
	}
	var buf bytes.Buffer
	if _, err := b.WriteTo(&buf); err != nil {
		t.Fatal(err)
	}
	file := outside.File(t, "d.pdf", buf.Bytes())
	out := outside.Run(t, "pdftoppm", "-r", "254", "-gray", "-aa", "no", "-aaVector", "no", "-singlefile", file)
	var w, h, most int
	if _, err := fmt.Sscanf(string(out[:40]), "P5\n%d %d\n%d", &w, &h, &most); err != nil {
		t.Fatalf("not a grey map: %v", err)
	}
	return &image.Gray{Pix: out[len(out)-w*h:], Stride: w, Rect: image.Rect(0, 0, w, h)}
}

// The lattice at 1:5 from the printed page, by poppler: the foot is 21 1/8 in
// across (the job's own), so its outline on paper is 107.315 mm high.
func TestLatticeOnPaper(t *testing.T) {
	spec := cove()
	d := Lattice(solved(t, spec), sizes["letter"])
	g := rasterised(t, d)
	dark := func(x, y int) bool { return g.GrayAt(x, y).Y < 128 }
	// the topmost line under the heading is the outline
	top, mid := -1, 0
	for y := 100; y < 1000 && top < 0; y++ {
		n, sum := 0, 0
		for x := 50; x < 1200; x++ {
			if dark(x, y) {
				n, sum = n+1, sum+x
			}
		}
		if n > 0 {
			top, mid = y, sum/n
		}
	}
	if top < 0 {
		t.Fatal("no outline found")
	}
	const across = 21.125 * 25.4 / 5 * 10 // pixels
	want := float64(top) + 2.5 + across   // 2.5: half the line's width
	best := math.Inf(1)
	for y := top + 900; y < top+1200; y++ {
		run := 0
		for dark(mid, y+run) {
			run++
		}
		if run >= 4 && run <= 7 { // a wide line, 0.5 mm
			best = math.Min(best, math.Abs(float64(y)+float64(run)/2-want))
			y += run
		}
	}
	if best > 1.5 {
		t.Errorf("the foot's lower edge is %.2f mm from where 21 1/8 in at 1:5 puts it", best/10)
	}
}

// A drawing's scale is one of ISO 5455's, and never larger than the view asks
// for or the room allows.
func TestFit(t *testing.T) {
	for _, c := range []struct {
		w, h, roomW, roomH length
		most               float64
		want               string
	}{
		{100, 50, 120, 60, 2, "1:1"},
		{100, 50, 120, 49, 2, "1:2"},
		{40, 20, 120, 60, 2, "2:1"},
		{40, 20, 120, 60, 1, "1:1"},
		{572, 400, 120, 120, 1, "1:5"},
		{3770, 400, 190, 60, 1, "1:20"},
		{1e6, 10, 190, 60, 1, "not to scale"},
	} {
		if got := fit(c.w, c.h, c.roomW, c.roomH, c.most); got.name != c.want {
			t.Errorf("%v × %v in %v × %v: %s, want %s", c.w, c.h, c.roomW, c.roomH, got.name, c.want)
		}
	}
}

func FuzzSpread(f *testing.F) {
	f.Add(int64(1), 5)
	f.Fuzz(func(t *testing.T, seed int64, n int) {
		if n < 1 || n > 40 {
			t.Skip()
		}
		r := rand.New(rand.NewPCG(uint64(seed), 7))
		want, tall := make([]length, n), make([]length, n)
		sum, at := length(0), length(0)
		for i := range want {
			at += length(r.Float64() * 5)
			want[i], tall[i] = at, length(1+r.Float64()*8)
			sum += tall[i]
		}
		lo := length(-10)
		hi := lo + sum + length(r.Float64()*50)
		got := spread(want, tall, lo, hi)
		for i, y := range got {
			if y-tall[i]/2 < lo-1e-6 || y+tall[i]/2 > hi+1e-6 {
				t.Fatalf("%d of %d leaves %v to %v: %v", i, n, lo, hi, y)
			}
			if i > 0 && got[i-1]+tall[i-1]/2 > y-tall[i]/2+1e-6 {
				t.Fatalf("%d runs into %d: %v %v", i-1, i, got[i-1], y)
			}
		}
	})
}

// Sheets of every shape stay clean; those too small for words of 2.5 mm get a
// reduced drawing that claims no scale.
func TestEverySheet(t *testing.T) {
	spec := cove()
	spec.Drum.Label = "青い drum \U0001F600\n" // letters the face lacks leave a mark
	silos := []geometry.Silo{solved(t, spec), solved(t, little()), solved(t, large())}
	for _, z := range []Size{{Width: 100, Height: 170}, {Width: 160, Height: 230}, {Width: 175, Height: 170}, {Width: 176, Height: 244},
		{Width: 240, Height: 210}, {Width: 200, Height: 200}, {Width: 248, Height: 178}, {Width: 250, Height: 216},
		{Width: 400, Height: 277}, {Width: 574, Height: 821}} {
		for _, s := range silos {
			for i, v := range slices.Concat(All(), All()) {
				z.FirstAngle = i >= len(All())
				d := v.Draw(s, z)
				if (d.Width-z.Width).Abs() > 1e-6 || (d.Height-z.Height).Abs() > 1e-6 {
					t.Errorf("%v × %v: %s is %v × %v", z.Width, z.Height, v.ID, d.Width, d.Height)
				}
				if err := render.Check(d); err != nil {
					t.Errorf("%v × %v: %s: %v", z.Width, z.Height, v.ID, err)
				}
				for _, o := range render.Overlaps(d) {
					t.Errorf("%v × %v: %s: %s", z.Width, z.Height, v.ID, o)
				}
				none := false
				for _, w := range d.Texts {
					none = none || w.Words == noScale
				}
				if small := z.Width < 176 || z.Height < 176; small && !none {
					t.Errorf("%v × %v: %s is reduced and does not say so", z.Width, z.Height, v.ID)
				}
			}
		}
	}
}

// The same silo gives the same drawing.
func TestSameAgain(t *testing.T) {
	for _, v := range All() {
		one, two := v.Draw(solved(t, cove()), sizes["A4"]), v.Draw(solved(t, cove()), sizes["A4"])
		if diff := cmp.Diff(one, two); diff != "" {
			t.Errorf("%s: %s", v.ID, diff)
		}
	}
	if diff := cmp.Diff(Steps(solved(t, cove())), Steps(solved(t, cove()))); diff != "" {
		t.Error(diff)
	}
}

// Drums of many shapes, each with its own lattice, joints and places round the
// wall, on a sheet of each size.
func TestManyDrumsAreClean(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 14))
	between := func(a, b float64) length { return length(a + (b-a)*r.Float64()) }
	runs := 60
	if n, err := strconv.Atoi(os.Getenv("SILO_DRUMS")); err == nil {
		runs = n
	}
	drawn := 0
	for i := range runs {
		u := measure.Unit(i % 2)
		across := between(290, 1200)
		high := across * between(1.1, 1.8)
		from := high * between(0.6, 0.75)
		d := geometry.Drum{Label: "drum " + strconv.Itoa(i), Count: 1, Outside: across, Height: high, Wall: between(2.5, 9),
			FootOutside: across * between(0.9, 0.99), FootHeight: between(15, 60), HeadRecess: between(5, 30),
			Hoops: []geometry.Hoop{{From: high * 0.3, To: high*0.3 + 40, Outside: across + 25}, {From: from, To: from + 40, Outside: across + 25}}}
		s := geometry.DefaultSpec(d, u)
		s.Lattice.Bars = 2 + i%5
		if i%3 == 0 {
			s.Lattice.Edge = geometry.EdgeStraight
		}
		if i%4 == 0 {
			s.Outlet.Joint = geometry.JointGrommet
		}
		if i%5 == 0 {
			s.Inlet.Joint = geometry.JointGrommet
			s.Pipe.Joint = geometry.JointCouplings
		}
		c := float64(across) * math.Pi
		s.Outlet.Round, s.Handle.Round = between(0, c), between(0, c)
		s.Inlet.Round, s.Drain.Round = between(0, c), between(0, c)
		s.Ring.Width = between(18, 45)
		silos, err := geometry.Solve(geometry.Job{Kinds: []geometry.Spec{s}})
		if err != nil {
			continue // cannot be made; the job's own checks say why
		}
		drawn++
		for name, size := range sizes {
			for _, v := range All() {
				d := v.Draw(silos[0], size)
				if err := render.Check(d); err != nil {
					t.Errorf("%d %s %s: %v", i, name, v.ID, err)
				}
				for _, o := range render.Overlaps(d) {
					t.Errorf("%d %s %s: %s", i, name, v.ID, o)
				}
			}
		}
		for _, st := range Steps(silos[0]) {
			if err := render.Check(st.Picture); err != nil {
				t.Errorf("%d %s: %v", i, st.ID, err)
			}
		}
	}
	if drawn < runs/2 {
		t.Errorf("only %d of %d drums could be made", drawn, runs)
	}
}
