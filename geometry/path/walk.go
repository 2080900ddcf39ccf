package path

import (
	"math"

	"silowright/geometry/measure"
)

// step is one drawn segment with the point it begins at.
type step struct {
	Segment
	from Point
}

// steps returns the drawn segments (no moves), closings as lines.
func (q Path) steps() []step {
	var out []step
	var at Point
	for _, s := range q {
		switch s.Kind {
		case Move:
		case Close:
			out = append(out, step{Segment{Kind: Line, To: s.To}, at})
		default:
			out = append(out, step{s, at})
		}
		at = s.To
	}
	return out
}

// Area is the area enclosed by the path's closed outlines, counter-clockwise
// positive, by Green's theorem: exact for lines, arcs and cubics. Outlines
// inside others count by their own direction.
func (q Path) Area() measure.Area {
	sum := 0.0
	for _, s := range q.steps() {
		x0, y0, x1, y1 := float64(s.from.X), float64(s.from.Y), float64(s.To.X), float64(s.To.Y)
		chord := (x0*y1 - x1*y0) / 2
		switch s.Kind {
		case Arc:
			// the segment between chord and arc: ½r²(sweep − sin sweep)
			r2 := sq(float64(s.from.X-s.Centre.X)) + sq(float64(s.from.Y-s.Centre.Y))
			sum += chord + r2/2*(float64(s.Sweep)-math.Sin(float64(s.Sweep)))
		case Curve:
			a, b, c, d := s.from, s.C1, s.C2, s.To
			sum += float64(3*(cross(a, b)*2+cross(a, c)+cross(b, c)+cross(b, d)+2*cross(c, d))+cross(a, d)) / 20
		default:
			sum += chord
		}
	}
	return measure.Area(sum)
}

func sq(x float64) float64 { return x * x }

func cross(a, b Point) measure.Length { return a.X*b.Y - a.Y*b.X }

// Length is the length drawn; cubics by 16-point chords refined until they
// agree to a micrometre.
func (q Path) Length() measure.Length {
	var sum measure.Length
	for _, s := range q.steps() {
		switch s.Kind {
		case Arc:
			sum += dist(s.from, s.Centre) * measure.Length(math.Abs(float64(s.Sweep)))
		case Curve:
			last := measure.Length(-1)
			for n := 16; n <= 4096; n *= 2 {
				l := s.chords(n)
				if (l - last).Abs() < 1e-3 {
					last = l
					break
				}
				last = l
			}
			sum += last
		default:
			sum += dist(s.from, s.To)
		}
	}
	return sum
}

// chords is the length of a curve's n chords.
func (s step) chords(n int) measure.Length {
	var sum measure.Length
	at := s.from
	for i := 1; i <= n; i++ {
		p := s.at(float64(i) / float64(n))
		sum += dist(at, p)
		at = p
	}
	return sum
}

// at is the point a fraction t along the segment.
func (s step) at(t float64) Point {
	switch s.Kind {
	case Arc:
		sin, cos := math.Sincos(float64(s.Sweep) * t)
		dx, dy := s.from.X-s.Centre.X, s.from.Y-s.Centre.Y
		return Pt(s.Centre.X+dx*measure.Length(cos)-dy*measure.Length(sin), s.Centre.Y+dx*measure.Length(sin)+dy*measure.Length(cos))
	case Curve:
		u := 1 - t
		b0, b1, b2, b3 := measure.Length(u*u*u), measure.Length(3*u*u*t), measure.Length(3*u*t*t), measure.Length(t*t*t)
		return Pt(b0*s.from.X+b1*s.C1.X+b2*s.C2.X+b3*s.To.X, b0*s.from.Y+b1*s.C1.Y+b2*s.C2.Y+b3*s.To.Y)
	}
	k := measure.Length(t)
	return Pt(s.from.X+(s.To.X-s.from.X)*k, s.from.Y+(s.To.Y-s.from.Y)*k)
}

func dist(a, b Point) measure.Length {
	return measure.Length(math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y)))
}

