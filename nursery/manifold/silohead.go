package manifold

import "silowright/geometry/measure"

// SiloHead is the head that a silo asks at the end of its hose.
type SiloHead interface {
	// Head is the head above the lateral's Rise at the flow q ≥ 0, and its
	// slope in millimetres per cubic millimetre a second. Head(0) is what
	// stands there at no flow. It must never fall as q rises.
	Head(q measure.Flow) (h measure.Length, slope float64)
}

// Point is a head at a flow.
type Point struct {
	Flow measure.Flow
	Head measure.Length
}
