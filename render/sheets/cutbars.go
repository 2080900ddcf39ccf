package sheets

import (
	"slices"
	"strconv"
	"strings"

	"silowright/geometry/measure"
	"silowright/render"
)

// Sizes of the drawn sticks, in mm: the room for the count before them, the
// stick's height, and the pitch from one to the next.
const (
	barLeft  length = 13
	barHigh  length = 10
	barPitch length = barHigh + 8.2
)

// kind is one kind of piece of a cutting plan, with its key letter.
type kind struct {
	cut   BarCut
	count int
}

// kinds are the pieces of a plan in the order they are first met.
func (b Bars) kinds() []kind {
	var out []kind
	for _, s := range b.Sticks {
		for _, c := range s.Cuts {
			at := slices.IndexFunc(out, func(k kind) bool { return k.cut == c })
			if at < 0 {
				out = append(out, kind{cut: c})
				at = len(out) - 1
			}
			out[at].count += s.Count
		}
	}
	return out
}

// sound is b with every length fit to be drawn.
func (b Bars) sound() Bars {
	b.Sticks = slices.Clone(b.Sticks)
	for i := range b.Sticks {
		s := &b.Sticks[i]
		s.Length, s.Trim, s.Kerf, s.Offcut = sound(s.Length), sound(s.Trim), sound(s.Kerf), sound(s.Offcut)
		s.Cuts = slices.Clone(s.Cuts)
		for j := range s.Cuts {
			s.Cuts[j].Length = sound(s.Cuts[j].Length)
		}
	}
	return b
}

// reach is the length a stick is drawn with: its own, or what its parts come
// to when that is more.
func (b Bar) reach() length {
	sum := b.Trim + b.Offcut
	for _, c := range b.Cuts {
		sum += c.Length + b.Kerf
	}
	if b.Offcut <= 0 && len(b.Cuts) > 0 {
		sum -= b.Kerf // the last piece needs no cut
	}
	return max(sum, b.Length)
}

// bars sets the cutting plan of one item.
func (f *flow) bars(b Bars) {
	b = b.sound()
	f.headingOver(upper(b.Item), f.saysTall(b.Says)+barPitch)
	f.says(b.Says)
	kinds := b.kinds()
	longest := length(0)
	for _, s := range b.Sticks {
		longest = max(longest, s.reach())
	}
	if longest == 0 || len(kinds) == 0 {
		f.para("Nothing is cut from it.")
		return
	}
	k := float64((f.wide() - barLeft) / longest)
	for _, s := range b.Sticks {
		f.stick(s, kinds, k)
	}
	f.table(f.kindTable(kinds))
	f.table(f.patternTable(b, kinds))
}

// stick draws one pattern, k mm on paper for each mm of it.
func (f *flow) stick(s Bar, kinds []kind, k float64) {
	on := func(l length) length { return l * length(k) }
	left := marginL + barLeft
	runs := s.narrow(kinds, left, on)
	if len(runs) > 0 {
		f.need(barPitch + runHigh)
		for _, r := range runs {
			f.put((r.from+r.to)/2, f.y+small, r.words, small, true, render.Middle)
			f.line(r.from+0.3, f.y+runHigh-0.3, r.to-0.3, f.y+runHigh-0.3, render.Thin)
		}
		f.y += runHigh
	}
	f.need(barPitch)
	top, foot := f.y, f.y+barHigh
	f.put(left-2.5, top+barHigh/2+small*0.75, fit(strconv.Itoa(s.Count)+" ×", medium, barLeft-3), medium, true, render.Right)
	end := left + on(s.reach())
	if w := on(s.Trim); w > 0 {
		f.waste(left, top, left+w, foot)
		f.line(left+w, top, left+w, foot, render.Thin)
	}
	x, free := left+on(s.Trim), left // free: where the next kerf can be told from the last
	for i, c := range s.Cuts {
		f.label(c, kinds, x, x+on(c.Length))
		x += on(c.Length)
		if i+1 == len(s.Cuts) && s.Offcut <= 0 {
			break
		}
		if x-free > 0.7 {
			f.shade(x, top, min(max(x+on(s.Kerf), x+0.35), end), foot, 1)
			free = x + on(s.Kerf)
		}
		x += on(s.Kerf)
	}
	if s.Offcut > 0 && end-x > 0.3 {
		if s.Keep {
			f.shade(x, top, end, foot, 0.15)
		} else {
			f.waste(x, top, end, foot)
		}
	}
	f.frame(left, top, end, foot, render.Outline)
	right := s.offcut(f)
	rightWide := min(width(f.safe(right), small, false), f.wide()*0.45)
	f.put(f.w-marginR, foot+small+1.2, fit(f.safe(right), small, rightWide+0.1), small, false, render.Right)
	words := "stick " + s.Length.In(f.units) + ": " + summary(s.Cuts, kinds)
	if s.FromRack {
		words = "from the rack, " + words
	}
	f.put(left, foot+small+1.2, fit(f.safe(words), small, f.w-marginR-left-rightWide-3), small, false, render.Left)
	f.y += barPitch
}

// runHigh is the room above a stick for the counts of pieces too narrow for a
// letter.
const runHigh length = 4.4

// run is a row of equal pieces too narrow for their letter, on paper.
type run struct {
	from, to length
	words    string
}

