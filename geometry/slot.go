package geometry

import (
	"math"

	"silowright/geometry/path"
)

// slots solves the two handle slots, opposite each other.
func slots(s Spec) [2]Slot {
	h := s.Handle
	one := Slot{Top: h.BelowRim, Sill: h.BelowRim + h.Height, Round: h.Round, Length: h.Length,
		CornerR: minLength(h.Height, h.Length) / 2}
	two := one
	c := s.Drum.Circumference()
	two.Round = length(math.Mod(float64(one.Round+c/2), float64(c)))
	return [2]Slot{one, two}
}

// Height is the slot's opening up and down.
func (s Slot) Height() length { return s.Sill - s.Top }

// Middle is how far below the rim the slot's middle lies.
func (s Slot) Middle() length { return (s.Top + s.Sill) / 2 }

// Outline is the slot laid flat, centred on the origin, ends rounded.
func (s Slot) Outline() path.Path {
	x, y, r := s.Length/2, s.Height()/2, s.CornerR
	var p path.Path
	p.MoveTo(path.Pt(-x+r, -y))
	p.LineTo(path.Pt(x-r, -y))
	p.ArcTo(path.Pt(x-r, -y+r), math.Pi/2)
	p.LineTo(path.Pt(x, y-r))
	p.ArcTo(path.Pt(x-r, y-r), math.Pi/2)
	p.LineTo(path.Pt(-x+r, y))
	p.ArcTo(path.Pt(-x+r, y-r), math.Pi/2)
	p.LineTo(path.Pt(-x, -y+r))
	p.ArcTo(path.Pt(-x+r, -y+r), math.Pi/2)
	p.ClosePath()
	return p
}
