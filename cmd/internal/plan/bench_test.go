package plan

import (
	"fmt"
	"testing"
)

// BenchmarkCurve is the cost curve with the named points: some fifty builds
// costed.
func BenchmarkCurve(b *testing.B) {
	for _, n := range []int{20, 10000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			pipes := n / 2
			p, err := DemoFor(Counts{Drum: &n, Pipe: &pipes, Dry: true})
			if err != nil {
				b.Fatal(err)
			}
			for b.Loop() {
				if _, err := p.Site.Points(n, pipes); err != nil {
					b.Fatal(err)
				}
				if _, err := p.Site.Curve(n, pipes); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
