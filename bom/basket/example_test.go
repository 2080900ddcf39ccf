package basket_test

import (
	"fmt"

	"silowright/bom/basket"
)

// Two items at two suppliers, in cents (invented). Apart, each where it is
// cheaper, they cost 90.00 and 12.00 of shipping; both from the first cost
// 95.00 and 6.00.
func ExampleCheapest() {
	c, err := basket.Cheapest(
		[]basket.Item{{5000, 5600}, {4500, 4000}},
		[]basket.Seller{{Shipping: 600, FreeFrom: -1}, {Shipping: 600, FreeFrom: -1}})
	fmt.Println(c.Seller, c.Cost, c.Proven, err)
	// Output: [0 0] 10100 true <nil>
}
