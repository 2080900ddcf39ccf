package manifold

import (
	"math"
	"testing"

	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/sea"
)

// With the same flow out of every tee, a pipe with N outlets loses F times what
// it would lose with all the water running to its end: Christiansen's F = 1/(m+1)
// + 1/(2N) + √(m−1)/(6N²) ("Irrigation by Sprinkling", University of California
// Bulletin 670, 1942), m being the power of the flow that the loss goes by.
//
// The outlets are made alike by valves that take thousands of times what the
// manifold does. A loss by the square, m = 2, is that of fittings alone; the
// formula rounds the exact sum, (N+1)(2N+1)/(6N²), by nothing at all. A loss by
// smooth pipe goes by a power near 1.75, which is what Blasius' law of friction
// has, and must lie within what Reynolds numbers down the pipe make of it.
func TestMultipleOutlets(t *testing.T) {
	factor := func(m float64, n int) float64 {
		return 1/(m+1) + 1/(2*float64(n)) + math.Sqrt(m-1)/(6*float64(n)*float64(n))
	}
	// Values as tables print them.
	for n, want := range map[int]float64{2: .625, 3: .519, 4: .469, 5: .440, 8: .398, 10: .385, 15: .367, 20: .359} {
		near(t, "F for m = 2", factor(2, n), want, 0.0006)
	}
	for _, n := range []int{2, 3, 4, 5, 8, 10, 15, 20} {
		for _, tt := range []struct {
			what string
			pipe flow.Pipe
			m    float64
			tol  float64
		}{
			{"fittings, m = 2", flow.Pipe{Bore: 100, K: 1}, 2, 5e-4},
			{"rough pipe, f nearly constant", flow.Pipe{Bore: 100, Length: metre, Roughness: 5}, 2, 0.01},
			{"smooth pipe, Blasius' power", flow.Pipe{Bore: 100, Length: metre}, 1.75, 0.02},
		} {
			water, err := sea.At(35, 15)
			if err != nil {
				t.Fatal(err)
			}
			s := System{Water: water, Pump: Pump{Curve: steady(t, 500)}, Main: tt.pipe}
			for i := range n {
				s.Laterals = append(s.Laterals, Lateral{Hose: flow.Pipe{Bore: 25}, Valve: Valve{K: 1e4}})
				if i > 0 {
					s.Segments = append(s.Segments, tt.pipe)
				}
			}
			r := solved(t, s)
			if r.Evenness < 0.999 {
				t.Fatalf("evenness %v: not the even limit", r.Evenness)
			}
			lost := r.Main.Loss
			for _, p := range r.Segments {
				lost += p.Loss
			}
			// The main is the first of N lengths, with the whole flow in it.
			near(t, tt.what, float64(lost/(r.Main.Loss*measure.Length(n))), factor(tt.m, n), tt.tol)
		}
	}
}
