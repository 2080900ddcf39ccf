package views

import (
	"fmt"
	"math"
	"slices"

	"silowright/geometry"
	"silowright/geometry/path"
	"silowright/render"
)

// cutout is an opening in a wall: its outline laid flat about its middle.
type cutout struct {
	name    string
	words   string // what it is
	round   length // from the datum
	height  length // of its middle above the standing face
	w, h    length
	outline path.Path
}

// band is a level strip of a wall: a hoop, the ring's place.
type band struct {
	from, to length
	layer    render.Layer
	words    string
}

// wallMap is a part's wall for drawing from the side and laid flat.
type wallMap struct {
	radius  length // outside
	tall    length
	edge    string // name of its upper edge
	key     string // of the letters in the view from above
	cuts    []cutout
	bands   []band
	heights []level // y is the height in the model here
}

// around reduces a distance round the wall to the range from -lead to the
// circumference less lead.
func (m wallMap) around(x, lead length) length {
	c := 2 * math.Pi * m.radius
	x = length(math.Mod(float64(x), float64(c)))
	for x < -lead {
		x += c
	}
	for x >= c-lead {
		x -= c
	}
	return x
}

// parting is how far left of the datum the wall is parted to lay it flat: so
// that it passes beside every opening, if it can.
func (m wallMap) parting() length {
	c := 2 * math.Pi * m.radius
	best, room := c/8, length(-1)
	for i := 1; i <= 15; i++ {
		lead := c * length(i) / 32
		clear := c
		for _, k := range m.cuts {
			x := m.around(k.round, lead)
			clear = min(clear, x+lead-k.w/2, c-lead-x-k.w/2)
		}
		if clear > c/24 {
			return lead
		}
		if clear > room {
			best, room = lead, clear
		}
	}
	return best
}

// flat draws the wall laid flat into a box, the outside towards the reader;
// what is to be known of each opening stands in lines below.
func (d *sheet) flat(b path.Box, m wallMap, name string) scale {
	c := 2 * math.Pi * m.radius
	lead := m.parting()
	cuts := slices.Clone(m.cuts)
	for i := range cuts {
		cuts[i].round = m.around(cuts[i].round, lead)
	}
	d.left = b.Min.X
	lines := m.lines(d, cuts)
	in, sc := d.flatRoom(b, m, lines)
	tiers := length(len(cuts)+1)*tier + 3
	low, high := m.extent()
	d.heading(b, name, sc)
	k := length(sc.k)
	used := (high - low) * k
	bottom := in.Max.Y - used - max(0, boxH(in)-used)*0.4
	v := view{sc.k, path.Pt(in.Min.X+(boxW(in)-c*k)/2+lead*k, bottom-low*k)}
	d.list(path.Box{Min: path.Pt(b.Min.X+1, b.Min.Y), Max: path.Pt(b.Max.X-1, bottom-tiers)}, lines...)
	d.Rect(render.Outline, v.pt(-lead, 0), v.pt(c-lead, m.tall))
	d.Line(render.Mark, v.pt(0, -6/k), v.pt(0, high+4/k))
	d.BoldWords(path.Pt(v.x(0)+1.2, v.y(high)+2), small, render.Left, "datum")
	for _, n := range m.bands {
		for _, z := range []length{n.from, n.to} {
			if z > 0 && z < m.tall {
				d.Line(n.layer, v.pt(-lead, z), v.pt(c-lead, z))
			}
		}
		if n.words != "" && (n.to-n.from)*k > lead1 {
			x, ok := m.freeX(lead, wide(n.words)/k)
			if !ok {
				continue
			}
			d.Words(path.Pt(v.x(x), v.y((n.from+n.to)/2)-small/2), small, render.Left, n.words)
		}
	}
	// openings, their names above, their places below from the datum
	sortBy(cuts, func(a, b cutout) bool { return a.round > b.round })
	y := v.y(high) + 7
	for i := range cuts {
		cu := cuts[i]
		o := cu.outline.Transform(path.Translate(cu.round, cu.height))
		d.PathOn(render.Cut, o.Transform(v.to()))
		arm := cu.h/2 + 4/k
		d.Line(render.Centre, v.pt(cu.round, cu.height-arm), v.pt(cu.round, cu.height+arm))
		d.Line(render.Centre, v.pt(cu.round-cu.w/2-4/k, cu.height), v.pt(cu.round+cu.w/2+4/k, cu.height))
		// name above, one line each, the rightmost lowest, so that no leader passes words
		at := v.x(cu.round)
		w := wide(cu.name)
		tx, anchor := at+2, render.Left
		if at+2+w > d.area.Max.X {
			tx, anchor = at-2, render.Right
		}
		d.Line(render.Thin, path.Pt(at, v.y(cu.height+cu.h/2)), path.Pt(at, y+small/2))
		d.Line(render.Thin, path.Pt(at, y+small/2), path.Pt(at+(tx-at)*0.7, y+small/2))
		d.Words(path.Pt(tx, y), small, anchor, cu.name)
		y += lead2
	}
	// distances round the wall, shortest nearest
	sortBy(cuts, func(a, b cutout) bool { return a.round.Abs() < b.round.Abs() })
	yd := v.y(low) - tier - 1
	for _, cu := range cuts {
		if cu.round.Abs() < 0.05 {
			continue
		}
		words := called(cu.name, d.both(cu.round.Abs()))
		if cu.round < 0 {
			words += " to the left"
		}
		d.extend(v.x(cu.round), v.y(0), yd)
		d.extend(v.x(0), v.y(0)-4, yd)
		d.spanBare(v.x(min(0, cu.round)), v.x(max(0, cu.round)), yd, words)
		yd -= tier
	}
	d.span(v.x(-lead), v.x(c-lead), yd, v.y(0), "all round "+d.both(c))
	return sc
}

