package rolls

import (
	"fmt"

	"silowright/geometry/measure"
)

// Fit lays as many pieces as it can on a piece of roll or a sheet of the width
// and length, by the patterns of [Shortest] along it and across it (then the
// layout is Turned; not tried when the length is over 10,000 times the piece).
// None fit when the piece is larger than the sheet: a layout of Count 0 and no
// error. Best says that the bound allows no further piece.
//
// It is an error when a length is not finite or not positive, or the width over
// 10,000 or the length over 1,000,000 times the piece.
func Fit(p Piece, width, length, gap measure.Length) (Layout, error) {
	f, err := check(p, width, gap)
	if err != nil {
		return Layout{}, err
	}
	if err := positive("length", length, "how long the piece of roll or the sheet is"); err != nil {
		return Layout{}, err
	}
	if float64(length)/f.across > mostAlong {
		return Layout{}, fmt.Errorf("length: %g mm is over %d times the piece of %g mm, allowed: up to that; hint: one of the two is in the wrong unit",
			length.MM(), mostAlong, p.Across.MM())
	}
	w, e := f.strip(width), f.strip(length)
	if w < 0 || e < 0 {
		return Layout{Piece: p, Width: width, Gap: gap, Best: true}, nil
	}
	n := most(patterns(p.Shape, w), e)
	turned := 0
	if p.Shape == Disc && e <= mostAcross {
		turned = most(patterns(p.Shape, e), w)
	}
	if turned <= n {
		l := shortest(f, p, n, width, gap)
		l.Best = bound(p.Shape, n+1, w) > e+slack
		return l, nil
	}
	l := across(f, p, turned, width, length, gap)
	l.Best = bound(p.Shape, turned+1, w) > e+slack
	return l, nil
}

// across lays n with the pattern running across a sheet of the length.
func across(f frame, p Piece, n int, width, length, gap measure.Length) Layout {
	run, _ := least(patterns(p.Shape, f.strip(length)), n)
	far := 0.0
	for _, q := range run.points(n) {
		far = max(far, q.y)
	}
	return f.layout(Layout{Turned: true, Piece: p, Width: width, Gap: gap, Count: n}, run, far)
}

// most is how many of the best pattern have no more than the extent.
func most(all []pattern, extent float64) int {
	best := 0
	for _, p := range all {
		fits := func(n int) bool { return p.extent(n) <= extent+slack }
		if !fits(best + 1) {
			continue
		}
		low, high := best+1, 2*(best+1)
		for fits(high) {
			low, high = high, 2*high
		}
		for low+1 < high {
			if mid := low + (high-low)/2; fits(mid) {
				low = mid
			} else {
				high = mid
			}
		}
		best = low
	}
	return best
}
