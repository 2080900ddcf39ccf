package geometry

import "math"

// screwAtJoint is how far the ring's two end screws stand from its ends
// (common practice, no source).
const screwAtJoint length = 12.7

// ring solves the retaining ring. It is a strip of the drum's own wall, so its
// length as cut is π(outside − wall) on the neutral line in the middle of its
// thickness. In place its outer face lies on the mesh, the mesh on the wall at
// the foot, taken at the ring's middle, where it stands on the mesh: there the neutral line is
// π(inside − 2·mesh − wall) long. The difference is trimmed.
func ring(s Spec) Ring {
	d := s.Drum
	foot := s.bedFloor()
	inside := d.insideAt(foot + s.Ring.Width/2)
	r := Ring{Foot: foot}
	r.StripLength = math.Pi * (d.Outside - d.Wall)
	r.Length = math.Pi * (inside - 2*s.Mesh.Thickness - d.Wall)
	r.Surplus = r.StripLength - r.Length
	r.InnerRadius = inside/2 - s.Mesh.Thickness - d.Wall
	r.JointEdge = screwAtJoint
	// The pair at the joint closes the circle; the rest of the way round is
	// divided evenly.
	round := 2*math.Pi*r.InnerRadius - 2*r.JointEdge
	steps := math.Max(1, math.Ceil(float64(round/s.Screws.Spacing)-1e-9))
	r.Screws = int(steps) + 1
	r.Step = round / length(steps)
	r.Chord = ChordOf(r.InnerRadius, r.Step)
	r.Stack = 2*d.Wall + s.Mesh.Thickness
	r.Protrudes = s.Screws.Length - r.Stack
	return r
}

// sealantBead is the bead that closes the ring's upper edge, with the waste.
func sealantBead(s Spec, r Ring) Bead {
	run := 2 * math.Pi * r.InnerRadius
	section := s.Sealant.Bead.Times(s.Sealant.Bead)
	return Bead{Run: run, Volume: section.Times(run) * volume(1+s.Sealant.Waste)}
}
