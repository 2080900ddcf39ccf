package flow

import (
	"fmt"

	"silowright/geometry/measure"
	"silowright/nursery/sea"
)

// MostFlow is the largest flow that is reckoned with.
const MostFlow = 3000 * measure.LitrePerMinute

// Study is one silo at one flow.
type Study struct {
	Flow measure.Flow

	// Where the water stands and leaves.
	Level    measure.Length // above the outlet's invert
	ToCrown  measure.Length // level up to the crown of the outlet's bore; negative when under
	ToSill   measure.Length // freeboard to the handle slots' sill; negative when they spill; without slots as ToRim
	ToRim    measure.Length // freeboard to the rim
	ByOutlet measure.Flow
	BySlots  measure.Flow
	OverRim  measure.Flow

	// What it takes at most.
	BeforeSlots     measure.Flow // the flow at which water reaches the sill
	BeforeSlotsMost measure.Flow // the same by the relation that passes most, an outlet that fills
	BeforeRim       measure.Flow // the flow at which water reaches the rim, the slots spilling

	// What it takes from the water, with the mesh clean and fouled.
	Clean, Fouled         Losses
	CleanHead, FouledHead measure.Length // total head needed at the inlet above the outlet's invert
	CleanSeat, FouledSeat Seat

	// What the seed meets.
	Upwelling measure.Speed  // in the plain bore
	Seed      BedState       // on the mesh
	SeedTop   measure.Length // outlet's invert less top of the seed; 0 or less when seed leaves with the water

	Pipe *PipeStudy // the pipe silo hung in it, nil for none
}

// PipeStudy is the pipe silo hung in a drum silo.
type PipeStudy struct {
	Flow      measure.Flow   // up through its screen
	Level     measure.Length // in it, above its short pipe's invert
	Clean     measure.Length // level outside over level inside, screen clean
	Fouled    measure.Length // the same with the screen fouled
	ToRim     measure.Length // its rim over the level outside with the screen fouled; negative when water gets in over the rim and past the seed
	BeforeRim measure.Flow   // the flow at which the level outside reaches its rim, screen fouled
	Upwelling measure.Speed
	Seed      BedState
	SeedTop   measure.Length // the same under its short pipe's invert
}

// Solve studies a silo at a flow. Levels and freeboard hold for the screens as
// fouled as they are given, which matters for a hung pipe silo alone: a drum
// silo's own mesh lies upstream of its outlet and a fouled one does not move
// the level. It fails on sizes out of range or a flow of no kind.
func Solve(w sea.Water, s Silo, q measure.Flow) (Study, error) {
	if err := s.Check(); err != nil {
		return Study{}, err
	}
	if !within(float64(q), 0, float64(MostFlow)) {
		return Study{}, fmt.Errorf("flow: %s, outside what is reckoned, 0 to %s; hint: give the water that one silo gets", q.Both(measure.UnitMM), MostFlow.Both(measure.UnitMM))
	}
	if !(w.Density > 900 && w.Density < 1045) || !(w.Viscosity > 1e-4 && w.Viscosity < 1e-2) {
		return Study{}, fmt.Errorf("water: %g kg/m³ and %g Pa·s, not a water's, 900 to 1045 kg/m³ and 0.0001 to 0.01 Pa·s; hint: take it from its salinity and temperature", float64(w.Density), float64(w.Viscosity))
	}
	clean := s.cleaned()
	out := Study{Flow: q, Upwelling: q.Through(Disc(s.Bore))}
	out.Level, _, out.ByOutlet = s.stand(w, q)
	out.BySlots, out.OverRim, _ = s.spills(out.Level)
	out.ToCrown = s.Outlet.Bore - out.Level
	out.ToRim = s.Rim - s.Invert - out.Level
	out.ToSill = out.ToRim
	sill := s.Rim
	if s.Slots > 0 {
		sill = s.Sill
		out.ToSill = s.Sill - s.Invert - out.Level
	}
	out.BeforeSlots = s.flowAt(w, sill-s.Invert)
	out.BeforeSlotsMost = out.BeforeSlots
	if s.Pipe == nil {
		_, out.BeforeSlotsMost = s.Outlet.Band(w, sill-s.Invert)
	}
	out.BeforeRim = s.flowAt(w, s.Rim-s.Invert) + s.over(s.Rim-s.Invert)

	out.Clean, _ = clean.losses(w, q)
	out.Fouled, _ = s.losses(w, q)
	cleanLevel, _, cleanOut := clean.stand(w, q)
	out.CleanHead = cleanLevel + out.Clean.Total()
	out.FouledHead = out.Level + out.Fouled.Total()
	out.CleanSeat = clean.seat(w, cleanLevel, out.Clean.Below(), clean.lacks(w, cleanOut))
	out.FouledSeat = s.seat(w, out.Level, out.Fouled.Below(), s.lacks(w, out.ByOutlet))

	out.Seed = s.Seed.At(w, s.bedArea(), q.Through(s.bedArea()))
	out.SeedTop = out.Seed.under(s.Invert - s.MeshTop)
	if s.Pipe != nil {
		out.Pipe = s.pipeStudy(w, clean, out, cleanOut)
	}
	return out, nil
}

// under is what is left of a room above the seed: nothing when it washes out.
func (b BedState) under(room measure.Length) measure.Length {
	if b.State == WashingOut {
		return 0
	}
	return room - b.Depth
}

// cleaned is the silo with its screens clean.
func (s Silo) cleaned() Silo {
	s.Mesh.Fouled = 0
	if s.Pipe != nil {
		p := *s.Pipe
		p.Screen.Fouled = 0
		s.Pipe = &p
	}
	return s
}

// lacks is the water that a hung pipe silo holds less than the drum round it.
func (s Silo) lacks(w sea.Water, out measure.Flow) measure.Volume {
	if s.Pipe == nil {
		return 0
	}
	h, _ := s.Pipe.across(w, out)
	return Disc(s.Pipe.Inside).Times(h)
}

// pipeStudy is the pipe silo in the study d of its drum silo; cleanOut is what
// goes through it with its screen clean.
func (s Silo) pipeStudy(w sea.Water, clean Silo, d Study, cleanOut measure.Flow) *PipeStudy {
	p := *s.Pipe
	area := Disc(p.Inside)
	out := PipeStudy{Flow: d.ByOutlet, Upwelling: d.ByOutlet.Through(area)}
	out.Clean, _ = clean.Pipe.across(w, cleanOut)
	out.Fouled, _ = p.across(w, d.ByOutlet)
	out.Level = max(0, s.Invert+d.Level-out.Fouled-p.Invert)
	out.ToRim = p.Rim - s.Invert - d.Level
	out.BeforeRim = s.flowAt(w, p.Rim-s.Invert)
	if out.BeforeRim > 0 {
		out.BeforeRim += s.over(p.Rim - s.Invert)
	}
	out.Seed = p.Seed.At(w, area, out.Upwelling)
	out.SeedTop = out.Seed.under(p.Invert - p.Bottom)
	return &out
}
