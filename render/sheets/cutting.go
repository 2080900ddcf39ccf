package sheets

import "silowright/geometry/path"

// Bars is the cutting plan of one pipe or hose.
type Bars struct {
	Item   string
	Says   []string // such as "12 × 10 ft, USD 84.00, proven least", a paragraph each
	Sticks []Bar    // one a pattern
}

// Bar is one pattern: how a stick is cut, from its squared end on.
type Bar struct {
	Count    int // sticks cut like this
	Length   length
	FromRack bool   // on hand, not bought
	Trim     length // squared off the first end, no use
	Kerf     length // lost after each piece
	Cuts     []BarCut
	Offcut   length // what is left; 0: nothing
	Offname  string // written on it, such as "A"
	Keep     bool   // the offcut is worth keeping
}

// BarCut is one piece of a stick.
type BarCut struct {
	Name   string
	Length length
}

// Roll is the layout of equal discs or squares on a roll or a strip, its
// length along x and its width along y.
type Roll struct {
	Item     string
	Says     []string // bound, buying line, a paragraph each
	Pattern  string   // name of the layout: "zigzag", "hexagonal"
	Piece    string   // what is cut: "mesh disc"
	Width    length   // of the roll
	Length   length   // used
	Discs    bool     // discs; else squares
	Across   length   // diameter of a disc, side of a square
	Places   []path.Point
	Count    int  // pieces in all; Places may hold the first columns only
	FromRack bool // the roll is on hand
}

// Sheet is a sheet with parts nested on it.
type Sheet struct {
	Item          string
	Says          []string
	Width, Height length
	Parts         []Rect
	Count         int // sheets cut like this
}

// Rect is an upright part on a sheet, from its lower left corner.
type Rect struct {
	X, Y, W, H length
	Name       string
}

func setCutting(f *flow, p *Pack) {
	if len(p.Bars) == 0 && len(p.Rolls) == 0 && len(p.Plates) == 0 {
		f.para("No cutting plan was worked out for this pack.")
		return
	}
}
