package sheets

import (
	"fmt"
	"strconv"

	"silowright/geometry"
)

// sixteenth is the fraction of an inch the tables are written to.
const sixteenth = 16

func setMarking(f *flow, p *Pack) {
	f.para("A tape, a marker and dividers do the whole job. " + datumSentence)
	f.para("Tape: bend it round the wall along a level line. Dividers: set them to the chord, one point on the datum at the same height. A place past half way round is reached by the same chord to the left of the datum; its tape distance to the left is given below it.")
	f.para("Inches are to the nearest 1/16, mm to 0.1. \"Off\" is what rounding to 1/16 in adds (+) or takes away, in mm: never more than 0.8 mm (1/32 in) either way. Where that matters, use the mm.")
	for _, s := range p.Silos {
		f.markTables(s, len(p.Silos) > 1, p.PipeSilos > 0)
		f.latticeByCompass(s)
	}
}

// markTables sets one table a part.
func (f *flow) markTables(s geometry.Silo, label, pipes bool) {
	all := geometry.Marks(s)
	for i := 0; i < len(all); {
		part := all[i].Part
		n := i
		for n < len(all) && all[n].Part == part {
			n++
		}
		if part != s.Pipe.Hole.Part || pipes {
			title := "Marking the " + part
			if label {
				title += ", drum kind " + s.Spec.Drum.Label
			}
			f.headed(title, f.markTable(part, all[i:n]))
		}
		i = n
	}
}

func (f *flow) markTable(part string, points []geometry.MarkedPoint) table {
	if points[0].AllRound {
		t := table{cols: []column{{head: "Level line all round", share: 70, bold: true}, {head: "Up from the foot", share: 40}, {head: "Off", share: 17, right: true}, {head: "Down from the head's chime", share: 40}, {head: "Off", share: 17, right: true}}}
		for _, m := range points {
			t.add(say(m.What), say(m.Height.Both(f.units)), say(off(m.Height)), say(m.BelowRim.Both(f.units)), say(off(m.BelowRim)))
		}
		return t
	}
	if points[0].Radius == 0 {
		t := table{cols: []column{{head: "Point on the strip", share: 50, bold: true}, {head: "Along, from one end", share: 50}, {head: "Off", share: 20, right: true}, {head: "Up from the edge", share: 40}, {head: "Off", share: 20, right: true}}}
		for _, m := range points {
			up, o := "whole width", ""
			if m.Height > 0 {
				up, o = m.Height.Both(f.units), off(m.Height)
			}
			t.add(say(m.What), say(m.Round.Both(f.units)), say(off(m.Round)), say(up), say(o))
		}
		return t
	}
	up, down := "Up from the foot", "Down from the rim"
	switch part {
	case "base":
		up, down = "Up from the ground", "Down from the mouth"
	case "pipe silo":
		up, down = "Up from the screen end", "Down from the open end"
	}
	t := table{cols: []column{{head: "Point", share: 31, bold: true}, {head: up, share: 37}, {head: down, share: 36},
		{head: "Round the wall", share: 42}, {head: "Chord", share: 38}}}
	for _, m := range points {
		way := m.Leftwards()
		left, chord := "", "off "+off(m.Chord)
		if m.Round > way+0.05 { // straight across is reached either way
			left = "or left " + way.Both(f.units)
			chord = "to the left, " + chord
		}
		around, along := round(f, m.Round), "off "+off(m.Round)
		across := m.Chord.Both(f.units)
		if m.Round.Abs() < 0.05 {
			along, across, chord = "", "–", ""
		}
		t.add(say(m.What), say(m.Height.Both(f.units), "off "+off(m.Height)), say(m.BelowRim.Both(f.units), "off "+off(m.BelowRim)),
			say(around, along, left), say(across, chord))
	}
	return t
}

// off is the rounding error of l to 1/16 in, in mm with its sign.
func off(l length) string {
	_, e := l.Round(sixteenth)
	s := strconv.FormatFloat(e.MM(), 'f', 1, 64)
	switch {
	case s == "0.0" || s == "-0.0":
		return "0"
	case e > 0:
		return "+" + s
	}
	return "−" + s[1:]
}

func (f *flow) latticeByCompass(s geometry.Silo) {
	u := f.units
	m := geometry.LatticeMarks(s)
	f.heading("The lattice by compass and straightedge, drum kind " + s.Spec.Drum.Label)
	outer := "arc"
	if s.Spec.Lattice.Edge == geometry.EdgeStraight {
		outer = "straight line"
	}
	steps := []string{
		"Find the centre of the foot: two chords drawn anywhere, a perpendicular through the middle of each; they cross at the centre. Measure from it to the foot's edge four ways; move it until all four agree.",
		"Draw the circle: radius " + m.Circle.Both(u) + ".",
		fmt.Sprintf("Start where the datum meets the foot. Step round the circle with dividers set to %s: the %s step must land on the start. Spread an error over all steps.", m.RayChord.Both(u), ordinal(m.Rays)),
		fmt.Sprintf("Join opposite points: the %s are the bars' middle lines.", count(m.Rays/2, "line", "lines")),
		"Draw a line " + m.HalfBar.Both(u) + " on both sides of each: the bars' edges.",
		"Draw a second, light line " + m.PilotLine.Both(u) + " on both sides of each middle line: every corner hole is centred on it.",
		"Inner corner holes: where two light lines cross, " + m.ApexPilot.Both(u) + " from the centre.",
		"Outer corner holes: on the light lines, " + m.OuterPilot.Both(u) + " from the centre. Check: the two of one opening are " + m.PilotSpan.Both(u) + " apart.",
		fmt.Sprintf("Bore all %d corner holes with a bit of %s. Saw from hole to hole along the bars' edges, the outer side along the %s.", 3*m.Openings, s.Spec.Lattice.Pilot.Both(u), outer),
	}
	t := table{cols: []column{{head: "Done", share: 13}, {head: "Step", share: 12, right: true}, {head: "Do", share: 159}}}
	for i, w := range steps {
		t.add(cell{mark: tickBox, paras: []string{""}}, say(strconv.Itoa(i+1)), say(w))
	}
	f.table(t)
}

func ordinal(n int) string {
	switch {
	case n%100 >= 11 && n%100 <= 13:
		return strconv.Itoa(n) + "th"
	case n%10 == 1:
		return strconv.Itoa(n) + "st"
	case n%10 == 2:
		return strconv.Itoa(n) + "nd"
	case n%10 == 3:
		return strconv.Itoa(n) + "rd"
	}
	return strconv.Itoa(n) + "th"
}
