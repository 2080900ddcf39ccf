package views

import (
	"silowright/geometry"
	"silowright/geometry/path"
)

// jointDrawing is how one joint is drawn; its file is named for it.
type jointDrawing struct {
	name string // on a drawing: "two couplings"
	// detail draws it large, in the level section through its middle: the wall
	// curves, outside to the right.
	detail func(d *sheet, b path.Box, h geometry.Hole, name string) scale
	// side draws it in upright section at small scale, in a wall whose outside
	// is at radius r, and returns how far it reaches outwards from the axis.
	side func(d *sheet, v view, h geometry.Hole, side, r, z length) length
	// onPipe draws it in the upright wall of the pipe silo, outside at x.
	onPipe func(d *sheet, v view, h geometry.Hole, x, z length)
	// above lists what stands out of the wall seen from above: between two
	// radii, half as wide as y1 and y2 there.
	above func(h geometry.Hole, r, w length, add func(x1, y1, x2, y2 length))
	// picture draws its parts apart, with arrows where they are pushed together.
	picture func(p picture, h geometry.Hole)
	// mouth is how far past the wall's outside the outer pipe goes in, and how
	// deep it goes in there.
	mouth func(h geometry.Hole) (at, deep length)
	// inner is how far the joint stands inside the wall.
	inner func(h geometry.Hole) length
	// through is set where the pipe itself goes through the wall.
	through bool
	// piped is set where the outlet's pipe is seen outside the joint.
	piped bool
}

// drawingOf is how a hole's joint is drawn.
func drawingOf(h geometry.Hole) jointDrawing {
	switch h.Joint {
	case geometry.JointGrommet:
		return grommetDrawing()
	case geometry.JointBulkhead:
		return bulkheadDrawing()
	case geometry.JointStopper:
		return stopperDrawing()
	}
	return couplingsDrawing()
}

// sideOnPipe draws a joint in the pipe silo's wall as it is drawn in a drum's.
func sideOnPipe(d *sheet, v view, h geometry.Hole, x, z length) { d.sideJoint(v, h, 1, x, z) }

// jointWords names what goes through a hole and its joint.
func jointWords(h geometry.Hole) string {
	if !h.Joint.Makeup().Piped {
		return "stopper No. " + h.Stopper.Number
	}
	return pipeSize(h.Pipe) + ", " + drawingOf(h).name
}
