package manifold

import (
	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/sea"
)

// System is a pump, its pipes and the silos on them. All elevations are above
// one datum of the job's own.
type System struct {
	Water   sea.Water
	Suction Suction
	Pump    Pump
	// Main is the pipe from the pump to the manifold's tee Feed.
	Main flow.Pipe
	// Segments join the tees: Segments[i] leads from that of Laterals[i] to
	// that of Laterals[i+1]. The K of each is that of the tees' straight run
	// with what else is in it, on the speed in it. The ends are dead.
	Segments []flow.Pipe
	// Feed is the index of the lateral at whose tee the main comes in: 0 for a
	// manifold fed at its end, one in the middle for a centre feed.
	Feed     int
	Laterals []Lateral
}

// Suction is the way from the source to the pump.
type Suction struct {
	// Source is the elevation of the water that is pumped from.
	Source measure.Length
	// Pump is the elevation of the pump's centre: over Source for a lift,
	// under it where the pump is flooded.
	Pump measure.Length
	// Pipe is the suction pipe, its K that of bends and entrance. A Bore of 0
	// is no pipe, for a pump that hangs in the water.
	Pipe flow.Pipe
	// Strainer and FootValve are their K on the pipe's speed.
	Strainer, FootValve float64
	// Air is the pressure on the source's surface; 0 is 101325 Pa.
	Air measure.Pressure
	// Alpha is the kinetic energy factor at the pump's inlet, 1 to 2; 0 is 1.
	Alpha float64
}

// Lateral is the way from one tee to one silo.
type Lateral struct {
	Name string
	// Branch is the K of the tee into its branch, on the hose's speed.
	Branch float64
	Valve  Valve
	Hose   flow.Pipe
	// Barb is the loss of the barbs, and of the exit when Silo leaves it out.
	Barb Fitting
	// Rise is the elevation from which Silo counts its head.
	Rise measure.Length
	// Silo is the head asked at the hose's end; nil asks none, as for a hose
	// that ends in the open at Rise. It must have passed its own check.
	Silo SiloHead
}
