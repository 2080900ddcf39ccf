package geometry

import (
	"math"

	"silowright/geometry/measure"
	"silowright/geometry/path"
)

// The paper a patch template keeps round its opening: room for a title above
// it and for its notes below.
const (
	patchSide  length = 50
	patchAbove length = 34
	patchBelow length = 54
	patchWide  length = 150 // the least width that holds two columns of notes
	noteStep   length = 6
)

// patch begins a patch template for an opening as wide and high as given on
// the laid-flat wall, with an upright line through its middle and a level
// line. It returns the opening's centre.
func patch(s *Silo, id, title, part string, count int, w, h length) (Template, path.Point) {
	t := newTemplate(s, id, title, part, count, maxLength(patchWide, w+2*patchSide), h+patchAbove+patchBelow)
	c := path.Pt(t.Width/2, patchBelow+h/2)
	t.mark(line(path.Pt(c.X, 2), path.Pt(c.X, t.Height-2)))
	t.mark(line(path.Pt(2, c.Y), path.Pt(t.Width-2, c.Y)))
	return t, c
}

// note is one line below a patch's opening: what, and how far.
type note struct{ what, far string }

// notes writes the lines left and right of the upright line, first on top.
func (t *Template) notes(ns ...note) {
	for i, n := range ns {
		y := 5 + noteStep*length(len(ns)-1-i)
		t.label(path.Pt(t.Width/4, y), 2.5, "%s", n.what)
		t.label(path.Pt(t.Width*3/4, y), 2.5, "%s", n.far)
	}
}

// head writes what is cut, and with what.
func (t *Template) head(title, tool string) {
	t.label(path.Pt(t.Width/4, t.Height-8), 3.5, "%s", title)
	t.label(path.Pt(t.Width*3/4, t.Height-8), 2.5, "%s", tool)
}

// onDatum says where the upright line of a patch lies.
func onDatum(round length, u measure.Unit) note {
	if math.Abs(float64(round)) < 0.05 {
		return note{"upright line:", "the datum"}
	}
	return note{"upright line, right of the datum:", round.Both(u)}
}

// roundTo is how far it is round the wall from one place to another, the
// shorter way.
func (s *Silo) roundTo(a, b length) length {
	c := s.Spec.Drum.Circumference()
	d := length(math.Mod(float64((a - b).Abs()), float64(c)))
	return minLength(d, c-d)
}

// wallHole is the patch for a round hole.
func wallHole(s *Silo, h Hole, id, title string, ns ...note) Template {
	u := s.Spec.Units
	t, c := patch(s, id, title, h.Part, s.Build, h.Arc, h.Diameter)
	t.cut(moved(h.Outline(), c))
	t.drill(path.Circle(c, pilotBit/2))
	t.head(title, "hole saw "+h.Saw.Both(u))
	t.notes(append(ns, onDatum(h.Round, u))...)
	return t
}

// pilotBit is the drill in a hole saw's arbor, 1/4 in.
const pilotBit = measure.Inch / 4

func outletTemplate(s *Silo) Template {
	u := s.Spec.Units
	o := s.Outlet
	a, b := s.roundTo(o.Round, s.Slots[0].Round), s.roundTo(o.Round, s.Slots[1].Round)
	ns := []note{{"level line, below the rim:", o.BelowRim.Both(u)}, {"nearer slot's middle, round:", minLength(a, b).Both(u)},
		{"other slot's middle, round:", maxLength(a, b).Both(u)}}
	for _, h := range s.Stations.BodyHoops {
		if gap := o.Height - h.To; gap > 0 {
			ns = append(ns, note{"hoop's upper edge, below level:", gap.Both(u)})
			break
		}
	}
	t := wallHole(s, o, "outlet", "Outlet", ns...)
	t.Up = "rim upwards"
	return t
}

func inletTemplate(s *Silo) Template { return baseHole(s, s.Inlet, s.Drain, "Inlet") }

func drainTemplate(s *Silo) Template { return baseHole(s, s.Drain, s.Inlet, "Drain") }

// baseHole is the patch for one of the base's holes, other being its
// neighbour.
func baseHole(s *Silo, h, other Hole, title string) Template {
	u := s.Spec.Units
	ns := []note{{"level line, above the ground:", h.Height.Both(u)},
		{other.Name + "'s centre, round:", s.roundTo(h.Round, other.Round).Both(u)}}
	if gap := s.Stations.BaseHoop.From - h.Height; gap > 0 {
		ns = append(ns, note{"hoop's lower edge, above level:", gap.Both(u)})
	}
	t := wallHole(s, h, h.Name, title, ns...)
	t.Up = "mouth upwards, base standing on its head"
	return t
}

// handleTemplate is the patch for a handle slot; each silo has two.
func handleTemplate(s *Silo) Template {
	u := s.Spec.Units
	one := s.Slots[0]
	t, c := patch(s, "handle-slot", "Handle slot", "body", 2*s.Build, one.Length, one.Height())
	t.Up = "rim upwards"
	t.cut(moved(one.Outline(), c))
	for _, x := range []length{-1, 1} {
		t.drill(path.Circle(path.Pt(c.X+x*(one.Length/2-one.CornerR), c.Y), pilotBit/2))
	}
	t.head("Handle slot", one.Length.Both(u)+" × "+one.Height().Both(u))
	t.notes(note{"level line, below the rim:", one.Middle().Both(u)},
		note{"outlet's centre, round:", s.roundTo(one.Round, s.Outlet.Round).Both(u)},
		note{"other slot's middle, round:", s.roundTo(one.Round, s.Slots[1].Round).Both(u)},
		onDatum(one.Round, u))
	return t
}
