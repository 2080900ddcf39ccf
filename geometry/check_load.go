package geometry

import (
	"math"

	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

// siloLiftLimit is the recommended weight limit of the revised NIOSH lifting
// equation (Pub. 94-110) for lifting a full body out of its base: load constant
// 23 kg; horizontal distance 20 + W/2 cm for a container W cm wide (94-110,
// from memory); the hands' height over the standing base; a lift of 25 cm or
// less counts as 25 (no distance factor); no twist; good grip; seldom lifted.
// It is valid for one standing person with two hands, not for wet floors.
func siloLiftLimit(s *Silo) measure.Mass {
	cm := func(l length) float64 { return float64(l) / 10 }
	h := math.Max(reachNear, reachBody+cm(s.Spec.Drum.Outside)/2)
	v := cm(s.Seat.FootHeight + s.Stations.Rim - s.Slots[0].Top)
	return liftLimit(h, v, travelNear, 0, 1, 1)
}

// liftLimit is LC·HM·VM·DM·AM·FM·CM with h, v, d in cm and a in degrees
// (NIOSH Pub. 94-110, revised 2021). h over 63 cm or v over 175 cm gives 0.
func liftLimit(h, v, d, a, fm, cm float64) measure.Mass {
	if h > reachMost || v > handsMost || v < 0 {
		return 0
	}
	hm := reachNear / math.Max(reachNear, h)
	vm := 1 - handsOff*math.Abs(v-handsBest)
	dm := math.Min(1, travelFar+travelGain/math.Max(travelNear, d))
	am := 1 - twistOff*a
	return measure.Mass(loadConstant * hm * vm * dm * am * fm * cm)
}

func loadChecks(s *Silo) []Finding {
	w, u := s.Weights, s.Spec.Units
	limit := siloLiftLimit(s)
	niosh := Basis{Published, "NIOSH Pub. 94-110, revised lifting equation"}
	lv := OK
	if w.Lift > limit {
		lv = Caution
	}
	if w.Lift > 2*limit {
		lv = Stop
	}
	weighs, gives := measure.Apart(w.Lift.Quantity(), limit.Quantity(), u)
	out := []Finding{quantities("lift.weight", "load.seed_kg", lv, w.Lift.Quantity(), limit.Quantity(), niosh,
		say(lv, "body and wet seed weigh %s, within the %s that the lifting equation gives one person at this reach",
			"body and wet seed weigh %s; the lifting equation gives one person %s at this reach: lift it by two",
			"body and wet seed weigh %s; the lifting equation gives one person %s at this reach: too much for two; take seed out first or use a hoist"),
		weighs, gives)}

	creep := Basis{Published, "PE pipe handbook ch. 3, table B.1.1, creep modulus of pipe grade, a drum's resin may differ; the limit of 1/20 of the span is common practice, no source"}
	sagLimit := s.Spec.Lattice.Across / sagSpan
	lvS := OK
	if w.Sag > sagLimit {
		lvS = Caution
	}
	if w.BarStress > stock.PEDesignStress {
		lvS = Stop
	}
	out = append(out, lengths("lattice.sag", "lattice.bar_width", lvS, w.Sag, sagLimit, creep,
		say(lvS, "hung drained for %[2]s under the wet seed the lattice sags by about %[1]s",
			"hung drained for %[2]s under the wet seed the lattice sags by about %[1]s: use more or wider bars, or less seed",
			"hung drained for %[2]s under the wet seed the lattice sags by about %[1]s and its bars are pulled past the design stress: use more or wider bars"),
		w.Sag.Both(u), s.Spec.Load.Time))
	lvH := OK
	if w.HandleStress > stock.PEDesignStress/2 {
		lvH = Caution
	}
	if w.HandleStress > stock.PEDesignStress {
		lvH = Stop
	}
	design := Basis{Published, "pipe design stress of 800 psi for PE3408/PE3608 in water at 73 °F; a drum's resin may differ"}
	bent, allowed := measure.Apart(w.HandleStress.Quantity(), stock.PEDesignStress.Quantity(), u)
	return append(out, quantities("handle.stress", "handle.below_rim", lvH, w.HandleStress.Quantity(), stock.PEDesignStress.Quantity(), design,
		say(lvH, "the strip above the slots is bent to %s when lifted, of %s allowed for long",
			"the strip above the slots is bent to %s when lifted, over half of the %s allowed for long: set the slots lower",
			"the strip above the slots is bent to %s when lifted, over the %s allowed for long: set the slots lower"),
		bent, allowed))
}
