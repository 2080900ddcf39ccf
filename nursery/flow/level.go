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
	area := Disc(p.Inside)
	v := q.Through(area)
	h1, s1 := p.Screen.Loss(w, v)
	h2, s2 := p.Seed.loss(w, area, v)
	return h1 + h2, (s1 + s2) / float64(area)
}

// spills is what leaves by all slots and over the rim at a level above the
// outlet's invert, and the slope of their sum.
func (s Silo) spills(level measure.Length) (slots, rim measure.Flow, slope float64) {
	z := s.Invert + level
	if n := float64(s.Slots); n > 0 {
		q, d := s.Slot.Flow(z - s.Sill)
		slots, slope = measure.Flow(n)*q, n*d
	}
	rim, d := rimFlow(s.Bore, z-s.Rim)
	return slots, rim, slope + d
}

// stand is the level above the outlet's invert when q comes in, its slope, and
// how much of q leaves by the outlet.
func (s Silo) stand(w sea.Water, q measure.Flow) (level measure.Length, slope float64, out measure.Flow) {
	level, slope = s.outlet(w, q)
	if a, b, _ := s.spills(level); a+b == 0 {
		return level, slope, q
	}
	var leaves float64
	if low, _ := s.outlet(w, 0); s.over(low) >= q {
		// The outlet lets nothing by at the level where all spills.
		level = measure.Length(root(func(h float64) float64 {
			return float64(s.over(measure.Length(h)) - q)
		}, float64(-s.Invert), float64(low)))
		_, _, leaves = s.spills(level)
		slope = 0
	} else {
		out = measure.Flow(newton(func(x float64) (float64, float64) {
			h, up := s.outlet(w, measure.Flow(x))
			a, b, d := s.spills(h)
			return x + float64(a+b-q), 1 + d*up
		}, 0, float64(q), float64(q)/2, 1e-14))
		level, slope = s.outlet(w, out)
		_, _, leaves = s.spills(level)
	}
	if slope > 0 {
		leaves += 1 / slope
	}
	if leaves > 0 {
		return level, 1 / leaves, out
	}
	return level, 0, out
}

// Level is how high water stands above the outlet's invert when q comes in,
// whatever it leaves by. It rises with q. The silo must have passed Check.
func (s Silo) Level(w sea.Water, q measure.Flow) measure.Length {
	level, _, _ := s.stand(w, max(q, 0))
	return level
}

// over is all that spills at a level.
func (s Silo) over(level measure.Length) measure.Flow {
	a, b, _ := s.spills(level)
	return a + b
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
