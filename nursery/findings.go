package nursery

import (
	"fmt"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/nursery/flow"
)

// leastFreeboard is the water's edge under a sill or rim below which a wave, a
// hand or a silo out of level spills: 1 in (common practice, no source).
const leastFreeboard = measure.Inch

// What the findings rest on.
var (
	levelBasis = geometry.Basis{Kind: geometry.Published, Source: "critical depth at the brink, Çengel and Cimbala, Fluid Mechanics, chapter 13; orifice beyond"}
	bedBasis   = geometry.Basis{Kind: geometry.Published, Source: "Ergun 1952; Wen and Yu 1966; Haider and Levenspiel 1989"}
	seatBasis  = geometry.Basis{Kind: geometry.Worked}
)

// WaterFindings holds the study d of one silo against what spills, lifts and
// washes out, for a reader who works in u. Drum is the label of its kind.
func WaterFindings(d flow.Study, drum string, u measure.Unit) []geometry.Finding {
	out := []geometry.Finding{sillFinding(d, u), rimFinding(d, u), seatFinding(d, u)}
	out = append(out, seedFindings("seed", "load.seed_kg", "the drum silo's mesh", d.Seed, d.SeedTop, u)...)
	if p := d.Pipe; p != nil {
		out = append(out, pipeRimFinding(*p, u))
		out = append(out, seedFindings("pipe-seed", "bed.pipe_seed_kg", "the pipe silo's screen", p.Seed, p.SeedTop, u)...)
	}
	for i := range out {
		out[i].Drum = drum
	}
	return out
}

// freeboard is the level of a freeboard: stop when it is used up.
func freeboard(room measure.Length) geometry.Level {
	switch {
	case room <= 0:
		return geometry.Stop
	case room < leastFreeboard:
		return geometry.Caution
	}
	return geometry.OK
}

// sillFinding is the level under the handle slots.
func sillFinding(d flow.Study, u measure.Unit) geometry.Finding {
	lv := freeboard(d.ToSill)
	f := geometry.Finding{ID: "water.sill", Level: lv, Key: "outlet.below_rim", Measured: d.Flow.Quantity(), Limit: d.BeforeSlots.Quantity(), Basis: levelBasis}
	with, spills := f.Texts(u)
	stands := fmt.Sprintf("with %s the water stands %s over the outlet's invert", with, d.Level.Both(u))
	switch lv {
	case geometry.Stop:
		f.Says = fmt.Sprintf("%s and leaves by the handle slots too, %s of it; they spill from %s up: give less water, take a larger outlet or set it lower",
			stands, (d.BySlots + d.OverRim).Both(u), spills)
	case geometry.Caution:
		f.Says = fmt.Sprintf("%s, only %s below the handle slots, which spill from %s up: give less water, take a larger outlet or set it lower",
			stands, d.ToSill.Both(u), spills)
	default:
		f.Says = fmt.Sprintf("%s, %s below the handle slots, which spill from %s up", stands, d.ToSill.Both(u), spills)
	}
	return f
}

// rimFinding is the level under the rim.
func rimFinding(d flow.Study, u measure.Unit) geometry.Finding {
	lv := freeboard(d.ToRim)
	f := geometry.Finding{ID: "water.rim", Level: lv, Key: "handle.below_rim", Measured: d.ToRim.Quantity(), Limit: leastFreeboard.Quantity(), Basis: levelBasis}
	switch lv {
	case geometry.Stop:
		f.Says = fmt.Sprintf("water runs over the rim, %s of it: outlet and handle slots take no more than %s", d.OverRim.Both(u), d.BeforeRim.Both(u))
	case geometry.Caution:
		f.Says = fmt.Sprintf("the water stands only %s below the rim; outlet and handle slots take no more than %s", d.ToRim.Both(u), d.BeforeRim.Both(u))
	default:
		f.Says = fmt.Sprintf("the water stands %s below the rim; outlet and handle slots take up to %s", d.ToRim.Both(u), d.BeforeRim.Both(u))
	}
	return f
}

