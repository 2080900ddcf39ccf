package charts

import (
	"fmt"
	"math"
	"math/rand"
	"strings"
	"testing"

	"silowright/geometry/path"
	"silowright/render"
)

func sound(t *testing.T, name string, d render.Drawing) {
	t.Helper()
	if err := render.Check(d); err != nil {
		t.Errorf("%s: %v", name, err)
	}
	if o := render.Overlaps(d); len(o) > 0 {
		t.Errorf("%s: %s", name, o[0])
	}
	for _, x := range d.Texts {
		if strings.Contains(x.Words, "NaN") || strings.Contains(x.Words, "Inf") {
			t.Errorf("%s: prints %q", name, x.Words)
		}
	}
}

// anyValue is a value now and then out of all bounds.
func anyValue(r *rand.Rand, size float64) float64 {
	switch r.Intn(30) {
	case 0:
		return math.NaN()
	case 1:
		return math.Inf(1 - 2*r.Intn(2))
	case 2:
		return -size
	case 3:
		return 1e300
	}
	return r.Float64() * size
}

func anyName(r *rand.Rand) string {
	return []string{"", "a", "pump", "reaches the rim, 22 gpm (83 L/min)", strings.Repeat("wide ", 40)}[r.Intn(5)]
}

// Whatever is given, words stand clear, nothing leaves the page, no number
// that is none is printed.
func TestAnyChart(t *testing.T) {
	r := rand.New(rand.NewSource(5))
	for i := range 300 {
		size := math.Pow(10, float64(r.Intn(14)-6))
		axis := func() Axis {
			return Axis{Says: anyName(r), Second: anyName(r), Factor: []float64{3.785411784, 1 / 25.4, 0, math.NaN(), 1e-3}[r.Intn(5)]}
		}
		w, h := length(r.Intn(220)), length(r.Intn(120))
		c := Curves{Width: w, Height: h, Across: axis(), Up: axis(), Top: anyValue(r, size)}
		for range r.Intn(4) {
			l := Curve{Name: anyName(r), Layer: render.Outline}
			for range r.Intn(60) {
				l.Points = append(l.Points, XY{anyValue(r, size), anyValue(r, size)})
			}
			c.Lines = append(c.Lines, l)
			c.Levels = append(c.Levels, LevelLine{anyValue(r, size), anyName(r)})
			c.Spots = append(c.Spots, Spot{At: XY{anyValue(r, size), anyValue(r, size)}, Says: anyName(r), Drop: r.Intn(2) == 0})
		}
		sound(t, fmt.Sprint("curves ", i), c.Draw())
		b := Bars{Width: w, Height: h, Across: anyName(r), Up: axis(), Line: anyValue(r, size), LineSays: anyName(r)}
		for n := range r.Intn(90) {
			b.Bars = append(b.Bars, Bar{Name: fmt.Sprint(n + 1), Value: anyValue(r, size), Mark: r.Intn(9) == 0})
		}
		sound(t, fmt.Sprint("bars ", i), b.Draw())
		k := Weeks{Width: w, Height: h, Flow: axis(), Drums: r.Intn(40) - 5, DrumsSay: anyName(r), PeakSays: anyName(r)}
		for n := range r.Intn(90) {
			k.Weeks = append(k.Weeks, Week{n - 3 + r.Intn(2), r.Intn(60) - 4, r.Intn(9) - 1, anyValue(r, size), r.Intn(20) == 0})
		}
		sound(t, fmt.Sprint("weeks ", i), k.Draw())
		g := Ranges{Width: w, Value: axis()}
		for range r.Intn(20) {
			g.Rows = append(g.Rows, Range{anyName(r), anyName(r), anyValue(r, size), anyValue(r, size), r.Intn(3) == 0})
		}
		for range r.Intn(5) {
			g.Marks = append(g.Marks, ValueMark{anyValue(r, size), anyName(r)})
		}
		sound(t, fmt.Sprint("ranges ", i), g.Draw())
	}
}