// narrow are the runs of a stick that begins at left, with their count and
// letter; one that has no room for that is left to the line below the stick.
func (s Bar) narrow(kinds []kind, left length, on func(length) length) []run {
	var out []run
	x, free := left+on(s.Trim), left
	for i := 0; i < len(s.Cuts); {
		n, from, c := 0, x, s.Cuts[i]
		for ; i < len(s.Cuts) && s.Cuts[i] == c; i++ {
			n++
			x += on(c.Length + s.Kerf)
		}
		at := slices.IndexFunc(kinds, func(k kind) bool { return k.cut == c })
		if labelled(key(at), on(c.Length)) {
			continue
		}
		r := run{from, x - on(s.Kerf), strconv.Itoa(n) + " " + key(at)}
		half := width(r.words, small, true) / 2
		if mid := (r.from + r.to) / 2; mid-half > free && r.to-r.from > 1 {
			out = append(out, r)
			free = mid + half + 1
		}
	}
	return out
}

// labelled reports whether a piece so wide on paper has room for its letter.
func labelled(letter string, wide length) bool { return width(letter, small, true) <= wide-0.8 }

// label writes a piece's name and length into it, or its key letter when it is
// narrow, or nothing: the line below the stick and the tables have it.
func (f *flow) label(c BarCut, kinds []kind, x1, x2 length) {
	room, mid := x2-x1-1.4, (x1+x2)/2
	name, long := f.safe(c.Name), c.Length.In(f.units)
	letter := key(slices.IndexFunc(kinds, func(k kind) bool { return k.cut == c }))
	if full := letter + " " + name; width(full, small, false) <= room && width(long, small, false) <= room {
		f.put(mid, f.y+1.3+small, full, small, false, render.Middle)
		f.put(mid, f.y+1.3+small+lead(small), long, small, false, render.Middle)
		return
	}
	if !labelled(letter, x2-x1) {
		return
	}
	if width(long, small, false) <= room {
		f.put(mid, f.y+1.3+small, letter, small, true, render.Middle)
		f.put(mid, f.y+1.3+small+lead(small), long, small, false, render.Middle)
		return
	}
	f.put(mid, f.y+barHigh/2+small/2, letter, small, true, render.Middle)
}

// offcut names what is left of a stick.
func (b Bar) offcut(f *flow) string {
	if b.Offcut <= 0 {
		return "no offcut"
	}
	name := "offcut"
	if b.Offname != "" {
		name += " " + b.Offname
	}
	if b.Keep {
		return name + ", " + b.Offcut.In(f.units) + ", keep"
	}
	return name + ", " + b.Offcut.In(f.units) + ", scrap"
}

// summary counts the pieces of a stick by their key letters: "6 a + 2 b".
func summary(cuts []BarCut, kinds []kind) string {
	counts := make([]int, len(kinds))
	for _, c := range cuts {
		counts[slices.IndexFunc(kinds, func(k kind) bool { return k.cut == c })]++
	}
	var out []string
	for i, n := range counts {
		if n > 0 {
			out = append(out, strconv.Itoa(n)+" "+key(i))
		}
	}
	return strings.Join(out, " + ")
}

func (f *flow) kindTable(kinds []kind) table {
	t := table{cols: []column{{head: "Key", share: 12, bold: true}, {head: "Piece", share: 82}, {head: "Length", share: 60}, {head: "Pieces in all", share: 30, right: true}}}
	for i, k := range kinds {
		t.add(say(key(i)), say(k.cut.Name), say(k.cut.Length.Both(f.units)), say(strconv.Itoa(k.count)))
	}
	return t
}

func (f *flow) patternTable(b Bars, kinds []kind) table {
	t := table{cols: []column{{head: "Cut", share: 11}, {head: "Sticks", share: 15, right: true, bold: true}, {head: "Stick", share: 38},
		{head: "Pieces from each", share: 40}, {head: "Lost", share: 38}, {head: "Offcut of each", share: 42}}}
	for _, s := range b.Sticks {
		from := ""
		if s.FromRack {
			from = "from the rack"
		}
		left := say("none")
		if s.Offcut > 0 {
			what := "scrap"
			if s.Keep {
				what = "keep"
				if s.Offname != "" {
					what += " as " + s.Offname
				}
			}
			left = say(s.Offcut.Both(f.units), what)
		}
		t.add(cell{mark: tickBox, paras: []string{""}}, say(strconv.Itoa(s.Count)), say(s.Length.Both(f.units), from), say(summary(s.Cuts, kinds)),
			say(lost("trim", s.Trim, f.units), lost("kerf", s.Kerf, f.units)), left)
	}
	return t
}

// lost says how much of a stick is lost to what.
func lost(to string, l length, u measure.Unit) string {
	if l == 0 {
		return "no " + to
	}
	return to + " " + l.Both(u)
}

// offcuts lists the offcuts that are kept, of all items.
func (f *flow) offcuts(all []Bars) {
	t := table{cols: []column{{head: "Racked", share: 18}, {head: "Offcut", share: 24, bold: true}, {head: "Of", share: 66}, {head: "Length", share: 54}, {head: "Pieces", share: 22, right: true}}}
	for _, b := range all {
		for _, s := range b.sound().Sticks {
			if s.Keep && s.Offcut > 0 {
				t.add(cell{mark: tickBox, paras: []string{""}}, say(s.Offname), say(upper(b.Item)), say(s.Offcut.Both(f.units)), say(strconv.Itoa(s.Count)))
			}
		}
	}
	if len(t.rows) > 0 {
		f.headed("Offcuts to keep", t)
	}
}
