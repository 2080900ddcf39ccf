package path

import (
	"math"

	"silowright/geometry/measure"
)

// Affine moves points: x' = A·x + C·y + E, y' = B·x + D·y + F.
type Affine struct {
	A, B, C, D float64
	E, F       measure.Length
}

// Translate moves by (x, y).
func Translate(x, y measure.Length) Affine { return Affine{A: 1, D: 1, E: x, F: y} }

// Rotate turns about the origin, counter-clockwise.
func Rotate(a measure.Angle) Affine {
	s, c := a.Sin(), a.Cos()
	return Affine{A: c, B: s, C: -s, D: c}
}

// Scale stretches from the origin.
func Scale(x, y float64) Affine { return Affine{A: x, D: y} }

// Then returns the move that does m first and n after it.
func (m Affine) Then(n Affine) Affine {
	e := n.Apply(Pt(m.E, m.F))
	return Affine{
		A: n.A*m.A + n.C*m.B, B: n.B*m.A + n.D*m.B,
		C: n.A*m.C + n.C*m.D, D: n.B*m.C + n.D*m.D,
		E: e.X, F: e.Y,
	}
}

// Apply moves one point.
func (m Affine) Apply(p Point) Point {
	x, y := float64(p.X), float64(p.Y)
	return Pt(measure.Length(m.A*x+m.C*y)+m.E, measure.Length(m.B*x+m.D*y)+m.F)
}

// round reports whether circles stay circles under m, to a part in 10¹².
func (m Affine) round() bool {
	x, y := m.A*m.A+m.B*m.B, m.C*m.C+m.D*m.D
	eps := 1e-12 * (x + y)
	return math.Abs(x-y) <= eps && math.Abs(m.A*m.C+m.B*m.D) <= eps
}

// Transform returns the path moved by m. Arcs stay arcs where circles stay
// circles and become cubics elsewhere.
func (q Path) Transform(m Affine) Path {
	if !m.round() {
		q = q.Beziers()
	}
	flip := m.A*m.D-m.B*m.C < 0
	out := make(Path, len(q))
	for i, s := range q {
		n := Segment{Kind: s.Kind, To: m.Apply(s.To)}
		switch s.Kind {
		case Arc:
			n.Centre, n.Sweep = m.Apply(s.Centre), s.Sweep
			if flip {
				n.Sweep = -s.Sweep
			}
		case Curve:
			n.C1, n.C2 = m.Apply(s.C1), m.Apply(s.C2)
		}
		out[i] = n
	}
	return out
}

// Beziers returns the path with every arc as cubics of at most 45° with
// handles of 4/3·tan(sweep/4)·r: off by 0.0012 mm at a radius of 285 mm.
func (q Path) Beziers() Path {
	var out Path
	var at Point
	for _, s := range q {
		if s.Kind != Arc {
			out = append(out, s)
			at = s.To
			continue
		}
		n := math.Max(1, math.Ceil(math.Abs(float64(s.Sweep))/(math.Pi/4)-1e-9))
		st := step{s, at}
		k := measure.Length(4.0 / 3 * math.Tan(float64(s.Sweep)/n/4))
		from := at
		for i := 1.0; i <= n; i++ {
			to := st.at(i / n)
			if i == n {
				to = s.To
			}
			out.CurveTo(
				Pt(from.X-(from.Y-s.Centre.Y)*k, from.Y+(from.X-s.Centre.X)*k),
				Pt(to.X+(to.Y-s.Centre.Y)*k, to.Y-(to.X-s.Centre.X)*k), to)
			from = to
		}
		at = s.To
	}
	return out
}