const (
	lead1 length = 3.4
	lead2 length = 4.4
)

// extent is how far down and up the wall with its openings reaches: one may
// stand out past an edge, and the findings say so.
func (m wallMap) extent() (low, high length) {
	low, high = 0, m.tall
	for _, c := range m.cuts {
		low, high = min(low, c.height-c.h/2), max(high, c.height+c.h/2)
	}
	return low, high
}

// flatRoom is the room for the wall laid flat in a box, and the scale that
// gives.
func (d *sheet) flatRoom(b path.Box, m wallMap, lines []string) (path.Box, scale) {
	low, high := m.extent()
	n := length(len(m.cuts))
	in := inner(b, 3, 3, 14+n*lead2, (n+1)*tier+3+listTall(boxW(b)-2, lines...)+3)
	return in, fit(2*math.Pi*m.radius, high-low, boxW(in), boxH(in), 1)
}

// lines says of each opening where it is and what it is.
func (m wallMap) lines(d *sheet, cuts []cutout) []string {
	var out []string
	for _, c := range cuts {
		round := keep(d.both(c.round.Abs())) + " to the right of the datum"
		switch {
		case c.round.Abs() < 0.05:
			round = "on the datum"
		case c.round < 0:
			round = keep(d.both(c.round.Abs())) + " to the left of the datum"
		}
		out = append(out, fmt.Sprintf("%s: middle %s up, %s below the %s, %s; %s", c.name, keep(d.both(c.height)), keep(d.both(m.tall-c.height)), m.edge, round, c.words))
	}
	return append(out, m.key)
}

// freeX is where words as long as w fit on a band without meeting an opening,
// if they do.
func (m wallMap) freeX(lead, w length) (length, bool) {
	c := 2 * math.Pi * m.radius
	for i := 1; i < 40; i++ {
		x := -lead + c*length(i)/40
		if x+w > c-lead {
			break
		}
		free := true
		for _, k := range append(slices.Clone(m.cuts), cutout{round: 0, height: m.tall / 2, w: 1, h: m.tall}) {
			mid := m.around(k.round, lead)
			if mid+k.w/2 > x-5 && mid-k.w/2 < x+w+5 {
				free = false
			}
		}
		if free {
			return x, true
		}
	}
	return 0, false
}

// seen is where an opening shows from the side that faces the datum: the x of
// its left edge, middle and right edge, and whether it is on the near side.
func (m wallMap) seen(cu cutout) (x1, x, x2 length, near bool) {
	at := func(s length) length { return m.radius * length(math.Sin(float64(s/m.radius))) }
	near = math.Cos(float64(cu.round/m.radius)) > -1e-9
	return at(cu.round - cu.w/2), at(cu.round), at(cu.round + cu.w/2), near
}

// facing draws an opening on the round wall as seen from the datum's side.
func (d *sheet) facing(v view, m wallMap, cu cutout) {
	layer := render.Outline
	if _, _, _, near := m.seen(cu); !near {
		layer = render.Hidden
	}
	var cur path.Path
	quarter := math.Pi / 2 * float64(m.radius)
	for _, chain := range cu.outline.Flatten(0.05) {
		cur = nil
		for _, q := range chain {
			s := float64(m.around(cu.round+q.X, math.Pi*m.radius))
			// what lies round the edge is left off, so that an opening at the
			// side shows only its near half
			if layer == render.Outline && math.Abs(s) > quarter+1e-6 {
				s = math.Copysign(quarter, s)
			}
			p := v.pt(m.radius*length(math.Sin(s/float64(m.radius))), cu.height+q.Y)
			if len(cur) == 0 {
				cur.MoveTo(p)
			} else {
				cur.LineTo(p)
			}
		}
		d.PathOn(layer, cur)
	}
}

func holeCut(d *sheet, h geometry.Hole, extra string) cutout {
	words := fmt.Sprintf("hole saw %s, cut %s%s", keep(d.both(h.Saw)), keep(d.dia(h.Diameter)), extra)
	return cutout{h.Name, words, h.Round, h.Height, h.Arc, h.Diameter, h.Outline()}
}
