package sheets

import (
	"silowright/geometry"
	"silowright/geometry/measure"
)

// Seed is which mesh holds which seed, how many seed there are and how many
// silos they need, week by week. All amounts are written out already; the
// numbers are for places in drawings only. A part that is nil or empty is left
// out, but for Ladder and Plan, in whose place a sentence says so.
type Seed struct {
	Says   []Said // what a grower must know, most pressing first
	Ladder *MeshLadder
	// NoLadder and NoPlan are the sentences set where Ladder and Plan are nil;
	// "" sets a plain one.
	NoLadder, NoPlan string
	Counts           []CountRow // count and mass, from samples or from the job
	Plan             *SeedPlan
	Food             []Amount
	FoodSays         Said // no words: none
	Basis            []BasisLine
}

// MeshLadder is the meshes seed goes over, on one scale of size.
type MeshLadder struct {
	Across string // what the scale is of: "shell length", "size of sieve that holds the smallest seed"
	Rungs  []MeshRung
	Marks  []SizeMark // such as arrival, leaving
	Says   []string   // when to move from pipe to drum silo, what is outside a source's range
}

// MeshRung is one mesh and the seed it serves, a bar of the ladder.
type MeshRung struct {
	Name     string // "250 µm screen, pipe silo"
	From, To length // smallest and largest seed on it; To of 0 or less: without an upper end
	Says     string // "0.5 mm to 1.4 mm"
	Own      string // what of the job it is: "the job's mesh", "the job's screen"; "" of stock only
	Level    geometry.Level
}

// SizeMark is a size of seed marked on the scale.
type SizeMark struct {
	Size length
	Name string
}

// CountRow is one count: its value, the interval it lies in with confidence.
type CountRow struct{ Name, Value, Interval, Note string }

// SeedPlan is the season by weeks.
type SeedPlan struct {
	Weeks []SeedWeek // in order
	Peak  []string   // the most silos and flow and when, a sentence each
	// DrumHave and PipeHave are the silos of the job, drawn as a level; 0: not.
	DrumHave, PipeHave int
}

// SeedWeek is one week of the season.
type SeedWeek struct {
	Week       int
	Size       string
	Count      string
	Mass       string
	Mesh       string
	Drum, Pipe int // silos needed
	Flow       measure.Flow
	FlowSays   string
	Governs    string // the limit that sets the count: "bed depth"
	Does       string // "grade", "move to drum silos"
	Peak       bool
	Level      geometry.Level
}
