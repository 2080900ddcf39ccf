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
	w := newStrip(s, "body-strip", "Body wrap strip", "body", past+low+stripFree, half, 0)
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
	w := newStrip(s, "base-strip", "Base wrap strip", "base", past+high+stripFree, half, past+high)
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
// reaching half to either side of it. free is the lower edge of the band that no
// opening reaches.
func newStrip(s *Silo, id, title, part string, height, half, free length) wrapStrip {
	u := s.Spec.Units
	w := wrapStrip{lead: half + 15, around: s.Spec.Drum.Circumference()}
	w.Template = newTemplate(s, id, title, part, s.Build, 2*w.lead+w.around, height)
	w.Strip = true
	end := w.lead + w.around
	w.mark(path.Rect(path.Box{Min: path.Pt(0, 0), Max: path.Pt(w.Width, height)}))
	w.mark(line(path.Pt(w.lead, 0), path.Pt(w.lead, height)))
	w.mark(line(path.Pt(end, 0), path.Pt(end, height)))
	w.beside(w.lead, 1, free, "datum on the drum", w.lead.Both(u)+" from the left end")
	w.beside(end, -1, free, "closing mark", w.around.Both(u)+" past the datum line", "it must meet the datum;", "if not, measure the drum again")
	return w
}

// stripFree is the height of the band along a strip that no opening reaches,
// which holds its words.
const stripFree length = 20

// beside writes words in the free band, whose lower edge is at low, close to an
// upright line at x: right of it or, for way -1, left. The first is the title.
func (w *wrapStrip) beside(x, way, low length, words ...string) {
	half := length(0)
	for i, s := range words {
		half = maxLength(half, letterWidth*stripLetters(i)*length(len([]rune(s)))/2)
	}
	y := low + stripFree - 1.5
	for i, s := range words {
		y -= stripLetters(i)
		w.label(path.Pt(x+way*(3+half), y), stripLetters(i), "%s", s)
		y -= 1.5
	}
}

// stripLetters is the height of the letters in a line of a strip's words.
func stripLetters(line int) length {
	if line == 0 {
		return 3.5
	}
	return 2.5
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
