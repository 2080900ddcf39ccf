package manifold

import "silowright/geometry/measure"

// polynomial is a silo's head as static + linear·(q/at) + square·(q/at)²: the
// still level, and what bed and fittings add to it at the flow at.
type polynomial struct {
	static, linear, square measure.Length
	at                     measure.Flow
}

// Head implements SiloHead.
func (p polynomial) Head(q measure.Flow) (measure.Length, float64) {
	if p.at <= 0 {
		return p.static, 0
	}
	t := float64(q / p.at)
	return p.static + p.linear*measure.Length(t) + p.square*measure.Length(t*t),
		(float64(p.linear) + 2*float64(p.square)*t) / float64(p.at)
}
