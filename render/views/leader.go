package views

import (
	"slices"
	"strings"

	"silowright/geometry/path"
	"silowright/render"
)

// note is words with a leader to a place.
type note struct {
	tip   path.Point
	words string
	dot   bool // the place is an area, not an edge
}

func sortBy[T any](s []T, less func(a, b T) bool) {
	slices.SortStableFunc(s, func(a, b T) int {
		switch {
		case less(a, b):
			return -1
		case less(b, a):
			return 1
		}
		return 0
	})
}

// notes writes notes in a column, side 1 at a view's right and -1 at its left,
// between x (the edge towards the view) and room further out. Leaders do not
// cross: the notes stand in the order of their tips.
func (d *sheet) notes(x length, side int, room, lo, hi length, items []note) {
	order := make([]note, 0, len(items))
	for _, n := range items {
		if n.words != "" {
			order = append(order, n)
		}
	}
	sortBy(order, func(a, b note) bool { return a.tip.Y < b.tip.Y })
	s := length(side)
	text := room - 4
	var ys, tall []length
	lay := func() {
		want := make([]length, len(order))
		tall = make([]length, len(order))
		for i, n := range order {
			want[i] = n.tip.Y
			tall[i] = lead*length(len(wrap(n.words, text))) + 1.8
		}
		ys = spread(want, tall, lo, hi)
	}
	from := func(i int) path.Point { return path.Pt(x+s*3, ys[i]) }
	lay()
	for range len(order) * len(order) {
		swapped := false
		for i := 0; i+1 < len(order); i++ {
			if cross(order[i].tip, from(i), order[i+1].tip, from(i+1)) {
				order[i], order[i+1] = order[i+1], order[i]
				swapped = true
				lay()
			}
		}
		if !swapped {
			break
		}
	}
	a := render.Left
	if side < 0 {
		a = render.Right
	}
	for i, n := range order {
		lines := wrap(n.words, text)
		top := ys[i] + lead*length(len(lines))/2
		for j, l := range lines {
			d.Words(path.Pt(x+s*4, top-lead*length(j)-lead/2-small/2), small, a, l)
		}
		d.PathOn(render.Thin, path.Polyline(path.Pt(x+s*3.4, ys[i]), path.Pt(x+s*1.5, ys[i]), n.tip))
		if n.dot {
			d.Shade(path.Circle(n.tip, 0.5), 1)
		} else {
			d.arrowOf(path.Pt(x+s*1.5, ys[i]), n.tip, 2, 0.34)
		}
	}
}

// cross tells whether the segments ab and ce cross.
func cross(a, b, c, e path.Point) bool {
	side := func(p, q, r path.Point) length { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }
	return side(a, b, c)*side(a, b, e) < 0 && side(c, e, a)*side(c, e, b) < 0
}

// list writes lines of small words downwards from the top left corner of a
// box, broken to its width, and returns the height they took.
func (d *sheet) list(b path.Box, lines ...string) length {
	y := b.Max.Y
	for _, l := range lines {
		if l == "" {
			continue
		}
		for _, w := range wrap(l, boxW(b)) {
			y -= lead
			d.Words(path.Pt(b.Min.X, y), small, render.Left, w)
		}
	}
	return b.Max.Y - y
}

// listTall is the height list would take.
func listTall(room length, lines ...string) length {
	n := 0
	for _, l := range lines {
		if l != "" {
			n += len(wrap(l, room))
		}
	}
	return lead * length(n)
}

// glue stands for a blank at which a line must not break.
const glue = "\u00b7"

// keep holds words, such as a length, together on one line.
func keep(words string) string { return strings.ReplaceAll(words, " ", glue) }

// wrap breaks small words into lines no longer than room.
func wrap(words string, room length) []string {
	lines := render.Wrap(words, small, false, room)
	for i, l := range lines {
		lines[i] = unkeep(l)
	}
	return lines
}

func unkeep(words string) string { return strings.ReplaceAll(words, glue, " ") }
