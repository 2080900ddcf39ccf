package nursery

import (
	"fmt"
	"testing"
	"time"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/manifold"
)

// A whole farm is held against its floor: the head of one silo reckoned once
// for each silo, in the same run. "heads" is how many such a study costs a
// silo.
func BenchmarkSolve(b *testing.B) {
	for _, c := range []struct {
		n     int
		piped bool
	}{{20, true}, {1000, true}, {10000, true}, {10000, false}} {
		n := c.n
		b.Run(fmt.Sprint(n, "/piped=", c.piped), func(b *testing.B) {
			f := pumped(manifold.Point{Flow: 0, Head: 6 * metre}, manifold.Point{Flow: measure.Flow(min(60*n, 1e5)) * measure.LitrePerMinute, Head: 3 * metre})
			if c.piped {
				f.Manifold.Pipe, f.Manifold.Height = geometry.PipeRef{Size: "8"}, 200
				f.Manifold.Spacing = min(700, 60*metre/measure.Length(n))
				f.Main.Pipe, f.Main.Length = geometry.PipeRef{Size: "8"}, 10*metre
			}
			counts := []Count{{invented(b), n, n / 2}}
			var s Study
			for b.Loop() {
				var err error
				if s, err = Solve(counts, f); err != nil {
					b.Fatal(err)
				}
			}
			each := float64(b.Elapsed()) / float64(b.N)
			silo := flow.InWater{Silo: s.Groups[0].Silo, Water: s.Water}
			q := s.Silos[0].Flow
			const calls = 2000
			start := time.Now()
			for range calls {
				silo.Head(q)
			}
			floor := float64(time.Since(start)) / calls
			b.ReportMetric(each/float64(n)/floor, "heads")
			b.ReportMetric(s.Evenness, "evenness")
		})
	}
}
