package rolls

import (
	"fmt"
	"math"

	"silowright/geometry/measure"
)

// pattern is a way of laying pieces along a strip, in units of the distance
// from centre to centre.
type pattern interface {
	name() string
	// extent is how far the first and the last centre of n are apart along the
	// strip at least; it does not fall as n grows.
	extent(n int) float64
	// points are n centres over that extent, the first at x = 0, y from 0 up.
	points(n int) []point
}

type point struct{ x, y float64 }

// patterns are all that a strip of width w may be laid with.
func patterns(s Shape, w float64) []pattern {
	if s == Square {
		return []pattern{squares(w)}
	}
	all := staggers(w)
	if p, ok := leaning(w); ok {
		all = append(all, p)
	}
	if p, ok := shiftedColumns(w); ok {
		all = append(all, p)
	}
	all = append(all, blockRuns(w)...)
	if p, ok := triangleRun(w); ok {
		all = append(all, p)
	}
	return all
}

// least is the pattern with the shortest extent for n: the first of those that
// are equal within the slack, so that the plainest is named.
func least(all []pattern, n int) (pattern, float64) {
	best, extent := all[0], all[0].extent(n)
	for _, p := range all[1:] {
		if e := p.extent(n); e < extent-slack {
			best, extent = p, e
		}
	}
	return best, extent
}

// Shortest lays n pieces on a roll of the width and returns the shortest of all
// patterns known here. Squares lie in rows and that is always the least. Discs
// are tried in rows, in a zigzag, in hexagonal rows and columns at every
// spacing that the width allows, in columns shifted by what the width leaves,
// in spread columns followed by shifted ones, three leaning on each other, and
// in triangles that hang from one edge and stand on the other in turn, each
// with every start; a short run also with each of these lying across the roll.
//
// It is an error when a length is not finite or not positive, when the piece is
// wider than the roll or the roll over 10,000 times the piece, or when the count
// is not from 1 to [MostPieces].
func Shortest(p Piece, n int, width, gap measure.Length) (Layout, error) {
	f, err := check(p, width, gap)
	if err != nil {
		return Layout{}, err
	}
	if n < 1 || n > MostPieces {
		return Layout{}, fmt.Errorf("count: %d is out of range, allowed: 1 to %d; hint: how many are cut", n, MostPieces)
	}
	w := f.strip(width)
	if w < 0 {
		return Layout{}, fmt.Errorf("width: %g mm is narrower than the %s of %g mm, allowed: %g mm and more; hint: a wider roll",
			width.MM(), p.Shape, p.Across.MM(), p.Across.MM())
	}
	return shortest(f, p, n, width, gap), nil
}

func shortest(f frame, p Piece, n int, width, gap measure.Length) Layout {
	w := f.strip(width)
	l := Layout{Piece: p, Width: width, Gap: gap, Count: n}
	run, extent := least(patterns(p.Shape, w), n)
	if p.Shape == Disc {
		if r, e, ok := crosswise(n, w, extent); ok {
			run, extent, l.Turned = r, e, true
		}
	}
	return f.layout(l, run, extent)
}

// layout fills in what follows from the pattern and its extent along the roll.
func (f frame) layout(l Layout, run pattern, extent float64) Layout {
	l.Pattern, l.run, l.unit = run.name(), run, f.unit
	l.Length = f.length(extent)
	l.Bound = min(f.length(bound(l.Piece.Shape, l.Count, f.strip(l.Width))), l.Length)
	l.Best = float64(l.Length-l.Bound) <= 1e-9*float64(l.Length)
	return l
}

// bound is the least extent that n pieces can have on a strip of width w.
func bound(s Shape, n int, w float64) float64 {
	if s == Square {
		return squares(w).extent(n)
	}
	return math.Max(groemer(n, w), blocks(n, w))
}

// groemer is Groemer's inequality for centres no closer than 1: a convex set of
// area A and perimeter P holds at most 2A/√3 + P/2 + 1 of them. With a strip of
// w by the extent e that is n ≤ 2we/√3 + w + e + 1.
//
// H. Groemer, Über die Einlagerung von Kreisen in einen konvexen Bereich,
// Mathematische Zeitschrift 73 (1960), cited from memory.
func groemer(n int, w float64) float64 {
	return math.Max(0, (float64(n)-1-w)/(1+2*w/math.Sqrt(3)))
}

// blocks bounds the extent by blocks of q + 1 centres in their order along the
// strip. Put such a block in its order across: neighbours are 1 or more apart,
// so a block that is e long gains √(1 − e²) or more across at each of the q
// steps, and q·√(1 − e²) ≤ w. Each block begins with the centre that ends the
// one before, so the extents add up. With q = 1 it is the zigzag.
func blocks(n int, w float64) float64 {
	block := func(q int) float64 {
		v := w / float64(q)
		if v >= 1 {
			return 0
		}
		return math.Sqrt(1 - v*v)
	}
	least := 0.0
	for q := int(w) + 1; q <= int(2*w)+2; q++ {
		full, rest := (n-1)/q, (n-1)%q
		e := float64(full) * block(q)
		if rest > 0 {
			e += block(rest)
		}
		least = math.Max(least, e)
	}
	return least
}
