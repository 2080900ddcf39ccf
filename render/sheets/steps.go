package sheets

import (
	"strconv"

	"silowright/geometry"
	"silowright/render"
)

// step is one step of the build.
type step struct {
	id       string
	title    string
	tool     string
	cautions []caution
	do       []string // each with a box to tick
	pipes    bool     // only when pipe silos are built
}

// Room for a step's picture.
const (
	pictureWide length = 62
	pictureTall length = 50
)

func setSteps(f *flow, p *Pack) {
	f.para("For one silo; repeat for each. Tick as you go, and keep the traveller sheet with the parts. " + deferring)
	n := 0
	for _, s := range stepsOf(p) {
		if s.pipes && p.PipeSilos == 0 {
			continue
		}
		n++
		f.step(n, s, p.Pictures[s.id])
	}
}

// ticked is one line of a step, broken.
type ticked struct {
	words string
	first bool
}

// step sets one step: title and tool, cautions, then what to do with the
// picture on its right. It is kept whole when a page can hold it.
func (f *flow) step(n int, s step, pic render.Drawing) {
	k := scaleTo(pic, pictureWide, pictureTall)
	room := f.wide() - 7
	tall := length(0)
	if k > 0 {
		tall = pic.Height * length(k)
		room -= pictureWide + 5
	}
	var lines []ticked
	for _, d := range s.do {
		if d == "" {
			continue
		}
		for i, l := range render.Wrap(f.safe(d), small, false, room) {
			lines = append(lines, ticked{l, i == 0})
		}
	}
	doTall := length(len(lines))*lead(small) + length(len(s.do))*1.8 + 2
	total := 22 + f.boxTall(cautionBox(s.cautions)) + max(tall, doTall)
	if total <= f.bottom()-topY {
		f.need(total)
	} else {
		f.need(60)
	}
	f.stepHead(n, s)
	f.cautions(s.cautions)
	if k > 0 {
		f.need(tall + 2)
		x := f.w - marginR - (pictureWide+pic.Width*length(k))/2
		f.place(pic, x, f.y, k)
	}
	page, top := len(f.pages), f.y
	for _, l := range lines {
		if l.first {
			f.y += 1.8
		}
		f.need(lead(small))
		f.y += small
		if l.first {
			f.sign(tickBox, marginL, f.y)
		}
		f.put(marginL+7, f.y, l.words, small, false, render.Left)
		f.y += lead(small) - small
	}
	if len(f.pages) == page {
		f.y = max(f.y, top+tall)
	}
	f.y += 5
}

func (f *flow) stepHead(n int, s step) {
	f.rule(marginL, f.w-marginR, f.y, render.Outline)
	f.y += 2.2
	for _, l := range render.Wrap(f.safe(strconv.Itoa(n)+"  "+s.title), medium, true, f.wide()) {
		f.y += medium
		f.put(marginL, f.y, l, medium, true, render.Left)
		f.y += lead(medium) - medium
	}
	f.paraAt(0, "Tool: "+s.tool, false)
}

// vary adds what is the same for all kinds once, else once a kind.
func vary(p *Pack, of func(geometry.Silo) string) []string { return perKind(p.Silos, of) }

func join(lists ...[]string) []string {
	var out []string
	for _, l := range lists {
		out = append(out, l...)
	}
	return out
}
