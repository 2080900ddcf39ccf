package bom

import (
	"fmt"
	"math"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

// drumSilos counts what one kind's drum silos use.
func (t *takeoff) drumSilos(b Batch) {
	s, n := b.Silo, b.Drum
	spec := s.Spec
	t.use(ware{"drum", "closed-head plastic drum, second-hand", Drums, Each}, float64(n), 0, "%d of kind %s", n, spec.Drum.Label)
	for _, p := range drumPieces(s) {
		t.sawn(p.pipe, p.length, spec.Saw.Kerf, n, forDrum, p.name)
	}
	t.joint(s.Outlet, spec.Sealant, n, forDrum)
	t.joint(s.Inlet, spec.Sealant, n, forDrum)
	t.joint(s.Drain, spec.Sealant, n, forDrum)
	t.supply(spec.Inlet, n)
	t.meshAndRing(b)
	t.edges(b)
}

// piece is a length of pipe to saw.
type piece struct {
	name   string
	pipe   geometry.PipeRef
	length measure.Length
	into   string // of the fitting it is cemented into, where that is to be known when it is cut
}

// intoAdapter says that the pipe of a hole goes into a male adapter.
func intoAdapter(h geometry.Hole) string {
	if h.Makeup().Adapters > 0 {
		return "a male adapter"
	}
	return ""
}

// drumPieces are the lengths of pipe in one drum silo. Between couplings the
// inlet has a nipple through the wall and a stub outside; into any other joint
// the stub itself goes.
func drumPieces(s geometry.Silo) []piece {
	o, i := s.Spec.Outlet, s.Spec.Inlet
	name := "outlet nipple"
	if !o.Joint.Makeup().Nipple {
		name = "outlet pipe"
	}
	out := []piece{{name, o.Pipe, o.Nipple, intoAdapter(s.Outlet)}}
	if i.Joint.Makeup().Nipple {
		out = append(out, piece{"inlet nipple", i.Pipe, i.Nipple, ""})
	}
	return append(out, piece{"inlet stub", i.Pipe, i.Stub, intoAdapter(s.Inlet)})
}

// adapters counts male adapters, so many on each of n silos, by which plain pipe
// goes into threads as wide as the hole's pipe, and the tape on their threads.
func (t *takeoff) adapters(h geometry.Hole, per, n int, s side, at string) {
	size := fits(h.Pipe)
	t.each("male-adapter-"+slug(size), "male adapter, socket for "+size+" pipe × male pipe thread", Fittings, per, n, s, at)
	if roll := t.rates.TapeJoints; roll > 0 {
		drum, pipe := s.of(float64(per*n) / float64(roll))
		t.use(ware{"thread-tape", "thread tape, a roll", Consumables, Each}, drum, pipe, "%d threads %s, %d a roll", per*n, at, roll)
	}
}

// supply counts what joins the inlet's stub to the hose. The stub is cemented
// into the hose adapter, and into the outer coupling where there is one.
func (t *takeoff) supply(i geometry.InletSpec, n int) {
	size := i.Pipe.Size
	sockets := 1
	if i.Joint.Makeup().Nipple {
		sockets = 2
	}
	t.cement(sockets, n, forDrum, "on the inlet stub")
	t.each("hose-adapter-"+slug(fits(i.Pipe)), "adapter from "+fits(i.Pipe)+" pipe to hose", Fittings, 1, n, forDrum, "on the inlet stub")
	hose := ware{"hose-" + slug(size), "supply hose for the " + size + " adapter", Hose, Length}
	t.use(hose, float64(n)*t.rates.HosePerInlet.MM(), 0, "%d × %s", n, t.rates.HosePerInlet.Both(t.units))
	t.pieces(hose, Piece{Length: t.rates.HosePerInlet, Count: n, Name: "supply hose"})
	t.each("hose-clamp-"+slug(size), "clamp for the "+size+" supply hose", Hose, t.rates.HoseClamps, n, forDrum, "on the hose")
}

// meshAndRing counts mesh, screws and sealant. The ring is made from the drum.
func (t *takeoff) meshAndRing(b Batch) {
	s, n := b.Silo, float64(b.Drum)
	spec := s.Spec
	side := s.Disc.Across
	mesh := ware{"mesh-" + openingSlug(spec.Mesh.Opening), "mesh, " + opening(spec.Mesh.Opening) + " opening", MeshScreen, Area}
	t.use(mesh, n*side.Times(side).MM2(), 0, "%d discs %s across, each counted as a square", b.Drum, side.Both(t.units))
	t.flats(mesh, Flat{"mesh disc", Disc, side, b.Drum})
	q := spec.Screws
	t.use(ware{"screw-" + slug(q.Size) + "-" + slug(q.Length.In(t.units)), "pan-head screw, stainless, " + stock.ScrewName(q.Size) + " × " + q.Length.Both(t.units), Fasteners, Each},
		n*float64(s.Ring.Screws), 0, "%d × %d in the ring", s.Ring.Screws, b.Drum)
	ml := s.Sealant.Volume.ML()
	t.use(sealant, n*ml, 0, "%d × %s mL along the ring: bead %s, %s long, waste %s %%: %s of the job's cartridges of %s", b.Drum, measure.Number(ml, 1),
		spec.Sealant.Bead.Both(t.units), s.Sealant.Run.Both(t.units), measure.Number(100*spec.Sealant.Waste, 1),
		measure.Number(n*float64(s.Sealant.Volume/spec.Sealant.Cartridge), 1), spec.Sealant.Cartridge.Both(t.units))
	t.wipe(s.Sealant.Run, b.Drum, forDrum, "ring bead")
	if per := t.rates.PointsPerDisc; s.Ring.Protrudes > 0 && per > 0 {
		t.use(ware{"cutting-disc", "cutting disc for a rotary tool", Consumables, Each}, n*float64(s.Ring.Screws)/float64(per), 0,
			"%d × %d screw points stick out %s, %d a disc", s.Ring.Screws, b.Drum, s.Ring.Protrudes.Both(t.units), per)
	}
}

// edges counts what wears with the length of cut.
func (t *takeoff) edges(b Batch) {
	travel := b.Silo.JigsawTravel()
	for _, w := range []struct {
		item, description string
		life              measure.Length
	}{
		{"jigsaw-blade", "jigsaw blade, fine, for plastics", t.rates.BladeLife},
		{"sandpaper", "sandpaper sheet, 120", t.rates.SandpaperLife},
	} {
		if w.life > 0 {
			t.use(ware{w.item, w.description, Consumables, Each}, float64(b.Drum)*float64(travel/w.life), 0,
				"%d × %s m of cut, %s m each", b.Drum, measure.Number(travel.Metres(), 2), measure.Number(w.life.Metres(), 1))
		}
	}
	t.marker(b.Drum, forDrum)
}

// marker counts markers for n silos.
func (t *takeoff) marker(n int, s side) {
	if per := t.rates.MarkerSilos; per > 0 {
		drum, pipe := s.of(float64(n) / float64(per))
		t.use(ware{"marker", "marker that writes on plastic", Consumables, Each}, drum, pipe, "%d silos, %d a marker", n, per)
	}
}

func circle(d measure.Length) measure.Length { return math.Pi * d }

// opening writes a mesh opening, which the trade gives in mm in either system.
func opening(l measure.Length) string {
	return fmt.Sprintf("%s mm (%.3f in)", inMicrometres(l), l.Inches())
}

// openingSlug is an opening in an item's name. Screens are sold in steps as
// small as 5 µm (0.120 and 0.125 mm, ISO 565), so two are told apart to 1 µm.
func openingSlug(l measure.Length) string { return inMicrometres(l) + "-mm" }

// inMicrometres writes l in mm to whole micrometres, half of one up, so that an
// opening of 1/16 in is 1.588 however it was typed.
func inMicrometres(l measure.Length) string {
	return measure.Number(math.Floor(math.Round(l.MM()*1e6)/1e3+0.5)/1e3, 3)
}
