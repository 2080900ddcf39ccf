package manifold

import (
	"math"

	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/sea"
)

const gravity = sea.Gravity

// laminarTo is the Reynolds number up to which flow.Friction is 64/Re.
const laminarTo = 2000.0

// Fitting is one loss of K velocity heads, on the speed through Bore; a Bore
// of 0 is that of the hose it sits on.
type Fitting struct {
	K    float64
	Bore measure.Length
}

// loss is a pipe made ready, in SI: h = fr·f·Q² + k·Q².
type loss struct {
	fr, k  float64
	re     float64 // Reynolds number per m³/s
	rel    float64
	area   float64
	linear float64 // m per m³/s, laminar
}

func newLoss(p flow.Pipe, w sea.Water) loss {
	d := p.Bore.Metres()
	c := 8 / (math.Pi * math.Pi * gravity)
	l := loss{
		fr:   c * p.Length.Metres() / math.Pow(d, 5),
		k:    minor(p.K, p.Bore),
		re:   4 * float64(w.Density) / (math.Pi * d * float64(w.Viscosity)),
		rel:  float64(p.Roughness / p.Bore),
		area: math.Pi / 4 * d * d,
	}
	l.linear = 64 * l.fr / l.re
	return l
}

// minor is the loss of K velocity heads in a bore, in m per (m³/s)².
func minor(k float64, bore measure.Length) float64 {
	if k == 0 {
		return 0
	}
	return 8 * k / (math.Pi * math.Pi * gravity * math.Pow(bore.Metres(), 4))
}

// at is the head lost by the flow q, m³/s, and its slope; odd in q.
func (l *loss) at(q float64) (h, slope float64) {
	a := math.Abs(q)
	h, slope = l.k*a*a, 2*l.k*a
	if l.fr > 0 {
		re := l.re * a
		if re <= laminarTo {
			h, slope = h+l.linear*a, slope+l.linear
		} else {
			f, df := flow.Friction(re, l.rel)
			h += l.fr * f * a * a
			slope += l.fr * a * (2*f + df*re)
		}
	}
	return math.Copysign(h, q), slope
}

// speed is the mean speed of q through the pipe.
func (l *loss) speed(q float64) measure.Speed {
	return measure.Speed(q/l.area) * measure.MetrePerSecond
}

// PipeFlow is what runs in one pipe.
type PipeFlow struct {
	Flow  measure.Flow
	Speed measure.Speed
	// Loss is the head lost in it, fittings too.
	Loss measure.Length
	// Reynolds is its Reynolds number; under 2000 the flow is laminar, over
	// 4000 turbulent, between them it may be either.
	Reynolds float64
}

func (l *loss) pipeFlow(q float64) PipeFlow {
	h, _ := l.at(q)
	return PipeFlow{
		Flow: flowOf(q), Speed: l.speed(q), Loss: headOf(h), Reynolds: l.re * math.Abs(q),
	}
}

func flowOf(q float64) measure.Flow   { return measure.Flow(q) * measure.CubicMetrePerSec }
func headOf(h float64) measure.Length { return measure.Length(h) * measure.Metre }
