package stock

import "silowright/geometry/measure"

// HandHold is a cut-out that lifts well.
type HandHold struct {
	Height, Length measure.Length // at least
	Behind         measure.Length // clear space, at least
	Edge           measure.Length // thickness of the edge, at least; a drum's wall is thinner, so round or sleeve it
	Origin         Origin
}

// HandHoldRule returns the lifting guide's cut-out.
func HandHoldRule() HandHold {
	return HandHold{in(1.5), in(4.5), in(2), in(.25), Origin{"NIOSH Pub. 94-110, coupling notes", Memory}}
}
