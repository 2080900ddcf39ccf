package work

import (
	"silowright/bom"
	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/path"
)

type length = measure.Length

const in = measure.Inch

// handSilo is a silo filled in by hand with round numbers, so that hours can
// be checked with a pencil. It is invented.
func handSilo() geometry.Silo {
	s := geometry.Silo{Build: 20}
	s.Spec.Drum = geometry.Drum{Label: "blue", Outside: measure.Length(2000 / 3.141592653589793)} // 2 m round
	s.Spec.Ring.Width = 30
	s.Lattice = geometry.Lattice{Openings: 6, Travel: 3000}
	s.Lattice.AllPilots = append(s.Lattice.AllPilots, make([]path.Point, 18)...)
	s.Ring = geometry.Ring{Screws: 20}
	s.Sealant.Run = 1800
	// A slot of 110 × 40 mm with round ends is 140 + 40π mm round.
	for i := range s.Slots {
		s.Slots[i] = geometry.Slot{Top: 50, Sill: 90, Length: 110, CornerR: 20}
	}
	s.Outlet = geometry.Hole{Name: "outlet", Part: "body", PipeOutside: 2.375 * in, Joint: geometry.JointCouplings, Fits: geometry.Fits{Coupling: geometry.CouplingFit{Outside: 70}}}
	s.Inlet = geometry.Hole{Name: "inlet", Part: "base", PipeOutside: 1.9 * in, Joint: geometry.JointCouplings, Fits: geometry.Fits{Coupling: geometry.CouplingFit{Outside: 60}}}
	s.Drain = geometry.Hole{Name: "drain", Part: "base", Joint: geometry.JointStopper}
	s.Pipe = geometry.PipeSilo{Wrap: 500, Resin: geometry.Bead{Run: 500},
		Hole: geometry.Hole{Name: "pipe silo outlet", Part: "pipe silo", PipeOutside: 1.9 * in, Joint: geometry.JointGrommet}}
	return s
}

// build is so many drum and pipe silos of one kind.
func build(drum, pipe int) []bom.Batch {
	return []bom.Batch{{Silo: handSilo(), Drum: drum, Pipe: pipe}}
}