// seatFinding is the body's balance on the base.
func seatFinding(d flow.Study, u measure.Unit) geometry.Finding {
	s := d.FouledSeat
	f := geometry.Finding{ID: "water.seat", Key: "load.seed_kg", Measured: (s.Shoulder + s.Drop).Quantity(), Limit: s.Weight.Quantity(), Basis: seatBasis}
	switch {
	case s.Pressure == 0:
		f.Limit = measure.Quantity{} // none
		f.Level = geometry.Caution
		f.Says = "the foot does not seat in the base: what lifts it is not reckoned"
	case d.CleanSeat.Lifts():
		f.Level = geometry.Caution
		f.Says = fmt.Sprintf("the water lifts the body off its seat: hold it down by at least %s, wedged, weighted or strapped", (-min(s.Rests, d.CleanSeat.Rests)).Both(u))
	case s.Lifts():
		f.Level = geometry.Caution
		f.Says = fmt.Sprintf("with the mesh fouled as given the water lifts the body off its seat: hold it down by at least %s, wedged, weighted or strapped, or clean the mesh sooner", (-s.Rests).Both(u))
	default:
		f.Says = fmt.Sprintf("the body stays on its seat with %s to spare; a mesh so fouled that it holds back %s of water lifts it", s.Rests.Both(u), s.LiftsAt.Both(u))
	}
	return f
}

// seedFindings is how the seed stands on a mesh; none without seed.
func seedFindings(id, key, where string, b flow.BedState, room measure.Length, u measure.Unit) []geometry.Finding {
	f := geometry.Finding{ID: "water." + id, Key: key, Measured: b.Speed.Quantity(), Limit: b.Sinks.Quantity(), Basis: bedBasis}
	if b.State != flow.WashingOut && b.State != flow.Fluidised && room > 0 {
		f.Limit = b.Fluidises.Quantity()
	}
	speed, limit := f.Texts(u)
	wells := fmt.Sprintf("on %s the water wells up at %s", where, speed)
	switch {
	case b.State == flow.NoSeed:
		return nil
	case b.State == flow.WashingOut:
		f.Level = geometry.Stop
		f.Says = fmt.Sprintf("%s, faster than a single seed sinks (%s): it washes out; give less water", wells, limit)
	case room <= 0:
		f.Level = geometry.Stop
		f.Says = fmt.Sprintf("%s and the seed stands %s deep, up to the outlet: it leaves with the water; give less water or less seed", wells, b.Depth.Both(u))
	case b.State == flow.Fluidised:
		f.Says = fmt.Sprintf("%s and carries the seed, %s deep for %s as it lies; it lies still under %s and washes out at %s", wells,
			b.Depth.Both(u), b.Poured.Both(u), b.Fluidises.Both(u), limit)
	default:
		f.Says = fmt.Sprintf("%s and the seed lies still, %s deep; it is carried from %s up", wells, b.Depth.Both(u), limit)
	}
	return []geometry.Finding{f}
}

// pipeRimFinding is the level round the pipe silo under its open end.
func pipeRimFinding(p flow.PipeStudy, u measure.Unit) geometry.Finding {
	lv := freeboard(p.ToRim)
	f := geometry.Finding{ID: "water.pipe-rim", Level: lv, Key: "pipe_silo.length", Measured: p.ToRim.Quantity(), Limit: leastFreeboard.Quantity(), Basis: levelBasis}
	across := fmt.Sprintf("the water stands %s higher round the pipe silo than in it", p.Fouled.Both(u))
	if clean := p.Clean.Both(u); clean != p.Fouled.Both(u) {
		across += fmt.Sprintf(" (%s with its screen clean)", clean)
	}
	switch lv {
	case geometry.Stop:
		f.Says = fmt.Sprintf("%s and gets in over its rim, past the seed, from %s up: give less water or a longer pipe", across, p.BeforeRim.Both(u))
	case geometry.Caution:
		f.Says = fmt.Sprintf("%s, only %s below its rim, which it passes from %s up: give less water or a longer pipe", across, p.ToRim.Both(u), p.BeforeRim.Both(u))
	default:
		f.Says = fmt.Sprintf("%s, %s below its rim, which it passes from %s up", across, p.ToRim.Both(u), p.BeforeRim.Both(u))
	}
	return f
}
