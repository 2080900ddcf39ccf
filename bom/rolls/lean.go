package rolls

import "math"

// lean is three discs that touch, on a strip between √3/2 and 1 wide: their
// triangle is turned until it fills the width, which makes it shorter.
type lean struct{ turn float64 } // of its base from the strip, radians, to π/6

func leaning(w float64) (pattern, bool) {
	if w < pocket || w >= 1 {
		return nil, false
	}
	return lean{math.Asin(w) - math.Pi/3}, true
}

func (l lean) name() string { return "leaning triangle" }

func (l lean) extent(n int) float64 {
	if n > 3 {
		return math.Inf(1)
	}
	return math.Cos(l.turn)
}

func (l lean) points(n int) []point {
	sin, cos := math.Sincos(l.turn)
	high, along := math.Sincos(l.turn + math.Pi/3)
	return []point{{0, 0}, {cos, sin}, {along, high}}[:n]
}
