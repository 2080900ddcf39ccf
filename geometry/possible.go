package geometry

import (
	"math"

	"silowright/geometry/stock"
)

// Fault is a size that cannot be made with the others given: not a bad silo,
// which is for findings, but none at all.
type Fault struct {
	// Key is the job-file key at fault, such as "ring.width".
	Key string
	// Hoop is the place in Drum.Hoops that a key of drum.hoops is meant of.
	Hoop int
	// Value is what the key holds; Low and High bound what it may hold beside
	// the other sizes given.
	Value, Low, High length
	// Why says what is wrong, Hint what to do; neither holds a number.
	Why, Hint string
}

// Impossible looks for sizes that leave no part to draw and returns the first
// such fault, from the ground up. Single values are taken to be finite and in
// the range their key allows.
func (s Spec) Impossible() (Fault, bool) {
	for _, check := range []func(Spec) (Fault, bool){
		impossibleFoot, impossibleHoops, impossibleParts, impossibleLattice,
		impossibleSlots, impossibleHoles, impossiblePipeSilo,
	} {
		if f, bad := check(s); bad {
			return f, true
		}
	}
	return Fault{}, false
}

// between is a fault when v is not within [low, high]; at a bound it passes,
// whichever unit it was written in.
func between(key string, v, low, high length, why, hint string) (Fault, bool) {
	if v >= low-rounding && v <= high+rounding { // so that NaN fails
		return Fault{}, false
	}
	return Fault{Key: key, Value: v, Low: low, High: high, Why: why, Hint: hint}, true
}

// firstFault returns the first of several checks that failed.
func firstFault(checks ...func() (Fault, bool)) (Fault, bool) {
	for _, c := range checks {
		if f, bad := c(); bad {
			return f, true
		}
	}
	return Fault{}, false
}

// slack keeps a part from being made with no width at all.
const slack = 1 * length(1)

func impossibleFoot(s Spec) (Fault, bool) {
	d := s.Drum
	return between("drum.foot_outside", d.FootOutside, 0.6*d.Outside, d.Outside,
		"is wider than the wall or far narrower", "measure the circle the drum stands on")
}

func impossibleHoops(s Spec) (Fault, bool) {
	d := s.Drum
	floor := d.FootHeight
	for i, h := range d.Hoops {
		f, bad := firstFault(
			func() (Fault, bool) {
				if i == 0 {
					return between("drum.hoops.from", h.From, floor, d.Height-slack, "lies below the height at which the wall is full", "measure up from the foot")
				}
				return between("drum.hoops.from", h.From, floor, d.Height-slack, "lies within the hoop below it or above the drum", "hoops may not overlap; measure up from the foot")
			},
			func() (Fault, bool) {
				return between("drum.hoops.to", h.To, h.From+slack, d.Height, "is not between the hoop's lower edge and the drum's height", "from is its lower edge, to its upper one")
			},
			func() (Fault, bool) {
				return between("drum.hoops.outside", h.Outside, d.Outside+slack/10, d.Outside*1.15, "does not stand out from the plain wall, or too far", "put the tape round the hoop and divide by 3.1416")
			})
		if bad {
			f.Hoop = i
			return f, true
		}
		floor = h.To
	}
	return between("drum.head_recess", d.HeadRecess, 0, d.Height-d.topHoop().From-d.Wall-slack,
		"is deeper than the base is high", "measure from the upper chime down to the head")
}

func impossibleParts(s Spec) (Fault, bool) {
	d := s.Drum
	left := d.topHoop().From - 2*s.Saw.Kerf - d.FootHeight
	rim := stations(s).Rim
	return firstFault(
		func() (Fault, bool) {
			return between("ring.width", s.Ring.Width, slack, left-10*slack, "leaves no body below it", "a narrower ring, or measure the uppermost hoop again")
		},
		func() (Fault, bool) {
			return between("mesh.trim", s.Mesh.Trim, 0, rim-s.Ring.Width, "makes the mesh taller than the body", "less trim")
		})
}

