package geometry

import (
	"silowright/geometry/measure"
	"silowright/geometry/path"
)

// Silo is one kind of drum silo solved: every number a builder, a drawing or
// a bill needs, worked out from its Spec. All parts share the datum: one
// upright line on the drum; distances round the wall run from it to the right
// as one faces the wall.
type Silo struct {
	Spec      Spec
	Build     int // how many of this kind are built
	Stations  Stations
	Lattice   Lattice
	Ring      Ring
	Disc      MeshDisc
	Slots     [2]Slot
	Outlet    Hole
	Inlet     Hole
	Drain     Hole
	Seat      Seat
	Sealant   Bead
	Pipe      PipeSilo
	Weights   Weights
	Templates []Template
	Findings  []Finding
}

// Stations are the heights at which the drum is parted, from the ground up
// with the drum standing on its foot.
type Stations struct {
	BaseCut    length // upper edge of the first cut: the base's mouth
	RingTop    length
	RingBottom length
	Rim        length // the body's cut edge = body height
	BaseHeight length // the base turned over, ground to mouth
	BaseHoop   Hoop   // the base's hoop, measured up from the ground it stands on when turned over
	BodyHoops  []Hoop // measured up from the foot
	HeadPanel  length // base turned over: ground to the head's upper face
}

// Lattice is the pattern in the foot, centred on the origin.
type Lattice struct {
	Openings  int
	SharpArea measure.Area  // of one opening with sharp corners
	Area      measure.Area  // of one opening as sawn, corners left at the pilot's radius
	OpenArea  measure.Area  // all openings as sawn
	OpenFoot  float64       // OpenArea over the foot's inside area
	Perimeter length        // of one opening with sharp corners
	Travel    length        // all jigsaw travel, pilots taken off
	BarLength length        // of one bar between circle edges
	Corners   [3]path.Point // of the first opening: apex, then counter-clockwise
	Pilots    [3]path.Point // centres of its corner holes
	Outlines  []path.Path   // each opening as sawn
	Sharp     []path.Path   // each opening with sharp corners
	AllPilots []path.Point
	Ledge     length // foot inside radius less the circle's: what the mesh lies on
}

// Ring is the retaining ring.
type Ring struct {
	StripLength length // as cut from the drum, on the neutral line
	Length      length // on the neutral line once it lies inside wall and mesh
	Surplus     length // to trim
	InnerRadius length // of its inner face, in place
	Foot        length // its lower edge above the foot's underside: it stands on the mesh
	Screws      int    // all, with the pair at the joint
	JointEdge   length // ring end to the nearest screw
	Step        length // along the inner face between neighbours
	Chord       length // the same for dividers
	Stack       length // ring + mesh + wall: what a screw goes through
	Protrudes   length // screw length less stack; negative when it is short
}

// MeshDisc is the mesh disc.
type MeshDisc struct {
	Across    length
	Bend      length // diameter at which it turns up
	Snips     int
	SnipDepth length
	Overlap   length // at the edge, with that many snips
}

// Slot is one handle slot on the developed wall.
type Slot struct {
	Top, Sill length // below the rim
	Round     length // datum to its middle
	Length    length // round the wall
	CornerR   length // radius of its ends
}

// Seat is how the foot sits in the base.
type Seat struct {
	Nests       bool
	Enters      length // how far the foot goes below the mouth
	Missing     length // when it never nests: foot outside less mouth
	TouchDepth  length // below the mouth, where it first touches
	TouchWidth  length // the diameter there
	ShiftCircUp length // change of Enters when circumference is 1/16 in more
	ShiftCircDn length
	ShiftWallUp length // and when the wall is 1/16 in more
	ShiftWallDn length
	FootHeight  length // the foot's underside above ground
	Plenum      length // head to foot
	Bottoms     bool   // it goes down to the head
}

// Bead is a run of sealant or resin.
type Bead struct {
	Run    length
	Volume measure.Volume
}

// PipeSilo is the pipe silo and how it hangs in the drum silo.
type PipeSilo struct {
	Outside, Inside, Wall length
	Wrap                  length // outside circumference
	ScreenSquare          length // side
	ClampOver             length // diameter the clamp must close on
	Clamp                 string // table size, "" when none fits
	ClampMin, ClampMax    length
	Resin                 Bead
	Hole                  Hole
	Under                 length // screen above the drum silo's mesh
	StandOff              length // between the pipe's wall and the drum's, on the outlet's side
	Round                 length // least gap between pipe and wall, on the side away from the outlet
	RimAbove              length // its open end above the drum silo's rim; negative when below
	ScreenArea            measure.Area
}

// Weights are masses and volumes.
type Weights struct {
	Body, Base, Ring, Pipe measure.Mass
	Lift                   measure.Mass // body, ring and wet seed; pipe and fittings are not weighed
	BaseVolume             measure.Volume
	PlenumVolume           measure.Volume
	SeedBay                measure.Volume // mesh up to the outlet's invert
	Sag                    length
	BarStress              measure.Stress // pull in a lattice bar
	HandleStress           measure.Stress
}

// Role says what is done along a template's line.
type Role string

// The roles; they are also the names of the groups in an SVG file.
const (
	Cut   Role = "cut"
	Drill Role = "drill"
	Mark  Role = "mark"
	Note  Role = "note"
)

// Shape is one line of a template.
type Shape struct {
	Role Role
	Path path.Path
}

// Label is words on a template.
type Label struct {
	At   path.Point
	Size length // letter height
	Text string
}

// Material is what a pattern is cut from when a laser or router shop makes it.
type Material string

// The materials: a stiff board for what is flat, a sheet that bends round a
// wall for what is not, and the mesh itself.
const (
	Plywood  Material = "plywood"
	Flexible Material = "flexible-sheet"
	MeshRoll Material = "mesh"
)

// Template is a full-scale pattern in its own frame: lower left corner at the
// origin, x right, y up.
type Template struct {
	ID        string // file name without ending, such as "a-lattice"
	Title     string
	Part      string
	Drum      string // label of the drum kind
	Count     int    // how many parts are marked with it
	Width     length
	Height    length
	OpenArea  measure.Area // enclosed by its cut lines
	CutLength length
	Shapes    []Shape
	Labels    []Label
	Up        string   // which way is up, for the reader
	Sheet     Material // what a shop cuts the pattern itself from
	Strip     bool     // a strip round the whole part: printed on request
	Compass   bool     // a circle that a compass draws as well: not printed on paper unasked
}

// Holes are the silo's round holes in the order they are cut: outlet, inlet,
// drain, the pipe silo's.
func (s *Silo) Holes() []Hole { return []Hole{s.Outlet, s.Inlet, s.Drain, s.Pipe.Hole} }
