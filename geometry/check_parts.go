package geometry

import "silowright/geometry/path"

func latticeChecks(s *Silo) []Finding {
	l, u := s.Lattice, s.Spec.Units
	lv := atLeast(l.Ledge, 0, ledge)
	room := s.Lattice.Corners[0]
	width := s.Spec.Lattice.Across/2 - distance(path.Pt(0, 0), room)
	lv2 := atLeast(width, 2*s.Spec.Lattice.Pilot, 4*s.Spec.Lattice.Pilot)
	return []Finding{
		lengths("lattice.ledge", "lattice.across", lv, l.Ledge, ledge, practice,
			say(lv, "the foot keeps a ledge of %s all round for mesh and ring",
				"the foot keeps a ledge of only %s all round: make the lattice smaller",
				"the lattice reaches %s past the foot's inside: make the lattice smaller"), l.Ledge.Abs().Both(u)),
		lengths("lattice.opening", "lattice.bar_width", lv2, width, 2*s.Spec.Lattice.Pilot, worked,
			say(lv2, "each opening is %s deep, room for the jigsaw to turn at its pilots",
				"each opening is only %s deep: little room for the jigsaw; use fewer or narrower bars",
				"each opening is only %s deep: its pilots touch; use fewer or narrower bars"), width.Both(u)),
	}
}

func ringChecks(s *Silo) []Finding {
	r, u := s.Ring, s.Spec.Units
	var out []Finding
	lv := OK
	if !below(0, r.Surplus) {
		lv = Stop
	}
	out = append(out, lengths("ring.length", "ring.width", lv, r.Length, r.StripLength, worked,
		say(lv, "the ring's strip is %s too long once inside: trim it", "", "the ring's strip is %s short of closing: take measures again"), r.Surplus.Abs().Both(u)))
	return append(out, screwCheck(s))
}

// screwCheck holds the screw's length against ring, mesh and wall.
func screwCheck(s *Silo) Finding {
	r, u := s.Ring, s.Spec.Units
	holds := s.Spec.Screws.Length - (r.Stack - s.Spec.Drum.Wall)
	b := practice
	switch {
	case !below(s.Spec.Drum.Wall/2, holds):
		return lengths("ring.screw-stack", "screws.length", Stop, s.Spec.Screws.Length, r.Stack, b,
			"the screws (%s) do not hold in the wall: ring, mesh and wall are %s; use longer ones", s.Spec.Screws.Length.Both(u), r.Stack.Both(u))
	case below(0, r.Protrudes):
		return lengths("ring.screw-stack", "screws.length", Caution, s.Spec.Screws.Length, r.Stack, b,
			"the screws go through ring, mesh and wall (%s) and stick out by %s: trim and file the points, with eyes covered", r.Stack.Both(u), r.Protrudes.Both(u))
	case below(r.Protrudes, 0):
		return lengths("ring.screw-stack", "screws.length", Caution, s.Spec.Screws.Length, r.Stack, b,
			"the screws end %s inside the wall: they hold by less than its thickness", (-r.Protrudes).Both(u))
	}
	return lengths("ring.screw-stack", "screws.length", OK, s.Spec.Screws.Length, r.Stack, b,
		"the screws end flush with the wall's outside (%s)", r.Stack.Both(u))
}

func meshChecks(s *Silo) []Finding {
	m, u := s.Disc, s.Spec.Units
	over := m.Across - s.Spec.Lattice.Across
	lv := atLeast(over, 0, meshPast)
	held := s.Spec.Mesh.Trim + s.Spec.Ring.Width
	lv2 := atLeast(held, s.Spec.Ring.Width/2, s.Spec.Ring.Width)
	return []Finding{
		lengths("mesh.disc-lattice", "mesh.trim", lv, over, meshPast, practice,
			say(lv, "the mesh disc is %s larger across than the lattice", "the mesh disc is only %s larger across than the lattice: enlarge mesh.trim",
				"the mesh disc is %s smaller across than the lattice"), over.Abs().Both(u)),
		lengths("mesh.held", "mesh.trim", lv2, held, s.Spec.Ring.Width, practice,
			say(lv2, "the mesh turns %s up the wall, past the ring's edge", "the mesh turns only %s up the wall: the ring holds part of it",
				"the mesh turns only %s up the wall: the ring cannot hold it"), held.Both(u)),
	}
}

