package flow

import (
	"fmt"
	"math"

	"silowright/geometry/measure"
	"silowright/nursery/sea"
)

// Bed is seed lying on mesh. Its density and voidage are the grower's own
// numbers: nothing published was found for small seed.
type Bed struct {
	Mass       measure.Mass    // wet, weighed in air; 0 for no seed
	Size       measure.Length  // diameter of the sphere as large as one seed
	Density    measure.Density // of shell and animal together
	Voidage    float64         // water between the seed over all volume, as it lies
	Sphericity float64         // surface of that sphere over the seed's own
}

// Check refuses a bed that cannot be reckoned with; key names it.
func (b Bed) Check(key string) error {
	switch {
	case !within(b.Mass.Kg(), 0, 2000):
		return fmt.Errorf("%s.mass: %g kg, outside what is reckoned, 0 to 2000 kg; hint: give the wet seed's weight, 0 for none", key, b.Mass.Kg())
	case b.Mass == 0:
		return nil
	case !within(b.Size.MM(), 0.1, 100):
		return fmt.Errorf("%s.size: %s mm, outside what is reckoned, 0.1 to 100 mm; hint: give the diameter of a ball as large as one seed", key, b.Size.Metric())
	case !within(float64(b.Density), 1050, 3000):
		return fmt.Errorf("%s.density: %g kg/m³, not a live shell's, 1050 to 3000 kg/m³; hint: weigh a handful and see how much water it raises", key, float64(b.Density))
	case !within(b.Voidage, 0.2, 0.9):
		return fmt.Errorf("%s.voidage: %g, outside what is reckoned, 0.2 to 0.9; hint: pour water into a measure full of seed; water over measure is the voidage", key, b.Voidage)
	case !within(b.Sphericity, 0.5, 1):
		return fmt.Errorf("%s.sphericity: %g, outside the range of the settling relation, 0.5 to 1; hint: a ball is 1, a flat shell about 0.6", key, b.Sphericity)
	}
	return nil
}

// State says how the seed stands in the water that wells up.
type State int

// The states, slowest water first.
const (
	NoSeed     State = iota
	Packed           // lies still
	Fluidised        // carried by the water, bed expanded
	WashingOut       // faster than a single seed sinks
)

// String returns the state in the trade's words.
func (s State) String() string {
	return [...]string{"no seed", "packed", "fluidised", "washing out"}[s]
}

// MarshalText writes the state as its words.
func (s State) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// BedState is a bed in water that wells up.
type BedState struct {
	State State
	Speed measure.Speed // of the water, the seed thought away

	Fluidises measure.Speed // from here up the bed is carried, by Ergun
	WenYu     measure.Speed // the same by Wen and Yu, beside it
	Sinks     measure.Speed // of one seed alone, Haider and Levenspiel

	Poured  measure.Length // depth as it lies
	Depth   measure.Length // depth now; 0 when washing out, since no bed stands
	Voidage float64        // now; 1 when washing out

	Drop measure.Pressure // across it now
	Most measure.Pressure // its weight in water over its area
}

// thinnest is the voidage past which a bed counts as washed out.
const thinnest = 0.999

// At is the bed on an area with water of speed v welling up. The drop is
// Ergun's (1952) while the bed lies, and its weight in water over the area
// from where the two meet; so it is continuous, never falls with v, and is an
// upper bound when seed washes out. Between fluidising and washing out the
// voidage follows Richardson and Zaki's form (1954), u = u₀·εⁿ, through both
// ends: the bed as poured at Fluidises, nothing but water at Sinks. Their own
// n for spheres is lower by up to a third. Walls, clumps, byssus
// and seed of mixed sizes are left out: small seed goes first. The bed must
// have passed Check and w have a density below the seed's.
func (b Bed) At(w sea.Water, area measure.Area, v measure.Speed) BedState {
	if b.Mass <= 0 || area <= 0 {
		return BedState{Speed: v, Voidage: 1}
	}
	poured, most := b.lying(w, area)
	s := BedState{State: Packed, Speed: v, Voidage: b.Voidage,
		Fluidises: b.fluidiseErgun(w), WenYu: b.fluidiseWenYu(w), Sinks: b.terminal(w),
		Poured: metre(poured), Depth: metre(poured), Most: measure.Pressure(most)}
	drop, _ := b.ergun(w, poured, v)
	s.Drop = min(measure.Pressure(drop), s.Most)
	if v >= s.Fluidises && v < s.Sinks {
		s.State = Fluidised
		way := math.Log(float64(v/s.Fluidises)) / math.Log(float64(s.Sinks/s.Fluidises))
		s.Voidage = math.Pow(b.Voidage, 1-way)
	}
	switch {
	case v >= s.Sinks || s.Voidage > thinnest:
		s.State, s.Voidage, s.Depth = WashingOut, 1, 0
	case s.State == Fluidised:
		s.Depth = s.Poured * measure.Length((1-b.Voidage)/(1-s.Voidage))
	}
	return s
}

// The factors of Ergun's equation (1952).
const (
	ergunViscous  = 150
	ergunInertial = 1.75
)

// ergun is the drop in Pa across a bed of a depth in metres, 150μ(1−ε)²V/
// (ε³φ²d²) + 1.75ρ(1−ε)V²/(ε³φd) to the metre (Ergun 1952), and its slope in
// Pa per m/s. It is odd in v.
func (b Bed) ergun(w sea.Water, depth float64, v measure.Speed) (drop, slope float64) {
	e, d := b.Voidage, b.Size.Metres()*b.Sphericity
	viscous := ergunViscous * float64(w.Viscosity) * (1 - e) * (1 - e) / (e * e * e * d * d) * depth
	inertial := ergunInertial * float64(w.Density) * (1 - e) / (e * e * e * d) * depth
	u := v.MS()
	return viscous*u + inertial*u*math.Abs(u), viscous + 2*inertial*math.Abs(u)
}

// loss is the bed's drop as head, and its slope in millimetres per millimetre
// a second: 0 where the bed is carried.
func (b Bed) loss(w sea.Water, area measure.Area, v measure.Speed) (measure.Length, float64) {
	if b.Mass <= 0 || area <= 0 {
		return 0, 0
	}
	poured, most := b.lying(w, area)
	drop, slope := b.ergun(w, poured, v)
	if drop >= most {
		return w.Head(measure.Pressure(most)), 0
	}
	return w.Head(measure.Pressure(drop)), slope / w.Weight()
}

// lying is the depth in metres of the bed as poured on an area, and its weight
// in water over the area in Pa.
func (b Bed) lying(w sea.Water, area measure.Area) (poured, most float64) {
	a := area.MM2() * 1e-6
	solid := b.Mass.Kg() / float64(b.Density) // m³
	return solid / ((1 - b.Voidage) * a), solid * float64(b.Density-w.Density) * gravity / a
}
