package rolls_test

import (
	"math"
	"math/rand/v2"
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
				if d >= 1 {
					continue
				}
				if d == 0 { // two in one corner: part them at random
					dx, dy, d = 1e-3*(r.Float64()-0.5), 1e-3*(r.Float64()-0.5), 1e-3
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

// An outside search for short runs: it never passes the bound, and never finds
// a run more than 3 % shorter than the patterns give.
func TestAgainstSearch(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	met := 0
	for _, c := range []struct {
		w  float64
		ns []int
	}{
		{0.5, []int{4}}, {0.9, []int{3, 5}}, {1, []int{5, 8}}, {1.2, []int{6, 7}}, {1.4, []int{6, 7, 9}},
		{1.5, []int{7, 8}}, {1.73, []int{5, 7}}, {2, []int{7, 8, 9}}, {2.3, []int{6, 7, 10}}, {2.6, []int{7, 8}},
	} {
		for _, n := range c.ns {
			l, err := rolls.Shortest(disc(1), n, measure.Length(c.w+1), 0)
			if err != nil {
				t.Fatal(err)
			}
			extent, bound := l.Length.MM()-1, l.Bound.MM()-1
			for range 60 {
				if s, ok := settle(r, n, c.w, 0.999*bound); ok {
					t.Errorf("strip %g, n %d: a search fits them in %g, the bound is %g; %g apart", c.w, n, 0.999*bound, bound, s.closest())
				}
				if _, ok := settle(r, n, c.w, 0.97*extent); ok {
					t.Errorf("strip %g, n %d: a search fits them in %g, %s takes %g", c.w, n, 0.97*extent, l.Pattern, extent)
				}
				if s, ok := settle(r, n, c.w, 1.03*extent); ok {
					met++
					if s.closest() < 1-1e-6 {
						t.Errorf("the search is wrong: %g apart", s.closest())
					}
				}
			}
		}
	}
	if met < 300 {
		t.Errorf("the search fits runs 3 %% longer only %d times: it is too weak to say anything", met)
	}
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

// The greatest least distance m of n points in a unit square is proven: R.
// Peikert, D. Würtz, M. Monagan and C. de Groot, Packing circles in a square,
// 1991, and earlier authors (values from memory). So n discs of 1 on a strip a
// little narrower than 1/m need a run longer than that; and on 1/m the
// patterns reach those of the optima that are regular.
func TestAgainstSquare(t *testing.T) {
	for _, c := range []struct {
		n       int
		m       float64
		reached bool
	}{
		{2, math.Sqrt2, true}, {3, math.Sqrt(6) - math.Sqrt2, true}, {4, 1, true}, {5, math.Sqrt2 / 2, true},
		{6, math.Sqrt(13) / 6, true}, {7, 4 - 2*math.Sqrt(3), false}, {8, (math.Sqrt(6) - math.Sqrt2) / 2, false},
		{9, 0.5, true}, {10, 0.421279543983903, false}, {16, 1. / 3, true}, {25, 0.25, true},
	} {
		narrow := 0.999 / c.m
		l, err := rolls.Shortest(disc(1), c.n, measure.Length(1+narrow), 0)
		if err != nil {
			t.Fatal(err)
		}
		if e := l.Length.MM() - 1; e < narrow {
			t.Errorf("n %d: %s of %g on a strip of %g beats the proven square of %g", c.n, l.Pattern, e, narrow, 1/c.m)
		}
		if b := l.Bound.MM() - 1; b > 1/c.m*1.002 && c.reached {
			t.Errorf("n %d: bound %g on %g is over the proven %g", c.n, b, narrow, 1/c.m)
		}
		l, err = rolls.Shortest(disc(1), c.n, measure.Length(1+(1+1e-11)/c.m), 0)
		if err != nil {
			t.Fatal(err)
		}
		e := l.Length.MM() - 1
		t.Logf("n %d: %s, %.5f, proven square %.5f, bound %.5f", c.n, l.Pattern, e, 1/c.m, l.Bound.MM()-1)
		if reached := e < (1+1e-6)/c.m; reached != c.reached {
			t.Errorf("n %d: %s of %.6f, reaches the square's %.6f: %v, want %v", c.n, l.Pattern, e, 1/c.m, reached, c.reached)
		}
	}
}
