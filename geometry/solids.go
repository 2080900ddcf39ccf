package geometry

import (
	"math"

	"silowright/geometry/measure"
)

type (
	volume = measure.Volume
	area   = measure.Area
)

// frustum is the volume of a cone's frustum between end diameters a and b.
func frustum(a, b, h length) volume {
	return volume(math.Pi / 12 * float64(h) * float64(a*a+a*b+b*b))
}

// Sagitta is the height of a circle of radius r above a chord of length c:
// r − √(r² − (c/2)²). A flat face as wide as c leaves this gap on a round
// wall. It is r when the chord is the diameter or more.
func Sagitta(r, c length) length {
	x := float64(r*r - c*c/4)
	if x <= 0 {
		return r
	}
	return r - length(math.Sqrt(x))
}

// ArcOf is the distance round a circle of radius r that a chord of length c
// spans: 2r·asin(c/2r). It is half the circumference when the chord is the
// diameter or more.
func ArcOf(r, c length) length {
	return 2 * r * length(math.Asin(math.Min(1, float64(c/(2*r)))))
}

// ChordOf is the straight distance between two points an arc apart on a
// circle of radius r: 2r·sin(arc/2r).
func ChordOf(r, arc length) length {
	return 2 * r * length(math.Sin(float64(arc/(2*r))))
}

func minLength(a, b length) length { return length(math.Min(float64(a), float64(b))) }
func maxLength(a, b length) length { return length(math.Max(float64(a), float64(b))) }
