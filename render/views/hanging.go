package views

import (
	"silowright/geometry"
	"silowright/geometry/path"
	"silowright/render"
)

// hanging draws the pipe silo hung in the body by its outlet, what is left
// round it and under it listed below.
func (d *sheet) hanging(b path.Box, s geometry.Silo) scale {
	st := s.Stations
	p := s.Pipe
	r := bodyProfile(s).widest()
	side := sideOf(s, s.Outlet.Round)
	zb := s.Outlet.Height - s.Spec.Pipe.OutletAboveScreen
	top, low := max(st.Rim, st.Rim+p.RimAbove), min(0, zb)
	out := outletEnd(s)
	words := []string{
		"A  pipe silo, hung by its outlet",
		"B  stand-off " + keep(d.both(p.StandOff)),
		"C  gap behind " + keep(d.both(p.Round)),
		"D  screen, " + keep(d.both(p.Under)) + " above the mesh",
	}
	if p.Under < 0 {
		words[3] = "D  screen, " + keep(d.both(-p.Under)) + " below the mesh: it does not hang free"
	}
	if p.Round < 0 {
		words[2] = "C  no gap behind: " + keep(d.both(-p.Round)) + " too wide"
	}
	const col length = 9
	under := listTall(boxW(b)-2, words...) + 1
	in := inner(b, 2, col+2, 8, under+9)
	sc := fit(r+out, top-low, boxW(in), boxH(in), 1)
	b = d.heading(b, "Pipe silo hung in the body", sc)
	k := length(sc.k)
	w := (r + out) * k
	shift := r
	if side < 0 {
		shift = out
	}
	v := view{sc.k, path.Pt(in.Min.X+(boxW(in)-w)/2+shift*k, in.Min.Y+(boxH(in)-(top-low)*k)/2-low*k)}
	bore := s.Spec.Drum.Bore() / 2
	near := side * (bore - p.StandOff) // the pipe silo's wall on the outlet's side
	axis := near - side*p.Outside/2
	pipe := view{v.k, v.pt(axis, zb)}
	ro, long := p.Outside/2, s.Spec.Pipe.Length
	beyond := d.cutBody(v, s)
	d.hide(beyond, [4]path.Point{pipe.pt(-ro, 0), pipe.pt(ro, 0), pipe.pt(ro, long), pipe.pt(-ro, long)})
	t := s.Spec.Drum.Wall
	d.cutMesh(v, s, t+s.Spec.Mesh.Thickness/2)
	d.cutRing(v, s, t+s.Spec.Mesh.Thickness)
	d.sideJoint(v, s.Outlet, side, s.Spec.Drum.Outside/2, s.Outlet.Height)
	d.cutPipe(pipe, s, side)
	how := drawingOf(s.Outlet)
	reaches := how.inner(s.Outlet)
	if how.through {
		reaches = min(reaches, max(0, p.StandOff/2))
	}
	d.outletPipe(v, s, reaches)
	if f := s.Outlet.Bulkhead; f.Adapter > 0 { // into the inner thread, for the reducing adapter
		from, to := side*(bore-reaches), side*(bore-reaches-f.Adapter)
		d.PathOn(render.Outline, box(min(from, to), s.Outlet.Height-f.Across/2, max(from, to), s.Outlet.Height+f.Across/2).Transform(v.to()))
		reaches += f.Adapter
	}
	x2 := side * (bore - reaches)
	d.pipeBetween(v, near-side*p.Wall-side*25.4, x2, s.Outlet.Height, p.Hole.PipeOutside)
	far := axis - side*p.Outside/2
	bottom := v.y(low)
	d.notes(v.x(max(r, side*out))+1, 1, col, bottom-7, b.Max.Y, []note{
		{pipe.pt(-side*(p.Outside/2-p.Wall/2), s.Spec.Pipe.Length*0.86), "A", false},
		{v.pt((near+x2)/2, s.Outlet.Height+p.Hole.PipeOutside/2), "B", false},
		{v.pt((far-side*bore)/2, max(zb+20, st.Rim*0.25)), "C", true},
		{pipe.pt(0, 0), "D", false},
	})
	d.list(path.Box{Min: b.Min, Max: path.Pt(b.Max.X, b.Min.Y+under)}, words...)
	return sc
}

// cutPipe draws the pipe silo in section, its screened end at v's origin and
// its side hole on the side given.
func (d *sheet) cutPipe(v view, s geometry.Silo, side length) {
	p := s.Pipe
	ro, t, long := p.Outside/2, p.Wall, s.Spec.Pipe.Length
	h := p.Hole
	for _, sd := range []length{1, -1} {
		parts := [][2]length{{0, long}}
		if sd == side {
			parts = [][2]length{{0, h.Height - h.Diameter/2}, {h.Height + h.Diameter/2, long}}
		}
		for _, z := range parts {
			d.section(box(sd*(ro-t), z[0], sd*ro, z[1]).Transform(v.to()), t*length(v.k), hatchAngle)
		}
	}
	d.Line(render.Outline, v.pt(-ro, long), v.pt(ro, long))
	d.Line(render.Hidden, v.pt(-ro, -1), v.pt(ro, -1))
}
