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
	want := 2 * math.Log(q/(math.Sqrt(gravity)*math.Pow(d, 2.5)))
	th := root(func(th float64) float64 {
		return 3*math.Log(segment(th)) - math.Log(math.Sin(th)) - want
	}, 1e-6, math.Pi-1e-9)
	depth = d / 2 * (1 - math.Cos(th))
	v := q / (segment(th) * d * d)
	return depth + v*v/(2*gravity), v * v / (gravity * q), depth
}

// segment is the area of a circle's segment of half angle th over the square
// of the diameter; for small angles by its series, where the difference of
// two near-equal numbers would lose all digits.
func segment(th float64) float64 {
	if th < 0.02 {
		return th * th * th / 6 * (1 - th*th/5)
	}
	return (th - math.Sin(th)*math.Cos(th)) / 4
}

// spill is √2g·∫ w(z)·√(head − z) dz over an opening from its lowest point up
// to its height or the head: the flow in m³/s by Torricelli, level by level,
// without a discharge coefficient. It is a weir while the head is below the
// top and an orifice above it, in one piece. w is the width in metres at z
// above the lowest point. z = top/2·(1 − cos t) takes away the square roots
// at both ends, so that the midpoint rule converges fast.
func spill(w func(z float64) float64, height, head float64) float64 {
	if head <= 0 || height <= 0 {
		return 0
	}
	const n = 64
	top := math.Min(height, head)
	sum := 0.0
	for i := range n {
		s, c := math.Sincos((float64(i) + 0.5) * math.Pi / n)
		z := top / 2 * (1 - c)
		sum += w(z) * math.Sqrt(math.Max(0, head-z)) * s
	}
	return math.Sqrt(2*gravity) * sum * top / 2 * math.Pi / n
}