// Bounds is the smallest upright box round the path, exact for arcs and
// cubics; the zero Box for an empty path.
func (q Path) Bounds() Box {
	var b Box
	first := true
	grow := func(p Point) {
		if first {
			b, first = Box{p, p}, false
			return
		}
		b.Min = Pt(min(b.Min.X, p.X), min(b.Min.Y, p.Y))
		b.Max = Pt(max(b.Max.X, p.X), max(b.Max.Y, p.Y))
	}
	for _, s := range q {
		grow(s.To)
	}
	for _, s := range q.steps() {
		for _, t := range s.turns() {
			grow(s.at(t))
		}
	}
	return b
}

// turns are the fractions at which the segment runs level or upright.
func (s step) turns() []float64 {
	var out []float64
	add := func(t float64) {
		if t > 0 && t < 1 {
			out = append(out, t)
		}
	}
	switch s.Kind {
	case Arc:
		start := math.Atan2(float64(s.from.Y-s.Centre.Y), float64(s.from.X-s.Centre.X))
		for k := -8; k <= 8; k++ {
			add((float64(k)*math.Pi/2 - start) / float64(s.Sweep))
		}
	case Curve:
		for _, c := range [][4]measure.Length{{s.from.X, s.C1.X, s.C2.X, s.To.X}, {s.from.Y, s.C1.Y, s.C2.Y, s.To.Y}} {
			// derivative/3 = a t² + b t + c
			a := float64(c[3] - 3*c[2] + 3*c[1] - c[0])
			b := float64(2 * (c[2] - 2*c[1] + c[0]))
			d := float64(c[1] - c[0])
			// The form that does not subtract like from like: where rounding
			// leaves a tiny a, the usual one loses the root that counts.
			if disc := b*b - 4*a*d; disc >= 0 {
				q := -(b + math.Copysign(math.Sqrt(disc), b)) / 2
				add(q / a)
				add(d / q)
			}
		}
	}
	return out
}

// Flatten returns the path's outlines as chains of points no further than tol
// from it; tol must be positive.
func (q Path) Flatten(tol measure.Length) [][]Point {
	var out [][]Point
	var chain []Point
	var at Point
	for _, s := range q {
		switch s.Kind {
		case Move:
			if len(chain) > 1 {
				out = append(out, chain)
			}
			chain = []Point{s.To}
		case Line, Close:
			chain = append(chain, s.To)
		default:
			st := step{s, at}
			n := st.pieces(tol)
			for i := 1; i <= n; i++ {
				chain = append(chain, st.at(float64(i)/float64(n)))
			}
		}
		at = s.To
	}
	if len(chain) > 1 {
		out = append(out, chain)
	}
	return out
}

// pieces is how many chords keep within tol of an arc or a cubic.
func (s step) pieces(tol measure.Length) int {
	n := 1.0
	if s.Kind == Arc {
		r := float64(dist(s.from, s.Centre))
		if r > float64(tol) {
			n = math.Abs(float64(s.Sweep)) / (2 * math.Acos(1-float64(tol)/r))
		}
	} else {
		// chord error ≤ h²/8·max|second derivative|
		d := math.Max(float64(dist(Pt(s.from.X+s.C2.X, s.from.Y+s.C2.Y), Pt(2*s.C1.X, 2*s.C1.Y))),
			float64(dist(Pt(s.C1.X+s.To.X, s.C1.Y+s.To.Y), Pt(2*s.C2.X, 2*s.C2.Y))))
		n = math.Sqrt(6 * d / (8 * float64(tol)))
	}
	return int(math.Max(1, math.Min(1e5, math.Ceil(n))))
}

// Finite reports whether every number of the path is finite.
func (q Path) Finite() bool {
	for _, s := range q {
		for _, p := range []Point{s.To, s.Centre, s.C1, s.C2} {
			if !p.X.Finite() || !p.Y.Finite() {
				return false
			}
		}
		if !measure.Length(s.Sweep).Finite() {
			return false
		}
	}
	return true
}
