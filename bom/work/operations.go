package work

import (
	"math"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// The stages of the day plan that operations belong to. Their order and what
// they wait for is in stages.go.
const (
	stageSetUp  = "set-up"
	stageClean  = "clean"
	stagePart   = "part"
	stageOpen   = "open"
	stageHoles  = "holes"
	stageRing   = "ring"
	stageSeal   = "seal"
	stageJoints = "joints"
	stageLeak   = "leak"
	stagePipe   = "pipe"
	stageScreen = "screen"
	stageTrim   = "trim"
	stageOutlet = "pipe-outlet"
	stageSoak   = "soak"   // rinse and first soak
	stageAgain  = "again"  // second soak
	stageFinish = "finish" // empty and sign off
)

// drumWork lists the work on one drum silo in the order of the build steps.
// The amounts are the solved silo's; the numbers of rinses are the build
// steps'. Every silo gives the same operations in the same order.
func (r Rates) drumWork(s geometry.Silo) []Operation {
	round := s.Spec.Drum.Circumference()
	slots := 2 * s.Slots[0].Outline().Length()
	out := []Operation{
		{stage: stageClean, Step: "drum", ID: "drum-clean", Name: "wash, check and measure the drum", Unit: "drums", PerSilo: 1, Each: r.Clean, Why: "one drum a silo"},
		{stage: stagePart, Step: "mark", ID: "drum-mark", Name: "mark datum and level lines", Unit: "drums", PerSilo: 1, Each: r.Mark, Why: "one drum a silo"},
		{stage: stagePart, Step: "base-cut", ID: "drum-base-cut", Name: "saw the base off", Unit: "m", PerSilo: round.Metres(), Each: r.Jigsaw, Why: "once round the wall"},
		{stage: stagePart, Step: "ring-cut", ID: "drum-ring-cut", Name: "saw the ring strip off", Unit: "m", PerSilo: round.Metres(), Each: r.Jigsaw, Why: "once round the wall"},
		{stage: stagePart, Step: "ring-cut", ID: "drum-part-edges", Name: "smooth mouth, strip and rim", Unit: "m", PerSilo: 4 * round.Metres(), Each: r.Smooth, Why: "both edges of both cuts"},
		{stage: stageOpen, Step: "lattice", ID: "drum-lattice-bore", Name: "bore the lattice's corners", Unit: "holes", PerSilo: float64(len(s.Lattice.AllPilots)), Each: r.Bore, Why: "three a lattice opening"},
		{stage: stageOpen, Step: "lattice", ID: "drum-lattice-saw", Name: "saw the lattice", Unit: "m", PerSilo: s.Lattice.Travel.Metres(), Each: r.Jigsaw, Why: "the lattice's travel, corner holes taken off"},
		{stage: stageOpen, Step: "lattice", ID: "drum-lattice-edges", Name: "smooth the lattice, both faces", Unit: "m", PerSilo: 2 * s.Lattice.Travel.Metres(), Each: r.Smooth, Why: "the lattice's travel, twice"},
		{stage: stageHoles, Step: "holes", ID: "drum-holes", Name: "cut the wall holes", Unit: "holes", PerSilo: float64(wallHoles(s)), Each: r.Hole, Why: "outlet, inlet, drain"},
		{stage: stageHoles, Step: "handles", ID: "drum-slot-bore", Name: "bore the handle slots' ends", Unit: "holes", PerSilo: 4, Each: r.Bore, Why: "one at each end of two slots"},
		{stage: stageHoles, Step: "handles", ID: "drum-slot-saw", Name: "saw the handle slots", Unit: "m", PerSilo: slots.Metres(), Each: r.Jigsaw, Why: "round both slots"},
		{stage: stageHoles, Step: "handles", ID: "drum-slot-edges", Name: "round the handle slots' edges", Unit: "m", PerSilo: 2 * slots.Metres(), Each: r.Smooth, Why: "round both slots, both faces"},
		{stage: stageRing, Step: "mesh", ID: "drum-mesh", Name: "cut the mesh disc and lay it in", Unit: "discs", PerSilo: 1, Each: r.MeshDisc, Why: "one a silo"},
		{stage: stageRing, Step: "ring", ID: "drum-ring", Name: "fit the ring", Unit: "rings", PerSilo: 1, Each: r.Ring, Why: "one a silo"},
		{stage: stageRing, Step: "ring", ID: "drum-ring-trim", Name: "saw the ring to length", Unit: "m", PerSilo: s.Spec.Ring.Width.Metres(), Each: r.Jigsaw, Why: "once across the ring"},
		{stage: stageRing, Step: "ring", ID: "drum-screws", Name: "screw the ring", Unit: "screws", PerSilo: float64(s.Ring.Screws), Each: r.Screw, Why: "the ring's screws"},
		{stage: stageSeal, Step: "sealant", ID: "drum-bead", Name: "seal the ring's edge", Unit: "m", PerSilo: s.Sealant.Run.Metres(), Each: r.Bead, Why: "the ring's inner face, once round"},
	}
	o, i := s.Outlet, s.Inlet
	stub := 1 // the hose adapter
	if i.Joint.Makeup().Nipple {
		stub = 2 // and the outer coupling
	}
	out = append(out,
		Operation{Step: "outlet", ID: "drum-outlet-cut", Name: "cut the outlet's pipe", Unit: "cuts", PerSilo: 1, Each: r.PipeCut, Why: "the nipple or pipe through the wall"},
		Operation{Step: "outlet", ID: "drum-outlet-sockets", Name: "cement the outlet", Unit: "sockets", PerSilo: sockets(o), Each: r.Socket, Why: "the sockets of its joint"},
		Operation{Step: "outlet", ID: "drum-outlet-bead", Name: "seal the outlet's couplings", Unit: "m", PerSilo: faces(o).Metres(), Each: r.Bead, Why: "round the face of each coupling"},
		Operation{Step: "outlet", ID: "drum-outlet-grommet", Name: "fit the outlet's grommet or fitting", Unit: "fittings", PerSilo: fitted(o), Each: r.Grommet, Why: "when the joint is put into the wall by hand, and the adapter in a threaded end"},
		Operation{Step: "inlet", ID: "drum-inlet-cut", Name: "cut the inlet's pipes", Unit: "cuts", PerSilo: cuts(i), Each: r.PipeCut, Why: "the stub, and the nipple between couplings"},
		Operation{Step: "inlet", ID: "drum-inlet-sockets", Name: "cement the inlet", Unit: "sockets", PerSilo: sockets(i) + float64(stub), Each: r.Socket, Why: "those of its joint, and both ends of the stub that take cement"},
		Operation{Step: "inlet", ID: "drum-inlet-bead", Name: "seal the inlet's couplings", Unit: "m", PerSilo: faces(i).Metres(), Each: r.Bead, Why: "round the face of each coupling"},
		Operation{Step: "inlet", ID: "drum-inlet-grommet", Name: "fit the inlet's grommet or fitting", Unit: "fittings", PerSilo: fitted(i), Each: r.Grommet, Why: "when the joint is put into the wall by hand, and the adapter in a threaded end"},
		Operation{Step: "inlet", ID: "drum-drain", Name: "stop the drain", Unit: "stoppers", PerSilo: stoppers(s.Drain), Each: r.Stopper, Why: "one a silo"},
	)
	for k := range out {
		if out[k].stage == "" {
			out[k].stage = stageJoints
		}
	}
	return append(out,
		Operation{stage: stageLeak, Step: "seat", ID: "drum-seat", Name: "seat the body in the base", Unit: "silos", PerSilo: 1, Each: r.Seat, Why: "once a silo"},
		Operation{stage: stageLeak, Step: "leak", ID: "drum-leak", Name: "leak test", Unit: "tests", PerSilo: 1, Each: r.LeakTest, Why: "once a silo, the standing not counted"},
		Operation{stage: stageSoak, Step: "cure", ID: "drum-soak", Name: "rinse and fill to soak", Unit: "rinses", PerSilo: 1, Each: r.Rinse, Why: "after the full cure"},
		Operation{stage: stageAgain, Step: "cure", ID: "drum-again", Name: "drain and fill again", Unit: "rinses", PerSilo: 1, Each: r.Rinse, Why: "after the first soak"},
		Operation{stage: stageFinish, Step: "cure", ID: "drum-finish", Name: "drain, rinse and sign off", Unit: "rinses", PerSilo: 1, Each: r.Rinse, Why: "after the second soak"},
	)
}

// pipeWork lists the work on one pipe silo in the order of the build steps.
func (r Rates) pipeWork(s geometry.Silo) []Operation {
	h := s.Pipe.Hole
	return []Operation{
		{stage: stagePipe, Step: "pipe", ID: "pipe-cut", Name: "cut the pipe silo and its short pipe", Unit: "cuts", PerSilo: 2, Each: r.PipeCut, Why: "one each"},
		{stage: stagePipe, Step: "pipe", ID: "pipe-edges", Name: "smooth the pipe silo's ends", Unit: "m", PerSilo: 2 * s.Pipe.Wrap.Metres(), Each: r.Smooth, Why: "both ends"},
		{stage: stagePipe, Step: "pipe", ID: "pipe-hole", Name: "cut the side hole", Unit: "holes", PerSilo: 1, Each: r.Hole, Why: "one a pipe silo"},
		{stage: stageScreen, Step: "screen", ID: "pipe-screen", Name: "stretch and clamp the screen", Unit: "screens", PerSilo: 1, Each: r.Screen, Why: "one a pipe silo"},
		{stage: stageScreen, Step: "screen", ID: "pipe-resin", Name: "run the resin", Unit: "m", PerSilo: s.Pipe.Resin.Run.Metres(), Each: r.Bead, Why: "round the pipe's edge"},
		{stage: stageTrim, Step: "screen", ID: "pipe-trim", Name: "take the clamp off, trim the screen", Unit: "screens", PerSilo: 1, Each: r.Trim, Why: "one a pipe silo"},
		{stage: stageOutlet, Step: "pipe-outlet", ID: "pipe-outlet-sockets", Name: "cement joint and reducing adapter", Unit: "sockets", PerSilo: sockets(h) + 1, Each: r.Socket, Why: "the adapter, and the sockets of its joint"},
		{stage: stageOutlet, Step: "pipe-outlet", ID: "pipe-outlet-bead", Name: "seal the couplings", Unit: "m", PerSilo: faces(h).Metres(), Each: r.Bead, Why: "round the face of each coupling"},
		{stage: stageOutlet, Step: "pipe-outlet", ID: "pipe-outlet-grommet", Name: "fit the short pipe's grommet or fitting", Unit: "fittings", PerSilo: fitted(h) + float64(s.Outlet.Makeup().Adapters), Each: r.Grommet, Why: "when the joint is put into the wall by hand, and the adapter in a threaded end"},
		{stage: stageSoak, Step: "cure", ID: "pipe-soak", Name: "rinse and lay in water to soak", Unit: "rinses", PerSilo: 1, Each: r.PipeRinse, Why: "after the full cure"},
		{stage: stageAgain, Step: "cure", ID: "pipe-again", Name: "change the water", Unit: "rinses", PerSilo: 1, Each: r.PipeRinse, Why: "after the first soak"},
		{stage: stageFinish, Step: "cure", ID: "pipe-finish", Name: "rinse and sign off", Unit: "rinses", PerSilo: 1, Each: r.PipeRinse, Why: "after the second soak"},
	}
}

// wallHoles is how many holes go through a drum silo's wall.
func wallHoles(s geometry.Silo) int {
	n := 0
	for _, h := range s.Holes() {
		if h.Part != s.Pipe.Hole.Part {
			n++
		}
	}
	return n
}

// sockets is how many sockets of a hole's joint are cemented.
func sockets(h geometry.Hole) float64 { return float64(h.Makeup().Sockets) }

// cuts is how many pieces of pipe an inlet takes: its stub, and the nipple
// where the joint has one.
func cuts(h geometry.Hole) float64 {
	if h.Makeup().Nipple {
		return 2
	}
	return 1
}

// faces is the bead under the flat faces of a hole's joint.
func faces(h geometry.Hole) measure.Length {
	return measure.Length(float64(h.Makeup().Faces) * math.Pi * float64(h.Coupling.Outside))
}

// fitted is 1 where the joint is put into the wall by hand, and 1 more for each
// adapter screwed into it.
func fitted(h geometry.Hole) float64 {
	m := h.Makeup()
	if m.Fitted {
		return float64(1 + m.Adapters)
	}
	return 0
}

func stoppers(h geometry.Hole) float64 {
	if h.Joint == geometry.JointStopper {
		return 1
	}
	return 0
}
