package path

import (
	"math"
	"math/rand/v2"
	"testing"

	"silowright/geometry/measure"
)

// somePath is a closed outline of n random segments of every kind about at.
func somePath(r *rand.Rand, n int, at Point, size float64) Path {
	pt := func() Point {
		return Pt(at.X+measure.Length(size*(r.Float64()-0.5)), at.Y+measure.Length(size*(r.Float64()-0.5)))
	}
	var p Path
	p.MoveTo(pt())
	for range n {
		switch r.IntN(3) {
		case 0:
			p.LineTo(pt())
		case 1:
			p.ArcTo(pt(), measure.Angle((r.Float64()-0.5)*4*math.Pi))
		default:
			p.CurveTo(pt(), pt(), pt())
		}
	}
	p.ClosePath()
	return p
}

// For any outline: turning, shifting and mirroring keep area and length, and a
// stretch multiplies the area by its factors (theorems of plane geometry).
func TestTransformsOfAnyPath(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	for range 300 {
		p := somePath(r, 1+r.IntN(6), Pt(50, -20), 300)
		area, length := float64(p.Area()), float64(p.Length())
		turn := Rotate(measure.Angle(r.Float64() * 7)).Then(Translate(30, -8))
		about(t, "turned area", float64(p.Transform(turn).Area()), area, 1e-6)
		about(t, "turned length", float64(p.Transform(turn).Length()), length, 0.01)
		about(t, "mirrored area", float64(p.Transform(Scale(-1, 1)).Area()), -area, 1e-6)
		k := 0.3 + 3*r.Float64()
		even := p.Transform(Scale(k, k).Then(Rotate(1)))
		about(t, "scaled area", float64(even.Area())/(k*k), area, 1e-6)
		about(t, "scaled length", float64(even.Length())/k, length, 0.02)
		for i, s := range even {
			if s.Kind != p[i].Kind {
				t.Fatalf("an even scale made a %v of a %v", s.Kind, p[i].Kind)
			}
		}
		// arcs become cubics, each off by at most 4.2e-6 of its radius along
		// its length
		slack := 0.0
		for _, s := range p.steps() {
			if s.Kind == Arc {
				d := float64(dist(s.from, s.Centre))
				slack += 4.3e-6 * d * d * math.Abs(float64(s.Sweep))
			}
		}
		about(t, "stretched area", float64(p.Transform(Scale(k, 2)).Area())/(2*k), area, slack+1e-6)
	}
}

// A move by m and then by n is the move by both.
func TestThen(t *testing.T) {
	m := Rotate(0.4).Then(Scale(2, 3)).Then(Translate(5, 6))
	p := Pt(7, -3)
	q := Translate(5, 6).Apply(Scale(2, 3).Apply(Rotate(0.4).Apply(p)))
	if dist(m.Apply(p), q) > 1e-12 {
		t.Errorf("%v, want %v", m.Apply(p), q)
	}
}

// The box of any outline against a quarter million of its points: none lies
// outside, and each side is touched.
func TestBoundsOfAnyPath(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 2))
	for range 200 {
		holdsTightly(t, somePath(r, 1+r.IntN(4), Pt(0, 0), 200))
	}
}

// A parabola written as a cubic has a third derivative of nothing but
// rounding; its top is still found, wherever it lies: with feet a and c and the
// tangents meeting at b, the top is (ac − b²)/(a − 2b + c) (elementary algebra).
func TestBoundsOfRaisedParabola(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 3))
	for range 20000 {
		far := 5000 * r.Float64()
		pt := func(y float64) Point { return Pt(measure.Length(far+900*r.Float64()), measure.Length(far+y)) }
		a, b, c := pt(100*r.Float64()), pt(200+700*r.Float64()), pt(100*r.Float64())
		third := func(p Point) Point { return Pt(p.X+(b.X-p.X)*2/3, p.Y+(b.Y-p.Y)*2/3) }
		var p Path
		p.MoveTo(a)
		p.CurveTo(third(a), third(c), c)
		p.ClosePath()
		ya, yb, yc := float64(a.Y)-far, float64(b.Y)-far, float64(c.Y)-far
		if top := far + (ya*yc-yb*yb)/(ya-2*yb+yc); math.Abs(float64(p.Bounds().Max.Y)-top) > 1e-6 {
			t.Fatalf("top %v, want %v", p.Bounds().Max.Y, top)
		}
		// two thirds of the triangle of chord and tangents (Archimedes,
		// Quadrature of the Parabola)
		triangle := float64(cross(a, b)+cross(b, c)+cross(c, a)) / 2
		if math.Abs(float64(p.Area())-triangle*2/3) > 1e-3 {
			t.Fatalf("area %v, want %v", p.Area(), triangle*2/3)
		}
	}
}

