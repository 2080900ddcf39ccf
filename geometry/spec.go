package geometry

import "silowright/geometry/measure"

type (
	length = measure.Length
	angle  = measure.Angle
)

// Job is a whole build as asked for: what to make, from which drums, with
// which holes. It holds no prices and no files.
type Job struct {
	Name       string
	Units      measure.Unit
	DrumSilos  int
	PipeSilos  int
	Projection Projection
	Kinds      []Spec    // one for each kind of drum, the job's sections already laid over the defaults
	Defaulted  []Default // what the job file left out and this took instead
}

// Projection says how the views of a drawing stand to each other.
type Projection string

// The two projections (ISO 5456-2): the view from above stands above the
// elevation in third angle, below it in first.
const (
	ThirdAngle Projection = "third"
	FirstAngle Projection = "first"
)

// DefaultProjection is third angle for jobs in inches and first angle for
// metric ones (common practice, no source).
func DefaultProjection(u measure.Unit) Projection {
	if u == measure.UnitMM {
		return FirstAngle
	}
	return ThirdAngle
}

// Default is a key the job left to the program.
type Default struct {
	Key   string `json:"key"`
	Value string `json:"value"` // as it would be written in the job file
}

// Spec is what one kind of drum silo (and the pipe silo that hangs in it) is
// to be: the drum as measured and the chosen parts.
type Spec struct {
	Drum     Drum
	Lattice  LatticeSpec
	Ring     RingSpec
	Mesh     MeshSpec
	Handle   HandleSpec
	Outlet   OutletSpec
	Inlet    InletSpec
	Drain    DrainSpec
	Screws   ScrewSpec
	Sealant  SealantSpec
	Pipe     PipeSiloSpec
	Saw      SawSpec
	Load     LoadSpec
	Fittings Fittings
	Units    measure.Unit
}

// Drum is one kind of second-hand drum as the tape reads it, standing on its
// foot; heights are from the ground up.
type Drum struct {
	Label       string
	Count       int    // how many of this kind there are
	Outside     length // diameter of the plain wall (circumference / π)
	Height      length // ground to the upper chime
	Wall        length // thickness
	FootOutside length // diameter where it stands
	FootHeight  length // height at which the wall has its full diameter
	HeadRecess  length // how far the head lies below the upper chime
	Hoops       []Hoop // lowest first
}

// Widest is the drum's outside where it is widest: at a hoop, or at the plain wall.
func (d Drum) Widest() length {
	w := d.Outside
	for _, h := range d.Hoops {
		w = maxLength(w, h.Outside)
	}
	return w
}

// Hoop is a stiffening rib round the wall, from From to To above the ground.
type Hoop struct{ From, To, Outside length }

// Edge says how a lattice opening ends at the circle.
type Edge string

// The two edges offered.
const (
	EdgeArc      Edge = "arc"      // the outer edge follows the circle
	EdgeStraight Edge = "straight" // the outer edge is the chord
)

// LatticeSpec is the pattern cut in the body's foot.
type LatticeSpec struct {
	Across   length // diameter of the circle
	Bars     int    // bars crossing at the centre, 2 to 6
	BarWidth length
	Pilot    length // diameter of the corner holes
	Edge     Edge
}

// RingSpec is the retaining ring.
type RingSpec struct{ Width length }

// MeshSpec is the mesh disc of the drum silo.
type MeshSpec struct {
	Opening      length
	Thickness    length
	Trim         length // allowance past the ring
	OpenFraction float64
	Overlap      length // widest overlap allowed at the edge between two snips
}

// inchPressure reports whether the pipe is of the inch pressure series, for
// which sockets, grommets and clearance holes are tabled.
func (p PipeRef) inchPressure() bool { return p.Series == "sch40" || p.Series == "sch80" }

// inchSewer reports whether the pipe is of the inch sewer series.
func (p PipeRef) inchSewer() bool { return p.Series == "sdr35" || p.Series == "sdr26" }

// HandleSpec is the pair of handle slots.
type HandleSpec struct {
	BelowRim length // rim down to the slot's upper edge
	Height   length
	Length   length // round the wall, over the rounded ends
	Round    length // datum to the first slot's middle, to the right; the second is opposite
}

// PipeRef names a pipe of the tables: nominal size and series.
type PipeRef struct {
	Size   string // as the table writes it: "1 1/2", "2", "8", "110"
	Series string // "sch40", "sch80", "sdr35", "sdr26", "en1401-sn4", "en1401-sn8", "pn10"
}

// String writes the pipe as "2 sch40".
func (p PipeRef) String() string { return p.Size + " " + p.Series }

// OutletSpec is the outlet through the body's wall.
type OutletSpec struct {
	BelowRim length // rim down to the centre
	Pipe     PipeRef
	Saw      length // nominal diameter of the hole saw
	Joint    Joint
	Nipple   length
	Round    length
}

// InletSpec is the inlet through the base's wall.
type InletSpec struct {
	AboveGround length // ground up to the centre
	Pipe        PipeRef
	Saw         length
	Joint       Joint
	Nipple      length // the short pipe through the wall when the joint is couplings
	Stub        length // pipe from the joint to the hose
	Round       length
}

// DrainSpec is the drain through the base's wall.
type DrainSpec struct {
	AboveGround length
	Saw         length
	Stopper     string // number: "11"
	Round       length
}

// ScrewSpec is the ring's screws.
type ScrewSpec struct {
	Size    string // "6", "8", "10", "ST3.5", "ST4.2"
	Length  length
	Spacing length // largest distance between neighbours
}

// SealantSpec is the bead along the ring.
type SealantSpec struct {
	Bead      length         // side of the square section
	Cartridge measure.Volume // what one cartridge holds
	Waste     float64        // fraction lost
}

// PipeSiloSpec is the pipe silo.
type PipeSiloSpec struct {
	Pipe              PipeRef
	Length            length
	Screen            length // opening
	ScreenThickness   length
	ScreenOpen        float64
	Drape             length // screen past the pipe's edge, each side
	OutletAboveScreen length // screened end up to the side hole's centre
	Saw               length
	Joint             Joint
	PipeOut           PipeRef
	PipeOutLength     length
	Bead              length // leg of the resin bead
}

// SawSpec is how the saws cut.
type SawSpec struct {
	Kerf     length // of the saw that parts the drum
	Oversize length // how much larger than nominal a hole comes out
}

// LoadSpec is what the silo is lifted and loaded with.
type LoadSpec struct {
	Seed measure.Mass // wet seed on the mesh
	Time string       // how long it hangs drained: "0.5 h", "12 h", "100 h", "1 year", "50 years"
}
