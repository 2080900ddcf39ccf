package manifold

import (
	"math"
	"sort"
)

// spline runs through points without a swing between them: where the points
// rise or fall so does it (Fritsch & Carlson, "Monotone piecewise cubic
// interpolation", SIAM J. Numer. Anal. 17, 1980, with the harmonic mean of
// Fritsch & Butland 1984 for the slopes). Outside the points it goes on
// straight.
type spline struct {
	x, y, m []float64
	tail    float64 // slope beyond the last point when not 0, else that at it
}

// newSpline wants at least two points with x rising.
func newSpline(x, y []float64) spline {
	n := len(x)
	d := make([]float64, n-1)
	for i := range d {
		d[i] = (y[i+1] - y[i]) / (x[i+1] - x[i])
	}
	m := make([]float64, n)
	m[0], m[n-1] = d[0], d[n-2]
	for i := 1; i < n-1; i++ {
		if d[i-1]*d[i] <= 0 {
			continue
		}
		a, b := x[i]-x[i-1], x[i+1]-x[i]
		m[i] = 3 * (a + b) / ((2*b+a)/d[i-1] + (b+2*a)/d[i])
	}
	if n > 2 {
		m[0] = endSlope(x[1]-x[0], x[2]-x[1], d[0], d[1])
		m[n-1] = endSlope(x[n-1]-x[n-2], x[n-2]-x[n-3], d[n-2], d[n-3])
	}
	return spline{x: x, y: y, m: m}
}

// endSlope is the slope at an end of a parabola through the last three points,
// held to the sign and to three times the slope of the last chord.
func endSlope(h0, h1, d0, d1 float64) float64 {
	m := ((2*h0+h1)*d0 - h0*d1) / (h0 + h1)
	switch {
	case m*d0 <= 0:
		return 0
	case math.Abs(m) > 3*math.Abs(d0):
		return 3 * d0
	}
	return m
}

func (s *spline) at(x float64) (y, slope float64) {
	n := len(s.x)
	switch {
	case x <= s.x[0]:
		return s.y[0] + s.m[0]*(x-s.x[0]), s.m[0]
	case x >= s.x[n-1] && s.tail != 0:
		return s.y[n-1] + s.tail*(x-s.x[n-1]), s.tail
	case x >= s.x[n-1]:
		return s.y[n-1] + s.m[n-1]*(x-s.x[n-1]), s.m[n-1]
	}
	i := sort.SearchFloat64s(s.x, x) - 1
	h := s.x[i+1] - s.x[i]
	t := (x - s.x[i]) / h
	d := (s.y[i+1] - s.y[i]) / h
	// Newton's form of the cubic, which keeps the ends exact.
	c2 := 3*d - 2*s.m[i] - s.m[i+1]
	c3 := s.m[i] + s.m[i+1] - 2*d
	y = s.y[i] + h*t*(s.m[i]+t*(c2+t*c3))
	return y, s.m[i] + t*(2*c2+3*t*c3)
}
