package bom

import "silowright/geometry/measure"

// Rates are the quantities that no measure of the silo gives. All defaults are
// common practice, no source, and meant to be changed. A rate that something
// is divided by must be above 0; at 0 the item is left out.
type Rates struct {
	HosePerInlet     measure.Length // supply hose from the manifold to one silo
	HoseClamps       int            // on that hose
	CementJoint      measure.Volume // solvent cement for one socket
	PrimerJoint      measure.Volume // primer for one socket
	AcetonePerM      measure.Volume // to wipe a metre of bead's ground, both faces
	BladeLife        measure.Length // jigsaw travel one blade lasts in polyethylene
	SandpaperLife    measure.Length // cut edge one sheet smooths
	PointsPerDisc    int            // screw points one cutting disc takes off
	HolesPerPilotBit int            // holes one pilot bit of a hole saw starts
	MarkerSilos      int            // silos one marker marks
	TapeJoints       int            // threaded joints one roll of thread tape seals
	ClampsAtOnce     int            // pipe silos whose resin sets at one time
}

// DefaultRates are the rates taken when the job gives none.
func DefaultRates() Rates {
	return Rates{
		HosePerInlet: 1500, HoseClamps: 2,
		CementJoint: 6 * measure.Millilitre, PrimerJoint: 4 * measure.Millilitre,
		AcetonePerM: 15 * measure.Millilitre,
		BladeLife:   25000, SandpaperLife: 15000,
		PointsPerDisc: 150, HolesPerPilotBit: 100,
		MarkerSilos: 10, TapeJoints: 20, ClampsAtOnce: 4,
	}
}
