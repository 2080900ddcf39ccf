package nursery

import (
	"math"
	"sort"

	"silowright/geometry/measure"
	"silowright/nursery/flow"
)

// headTable is a silo's head by its flow, tabled so that a manifold can ask it
// a million times. Between nodes it runs as a cubic through both ends with
// their slopes, held so that it never falls; steps are halved until height and
// slope in the middle fit the silo's own within tableError. Where another
// control takes over between two nodes it may be half a millimetre out, far less
// than the relations themselves. Past the last node it goes on straight.
type headTable struct{ q, h, m []float64 } // mm³/s, mm, mm per mm³/s

const (
	tableError = 0.1 // mm, and a ten-thousandth of the head
	tableFrom  = measure.LitrePerMinute / 10
	tableNodes = 16 // from tableFrom to flow.MostFlow before any is halved
)

// tableOf tables the head of a silo.
func tableOf(s flow.InWater) *headTable {
	t := &headTable{}
	add := func(q float64) (h, m float64) {
		hl, m := s.Head(measure.Flow(q))
		return float64(hl), m
	}
	push := func(q, h, m float64) { t.q, t.h, t.m = append(t.q, q), append(t.h, h), append(t.m, m) }
	var halve func(q0, h0, m0, q1, h1, m1 float64)
	halve = func(q0, h0, m0, q1, h1, m1 float64) {
		q := (q0 + q1) / 2
		h, m := add(q)
		got, slope := hermite(q, q0, h0, m0, q1, h1, m1)
		off := max(math.Abs(got-h), math.Abs(slope-m)*(q1-q0)/8)
		if off > tableError+1e-4*math.Abs(h) && q1-q0 > 1e-4*q1+10 {
			halve(q0, h0, m0, q, h, m)
			halve(q, h, m, q1, h1, m1)
			return
		}
		push(q, h, m)
		push(q1, h1, m1)
	}
	q0 := 0.0
	h0, _ := add(0)
	q1 := float64(tableFrom)
	h1, m1 := add(q1)
	m0 := (h1 - h0) / q1 // the level's own slope has no bound at no flow
	push(q0, h0, m0)
	ratio := math.Pow(float64(flow.MostFlow/tableFrom), 1.0/(tableNodes-1))
	for {
		halve(q0, h0, m0, q1, h1, m1)
		if q1 >= float64(flow.MostFlow)*0.999 {
			break
		}
		q0, h0, m0 = q1, h1, m1
		q1 *= ratio
		h1, m1 = add(q1)
	}
	return t
}

// Head is the head that the silo asks at the outer end of its inlet above its
// outlet's invert, and its slope.
func (t *headTable) Head(q measure.Flow) (measure.Length, float64) {
	x, n := float64(q), len(t.q)
	switch {
	case x <= 0:
		return measure.Length(t.h[0]), t.m[0]
	case x >= t.q[n-1]:
		m := math.Max(t.m[n-1], 0)
		return measure.Length(t.h[n-1] + m*(x-t.q[n-1])), m
	}
	i := sort.SearchFloat64s(t.q, x)
	h, m := hermite(x, t.q[i-1], t.h[i-1], t.m[i-1], t.q[i], t.h[i], t.m[i])
	return measure.Length(h), m
}

// hermite is the cubic through two points with their slopes, each held from 0
// to three times the chord's so that it doesn't turn (Fritsch & Carlson, SIAM
// J. Numer. Anal. 17, 1980).
func hermite(x, x0, y0, m0, x1, y1, m1 float64) (y, slope float64) {
	d := x1 - x0
	chord := (y1 - y0) / d
	m0, m1 = math.Min(math.Max(m0, 0), 3*chord), math.Min(math.Max(m1, 0), 3*chord)
	t := (x - x0) / d
	a, b := m0*d, m1*d
	c2, c3 := 3*(y1-y0)-2*a-b, a+b-2*(y1-y0)
	return y0 + t*(a+t*(c2+t*c3)), math.Max((a+t*(2*c2+t*3*c3))/d, 0)
}