// handleChecks are about the hand, and about water: it must leave by the
// outlet before it reaches a slot's sill.
func handleChecks(s *Silo) []Finding {
	u := s.Spec.Units
	slot := s.Slots[0]
	coupling := Basis{FromMemory, "NIOSH Pub. 94-110, coupling notes"}
	lvL := atLeast(slot.Length, handShort, handLong)
	lvH := atLeast(slot.Height(), handLow, handHigh)
	margin := s.Stations.Rim - slot.Sill - s.outletCrown()
	lvS := atLeast(margin, 1e-6, crownBelow)
	out := []Finding{
		lengths("handle.hand-length", "handle.length", lvL, slot.Length, handLong, coupling,
			say(lvL, "the slot is %s long: a hand goes in", "the slot is %s long, short for a gloved hand", "the slot is %s long: a hand does not go in"), slot.Length.Both(u)),
		lengths("handle.hand-height", "handle.height", lvH, slot.Height(), handHigh, coupling,
			say(lvH, "the slot is %s high: a hand goes in", "the slot is %s high, low for a gloved hand", "the slot is %s high: a hand does not go in"), slot.Height().Both(u)),
		lengths("handle.sill-outlet", "outlet.below_rim", lvS, margin, crownBelow, practice,
			say(lvS, "the outlet's crown lies %s below the handle slots' sill: a full outlet spills nowhere else",
				"the outlet's crown lies only %s below the handle slots' sill: set the outlet lower or the slots higher",
				"the outlet's crown lies %s above the handle slots' sill: water leaves by the handles; set the outlet lower or the slots higher"), margin.Abs().Both(u)),
	}
	if w := s.Spec.Drum.Wall; below(w, handEdge) {
		out = append(out, lengths("handle.edge", "drum.wall", Caution, w, handEdge, coupling,
			"the wall is %s where a hand lifts: round the slot's edge or sleeve it with split hose", w.Both(u)))
	}
	return out
}

// plenumChecks hold inlet and drain against the head below and the seated foot
// above.
func plenumChecks(s *Silo) []Finding {
	u := s.Spec.Units
	var out []Finding
	for _, h := range []Hole{s.Inlet, s.Drain} {
		low := h.Height - h.Footprint/2 - s.Stations.HeadPanel
		high := s.Seat.FootHeight - (h.Height + h.Footprint/2)
		lvL, lvH := atLeast(low, 1e-6, plenumRoom), atLeast(high, 1e-6, plenumRoom)
		out = append(out,
			lengths(h.id("head"), h.Key()+".above_ground", lvL, low, plenumRoom, practice,
				say(lvL, "the "+h.Name+"'s joint lies %s above the head", "the "+h.Name+"'s joint lies only %s above the head: little room for the inner coupling",
					"the "+h.Name+"'s joint runs into the head by %s: set it higher"), low.Abs().Both(u)),
			lengths(h.id("foot"), h.Key()+".above_ground", lvH, high, plenumRoom, practice,
				say(lvH, "the "+h.Name+"'s joint lies %s below the seated foot", "the "+h.Name+"'s joint lies only %s below the seated foot",
					"the seated foot runs into the "+h.Name+"'s joint by %s: set it lower"), high.Abs().Both(u)))
	}
	return out
}

func seatChecks(s *Silo) []Finding {
	t, u := s.Seat, s.Spec.Units
	if !t.Nests {
		return []Finding{lengths("seat.nests", "drum.foot_outside", Stop, -t.Missing, 0, worked,
			"the foot is %s wider than the base's mouth: it never nests; measure foot and hoop again or use another drum", t.Missing.Both(u))}
	}
	lv := atLeast(t.Enters, 0, seatEnters)
	if t.Bottoms {
		lv = Stop
	}
	moves := maxLength(t.ShiftCircUp.Abs(), t.ShiftCircDn.Abs())
	thick := maxLength(t.ShiftWallUp.Abs(), t.ShiftWallDn.Abs())
	out := []Finding{lengths("seat.nests", "drum.hoops", lv, t.Enters, seatEnters, practice,
		say(lv, "the foot goes %s into the base and wedges where it is %s wide; a circumference off by 1/16 in moves that by %s, a wall off by 1/16 in by %s",
			"the foot goes only %s into the base, where it is %s wide: it may tip (a circumference off by 1/16 in moves that by %s, a wall off by 1/16 in by %s)",
			"the foot goes down to the head (%s) without wedging (%s wide; off by %s or %s when the tape is off by 1/16 in): there is no plenum"),
		t.Enters.Both(u), t.TouchWidth.Both(u), moves.Both(u), thick.Both(u))}
	lvP := atLeast(t.Plenum, plenumBad, plenumGood)
	out = append(out, lengths("seat.plenum", "drum.height", lvP, t.Plenum, plenumGood, practice,
		say(lvP, "between head and lattice %s are left as plenum", "between head and lattice only %s are left as plenum", "between head and lattice only %s are left: no plenum to speak of"), t.Plenum.Both(u)))
	points := s.Ring.Foot + s.Spec.Ring.Width/2 - t.Enters
	lvS := OK
	if points < 0 {
		lvS = Caution
	}
	return append(out, lengths("seat.ring-screws", "ring.width", lvS, points, 0, worked,
		say(lvS, "the ring's screws stand %s above the base's mouth", "the ring's screws lie %s below the base's mouth: their points must be flush with the wall or the foot will not seat", ""), points.Abs().Both(u)))
}
