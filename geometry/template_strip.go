package geometry

import (
	"math"

	"silowright/geometry/path"
)

// A wrap strip goes once round a part. It begins left of the datum and ends as
// far past its closing mark, so that everything is drawn whole. The mark must meet the datum again: when it does not, the drum's circumference
// was measured wrong.
type wrapStrip struct {
	Template
	lead   length // strip's left end to the datum
	around length // datum to closing mark
}

// bodyStripTemplate has its upper edge along the rim, or a line along it where
// the outlet breaks out of the rim.
func bodyStripTemplate(s *Silo) Template {
	o := s.Outlet
	low, half := o.BelowRim+maxLength(o.Footprint, o.Diameter)/2, o.Arc/2
	for _, sl := range s.Slots {
		low, half = maxLength(low, sl.Sill), maxLength(half, sl.Length/2)
	}
	past := o.past(o.BelowRim)
	w := newStrip(s, "body-strip", "Body wrap strip", "body", past+low+20, half)
	w.Up = "upper edge along the rim"
	rim := w.Height - past
	if past > 0 {
		w.Up = "the line below the upper edge along the rim"
		w.mark(line(path.Pt(0, rim), path.Pt(w.Width, rim)))
	}
	w.hole(o, rim-o.BelowRim)
	for _, sl := range s.Slots {
		c := path.Pt(w.x(sl.Round), rim-sl.Middle())
		w.cut(moved(sl.Outline(), c))
		w.cross(c, 4)
	}
	return w.Template
}

// baseStripTemplate has its lower edge on the ground, the base standing on its
// head, or a line on it where a hole breaks out of the chime.
func baseStripTemplate(s *Silo) Template {
	high, past, half := length(0), length(0), length(0)
	for _, h := range []Hole{s.Inlet, s.Drain} {
		high = maxLength(high, h.Height+maxLength(h.Footprint, h.Diameter)/2)
		past, half = maxLength(past, h.past(h.Height)), maxLength(half, h.Arc/2)
	}
	w := newStrip(s, "base-strip", "Base wrap strip", "base", past+high+20, half)
	w.Up = "lower edge on the ground, base standing on its head"
	if past > 0 {
		w.Up = "the line above the lower edge on the ground, base standing on its head"
		w.mark(line(path.Pt(0, past), path.Pt(w.Width, past)))
	}
	w.hole(s.Inlet, past+s.Inlet.Height)
	w.hole(s.Drain, past+s.Drain.Height)
	return w.Template
}

// newStrip begins a strip so high, with room left of the datum for an opening
// reaching half to either side of it.
func newStrip(s *Silo, id, title, part string, height, half length) wrapStrip {
	u := s.Spec.Units
	w := wrapStrip{lead: half + 15, around: s.Spec.Drum.Circumference()}
	w.Template = newTemplate(s, id, title, part, s.Build, 2*w.lead+w.around, height)
	w.Strip = true
	end := w.lead + w.around
	w.mark(path.Rect(path.Box{Min: path.Pt(0, 0), Max: path.Pt(w.Width, height)}))
	w.mark(line(path.Pt(w.lead, 0), path.Pt(w.lead, height)))
	w.mark(line(path.Pt(end, 0), path.Pt(end, height)))
	at := w.lead + w.around/8
	w.label(path.Pt(at, 12), 3.5, "datum on the drum: %s from the left end", w.lead.Both(u))
	at = w.lead + w.around*7/8
	w.label(path.Pt(at, 12), 3.5, "closing mark, %s past the datum line", w.around.Both(u))
	w.label(path.Pt(at, 5), 2.5, "it must meet the datum; if not, measure the drum again")
	return w
}

// x is where on the strip something round from the datum is drawn: whole, for
// the strip runs as far past the closing mark as before the datum.
func (w *wrapStrip) x(round length) length {
	return w.lead + length(math.Mod(float64(round), float64(w.around)))
}

func (w *wrapStrip) hole(h Hole, y length) {
	c := path.Pt(w.x(h.Round), y)
	w.cut(moved(h.Outline(), c))
	w.drill(path.Circle(c, pilotBit/2))
}
