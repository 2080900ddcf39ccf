package bom

import (
	"cmp"
	"slices"

	"silowright/geometry/measure"
)

// Piece is a number of equal pieces to be sawn off something sold by length.
type Piece struct {
	Length measure.Length `json:"length_mm"`
	Kerf   measure.Length `json:"kerf_mm"` // of the saw
	Count  int            `json:"count"`
	Name   string         `json:"name,omitempty"` // what it becomes
}

// addPiece adds to pieces, longest first, equal ones in one row.
func addPiece(pieces []Piece, p Piece) []Piece {
	for i, q := range pieces {
		if q.Length == p.Length && q.Kerf == p.Kerf && q.Name == p.Name {
			pieces[i].Count += p.Count
			return pieces
		}
	}
	pieces = append(pieces, p)
	slices.SortStableFunc(pieces, func(a, b Piece) int { return cmp.Compare(b.Length, a.Length) })
	return pieces
}
