package sheets

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

func setTools(f *flow, p *Pack) {
	f.heading("Hole saws")
	f.para("The hole comes out larger than the saw by the oversize the job gives. Cut one trial hole in the strip or in scrap wall and try the fitting in it before the first real hole.")
	f.table(sawTable(f, p))
	f.headed("Bits, blades and the size of cut they make", bitTable(f, p))
	f.heading("Tools")
	t := table{cols: []column{{head: "Have", share: 12}, {head: "Tool", share: 92, bold: true}, {head: "For", share: 80}}}
	for _, r := range toolRows(f, p) {
		t.add(p.tick(r[0]), say(r[0], p.onHand(r[0])), say(r[1]))
	}
	f.table(t)
	if rest := p.otherwiseOnHand(f); len(rest) > 0 {
		f.para("Also on hand: " + strings.Join(rest, "; ") + ".")
	}
}

// holesOf are all holes of one silo; the pipe silo's only when one is built.
func holesOf(s geometry.Silo, pipes int) []geometry.Hole {
	out := []geometry.Hole{s.Outlet, s.Inlet, s.Drain}
	if pipes > 0 {
		out = append(out, s.Pipe.Hole)
	}
	return out
}

// holeCount is how often a hole is cut in the whole build; pipe silos are
// hung in any drum silo, so theirs are counted once.
func holeCount(p *Pack, s geometry.Silo, h geometry.Hole) int {
	if h.Part == s.Pipe.Hole.Part {
		return p.PipeSilos
	}
	return s.Build
}

func sawTable(f *flow, p *Pack) table {
	type use struct {
		saw, hole length
		names     []string
		holes     int
	}
	var uses []use
	for i, s := range p.Silos {
		for _, h := range holesOf(s, p.PipeSilos) {
			n := holeCount(p, s, h)
			if h.Part == s.Pipe.Hole.Part && i > 0 {
				n = 0
			}
			at := slices.IndexFunc(uses, func(v use) bool { return v.saw == h.Saw && v.hole == h.Diameter })
			if at < 0 {
				uses = append(uses, use{saw: h.Saw, hole: h.Diameter})
				at = len(uses) - 1
			}
			if !slices.Contains(uses[at].names, h.Name) {
				uses[at].names = append(uses[at].names, h.Name)
			}
			uses[at].holes += n
		}
	}
	slices.SortStableFunc(uses, func(a, b use) int {
		switch {
		case a.saw < b.saw:
			return -1
		case a.saw > b.saw:
			return 1
		}
		return 0
	})
	t := table{cols: []column{{head: "Have", share: 14}, {head: "Hole saw", share: 40, bold: true},
		{head: "Hole as it comes out", share: 42}, {head: "Holes in all", share: 24, right: true}, {head: "For", share: 64}}}
	for _, v := range uses {
		for i, n := range v.names {
			if i == 0 {
				continue
			}
			v.names[0] += ", " + n
		}
		saw := sawName(f, v.saw)
		t.add(p.tick(saw), say(v.saw.Both(f.units), p.onHand(saw)), say(v.hole.Both(f.units)),
			say(strconv.Itoa(v.holes)), say(v.names[0]))
	}
	return t
}

func bitTable(f *flow, p *Pack) table {
	t := table{cols: []column{{head: "Have", share: 14}, {head: "Tool", share: 42, bold: true}, {head: "Size", share: 72}, {head: "For", share: 56}}}
	row := func(tool, use string, of func(geometry.Silo) string) {
		t.add(p.tick(tool), say(tool, p.onHand(tool)), cell{paras: perKind(p.Silos, of)}, say(use))
	}
	u := f.units
	row("Bit for the lattice's corner holes", "one hole in each corner of each opening: it lets the jigsaw turn",
		func(s geometry.Silo) string { return s.Spec.Lattice.Pilot.Both(u) })
	row("Bit for the handle slots' ends", "one hole at each end of each slot",
		func(s geometry.Silo) string {
			return "as wide as the slot, or any bit that lets the blade in: slot " + s.Slots[0].Height().Both(u)
		})
	row("Bit for the ring's screws", "through ring and mesh into the wall",
		func(s geometry.Silo) string {
			return screwPilot(f, s)
		})
	row("Saw that parts the drum", "the kerf the heights are reckoned with",
		func(s geometry.Silo) string { return "kerf " + s.Spec.Saw.Kerf.Both(u) })
	row("Jigsaw blade for plastics", "all lattice cuts of one silo, pilots taken off",
		func(s geometry.Silo) string { return "travel " + s.Lattice.Travel.Both(u) })
	return t
}

