package sheets

import "silowright/render"

// boxed is one paragraph inside a box.
type boxed struct {
	words string
	size  length
	bold  bool
	mark  mark
}

// boxIn is the room between a box's frame and its words.
const boxIn length = 3.5

// boxKept is how much of a box stays in one piece; a taller one may be split
// between two pages.
const boxKept length = 55

// boxTall is how tall a box comes out, with the room below it.
func (f *flow) boxTall(paras []boxed) length {
	if len(paras) == 0 {
		return 0
	}
	total := 2*boxIn + 3
	for _, p := range paras {
		size, room := p.size, f.wide()-2*boxIn
		if size == 0 {
			size = small
		}
		if p.mark != noMark {
			room -= markWide
		}
		total += 0.9 + length(len(render.Wrap(f.safe(p.words), size, p.bold, room)))*lead(size)
	}
	return total
}

// box sets paragraphs inside a frame, heavy when doubled, split over pages
// where it must be.
func (f *flow) box(heavy bool, paras ...boxed) {
	const in = boxIn
	type row struct {
		words string
		boxed
		first bool
	}
	var rows []row
	for _, p := range paras {
		if p.size == 0 {
			p.size = small
		}
		room := f.wide() - 2*in
		if p.mark != noMark {
			room -= markWide
		}
		for i, l := range render.Wrap(f.safe(p.words), p.size, p.bold, room) {
			rows = append(rows, row{l, p, i == 0})
		}
	}
	total := f.boxTall(paras)
	f.need(min(total, boxKept))
	start := f.y
	close := func() {
		f.y += in - 0.8
		f.frame(marginL, start, f.w-marginR, f.y, render.Outline)
		if heavy {
			f.frame(marginL+0.9, start+0.9, f.w-marginR-0.9, f.y-0.9, render.Outline)
		}
	}
	f.y += in - 0.6
	for _, r := range rows {
		if r.first && f.y > start+in {
			f.y += 0.9
		}
		keep := lead(r.size)
		if r.first && r.bold {
			keep += 2 * lead(small) // a title stays with what it is of
		}
		if f.y+keep+in > f.bottom() {
			close()
			f.turn()
			start = f.y
			f.y += in - 0.6
		}
		f.y += r.size
		x := marginL + in
		if r.mark != noMark {
			if r.first {
				f.sign(r.mark, x, f.y)
			}
			x += markWide
		}
		f.put(x, f.y, r.words, r.size, r.bold, render.Left)
		f.y += lead(r.size) - r.size
	}
	close()
	f.y += 3
}
