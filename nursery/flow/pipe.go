package flow

import (
	"fmt"
	"math"

	"silowright/geometry/measure"
	"silowright/nursery/sea"
)

// Pipe is a length of round pipe running full, with the fittings on it.
type Pipe struct {
	Bore      measure.Length // inside diameter
	Length    measure.Length // along the middle
	Roughness measure.Length // height of the wall's grain, equivalent sand
	K         float64        // sum of the minor losses, on the velocity in this bore
}

// Roughness of walls. Plastic pipe is smooth: 0.0015 mm is what handbooks give
// for drawn tubing and PVC; rubber hose, smoothed, is 0.01 mm (Çengel and
// Cimbala, Fluid Mechanics, table 8-2, from memory). Fouling roughens both.
const (
	PlasticRoughness measure.Length = 0.0015
	HoseRoughness    measure.Length = 0.01
)

// gravity in m/s².
const gravity = sea.Gravity

// Check refuses a pipe that cannot be reckoned with; key names it in the error.
func (p Pipe) Check(key string) error {
	switch {
	case !within(p.Bore.MM(), 1, 2000):
		return fmt.Errorf("%s.bore: %s mm, not a pipe's inside diameter, 1 to 2000 mm; hint: give the bore, not the nominal size", key, p.Bore.Metric())
	case !within(p.Length.MM(), 0, 1e6):
		return fmt.Errorf("%s.length: %s mm, outside what is reckoned, 0 to 1000 m; hint: give the length along the pipe", key, p.Length.Metric())
	case !within(float64(p.Roughness/p.Bore), 0, 0.05):
		return fmt.Errorf("%s.roughness: %s mm, outside the friction equation, 0 to %s mm (0.05 of the bore); hint: plastic pipe is about 0.0015 mm", key, p.Roughness.Metric(), (p.Bore * 0.05).Metric())
	case !within(p.K, 0, 1e6):
		return fmt.Errorf("%s.k: %g, not a sum of minor losses, 0 to 1000000; hint: a sharp entrance is 0.5, an elbow 0.9", key, p.K)
	}
	return nil
}

// PipeLoss is the head p takes from the flow q of w, by Darcy and Weisbach,
// h = (f·L/D + ΣK)·V²/2g, and dh/dq in millimetres per cubic millimetre a
// second, which is never negative. Backward flow takes head backward:
// the loss is odd in q. The pipe must have passed Check.
func PipeLoss(w sea.Water, p Pipe, q measure.Flow) (measure.Length, float64) {
	d, l := p.Bore.Metres(), p.Length.Metres()
	area := math.Pi / 4 * d * d
	v := q.M3S() / area
	nu := w.Kinematic()
	re := v * d / nu
	head, slope := 0.0, 0.0 // m, and m per m/s
	if math.Abs(re) <= laminarEnd {
		// 64/Re put in, so that nothing is divided by a flow of nought
		slope = 32 * nu * l / (gravity * d * d)
		head = slope * v
	} else {
		f, df := Friction(re, float64(p.Roughness/p.Bore))
		head = f * l / d * v * math.Abs(v) / (2 * gravity)
		slope = (2*f + df*re) * l / d * math.Abs(v) / (2 * gravity)
	}
	head += p.K * v * math.Abs(v) / (2 * gravity)
	slope += p.K * math.Abs(v) / gravity
	// m per m/s over m² is s/m²; 1 s/m² is 1e-6 s/mm²
	return measure.Length(head) * measure.Metre, slope / area * 1e-6
}

// Disc is the area of a circle of diameter d.
func Disc(d measure.Length) measure.Area { return d.Times(d) * (math.Pi / 4) }

// within reports lo ≤ x ≤ hi; NaN is never within.
func within(x, lo, hi float64) bool { return x >= lo && x <= hi }
