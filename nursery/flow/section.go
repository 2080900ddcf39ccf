package flow

import "math"

// critical returns the least energy with which q m³/s can run in a round pipe
// of bore d metres, depth + V²/2g above the invert, in metres, and its slope
// de/dq in s/m². The depth at which it does is the critical one: Q²T = gA³
// (Çengel and Cimbala, Fluid Mechanics, chapter 13). As the pipe fills the
// energy runs towards d + V²/2g of the full bore.
//
// The depth is d/2·(1 − cos θ), the area d²/4·(θ − sin θ·cos θ), the width
// d·sin θ. The energy is stationary at the critical depth, so it is exact to
// the square of the small error of θ, and its slope is that at a fixed depth.
func critical(q, d float64) (e, slope, depth float64) {
	if q <= 0 || d <= 0 {
		return 0, 0, 0
	}
	unit := q / (math.Sqrt(gravity) * math.Pow(d, 2.5))
	want := 2 * math.Log(unit)
	// First guess: depth over bore about √unit, as it is for a half full pipe.
	guess := math.Acos(1 - 2*math.Min(0.95, math.Sqrt(unit)))
	th := newton(func(th float64) (float64, float64) {
		sin, cos := math.Sincos(th)
		a := segment(th, sin, cos)
		return 3*math.Log(a) - math.Log(sin) - want, 1.5*sin*sin/a - cos/sin
	}, 1e-6, math.Pi-1e-9, guess, 1e-9)
	sin, cos := math.Sincos(th)
	depth = d / 2 * (1 - cos)
	v := q / (segment(th, sin, cos) * d * d)
	return depth + v*v/(2*gravity), v * v / (gravity * q), depth
}

// segment is the area of a circle's segment of half angle th over the square
// of the diameter; for small angles by its series, where the difference of
// two near-equal numbers would lose all digits.
func segment(th, sin, cos float64) float64 {
	if th < 0.02 {
		return th * th * th / 6 * (1 - th*th/5)
	}
	return (th - sin*cos) / 4
}

// The nodes of the midpoint rule on 0 to π, by their cosine and sine.
const nodes = 64

var nodeCos, nodeSin = func() (c, s [nodes]float64) {
	for i := range c {
		s[i], c[i] = math.Sincos((float64(i) + 0.5) * math.Pi / nodes)
	}
	return c, s
}()

// spill is √2g·∫ w(z)·√(head − z) dz over an opening from its lowest point up
// to its height or the head: the flow in m³/s by Torricelli, level by level,
// without a discharge coefficient; and its slope by the head. It is a weir
// while the head is below the top and an orifice above it, in one piece. w is
// the width in metres at z above the lowest point. z = top/2·(1 − cos t) takes
// away the square roots at both ends, so that the midpoint rule converges fast.
func spill(w func(z float64) float64, height, head float64) (q, slope float64) {
	if head <= 0 || height <= 0 {
		return 0, 0
	}
	top := math.Min(height, head)
	for i := range nodes {
		z := top / 2 * (1 - nodeCos[i])
		v := math.Sqrt(math.Max(1e-30, head-z))
		a := w(z) * nodeSin[i]
		q += a * v
		slope += a / (2 * v)
	}
	by := math.Sqrt(2*gravity) * top / 2 * math.Pi / nodes
	return q * by, slope * by
}
