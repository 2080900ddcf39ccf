package geometry_test

import (
	"fmt"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// blue is an invented drum as the tape reads it.
func blue() geometry.Drum {
	const in = measure.Inch
	return geometry.Drum{Label: "blue", Count: 1, Outside: geometry.OutsideFromCircumference(72.125 * in),
		Height: 34.5 * in, Wall: in * 3 / 16, FootOutside: 21.125 * in, FootHeight: 2.25 * in, HeadRecess: in * 7 / 8,
		Hoops: []geometry.Hoop{{From: 10.5 * in, To: 12 * in, Outside: 23.875 * in}, {From: 22.75 * in, To: 24.25 * in, Outside: 23.875 * in}}}
}

// A drum is solved with the usual lattice, ring, holes and pipe silo, and says
// what is wrong with it.
func ExampleSolve() {
	job := geometry.Job{Name: "invented", DrumSilos: 1, Kinds: []geometry.Spec{geometry.DefaultSpec(blue(), measure.UnitInch)}}
	silos, err := geometry.Solve(job)
	if err != nil {
		fmt.Println(err)
		return
	}
	s := silos[0]
	fmt.Println("saw the base off", s.Stations.BaseCut.Both(measure.UnitInch), "above the ground")
	fmt.Println("lattice:", s.Lattice.Openings, "openings")
	fmt.Println("worst finding:", geometry.Worst(s.Findings))
	// Output:
	// saw the base off 22 3/4 in (577.9 mm) above the ground
	// lattice: 4 openings
	// worst finding: caution
}

// Is this saw right for that pipe? A 2 in saw does not pass 2 in pipe, which is
// 2.375 in outside.
func ExampleSolveHole() {
	h, err := geometry.SolveHole(geometry.HoleSpec{Name: "outlet", Pipe: geometry.PipeRef{Size: "2", Series: "sch40"}, Saw: 2 * measure.Inch,
		Joint: geometry.JointCouplings, Radius: 11.5 * measure.Inch, Wall: measure.Inch * 3 / 16})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(geometry.Worst(geometry.HoleChecks(h, measure.UnitInch)))
	for _, s := range geometry.SawsFor(h) {
		fmt.Println("would do:", s.Name(measure.UnitInch))
	}
	// Output:
	// stop
	// would do: 2 1/2 in (64 mm)
	// would do: 2 9/16 in (65 mm)
	// would do: 2 5/8 in (67 mm)
}

// A flat flange 4 in across leaves this gap on a wall of 11 5/16 in radius:
// 11.3125 − √(11.3125² − 2²) = 0.178 in.
func ExampleSagitta() {
	fmt.Printf("%.3f in\n", geometry.Sagitta(11.3125*measure.Inch, 4*measure.Inch).Inches())
	// Output: 0.178 in
}
