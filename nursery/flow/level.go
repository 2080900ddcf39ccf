package flow

import (
	"silowright/geometry/measure"
	"silowright/nursery/sea"
)

// outlet is the level above the outlet's invert at which q leaves by the
// outlet, and its slope: with a pipe silo hung on it the level in the drum.
func (s Silo) outlet(w sea.Water, q measure.Flow) (measure.Length, float64) {
	level, slope := s.Outlet.Level(w, q)
	if s.Pipe == nil {
		return level, slope
	}
	p := *s.Pipe
	level, slope = p.inside(w, q, level, slope, s.Invert, s.Outlet.Bore)
	loss, lossSlope := p.across(w, q)
	return level + loss, slope + lossSlope
}

// inside is the level in the pipe silo above the drum's invert: either its own
// short pipe governs, or the drum's outlet with the short pipe's loss before
// it, as far as that runs full.
func (p PipeSilo) inside(w sea.Water, q measure.Flow, level measure.Length, slope float64, invert, bore measure.Length) (measure.Length, float64) {
	short := p.Out.nipple()
	short.K += Widening(p.Out.Bore, bore)
	loss, lossSlope := PipeLoss(w, short, q)
	level, slope = level+loss, slope+lossSlope
	if own, ownSlope := p.Out.Level(w, q); own+p.Invert-invert > level {
		return own + p.Invert - invert, ownSlope
	}
	return level, slope
}

// across is the head lost through the pipe silo's screen and seed.
func (p PipeSilo) across(w sea.Water, q measure.Flow) (measure.Length, float64) {
	area := disc(p.Inside)
	v := q.Through(area)
	h1, s1 := p.Screen.Loss(w, v)
	h2, s2 := p.Seed.loss(w, area, v)
	return h1 + h2, (s1 + s2) / float64(area)
}

// spills is what leaves by all slots and over the rim at a level above the
// outlet's invert.
func (s Silo) spills(level measure.Length) (slots, rim measure.Flow) {
	z := s.Invert + level
	if s.Slots > 0 {
		slots = measure.Flow(s.Slots) * s.Slot.Flow(z-s.Sill)
	}
	return slots, RimFlow(s.Bore, z-s.Rim)
}

// stand is the level above the outlet's invert when q comes in, its slope, and
// how much of q leaves by the outlet.
func (s Silo) stand(w sea.Water, q measure.Flow) (level measure.Length, slope float64, out measure.Flow) {
	all := func(h measure.Length) measure.Flow {
		a, b := s.spills(h)
		return a + b
	}
	level, slope = s.outlet(w, q)
	if all(level) == 0 {
		return level, slope, q
	}
	rest := func(out float64) float64 {
		h, _ := s.outlet(w, measure.Flow(out))
		return out + float64(all(h)) - float64(q)
	}
	if rest(0) >= 0 {
		// The outlet lets nothing by at the level where all spills.
		top, _ := s.outlet(w, 0)
		level = measure.Length(root(func(h float64) float64 {
			return float64(all(measure.Length(h)) - q)
		}, float64(-s.Invert), float64(top)))
		slope = 0
	} else {
		out = measure.Flow(root(rest, 0, float64(q)))
		level, slope = s.outlet(w, out)
	}
	const step measure.Length = 1e-4
	leaves := float64(all(level+step)-all(level-step)) / float64(2*step)
	if slope > 0 {
		leaves += 1 / slope
	}
	if leaves > 0 {
		return level, 1 / leaves, out
	}
	return level, 0, out
}

// flowAt is the flow by the outlet at a level above its invert.
func (s Silo) flowAt(w sea.Water, level measure.Length) measure.Flow {
	if s.Pipe == nil {
		return s.Outlet.Flow(w, level)
	}
	return inverse(func(q measure.Flow) measure.Length {
		h, _ := s.outlet(w, q)
		return h
	}, level, s.Outlet.Flow(w, max(level, 0)))
}

// inverse is the flow at which a rising level reaches target, 0 when it
// already stands above it, at most top.
func inverse(level func(measure.Flow) measure.Length, target measure.Length, top measure.Flow) measure.Flow {
	return measure.Flow(root(func(q float64) float64 {
		return float64(level(measure.Flow(q)) - target)
	}, 0, float64(top)))
}
