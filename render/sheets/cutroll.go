package sheets

import (
	"strconv"

	"silowright/geometry/path"
	"silowright/render"
)

// The greatest height of a roll's drawing, and the least a piece is drawn
// across before the roll is broken instead, in mm.
const (
	rollHigh  length = 66
	leastDisc length = 7
)

// rollScale is the scale a roll is drawn at and how much of its length is
// shown: all of it unless its pieces would come out too small.
func rollScale(r Roll, room length) (scale int, shown length) {
	whole := scaleFor(r.Width, r.Length, rollHigh, room)
	if r.Across/length(whole) >= leastDisc || r.Across == 0 {
		return whole, r.Length
	}
	at := scaleFor(r.Width, 0, rollHigh, room)
	for _, s := range scales {
		if s >= at && s <= whole && r.Across/length(s) >= leastDisc {
			at = s
		}
	}
	return at, min(r.Length, room*length(at))
}

// roll sets the layout of one roll: its length runs across the page.
func (f *flow) roll(r Roll) {
	r.Width, r.Length, r.Across = sound(r.Width), sound(r.Length), sound(r.Across)
	says := []string{upper(r.Pattern) + ": " + strconv.Itoa(r.Count) + " × " + r.Piece + ", " + r.Across.Both(f.units) + r.shape()}
	if r.Pattern == "" {
		says[0] = says[0][2:]
	}
	if r.FromRack {
		says[0] += ", from the rack"
	}
	says = append(says, r.Says...)
	if r.Width == 0 || r.Length == 0 {
		f.heading(upper(r.Item))
		f.says(says)
		f.para("There is no layout to draw.")
		return
	}
	room := f.wide() - dimLeft - 2
	s, shown := rollScale(r, room)
	k := 1 / length(s)
	high := min(r.Width*k, f.bottom()-topY-60) // a roll too wide for any scale is not drawn true
	f.headingOver(upper(r.Item), f.saysTall(says)+high+dimFoot+lead(small))
	f.says(says)
	f.need(high + dimFoot + lead(small) + 3)
	left, top := marginL+dimLeft, f.y+1.5
	foot := top + high
	end := left + shown*k
	broken := shown < r.Length
	if broken {
		f.broken(left, top, end, foot)
	} else {
		f.frame(left, top, end, foot, render.Outline)
	}
	drawn := f.pieces(r, left, foot, end, top, k, broken)
	f.down(top, foot, left-5, left, dimWords(f, r.Width, high))
	if broken {
		f.across(left, end, foot+4, foot, "the first "+shown.In(f.units)+" of "+r.Length.Both(f.units)+" used")
	} else {
		f.across(left, end, foot+4, foot, r.Length.Both(f.units)+" used")
	}
	f.y = foot + dimFoot
	note := "Width " + r.Width.Both(f.units) + ", " + scaleWords(s) + "."
	if drawn < r.Count {
		note += " " + strconv.Itoa(drawn) + " of " + strconv.Itoa(r.Count) + " are drawn; the rest goes on in the same way."
	}
	f.para(note)
}

// dimWords is a dimension as long as there is room for.
func dimWords(f *flow, l, room length) string {
	for _, w := range []string{l.Both(f.units), l.In(f.units)} {
		if width(w, small, false) <= room {
			return w
		}
	}
	return ""
}

func (r Roll) shape() string {
	if r.Discs {
		return " across"
	}
	return " square"
}

// pieces draws what lies within the part of the roll that is shown and returns
// how many that are.
func (f *flow) pieces(r Roll, left, foot, end, top, k length, broken bool) int {
	n, half := 0, r.Across*k/2
	last := end + 0.05
	if broken {
		last = end - 3 // clear of the break
	}
	for _, c := range r.Places {
		x, y := left+c.X*k, foot-c.Y*k
		if !(x-half >= left-0.05 && x+half <= last && y-half >= top-0.05 && y+half <= foot+0.05) {
			continue
		}
		n++
		if half < 0.3 {
			continue
		}
		if r.Discs {
			f.page().Strokes = append(f.page().Strokes, render.Stroke{Layer: render.Outline, Path: path.Circle(path.Pt(x, f.h-y), half)})
		} else {
			f.frame(x-half, y-half, x+half, y+half, render.Outline)
		}
	}
	return n
}

// broken frames a part whose far end is broken off.
func (f *flow) broken(x1, y1, x2, y2 length) {
	var s path.Path
	at := func(x, y length) path.Point { return path.Pt(x, f.h-y) }
	s.MoveTo(at(x2, y1))
	s.LineTo(at(x1, y1))
	s.LineTo(at(x1, y2))
	s.LineTo(at(x2, y2))
	f.page().Strokes = append(f.page().Strokes, render.Stroke{Layer: render.Outline, Path: s})
	mid, h := (y1+y2)/2, min(3, (y2-y1)/4)
	var z path.Path // the break line of ISO 128-2: a zigzag in a narrow line
	z.MoveTo(at(x2, y1))
	z.LineTo(at(x2, mid-h))
	z.LineTo(at(x2-1.8, mid-h/2))
	z.LineTo(at(x2+1.8, mid+h/2))
	z.LineTo(at(x2, mid+h))
	z.LineTo(at(x2, y2))
	f.page().Strokes = append(f.page().Strokes, render.Stroke{Layer: render.Thin, Path: z})
}
