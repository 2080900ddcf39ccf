package sheets

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

// partSteps put mesh, ring and pipework into the drum silo.
func partSteps(p *Pack) []step {
	u := p.Units
	steps := []step{
		{id: "mesh", title: "Cut the mesh disc and lay it in", tool: "template or compass, snips", do: join(
			vary(p, func(s geometry.Silo) string {
				return fmt.Sprintf("Cut a disc %s across. Mark the bend: a circle %s across.", s.Disc.Across.Both(u), s.Disc.Bend.Both(u))
			}),
			vary(p, func(s geometry.Silo) string {
				return fmt.Sprintf("%d snips, evenly round, %s deep from the edge.", s.Disc.Snips, s.Disc.SnipDepth.Both(u))
			}),
			[]string{"Lay it on the lattice inside the body, edge turned up the wall, the flaps overlapping one way round. No pucker may stand off the wall."})},
		{id: "ring", title: "Fit and screw the retaining ring", tool: "snips, dividers, drill, screwdriver, nippers, file", cautions: []caution{cautionPoints}, do: join(
			vary(p, func(s geometry.Silo) string {
				return fmt.Sprintf("The strip is about %s too long. Bend it in over the mesh, mark where it meets itself, and cut it to %s; trim again until it springs tight with ends butting.",
					s.Ring.Surplus.Both(u), s.Ring.Length.Both(u))
			}),
			vary(p, func(s geometry.Silo) string {
				return fmt.Sprintf("%d screws at half the ring's width: one %s from each end, the rest stepped off inside the ring with dividers at %s.",
					s.Ring.Screws, s.Ring.JointEdge.Both(u), s.Ring.Chord.Both(u))
			}),
			vary(p, func(s geometry.Silo) string {
				if s.Ring.Protrudes <= 0 {
					return fmt.Sprintf("%s %s long through ring, mesh and wall (%s).", screwName(s), s.Spec.Screws.Length.Both(u), s.Ring.Stack.Both(u))
				}
				return fmt.Sprintf("%s %s long through ring, mesh and wall (%s): %s sticks out.", screwName(s), s.Spec.Screws.Length.Both(u), s.Ring.Stack.Both(u), s.Ring.Protrudes.Both(u))
			}),
			[]string{"Nip and file every point flush with the wall. Run a rag round: it must not catch."})},
		{id: "sealant", title: "Seal the ring's edge", tool: "sealant gun, wet finger or spatula", cautions: []caution{cautionSealant}, do: join(
			[]string{"Wipe wall and ring dry and clean."},
			vary(p, func(s geometry.Silo) string {
				return fmt.Sprintf("One unbroken bead along the ring's upper edge, %s across: %s of it, %s with waste.", s.Spec.Sealant.Bead.Both(u), s.Sealant.Run.Both(u), littleVolume(s.Sealant.Volume, u))
			}),
			[]string{"Close the ring's joint and the snips' ends too: small seed must not get behind the ring.", "Write the date on the traveller; the cure counts from it."})},
		{id: "outlet", title: "Fit the outlet", tool: jointTool(p, outletOf), cautions: jointCautions(p, outletOf),
			do: join(vary(p, func(s geometry.Silo) string { return textOf(s.Outlet).fit(u) }), cementTimes(p))},
		{id: "inlet", title: "Fit the inlet and the drain", tool: jointTool(p, inletOf), cautions: jointCautions(p, inletOf),
			do: join(vary(p, func(s geometry.Silo) string { return textOf(s.Inlet).fit(u) }),
				vary(p, func(s geometry.Silo) string {
					return "Cut the stub that takes the hose: " + s.Spec.Inlet.Stub.Both(u) + "."
				}),
				vary(p, func(s geometry.Silo) string { return textOf(s.Drain).fit(u) }))},
	}
	return append(steps, pipeSteps(p)...)
}

