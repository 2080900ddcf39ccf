package views

import (
	"fmt"
	"slices"

	"silowright/geometry"
	"silowright/geometry/path"
	"silowright/render"
)

// drawAssembly draws the whole silo in vertical section: seated with water level
// and flow, taken apart, and with the pipe silo hanging in it.
func drawAssembly(s geometry.Silo, size Size) render.Drawing {
	d := begin(s, size, "Assembly", "drum silo, section")
	seatedBox, rest := rows(d.area, 0.42, 5)
	apartBox, hangBox := d.apartAndHung(rest, s)
	if boxW(d.area) > boxH(d.area)*1.15 {
		left, right := columns(d.area, 0.66, 6)
		apartBox = right
		seatedBox, hangBox = rows(left, 0.62, 6)
	}
	seated := d.seated(seatedBox, s)
	apart := d.apart(apartBox, s)
	return d.finish(named(seated, apart, d.hanging(hangBox, s)))
}

// apartAndHung divides a box for the silo taken apart and the pipe silo hung in
// it, so that both come out as large as can be.
func (d *sheet) apartAndHung(b path.Box, s geometry.Silo) (apart, hung path.Box) {
	best := -1.0
	for _, f := range []float64{0.53, 0.5, 0.56} {
		one, two := columns(b, f, 5)
		trial := *d // drawn on for its scale, then thrown away
		if score := trial.apart(one, s).k * trial.hanging(two, s).k; score > best*(1+1e-9) {
			best, apart, hung = score, one, two
		}
	}
	return apart, hung
}

// reach is how far the outlet, inlet and drain stand out from the axis on the
// side given.
func reach(s geometry.Silo, side length) length {
	r := max(bodyProfile(s).widest(), baseProfile(s).widest())
	if sideOf(s, s.Outlet.Round) == side {
		r = max(r, outletEnd(s))
	}
	if sideOf(s, s.Inlet.Round) == side {
		return max(r, inletEnd(s))
	}
	return max(r, s.Spec.Drum.Outside/2+s.Drain.Stopper.Length)
}

// outletEnd is how far the outlet reaches from the axis.
func outletEnd(s geometry.Silo) length {
	d := drawingOf(s.Outlet)
	at, deep := d.mouth(s.Outlet)
	r := s.Spec.Drum.Outside/2 + at
	switch {
	case d.through:
		return r + throughOut
	case d.piped:
		return r + max(0, s.Spec.Outlet.Nipple-deep)
	}
	return r
}

// outletPipe draws the pipe of the outlet where it is seen, reaching so far
// into the drum when it goes through the wall; couplings hide theirs.
func (d *sheet) outletPipe(v view, s geometry.Silo, in length) {
	h, side, how := s.Outlet, sideOf(s, s.Outlet.Round), drawingOf(s.Outlet)
	if !how.piped {
		return
	}
	at, _ := how.mouth(h)
	start := s.Spec.Drum.Outside/2 + at
	if how.through {
		start -= h.Wall + in
	}
	from, to := side*start, side*outletEnd(s)
	d.PathOn(render.Outline, box(min(from, to), h.Height-h.PipeOutside/2, max(from, to), h.Height+h.PipeOutside/2).Transform(v.to()))
}

// inletEnd is how far the inlet's stub reaches from the axis.
func inletEnd(s geometry.Silo) length {
	_, deep := drawingOf(s.Inlet).mouth(s.Inlet)
	return stubStart(s) - deep + s.Spec.Inlet.Stub
}

// stubStart is how far from the axis the inlet's stub comes into sight.
func stubStart(s geometry.Silo) length {
	at, _ := drawingOf(s.Inlet).mouth(s.Inlet)
	return s.Spec.Drum.Outside/2 + at
}

// tower draws the seated silo with its base on the ground at v's origin.
func (d *sheet) tower(v view, s geometry.Silo) (body view, inletSide length) {
	r := s.Spec.Drum.Outside / 2
	body = view{v.k, v.pt(0, s.Seat.FootHeight)}
	inletSide = d.cutBase(v, s)
	d.cutBody(body, s)
	t := s.Spec.Drum.Wall
	d.cutMesh(body, s, t+s.Spec.Mesh.Thickness/2)
	d.cutRing(body, s, t+s.Spec.Mesh.Thickness)
	d.sideJoint(body, s.Outlet, sideOf(s, s.Outlet.Round), r, s.Outlet.Height)
	d.outletPipe(body, s, throughIn)
	d.sideJoint(v, s.Inlet, inletSide, r, s.Inlet.Height)
	d.sideJoint(v, s.Drain, -inletSide, r, s.Drain.Height)
	if start, end := stubStart(s), inletEnd(s); end > start {
		d.pipeBetween(v, inletSide*start, inletSide*end, s.Inlet.Height, s.Inlet.PipeOutside)
	}
	d.Line(render.Centre, v.pt(0, -15), body.pt(0, s.Stations.Rim+10))
	return body, inletSide
}

