package sticks_test

import (
	"fmt"

	"silowright/bom/sticks"
	"silowright/geometry/measure"
)

// Nine pieces of 38 in and five of 22 in out of 120 in pipe at an invented
// 14.50 a stick, 1/8 in lost to each cut. Three of 38 in fill a stick and leave
// no 22 in; five of 22 in leave no 38 in; and 452 in of pieces do not come out of
// three sticks.
func ExampleSolve() {
	in := measure.Inch
	task := sticks.Task{
		Pieces: []sticks.Piece{{Length: 38 * in, Count: 9, Name: "riser"}, {Length: 22 * in, Count: 5, Name: "stub"}},
		Stock:  []sticks.Stock{{Length: 120 * in, Price: 1450, Have: -1, Name: "10 ft"}},
		Kerf:   in / 8,
	}
	plan, err := sticks.Solve(task)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range plan.Patterns {
		fmt.Printf("%d × %v, %s in left\n", p.Count, p.Takes, p.Offcut.Inch(8))
	}
	fmt.Println(plan.Used[0], "sticks,", plan.Cost, "cents, proven", plan.Proven)
	// Output:
	// 3 × [3 0], 5 5/8 in left
	// 1 × [0 5], 9 3/8 in left
	// 4 sticks, 5800 cents, proven true
}
