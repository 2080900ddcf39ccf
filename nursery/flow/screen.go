package flow

import (
	"fmt"
	"math"

	"silowright/geometry/measure"
	"silowright/nursery/sea"
)

// Screen is a mesh or screen across the water's way.
type Screen struct {
	Opening measure.Length // between strands
	Open    float64        // open area over all area when clean
	Fouled  float64        // fraction of the open area that is lost
}

// The range of open fractions in which both relations for screens are used
// and blended.
const (
	blendFrom = 0.80
	sparse    = 0.85
)

// The factors of Loss and screenK.
const (
	fineStrand   = 22
	wovenOnce    = 1.3
	blevinsOnce  = 0.95
	blevinsTwice = 0.2
)

// Check refuses a screen that cannot be reckoned with; key names it.
func (s Screen) Check(key string) error {
	switch {
	case !within(s.Opening.MM(), 0.01, 100):
		return fmt.Errorf("%s.opening: %s mm, not a screen's, 0.01 to 100 mm; hint: give the clear width between strands", key, s.Opening.Metric())
	case !within(s.Open, 0.02, 0.98):
		return fmt.Errorf("%s.open_fraction: %g, not a screen's, 0.02 to 0.98; hint: give open area over all area", key, s.Open)
	case !within(s.Fouled, 0, 0.99):
		return fmt.Errorf("%s.fouled: %g, outside what is reckoned, 0 to 0.99; hint: give the fraction of the open area that is lost", key, s.Fouled)
	}
	return nil
}

// strand is the diameter of a strand of the clean square weave, which has
// (opening/pitch)² open.
func (s Screen) strand() float64 { return s.Opening.Metres() * (1/math.Sqrt(s.Open) - 1) }

// open is the open fraction with fouling.
func (s Screen) open() float64 { return s.Open * (1 - s.Fouled) }

// Loss is the head that water coming at v takes through the screen, and its
// slope in millimetres per millimetre a second:
//
//	h = K·V²/2g + 22·ν·V/(α·d·2g)
//
// K goes by the open fraction α, see screenK; the second term, 22/Re with the
// velocity in the openings and the strand's diameter d, is what fine strands
// at slow flow add (Idelchik, Handbook of Hydraulic Resistance, diagram 8-6,
// Re under 50, from memory; up to Re 1000 it is used too, where it lies up to
// a tenth lower). The loss is odd in v and rises with it. It is good to a
// factor of two: clean, it is a small part of a millimetre, and fouling, which
// nobody has measured when it matters, rules. Growth that coats strands is
// taken as openings lost.
func (s Screen) Loss(w sea.Water, v measure.Speed) (measure.Length, float64) {
	a := s.open()
	u := v.MS()
	linear := fineStrand * w.Kinematic() / (a * s.strand()) / (2 * gravity)
	k := screenK(a) / (2 * gravity)
	return metre(k*u*math.Abs(u) + linear*u), 2*k*math.Abs(u) + linear
}

// screenK is K of a screen of round strands at high Re, on the velocity before
// it. From 0.85 open it is Blevins (Applied Fluid Dynamics Handbook, 1984),
// 0.95·(1−α) + 0.2·(1−α)², for Re over 500 on the strand; up to 0.80 Idelchik's for
// woven wire (Handbook of Hydraulic Resistance, diagram 8-6, from memory),
// 1.3·(1−α) + (1/α−1)²; between, the two in proportion. It never rises with
// the open fraction.
func screenK(open float64) float64 {
	c := 1 - open
	blevins := blevinsOnce*c + blevinsTwice*c*c
	idelchik := wovenOnce*c + (1/open-1)*(1/open-1)
	part := math.Min(1, math.Max(0, (open-blendFrom)/(sparse-blendFrom)))
	return part*blevins + (1-part)*idelchik
}
