package sheets

import (
	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
)

type length = measure.Length

// Letter heights (ISO 3098) and page margins (ISO 5457's filing margin on the
// left), in mm.
const (
	small   length = 2.5
	medium  length = 3.5
	large   length = 5
	marginL length = 20
	marginR length = 12
	headY   length = 14 // base line of the running head, from the top
	topY    length = 21 // first line of the page's own matter, from the top
	footY   length = 10 // base line of the footer, from the bottom
	floor   length = 17 // lowest place for the page's own matter, from the bottom
)

// lead is the distance from base line to base line for letters of a height.
func lead(size length) length { return size * 1.72 }

// flow sets matter down a page and on to the next. Places are counted from
// the page's top; y is the next free one.
type flow struct {
	w, h     length
	units    measure.Unit
	job      string
	section  string
	pages    []render.Drawing
	y        length
	replaced []bool // one a page: a letter was not in the printing face
}

func newFlow(p Paper, u measure.Unit, job, section string) *flow {
	f := &flow{w: p.Width, h: p.Height, units: u, job: job, section: section}
	f.turn()
	return f
}

// turn begins a new page with its running head.
func (f *flow) turn() {
	f.pages = append(f.pages, render.Drawing{Title: clean(f.section), Width: f.w, Height: f.h})
	f.replaced = append(f.replaced, false)
	title := f.section
	if len(f.pages) > 1 {
		title += ", continued"
	}
	size := large
	if len(f.pages) > 1 {
		size = medium
	}
	f.put(marginL, headY, title, size, true, render.Left)
	room := f.wide() - width(clean(title), size, true) - 8
	f.put(f.w-marginR, headY, fit(f.safe(f.job), small, room), small, false, render.Right)
	f.rule(marginL, f.w-marginR, headY+2.2, render.Outline)
	f.y = topY
}

// wide is how wide the page's matter is; bottom is where it must end.
func (f *flow) wide() length   { return f.w - marginL - marginR }
func (f *flow) bottom() length { return f.h - floor }

// page is the page being set.
func (f *flow) page() *render.Drawing { return &f.pages[len(f.pages)-1] }

// fresh reports whether nothing but the running head stands on the page.
func (f *flow) fresh() bool { return f.y <= topY }

// need turns the page when less than h is left on it.
func (f *flow) need(h length) {
	if f.y+h > f.bottom() && !f.fresh() {
		f.turn()
	}
}

// gap leaves h free, but never at the head of a page.
func (f *flow) gap(h length) {
	if !f.fresh() {
		f.y += h
	}
}

// safe makes words printable and notes on the page when a letter was replaced.
func (f *flow) safe(s string) string {
	out, changed := printable(s)
	if changed && len(f.replaced) > 0 {
		f.replaced[len(f.replaced)-1] = true
	}
	return out
}

// put sets one line of words with its base line at y from the top.
func (f *flow) put(x, y length, words string, size length, bold bool, a render.Anchor) {
	words = f.safe(words)
	if words == "" {
		return
	}
	p := f.page()
	p.Texts = append(p.Texts, render.Text{Layer: render.Notes, At: path.Pt(x, f.h-y), Size: size,
		Anchor: a, Bold: bold, Words: words})
}

// line draws a straight line between two places counted from the top.
func (f *flow) line(x1, y1, x2, y2 length, l render.Layer) {
	var s path.Path
	s.MoveTo(path.Pt(x1, f.h-y1))
	s.LineTo(path.Pt(x2, f.h-y2))
	f.page().Strokes = append(f.page().Strokes, render.Stroke{Layer: l, Path: s})
}

func (f *flow) rule(x1, x2, y length, l render.Layer) { f.line(x1, y, x2, y, l) }

// rect is an upright rectangle between two places counted from the top.
func (f *flow) rect(x1, y1, x2, y2 length) path.Path {
	return path.Rect(path.Box{Min: path.Pt(x1, f.h-y2), Max: path.Pt(x2, f.h-y1)})
}

