package manifold

import (
	"fmt"

	"silowright/geometry/measure"
)

// Curve is a pump's head by its flow. It never rises with the flow. The zero
// Curve is no curve; make one with CurveByPoints, CurveByDuty or Estimate.
type Curve struct {
	kind  curveKind
	s     spline
	h0    float64 // head at no flow, m
	c     float64 // by duty: fall per (m³/s)²; estimate: m⁴/s, Q·H
	most  float64 // by points: the last point's flow, m³/s
	ratio float64 // speed against that of the curve given
}

type curveKind int

const (
	noCurve curveKind = iota
	byPoints
	byDuty
	byPower
)

// CurveByPoints is a pump's curve by two or more points off its maker's sheet,
// flow rising and head not rising, interpolated without a swing. Before the
// first point and beyond the last it goes on straight; what is solved beyond
// the last says so. A curve that climbs before it falls is refused, for two
// flows would share one head. An error names the point.
func CurveByPoints(points []Point) (Curve, error) {
	x, y, err := pointsSI("pump.points", points)
	if err != nil {
		return Curve{}, err
	}
	for i := range y {
		if i > 0 && y[i] > y[i-1] {
			return Curve{}, fmt.Errorf("pump.points.%d.head: %s, more than at a smaller flow; hint: leave out the points where the curve climbs",
				i+1, points[i].Head.Both(measure.UnitMM))
		}
	}
	if y[0] <= 0 || y[len(y)-1] < 0 || y[len(y)-1] == y[0] {
		return Curve{}, fmt.Errorf("pump.points: from %s to %s of head, not a curve that falls from over 0 and not under 0; hint: give flow and head off the maker's curve",
			points[0].Head.Both(measure.UnitMM), points[len(y)-1].Head.Both(measure.UnitMM))
	}
	s := newSpline(x, y)
	if n := len(x); s.m[n-1] > -1e-3*y[0]/x[n-1] {
		// A curve that ends level would never run out: go on by its mean fall.
		s.tail = (y[n-1] - y[0]) / (x[n-1] - x[0])
	}
	c := Curve{kind: byPoints, s: s, most: x[len(x)-1], ratio: 1}
	c.h0, _ = s.at(0)
	return c, nil
}

// CurveByDuty is the parabola H = H₀ − (H₀ − H₁)(Q/Q₁)² through the shut-off
// head H₀ and one duty point, a usual stand-in for a centrifugal pump's curve
// when no more is known (common practice, no source).
func CurveByDuty(shutOff measure.Length, duty Point) (Curve, error) {
	h0, q, h := shutOff.Metres(), duty.Flow.M3S(), duty.Head.Metres()
	switch {
	case !within(h0, 1e-3, maxHead):
		return Curve{}, badHead("pump.shut_off", shutOff)
	case !within(q, minFlow, maxFlow):
		return Curve{}, badFlow("pump.duty.flow", duty.Flow)
	case !(h >= 0 && h < h0*(1-1e-9)):
		return Curve{}, fmt.Errorf("pump.duty.head: %s, not under the shut-off head of %s; hint: the head at no flow is the highest",
			duty.Head.Both(measure.UnitMM), shutOff.Both(measure.UnitMM))
	}
	return Curve{kind: byDuty, h0: h0, c: (h0 - h) / (q * q), ratio: 1}, nil
}

// Estimate is a stand-in from one line on a name plate: the power times the
// efficiency, both taken for constant, so that Q·H = ηP/(ρg) (Çengel & Cimbala,
// chapter 14), and never more head than shutOff. It is a guess good for a
// first look only: a pump is picked and an energy bill reckoned by its curve.
func Estimate(power measure.Power, efficiency float64, density measure.Density, shutOff measure.Length) (Curve, error) {
	switch {
	case !within(float64(power), 1, 1e7):
		return Curve{}, fmt.Errorf("pump.power: %s, not from 1 W to 10 MW; hint: the motor's output off its plate", power.Both(measure.UnitMM))
	case !within(efficiency, 0.01, 1):
		return Curve{}, fmt.Errorf("pump.efficiency: %s, not a fraction from 0.01 to 1; hint: 0.65 is a fair pump", number(efficiency))
	case !within(float64(density), 500, 2000):
		return Curve{}, badDensity(density)
	case !within(shutOff.Metres(), 0.1, maxHead):
		return Curve{}, badHead("pump.shut_off", shutOff)
	}
	c := efficiency * float64(power) / (float64(density) * gravity)
	return Curve{kind: byPower, h0: shutOff.Metres(), c: c, ratio: 1}, nil
}