// impossibleLattice holds the bars to the circle: the corner holes of an
// opening may not meet, (h + ρ)/sin(θ/2) < m − ρ, with the names of lattice
// and m the distance of the chord from the centre.
func impossibleLattice(s Spec) (Fault, bool) {
	l := s.Lattice
	inside := s.Drum.FootInside()
	if f, bad := between("lattice.across", l.Across, 10*l.Pilot, inside-2*slack, "does not lie within the foot's inside with room for its corner holes", "the foot's inside is its outside less two walls"); bad {
		return f, bad
	}
	half := angle(math.Pi / float64(l.Bars) / 2)
	rho, r := l.Pilot/2, l.Across/2
	opens := func(width length) bool {
		h := width / 2
		if h >= r {
			return false
		}
		m := r * length((half - asinRatio(h, r)).Cos())
		return (h+rho)/length(half.Sin())+l.Pilot < m-rho
	}
	if opens(l.BarWidth) {
		return Fault{}, false
	}
	low, high := length(0), l.Across // the widest bar that opens lies between
	for range 40 {
		if mid := (low + high) / 2; opens(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return Fault{Key: "lattice.bar_width", Value: l.BarWidth, High: low,
		Why: "leaves no opening between the bars", Hint: "narrower or fewer bars, or a smaller pilot"}, true
}

func impossibleSlots(s Spec) (Fault, bool) {
	h, d := s.Handle, s.Drum
	rim := stations(s).Rim
	return firstFault(
		func() (Fault, bool) {
			return between("handle.below_rim", h.BelowRim, slack, rim-h.Height-d.FootHeight, "puts the slot off the body's wall", "the body is lower than the drum: see the stations")
		},
		func() (Fault, bool) {
			return between("handle.length", h.Length, h.Height, d.Circumference()/2-20*slack, "is shorter than the slot is high, or meets the other slot", "length is measured round the wall, over the rounded ends")
		},
		func() (Fault, bool) { return s.onWall("handle.round", h.Round) })
}

// onWall holds a distance from the datum to one turn.
func (s Spec) onWall(key string, round length) (Fault, bool) {
	return between(key, round, 0, s.Drum.Circumference(), "is more than once round the wall", "distances run from the datum to the right")
}

func impossibleHoles(s Spec) (Fault, bool) {
	d := s.Drum
	rim, base := stations(s).Rim, stations(s).BaseHeight
	saw := func(key string, saw length) func() (Fault, bool) {
		return func() (Fault, bool) {
			return between(key, saw, slack, d.Bore()-s.Saw.Oversize-10*slack, "is as wide as the drum", "a smaller saw")
		}
	}
	above := func(key string, v length) func() (Fault, bool) {
		return func() (Fault, bool) {
			return between(key, v, slack, base-slack, "lies above the base's mouth", "the base is the piece above the cut, turned over")
		}
	}
	round := func(key string, v length) func() (Fault, bool) {
		return func() (Fault, bool) { return s.onWall(key, v) }
	}
	return firstFault(
		func() (Fault, bool) {
			return between("outlet.below_rim", s.Outlet.BelowRim, slack, rim-slack, "lies below the body's foot", "the body is lower than the drum: see the stations")
		},
		saw("outlet.saw", s.Outlet.Saw), round("outlet.round", s.Outlet.Round),
		above("inlet.above_ground", s.Inlet.AboveGround), saw("inlet.saw", s.Inlet.Saw), round("inlet.round", s.Inlet.Round),
		above("drain.above_ground", s.Drain.AboveGround), saw("drain.saw", s.Drain.Saw), round("drain.round", s.Drain.Round))
}

func impossiblePipeSilo(s Spec) (Fault, bool) {
	q := s.Pipe
	return firstFault(
		func() (Fault, bool) {
			return between("pipe_silo.outlet_above_screen", q.OutletAboveScreen, slack, q.Length-slack, "lies past the pipe's upper end", "a longer pipe or a lower outlet")
		},
		func() (Fault, bool) {
			p, ok := stock.PipeOf(q.Pipe.Size, q.Pipe.Series)
			if !ok {
				return Fault{}, false // the reader has said so
			}
			return between("pipe_silo.saw", q.Saw, slack, p.Outside-2*p.Wall-s.Saw.Oversize-slack, "is as wide as the pipe", "a smaller saw or a wider pipe")
		})
}

// WithDefaultNipples returns s with the outlet's or inlet's nipple set to the
// longest that lets both couplings close on the wall, for the pipe and the saw
// s holds by now.
func (s Spec) WithDefaultNipples(outlet, inlet bool) Spec {
	if outlet {
		s.Outlet.Nipple = fullNipple(s, s.Outlet.Pipe, s.Outlet.Saw, s.Units)
	}
	if inlet {
		s.Inlet.Nipple = fullNipple(s, s.Inlet.Pipe, s.Inlet.Saw, s.Units)
	}
	return s
}
