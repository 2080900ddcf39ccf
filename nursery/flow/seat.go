package flow

import (
	"silowright/geometry/measure"
	"silowright/nursery/sea"
)

// Seat is the balance of forces on the body in the base, each as the mass
// whose weight it is. The base is full of water under pressure, which pushes up
// on all that lies inside the line on which the body sits. Friction of the
// seat and tape round it are left out.
type Seat struct {
	Pressure measure.Pressure // over that of the air, at the line on which the body sits
	Shoulder measure.Mass     // lift of still water: pressure on what of the foot is wider than the bore above it, buoyancy of seed and lattice
	Drop     measure.Mass     // lift of the flow: the drop across lattice, mesh and seed over the seat's area
	Weight   measure.Mass     // body and wet seed in air; a pipe silo hung in it is left out
	Rests    measure.Mass     // what is left on the seat; negative: it lifts unless held down by as much
	LiftsAt  measure.Length   // the head lost across lattice, mesh and seed at which the body lifts, water standing as it does: a fouled mesh gets there
}

// Lifts reports whether the body leaves its seat.
func (s Seat) Lifts() bool { return s.Rests < 0 }

// seat is the balance with water standing at a level above the outlet's
// invert and a head lost below the free water. Taking body, seed and the water
// inside together, of which a pipe silo lacks some since it stands lower: up act the pressure on the seat's area and the weight of
// the water that the foot below the seat displaces; down act the weights of
// body, seed and water inside.
func (s Silo) seat(w sea.Water, level, below measure.Length, lacks measure.Volume) Seat {
	if s.SeatAcross <= 0 {
		return Seat{}
	}
	area := Disc(s.SeatAcross)
	top := s.Invert + level
	var seed measure.Volume
	if s.Seed.Mass > 0 {
		seed = measure.Volume(s.Seed.Mass.Kg()/float64(s.Seed.Density)*1000) * measure.Litre
	}
	inside := taper(s.FootInside, s.Bore, s.FootHeight, top) - seed - s.Solid - lacks
	foot := taper(s.FootOutside, s.Outside, s.FootHeight, s.SeatHeight)
	out := Seat{
		Pressure: w.Pressure(top - s.SeatHeight + below),
		Shoulder: w.Density.Of(area.Times(top-s.SeatHeight) + foot - inside),
		Drop:     w.Density.Of(area.Times(below)),
		Weight:   s.Body + s.Seed.Mass,
	}
	out.Rests = out.Weight - out.Shoulder - out.Drop
	out.LiftsAt = metre(float64(out.Weight-out.Shoulder) / float64(w.Density) / (area.MM2() * 1e-6))
	return out
}

// taper is the volume up to z of a round part that widens evenly from d0 to d1
// over a height and is straight above.
func taper(d0, d1, height, z measure.Length) measure.Volume {
	if z <= 0 {
		return 0
	}
	cone := min(height, z)
	at := d1
	if height > 0 {
		at = d0 + (d1-d0)*cone/height
	}
	frustum := (Disc(d0) + Disc(at) + Disc(1)*measure.Area(d0*at)) / 3
	return frustum.Times(cone) + Disc(d1).Times(z-cone)
}
