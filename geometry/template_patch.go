package geometry

import (
	"math"

	"silowright/geometry/path"
)

// patch begins a patch template for an opening as wide and high as given on
// the laid-flat wall, with an upright line through its middle and a level
// line. It returns the opening's centre.
func patch(s *Silo, id, title, part string, count int, w, h length) (Template, path.Point) {
	width, height := w+2*patchMargin+40, h+2*patchMargin+20
	if width < 120 {
		width = 120
	}
	t := newTemplate(s, id, title, part, count, width, height)
	c := path.Pt(width/2, height/2)
	t.mark(line(path.Pt(c.X, 2), path.Pt(c.X, height-2)))
	t.mark(line(path.Pt(2, c.Y), path.Pt(width-2, c.Y)))
	return t, c
}

// onDatum writes where the upright line of a patch lies.
func (t *Template) onDatum(s *Silo, round length) {
	u := s.Spec.Units
	at := path.Pt(t.Width/4-2, 4)
	if math.Abs(float64(round)) < 0.05 {
		t.label(at, 2.5, "upright line: the datum")
		return
	}
	t.label(at, 2.5, "upright line: %s", round.Both(u))
	t.label(path.Pt(3*t.Width/4+2, 4), 2.5, "right of the datum")
}

// wallHole is the patch for a round hole.
func wallHole(s *Silo, h Hole, id, title string, count int) Template {
	u := s.Spec.Units
	t, c := patch(s, id, title, h.Part, count, h.Arc, h.Diameter)
	t.cut(moved(h.Outline(), c))
	t.drill(path.Circle(c, 3.175)) // the hole saw's pilot bit, 1/4 in
	t.onDatum(s, h.Round)
	t.label(path.Pt(c.X/2-2, t.Height-8), 3.5, "%s", title)
	t.label(path.Pt(t.Width-c.X/2+2, t.Height-8), 2.5, "hole saw %s", h.Saw.In(u))
	return t
}

// levelNote writes what the level line of a patch is.
func (t *Template) levelNote(left, right string) {
	t.label(path.Pt(t.Width/4-2, t.Height/2-patchGap(*t)), 2.5, "%s", left)
	t.label(path.Pt(3*t.Width/4+2, t.Height/2-patchGap(*t)), 2.5, "%s", right)
}

// patchGap is how far below the level line its note stands, clear of the hole.
func patchGap(t Template) length { return t.Height/2 - 11 }

func outletTemplate(s *Silo) Template {
	t := wallHole(s, s.Outlet, "outlet", "Outlet", s.Build)
	t.Up = "rim upwards"
	u := s.Spec.Units
	t.levelNote("level line: "+s.Outlet.BelowRim.Both(u), "below the rim")
	return t
}

func inletTemplate(s *Silo) Template {
	t := wallHole(s, s.Inlet, "inlet", "Inlet", s.Build)
	t.Up = "mouth upwards, base standing on its head"
	t.levelNote("level line: "+s.Inlet.Height.Both(s.Spec.Units), "above the ground")
	return t
}

func drainTemplate(s *Silo) Template {
	t := wallHole(s, s.Drain, "drain", "Drain", s.Build)
	t.Up = "mouth upwards, base standing on its head"
	t.levelNote("level line: "+s.Drain.Height.Both(s.Spec.Units), "above the ground")
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
		t.drill(path.Circle(path.Pt(c.X+x*(one.Length/2-one.CornerR), c.Y), 3.175))
	}
	t.onDatum(s, one.Round)
	t.levelNote("level line: "+((one.Top+one.Sill)/2).Both(u), "below the rim")
	t.label(path.Pt(c.X/2-2, t.Height-8), 3.5, "Handle slot")
	t.label(path.Pt(t.Width-c.X/2+2, t.Height-8), 2.5, "slot %s × %s", one.Length.In(u), one.Height().In(u))
	return t
}
