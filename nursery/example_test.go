package nursery_test

import (
	"fmt"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/nursery"
	"silowright/nursery/flow"
	"silowright/nursery/sea"
)

// A solved silo of an invented drum as the water sees it, at 9 gpm.
func ExampleOfSilo() {
	drum := geometry.Drum{Label: "blue", Count: 1, Outside: 580, Height: 880, Wall: 5, FootOutside: 540, FootHeight: 55, HeadRecess: 20,
		Hoops: []geometry.Hoop{{From: 270, To: 310, Outside: 602}, {From: 575, To: 615, Outside: 602}}}
	silos, err := geometry.Solve(geometry.Job{Kinds: []geometry.Spec{geometry.DefaultSpec(drum, measure.UnitInch)}})
	if err != nil {
		fmt.Println(err)
		return
	}
	water, err := sea.At(30, 15)
	if err != nil {
		fmt.Println(err)
		return
	}
	study, err := flow.Solve(water, nursery.OfSilo(&silos[0], nursery.Stocking{}), 9*measure.GallonPerMinute)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("the outlet alone takes up to", study.BeforeSlots.Both(measure.UnitInch))
	// Output: the outlet alone takes up to 20.4 gpm (77.3 L/min)
}