func (f *flow) frame(x1, y1, x2, y2 length, l render.Layer) {
	f.page().Strokes = append(f.page().Strokes, render.Stroke{Layer: l, Path: f.rect(x1, y1, x2, y2)})
}

func (f *flow) shade(x1, y1, x2, y2 length, s float64) {
	f.page().Fills = append(f.page().Fills, render.Fill{Path: f.rect(x1, y1, x2, y2), Shade: s})
}

// heading sets a heading and keeps room for something below it.
func (f *flow) heading(words string) { f.headingOver(words, 24) }

// headingOver sets a heading on a page that has room for h below it.
func (f *flow) headingOver(words string, h length) {
	f.gap(4)
	lines := render.Wrap(f.safe(words), medium, true, f.wide())
	if len(lines) > 3 {
		lines = lines[:3]
		lines[2] = fit(lines[2]+" "+f.safe(words), medium, f.wide()*0.9)
	}
	f.need(length(len(lines))*lead(medium) + 1 + h)
	for _, l := range lines {
		f.y += medium
		f.put(marginL, f.y, l, medium, true, render.Left)
		f.y += lead(medium) - medium
	}
	f.y += 0.8
}

// para sets a paragraph, turning pages as it must.
func (f *flow) para(words string) { f.paraAt(0, words, false) }

func (f *flow) paraAt(indent length, words string, bold bool) {
	lines := render.Wrap(f.safe(words), small, bold, f.wide()-indent)
	for i, l := range lines {
		h := lead(small)
		if i == 0 && len(lines) > 1 {
			h *= 2 // no single line left behind
		}
		f.need(h)
		f.y += small
		f.put(marginL+indent, f.y, l, small, bold, render.Left)
		f.y += lead(small) - small
	}
	f.y += 1.2
}

// paraTall is how tall a paragraph comes out.
func (f *flow) paraTall(words string) length {
	return length(len(render.Wrap(f.safe(words), small, false, f.wide())))*lead(small) + 1.2
}

// items sets a list, each item behind a dash.
func (f *flow) items(words ...string) {
	for _, w := range words {
		if w == "" {
			continue
		}
		f.need(lead(small))
		f.put(marginL+1, f.y+small, "–", small, false, render.Left)
		f.paraAt(5, w, false)
	}
}

// finish writes the footers of all pages of all flows, numbered through.
func finish(flows []*flow, revision string) {
	total, n := 0, 0
	for _, f := range flows {
		total += len(f.pages)
	}
	for _, f := range flows {
		for i := range f.pages {
			n++
			f.footer(i, n, total, revision)
		}
	}
}

// footer writes the foot of page i of the flow.
func (f *flow) footer(i, n, total int, revision string) {
	p := &f.pages[i]
	rule := path.Path{}
	rule.MoveTo(path.Pt(marginL, footY+4.5))
	rule.LineTo(path.Pt(f.w-marginR, footY+4.5))
	p.Strokes = append(p.Strokes, render.Stroke{Layer: render.Thin, Path: rule})
	right := pageOf(n, total)
	middle := "measures in inches, in brackets mm"
	if f.units == measure.UnitMM {
		middle = "measures in mm, in brackets inches"
	}
	if f.replaced[i] {
		middle = string(standIn) + " = a letter the printing face lacks"
	}
	room := (f.wide()-width(middle, small, false))/2 - 4
	set := func(x length, words string, a render.Anchor) {
		if words == "" {
			return
		}
		p.Texts = append(p.Texts, render.Text{Layer: render.Notes, At: path.Pt(x, footY), Size: small,
			Anchor: a, Words: words})
	}
	set(marginL, fit(clean(revision), small, room), render.Left)
	set(marginL+f.wide()/2, middle, render.Middle)
	set(f.w-marginR, fit(right, small, room), render.Right)
}
