package charts

import (
	"math"
	"math/rand"
	"strconv"
	"strings"
	"testing"

	"silowright/geometry/path"
	"silowright/render"
)

// scale reads a chart as a person does: by the written values left of the axis
// and the counts below it. It returns the place of a count and a value.
func scale(t *testing.T, d render.Drawing) func(n, v float64) path.Point {
	t.Helper()
	type written struct {
		at    length
		value float64
	}
	var up, across []written
	for _, x := range d.Texts {
		v, err := strconv.ParseFloat(strings.ReplaceAll(x.Words, ",", ""), 64)
		if err != nil {
			continue
		}
		if x.Anchor == render.Right {
			up = append(up, written{x.At.Y + x.Size/2, v}) // the middle of its figures
		} else if x.Anchor == render.Middle {
			across = append(across, written{x.At.X, v})
		}
	}
	if len(up) < 2 || len(across) < 2 {
		t.Fatalf("%d values and %d counts are written", len(up), len(across))
	}
	line := func(w []written, v float64) length {
		a, b := w[0], w[len(w)-1]
		return a.at + (b.at-a.at)*length((v-a.value)/(b.value-a.value))
	}
	return func(n, v float64) path.Point { return path.Pt(line(across, n), line(up, v)) }
}

// stepLine is the chart's line, chain by chain.
func stepLine(d render.Drawing) [][]path.Point {
	var out [][]path.Point
	for _, s := range d.Strokes {
		if s.Layer == render.Outline && len(s.Path) > 2 && s.Path[1].Kind == path.Line {
			out = append(out, s.Path.Flatten(0.01)...)
		}
	}
	return out
}

// Over each count the line stands where the value says, to 0.1 mm, read off
// the chart's own written scale.
func TestLineStandsWhereTheValuesSay(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for range 200 {
		s := Steps{Width: 100 + length(r.Intn(100)), Height: 36 + length(r.Intn(60)), Across: "silos built", Up: "USD for each"}
		size := math.Pow(10, float64(r.Intn(10)-2))
		for n := 1; n <= 2+r.Intn(60); n++ {
			s.Points = append(s.Points, Point{N: n, Value: size * (1 + 0.5*r.Float64() + 2*r.Float64()/float64(n))})
		}
		d := s.Draw()
		if err := render.Check(d); err != nil {
			t.Fatal(err)
		}
		if o := render.Overlaps(d); len(o) > 0 {
			t.Fatal(o[0])
		}
		at := scale(t, d)
		chains := stepLine(d)
		top := length(0)
		for _, c := range chains {
			for _, q := range c {
				top = max(top, q.Y)
			}
		}
		for _, p := range s.Points {
			want := at(float64(p.N), p.Value)
			found := false
			for _, c := range chains {
				for i := 1; i < len(c); i++ {
					if a, b := c[i-1], c[i]; a.X <= want.X && want.X <= b.X && (a.Y-b.Y).Abs() < 1e-9 {
						found = true
						if (a.Y - want.Y).Abs() > 0.1 {
							t.Fatalf("%d stands at %.2f mm, want %.2f", p.N, float64(a.Y), float64(want.Y))
						}
					}
				}
			}
			if !found && want.Y <= top+0.1 {
				t.Fatalf("no line over %d", p.N)
			}
		}
	}
}

// What stands above the scale is said in words, and the line does not reach
// out of the field for it.
func TestDearFirstPieces(t *testing.T) {
	s := Steps{Width: 150, Height: 50, Up: "USD for each", Mark: 20, MarkSays: "this build"}
	for n := 1; n <= 50; n++ {
		s.Points = append(s.Points, Point{N: n, Value: 100 + 900/float64(n)})
	}
	d := s.Draw()
	all := ""
	for _, x := range d.Texts {
		all += x.Words + "|"
	}
	for _, w := range []string{"off the scale up to ", "1 at 1,000", "this build: 20, 145", "from 100 up"} {
		if !strings.Contains(all, w) {
			t.Errorf("%q is not in %q", w, all)
		}
	}
}

func TestTwentyThousand(t *testing.T) {
	s := Steps{Width: 180, Height: 60, Up: "USD", Across: "silos", Mark: 20000}
	for n := 1; n <= 20000; n++ {
		s.Points = append(s.Points, Point{N: n, Value: 50 + float64(n%10)})
	}
	s.Points[9999].Value = 70 // one spike must not be thinned away
	d := s.Draw()
	at := scale(t, d)
	highest, n := length(0), 0
	for _, c := range stepLine(d) {
		n += len(c)
		for _, q := range c {
			highest = max(highest, q.Y)
		}
	}
	if want := at(1, 70).Y; (highest - want).Abs() > 0.1 {
		t.Errorf("the spike stands at %.2f mm, want %.2f", float64(highest), float64(want))
	}
	if n > 5000 {
		t.Errorf("%d places in the line of a chart 180 mm wide", n)
	}
	if o := render.Overlaps(d); len(o) > 0 {
		t.Error(o[0])
	}
}

func TestChartsOfLittle(t *testing.T) {
	for _, pts := range [][]Point{nil, {{1, 0, ""}}, {{7, 3, "3"}}, {{1, math.NaN(), ""}, {2, math.Inf(1), ""}, {3, -4, ""}, {0, 4, ""}, {4, 1e300, ""}},
		{{1, 5, ""}, {2, 5, ""}}, {{1, 1e15, ""}, {2, 1e-9, ""}}, {{math.MaxInt32, 5, ""}, {1, 6, strings.Repeat("long ", 90)}}, {{3, 2, ""}, {3, 4, ""}}} {
		d := Steps{Width: 10, Height: 10, Points: pts, Mark: 1, Across: strings.Repeat("wide ", 60), Up: strings.Repeat("wide ", 60), MarkSays: strings.Repeat("wide ", 60)}.Draw()
		if err := render.Check(d); err != nil {
			t.Errorf("%v: %v", pts, err)
		}
		if o := render.Overlaps(d); len(o) > 0 {
			t.Errorf("%v: %v", pts, o[0])
		}
	}
}

func TestNice(t *testing.T) {
	for _, c := range []struct{ x, want float64 }{{1, 1}, {1.1, 2}, {2.5, 5}, {5.1, 10}, {10, 10}, {0.3, 0.5}, {1e6 + 1, 2e6}} {
		if got := nice(c.x); math.Abs(got-c.want) > 1e-9*c.want {
			t.Errorf("nice(%v) = %v, want %v", c.x, got, c.want)
		}
	}
	for _, c := range []struct {
		v, step float64
		want    string
	}{{1234567, 1, "1,234,567"}, {0.25, 0.05, "0.25"}, {1000.5, 0.5, "1,000.5"}, {0, 100, "0"}, {999, 1, "999"}} {
		if got := plain(c.v, c.step); got != c.want {
			t.Errorf("plain(%v, %v) = %s, want %s", c.v, c.step, got, c.want)
		}
	}
}
