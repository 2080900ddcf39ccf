package views

import (
	"strconv"

	"silowright/geometry/path"
	"silowright/render"
)

// arrowLong and arrowHalf make an arrowhead three times as long as wide.
const (
	arrowLong length = 2.4
	arrowHalf length = 0.4
	tier      length = 6.4 // between dimension lines
)

func number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// arrow blacks in a head at tip, pointing away from from.
func (d *sheet) arrow(from, tip path.Point) { d.arrowOf(from, tip, arrowLong, arrowHalf) }

func (d *sheet) arrowOf(from, tip path.Point, long, half length) {
	x, y := unit(from, tip)
	b := path.Pt(tip.X-long*x, tip.Y-long*y)
	d.Shade(path.Polygon(tip, path.Pt(b.X-half*y, b.Y+half*x), path.Pt(b.X+half*y, b.Y-half*x)), 1)
}

// extend draws an extension line upright at x from the part at y0 to the
// dimension line at y1: clear of the part, a little past the line.
func (d *sheet) extend(x, y0, y1 length) {
	s := length(1)
	if y1 < y0 {
		s = -1
	}
	d.Line(render.Dimension, path.Pt(x, y0+s), path.Pt(x, y1+1.2*s))
}

// span draws a level dimension at height y from x1 to x2, its words above the
// line: between the arrows, or beside them where there is no room. Extension
// lines begin at from on both sides.
func (d *sheet) span(x1, x2, y, from length, words string) {
	if x1 > x2 {
		x1, x2 = x2, x1
	}
	d.extend(x1, from, y)
	d.extend(x2, from, y)
	d.spanBare(x1, x2, y, words)
}

// spanBare is span without extension lines.
func (d *sheet) spanBare(x1, x2, y length, words string) {
	w := wide(words)
	inside := x2-x1 >= 3*arrowLong
	if inside {
		d.Line(render.Dimension, path.Pt(x1, y), path.Pt(x2, y))
		d.arrow(path.Pt(x2, y), path.Pt(x1, y))
		d.arrow(path.Pt(x1, y), path.Pt(x2, y))
	} else {
		d.Line(render.Dimension, path.Pt(x1-5, y), path.Pt(x2+5, y))
		d.arrow(path.Pt(x1-5, y), path.Pt(x1, y))
		d.arrow(path.Pt(x2+5, y), path.Pt(x2, y))
	}
	if inside && w+2 <= x2-x1 {
		d.Words(path.Pt((x1+x2)/2, y+1.35), small, render.Middle, words)
		return
	}
	past := length(1.5)
	if !inside {
		past = 3.2
	}
	if x2+past+w > d.area.Max.X {
		if from := max(d.area.Min.X, d.left); x1-past-w < from { // room on neither side: over the line, as far left as there is room
			d.Line(render.Dimension, path.Pt(min(x1, from), y), path.Pt(max(x2, from+w), y))
			d.Words(path.Pt(from, y+1.35), small, render.Left, words)
			return
		}
		d.Line(render.Dimension, path.Pt(x1, y), path.Pt(x1-past-w, y))
		d.Words(path.Pt(x1-past, y+1.35), small, render.Right, words)
		return
	}
	d.Line(render.Dimension, path.Pt(x2, y), path.Pt(x2+past+w, y))
	d.Words(path.Pt(x2+past, y+1.35), small, render.Left, words)
}

// rise draws an upright dimension at x from y1 to y2 with level words beside
// it, on the side given (-1 left, 1 right).
func (d *sheet) rise(x, y1, y2, from length, side int, words string) {
	if y1 > y2 {
		y1, y2 = y2, y1
	}
	s := length(1)
	if x < from {
		s = -1
	}
	for _, y := range []length{y1, y2} {
		d.Line(render.Dimension, path.Pt(from+s, y), path.Pt(x+1.2*s, y))
	}
	if y2-y1 >= 3*arrowLong {
		d.Line(render.Dimension, path.Pt(x, y1), path.Pt(x, y2))
		d.arrow(path.Pt(x, y2), path.Pt(x, y1))
		d.arrow(path.Pt(x, y1), path.Pt(x, y2))
	} else {
		d.Line(render.Dimension, path.Pt(x, y1-5), path.Pt(x, y2+5))
		d.arrow(path.Pt(x, y1-5), path.Pt(x, y1))
		d.arrow(path.Pt(x, y2+5), path.Pt(x, y2))
	}
	a := render.Left
	if side < 0 {
		a = render.Right
	}
	d.Words(path.Pt(x+1.5*length(side), (y1+y2)/2-small/2), small, a, words)
}

// level is a height with its name: from is where the part ends at that height.
type level struct {
	y, from length
	words   string
}

// jog is the room in which extension lines spread to their words.
const jog length = 7

// levels writes heights in a column at x (words to the left of it for side
// -1, to the right for 1), each at the end of its extension line; words that
// would run into each other are spread.
func (d *sheet) levels(x length, side int, lo, hi length, items []level) {
	order := make([]level, len(items))
	copy(order, items)
	sortBy(order, func(a, b level) bool { return a.y < b.y })
	want := make([]length, len(order))
	tall := make([]length, len(order))
	for i, l := range order {
		want[i], tall[i] = l.y, lead
	}
	ys := spread(want, tall, lo, hi)
	s := length(side)
	a := render.Left
	if side < 0 {
		a = render.Right
	}
	for i, l := range order {
		d.PathOn(render.Dimension, path.Polyline(path.Pt(l.from+s, l.y), path.Pt(x-s*jog, l.y), path.Pt(x-s*0.8, ys[i])))
		d.Words(path.Pt(x, ys[i]-small/2), small, a, l.words)
	}
}

// levelsWide is the room a column of heights takes.
func levelsWide(items []level) length {
	w := length(0)
	for _, l := range items {
		w = max(w, wide(l.words))
	}
	return w + jog + 2
}

// spread moves centres, given lowest first, apart until none is nearer to its
// neighbour than half of both heights, staying between lo and hi where there
// is room, and moving each as little as may be.
func spread(want, tall []length, lo, hi length) []length {
	type run struct {
		first, n  int
		mid, tall length // of the whole run
	}
	var runs []run
	for i := range want {
		r := run{i, 1, want[i], tall[i]}
		r.mid = clamp(r.mid, lo+r.tall/2, hi-r.tall/2)
		for len(runs) > 0 {
			p := runs[len(runs)-1]
			if p.mid+p.tall/2 <= r.mid-r.tall/2+1e-9 {
				break
			}
			runs = runs[:len(runs)-1]
			// the merged run's middle keeps the sum of squared moves least
			n := length(p.n + r.n)
			off := length(0)
			at := length(0)
			for j := p.first; j < r.first+r.n; j++ {
				off += want[j] - (at + tall[j]/2)
				at += tall[j]
			}
			r = run{p.first, p.n + r.n, off/n + at/2, at}
			r.mid = clamp(r.mid, lo+r.tall/2, hi-r.tall/2)
		}
		runs = append(runs, r)
	}
	out := make([]length, len(want))
	for _, r := range runs {
		at := r.mid - r.tall/2
		for j := r.first; j < r.first+r.n; j++ {
			out[j] = at + tall[j]/2
			at += tall[j]
		}
	}
	return out
}

func clamp(x, lo, hi length) length {
	if lo > hi {
		return (lo + hi) / 2
	}
	return max(lo, min(hi, x))
}
