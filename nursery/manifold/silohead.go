package manifold

import (
	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/sea"
)

// SiloHead is the head that a silo asks at the end of its hose.
type SiloHead interface {
	// Head is the head above the lateral's Rise at the flow q ≥ 0, and its
	// slope in millimetres per cubic millimetre a second. Head(0) is what
	// stands there at no flow. It must never fall as q rises.
	Head(q measure.Flow) (h measure.Length, slope float64)
}

// Polynomial is a silo's head as Static + Linear·(q/At) + Square·(q/At)²: the
// still level, and what bed and fittings add to it at the flow At.
type Polynomial struct {
	Static, Linear, Square measure.Length
	At                     measure.Flow
}

// Head implements SiloHead.
func (p Polynomial) Head(q measure.Flow) (measure.Length, float64) {
	if p.At <= 0 {
		return p.Static, 0
	}
	t := float64(q / p.At)
	return p.Static + p.Linear*measure.Length(t) + p.Square*measure.Length(t*t),
		(float64(p.Linear) + 2*float64(p.Square)*t) / float64(p.At)
}

// Point is a head at a flow.
type Point struct {
	Flow measure.Flow
	Head measure.Length
}

// DrumSilo is the head that a drum silo asks at the outer end of its inlet; the
// lateral's Rise is then the elevation of its outlet's invert.
type DrumSilo struct {
	Silo  flow.Silo
	Water sea.Water
}

// Head implements SiloHead by flow.Silo.Head.
func (d DrumSilo) Head(q measure.Flow) (measure.Length, float64) { return d.Silo.Head(d.Water, q) }
