package seed

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

// The largest opening that holds 1 mm sieved seed is 1 mm without a margin
// (about 1 mm clams on 1 mm mesh: a field note), 1/1.2 mm with 20 %.
func TestLargestOpening(t *testing.T) {
	near(t, "no margin", float64(LargestOpening(1, 0)), 1, 0)
	near(t, "20 %", float64(LargestOpening(1, 0.2)), 1/1.2, 1e-15)
	m := Mesh{Opening: LargestOpening(0.83, 0.2)}
	if !m.Holds(0.83, 0.2) || m.Holds(0.82, 0.2) {
		t.Error("the largest opening must hold its own seed and none smaller")
	}
}

// ovalSieve returns the side of the square opening through which seed just
// passes endways, whose largest section is an oval of the given height and
// thickness: √((h² + w²)/2), the oval lying along the square's diagonal. Plain
// geometry.
func ovalSieve(height, thickness float64) Sieve {
	return Sieve(math.Sqrt((height*height + thickness*thickness) / 2))
}

// An oval section laid on every slant through a square or oblong opening: none
// passes that ovalSieve and Square say is held. Brute force over the slants.
func TestOvalThroughOpening(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	passed := 0
	for range 2000 {
		h, w := 0.5+rng.Float64(), 0.2+0.8*rng.Float64()
		a := 0.3 + rng.Float64()
		b := a * (1 + rng.Float64())
		if rng.IntN(2) == 0 {
			b = a
		}
		passes := false
		for i := range 3600 {
			s, c := math.Sincos(float64(i) * math.Pi / 3600)
			if math.Hypot(h*c, w*s) <= a && math.Hypot(h*s, w*c) <= b {
				passes = true
				break
			}
		}
		held := ovalSieve(h, w) > Mesh{Opening: measure.Length(a), Long: measure.Length(b)}.Square()
		if passes {
			passed++
		}
		if passes && held {
			t.Fatalf("%g × %g passes %g × %g but is said to be held", h, w, a, b)
		}
		if a == b && !passes && !held && math.Abs(math.Hypot(h, w)/math.Sqrt2-a) > 1e-5 {
			t.Fatalf("%g × %g is held by a square of %g but is said to pass", h, w, a)
		}
	}
	if passed < 200 || passed > 1800 {
		t.Errorf("%d of 2000 passed: the test looks at one side only", passed)
	}
}

// A finer mesh holds smaller seed, of any of the stock meshes.
func TestFinerHoldsSmaller(t *testing.T) {
	meshes := stock.Meshes()
	for _, a := range meshes {
		for _, b := range meshes {
			fine, coarse := Mesh{Opening: a.Opening, Long: a.OpeningLong}, Mesh{Opening: b.Opening, Long: b.OpeningLong}
			if fine.Square() < coarse.Square() && fine.SmallestHeld(0.2) >= coarse.SmallestHeld(0.2) {
				t.Errorf("%s is finer than %s but holds no smaller seed", a.Name, b.Name)
			}
		}
	}
}

func TestLadder(t *testing.T) {
	meshes := []Mesh{
		{"drum 1.6", Drum, 1.6, 0}, {"fine", Pipe, 0.435, 0}, {"drum 3", Drum, 3, 0},
		{"middle", Pipe, 0.808, 0}, {"coarse pipe", Pipe, 2, 0}, {"too coarse", Drum, 9, 0},
	}
	got, err := Ladder(meshes, 0.6, 7, 0.25)
	if err != nil {
		t.Fatal(err)
	}
	want := []Rung{
		{meshes[1], 0.6, 1.01, false},
		{meshes[3], 1.01, 2, false},
		{meshes[0], 2, 3.75, false},
		{meshes[2], 3.75, 7, true},
	}
	// 1e-12 mm: the rounding of a product.
	if d := cmp.Diff(want, got, cmp.Comparer(func(a, b Sieve) bool { return math.Abs(float64(a-b)) < 1e-12 })); d != "" {
		t.Errorf("ladder (-want +got):\n%s", d)
	}
	if _, err := Ladder(meshes, 0.5, 7, 0.25); err == nil || !strings.Contains(err.Error(), "at most 0.4 mm") {
		t.Errorf("seed of 0.5 mm: got %v, want an opening of at most 0.4 mm", err)
	}
	for _, c := range [][2]Sieve{{2, 1}, {0, 1}, {Sieve(math.NaN()), 1}, {1, Sieve(math.Inf(1))}} {
		if _, err := Ladder(meshes, c[0], c[1], 0.25); err == nil {
			t.Errorf("from %v to %v: no error", c[0], c[1])
		}
	}
}
