package geometry

import (
	"fmt"

	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

// stopperJoint is a tapered rubber stopper in a plain hole.
func stopperJoint() joint {
	return joint{
		name:   JointStopper,
		fit:    (*Hole).fitStopper,
		checks: func(h Hole, u measure.Unit) []Finding { return []Finding{stopperCheck(h, u)} },
		suits: func(h Hole, _, d length) bool {
			f := (d - h.Stopper.Bottom) / (h.Stopper.Top - h.Stopper.Bottom)
			return f >= seatShallow && f <= seatDeep
		},
		makeup: Makeup{By: "a stopper", Means: "tapered rubber, in a plain hole", Part: "stopper", Item: "tapered rubber stopper No. %s", Parts: 1},
	}
}

// StopperMeasure is a stopper as measured.
type StopperMeasure struct{ Top, Bottom, Length length }

// StopperFit is how a stopper sits.
type StopperFit struct {
	Number       string
	Top, Bottom  length
	Length       length
	SeatDepth    length // how much of it goes into the hole from the small end
	SeatFraction float64
	Measured     bool
	Standing     string
}

// fitStopper works out how deep a tapered stopper goes into the hole.
func (h *Hole) fitStopper(q HoleSpec) error {
	f := StopperFit{Number: q.Stopper}
	if t, ok := stock.StopperOf(q.Stopper); ok {
		f.Top, f.Bottom, f.Length = t.Top, t.Bottom, t.Length
		f.Standing = string(t.Origin.Standing)
	}
	if m, ok := q.Fittings.Stoppers[q.Stopper]; ok {
		f.Measured = true
		for _, v := range []struct {
			to   *length
			from length
		}{{&f.Top, m.Top}, {&f.Bottom, m.Bottom}, {&f.Length, m.Length}} {
			if v.from > 0 {
				*v.to = v.from
			}
		}
	}
	if f.Top <= f.Bottom || f.Bottom <= 0 || f.Length <= 0 {
		return fmt.Errorf("stopper: no usable measures for number %q; hint: give top, bottom and length under fittings.stopper", q.Stopper)
	}
	f.SeatFraction = float64((h.Diameter - f.Bottom) / (f.Top - f.Bottom))
	f.SeatDepth = f.Length * length(f.SeatFraction)
	h.Stopper = f
	h.Footprint = maxLength(h.Diameter, f.Top)
	return nil
}

// How much of a stopper's taper may go in: less and it falls out, more and it
// goes through (common practice, no source).
const (
	seatShallow = 0.15
	seatDeep    = 0.85
)

// sharp is the rounding of a share of a length.
const sharp = 1e-9

func stopperCheck(h Hole, u measure.Unit) Finding {
	f := h.Stopper
	lv := OK
	if f.SeatFraction < seatShallow-sharp || f.SeatFraction > seatDeep+sharp {
		lv = Caution
	}
	if f.SeatFraction <= sharp || f.SeatFraction >= 1-sharp {
		lv = Stop
	}
	limit := f.Bottom
	if f.SeatFraction > 0.5+sharp {
		limit = f.Top
	}
	b := Basis{Kind: JobSetting, Source: "fittings.stopper"}
	if !f.Measured {
		b = Basis{Kind: Published, Source: "table of tapered rubber stoppers, " + f.Standing}
	}
	advice := "try another stopper"
	if saws := SawsFor(h); len(saws) > 0 {
		advice = "the " + saws[0].Name(u) + " saw would do"
	}
	id, key := h.id("saw-stopper"), h.Key()+".saw"
	switch {
	case f.SeatFraction <= sharp:
		end, hole := apart(f.Bottom, h.Diameter, u)
		return lengths(id, key, lv, h.Diameter, f.Bottom, b, "a No. %s stopper is %s across its small end and does not enter the %s hole: %s",
			f.Number, end, hole, advice)
	case f.SeatFraction >= 1-sharp:
		end, hole := apart(f.Top, h.Diameter, u)
		return lengths(id, key, lv, h.Diameter, f.Top, b, "a No. %s stopper is %s across its large end and falls through the %s hole: %s",
			f.Number, end, hole, advice)
	}
	says := fmt.Sprintf("a No. %s stopper, %s to %s across, goes %s (%s of its length) into the %s hole",
		f.Number, f.Bottom.Both(u), f.Top.Both(u), f.SeatDepth.Both(u), measure.Percent(f.SeatFraction), h.Diameter.Both(u))
	if lv == Caution {
		says += ": a poor seat; " + advice
	}
	return lengths(id, key, lv, h.Diameter, limit, b, "%s", says)
}
