package geometry

// JigsawTravel is all that is sawn to make one drum silo: the two cuts round
// the drum, the lattice, both handle slots and the ring's trimming.
func (s *Silo) JigsawTravel() length {
	slots := 2 * s.Slots[0].Outline().Length()
	return 2*s.Spec.Drum.Circumference() + s.Lattice.Travel + slots + s.Spec.Ring.Width
}
