package rolls_test

import (
	"fmt"

	"silowright/bom/rolls"
	"silowright/geometry/measure"
)

// Six discs 22 in across on a roll 48 in wide: two side by side take 66 in of
// roll; with every second pair shifted by the 4 in to spare it is
// 22 + 2·√(22² − 4²) = 65.27 in.
func ExampleShortest() {
	in := measure.Inch
	l, err := rolls.Shortest(rolls.Piece{Shape: rolls.Disc, Across: 22 * in}, 6, 48*in, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(l.Count, "discs,", l.Pattern+":", l.Length.Both(measure.UnitInch))
	// Output: 6 discs, shifted columns: 65 1/4 in (1657.8 mm)
}
