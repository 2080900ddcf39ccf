package flow_test

import (
	"fmt"

	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/sea"
)

// How high the water stands over the invert of an invented outlet of 2 in bore
// at 10 gpm and at 30.
func ExampleOutlet_Level() {
	w, err := sea.At(30, 15)
	if err != nil {
		fmt.Println(err)
		return
	}
	o := flow.Outlet{Bore: 2 * measure.Inch, Length: 3 * measure.Inch, Roughness: flow.PlasticRoughness, Entrance: 0.5}
	for _, gpm := range []float64{10, 30} {
		l, _ := o.Level(w, measure.Flow(gpm)*measure.GallonPerMinute)
		fmt.Println(gpm, "gpm:", l.Both(measure.UnitInch))
	}
	// Output:
	// 10 gpm: 1 13/16 in (45.7 mm)
	// 30 gpm: 5 11/16 in (144.9 mm)
}

// The friction factor of a smooth pipe at Re 100 000 is 0.018 (the Moody
// diagram).
func ExampleFriction() {
	f, _ := flow.Friction(1e5, 0)
	fmt.Printf("%.3f\n", f)
	// Output: 0.018
}
