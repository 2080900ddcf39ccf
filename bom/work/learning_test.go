package work

import (
	"math"
	"testing"
)

// Unit factors of the learning curve as the tables of operations textbooks
// print them.
func TestFactor(t *testing.T) {
	for _, c := range []struct {
		reason string
		r      float64
		n      int
		want   float64
		within float64
	}{
		{"90 %, unit 20: table of unit values, operations textbooks", 0.90, 20, 0.634, 0.0005},
		{"90 %, unit 10: the formula by hand", 0.90, 10, 0.7047, 0.00005},
		{"85 %, unit 10: the formula by hand", 0.85, 10, 0.5828, 0.00005},
		{"80 %, unit 2: what 80 % means", 0.80, 2, 0.8, 1e-12},
		{"80 %, unit 10: the formula by hand", 0.80, 10, 0.4765, 0.00005},
		{"80 %, unit 20: the formula by hand", 0.80, 20, 0.3812, 0.00005},
		{"the first unit is the measure of the others", 0.6, 1, 1, 0},
		{"no learning", 1, 1000, 1, 0},
		{"there is no unit before the first", 0.9, 0, 0, 0},
	} {
		if got := factor(c.n, c.r); math.Abs(got-c.want) > c.within {
			t.Errorf("%s: got %.5f, want %.5f", c.reason, got, c.want)
		}
	}
}

// A worked question of an operations textbook: at 60 % the 20th unit took
// 0.2 h; the 40th takes 0.12 h, the 80th 0.072 h.
func TestFactorWorkedQuestion(t *testing.T) {
	first := 0.2 / factor(20, 0.6)
	for n, want := range map[int]float64{40: 0.12, 80: 0.072} {
		if got := first * factor(n, 0.6); math.Abs(got-want) > 1e-12 {
			t.Errorf("unit %d: got %g h, want %g h", n, got, want)
		}
	}
}

// Sum against adding up, smallest terms first.
func TestSum(t *testing.T) {
	for _, r := range []float64{0.5, 0.5000001, 0.51, 0.6, 0.7, 0.8, 0.85, 0.9, 0.95, 0.999, 1} {
		for _, n := range []int{1, 2, 31, 32, 33, 34, 50, 100, 1000, 12345, 100_000} {
			want := 0.0
			for k := n; k >= 1; k-- {
				want += factor(k, r)
			}
			if got := Sum(n, r); math.Abs(got-want) > 1e-11*want {
				t.Errorf("r %g, n %d: got %.15g, want %.15g", r, n, got, want)
			}
		}
	}
	if Sum(0, 0.9) != 0 || Sum(-3, 0.9) != 0 {
		t.Error("no units take no time")
	}
}

// At 50 % the sum is that of the harmonic series: H(100) = 5.18737751763962
// (any mathematical table), here also from its asymptotic series with Euler's
// constant.
func TestSumHarmonic(t *testing.T) {
	if got := Sum(100, 0.5); math.Abs(got-5.18737751763962) > 1e-13 {
		t.Errorf("H(100): got %.15g", got)
	}
	const euler = 0.5772156649015329
	n := 1e9
	if got, want := Sum(1e9, 0.5), math.Log(n)+euler+1/(2*n); math.Abs(got-want) > 1e-12 {
		t.Errorf("H(1e9): got %.15g, want %.15g", got, want)
	}
}

func FuzzSum(f *testing.F) {
	f.Add(20, 0.9)
	f.Add(-1, math.NaN())
	f.Add(math.MaxInt, 0.5)
	f.Fuzz(func(t *testing.T, n int, r float64) {
		s, last := Sum(n, r), factor(n, r)
		if math.IsNaN(s) || math.IsInf(s, 0) || s < 0 || s > float64(max(n, 0))*(1+1e-9) {
			t.Fatalf("Sum(%d, %g) = %g", n, r, s)
		}
		if !(last >= 0 && last <= 1) {
			t.Fatalf("Factor(%d, %g) = %g", n, r, last)
		}
	})
}