func (d *sheet) seated(b path.Box, s geometry.Silo) scale {
	st := s.Stations
	total := s.Seat.FootHeight + st.Rim
	o := s.Seat.FootHeight
	heights := []struct {
		z     length
		words string
	}{
		{0, "ground 0"},
		{st.HeadPanel, "head " + d.both(st.HeadPanel)},
		{s.Inlet.Height, "inlet, drain " + d.both(s.Inlet.Height)},
		{o, "foot " + d.both(o)},
		{st.BaseHeight, "mouth " + d.both(st.BaseHeight)},
		{o + s.Outlet.Height, "outlet " + d.both(o+s.Outlet.Height)},
		{total, "rim " + d.both(total)},
	}
	apart := append(slices.Clone(heights), heights[2])
	apart[2].words, apart[len(heights)].words = "inlet "+d.both(s.Inlet.Height), "drain "+d.both(s.Drain.Height)
	apart[len(heights)].z = s.Drain.Height
	notesW := max(38, boxW(b)*0.24)
	left, right := reach(s, -1), reach(s, 1)
	room := func() (path.Box, scale) {
		col := length(0)
		for _, h := range heights {
			col = max(col, wide(h.words)+jog+2)
		}
		in := inner(b, col+3, notesW+4, 8, 4)
		return in, fit(left+right, total+20, boxW(in), boxH(in), 1)
	}
	in, sc := room()
	if s.Inlet.Height != s.Drain.Height {
		heights = apart
		in, sc = room()
	}
	// inlet and drain share a line where they may, and the notes have their
	// room, unless it costs the scale
	shared, usual := heights, notesW
	heights, notesW = apart, min(notesW, 36)
	if in2, sc2 := room(); sc2.k > sc.k {
		in, sc = in2, sc2
	} else {
		heights, notesW = shared, usual
	}
	b = d.heading(b, "Seated, in section", sc)
	k := length(sc.k)
	used := (left + right) * k
	v := view{sc.k, path.Pt(in.Min.X+(boxW(in)-used)/2+left*k, in.Min.Y+(boxH(in)-(total+20)*k)/2)}
	body, inletSide := d.tower(v, s)
	d.Line(render.Thin, v.pt(-left-5, 0), v.pt(right+5, 0))

	// heights at the left
	x := v.x(-left) - jog - 3
	base, wall := baseProfile(s), bodyProfile(s)
	var lv []level
	for i, h := range heights {
		from := -base.at(h.z)
		if i == 0 {
			from = -left - 5
		}
		if h.z > st.BaseHeight {
			from = -wall.at(h.z - o)
		}
		if inletSide < 0 && i == 2 {
			from = -inletEnd(s)
		}
		lv = append(lv, level{v.y(h.z), v.x(from), h.words})
	}
	d.levels(x, -1, b.Min.Y, b.Max.Y, lv)

	// water
	rin := s.Spec.Drum.Bore() / 2
	side := sideOf(s, s.Outlet.Round)
	inner := s.Outlet.Wall + drawingOf(s.Outlet).inner(s.Outlet)
	surface := s.Outlet.Height
	if side > 0 {
		d.waterLevel(body, -rin, rin-inner+s.Outlet.Wall, surface)
	} else {
		d.waterLevel(body, -rin+inner-s.Outlet.Wall, rin, surface)
	}
	mid := (st.HeadPanel + o) / 2
	d.flow(v, path.Pt(inletSide*(inletEnd(s)-10), s.Inlet.Height), path.Pt(inletSide*rin*0.45, s.Inlet.Height))
	hub, circle := latticeEdges(s)
	for _, x := range []length{-0.75, -0.35, 0.35, 0.75} {
		at := x * circle
		if at.Abs() < hub {
			at = hub * 1.2 * x / x.Abs()
		}
		d.flow(v, path.Pt(at, max(mid, o-surface*0.08)), path.Pt(at, o+surface*0.42))
	}
	r := s.Spec.Drum.Outside / 2
	d.flow(body, path.Pt(side*(r+2), surface), path.Pt(side*(outletEnd(s)+(outletEnd(s)-r)*0.25), surface))

	// notes at the right
	t := s.Spec.Drum.Wall
	var ns []note
	sd := length(1)
	add := func(p path.Point, dot bool, format string, args ...any) {
		ns = append(ns, note{p, fmt.Sprintf(format, args...), dot})
	}
	add(body.pt(sd*(wall.at(st.Rim)-t/2), st.Rim), false, "rim of the body")
	slot := "handle slot"
	if st.Rim-s.Slots[0].Sill > s.Outlet.Height+s.Outlet.PipeInside/2 {
		slot += ", its sill above the water"
	}
	if x, long, far := farSlot(s); far {
		add(body.pt(x+long/2, st.Rim-(s.Slots[0].Top+s.Slots[0].Sill)/2), false, "%s", slot)
	}
	if side > 0 {
		at, _ := drawingOf(s.Outlet).mouth(s.Outlet)
		add(body.pt(r+max(at*0.7, 2.24), s.Outlet.Height-s.Outlet.Footprint/2), false, "outlet: %s", jointWords(s.Outlet))
	}
	add(body.pt(rin*0.55, surface*0.72), true, "seed on the mesh, water wells up through it")
	add(body.pt(sd*(s.Ring.InnerRadius+t/2), t+s.Spec.Ring.Width*0.9), false, "retaining ring, screwed; sealant on its upper edge")
	add(body.pt(sd*circle*0.6, t+s.Spec.Mesh.Thickness/2), false, "mesh on the lattice")
	add(v.pt(sd*base.at(st.BaseHeight), st.BaseHeight-2), false, "%s", d.seatWords(s))
	if inletSide > 0 {
		add(v.pt(inletEnd(s), s.Inlet.Height-s.Inlet.PipeOutside*0.3), false, "inlet: %s", jointWords(s.Inlet))
	} else {
		add(v.pt(r+s.Drain.Stopper.Length*0.5, s.Drain.Height+s.Drain.Stopper.Bottom/2), false, "drain: stopper No. %s", s.Drain.Stopper.Number)
	}
	add(v.pt(rin*0.5, (st.HeadPanel+s.Inlet.Height)/2), true, "plenum %s", keep(d.both(s.Seat.Plenum)))
	d.notes(max(v.x(right)+3, b.Max.X-notesW-2), 1, notesW, b.Min.Y, b.Max.Y, ns)
	return sc
}

