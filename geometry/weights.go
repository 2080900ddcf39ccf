package geometry

import (
	"math"

	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

// The factors of sag.
const (
	sagBends  = 0.075
	sagPulls  = 5.4
	sagStrain = 0.9
)

// weights works out masses and volumes. Hoops, chimes and bungs are left out,
// the head and foot are taken as thick as the wall: the masses are estimates
// from below, within what the wall's own unevenness allows.
func weights(s *Silo) Weights {
	d := s.Spec.Drum
	st := s.Stations
	pe := stock.PEDensity
	shell := func(outside, z length) volume {
		return math.Pi * volume(float64(outside-d.Wall)*float64(d.Wall)*float64(z))
	}
	var w Weights
	w.Ring = pe.Of(volume(float64(s.Ring.Length) * float64(d.Wall) * float64(s.Spec.Ring.Width)))
	foot := d.FootInside().Disc() - s.Lattice.OpenArea
	w.Body = pe.Of(shell(d.Outside, st.Rim) + foot.Times(d.Wall))
	w.Base = pe.Of(shell(d.Outside, st.BaseHeight) + d.Bore().Disc().Times(d.Wall))
	p := s.Pipe
	w.Pipe = stock.PVCDensity.Of((p.Outside.Disc() - (p.Outside - 2*p.Wall).Disc()).Times(s.Spec.Pipe.Length))
	w.Lift = w.Body + w.Ring + s.Spec.Load.Seed

	w.BaseVolume = d.Bore().Disc().Times(st.BaseHeight - st.HeadPanel)
	w.PlenumVolume = d.Bore().Disc().Times(maxLength(0, s.Seat.Plenum))
	w.SeedBay = max(0, d.insideVolume(s.OutletInvert())-d.insideVolume(s.Spec.bedFloor()))
	w.Sag, w.BarStress = sag(s)
	w.HandleStress = handleStress(s.Spec, w.Lift)
	return w
}

// OutletInvert is the height above the foot of the lowest point of the
// outlet's bore, where water begins to leave.
func (s *Silo) OutletInvert() length { return s.Outlet.Height - s.Outlet.Bore()/2 }

// outletCrown is the height above the foot of the highest point of the
// outlet's bore.
func (s *Silo) outletCrown() length { return s.Outlet.Height + s.Outlet.Bore()/2 }

// sag estimates how far the lattice's centre hangs under the wet seed, drained
// (not buoyed), after the load's time, and the pull in a bar.
//
// Each half bar carries a wedge of load that grows with the radius:
// w(x) = w₀x/R, w₀ = qπR/n, q the load per area of the circle. By symmetry all
// bars sag alike and push nothing on each other. Two ways of carrying add up
// at one sag δ: bending of a bar of width b, thickness t with ends free to
// tilt, w₀ = E·I·δ/(0.075R⁴) with I = bt³/12; and the pull of a bar whose ends
// the rim holds: under the pull T it hangs as y = w₀(R³ − x³)/(6RT), so
// δ = w₀R²/(6T), with the strain w₀²R²/(40T²) = 0.9δ²/R²; T = E·A·strain then
// gives w₀ = 5.4·E·A·δ³/R⁴. E is the creep modulus of pipe-grade polyethylene
// at 23 °C: a drum's resin and a cold or hot day may differ.
func sag(s *Silo) (length, measure.Stress) {
	l := s.Spec.Lattice
	modulus, _, ok := stock.CreepModulus(s.Spec.Load.Time)
	if !ok || s.Spec.Load.Seed <= 0 {
		return 0, 0
	}
	r, b, t := float64(l.Across/2), float64(l.BarWidth), float64(s.Spec.Drum.Wall)
	force := float64(s.Spec.Load.Seed) * measure.Gravity // N over the circle
	w0 := force / (math.Pi * r * r) * math.Pi * r / float64(l.Bars)
	e := float64(modulus)
	bending := e * b * t * t * t / 12 / (sagBends * r * r * r * r)
	pull := sagPulls * e * b * t / (r * r * r * r)
	// bending·δ + pull·δ³ = w₀ has one root; halve the interval that holds it
	lo, hi := 0.0, w0/bending
	for range 200 {
		mid := (lo + hi) / 2
		if bending*mid+pull*mid*mid*mid > w0 {
			hi = mid
		} else {
			lo = mid
		}
	}
	d := (lo + hi) / 2
	strain := sagStrain * d * d / (r * r) // w₀²R²/(40T²) with T = w₀R²/(6δ)
	return length(d), measure.Stress(e * strain)
}

// handleStress is the bending stress in the strip of wall between the rim and
// a handle slot when the silo is lifted by both slots: a beam built in at both
// ends, as long as the slot, carrying half the lift evenly, M = W·L/12.
func handleStress(s Spec, lift measure.Mass) measure.Stress {
	load := float64(lift) * measure.Gravity / 2
	h, t := float64(s.Handle.BelowRim), float64(s.Drum.Wall)
	moment := load * float64(s.Handle.Length) / 12
	return measure.Stress(moment / (t * h * h / 6))
}
