package stock_test

import (
	"fmt"

	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

// A nominal size is not what the pipe measures: 2 in pipe is 2.375 in outside
// (ASTM D1785). Each number says where it is from.
func ExamplePipeOf() {
	p, ok := stock.PipeOf("2", stock.Schedule40)
	fmt.Printf("%v %.3f ± %.3f in\n", ok, p.Outside.Inches(), p.Tolerance.Inches())
	fmt.Println(p.OutsideOrigin.Source)
	_, ok = stock.PipeOf("7", stock.Schedule40)
	fmt.Println(ok)
	// Output:
	// true 2.375 ± 0.006 in
	// ASTM D1785
	// false
}

// The hole saws of the series, in the unit of the shop.
func ExampleHoleSaws() {
	for _, s := range stock.HoleSaws() {
		if s.Diameter >= 2*measure.Inch && s.Diameter <= 2.25*measure.Inch {
			fmt.Println(s.Name(measure.UnitInch))
		}
	}
	// Output:
	// 2 in (51 mm)
	// 2 1/16 in (52 mm)
	// 2 1/8 in (54 mm)
	// 2 1/4 in (57 mm)
}
