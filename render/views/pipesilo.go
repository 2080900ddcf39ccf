package views

import (
	"fmt"

	"silowright/geometry"
	"silowright/geometry/path"
	"silowright/render"
)

// drawPipeSilo draws the pipe silo in section, with its screen's lower edge in
// detail.
func drawPipeSilo(s geometry.Silo, size Size) render.Drawing {
	d := begin(s, size, "Pipe silo", unkeep(pipeWords(s.Spec.Pipe.Pipe))+", section")
	upper, lower := rows(d.area, 0.66, 5)
	sc := d.pipeSection(upper, s)
	edge := d.screenEdge(lower, s)
	return d.finish(named(sc, edge))
}

func (d *sheet) pipeSection(b path.Box, s geometry.Silo) scale {
	p, q := s.Pipe, s.Spec.Pipe
	h := p.Hole
	items := []struct {
		z     length
		words string
	}{
		{0, "screened end 0"},
		{h.Height, "side hole " + d.both(h.Height)},
		{q.Length, "length " + d.both(q.Length)},
	}
	left := widest(items[0].words, items[1].words, items[2].words) + jog + 3
	col := max(50, boxW(b)*0.3)
	stick := max(40, q.PipeOutLength-25.4-p.Wall)
	in := inner(b, left, col+4, 10, 3*tier+2)
	sc := fit(p.Outside+stick, q.Length+20, boxW(in), boxH(in), 1)
	b = d.heading(b, "Section through the side hole", sc)
	k := length(sc.k)
	v := view{sc.k, path.Pt(in.Min.X+(boxW(in)-(p.Outside+stick)*k)/2+p.Outside/2*k, in.Min.Y+(boxH(in)-q.Length*k)/2)}
	ro := p.Outside / 2
	d.cutPipe(v, s, 1)
	d.resin(v, s)
	x1, x2 := ro-p.Wall-25.4, ro+stick
	drawingOf(h).onPipe(d, v, h, ro, h.Height)
	d.Line(render.Outline, v.pt(x1, h.Height-h.PipeOutside/2), v.pt(x1, h.Height+h.PipeOutside/2))
	d.pipeBetween(v, x1, x2, h.Height, h.PipeOutside)
	d.Line(render.Centre, v.pt(0, -8/k), v.pt(0, q.Length+8/k))
	d.Line(render.Centre, v.pt(x1-5/k, h.Height), v.pt(x2+5/k, h.Height))
	var lv []level
	for _, it := range items {
		lv = append(lv, level{v.y(it.z), v.x(-ro), it.words})
	}
	d.levels(v.x(-ro)-jog-2, -1, b.Min.Y, b.Max.Y, lv)
	y := v.y(0)
	d.span(v.x(-p.Inside/2), v.x(p.Inside/2), y-tier-1, y-1, "inside "+d.dia(p.Inside))
	d.span(v.x(-ro), v.x(ro), y-2*tier-1, y-1, "outside "+d.dia(p.Outside))
	d.notes(max(v.x(x2)+4, b.Max.X-col), 1, col, y-2, b.Max.Y, []note{
		{v.pt(ro-p.Wall/2, q.Length*0.93), fmt.Sprintf("%s, wall %s", pipeWords(q.Pipe), keep(d.both(p.Wall))), false},
		{v.pt(ro+3, h.Height+h.Footprint*0.45), fmt.Sprintf("%s in a hole cut %s, hole saw %s", drawingOf(h).name, keep(d.dia(h.Diameter)), keep(d.both(h.Saw))), false},
		{v.pt(x2-stick*0.25, h.Height-h.PipeOutside/2), fmt.Sprintf("%s, %s long, to the reducing adapter on the drum silo's outlet", pipeWords(q.PipeOut), keep(d.both(q.PipeOutLength))), false},
		{v.pt(ro*0.5, -1), fmt.Sprintf("screen with openings of %s, trimmed flush", keep(d.both(q.Screen))), false},
	})
	return sc
}

// resin draws the bead that bonds the screen, in the corner under the pipe's
// edge outside.
func (d *sheet) resin(v view, s geometry.Silo) {
	ro, b := s.Pipe.Outside/2, s.Spec.Pipe.Bead
	for _, sd := range []length{1, -1} {
		d.Shade(path.Polygon(v.poly(path.Pt(sd*ro, 0), path.Pt(sd*(ro+b), 0), path.Pt(sd*ro, b))...), 0.6)
		d.PathOn(render.Thin, path.Polygon(v.poly(path.Pt(sd*ro, 0), path.Pt(sd*(ro+b), 0), path.Pt(sd*ro, b))...))
	}
}

// screenEdge draws the pipe's screened edge before trimming: screen, bead and
// the clamp that holds it while the resin sets.
func (d *sheet) screenEdge(b path.Box, s geometry.Silo) scale {
	p, q := s.Pipe, s.Spec.Pipe
	up := min(q.Drape, 24)
	col := max(50, boxW(b)*0.3)
	deep := p.Wall + 20
	foot := listTall(boxW(b)-2, "x")*2 + 2
	in := inner(b, 34, col+4, 9, foot+2)
	sc := fit(deep+12, up+14, boxW(in), boxH(in), 2)
	top := d.heading(b, "Screened edge while the resin sets", sc)
	k := length(sc.k)
	v := view{sc.k, path.Pt(midX(in), in.Min.Y+(boxH(in)-(up+14)*k)/2+8*k)}
	// the wall's outside at x = 0, the bore at the left
	t := max(0.4, q.ScreenThickness)
	d.section(path.Polygon(v.poly(path.Pt(-p.Wall, 0), path.Pt(0, 0), path.Pt(0, up+4), path.Pt(-p.Wall, up+4))...), p.Wall*k, hatchAngle)
	d.PathOn(render.Hidden, path.Polyline(v.poly(path.Pt(-deep, -t), path.Pt(t, -t), path.Pt(t, up))...))
	low := max(q.Bead+2, up*0.35)
	band := box(t+0.3, low, t+1.6, low+12)
	d.section(band.Transform(v.to()), 1.5*k, hatchAngle)
	rb := path.Polygon(v.poly(path.Pt(t, -t), path.Pt(t+q.Bead, -t), path.Pt(t, q.Bead))...)
	d.Shade(rb, 0.6)
	d.PathOn(render.Thin, rb)
	clamp := "no clamp of the table fits: " + keep(d.both(p.ClampOver)) + " to close on"
	if p.Clamp != "" {
		clamp = fmt.Sprintf("band clamp %s, closes on %s; it comes off when the resin has set", p.Clamp, keep(d.both(p.ClampOver)))
	}
	d.notes(max(v.x(12)+4, b.Max.X-col), 1, col, top.Min.Y+foot, top.Max.Y, []note{
		{v.pt(t+1.6, low+6), clamp, false},
		{v.pt(t, up*0.93), fmt.Sprintf("screen drawn up %s and pulled taut; trimmed later", keep(d.both(q.Drape))), false},
		{v.pt(t+q.Bead*0.4, q.Bead*0.3), fmt.Sprintf("resin bead, leg %s, all round: %s", keep(d.both(q.Bead)), keep(p.Resin.Volume.Both(d.units))), true},
	})
	d.list(path.Box{Min: b.Min, Max: path.Pt(b.Max.X, b.Min.Y+foot)},
		fmt.Sprintf("Screen cut %s square. Clean and roughen the pipe's edge before the resin.", keep(d.both(p.ScreenSquare))))
	return sc
}
