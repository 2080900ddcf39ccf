package geometry

import (
	"math"

	"silowright/geometry/measure"
)

// OutsideFromCircumference is the diameter of a round wall whose tape reading
// is c.
func OutsideFromCircumference(c measure.Length) measure.Length { return c / math.Pi }

// Circumference is the tape's reading round the plain wall.
func (d Drum) Circumference() length { return math.Pi * d.Outside }

// Bore is the inside diameter of the plain wall.
func (d Drum) Bore() length { return d.Outside - 2*d.Wall }

// FootInside is the inside diameter where the drum stands.
func (d Drum) FootInside() length { return d.FootOutside - 2*d.Wall }

// insideAt is the inside diameter at a height above the foot, hoops left out:
// the foot's taper, then the bore.
func (d Drum) insideAt(z length) length {
	if z >= d.FootHeight {
		return d.Bore()
	}
	if z < 0 {
		z = 0
	}
	return d.FootInside() + (d.Bore()-d.FootInside())*z/d.FootHeight
}

// topHoop is the uppermost hoop; the drum is cut right under it.
func (d Drum) topHoop() Hoop { return d.Hoops[len(d.Hoops)-1] }
