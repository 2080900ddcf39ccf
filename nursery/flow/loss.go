package flow

import (
	"silowright/geometry/measure"
	"silowright/nursery/sea"
)

// Losses is the head a silo takes from the water on its way up, part by part.
type Losses struct {
	Inlet   measure.Length // nipple, stub and their fittings, and the jet's velocity head, lost in the plenum
	Plenum  measure.Length // the turn to up
	Lattice measure.Length
	Mesh    measure.Length
	Seed    measure.Length
}

// Total is the sum of the losses.
func (l Losses) Total() measure.Length { return l.Inlet + l.Plenum + l.Below() }

// Below is the part lost between plenum and the water above the seed.
func (l Losses) Below() measure.Length { return l.Lattice + l.Mesh + l.Seed }

// losses are those at q, and the slope of their total.
func (s Silo) losses(w sea.Water, q measure.Flow) (Losses, float64) {
	var l Losses
	var slope, add float64
	inlet := s.Inlet
	inlet.K++ // its exit
	l.Inlet, slope = PipeLoss(w, inlet, q)
	l.Plenum, add = plenumLoss(s.BaseBore, s.Plenum, q)
	slope += add
	l.Lattice, add = latticeLoss(s.footArea(), s.LatticeOpen, q)
	slope += add
	mesh := s.meshArea()
	l.Mesh, add = s.Mesh.Loss(w, q.Through(mesh))
	slope += add / float64(mesh)
	bed := s.bedArea()
	l.Seed, add = s.Seed.loss(w, bed, q.Through(bed))
	return l, slope + add/float64(bed)
}

// Head is the total head above the outlet's invert that the silo needs at the
// outer end of its inlet to take q: the level at which q leaves again and
// the losses on the way; and dhead/dq in millimetres per cubic millimetre a
// second. It rises with q. At no flow it is the standing level, where the
// slope given is that of the losses alone (the level's has no bound); for q
// below 0 the losses run backward below it. The silo must have passed Check.
func (s Silo) Head(w sea.Water, q measure.Flow) (measure.Length, float64) {
	level, slope, _ := s.stand(w, max(q, 0))
	if q <= 0 {
		slope = 0
	}
	l, add := s.losses(w, q)
	return level + l.Total(), slope + add
}

// InWater is a silo in a water: what a manifold asks it for its head by.
type InWater struct {
	Silo  Silo
	Water sea.Water
}

// Head is Silo.Head in that water.
func (i InWater) Head(q measure.Flow) (measure.Length, float64) { return i.Silo.Head(i.Water, q) }
