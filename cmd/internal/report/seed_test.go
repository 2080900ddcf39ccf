package report

import "testing"

// A season that needs none of a kind says so, and one silo is not "silos".
func TestSilosAtMost(t *testing.T) {
	for _, c := range []struct {
		n, week int
		want    string
	}{{0, 0, "no pipe silo"}, {1, 3, "1 pipe silo, in week 3"}, {6, 4, "6 pipe silos, in week 4"}} {
		if got := SilosAtMost(c.n, "pipe", c.week); got != c.want {
			t.Errorf("%d: %q, want %q", c.n, got, c.want)
		}
	}
}