// Known reports whether the curve holds anything.
func (c Curve) Known() bool { return c.kind != noCurve }

// Estimated reports whether the curve is the guess of Estimate.
func (c Curve) Estimated() bool { return c.kind == byPower }

// Head is the head at the flow q; under 0 where the pump would hold the flow
// back.
func (c Curve) Head(q measure.Flow) measure.Length {
	if c.kind == noCurve {
		return 0
	}
	h, _ := c.at(q.M3S())
	return headOf(h)
}

// Beyond reports whether q lies past the last point that the curve was given.
func (c Curve) Beyond(q measure.Flow) bool {
	return c.kind == byPoints && q.M3S() > c.most*c.ratio*(1+1e-9)
}

// at is the head in m at q in m³/s, with its slope, at the curve's speed.
func (c *Curve) at(q float64) (h, slope float64) {
	h, slope = c.full(q / c.ratio)
	return h * c.ratio * c.ratio, slope * c.ratio
}

func (c *Curve) full(q float64) (h, slope float64) {
	switch {
	case c.kind == noCurve:
		return 0, 0
	case q < 0: // only on the way to an answer
		return c.h0 - 1e3*c.h0*q, -1e3 * c.h0
	case c.kind == byDuty:
		return c.h0 - c.c*q*q, -2 * c.c * q
	case c.kind == byPower:
		if q*c.h0 <= c.c {
			return c.h0, 0
		}
		return c.c / q, -c.c / (q * q)
	}
	return c.s.at(q)
}

// AtSpeed is the curve with the pump turned at ratio times its speed, by the
// affinity laws: flow by the ratio, head by its square (Çengel & Cimbala,
// section 14-3). They hold for modest changes; 0.1 to 2 is taken.
func (c Curve) AtSpeed(ratio float64) (Curve, error) {
	if err := checkRatio(ratio); err != nil {
		return Curve{}, err
	}
	c.ratio *= ratio
	return c, nil
}

func checkRatio(r float64) error {
	if !within(r, 0.1, 2) {
		return fmt.Errorf("pump.speed: %s, not a ratio from 0.1 to 2; hint: 0.8 is 80 %% of full speed", number(r))
	}
	return nil
}

// EfficiencyPoint is a pump's efficiency, a fraction, at a flow.
type EfficiencyPoint struct {
	Flow       measure.Flow
	Efficiency float64
}

// Pump is the pump with its motor.
type Pump struct {
	Curve Curve
	// Efficiency is that of the pump by points of flow, one point for a
	// constant; interpolated without a swing and held level beyond its ends.
	// None: the power is not known.
	Efficiency []EfficiencyPoint
	// Motor is the motor's efficiency with its drive, a fraction; 0 is 1, so
	// that the power is that at the shaft.
	Motor float64
	// NPSHRequired is off the maker's curve by flow; none: not known.
	NPSHRequired []Point
}

// efficiencyAt is the pump's efficiency at q in m³/s; 0 when not known.
func (p Pump) efficiencyAt(q float64) float64 {
	n := len(p.Efficiency)
	if n == 0 {
		return 0
	}
	x, y := make([]float64, n), make([]float64, n)
	for i, e := range p.Efficiency {
		x[i], y[i] = e.Flow.M3S(), e.Efficiency
	}
	return held(x, y, q)
}

// held interpolates and stays level beyond the ends.
func held(x, y []float64, at float64) float64 {
	n := len(x)
	if n == 1 || at <= x[0] {
		return y[0]
	}
	if at >= x[n-1] {
		return y[n-1]
	}
	s := newSpline(x, y)
	v, _ := s.at(at)
	return v
}
