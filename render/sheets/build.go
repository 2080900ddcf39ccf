package sheets

import (
	"fmt"
	"strconv"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/render"
)

// kindsAcross is how many drum kinds stand side by side in one table.
const kindsAcross = 3

func setBuild(f *flow, p *Pack) {
	f.para(fmt.Sprintf("%s and %s, from %s.", count(p.DrumSilos, "drum silo", "drum silos"),
		count(p.PipeSilos, "pipe silo", "pipe silos"), count(len(p.Silos), "kind of drum", "kinds of drum")))
	f.para("A drum silo is one closed-head drum in two pieces. The upper piece, turned over, is the base. The lower piece is the body: its foot is sawn to a lattice that carries the mesh, its cut edge is the rim. Water comes in by the base, wells up through lattice, mesh and seed, and leaves by the outlet. A pipe silo, for smaller seed, hangs inside by its outlet so that all the flow passes through it. Never mix bases and bodies of different kinds.")
	for _, d := range p.Figures {
		f.figure(d, f.wide(), f.bottom()-topY)
	}
	for i := 0; i < len(p.Silos); i += kindsAcross {
		group := p.Silos[i:min(i+kindsAcross, len(p.Silos))]
		f.headed("The numbers", buildTable(f, group))
	}
	if len(p.Templates) > 0 {
		f.heading("Templates in this pack")
		f.para("Print at actual size, 100 %. Measure the check square on the first template sheet before anything is marked.")
		f.table(templateTable(f, p))
	}
}

func buildTable(f *flow, group []geometry.Silo) table {
	u := f.units
	t := table{cols: []column{{head: "Measure", share: 50, bold: true}}}
	for _, s := range group {
		t.cols = append(t.cols, column{head: "Drum kind " + s.Spec.Drum.Label, share: 134 / float64(len(group))})
	}
	row := func(name string, of func(geometry.Silo) string) {
		r := []cell{say(name)}
		for _, s := range group {
			r = append(r, say(of(s)))
		}
		t.add(r...)
	}
	size := func(name string, of func(geometry.Silo) length) {
		row(name, func(s geometry.Silo) string { return of(s).Both(u) })
	}
	row("Drum silos of this kind", func(s geometry.Silo) string { return strconv.Itoa(s.Build) })
	size("Drum, round the wall", func(s geometry.Silo) length { return s.Spec.Drum.Circumference() })
	size("Drum, outside", func(s geometry.Silo) length { return s.Spec.Drum.Outside })
	size("Drum, height", func(s geometry.Silo) length { return s.Spec.Drum.Height })
	size("Wall", func(s geometry.Silo) length { return s.Spec.Drum.Wall })
	size("Base, height", func(s geometry.Silo) length { return s.Stations.BaseHeight })
	size("Body, foot to rim", func(s geometry.Silo) length { return s.Stations.Rim })
	row("Lattice", func(s geometry.Silo) string {
		return fmt.Sprintf("%s, %s wide, in a circle %s across: %s of the foot open",
			count(s.Spec.Lattice.Bars, "bar", "bars"), s.Spec.Lattice.BarWidth.Both(u), s.Spec.Lattice.Across.Both(u), measure.Percent(s.Lattice.OpenFoot))
	})
	size("Mesh disc, across", func(s geometry.Silo) length { return s.Disc.Across })
	row("Retaining ring", func(s geometry.Silo) string {
		return s.Spec.Ring.Width.Both(u) + " wide, " + count(s.Ring.Screws, "screw", "screws")
	})
	row("Foot in the base's mouth", func(s geometry.Silo) string {
		if !s.Seat.Nests {
			return "does not nest: foot " + s.Seat.Missing.Both(u) + " too wide"
		}
		return "goes in " + s.Seat.Enters.Both(u)
	})
	size("Plenum, head to foot", func(s geometry.Silo) length { return s.Seat.Plenum })
	row("Water in the plenum", func(s geometry.Silo) string { return volume(s.Weights.PlenumVolume, u) })
	row("Seed bay, mesh to outlet", func(s geometry.Silo) string { return volume(s.Weights.SeedBay, u) })
	row("To lift: body, ring, wet seed", func(s geometry.Silo) string { return mass(s.Weights.Lift, u) })
	row("Pipe silo", func(s geometry.Silo) string {
		return pipeName(s.Spec.Pipe.Pipe) + " pipe, " + s.Spec.Pipe.Length.Both(u) + " long"
	})
	size("Pipe silo's screen above the mesh", func(s geometry.Silo) length { return s.Pipe.Under })
	return t
}

func templateTable(f *flow, p *Pack) table {
	t := table{cols: []column{{head: "Template", share: 40, bold: true}, {head: "Drum kind", share: 25},
		{head: "Parts", share: 15, right: true}, {head: "Width", share: 39}, {head: "Height", share: 39},
		{head: "Paper sheets", share: 26, right: true}}}
	for _, r := range p.Templates {
		sheets := strconv.Itoa(r.Sheets)
		if r.Sheets == 0 {
			sheets = "not printed"
		}
		t.add(strong(r.Title, r.Note), say(r.Drum), say(strconv.Itoa(r.Count)),
			say(r.Width.Both(f.units)), say(r.Height.Both(f.units)), say(sheets))
	}
	return t
}

// figure places a drawing in the middle of the page, scaled down to fit.
func (f *flow) figure(d render.Drawing, w, h length) {
	k := scaleTo(d, w, h)
	if k <= 0 {
		return
	}
	if here := scaleTo(d, w, f.bottom()-f.y); here >= 0.75*k {
		k = here // a little smaller rather than a page half empty
	}
	tall := d.Height * length(k)
	f.need(tall)
	f.place(d, marginL+(f.wide()-d.Width*length(k))/2, f.y, k)
	f.y += tall + 4
}

// scaleTo is the scale, at most 1, at which d fits; 0 when it has no size.
func scaleTo(d render.Drawing, w, h length) float64 {
	if !(d.Width > 0 && d.Height > 0) {
		return 0
	}
	return min(1, float64(w/d.Width), float64(h/d.Height))
}