// farSlot is where the handle slot behind the plane is seen and how long it
// looks.
func farSlot(s geometry.Silo) (x, long length, far bool) {
	for _, sl := range s.Slots {
		if x, far := behind(s, sl.Round); far {
			return x, seenLong(s, sl), true
		}
	}
	return 0, 0, false
}

// seatWords says how far the foot goes into the mouth.
func (d *sheet) seatWords(s geometry.Silo) string {
	if !s.Seat.Nests {
		return "no seat: the foot does not enter"
	}
	return "seat: the foot enters " + keep(d.both(s.Seat.Enters))
}

func (d *sheet) apart(b path.Box, s geometry.Silo) scale {
	st := s.Stations
	t := s.Spec.Drum.Wall
	r := max(bodyProfile(s).widest(), baseProfile(s).widest())
	up := (s.Disc.Across - s.Disc.Bend) / 2
	gap := (st.BaseHeight + st.Rim) * 0.06
	total := st.BaseHeight + st.Rim + up + s.Spec.Ring.Width + 3*gap
	col := wide("lattice") + 6
	in := inner(b, 2, col+2, 8, 4)
	sc := fit(2*r, total, boxW(in), boxH(in), 1)
	b = d.heading(b, "Taken apart", sc)
	k := length(sc.k)
	v := view{sc.k, path.Pt(in.Min.X+r*k+(boxW(in)-2*r*k)/2, in.Min.Y+(boxH(in)-total*k)/2)}
	d.cutBase(v, s)
	z := st.BaseHeight + gap
	body := view{v.k, v.pt(0, z)}
	d.cutBody(body, s)
	zm := z + st.Rim + gap
	d.cutMesh(v, s, zm)
	zr := zm + up + gap
	d.cutRing(v, s, zr)
	d.Line(render.Thin, v.pt(-s.Ring.InnerRadius-t, zr), v.pt(s.Ring.InnerRadius+t, zr))
	d.Line(render.Centre, v.pt(0, -15), v.pt(0, zr+s.Spec.Ring.Width+20))
	x := v.x(r) + 3
	var bodyHole geometry.Hole // the opening at the right, if any
	if sideOf(s, s.Outlet.Round) > 0 {
		bodyHole = s.Outlet
	}
	baseHole := s.Drain
	if sideOf(s, s.Inlet.Round) > 0 {
		baseHole = s.Inlet
	}
	d.notes(x, 1, col, b.Min.Y, b.Max.Y, []note{
		{v.pt(s.Ring.InnerRadius+t, zr+s.Spec.Ring.Width/2), "ring", false},
		{v.pt(s.Disc.Bend/2, zm+up/2), "mesh disc", false},
		{edge(body, bodyProfile(s), st.Rim*0.6, bodyHole), "body", false},
		{body.pt(s.Spec.Drum.FootOutside/2-t, t/2), "lattice", false},
		{edge(v, baseProfile(s), st.BaseHeight*0.4, baseHole), "base", false},
	})
	return sc
}

// edge is a place on the right edge of a part at about the height z, beside
// the opening there.
func edge(v view, p profile, z length, h geometry.Hole) path.Point {
	if clear := h.Diameter/2 + 2/length(v.k); h.Diameter > 0 && (z-h.Height).Abs() < clear {
		z = h.Height + clear
		if z > p[len(p)-1].Y*0.95 {
			z = max(0, h.Height-clear)
		}
	}
	return v.pt(p.at(z), z)
}
