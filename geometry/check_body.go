package geometry

import (
	"fmt"
	"math"

	"silowright/geometry/measure"
	"silowright/geometry/path"
)

func drumChecks(s *Silo) []Finding {
	st, u := s.Stations, s.Spec.Units
	var out []Finding
	for i, h := range st.BodyHoops {
		gap := st.RingBottom - s.Spec.Saw.Kerf - h.To
		lv := OK
		if below(gap, 0) {
			lv = Stop
		}
		out = append(out, lengths(fmt.Sprintf("ring.hoop-%d", i+1), "ring.width", lv, gap, 0, worked,
			say(lv, "the ring's strip clears the hoop below by %s", "",
				"the ring's strip runs into the hoop below by %s: a hoop does not lie flat; make the ring narrower"),
			gap.Abs().Both(u)))
	}
	if n := len(st.BodyHoops) + 1; n != 2 {
		out = append(out, quantities("drum.hoops", "drum.hoops", Caution, measure.Count(n), measure.Count(2), practice,
			"%d hoop(s) given where two are usual: check that none was left out", n))
	}
	return out
}

// bodySpacing checks the developed wall of the body: outlet and slots against
// rim, hoops, ring and each other.
func bodySpacing(s *Silo) []Finding {
	st, u := s.Stations, s.Spec.Units
	o := s.Outlet
	half := o.Footprint / 2
	out := []Finding{
		gapFinding(u, "outlet.rim", "outlet.below_rim", "the outlet's joint and the rim", o.BelowRim-half),
		gapFinding(u, "outlet.ring", "outlet.below_rim", "the outlet's joint and the ring at the foot", o.Height-half-s.Ring.Foot-s.Spec.Ring.Width),
		gapFinding(u, "handle.rim", "handle.below_rim", "the handle slots and the rim", s.Slots[0].Top),
	}
	for i, h := range st.BodyHoops {
		out = append(out,
			hoopFinding(u, fmt.Sprintf("outlet.hoop-%d", i+1), "outlet.below_rim", "the outlet's joint", o.Height-half, o.Height+half, h),
			hoopFinding(u, fmt.Sprintf("handle.hoop-%d", i+1), "handle.below_rim", "the handle slot", st.Rim-s.Slots[0].Sill, st.Rim-s.Slots[0].Top, h))
	}
	r := s.Spec.Drum.Outside / 2
	gap := length(1e9)
	for _, slot := range s.Slots {
		gap = minLength(gap, boxGap(r,
			wallBox{slot.Round, st.Rim - (slot.Top+slot.Sill)/2, slot.Length, slot.Height()},
			wallBox{o.Round, o.Height, ArcOf(r, o.Footprint), o.Footprint}))
	}
	return append(out, gapFinding(u, "handle.outlet", "handle.round", "the outlet's joint and the nearer handle slot", gap))
}

// baseSpacing checks the base's wall: inlet and drain against hoop and each
// other.
func baseSpacing(s *Silo) []Finding {
	u := s.Spec.Units
	hoop := s.Stations.BaseHoop
	r := s.Spec.Drum.Outside / 2
	i, d := s.Inlet, s.Drain
	gap := boxGap(r,
		wallBox{i.Round, i.Height, ArcOf(r, i.Footprint), i.Footprint},
		wallBox{d.Round, d.Height, ArcOf(r, d.Footprint), d.Footprint})
	return []Finding{
		hoopFinding(u, "inlet.hoop", "inlet.above_ground", "the inlet's joint", i.Height-i.Footprint/2, i.Height+i.Footprint/2, hoop),
		hoopFinding(u, "drain.hoop", "drain.above_ground", "the drain", d.Height-d.Footprint/2, d.Height+d.Footprint/2, hoop),
		gapFinding(u, "inlet.drain", "drain.round", "inlet and drain", gap),
	}
}

// wallBox is a part's upright rectangle on the developed wall.
type wallBox struct{ round, height, w, h length }

// boxGap is the distance between two rectangles on the developed wall of a
// drum of outside radius r, the shorter way round; negative when they overlap.
func boxGap(r length, a, b wallBox) length {
	c := 2 * math.Pi * r
	dx := (a.round - b.round).Abs()
	for dx > c {
		dx -= c
	}
	dx = minLength(dx, c-dx) - (a.w+b.w)/2
	dy := (a.height - b.height).Abs() - (a.h+b.h)/2
	switch {
	case dx <= 0 && dy <= 0:
		return maxLength(dx, dy)
	case dx <= 0:
		return dy
	case dy <= 0:
		return dx
	}
	return distance(path.Pt(0, 0), path.Pt(dx, dy))
}

func gapFinding(u measure.Unit, id, key, what string, gap length) Finding {
	lv := atLeast(gap, 1e-6, web)
	return lengths(id, key, lv, gap, web, practice,
		say(lv, "%s lie %s apart", "%s lie only %s apart: a weak strip; move one",
			"%s run into each other by %s: move one"), what, gap.Abs().Both(u))
}

// hoopFinding holds a part between two heights against a hoop: a joint on a
// hoop does not seal, a cut beside one may split into it.
func hoopFinding(u measure.Unit, id, key, what string, low, high length, h Hoop) Finding {
	gap := maxLength(h.From-high, low-h.To)
	lv := atLeast(gap, 0, besideHoop)
	return lengths(id, key, lv, gap, besideHoop, practice,
		say(lv, "%s clears the hoop by %s", "%s clears the hoop by only %s: check the hoop's edges on the drum",
			"%s runs into the hoop by %s, where the wall is not flat: move it"), what, gap.Abs().Both(u))
}