// read is the place of a value by the written numbers that stand at one edge:
// left or right of the field, or below or above it.
func read(t *testing.T, d render.Drawing, keep func(render.Text) bool, of func(render.Text) length) func(float64) length {
	t.Helper()
	var at []length
	var vs []float64
	for _, x := range d.Texts {
		var v float64
		if _, err := fmt.Sscan(strings.ReplaceAll(x.Words, ",", ""), &v); err == nil && keep(x) {
			at, vs = append(at, of(x)), append(vs, v)
		}
	}
	if len(vs) < 2 {
		t.Fatalf("%d numbers written", len(vs))
	}
	n := len(vs) - 1
	return func(v float64) length { return at[0] + (at[n]-at[0])*length((v-vs[0])/(vs[n]-vs[0])) }
}

func middleY(x render.Text) length { return x.At.Y + x.Size/2 }

func alongX(x render.Text) length { return x.At.X }

// A point of a curve stands where both pairs of written scales say, to 0.1 mm:
// 4 L is 1.0567 US gal, 1 m is 3.2808 ft (NIST SP 811).
func TestCurveIsToScale(t *testing.T) {
	c := Curves{Width: 160, Height: 70, Across: Axis{"Flow, gpm", "Flow, L/min", 3.785411784}, Up: Axis{"Head, ft", "Head, m", 0.3048},
		Lines: []Curve{{"pump", render.Outline, []XY{{0, 22}, {60, 20}, {120, 15}, {180, 6}}}},
		Spots: []Spot{{XY{132, 13.2}, "132 gpm at 13.2 ft", true}}}
	d := c.Draw()
	sound(t, "curve", d)
	var line []path.Point
	for _, s := range d.Strokes {
		if s.Layer == render.Outline && len(s.Path) == 4 && s.Path[1].Kind == path.Line {
			line = s.Path.Flatten(0.01)[0]
		}
	}
	if len(line) != 4 {
		t.Fatal("no curve of four points")
	}
	field := d.Strokes[0].Path.Bounds()
	left := read(t, d, func(x render.Text) bool { return x.Anchor == render.Right && x.At.X < field.Min.X }, middleY)
	right := read(t, d, func(x render.Text) bool { return x.Anchor == render.Left && x.At.X > field.Max.X }, middleY)
	below := read(t, d, func(x render.Text) bool { return x.Anchor == render.Middle && x.At.Y < field.Min.Y }, alongX)
	above := read(t, d, func(x render.Text) bool { return x.Anchor == render.Middle && x.At.Y > field.Max.Y }, alongX)
	for i, p := range c.Lines[0].Points {
		for what, off := range map[string]length{"feet": line[i].Y - left(p.Y), "metres": line[i].Y - right(p.Y*0.3048),
			"gpm": line[i].X - below(p.X), "L/min": line[i].X - above(p.X*3.785411784)} {
			if off.Abs() > 0.1 {
				t.Errorf("point %d is %.2f mm off by the scale of %s", i, float64(off), what)
			}
		}
	}
	if all := fmt.Sprint(d.Texts); !strings.Contains(all, "pump") || !strings.Contains(all, "132 gpm at 13.2 ft") {
		t.Error("the curve or its point has no name")
	}
}

func TestSigned(t *testing.T) {
	for v, want := range map[float64]string{-100: "−100", -1000: "−1,000", 0: "0", 250: "250"} {
		if got := signed(v, 50); got != want {
			t.Errorf("%v is written %s, want %s", v, got, want)
		}
	}
}

// A line is cut where it leaves the field: by hand, from (0, 0) to (10, 20)
// under 15 it ends at 7.5, and one that dips under 15 between 8 and 12 is drawn there only.
func TestCut(t *testing.T) {
	got := cut([]XY{{0, 0}, {10, 20}}, 0, 15)
	if len(got) != 1 || got[0][1] != (XY{7.5, 15}) {
		t.Errorf("cut at %v", got)
	}
	got = cut([]XY{{6, 20}, {10, 10}, {14, 20}, {20, 30}}, 0, 15)
	if len(got) != 1 || len(got[0]) != 3 || got[0][0] != (XY{8, 15}) || got[0][2] != (XY{12, 15}) {
		t.Errorf("cut at %v", got)
	}
	if got = cut([]XY{{0, 20}, {10, -20}}, 0, 10); len(got) != 1 || got[0][0] != (XY{2.5, 10}) || got[0][1] != (XY{5, 0}) {
		t.Errorf("cut at %v", got)
	}
}

