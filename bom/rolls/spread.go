package rolls

import (
	"fmt"

	"silowright/geometry/measure"
)

// Sheet is a piece of roll or a sheet on hand.
type Sheet struct{ Width, Length measure.Length }

// Use is what one sheet on hand gives.
type Use struct {
	Sheet  int // its place in the list handed in, from 0
	Layout Layout
}

// Spread shares n pieces over the sheets on hand, each used once: the sheet
// that gives most goes first, equal ones in their order in the list, and when
// one sheet gives all that is left, the one that gives least of those is taken,
// so that the larger stays whole. It returns which sheet gives how many, in the
// order of use, and how many pieces are left over to be bought for.
//
// It is an error when a length is not finite or not positive or n is not from
// 0 to [MostPieces]; a sheet smaller than the piece gives none and is no error.
func Spread(p Piece, n int, sheets []Sheet, gap measure.Length) (uses []Use, left int, err error) {
	if n < 0 || n > MostPieces {
		return nil, 0, fmt.Errorf("count: %d is out of range, allowed: 0 to %d; hint: how many are cut", n, MostPieces)
	}
	gives := make([]Layout, len(sheets))
	for i, s := range sheets {
		if gives[i], err = Fit(p, s.Width, s.Length, gap); err != nil {
			return nil, 0, fmt.Errorf("sheet %d on hand: %w", i+1, err)
		}
	}
	taken := make([]bool, len(sheets))
	for left = n; left > 0; {
		best := -1
		for i, l := range gives {
			if taken[i] || l.Count == 0 {
				continue
			}
			if best < 0 || better(l.Count, gives[best].Count, left) {
				best = i
			}
		}
		if best < 0 {
			break
		}
		taken[best] = true
		l := gives[best]
		if l.Count > left {
			l = l.only(left, sheets[best].Length)
		}
		uses = append(uses, Use{Sheet: best, Layout: l})
		left -= l.Count
	}
	return uses, left, nil
}

// better says that a sheet that gives a is taken before one that gives b.
func better(a, b, left int) bool {
	switch {
	case a >= left && b >= left:
		return a < b
	case a >= left || b >= left:
		return a >= left
	}
	return a > b
}

// only lays n, fewer than l has, on the same sheet: along it if that is no
// longer than the sheet, so that the rest of it stays in one piece.
func (l Layout) only(n int, length measure.Length) Layout {
	f := frame{unit: float64(l.Piece.Across + l.Gap), across: float64(l.Piece.Across)}
	along := shortest(f, l.Piece, n, l.Width, l.Gap)
	if float64(along.Length-length) <= slack*f.unit {
		return along
	}
	return across(f, l.Piece, n, l.Width, length, l.Gap)
}
