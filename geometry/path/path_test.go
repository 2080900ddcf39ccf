package path

import (
	"math"
	"testing"

	"silowright/geometry/measure"
)

func about(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.9g, want %.9g ± %g", what, got, want, tol)
	}
}

func TestCircle(t *testing.T) {
	c := Circle(Pt(10, -4), 25)
	about(t, "area πr²", float64(c.Area()), math.Pi*625, 1e-9)
	about(t, "length 2πr", float64(c.Length()), 50*math.Pi, 1e-9)
	b := c.Bounds()
	about(t, "left", float64(b.Min.X), -15, 1e-9)
	about(t, "top", float64(b.Max.Y), 21, 1e-9)
}

// A circle of 285 mm as cubics of 45° is off by 0.0012 mm at most (the
// approximation's known error, 4.2e-6 of the radius).
func TestBeziersKeepTheRadius(t *testing.T) {
	for _, r := range []float64{10, 285, 600} {
		for _, chain := range Circle(Pt(0, 0), measure.Length(r)).Beziers().Flatten(0.0005) {
			for _, p := range chain {
				if off := math.Abs(math.Hypot(float64(p.X), float64(p.Y)) - r); off > 4.3e-6*r+0.0006 {
					t.Fatalf("radius %v: off by %v mm", r, off)
				}
			}
		}
	}
}

// The closed forms against chains of short chords.
func TestAreaAndLengthAgainstChords(t *testing.T) {
	var p Path
	p.MoveTo(Pt(0, 0))
	p.LineTo(Pt(100, 10))
	p.CurveTo(Pt(140, 40), Pt(60, 90), Pt(120, 130))
	p.ArcTo(Pt(80, 130), 2.4)
	p.CurveTo(Pt(-30, 190), Pt(-60, 60), Pt(-20, 30))
	p.ClosePath()
	area, length := 0.0, 0.0
	box := Box{Pt(1e9, 1e9), Pt(-1e9, -1e9)}
	for _, chain := range p.Flatten(1e-6) {
		for i := 1; i < len(chain); i++ {
			a, b := chain[i-1], chain[i]
			area += float64(a.X*b.Y-b.X*a.Y) / 2
			length += math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y))
			box.Min = Pt(min(box.Min.X, b.X), min(box.Min.Y, b.Y))
			box.Max = Pt(max(box.Max.X, b.X), max(box.Max.Y, b.Y))
		}
	}
	about(t, "area", float64(p.Area()), area, 1e-3)
	about(t, "length", float64(p.Length()), length, 1e-3)
	b := p.Bounds()
	about(t, "left", float64(b.Min.X), float64(box.Min.X), 1e-5)
	about(t, "right", float64(b.Max.X), float64(box.Max.X), 1e-5)
	about(t, "top", float64(b.Max.Y), float64(box.Max.Y), 1e-5)
}

func TestTransforms(t *testing.T) {
	p := Circle(Pt(30, 10), 12)
	for name, m := range map[string]Affine{
		"turn": Rotate(0.7), "shift": Translate(4, -9), "mirror": Scale(-1, 1), "both": Rotate(1).Then(Translate(3, 3)),
	} {
		q := p.Transform(m)
		about(t, name+" area", math.Abs(float64(q.Area())), math.Pi*144, 1e-9)
		if q[1].Kind != Arc {
			t.Errorf("%s: the arc became a %v", name, q[1].Kind)
		}
	}
	// twice as wide and three times as high: six times the area, as cubics
	q := p.Transform(Scale(2, 3))
	about(t, "stretched area", float64(q.Area()), 6*math.Pi*144, 0.05)
}

func FuzzArc(f *testing.F) {
	f.Add(1.0, 2.0, 30.0, 1.5)
	f.Add(0.0, 0.0, 1e4, -6.2)
	f.Fuzz(func(t *testing.T, x, y, r, sweep float64) {
		if !(math.Abs(x) < 1e5 && math.Abs(y) < 1e5 && r > 0.01 && r < 1e5 && math.Abs(sweep) < 6.3) {
			t.Skip()
		}
		var p Path
		p.MoveTo(Pt(measure.Length(x+r), measure.Length(y)))
		p.ArcTo(Pt(measure.Length(x), measure.Length(y)), measure.Angle(sweep))
		if !p.Finite() || !p.Beziers().Finite() {
			t.Fatal("not finite")
		}
		b, c := p.Bounds(), p.Beziers().Bounds()
		if math.Abs(float64(b.Max.Y-c.Max.Y)) > 1e-5*r+1e-6 || math.Abs(float64(b.Min.X-c.Min.X)) > 1e-5*r+1e-6 {
			t.Fatalf("box %v of the arc, %v of its cubics", b, c)
		}
	})
}
