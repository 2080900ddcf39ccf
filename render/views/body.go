package views

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"silowright/geometry"
	"silowright/geometry/path"
	"silowright/render"
)

// drawBody draws the body from the side that carries the datum and from above, and
// its wall laid flat.
func drawBody(s geometry.Silo, size Size) render.Drawing {
	d := begin(s, size, "Body", "drum silo")
	m := d.bodyMap(s)
	return d.sideAndFlat(s, bodyProfile(s), m, sideWords{
		name: "From the datum's side and from above", above: bodyAbove(s), edge: "rim", standing: "Ø where it stands", below: s.Spec.Drum.FootOutside,
	}, "Wall laid flat, outside towards you; to the right of the datum")
}

// sideAndFlat sets a part's views from the side and from above over its wall
// laid flat, or beside it on a sheet that lies wide, sharing the sheet so that
// all come out as large as can be.
func (d *sheet) sideAndFlat(s geometry.Silo, p profile, m wallMap, w sideWords, name string) render.Drawing {
	d.projects = true
	lines := m.lines(d, m.cuts)
	best, one, two := -1.0, path.Box{}, path.Box{}
	try := func(a, b path.Box) {
		_, side := d.sideRoom(a, p, m, w)
		_, flat := d.flatRoom(b, m, lines)
		// of two as good, the one whose views are the larger
		if score := math.Pow(side.k, 1.05) * flat.k; score > best*(1+1e-9) {
			best, one, two = score, a, b
		}
	}
	for i := range 73 {
		try(rows(d.area, float64(0.7-0.005*length(i)), 4))
	}
	if boxW(d.area) > boxH(d.area) {
		for i := range 61 {
			try(columns(d.area, float64(0.6-0.005*length(i)), 4))
		}
	}
	side := d.side(one, p, m, w, s)
	return d.finish(named(side, d.flat(two, m, name)))
}

// named is the scale for the title strip of a sheet with several views: the
// first view's, to which the scale bar is drawn, and those that differ.
func named(first scale, others ...scale) scale {
	names := []string{first.name}
	for _, o := range others {
		if !slices.Contains(names, o.name) {
			names = append(names, o.name)
		}
	}
	return scale{strings.Join(names, ", "), first.k}
}

// bodyMap gathers the body's openings and heights.
func (d *sheet) bodyMap(s geometry.Silo) wallMap {
	st := s.Stations
	m := wallMap{radius: s.Spec.Drum.Outside / 2, tall: st.Rim, edge: "rim",
		key: "From above: D datum, O outlet, H handle slots; the lattice, under the mesh, is dashed."}
	m.cuts = append(m.cuts, holeCut(d, s.Outlet, ""))
	for i, sl := range s.Slots {
		name := fmt.Sprintf("handle slot %d", i+1)
		words := fmt.Sprintf("%s long, %s high, ends %s radius", keep(d.both(sl.Length)), keep(d.both(sl.Height())), keep(d.both(sl.CornerR)))
		m.cuts = append(m.cuts, cutout{name, words, sl.Round, st.Rim - (sl.Top+sl.Sill)/2, sl.Length, sl.Height(), sl.Outline()})
	}
	h := func(y length, name string) { m.heights = append(m.heights, level{y: y, words: name + " " + d.both(y)}) }
	m.heights = append(m.heights, level{words: "foot 0"})
	h(s.Spec.Drum.FootHeight, "full width")
	for _, o := range st.BodyHoops {
		if o.From < st.Rim {
			h(o.From, "hoop")
			h(min(o.To, st.Rim), "hoop")
			m.bands = append(m.bands, band{o.From, o.To, render.Thin, "hoop"})
		}
	}
	h(s.Outlet.Height, "outlet")
	h(st.Rim-s.Slots[0].Sill, "slot's sill")
	h(st.Rim-s.Slots[0].Top, "slot's top")
	h(st.Rim, "rim")
	low := s.Ring.Foot
	m.bands = append(m.bands, band{low, low + s.Spec.Ring.Width, render.Hidden,
		fmt.Sprintf("ring inside, %d screws, %s apart", s.Ring.Screws, d.both(s.Ring.Step))})
	return m
}

// sideWords is what a side view says of its part.
type sideWords struct {
	name     string
	edge     string // its upper edge's name
	standing string
	below    length // diameter it stands on
	hidden   []length
	above    seenFromAbove
}

// falls are the openings' heights, measured down from the upper edge.
func (m wallMap) falls(d *sheet) []level {
	var out []level
	for i, c := range m.cuts {
		first := func(o cutout) bool { return (o.height - c.height).Abs() < 0.05 }
		if slices.IndexFunc(m.cuts, first) < i {
			continue
		}
		names := ""
		for _, o := range m.cuts[i:] {
			if first(o) {
				names = also(names, o.name)
			}
		}
		out = append(out, level{y: c.height, words: called(names, d.both(m.tall-c.height)) + " down"})
	}
	return out
}

