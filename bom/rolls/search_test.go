package rolls_test

import (
	"math"
	"math/rand/v2"
	"os"
	"testing"

	"silowright/bom/rolls"
	"silowright/geometry/measure"
)

// spots are centres of discs of diameter 1.
type spots struct{ x, y []float64 }

// settle moves n centres, thrown at random into a strip w wide and e long,
// apart by the overlap of each pair until none overlaps; it knows nothing of
// patterns. It reports whether they came apart to within 1e-7.
func settle(r *rand.Rand, n int, w, e float64) (spots, bool) {
	s := spots{make([]float64, n), make([]float64, n)}
	for i := range s.x {
		s.x[i], s.y[i] = e*r.Float64(), w*r.Float64()
	}
	for range 3000 {
		worst := 0.0
		for i := range s.x {
			for j := range i {
				dx, dy := s.x[i]-s.x[j], s.y[i]-s.y[j]
				d := math.Hypot(dx, dy)
				if d >= 1 || d == 0 {
					continue
				}
				worst = math.Max(worst, 1-d)
				push := 0.5 * (1 + 1e-8 - d) / d
				s.x[i], s.y[i] = s.x[i]+push*dx, s.y[i]+push*dy
				s.x[j], s.y[j] = s.x[j]-push*dx, s.y[j]-push*dy
			}
		}
		for i := range s.x {
			s.x[i], s.y[i] = math.Min(math.Max(s.x[i], 0), e), math.Min(math.Max(s.y[i], 0), w)
		}
		if worst < 1e-7 {
			return s, true
		}
	}
	return s, false
}

// closest is the least distance between two centres.
func (s spots) closest() float64 {
	least := math.Inf(1)
	for i := range s.x {
		for j := range i {
			least = math.Min(least, math.Hypot(s.x[i]-s.x[j], s.y[i]-s.y[j]))
		}
	}
	return least
}

func TestExplore(t *testing.T) {
	if os.Getenv("EXPLORE") == "" {
		t.Skip()
	}
	r := rand.New(rand.NewPCG(3, 4))
	for _, w := range []float64{0.9, 1, 1.2, 1.4, 1.5, 1.6, 1.73, 1.9, 2, 2.3, 2.6, 3} {
		for n := 2; n <= 16; n++ {
			l, _ := rolls.Shortest(disc(1), n, measure.Length(w+1), 0)
			e := float64(l.Length) - 1
			if e < 1e-3 || l.Best {
				continue
			}
			lo := float64(l.Bound) - 1
			best := e
			for try := 0; try < 150; try++ {
				target := best * (1 - 0.002 - 0.03*r.Float64()*r.Float64())
				if target < lo {
					target = lo
				}
				if _, ok := settle(r, n, w, target); ok {
					best = target
				}
			}
			if best < e*0.999 {
				t.Logf("w %.2f n %2d: %s %.4f, found %.4f (%.1f%%) bound %.4f", w, n, l.Pattern, e, best, 100*(1-best/e), lo)
			}
		}
	}
}
