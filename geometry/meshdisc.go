package geometry

import "math"

// meshDisc solves the mesh disc: inside at the foot + 2 × (ring width + trim).
// Turned up the wall its edge is 2π(ring width + trim) longer than the wall is
// round; that much must be folded away in overlaps, so the least number of
// snips is that length over the widest overlap allowed. A snip stops a quarter
// of the ring's width above the bend, so that the ring covers its end (common
// practice, no source).
func meshDisc(s Spec) MeshDisc {
	up := s.Ring.Width + s.Mesh.Trim
	m := MeshDisc{
		Bend:      s.Drum.FootInside(),
		Across:    s.Drum.FootInside() + 2*up,
		SnipDepth: up - s.Ring.Width/4,
	}
	excess := 2 * math.Pi * up
	m.Snips = int(math.Max(4, math.Ceil(float64(excess/s.Mesh.Overlap)-1e-9)))
	m.Overlap = excess / length(m.Snips)
	return m
}
