package bom

import (
	"fmt"
	"strings"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

// bores counts hole saws, one a size, shared between drum and pipe silos by
// the holes each has it saw, and the pilot bits those holes wear out.
func (t *takeoff) bores(batches []Batch) {
	type bore struct {
		saw        measure.Length
		drum, pipe int
		holes      []string
	}
	var bores []bore
	count := func(h geometry.Hole, drum, pipe int) {
		at := -1
		for i, b := range bores {
			if b.saw.In(t.units) == h.Saw.In(t.units) {
				at = i
			}
		}
		if at < 0 {
			at = len(bores)
			bores = append(bores, bore{saw: h.Saw})
		}
		b := &bores[at]
		b.drum, b.pipe = b.drum+drum, b.pipe+pipe
		if drum+pipe > 0 {
			b.holes = append(b.holes, fmt.Sprintf("%d × %s", drum+pipe, h.Name))
		}
	}
	drum, pipe := 0, 0
	for _, b := range batches {
		for _, h := range []geometry.Hole{b.Silo.Outlet, b.Silo.Inlet, b.Silo.Drain} {
			count(h, b.Drum, 0)
		}
		count(b.Silo.Pipe.Hole, 0, b.Pipe)
		drum, pipe = drum+3*b.Drum, pipe+b.Pipe
	}
	once := func(item, description string, drum, pipe int, why string) {
		d, p := apart(1, drum, pipe)
		t.use(ware{item, description, Tools, Each}, d, p, "1 for %s", why)
	}
	for _, b := range bores {
		once("hole-saw-"+slug(b.saw.In(t.units)), "hole saw "+b.saw.Both(t.units), b.drum, b.pipe, strings.Join(b.holes, ", "))
	}
	bit, _, _ := stock.PilotBit()
	once("hole-saw-arbor", "arbor for hole saws, with a "+bit.Both(t.units)+" pilot bit", drum, pipe, "all hole saws")
	if per := t.rates.HolesPerPilotBit; per > 0 {
		t.use(ware{"pilot-bit", "spare pilot bit for the hole-saw arbor, " + bit.Both(t.units), Consumables, Each},
			float64(drum)/float64(per), float64(pipe)/float64(per), "%d holes, %d a bit", drum+pipe, per)
	}
}

// apart shares one quantity by two counts; nothing when both are 0.
func apart(q float64, drum, pipe int) (float64, float64) {
	if drum+pipe == 0 {
		return 0, 0
	}
	d := q * float64(drum) / float64(drum+pipe)
	return d, q - d
}

// tools counts what else is bought once, whatever the count of silos.
func (t *takeoff) tools(batches []Batch) {
	once := func(w ware, q float64, s side, why string, args ...any) {
		if _, bought := t.at[itemKey(w.item)]; !bought {
			drum, pipe := s.of(q)
			t.use(w, drum, pipe, why, args...)
		}
	}
	for _, b := range batches {
		spec := b.Silo.Spec
		if b.Drum > 0 {
			pilot := bitSize(spec.Lattice.Pilot, t.units)
			once(ware{"drill-" + slug(pilot), "drill bit " + spec.Lattice.Pilot.Both(t.units), Tools, Each}, 1, forDrum, "1 for the lattice's corner holes")
			once(ware{"drill-for-screw-" + slug(spec.Screws.Size), "drill bit for " + stock.ScrewName(spec.Screws.Size) + " screws" + screwHole(spec.Screws.Size, t.units), Tools, Each},
				1, forDrum, "1 for the ring's screw holes")
			side := spec.Drum.FootOutside
			plywood := ware{"plywood", "plywood for the lattice template", Tools, Area}
			t.use(plywood, side.Times(side).MM2(), 0, "1 square of %s for kind %s", side.Both(t.units), spec.Drum.Label)
			t.flats(plywood, Flat{"lattice template", Plate, side, 1})
		}
	}
	t.clamps(batches)
}

// clamps counts the band clamps of each size: as many as there are pipe silos
// setting at one time.
func (t *takeoff) clamps(batches []Batch) {
	var sizes []string
	pipes := map[string]int{}
	for _, b := range batches {
		if size := b.Silo.Pipe.Clamp; b.Pipe > 0 && size != "" {
			if pipes[size] == 0 {
				sizes = append(sizes, size)
			}
			pipes[size] += b.Pipe
		}
	}
	for _, size := range sizes {
		n := min(pipes[size], max(1, t.rates.ClampsAtOnce))
		t.use(ware{"band-clamp-" + slug(size), "band clamp, size " + size + ", comes off when the resin has set", Tools, Each}, 0, float64(n),
			"%d of %d pipe silos set at one time", n, pipes[size])
	}
}

// bitSize writes a drill's size in the job's unit, inches to 1/64.
func bitSize(l measure.Length, u measure.Unit) string {
	if u == measure.UnitMM {
		return l.Metric() + " mm"
	}
	return l.Inch(64) + " in"
}

// screwHole is what holes a screw asks for in plastics, by the general rule.
func screwHole(size string, u measure.Unit) string {
	v, ok := stock.ScrewOf(size)
	if !ok || v.MajorMin <= 0 {
		return ""
	}
	low, high := stock.ScrewRule().Pilot(v.MajorMin)
	if u == measure.UnitMM {
		return fmt.Sprintf(", %s to %s mm", low.Metric(), high.Metric())
	}
	return fmt.Sprintf(", %.3f to %.3f in (%s to %s mm)", low.Inches(), high.Inches(), low.Metric(), high.Metric())
}
