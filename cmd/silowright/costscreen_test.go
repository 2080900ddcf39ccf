package main

import "testing"

// A part of the cost that rounds to nothing is not told as nothing.
func TestShareText(t *testing.T) {
	for x, want := range map[float64]string{0: "0.0 %", 0.0001: "under 0.1 %", 0.0005: "0.1 %", 0.5: "50.0 %"} {
		if got := shareText(x); got != want {
			t.Errorf("%v: %q, want %q", x, got, want)
		}
	}
}
