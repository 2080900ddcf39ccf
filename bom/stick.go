package bom

import (
	"math"
	"math/big"
	"slices"

	"silowright/geometry/measure"
)

// Piece is a number of equal pieces to be sawn off something sold by length.
type Piece struct {
	Length measure.Length `json:"length_mm"`
	Kerf   measure.Length `json:"kerf_mm"` // of the saw
	Count  int            `json:"count"`
}

// addPiece adds to pieces, longest first, equal ones in one row.
func addPiece(pieces []Piece, p Piece) []Piece {
	for i, q := range pieces {
		if q.Length == p.Length && q.Kerf == p.Kerf {
			pieces[i].Count += p.Count
			return pieces
		}
	}
	pieces = append(pieces, p)
	slices.SortStableFunc(pieces, func(a, b Piece) int {
		switch {
		case a.Length > b.Length:
			return -1
		case a.Length < b.Length:
			return 1
		}
		return 0
	})
	return pieces
}

// nanometres is l in whole millionths of a millimetre: sixty-fourths of an
// inch and tenths of a millimetre are held exactly.
func nanometres(l measure.Length) int64 { return int64(math.Round(float64(l) * 1e6)) }

// sticks is how many sticks of one length the pieces are sawn from when each
// stick is filled with the longest pieces still to be sawn and the next is
// begun when one does not fit (next fit, decreasing). That is never too few,
// if seldom the fewest; and unlike closer methods it has the property that a
// further piece never makes it fewer. A stick gives pieces as long as the sum
// of length and kerf is no more than the stick and one kerf: the last piece
// needs no cut. It is false when a piece is longer than the stick.
func sticks(pieces []Piece, stick *big.Rat) (int64, bool) {
	whole := new(big.Rat).Mul(stick, big.NewRat(1e6, 1))
	whole.Add(whole, big.NewRat(1, 2))
	length := new(big.Int).Quo(whole.Num(), whole.Denom()).Int64() // at most largestPack × 10⁶, an int64
	kerf := int64(math.MaxInt64)
	for _, p := range pieces {
		kerf = min(kerf, nanometres(p.Kerf))
	}
	n, left := int64(0), int64(0)
	for _, p := range pieces {
		takes, count := nanometres(min(p.Length, largestPack)+p.Kerf), int64(p.Count)
		if count <= 0 || takes <= 0 {
			continue
		}
		a := (length + kerf) / takes
		if a == 0 || p.Length > largestPack {
			return 0, false
		}
		here := min(count, left/takes)
		left -= here * takes
		if count -= here; count > 0 {
			more := (count + a - 1) / a
			n += more
			left = length + kerf - (count-(more-1)*a)*takes
		}
	}
	return n, true
}