// screwPilot is the bit for a ring screw, by the general rule for plastics.
func screwPilot(f *flow, s geometry.Silo) string {
	rule := stock.ScrewRule()
	part := fmt.Sprintf("%.0f to %.0f %% of the thread of a %s", 100*rule.PilotMin, 100*rule.PilotMax, screwName(s))
	v, ok := stock.ScrewOf(s.Spec.Screws.Size)
	if !ok || v.MajorMin <= 0 {
		return part + " (general rule for plastics)"
	}
	least, most := rule.Pilot(v.MajorMin)
	return fmt.Sprintf("%s to %s: %s, a general rule for plastics", bitSize(least, f.units), bitSize(most, f.units), part)
}

// bitSize writes a drill's size in both units, inches to 1/64.
func bitSize(l length, u measure.Unit) string {
	if u == measure.UnitMM {
		return l.Metric() + " mm (" + l.Inch(64) + " in)"
	}
	return l.Inch(64) + " in (" + l.Metric() + " mm)"
}

func screwName(s geometry.Silo) string { return stock.ScrewName(s.Spec.Screws.Size) + " screw" }

func toolRows(f *flow, p *Pack) [][2]string {
	rows := [][2]string{
		{"Eye protection, hearing protection, gloves for carrying", "every step with a blade; take gloves off at a turning saw"},
		{"Tape measure, steel rule, square", "measuring the drum and every part"},
		{"Dividers or large compass", "stepping off screws, lattice and chords"},
		{"Straightedge and a strip of stiff card round the drum", "level lines all the way round"},
		{"Marker that writes on plastic", "datum, cuts, serial numbers"},
		{"Jigsaw", "parting cuts, lattice, handle slots"},
		{"Drill with the bits and hole saws above", "pilots, wall holes, screw holes"},
		{"Clamps and a block of wood shaped to the wall", "holding the curved wall, backing each hole"},
		{"Half-round file, scraper, abrasive paper", "taking the burr off every edge"},
		{"Snips or heavy shears", "mesh disc, retaining ring"},
		{"Screwdriver, nippers and a flat file", "ring screws; trimming their points"},
		{"Sealant gun", "the bead along the ring's edge"},
	}
	if anyHole(p, cemented) {
		rows = append(rows, [2]string{"Primer (ASTM F656), cement (ASTM D2564) and an applicator half the pipe's width", "cemented pipe joints, in open air or with a draught"})
	}
	for _, j := range geometry.Joints() {
		is := func(h geometry.Hole) bool { return h.Joint == j }
		if tool := textOf(geometry.Hole{Joint: j}).tool; tool[0] != "" && anyHole(p, is) {
			rows = append(rows, tool)
		}
	}
	if p.PipeSilos > 0 {
		for _, s := range perKind(p.Silos, func(s geometry.Silo) string {
			if s.Pipe.Clamp == "" {
				return "no single clamp in the table closes on " + s.Pipe.ClampOver.Both(f.units) + ": join two in series"
			}
			return "size " + s.Pipe.Clamp + ", closes from " + s.Pipe.ClampMin.Both(f.units) + " to " + s.Pipe.ClampMax.Both(f.units)
		}) {
			rows = append(rows, [2]string{"Band clamp: " + s, "a tool: it stretches the screen over the pipe and comes off when the resin has set"})
		}
		rows = append(rows, [2]string{"Mixing cup, spatula, gloves that resist the resin, acetone for cleaning", "the resin bead of the pipe silo, ventilated, no flame"})
	}
	rows = append(rows,
		[2]string{"Hose, bucket, a level place; a second person to lift", "leak test, rinse and soak"})
	return rows
}

// anyHole reports whether a hole that is made is so.
func anyHole(p *Pack, is func(geometry.Hole) bool) bool {
	for _, s := range p.Silos {
		if slices.ContainsFunc(holesOf(s, p.PipeSilos), is) {
			return true
		}
	}
	return false
}
