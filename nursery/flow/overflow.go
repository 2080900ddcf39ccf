package flow

import (
	"math"

	"silowright/geometry/measure"
)

// crestCd is the discharge coefficient of a weir with critical depth on its
// crest, 1/√3: 1.705 m³/s over 1 m at 1 m of head, the least that weirs give
// (Çengel and Cimbala, Fluid Mechanics, chapter 13, broad crest without loss).
// A sharp crest passes 7 % more (Rehbock, 0.62, from memory).
const crestCd = 0.5773502691896258

// Slot is one handle slot, its ends rounded.
type Slot struct {
	Length measure.Length // round the wall
	Height measure.Length
	Corner measure.Length // radius of the ends, at most half of either side
}

// Flow is what leaves through the slot with water at head above its lowest
// point: a weir as long as the slot is wide at each height, and an orifice
// once its top is under. The slope is in cubic millimetres a second per
// millimetre.
func (s Slot) Flow(head measure.Length) (q measure.Flow, slope float64) {
	l, h, r := s.Length.Metres(), s.Height.Metres(), s.Corner.Metres()
	f, df := spill(func(z float64) float64 {
		if e := r - math.Min(z, h-z); e > 0 { // within a rounded corner
			return l - 2*r + 2*math.Sqrt(math.Max(0, r*r-e*e))
		}
		return l
	}, h, head.Metres())
	return cubic(crestCd * f), crestCd * df * 1e6
}

// rimFlow is what leaves over a level rim of a diameter with water at head
// above it: a weir all the way round; and its slope like Slot.Flow's. A rim out
// of level by as much as the head spills on one side first.
func rimFlow(across, head measure.Length) (q measure.Flow, slope float64) {
	if head <= 0 {
		return 0, 0
	}
	h := head.Metres()
	by := crestCd * math.Sqrt(2*gravity) * math.Pi * across.Metres() * math.Sqrt(h)
	return cubic(by * h * 2 / 3), by * 1e6
}
