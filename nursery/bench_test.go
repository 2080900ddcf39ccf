package nursery

import (
	"fmt"
	"testing"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/manifold"
)

// A whole farm is held against its floor: the head of one silo reckoned once
// for each silo, in the same run. "heads" is how many such a study costs a
// silo.
func BenchmarkSolve(b *testing.B) {
	for _, n := range []int{20, 1000, 10000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			f := pumped(manifold.Point{Flow: 0, Head: 6 * metre}, manifold.Point{Flow: measure.Flow(60*n) * measure.LitrePerMinute, Head: 3 * metre})
			f.Manifold.Pipe, f.Manifold.Height = geometry.PipeRef{Size: "8"}, 200
			if n > 100 {
				f.Manifold.Spacing = 60 * metre / measure.Length(n)
			}
			f.Main.Pipe, f.Main.Length = geometry.PipeRef{Size: "8"}, 10*metre
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
			floor := testing.Benchmark(func(b *testing.B) {
				for b.Loop() {
					silo.Head(q)
				}
			})
			b.ReportMetric(each/float64(n)/float64(floor.NsPerOp()), "heads")
			b.ReportMetric(s.Evenness, "evenness")
		})
	}
}
