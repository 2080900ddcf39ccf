package bom

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"silowright/geometry/measure"
)

// layDown saws pieces one by one, longest first, in plain floating point: the
// sticks begun, or +Inf when one is too short.
func layDown(pieces []Piece, stick float64) float64 {
	n, left := 0.0, -1.0
	kerf := math.Inf(1)
	for _, p := range pieces {
		kerf = min(kerf, float64(p.Kerf))
	}
	for _, p := range pieces {
		for range p.Count {
			takes := float64(p.Length + p.Kerf)
			if left < takes-1e-7 {
				n, left = n+1, stick+kerf
			}
			if left < takes-1e-7 {
				return math.Inf(1)
			}
			left -= takes
		}
	}
	return n
}

func TestSticks(t *testing.T) {
	for _, c := range []struct {
		reason string
		stick  measure.Length
		pieces []Piece
		want   int64
		whole  bool
	}{
		// Σ(l + k) ≤ L + k: in half millimetres L = 12000, k = 6, l = 1995 gives
		// six, where dividing L by l + k gives five.
		{"the last piece needs no cut", 6000, []Piece{{997.5, 3, 6}}, 1, true},
		{"a seventh does", 6000, []Piece{{997.5, 3, 7}}, 2, true},
		// L = 132: 44 × 2, 33 × 3, 12 × 6 add up to 1.96 sticks and take three
		// (exhaustive search).
		{"what does not join", 132, []Piece{{44, 0, 2}, {33, 0, 3}, {12, 0, 6}}, 3, true},
		{"short pieces go into what the long ones leave", 100, []Piece{{60, 0, 2}, {20, 0, 2}}, 2, true},
		{"one to the hair", 3048, []Piece{{3048, 1.5875, 1}}, 1, true},
		{"one too long", 3048, []Piece{{3048.001, 0, 1}}, 0, false},
		{"a later one too long", 100, []Piece{{200, 0, 1}, {20, 0, 2}}, 0, false},
		{"a thousand of the same", 10 * measure.Foot, []Piece{{14 * in, in / 16, 1000}}, 125, true},
		{"none", 100, nil, 0, true},
		{"longer than any pack", largestPack, []Piece{{1e300, 0, 1}}, 0, false},
	} {
		n, whole := sticks(c.pieces, new(big.Rat).SetFloat64(float64(c.stick)))
		if n != c.want || whole != c.whole {
			t.Errorf("%s: %d, %v, want %d", c.reason, n, whole, c.want)
		}
	}
}

// At random: the count is that of pieces laid down one by one, never under the
// sum of lengths, and a further piece never makes it fewer.
func TestSticksAtRandom(t *testing.T) {
	r := rand.New(rand.NewPCG(44, 33))
	sixteenths := func(n int) measure.Length { return in / 16 * measure.Length(1+r.IntN(n)) }
	for range 3000 {
		var pieces []Piece
		sum := 0.0
		kerf := in / 16
		for range 1 + r.IntN(5) {
			p := Piece{sixteenths(800), kerf, 1 + r.IntN(30)}
			pieces = addPiece(pieces, p)
			sum += float64(p.Count) * float64(p.Length)
		}
		stick := sixteenths(2000)
		size := new(big.Rat).SetFloat64(float64(stick))
		n, whole := sticks(pieces, size)
		one := layDown(pieces, float64(stick))
		if whole == math.IsInf(one, 1) || whole && float64(n) != one {
			t.Fatalf("%v from %v: %d (%v), laid down %v", pieces, stick, n, whole, one)
		}
		if !whole {
			continue
		}
		if float64(n)*float64(stick) < sum-1e-6 {
			t.Fatalf("%v from %v: %d are too few", pieces, stick, n)
		}
		if more, ok := sticks(addPiece(append([]Piece(nil), pieces...), Piece{sixteenths(800), kerf, 1}), size); ok && more < n {
			t.Fatalf("%v from %v: %d, one piece more %d", pieces, stick, n, more)
		}
	}
}