// pipeSteps make the pipe silo.
func pipeSteps(p *Pack) []step {
	u := p.Units
	return []step{
		{id: "pipe", title: "Cut the pipe silo and bore its side hole", tool: "saw, wrap template, hole saw, clamps", pipes: true, cautions: []caution{cautionSaw, cautionKickback}, do: join(
			vary(p, func(s geometry.Silo) string {
				return fmt.Sprintf("Cut %s pipe %s long, both ends square: a paper strip wrapped round gives the line.", pipeName(s.Spec.Pipe.Pipe), s.Spec.Pipe.Length.Both(u))
			}),
			vary(p, func(s geometry.Silo) string {
				return fmt.Sprintf("Side hole: hole saw %s, centre %s above the end that gets the screen.", s.Pipe.Hole.Saw.Both(u), s.Pipe.Hole.Height.Both(u))
			}),
			[]string{"Roughen and degrease the last 3/4 in (19 mm) of the screen end."})},
		{id: "screen", title: "Stretch the screen and bond it", tool: "band clamp, screwdriver, mixing cup, spatula", pipes: true, cautions: []caution{cautionResin}, do: join(
			vary(p, func(s geometry.Silo) string {
				clamp := "two clamps joined in series"
				if s.Pipe.Clamp != "" {
					clamp = "clamp size " + s.Pipe.Clamp
				}
				return fmt.Sprintf("Lay a square of screen, %s a side, over the end; %s over it, set back from the edge; pull the screen drum-tight as it closes.", s.Pipe.ScreenSquare.Both(u), clamp)
			}),
			vary(p, func(s geometry.Silo) string {
				return fmt.Sprintf("Run resin round the pipe's edge through the screen: about %s a pipe, bead %s.", littleVolume(s.Pipe.Resin.Volume, u), s.Spec.Pipe.Bead.Both(u))
			}),
			[]string{"Stand it screen up, level, until it has set. Then take the clamp off and trim the screen flush."})},
		{id: "pipe-outlet", title: "Fit the pipe silo's outlet", tool: hangTool(p), pipes: true, cautions: hangCautions(p),
			do: join(vary(p, func(s geometry.Silo) string { return textOf(s.Pipe.Hole).fit(u) }),
				vary(p, func(s geometry.Silo) string {
					out := "Push the reducing adapter on, so that it fits the drum silo's outlet from inside. Do not cement that joint: the pipe silo lifts out."
					if s.Outlet.Makeup().Adapters > 0 {
						out = "The inner end of the drum silo's outlet is threaded: wind thread tape round a male adapter and turn it in, its socket inwards, the fitting's body held still. " + out
					}
					return out
				}))},
	}
}

// lastSteps seat, test, cure and set to work.
func lastSteps(p *Pack) []step {
	u := p.Units
	return []step{
		{id: "seat", title: "Seat the body in the base", tool: "tape, a second person", cautions: []caution{cautionLift}, do: join(
			vary(p, func(s geometry.Silo) string {
				if !s.Seat.Nests {
					return "This foot is " + s.Seat.Missing.Both(u) + " too wide for its base: see the stop on the first page."
				}
				return fmt.Sprintf("Lower the foot into the mouth: it goes in %s and wedges. Measured by tape, 1/16 in (1.6 mm) round the wall moves that by about %s.",
					s.Seat.Enters.Both(u), max(s.Seat.ShiftCircUp.Abs(), s.Seat.ShiftCircDn.Abs()).Both(u))
			}),
			[]string{"Turn it until the outlet points where it will drain, square to the way it is carried. Mark both datum lines across the seat."},
			vary(p, func(s geometry.Silo) string { return "To lift, full and drained: " + mass(s.Weights.Lift, u) + "." }))},
		{id: "leak", title: "Leak test", tool: "hose, level place, chalk", do: []string{
			"Only when sealant and cement have set hard.",
			"Fill to the outlet and leave it for 1 h. Dry the outside first; circle each drip with chalk.",
			"Look at bungs, inlet, drain, outlet, seat. Tighten or reseal, let it cure, test again. Sign the traveller."}},
		{id: "cure", title: "Cure, rinse and soak", tool: "hose, bucket", cautions: []caution{cautionSeed}, do: []string{
			"Wait for the maker's full cure of sealant, cement and resin: the longest one counts.",
			"Rinse every part. Fill, soak a day, drain; again with fresh water. No smell of solvent may be left.",
			"Write the dates on the traveller and sign it off."}},
		{id: "work", title: "Set up and run", tool: "hose clamps, level", cautions: []caution{cautionPower}, do: join(
			[]string{"Stand the base level on a surface that carries it full of water.",
				"Join the supply hose, open slowly: water comes up through the mesh evenly. Look for jets at the wall: there the ring leaks.",
				"Hang the pipe silo by its outlet inside, when there is one; all the flow must go through it."},
		)},
	}
}

// cementTimes is how long cemented joints rest, by the table of stock parts.
func cementTimes(p *Pack) []string {
	if !slices.ContainsFunc(p.Silos, func(s geometry.Silo) bool { return cemented(s.Outlet) }) {
		return nil
	}
	out := "Leave the joint alone to set; longer before it carries water."
	warm, cold := 0, 0
	for i, c := range stock.CementTimes() {
		if i == 0 || c.WarmF != warm || c.ColdF != cold {
			warm, cold = c.WarmF, c.ColdF
			out += fmt.Sprintf(" At %d to %d °F (%.0f to %.0f °C):", cold, warm, celsius(cold), celsius(warm))
		}
		out += fmt.Sprintf(" nominal %s to %s in, %s and %s;", c.From, c.To, clock(c.Set), clock(c.Cure))
	}
	return []string{strings.TrimSuffix(out, ";") + fmt.Sprintf(". %g times that above 60 %% humidity (a pipe maker's manual, one source). The label of yours holds.", stock.CementHumidFactor)}
}

func celsius(f int) float64 { return float64(measure.FromFahrenheit(float64(f))) }

// clock writes a time in minutes below an hour, else in hours.
func clock(d time.Duration) string {
	if d < time.Hour {
		return fmt.Sprintf("%.0f min", d.Minutes())
	}
	return fmt.Sprintf("%g h", d.Hours())
}
