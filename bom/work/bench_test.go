package work

import "testing"

func BenchmarkReckonAndPlan(b *testing.B) {
	for _, c := range []struct {
		name       string
		drum, pipe int
	}{{"20+12", 20, 12}, {"1000+600", 1000, 600}, {"10000+6000", 10_000, 6000}} {
		batches, r := build(c.drum, c.pipe), DefaultRates()
		b.Run("hours/"+c.name, func(b *testing.B) {
			for b.Loop() {
				Reckon(batches, r)
			}
		})
		b.Run("days/"+c.name, func(b *testing.B) {
			for b.Loop() {
				if _, err := Plan(batches, r); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