// Bars, weeks and ranges stand as tall and as long as their values, read off
// the written scale, to 0.1 mm.
func TestFillsAreToScale(t *testing.T) {
	b := Bars{Width: 170, Height: 45, Up: Axis{Says: "gpm", Second: "L/min", Factor: 3.785411784}, Line: 8.8, LineSays: "mean"}
	for i := range 12 {
		b.Bars = append(b.Bars, Bar{Name: fmt.Sprint(i + 1), Value: 9.5 - 0.13*float64(i)})
	}
	d := b.Draw()
	at := read(t, d, func(x render.Text) bool { return x.Anchor == render.Right }, middleY)
	if len(d.Fills) != 12 {
		t.Fatalf("%d bars", len(d.Fills))
	}
	for i, f := range d.Fills {
		if y := f.Path.Bounds().Max.Y; (y - at(b.Bars[i].Value)).Abs() > 0.1 {
			t.Errorf("bar %d is %.2f mm tall, want %.2f", i+1, float64(y), float64(at(b.Bars[i].Value)))
		}
	}
	g := Ranges{Width: 170, Value: Axis{Says: "mm"}, Rows: []Range{{"screen", "0.5 to 1.4", 0.5, 1.4, true}, {"mesh", "4 to 25", 4, 25, false}}, Marks: []ValueMark{{1.2, "arrives"}}}
	d = g.Draw()
	byRatio := read(t, render.Drawing{Texts: logs(d.Texts)}, func(x render.Text) bool { return x.Anchor == render.Middle }, alongX)
	for i, f := range d.Fills {
		box := f.Path.Bounds()
		if (box.Min.X-byRatio(math.Log(g.Rows[i].From))).Abs() > 0.1 || (box.Max.X-byRatio(math.Log(g.Rows[i].To))).Abs() > 0.1 {
			t.Errorf("range %d from %.2f to %.2f", i, float64(box.Min.X), float64(box.Max.X))
		}
	}
}

// logs are the written numbers as their logarithms.
func logs(in []render.Text) []render.Text {
	var out []render.Text
	for _, x := range in {
		var v float64
		if _, err := fmt.Sscan(x.Words, &v); err == nil && x.Anchor == render.Middle {
			x.Words = fmt.Sprint(math.Log(v))
			out = append(out, x)
		}
	}
	return out
}

// The heavy line stands at the drum silos of each week, the grey of the lower
// field at its flow.
func TestWeeksAreToScale(t *testing.T) {
	w := Weeks{Width: 170, Height: 80, Flow: Axis{Says: "gpm"}, Drums: 20, DrumsSay: "the job's 20"}
	for i := range 30 {
		w.Weeks = append(w.Weeks, Week{i + 1, max(0, i-6), max(0, 8-i), 5 * float64(i+1), i == 29})
	}
	d := w.Draw()
	sound(t, "weeks", d)
	split := length(0)
	for _, x := range d.Texts {
		if x.Words == "gpm" {
			split = x.At.Y
		}
	}
	up := read(t, d, func(x render.Text) bool { return x.Anchor == render.Right && x.At.Y > split }, middleY)
	low := read(t, d, func(x render.Text) bool { return x.Anchor == render.Right && x.At.Y < split }, middleY)
	along := read(t, d, func(x render.Text) bool { return x.Anchor == render.Middle }, alongX)
	check := func(n int, want length, upper bool) {
		for _, s := range d.Strokes {
			if s.Layer != render.Outline || len(s.Path) < 50 {
				continue
			}
			chain := s.Path.Flatten(0.01)[0]
			if chain[0].Y > split != upper {
				continue
			}
			for i := 1; i < len(chain); i++ {
				if x := along(float64(n)); chain[i-1].X <= x && x <= chain[i].X && chain[i-1].Y == chain[i].Y {
					if (chain[i].Y - want).Abs() > 0.1 {
						t.Errorf("week %d at %.2f, want %.2f", n, float64(chain[i].Y), float64(want))
					}
					return
				}
			}
		}
		t.Errorf("no line over week %d", n)
	}
	for _, k := range w.Weeks {
		check(k.N, up(float64(k.Drum)), true)
		check(k.N, low(k.Flow), false)
	}
}
