package flow

import (
	"math"

	"silowright/geometry/measure"
)

// mitreK is K of a square mitre bend without vanes (Çengel and Cimbala, Fluid
// Mechanics, table 8-4, from memory).
const mitreK = 1.1

// plateEdge is the factor of latticeLoss.
const plateEdge = 0.707

// latticeLoss is the head through openings that leave a fraction open of the
// foot's area a: K = (0.707·√(1−α) + 1 − α)²/α² on the velocity before it
// (Idelchik, Handbook of Hydraulic Resistance, diagram 8-1, thin plate with
// sharp edges, from memory). A thick bar loses a little less.
func latticeLoss(a measure.Area, open float64, q measure.Flow) (measure.Length, float64) {
	k := (plateEdge*math.Sqrt(1-open) + 1 - open) / open
	return kLoss(a, k*k, q)
}

// plenumLoss is the head taken by the turn from the jet's way across the
// plenum to up: a mitre bend on the velocity through the plenum's upright
// middle section, bore × height. The jet's own velocity head is lost before,
// at the inlet's exit.
func plenumLoss(bore, height measure.Length, q measure.Flow) (measure.Length, float64) {
	return kLoss(bore.Times(height), mitreK, q)
}
