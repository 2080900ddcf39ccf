package sea_test

import (
	"fmt"

	"silowright/nursery/sea"
)

// UNESCO Technical Papers in Marine Science 44 gives 1027.67547 kg/m³ for
// salinity 35 at 5 °C.
func ExampleAt() {
	w, err := sea.At(35, 5)
	fmt.Printf("%.3f %v\n", float64(w.Density), err)
	_, err = sea.At(60, 5)
	fmt.Println(err != nil)
	// Output:
	// 1027.675 <nil>
	// true
}
