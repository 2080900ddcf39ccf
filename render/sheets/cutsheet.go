package sheets

import (
	"slices"
	"strconv"

	"silowright/render"
)

// plateHigh is the greatest height of a sheet's drawing, mm.
const plateHigh length = 100

// lying is the sheet with its long side across the page.
func (s Sheet) lying() Sheet {
	s.Width, s.Height = sound(s.Width), sound(s.Height)
	s.Parts = slices.Clone(s.Parts)
	for i, p := range s.Parts {
		s.Parts[i] = Rect{max(0, sound(p.X)), sound(p.Y), sound(p.W), sound(p.H), p.Name}
	}
	if s.Height <= s.Width {
		return s
	}
	for i, p := range s.Parts {
		s.Parts[i] = Rect{p.Y, s.Width - p.X - p.W, p.H, p.W, p.Name}
	}
	s.Width, s.Height = s.Height, s.Width
	return s
}

// part of a sheet's list: one name and size.
type sheetPart struct {
	name  string
	w, h  length
	count int
}

// plate sets one sheet with the parts nested on it.
func (f *flow) plate(s Sheet) {
	s = s.lying()
	says := append([]string{count(s.Count, "sheet", "sheets") + " " + s.Width.Both(f.units) + " by " + s.Height.Both(f.units) + " cut like this"}, s.Says...)
	if s.Width == 0 || s.Height == 0 {
		f.heading(upper(s.Item))
		f.says(says)
		f.para("There is no layout to draw.")
		return
	}
	n := scaleFor(s.Width, s.Height, f.wide()-dimLeft-12, plateHigh)
	k := 1 / length(n)
	high := s.Height * k
	if high > plateHigh || s.Width*k > f.wide() {
		f.heading(upper(s.Item))
		f.says(says)
		f.para("The sheet is too large to draw.")
		return
	}
	f.headingOver(upper(s.Item), f.saysTall(says)+high+dimFoot+lead(small))
	f.says(says)
	f.need(high + dimFoot + lead(small) + 3)
	left, top := marginL+dimLeft, f.y+1.5
	foot, end := top+high, left+s.Width*k
	list := f.sheetParts(s)
	var drawn [][4]length
	var outside []Rect // parts too small for their key
	f.frame(left, top, end, foot, render.Outline)
	for _, p := range s.Parts {
		x1, y2 := left+p.X*k, foot-p.Y*k
		x2, y1 := x1+p.W*k, y2-p.H*k
		if p.W == 0 || p.H == 0 || x1 < left-0.05 || x2 > end+0.05 || y1 < top-0.05 || y2 > foot+0.05 {
			continue
		}
		f.shade(x1, y1, x2, y2, 0.08)
		f.frame(x1, y1, x2, y2, render.Outline)
		drawn = append(drawn, [4]length{x1, y1, x2, y2})
		if !f.partName(p, list, x1, y1, x2, y2) {
			outside = append(outside, p)
		}
	}
	for _, p := range outside {
		x, y := left+p.X*k, foot-p.Y*k
		drawn = f.keyBeside(key(slices.IndexFunc(list, p.is)), [4]length{x, y - p.H*k, x + p.W*k, y}, [4]length{left, top, end, foot}, drawn)
	}
	f.down(top, foot, left-5, left, dimWords(f, s.Height, high))
	f.across(left, end, foot+4, foot, dimWords(f, s.Width, s.Width*k))
	f.y = foot + dimFoot
	f.para("Grey is a part, white is left over; " + scaleWords(n) + ".")
	t := table{cols: []column{{head: "Key", share: 12, bold: true}, {head: "Part", share: 72}, {head: "Size", share: 74}, {head: "On each sheet", share: 26, right: true}}}
	for i, p := range list {
		t.add(say(key(i)), say(p.name), say(p.w.Both(f.units)+" by "+p.h.Both(f.units)), say(strconv.Itoa(p.count)))
	}
	f.table(t)
}

// sheetParts lists the parts by name and size, in the order they are met.
func (f *flow) sheetParts(s Sheet) []sheetPart {
	var out []sheetPart
	for _, p := range s.Parts {
		at := slices.IndexFunc(out, p.is)
		if at < 0 {
			out = append(out, sheetPart{name: p.Name, w: p.W, h: p.H})
			at = len(out) - 1
		}
		out[at].count++
	}
	return out
}

// is reports whether a part is of the kind, however it is turned.
func (p Rect) is(k sheetPart) bool {
	return p.Name == k.name && (p.W == k.w && p.H == k.h || p.W == k.h && p.H == k.w)
}

// partName writes a part's key and name inside it, as much as there is room
// for; false when there is none.
func (f *flow) partName(p Rect, list []sheetPart, x1, y1, x2, y2 length) bool {
	letter := key(slices.IndexFunc(list, p.is))
	room, high := x2-x1-1.6, y2-y1-1.6
	lines := render.Wrap(f.safe(letter+" "+p.Name), small, false, max(room, 1))
	fits := length(len(lines))*lead(small) <= high
	for _, l := range lines {
		fits = fits && width(l, small, false) <= room
	}
	if !fits {
		lines = []string{letter}
		if width(letter, small, false) > room || small > high {
			return false
		}
	}
	y := (y1+y2)/2 - length(len(lines)-1)*lead(small)/2 + small/2
	for i, l := range lines {
		f.put((x1+x2)/2, y+length(i)*lead(small), l, small, false, render.Middle)
	}
	return true
}

// keyBeside writes a key on the empty sheet right, left, below or above of the
// part at (x1, y1, x2, y2), where that is free, and returns what is taken then.
func (f *flow) keyBeside(letter string, part, sheet [4]length, taken [][4]length) [][4]length {
	const gap length = 0.9
	w, h := width(letter, small, false), small
	mx, my := (part[0]+part[2])/2, (part[1]+part[3])/2
	for _, at := range [][2]length{{part[2] + gap, my - h/2}, {part[0] - gap - w, my - h/2}, {mx - w/2, part[3] + gap}, {mx - w/2, part[1] - gap - h}} {
		q := [4]length{at[0] - 0.4, at[1] - 0.4, at[0] + w + 0.4, at[1] + h + 0.8}
		free := q[0] > sheet[0] && q[1] > sheet[1] && q[2] < sheet[2] && q[3] < sheet[3]
		for _, t := range taken {
			free = free && (q[2] <= t[0] || q[0] >= t[2] || q[3] <= t[1] || q[1] >= t[3])
		}
		if free {
			f.put(at[0], at[1]+h, letter, small, false, render.Left)
			return append(taken, q)
		}
	}
	return taken
}
