package manifold_test

import (
	"fmt"

	"silowright/geometry/measure"
	"silowright/nursery/manifold"
)

// A pump by three points off an invented sheet: on a point it is the sheet's
// own, between them it does not rise.
func ExampleCurveByPoints() {
	at := func(lmin, metres float64) manifold.Point {
		return manifold.Point{Flow: measure.Flow(lmin) * measure.LitrePerMinute, Head: measure.Length(metres) * measure.Metre}
	}
	c, err := manifold.CurveByPoints([]manifold.Point{at(0, 12), at(200, 10), at(400, 6)})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f m\n", c.Head(200*measure.LitrePerMinute).Metres())
	between := c.Head(300 * measure.LitrePerMinute).Metres()
	fmt.Println(between < 10 && between > 6)
	// Output:
	// 10.0 m
	// true
}
