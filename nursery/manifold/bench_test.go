package manifold

import (
	"fmt"
	"math"
	"math/rand"
	"testing"
	"time"

	"silowright/geometry/measure"
	"silowright/nursery/flow"
)

// Solve is held against its floor: the loss of every pipe of the system
// reckoned once, by flow.PipeLoss, in the same run. "passes" is how many such
// passes a solution costs; near-linear time is a figure that hardly grows with
// the count of laterals. In "even" every silo of a wide manifold flows, in
// "starved" most of a narrow one get nothing, which is the hard case.
func BenchmarkSolve(b *testing.B) {
	for _, n := range []int{1, 20, 100, 1000, 10000} {
		even := cove(b, n)
		wide := measure.Length(math.Sqrt(float64(n)/12 + 1))
		even.Main.Bore = min(even.Main.Bore*wide, 2000)
		for i := range even.Segments {
			even.Segments[i].Bore = min(even.Segments[i].Bore*wide, 2000)
			even.Segments[i].K = 0
			if n > 100 { // no pipe is wide enough for a kilometre of silos
				even.Segments[i].Length *= measure.Length(100 / float64(n))
			}
		}
		if r, err := Solve(even); err != nil || r.Evenness < 0.5 {
			b.Fatalf("evenness %v, %v: not the even case", r.Evenness, err)
		}
		for _, c := range []struct {
			what string
			s    System
		}{{"even", even}, {"starved", random(rand.New(rand.NewSource(1)), n, true)}} {
			b.Run(fmt.Sprint(c.what, "/", n), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if _, err := Solve(c.s); err != nil {
						b.Fatal(err)
					}
				}
				each := float64(b.Elapsed()) / float64(b.N)
				b.ReportMetric(each/float64(n), "ns/lateral")
				b.ReportMetric(each/floor(c.s), "passes")
			})
		}
	}
}

// floor is the time in ns of one pass over all pipes, the best of several.
func floor(s System) float64 {
	best := math.Inf(1)
	sink := measure.Length(0)
	for range 20 {
		start := time.Now()
		for _, l := range s.Laterals {
			h, _ := flow.PipeLoss(s.Water, l.Hose, measure.LitrePerSecond)
			sink += h
		}
		for _, p := range s.Segments {
			h, _ := flow.PipeLoss(s.Water, p, 5*measure.LitrePerSecond)
			sink += h
		}
		best = min(best, float64(time.Since(start)))
	}
	if !sink.Finite() {
		return math.NaN()
	}
	return best
}

// Twenty drum silos whose own hydraulics are asked at every step.
func BenchmarkSolveDrums(b *testing.B) {
	s := cove(b, 20)
	for i := range s.Laterals {
		s.Laterals[i].Silo = drum(s.Water, 5)
	}
	for b.Loop() {
		if _, err := Solve(s); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkThrottle(b *testing.B) {
	s := cove(b, 20)
	for b.Loop() {
		if _, err := Throttle(s, 20*measure.LitrePerMinute); err != nil {
			b.Fatal(err)
		}
	}
}
