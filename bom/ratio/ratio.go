// Package ratio compares ratios of whole numbers exactly, as prices by what
// they hold.
package ratio

import "math/bits"

// Compare compares a/b with c/d for a, c ≥ 0 and b, d > 0: −1, 0 or 1. The
// products are taken in 128 bits, so nothing overflows; outside that range the
// answer means nothing.
func Compare(a, b, c, d int64) int {
	h1, l1 := bits.Mul64(uint64(a), uint64(d))
	h2, l2 := bits.Mul64(uint64(c), uint64(b))
	switch {
	case h1 < h2 || h1 == h2 && l1 < l2:
		return -1
	case h1 == h2 && l1 == l2:
		return 0
	}
	return 1
}
