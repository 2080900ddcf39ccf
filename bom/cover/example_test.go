package cover_test

import (
	"fmt"

	"silowright/bom/cover"
)

// Twenty-five screws, in boxes of 12 at 60.00 or single at 6.00 (invented): two
// boxes and one screw.
func ExampleLeast() {
	c, err := cover.Least(25, []cover.Pack{
		{Holds: 12, Tiers: []cover.Tier{{From: 1, Price: 6000}}},
		{Holds: 1, Tiers: []cover.Tier{{From: 1, Price: 600}}},
	})
	fmt.Println(c.Counts, c.Cost, c.Proven, err)
	// Output: [2 1] 12600 true <nil>
}
