package ratio

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"
)

// math/big's rationals, the general-purpose peer, say the same, at the ends of
// the range too.
func TestCompareAgainstBig(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	draw := func(low int64) int64 {
		switch r.IntN(4) {
		case 0:
			return low
		case 1:
			return math.MaxInt64 - r.Int64N(2)
		case 2:
			return low + r.Int64N(10)
		}
		return low + r.Int64N(math.MaxInt64-low)
	}
	seen := map[int]int{}
	for range 10_000 {
		a, b, c, d := draw(0), draw(1), draw(0), draw(1)
		want := big.NewRat(a, b).Cmp(big.NewRat(c, d))
		seen[want]++
		if got := Compare(a, b, c, d); got != want {
			t.Errorf("%d/%d with %d/%d: %d, want %d", a, b, c, d, got, want)
		}
	}
	if len(seen) != 3 {
		t.Errorf("answers drawn: %v", seen)
	}
}
