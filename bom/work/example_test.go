package work_test

import (
	"fmt"

	"silowright/bom/work"
)

// With an 80 % learning curve each doubling of the count takes 80 % of the time
// a unit: four units take 1 + 0.8 + 0.702 + 0.64 times the first.
func ExampleSum() {
	fmt.Printf("%.3f\n", work.Sum(4, 0.8))
	// Output: 3.142
}
