package geometry

import "silowright/geometry/measure"

// The limits that the checks hold a silo to; those of a joint stand in its own
// file. All are common practice, no source, but those of the hand and of the
// lift.
const (
	// The wall: web between two cuts or a cut and an edge, besideHoop between a
	// cut and a hoop.
	web        = measure.Inch
	besideHoop = measure.Inch / 4

	// The foot: what is left of it round the lattice, the mesh disc over the
	// lattice, the sag as a part of the span.
	ledge    = measure.Inch / 2
	meshPast = measure.Inch
	sagSpan  = 20

	// The hand (NIOSH Pub. 94-110, coupling notes, from memory): good from
	// handLong, handHigh and handEdge on. Under handShort and handLow a hand
	// does not go in (common practice, no source).
	handLong, handShort = 4.5 * measure.Inch, 3.25 * measure.Inch
	handHigh, handLow   = 1.5 * measure.Inch, measure.Inch
	handEdge            = measure.Inch / 4

	// Water and room: the outlet's crown under the slots' sill, a joint over
	// the head and under the foot, the foot into the base, the plenum.
	crownBelow            = measure.Inch / 2
	plenumRoom            = measure.Inch / 4
	seatEnters            = measure.Inch / 2
	plenumBad, plenumGood = 1 * measure.Inch, 2 * measure.Inch

	// The pipe silo: the clamp's spare range, over the mesh, from the wall, the
	// screen down the pipe, its open end over the outlet's crown.
	clampSpare          = measure.Inch / 8
	hangsOver           = measure.Inch
	hangsFrom           = measure.Inch / 2
	drapeBad, drapeGood = 0.75 * measure.Inch, 1.5 * measure.Inch
	rimOver             = 2 * measure.Inch
)

// The revised NIOSH lifting equation (Pub. 94-110, revised 2021), kg, cm and
// degrees.
const (
	loadConstant         = 23
	reachNear, reachMost = 25, 63  // horizontal; the multiplier is 25/H
	reachBody            = 20      // hands to ankles past half the load's width (from memory)
	handsBest, handsMost = 75, 175 // vertical
	handsOff             = 0.003   // off for each cm from the best
	travelNear           = 25      // a lift of no more counts as this
	travelFar            = 0.82
	travelGain           = 4.5
	twistOff             = 0.0032 // off for each degree of twist (from memory)
)
