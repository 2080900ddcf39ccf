package charts

import (
	"math"

	"silowright/geometry/path"
	"silowright/render"
)

// Axis is one direction of a chart, in a unit of its own and, on the field's
// far side, in a second one.
type Axis struct {
	Says   string  // what is shown, with its unit: "Flow, gpm"
	Second string  // the same in the second unit: "Flow, L/min"; "" draws one scale only
	Factor float64 // second units in one of the first
}

func (a Axis) double() bool {
	return a.Second != "" && a.Factor > 1e-9 && a.Factor < 1e9
}

// ruler carries values to places along one direction.
type ruler struct {
	lo, hi   float64
	from, to length
}

func (r ruler) at(v float64) length {
	return r.from + (r.to-r.from)*length((v-r.lo)/(r.hi-r.lo))
}

// inSecond is the ruler in the second unit.
func (r ruler) inSecond(factor float64) ruler {
	r.lo, r.hi = r.lo*factor, r.hi*factor
	return r
}

// ticks are the values written along a ruler, no closer than pitch, and the
// step between them.
func (r ruler) ticks(pitch length) (vs []float64, step float64) {
	most := math.Max(1, math.Floor(float64((r.to-r.from)/pitch)))
	step = nice((r.hi - r.lo) / math.Min(most, 10))
	for i := math.Ceil(r.lo/step - 1e-6); i*step <= r.hi+step*1e-6; i++ {
		vs = append(vs, i*step+0) // + 0: no −0
	}
	return vs, step
}

// tickPitch is how far apart values along a level axis must stand.
func (r ruler) tickPitch() length {
	_, step := r.ticks(12)
	return max(9, 4+max(render.TextWidth(signed(r.hi, step), letters, false), render.TextWidth(signed(r.lo, step), letters, false)))
}

// across draws a level scale along the field's edge at y, its values on the
// side that out points to: −1 below, 1 above.
func (r ruler) across(d *render.Drawing, y, out length) {
	vs, step := r.ticks(r.tickPitch())
	for _, v := range vs {
		x := r.at(v)
		d.Line(render.Thin, path.Pt(x, y), path.Pt(x, y+out*tick))
		base := y + out*(tick+0.8)
		if out < 0 {
			base -= letters
		}
		words := signed(v, step)
		if half := render.TextWidth(words, letters, false) / 2; x-half >= 0 && x+half <= d.Width {
			d.Words(path.Pt(x, base), letters, render.Middle, words)
		}
	}
}

// up draws an upright scale at x, its values on the side that out points to:
// −1 left, 1 right.
func (r ruler) up(d *render.Drawing, x, out length) {
	vs, step := r.ticks(line * 1.3)
	anchor := render.Right
	if out > 0 {
		anchor = render.Left
	}
	for _, v := range vs {
		y := r.at(v)
		d.Line(render.Thin, path.Pt(x, y), path.Pt(x+out*tick, y))
		d.Words(path.Pt(x+out*(tick+0.8), y-letters/2), letters, anchor, signed(v, step))
	}
}

// upWide is how wide the values of an upright scale are, with their ticks.
func (r ruler) upWide() length {
	vs, step := r.ticks(line * 1.3)
	wide := length(0)
	for _, v := range vs {
		wide = max(wide, render.TextWidth(signed(v, step), letters, false))
	}
	return wide + tick + 0.8
}

// topOf is the least value on a step of about a fifth that holds v, for the
// end of a scale from 0.
func topOf(v float64) float64 {
	if !(v > 1e-9) {
		return 1
	}
	step := nice(v / 5)
	return step * math.Ceil(v/step-1e-9)
}

// signed writes a value of either sign.
func signed(v, step float64) string {
	if v < 0 {
		return "−" + plain(-v, step)
	}
	return plain(v, step)
}
