package cover

import (
	"math"
	"math/bits"
)

// huge stands for any number too large to matter; three of them can be added.
const huge = math.MaxInt64 / 4

// times is a·b for a, b ≥ 0, or huge.
func times(a, b int64) int64 {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	if hi != 0 || lo > huge {
		return huge
	}
	return int64(lo)
}

// share is a·b/c rounded up for a, b ≥ 0 and c > 0, or huge.
func share(a, b, c int64) int64 {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	if hi == 0 {
		q := lo / uint64(c)
		if q*uint64(c) != lo {
			q++
		}
		return int64(min(q, huge))
	}
	if hi >= uint64(c) {
		return huge
	}
	q, r := bits.Div64(hi, lo, uint64(c))
	if q >= huge {
		return huge
	}
	if r != 0 {
		q++
	}
	return int64(q)
}

// upto is a/b rounded up for a ≥ 0 and b > 0.
func upto(a, b int64) int64 {
	q := a / b
	if q*b != a {
		q++
	}
	return q
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
