// Package path holds plane outlines made of straight lines, circular arcs and
// cubic curves, with their exact areas. Axes: x to the right, y up,
// millimetres. It knows nothing of silos or paper.
package path

import "silowright/geometry/measure"

// Point is a place in the plane.
type Point struct{ X, Y measure.Length }

// Pt returns the point (x, y).
func Pt(x, y measure.Length) Point { return Point{x, y} }

// Kind says how a segment gets to its end.
type Kind uint8

// The kinds of segment.
const (
	Move  Kind = iota // lift the pen to To
	Line              // straight to To
	Arc               // along the circle about Centre by Sweep, to To
	Curve             // cubic Bézier with controls C1, C2, to To
	Close             // straight back to the last Move
)

// Segment is one step of a Path. Centre and Sweep belong to Arc, C1 and C2 to
// Curve; Sweep is counter-clockwise positive.
type Segment struct {
	Kind   Kind
	To     Point
	Centre Point
	Sweep  measure.Angle
	C1, C2 Point
}

// Path is a list of segments; it may hold several outlines, each begun by a
// Move.
type Path []Segment

// Box is an upright rectangle from Min (lower left) to Max (upper right).
type Box struct{ Min, Max Point }
