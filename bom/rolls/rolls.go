// Package rolls lays equal discs or equal squares on a roll or sheet of mesh:
// the shortest piece of roll that gives so many, and the most that a piece of
// given size gives.
//
// X runs along the roll from its cut end, Y across it from one selvedge. The
// gap is the room between two neighbours, for the kerf or the scissors; none is
// left to the edges: take a ragged selvedge or a crooked end off the width and
// length first. Discs may be cut anywhere. Squares stay with the weave, so the
// gap between them is meant along and across the roll.
//
// A layout of discs is the best of the patterns that [Shortest] lists and is seldom proven to
// be the shortest, so each comes with a bound that no layout can pass: see
// [Layout].
package rolls

import (
	"fmt"
	"math"

	"silowright/geometry/measure"
)

// Shape is what is cut: a disc or a square.
type Shape int

// The two shapes that mesh is cut to.
const (
	Disc   Shape = iota // may be marked and cut anywhere
	Square              // its sides along and across the weave
)

// String returns "disc" or "square".
func (s Shape) String() string {
	if s == Square {
		return "square"
	}
	return "disc"
}

// Piece is one of the equal pieces to be cut.
type Piece struct {
	Shape  Shape
	Across measure.Length // diameter of a disc, side of a square
}

// Place is the centre of a piece: X along the roll from its cut end, Y across
// from one selvedge.
type Place struct{ X, Y measure.Length }

// Layout is a number of equal pieces laid on a roll or sheet.
type Layout struct {
	// Pattern in words: "one row", "rows", "zigzag", "hexagonal rows",
	// "hexagonal columns", "shifted columns", "spread and shifted columns",
	// "leaning triangle", "triples" or "triangles"; empty when nothing is laid.
	Pattern string
	Turned  bool // the pattern runs across the roll and not along it
	Piece   Piece
	Width   measure.Length // of the roll
	Gap     measure.Length // between neighbours
	Count   int            // pieces laid

	// Length is the piece of roll that is used, from the cut end to the far
	// edge of the last piece.
	Length measure.Length
	// Bound is a length below which no layout of this count on this width can
	// come, whatever its pattern; never more than Length.
	Bound measure.Length
	// Best says that the layout is proven: from Shortest, that no shorter piece
	// of roll gives the count; from Fit, that the piece of roll gives no more.
	Best bool

	run  pattern
	unit float64 // mm from centre to centre of two that touch across the gap
}

// Places returns the centres, along the run of the pattern; as many as Count.
func (l Layout) Places() []Place {
	if l.Count == 0 || l.run == nil {
		return nil
	}
	half := float64(l.Piece.Across) / 2
	places := make([]Place, 0, l.Count)
	for _, p := range l.run.points(l.Count) {
		if l.Turned {
			p.x, p.y = p.y, p.x
		}
		places = append(places, Place{X: measure.Length(half + l.unit*p.x), Y: measure.Length(half + l.unit*p.y)})
	}
	return places
}

const (
	// mostAcross is how many times the piece the roll may be wide: a disc of
	// 1 mm from a roll of 10 m.
	mostAcross = 10_000
	// mostAlong is the same along the roll, in Fit.
	mostAlong = 1_000_000
	// MostPieces is the highest count that is laid.
	MostPieces = 1_000_000_000
	// slack is how far two lengths may differ, as a part of the piece, and
	// still be the same: a roll of 3 pieces' width gives 3, however the width
	// was worked out.
	slack = 1e-10
)

// frame is the job in units of the distance from centre to centre.
type frame struct {
	unit   float64 // mm
	across float64 // mm, the piece
}

// strip is how much room the centres have in a width, in units; negative when
// the piece is wider.
func (f frame) strip(width measure.Length) float64 {
	w := (float64(width) - f.across) / f.unit
	if math.Abs(w) <= slack {
		return 0
	}
	return w
}

// length is that of roll used when the centres lie over an extent in units.
func (f frame) length(extent float64) measure.Length {
	return measure.Length(f.across + f.unit*extent)
}

// check refuses what is no piece, no width or no gap.
func check(p Piece, width, gap measure.Length) (frame, error) {
	if p.Shape != Disc && p.Shape != Square {
		return frame{}, fmt.Errorf("shape: %d is not known, allowed: disc, square; hint: what is cut from the roll", int(p.Shape))
	}
	if err := positive("piece", p.Across, "its diameter or side"); err != nil {
		return frame{}, err
	}
	if err := positive("width", width, "how wide the roll or sheet is"); err != nil {
		return frame{}, err
	}
	if !gap.Finite() || gap < 0 {
		return frame{}, fmt.Errorf("gap: %g mm is out of range, allowed: 0 mm and more; hint: the room between two pieces", gap.MM())
	}
	f := frame{unit: float64(p.Across + gap), across: float64(p.Across)}
	if math.IsInf(f.unit, 0) {
		return frame{}, fmt.Errorf("gap: %g mm is out of range with a piece of %g mm; hint: the room between two pieces", gap.MM(), p.Across.MM())
	}
	if float64(width)/f.across > mostAcross {
		return frame{}, fmt.Errorf("width: %g mm is over %d times the piece of %g mm, allowed: up to that; hint: one of the two is in the wrong unit",
			width.MM(), mostAcross, p.Across.MM())
	}
	return f, nil
}

func positive(key string, l measure.Length, hint string) error {
	if !l.Finite() || l <= 0 {
		return fmt.Errorf("%s: %g mm is out of range, allowed: more than 0 mm; hint: %s", key, l.MM(), hint)
	}
	return nil
}
