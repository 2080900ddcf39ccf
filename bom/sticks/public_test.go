package sticks_test

import (
	"math/rand/v2"
	"testing"

	"silowright/bom/sticks"
	"silowright/geometry/measure"
)

// u120 is instance u120_00 of binpack1 in the OR-Library (J. E. Beasley,
// Journal of the Operational Research Society 41, 1990, 1069-1072; the class is
// E. Falkenauer's, Journal of Heuristics 2, 1996, 5-30): 120 items, bins of
// 150, optimum 48. From memory; that there are 120 items from 20 to 100, and
// that their sum needs 48 bins at least, agrees with what was published.
var u120 = []int{
	42, 69, 67, 57, 93, 90, 38, 36, 45, 42, 33, 79, 27, 57, 44, 84, 86, 92, 46, 38,
	85, 33, 82, 73, 49, 70, 59, 23, 57, 72, 74, 69, 33, 42, 28, 46, 30, 64, 29, 74,
	41, 49, 55, 98, 80, 32, 25, 38, 82, 30, 35, 39, 57, 84, 62, 50, 55, 27, 30, 36,
	20, 78, 47, 26, 45, 41, 58, 98, 91, 96, 73, 84, 37, 93, 91, 43, 73, 85, 81, 79,
	71, 80, 76, 83, 41, 78, 70, 23, 42, 87, 43, 84, 60, 55, 49, 78, 73, 62, 36, 44,
	94, 69, 32, 96, 70, 84, 58, 78, 25, 80, 58, 66, 83, 24, 98, 60, 42, 43, 43, 39,
}

func bins(items []int, room measure.Length) sticks.Task {
	t := sticks.Task{Stock: []sticks.Stock{{Length: room, Price: 1, Have: -1}}}
	for _, l := range items {
		t.Pieces = append(t.Pieces, sticks.Piece{Length: measure.Length(l), Count: 1})
	}
	return t
}

func TestU120(t *testing.T) {
	if len(u120) != 120 {
		t.Fatalf("%d items", len(u120))
	}
	if p := solve(t, bins(u120, 150)); p.Cost != 48 || !p.Proven {
		t.Errorf("%d, proven %v, want 48", p.Cost, p.Proven)
	}
}

// uniform is an instance of the class u120: items drawn from 20 to 100.
func uniform(seed uint64, n int) (items []int) {
	r := rand.New(rand.NewPCG(seed, 120))
	for range n {
		items = append(items, 20+r.IntN(81))
	}
	return items
}

// triplets is an instance of the class t60, t120 …: bins of 1000, each filled
// by three items without a rest, the first from 380 to 490, the second from 250
// to half of what is left (Falkenauer 1996, as above). As no bin has room to
// spare, the optimum is the number of bins that it is made from.
func triplets(seed uint64, bins int) (items []int) {
	r := rand.New(rand.NewPCG(seed, 60))
	for range bins {
		a := 380 + r.IntN(111)
		b := 250 + r.IntN((1000-a)/2-250+1)
		items = append(items, a, b, 1000-a-b)
	}
	return items
}

// The published class t60 by construction: 20 bins.
func TestTriplets(t *testing.T) {
	for seed := range uint64(20) {
		if p := solve(t, bins(triplets(seed, 20), 1000)); p.Cost != 20 || !p.Proven {
			t.Errorf("seed %d: %d, bound %d, want 20", seed, p.Cost, p.Bound)
		}
	}
}

// The published class u120: proven, each.
func TestUniform(t *testing.T) {
	for seed := range uint64(20) {
		if p := solve(t, bins(uniform(seed, 120), 150)); !p.Proven {
			t.Errorf("seed %d: %d, bound %d", seed, p.Cost, p.Bound)
		}
	}
}
