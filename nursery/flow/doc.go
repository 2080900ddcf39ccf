// Package flow is the hydraulics of one silo: friction and fittings of the
// pipes that bring water, the loss through lattice, mesh and seed bed, how high
// the water stands over the outlet, what spills first and at what flow, and
// whether the body lifts off its seat. It knows plain dimensions and no drawing.
//
// Each relation names its source, its units and where it stops being valid.
// Quantities at the API are of the measure package; inside a formula they are
// floats in metres, seconds, kilograms and pascals.
package flow
