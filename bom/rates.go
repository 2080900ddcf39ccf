package bom

import "silowright/geometry/measure"

// Rates are the quantities that no measure of the silo gives. All are common
// practice, no source, and meant to be changed.
type Rates struct {
	HosePerInlet  measure.Length // supply hose from the manifold to one silo
	HoseClamps    int            // on that hose
	CementJoint   measure.Volume // solvent cement for one socket
	PrimerJoint   measure.Volume
	AcetonePerM   measure.Volume // to wipe a metre of bead's ground, both faces
	BladeLife     measure.Length // jigsaw travel one blade lasts in polyethylene
	SandpaperLife measure.Length // cut edge one sheet smooths
	MarkerSilos   int            // silos one marker marks
	ClampsAtOnce  int            // pipe silos whose resin sets at one time
}

// DefaultRates are the rates taken when the job gives none.
func DefaultRates() Rates {
	return Rates{
		HosePerInlet: 1500, HoseClamps: 2,
		CementJoint: 6 * measure.Millilitre, PrimerJoint: 4 * measure.Millilitre,
		AcetonePerM: 15 * measure.Millilitre,
		BladeLife:   25000, SandpaperLife: 15000,
		MarkerSilos: 10, ClampsAtOnce: 4,
	}
}
