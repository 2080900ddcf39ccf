package sheets

import (
	"fmt"

	"silowright/geometry"
)

// stepsOf are the build steps of a pack, in order.
func stepsOf(p *Pack) []step {
	return append(append(drumSteps(p), partSteps(p)...), lastSteps(p)...)
}

// drumSteps take a drum apart and open it.
func drumSteps(p *Pack) []step {
	u := p.Units
	return []step{
		{id: "drum", title: "Choose, clean and measure the drum", tool: "tape, marker, traveller sheet", cautions: usedDrum,
			do: join([]string{
				"Read the label; write what the drum held on the traveller. No label: do not use it.",
				"Wash it out until nothing of the contents is left; screw both bungs in tight on their gaskets. They stay in.",
				"Write the serial number on the upper and on the lower half: base and body of one drum belong together.",
				"Measure round the wall, height, wall, foot and hoops, and write them on the traveller."},
				vary(p, func(s geometry.Silo) string {
					return fmt.Sprintf("These sheets hold for %s round the wall. A drum that is off by more than 1/16 in (1.6 mm): try its own foot in its own base before boring, or measure it as another kind.",
						s.Spec.Drum.Circumference().Both(u))
				}))},
		{id: "mark", title: "Mark the datum and the cuts", tool: "tape, strip of stiff card, marker", do: join(
			[]string{"Stand the drum on its foot. Draw the datum: one upright line from head to foot. Draw it over the hoops and on to the foot.",
				"Wrap the card round the wall: its edge gives a level line all the way round."},
			vary(p, func(s geometry.Silo) string {
				st := s.Stations
				return fmt.Sprintf("Level lines above the foot: first cut %s (right under the uppermost hoop); ring strip %s down to %s; rim %s. The gaps are the saw's kerf, %s.",
					st.BaseCut.Both(u), st.RingTop.Both(u), st.RingBottom.Both(u), st.Rim.Both(u), s.Spec.Saw.Kerf.Both(u))
			}))},
		{id: "base-cut", title: "Cut the base off", tool: "jigsaw with a blade for plastics, clamps", cautions: []caution{cautionCut, cautionSaw}, do: join(
			[]string{"Lay the drum down between blocks so that it cannot roll. Bore a start hole below the line, inside the kerf.",
				"Saw round right under the hoop; turn the drum as you go. Keep the hoop whole: it is the base's mouth."},
			vary(p, func(s geometry.Silo) string {
				return "Turn the upper piece over: the base, " + s.Stations.BaseHeight.Both(u) + " high, head on the ground, mouth up."
			}),
			vary(p, func(s geometry.Silo) string {
				if !s.Seat.Nests {
					return "Do not cut the next drum: this foot does not go into its base, see the stop on the first page."
				}
				return "Before the next drum is cut, try the foot in this mouth: it should go in " + s.Seat.Enters.Both(u) +
					". If it wedges at the lip, the hoop slopes there too: file the lip back to where the hoop is widest."
			}))},
		{id: "ring-cut", title: "Cut the ring strip off the body", tool: "jigsaw, clamps", cautions: []caution{cautionSaw}, do: join(
			vary(p, func(s geometry.Silo) string {
				return fmt.Sprintf("Saw along the lower line: a strip %s wide, in one piece. Check at four places that it is that wide.", s.Spec.Ring.Width.Both(u))
			}),
			vary(p, func(s geometry.Silo) string {
				return "What is left is the body, " + s.Stations.Rim.Both(u) + " from foot to rim. Take the burr off the rim."
			}))},
		{id: "lattice", title: "Saw the lattice in the foot", tool: "template or compass, drill, jigsaw", cautions: []caution{cautionSaw, cautionKickback}, do: join(
			[]string{"Turn the body foot up. Tape the lattice template on with its arrow at the datum, or set it out by compass (marking tables)."},
			vary(p, func(s geometry.Silo) string {
				return fmt.Sprintf("Bore all %d corner holes, %s.", 3*s.Lattice.Openings, s.Spec.Lattice.Pilot.Both(u))
			}),
			vary(p, func(s geometry.Silo) string {
				return fmt.Sprintf("Saw out the %d openings from hole to hole; %s must stay whole, %s wide.", s.Lattice.Openings,
					count(s.Spec.Lattice.Bars, "bar", "bars"), s.Spec.Lattice.BarWidth.Both(u))
			}),
			[]string{"Take the burr off both faces: mesh lies on the inside, the base's mouth wears on the outside."})},
		{id: "holes", title: "Bore the wall holes", tool: "hole saws, drill, clamps, block of wood", cautions: []caution{cautionSaw, cautionKickback}, do: join(
			vary(p, func(s geometry.Silo) string { return holeText(p, s.Outlet, s.Outlet.BelowRim, "below the rim") }),
			vary(p, func(s geometry.Silo) string { return holeText(p, s.Inlet, s.Inlet.Height, "above the ground") }),
			vary(p, func(s geometry.Silo) string { return holeText(p, s.Drain, s.Drain.Height, "above the ground") }),
			[]string{"Body and base each on the face they stand on in use, datum towards you. Saw slowly, pull out often, no force.",
				"Try the pipe or stopper in each hole before the next one."})},
		{id: "handles", title: "Cut the two handle slots", tool: "drill, jigsaw, half-round file", cautions: []caution{cautionSaw, cautionEdge}, do: join(
			vary(p, func(s geometry.Silo) string {
				a, b := s.Slots[0], s.Slots[1]
				return fmt.Sprintf("Upper edge %s, sill %s below the rim; %s long. Middles %s and %s round the wall from the datum.",
					a.Top.Both(u), a.Sill.Both(u), a.Length.Both(u), a.Round.Both(u), b.Round.Both(u))
			}),
			[]string{"Bore the ends, saw the straight edges between them.", "Round every edge until a bare hand can carry by it."})},
	}
}

func holeText(p *Pack, h geometry.Hole, level length, from string) string {
	name := h.Name
	if h.Part != "" {
		name += " (" + h.Part + ")"
	}
	at := h.Round.Both(p.Units) + " round the wall from the datum to the right"
	if h.Round.Abs() < 0.05 {
		at = "on the datum"
	}
	return fmt.Sprintf("%s: hole saw %s; centre %s %s, %s.", upper(name), h.Saw.Both(p.Units), level.Both(p.Units), from, at)
}
