package stock

import "silowright/geometry/measure"

func holeSawTable() Table {
	t := newTable("hole-saws", "Hole saws, nominal; a hole comes out a little larger", "inch", "sold as, mm", "exactly, mm")
	for _, s := range HoleSaws() {
		t.add(s.Origin, s.Label, s.MetricLabel, measure.Number(s.Diameter.MM(), 2))
	}
	return t
}

func pipeHoleTable() Table {
	t := newTable("pipe-holes", "Holes for inch pressure pipe, in (mm); a grommet's own label wins",
		"pipe, in", "rubber grommet", "threaded bulkhead fitting", "pipe passes freely")
	for _, r := range holeRows {
		g, _ := GrommetHole(r.size)
		b, hasB := BulkheadHole(r.size)
		c, _ := ClearanceHole(r.size)
		parts := []part{{"grommet", g.Origin}}
		if hasB {
			parts = append(parts, part{"bulkhead", b.Origin})
		}
		parts = append(parts, part{"passes", c.Origin})
		t.addMixed(parts, r.size, span(g.Min, g.Max), span(b.Min, b.Max), span(c.Min, c.Max))
	}
	return t
}

func stopperTable() Table {
	t := newTable("stoppers", "Tapered rubber stoppers", "No.", "top, mm (in)", "bottom", "length", "hole saw, in (mm)")
	for _, s := range Stoppers() {
		parts := []part{{"diameters", s.Origin}}
		if s.Length > 0 {
			parts = append(parts, part{"length", s.LengthOrigin})
		}
		t.addMixed(append(parts, part{"saw", s.SawOrigin}),
			s.Number, mmInch(s.Top), mmInch(s.Bottom), mmInch(s.Length), span(s.SawMin, s.SawMax))
	}
	return t
}

func clampTable() Table {
	t := newTable("clamps", "Worm-drive band clamps; they may be joined in series", "size", "smallest, in (mm)", "largest")
	for _, c := range Clamps() {
		t.add(c.Origin, c.Size, shopInch(c.Min), shopInch(c.Max))
	}
	return t
}

func screwTable() Table {
	t := newTable("screws", "Pan-head tapping screws", "size", "major, in (mm)", "head", "pitch")
	for _, s := range Screws() {
		t.add(s.Origin, s.Size, thousandths(s.MajorMin, s.MajorMax), thousandths(s.HeadMin, s.HeadMax), inchMM(s.Pitch))
	}
	return t
}

func screwLengthTable() Table {
	t := newTable("screw-lengths", "Lengths inch tapping screws are sold in", "length, in (mm)")
	lengths, o := ScrewLengths()
	for _, l := range lengths {
		t.add(o, shopInch(l))
	}
	return t
}

// thousandths writes a range to the thousandth of an inch.
func thousandths(a, b measure.Length) string {
	if b == 0 {
		return unknown
	}
	return inchMM(a) + " to " + inchMM(b)
}

func screwRuleTable() Table {
	t := newTable("screw-holes", "Tapping screws in plastics, as parts of the major diameter; nothing found for HDPE", "measure", "from", "to")
	r := ScrewRule()
	t.add(r.Origin, "pilot hole", measure.Number(100*r.PilotMin, 0)+" %", measure.Number(100*r.PilotMax, 0)+" %")
	t.add(r.Origin, "thread engaged", measure.Number(r.EngagementMin, 1)+" ×", measure.Number(r.EngagementMax, 1)+" ×")
	return t
}

func handHoldTable() Table {
	t := newTable("hand-hold", "A cut-out that lifts well, at least", "measure", "in (mm)")
	h := HandHoldRule()
	t.add(h.Origin, "height", shopInch(h.Height))
	t.add(h.Origin, "length, ends rounded", shopInch(h.Length))
	t.add(h.Origin, "clear behind", shopInch(h.Behind))
	t.add(h.Origin, "edge thickness; thinner: round it or sleeve it", shopInch(h.Edge))
	return t
}

func sheetTable() Table {
	t := newTable("sheets", "Plywood sheets", "sold as", "width, mm (in)", "length")
	for _, s := range Sheets() {
		t.add(s.Origin, s.Label, mmInch(s.Width), mmInch(s.Length))
	}
	return t
}
