package sheets

import (
	"silowright/geometry/path"
	"silowright/render"
)

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
	f.para("Every drawing is to its own scale and shows where the saw or the knife goes. Pipe: black is the kerf, hatched is waste, grey is an offcut to keep. Square the first end of each stick, then cut from left to right.")
	for _, b := range p.Bars {
		f.bars(b)
	}
	f.offcuts(p.Bars)
	for _, r := range p.Rolls {
		f.roll(r)
	}
	for _, s := range p.Plates {
		f.plate(s)
	}
}

// sound is a length that can be drawn: not below 0, and 0 when it is no number
// or longer than any roll.
func sound(l length) length {
	if !(l > 0 && l < 1e7) {
		return 0
	}
	return l
}

// key is a letter for the nth kind of piece: a to z, then aa.
func key(n int) string {
	if n < 26 {
		return string(rune('a' + n))
	}
	return key(n/26-1) + key(n%26)
}

// says sets the lines below a heading: the first in bold, it names the answer.
func (f *flow) says(lines []string) {
	for i, s := range lines {
		f.paraAt(0, s, i == 0)
	}
}

// saysTall is how tall they come out.
func (f *flow) saysTall(lines []string) length {
	sum := length(0)
	for i, s := range lines {
		sum += length(len(render.Wrap(f.safe(s), small, i == 0, f.wide())))*lead(small) + 1.2
	}
	return sum
}

// waste hatches an upright rectangle at 45°; places are counted from the top.
func (f *flow) waste(x1, y1, x2, y2 length) {
	const pitch length = 1.3
	w, h := x2-x1, y2-y1
	if !(w > 0 && h > 0) {
		return
	}
	for c := pitch; c < w+h; c += pitch { // lines of x + (y up) = c
		from, to := max(0, c-h), min(c, w)
		if to-from > 0.05 {
			f.line(x1+from, y2-(c-from), x1+to, y2-(c-to), render.Thin)
		}
	}
}
