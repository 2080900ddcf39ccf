package measure_test

import (
	"fmt"

	"silowright/geometry/measure"
)

// A tape is read in inches and fractions, or in whatever the note says.
func ExampleParseLength() {
	for _, s := range []string{"34 1/2", "10-1/2 in", "2 ft 10 3/4 in", "883 mm"} {
		l, err := measure.ParseLength(s, measure.UnitInch)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(l.Both(measure.UnitInch))
	}
	// Output:
	// 34 1/2 in (876.3 mm)
	// 10 1/2 in (266.7 mm)
	// 34 3/4 in (882.7 mm)
	// 34 3/4 in (883 mm)
}

// A fraction is written to the parts of an inch that the tape has.
func ExampleLength_Inch() {
	l := 60 * measure.Millimetre // 2.362 in
	fmt.Println(l.Inch(16), l.Inch(64))
	// Output: 2 3/8 2 23/64
}
