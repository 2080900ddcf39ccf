package seed_test

import (
	"fmt"

	"silowright/geometry/measure"
	"silowright/nursery/seed"
)

// Three level spoons of 5 mL, counted (invented): 615 seed in 15 mL are 41 000
// a litre; the spoons differ by 7 either way, which with Student's t for two
// degrees of freedom, 4.303, is 4.303 · 7/√3 · 200 = 3 478 a litre.
func ExampleCount() {
	spoon := 5 * measure.Millilitre
	c, err := seed.Count([]seed.Sample{{Volume: spoon, Count: 212}, {Volume: spoon, Count: 198}, {Volume: spoon, Count: 205}}, 0.95)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f a litre, %.0f to %.0f\n", c.PerLitre.Mean, c.PerLitre.Low, c.PerLitre.High)
	// Output: 41000 a litre, 37522 to 44478
}
