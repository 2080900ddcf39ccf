package geometry

import (
	"silowright/geometry/measure"
)

// OpenArea is what the water finds open between plenum and seed: the lattice's
// openings, of which the mesh that lies on them leaves its open fraction.
func (s Silo) OpenArea() measure.Area {
	return s.Lattice.OpenArea * measure.Area(s.Spec.Mesh.OpenFraction)
}

// OutletBore is the area of the outlet's pipe inside.
func (s Silo) OutletBore() measure.Area {
	return s.Outlet.Bore().Disc()
}