// also adds a name to a row of names; two that differ in their number alone
// become one: "handle slots".
func also(names, name string) string {
	if names == "" {
		return name
	}
	last := names[strings.LastIndexByte(names, ',')+1:]
	if i := strings.LastIndexByte(name, ' '); i > 0 && strings.HasPrefix(strings.TrimSpace(last), name[:i+1]) {
		return strings.TrimSuffix(names, last) + last[:strings.LastIndexByte(last, ' ')] + "s"
	}
	return names + ", " + name
}

// called sets a measure after a name: after a colon where the name ends in a
// number, so that slot 1 at 18 1/16 in is not read as 1 18 1/16.
func called(name, measure string) string {
	if n := len(name); n > 0 && name[n-1] >= '0' && name[n-1] <= '9' {
		return name + ": " + measure
	}
	return name + " " + measure
}

// underSide is the room on paper for the dimensions under a side view, and
// overSide that for the datum's name over it.
const (
	underSide        = 2*tier + 5
	overSide  length = 9
)

// sideRoom is the room for the views from the side and from above in a box,
// and the scale that gives.
func (d *sheet) sideRoom(b path.Box, p profile, m wallMap, w sideWords) (path.Box, scale) {
	left := levelsWide(m.heights) + 1
	right := max(levelsWide(m.falls(d))+1, wide(w.standing+" "+d.both(w.below))+2)
	in := inner(b, left, right, 8, 3)
	low, high := m.extent()
	return in, fit(2*max(p.widest(), w.above.half()), high-low+boxH(w.above.bounds()), boxW(in), boxH(in)-underSide-overSide, 1)
}

// side draws a round part from the side that faces the datum into a box:
// heights at the left, places of the openings below the upper edge at the
// right, diameters below. The view from above stands over it in third angle,
// under it in first (ISO 5456-2).
func (d *sheet) side(b path.Box, p profile, m wallMap, w sideWords, s geometry.Silo) scale {
	top, r := p[len(p)-1].Y, max(p.widest(), w.above.half())
	falls := m.falls(d)
	in, sc := d.sideRoom(b, p, m, w)
	low, high := m.extent()
	d.heading(b, w.name, sc)
	k := length(sc.k)
	seen := w.above.bounds()
	sideTall, planTall := (high-low)*k, boxH(seen)*k
	start := in.Min.Y + (boxH(in)-sideTall-planTall-underSide-overSide)/2
	sideY, planY := start+underSide, start+underSide+sideTall+overSide
	ceiling := planY + planTall/2 // of the heights
	if d.size.FirstAngle {
		planY, sideY = start, start+planTall+underSide
		ceiling = b.Max.Y - 6
	}
	v := view{sc.k, path.Pt(midX(in), sideY-low*k)}
	d.fromAbove(view{sc.k, path.Pt(midX(in), planY-seen.Min.Y*k)}, w.above)
	d.PathOn(render.Outline, p.outline().Transform(v.to()))
	for _, q := range p[1 : len(p)-1] {
		d.Line(render.Thin, v.pt(-q.X, q.Y), v.pt(q.X, q.Y))
	}
	for _, z := range w.hidden {
		d.Line(render.Hidden, v.pt(-p.at(z), z), v.pt(p.at(z), z))
	}
	d.Line(render.Mark, v.pt(0, 0), v.pt(0, high+5/k))
	d.BoldWords(path.Pt(v.x(0)+1.2, v.y(high)+2.5), small, render.Left, "datum")
	for _, c := range m.cuts {
		d.facing(v, m, c)
		_, x, _, near := m.seen(c)
		if near && math.Abs(float64(x)) < float64(m.radius)*0.98 {
			arm := c.h/2 + 3/k
			d.Line(render.Centre, v.pt(x, c.height-arm), v.pt(x, c.height+arm))
			d.Line(render.Centre, v.pt(x-arm, c.height), v.pt(x+arm, c.height))
		}
	}
	var lv []level
	for _, h := range m.heights {
		lv = append(lv, level{v.y(h.y), v.x(-p.at(h.y)), h.words})
	}
	yLow := v.y(0) - 2*tier - 2
	d.levels(v.x(-r)-jog-2, -1, yLow, ceiling, lv)
	lv = []level{{v.y(top), v.x(p.at(top)), w.edge + " 0"}}
	for _, f := range falls {
		lv = append(lv, level{v.y(f.y), v.x(p.at(f.y)), f.words})
	}
	d.levels(v.x(r)+jog+2, 1, yLow, ceiling, lv)
	d.span(v.x(-w.below/2), v.x(w.below/2), v.y(0)-tier, v.y(0), w.standing+" "+d.both(w.below))
	ro := s.Spec.Drum.Outside / 2
	d.span(v.x(-ro), v.x(ro), v.y(0)-2*tier, v.y(0)+2, "outside "+d.dia(2*ro))
	return sc
}