func holdsTightly(t *testing.T, p Path) {
	t.Helper()
	b := p.Bounds()
	box := Box{p[0].To, p[0].To}
	for _, s := range p.steps() {
		const n = 20000
		for i := range n + 1 {
			q := s.at(float64(i) / n)
			box.Min = Pt(min(box.Min.X, q.X), min(box.Min.Y, q.Y))
			box.Max = Pt(max(box.Max.X, q.X), max(box.Max.Y, q.Y))
		}
	}
	about(t, "left", float64(b.Min.X), float64(box.Min.X), 1e-4)
	about(t, "foot", float64(b.Min.Y), float64(box.Min.Y), 1e-4)
	about(t, "right", float64(b.Max.X), float64(box.Max.X), 1e-4)
	about(t, "top", float64(b.Max.Y), float64(box.Max.Y), 1e-4)
}

// Every chord of a flattened path keeps within the tolerance asked for.
func TestFlattenKeepsItsTolerance(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 4))
	for range 100 {
		tol := measure.Length(math.Pow(10, -3*r.Float64()))
		p := somePath(r, 1, Pt(0, 0), 300)
		p = p[:len(p)-1] // one segment
		s := p.steps()[0]
		chain := p.Flatten(tol)[0]
		n := len(chain) - 1
		for i := range n {
			for k := 1.0; k < 8; k++ {
				q := s.at((float64(i) + k/8) / float64(n))
				if d := toChord(q, chain[i], chain[i+1]); d > tol*1.0001 {
					t.Fatalf("%v mm off its chord, want %v at most", d, tol)
				}
			}
		}
	}
}

// toChord is the distance from q to the straight piece a to b.
func toChord(q, a, b Point) measure.Length {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	k := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		k = math.Max(0, math.Min(1, (float64(q.X-a.X)*dx+float64(q.Y-a.Y)*dy)/l))
	}
	return dist(q, Pt(a.X+measure.Length(k*dx), a.Y+measure.Length(k*dy)))
}

// A number that is not finite is found wherever it stands.
func TestFinite(t *testing.T) {
	bad := measure.Length(math.NaN())
	for i, s := range []Segment{
		{To: Pt(bad, 0)}, {To: Pt(0, bad)}, {Centre: Pt(bad, 0)}, {C1: Pt(0, bad)}, {C2: Pt(bad, 0)},
		{Sweep: measure.Angle(math.Inf(1))}, {To: Pt(measure.Length(math.Inf(-1)), 0)},
	} {
		if (Path{s}).Finite() {
			t.Errorf("%d passes", i)
		}
	}
	if !Circle(Pt(1, 2), 3).Finite() || !(Path{}).Finite() {
		t.Error("a good path does not pass")
	}
}

// Nothing to draw is no trouble.
func TestEmptyPath(t *testing.T) {
	var p Path
	if p.Area() != 0 || p.Length() != 0 || p.Bounds() != (Box{}) || p.Flatten(0.1) != nil || p.Beziers() != nil || len(Polygon()) != 0 {
		t.Error("an empty path has a size")
	}
	dot := Circle(Pt(4, 5), 0)
	if b := dot.Bounds(); b != (Box{Pt(4, 5), Pt(4, 5)}) || dot.Area() != 0 || !dot.Beziers().Finite() {
		t.Errorf("a circle of no radius is %v", b)
	}
}
