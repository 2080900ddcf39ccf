package geometry

// profile is a round part's diameter along its axis, piecewise straight: At
// never falls, and two stations at the same At are a step.
type profile []station

type station struct{ At, Across length }

// footProfile is the body's outside from the foot up.
func footProfile(s Spec, st Stations) profile {
	d := s.Drum
	p := profile{{0, d.FootOutside}, {d.FootHeight, d.Outside}}
	for _, h := range st.BodyHoops {
		p = append(p, station{h.From, d.Outside}, station{h.From, h.Outside},
			station{h.To, h.Outside}, station{h.To, d.Outside})
	}
	return append(p, station{st.Rim, d.Outside})
}

// hoopWide is the share of a hoop's height over which it is widest.
const hoopWide = 2.0 / 3

// mouthProfile is the base's inside from the mouth down to the head: the hoop
// has widened it; over the last third of the hoop it narrows to the bore
// (common practice, no source: the run of that slope is not measured).
func mouthProfile(s Spec, st Stations) profile {
	d := s.Drum
	hoop := st.BaseHoop.To - st.BaseHoop.From
	wide := st.BaseHoop.Outside - 2*d.Wall
	return profile{{0, wide}, {hoop * hoopWide, wide}, {hoop, d.Bore()},
		{st.BaseHeight - st.HeadPanel, d.Bore()}}
}

// firstBelow returns the least station at or past which p is narrower than w.
func (p profile) firstBelow(w length) (length, bool) {
	return p.first(func(x length) length { return w - x })
}

// firstAbove returns the least station at or past which p is wider than w.
func (p profile) firstAbove(w length) (length, bool) {
	return p.first(func(x length) length { return x - w })
}

// first returns the least station past which over is positive; over must be
// linear in the diameter.
func (p profile) first(over func(length) length) (length, bool) {
	for i := 0; i+1 < len(p); i++ {
		a, b := p[i], p[i+1]
		fa, fb := over(a.Across), over(b.Across)
		if fa > 0 {
			return a.At, true
		}
		if fb > 0 { // fa ≤ 0 < fb: it crosses within the step or slope
			return a.At + (b.At-a.At)*(-fa)/(fb-fa), true
		}
	}
	return 0, false
}

// sink is how far a foot goes into a mouth with no interference anywhere: the
// first depth at which a corner of one profile meets the other. Interference
// of two piecewise straight profiles begins at a corner of one of them, so
// looking at the corners is exact. touch is where that is, below the mouth.
func sink(foot, mouth profile) (depth, touch, width length) {
	depth = mouth[len(mouth)-1].At // the head
	touch, width = depth, foot[0].Across
	for _, f := range foot {
		if d, ok := mouth.firstBelow(f.Across); ok && f.At+d < depth {
			depth, touch, width = f.At+d, d, f.Across
		}
	}
	for _, m := range mouth {
		if z, ok := foot.firstAbove(m.Across); ok && m.At+z < depth {
			depth, touch, width = m.At+z, m.At, m.Across
		}
	}
	return depth, touch, width
}

// tapeError is what a tape read by hand may be off by: 1/16 in.
const tapeError length = 25.4 / 16

// seat solves how the foot sits in the base's mouth.
func seat(s Spec, st Stations) Seat {
	foot, mouth := footProfile(s, st), mouthProfile(s, st)
	var out Seat
	out.Enters, out.TouchDepth, out.TouchWidth = sink(foot, mouth)
	full := mouth[len(mouth)-1].At
	if room := mouth[0].Across - s.Drum.FootOutside; room < 0 {
		out.Missing = -room
	}
	out.Nests = out.Enters > 0
	out.Bottoms = out.Enters >= full
	out.FootHeight = st.BaseHeight - out.Enters
	out.Plenum = out.FootHeight - st.HeadPanel

	moved := func(circ, wall length) length {
		t := s
		t.Drum.Outside += OutsideFromCircumference(circ)
		t.Drum.Wall += wall
		e, _, _ := sink(footProfile(t, st), mouthProfile(t, st))
		return e - out.Enters
	}
	out.ShiftCircUp = moved(tapeError, 0)
	out.ShiftCircDn = moved(-tapeError, 0)
	out.ShiftWallUp = moved(0, tapeError)
	out.ShiftWallDn = moved(0, -tapeError)
	return out
}
