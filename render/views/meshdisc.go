package views

import (
	"fmt"
	"math"

	"silowright/geometry"
	"silowright/geometry/path"
	"silowright/render"
)

// drawMeshDisc draws the mesh disc flat, with its bend and its snips.
func drawMeshDisc(s geometry.Silo, size Size) render.Drawing {
	d := begin(s, size, "Mesh disc", "body, on the lattice")
	m, sp := s.Disc, s.Spec.Mesh
	lines := []string{
		fmt.Sprintf("Mesh with openings of %s, %s thick. Turned up at the bend it reaches %s up the wall, %s past the ring.",
			keep(d.both(sp.Opening)), keep(d.both(sp.Thickness)), keep(d.both((m.Across-m.Bend)/2)), keep(d.both(sp.Trim))),
		"Snip straight towards the centre; lay the flaps over each other all the same way round.",
		fmt.Sprintf("Each snip takes up %s of overlap at the edge.", keep(d.both(m.Overlap))),
	}
	p := d.planIn(d.area, "Cut flat", m.Across, 2, lines...)
	v := p.view
	k := length(v.k)
	d.Circle(render.Cut, v.at, m.Across/2*k)
	d.Circle(render.Hidden, v.at, m.Bend/2*k)
	for i := range m.Snips {
		a := 2 * math.Pi * float64(i) / float64(m.Snips)
		q, w := polar(m.Across/2, a), polar(m.Across/2-m.SnipDepth, a)
		d.Line(render.Cut, v.pt(q.X, q.Y), v.pt(w.X, w.Y))
	}
	d.Line(render.Centre, v.pt(-m.Across/2-4/k, 0), v.pt(m.Across/2+4/k, 0))
	d.Line(render.Centre, v.pt(0, -m.Across/2-4/k), v.pt(0, m.Across/2+4/k))
	// a patch of mesh to tell it is mesh
	cell := max(1.6, sp.Opening*k)
	for i := range 7 {
		o := cell * length(i-3)
		c := v.pt(-m.Bend*0.18, m.Bend*0.16)
		half := cell * 3.4
		d.Line(render.Thin, path.Pt(c.X+o, c.Y-half), path.Pt(c.X+o, c.Y+half))
		d.Line(render.Thin, path.Pt(c.X-half, c.Y+o), path.Pt(c.X+half, c.Y+o))
	}
	snip := 2 * math.Pi / float64(m.Snips) * math.Round(float64(m.Snips)/9)
	q := polar(m.Across/2-m.SnipDepth/2, snip)
	e := polar(m.Across/2, 2*math.Pi/float64(m.Snips)*(math.Round(float64(m.Snips)/6)+0.5))
	bend := polar(m.Bend/2, -0.5)
	d.planNotes(p, []note{
		{v.pt(e.X, e.Y), "cut line, " + keep(d.dia(m.Across)), false},
		{v.pt(q.X, q.Y), fmt.Sprintf("%d snips %s deep, evenly round: %s along the edge", m.Snips, keep(d.both(m.SnipDepth)), keep(d.both(m.Across*math.Pi/length(m.Snips)))), false},
		{v.pt(bend.X, bend.Y), "bend, " + keep(d.dia(m.Bend)), false},
	})
	d.span(v.at.X-m.Bend/2*k, v.at.X+m.Bend/2*k, p.low-tier, v.at.Y, "bend "+d.dia(m.Bend))
	d.span(v.at.X-m.Across/2*k, v.at.X+m.Across/2*k, p.low-2*tier, v.at.Y, d.dia(m.Across))
	d.list(p.words, lines...)
	return d.finish(p.scale)
}
