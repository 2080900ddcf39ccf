package sheets

import (
	"silowright/geometry"
	"silowright/geometry/measure"
)

// Water is how the silos are fed and how high the water stands in them. All
// amounts are written out already, in both units; the numbers are for places
// in drawings only. A part that is nil or empty is left out, but for Section
// and Pump, in whose place a sentence says so.
type Water struct {
	Says    []Said        // what a grower must know, most pressing first
	Section *LevelSection // of one drum silo
	// NoSection and NoPump are the sentences set where Section and Pump are
	// nil; "" sets a plain one.
	NoSection, NoPump string
	Losses            []Loss   // through the silo, in the water's order, the sum last
	Seat              []Amount // the lift on the body against its weight
	SeatSays          Said     // no words: none
	Pump              *PumpChart
	Flows             *SiloFlows
	Lines             []Amount    // pump: duty, power, kWh a year, suction head available and required
	Pipes             []PipeRow   // suction, main, manifold, hoses
	Failure           []string    // what happens when the power fails, a sentence each
	Basis             []BasisLine // what the numbers rest on
}

// Said is a sentence or two with the mark of how pressing it is.
type Said struct {
	Level geometry.Level
	Words string
	Basis string // what its numbers rest on, listed at the section's end; may be ""
}

// BasisLine is a number or a method and where it is from.
type BasisLine struct{ What, Source string }

// LevelSection is the upper part of a drum silo in section, with the curve of
// level against flow beside it on the same heights. Every height is above the
// outlet's invert, the lowest point of the nipple's bore; what lies lower is
// negative.
type LevelSection struct {
	Drum   string // drum kind; "" when there is only one
	Bore   length // inside diameter of the plain wall
	Wall   length
	Rim    length
	Slot   *SlotSeen // a handle slot; nil: none
	Outlet length    // inside diameter of the nipple: its crown is as high
	Nipple length    // thickness of the nipple's wall
	Stub   length    // how far the nipple reaches out of the wall
	Mesh   length    // upper face of the mesh
	Design LevelAt   // where water stands at the design flow
	Says   string    // the design flow written out: "9.2 gpm (35 L/min)"
	Pipe   *PipeSeen // a pipe silo hung inside; nil: none
	// Curve is the level against flow, by flow; Marks are named places on it
	// beside the design flow: the flow that reaches the sill, the rim.
	Curve []LevelAt
	Marks []LevelMark
}

// SlotSeen is a handle slot in the far wall.
type SlotSeen struct {
	Sill, Top length // heights of its lower and upper edge
	Long      length // as long as it looks
}

// PipeSeen is a pipe silo hung by its outlet in the drum silo's.
type PipeSeen struct {
	Outside length // diameter
	Wall    length
	Gap     length // from its outside to the drum's inside, on the outlet's side
	Rim     length
	Screen  length // height of the screen at its foot
	Surface length // where water stands inside it at the design flow; lower than outside
}

// LevelAt is a place on the curve of level against flow.
type LevelAt struct {
	Flow  measure.Flow
	Level length
}

// LevelMark is a named place on the curve.
type LevelMark struct {
	At   LevelAt
	Name string // "reaches the handle slots' sill"
	Says string // the flow written out
}

// Loss is one row of the losses through a silo.
type Loss struct {
	Name   string // "inlet stub and fittings", "mesh"
	Clean  string // head lost
	Fouled string // with the mesh fouled; "" writes the same as Clean
	Note   string // such as "30 % of the openings shut"
	Total  bool
}

// PumpChart is the pump's curve and the system's.
type PumpChart struct {
	Pump, System []HeadAt // by flow
	Duty         HeadAt
	DutySays     string // "160 gpm (606 L/min) at 14 ft (4.3 m)"
	Estimated    string // how the pump's curve was come by when it is no maker's; "" when it is
}

// HeadAt is a place on a pump's or a system's curve.
type HeadAt struct {
	Flow measure.Flow
	Head length
}

// SiloFlows is what each silo gets.
type SiloFlows struct {
	Silos    []SiloFlow // in their order from the feed
	Mean     measure.Flow
	MeanSays string
	Says     []string // least, most, evenness; what is shut and what to throttle, a paragraph each
}

// SiloFlow is what one silo gets. "" stands where nothing is known.
type SiloFlow struct {
	Name      string // its number
	Flow      measure.Flow
	Says      string // the flow written out
	Level     string // where water stands above the outlet's invert
	Freeboard string // up to what spills first
	Valve     string // setting: "0.42 open", "open", "shut"
	Worst     geometry.Level
	Note      string // such as "spills over the handle slots"
}

// PipeRow is one run of pipe or hose.
type PipeRow struct {
	Run     string // "main, pump to feed"
	Pipe    string // as it is
	Flow    string
	Speed   string // with the limit when it is passed
	Loss    string // head lost in it
	Advised string // the smallest pipe that holds the limits, with its series; "" leaves it as it is
	Level   geometry.Level
}
