package seed

import "silowright/geometry/measure"

// Growth says in what the grower tells how seed grows.
type Growth int

// The two ways of telling it.
const (
	// ByLength is so much shell a week, in millimetres: for seed seen over a
	// few weeks.
	ByLength Growth = iota
	// ByWeight is a share of the live weight a day, compounded at every moment:
	// weight(t) = weight(0)·e^(rate·t).
	ByWeight
)

var growthNames = [...]string{"length", "weight"}

// String returns "length" or "weight".
func (g Growth) String() string {
	if g < 0 || int(g) >= len(growthNames) {
		return "unknown"
	}
	return growthNames[g]
}

// Move says when seed goes from the pipe silos to the drum silos.
type Move int

// The two rules.
const (
	// MoveByMesh moves seed in the first week in which a drum's mesh holds the
	// smallest.
	MoveByMesh Move = iota
	// MoveByLoad keeps seed in the pipe silos as long as those at hand are
	// enough, and moves it when they're not and a drum's mesh holds it.
	MoveByLoad
)

var moveNames = [...]string{"mesh", "load"}

// String returns "mesh" or "load".
func (m Move) String() string {
	if m < 0 || int(m) >= len(moveNames) {
		return "unknown"
	}
	return moveNames[m]
}

// WeightPoint is the live weight of one seed of a shell length.
type WeightPoint struct {
	Shell Shell
	Each  measure.Mass
}

// WeekRate is how the seed fares in one week. Length counts with ByLength,
// Weight with ByWeight.
type WeekRate struct {
	Length   measure.Length // shell grown in the week
	Weight   float64        // specific growth of the weight, share a day
	Survival float64        // share alive at the week's end
}

// House is one kind of silo as it is built.
type House struct {
	// Area is the clear area of mesh that seed lies on, in one silo.
	Area measure.Area
	// Most is the water one silo takes without spilling.
	Most measure.Flow
}

// Plan is what one lot of seed is and how it is to be raised. Default fills it
// but for Count, Size and the silos' Area.
type Plan struct {
	Species Species
	// Count is the number of seed that arrive, and Size their mean shell.
	Count int
	Size  Shell
	// Arrival is the week of the season in which they come, 1 for the first.
	Arrival int
	// Weeks is how many weeks are reckoned at most.
	Weeks int

	// SieveRatio is sieve opening over shell length.
	SieveRatio float64
	// Spread is how far the smallest and the largest seed of a graded lot lie
	// below and above its mean size; GrowthSpread the same of their growth.
	Spread, GrowthSpread float64
	// GradeAt is the largest seed over the smallest at which a lot is graded.
	GradeAt float64
	// MeshMargin is by what share the smallest seed is larger than an opening.
	MeshMargin float64
	// LeaveOn is the mean seed's sieve at which the seed leaves.
	LeaveOn Sieve

	Growth       Growth
	GrowthLength measure.Length // shell a week
	GrowthWeight float64        // specific growth of the weight, share a day
	Survival     float64        // share alive after a week
	// WeekTable is the first weeks one by one; GrowthLength, GrowthWeight and
	// Survival hold for weeks past its end.
	WeekTable []WeekRate

	// Weights is the grower's own table, smallest first. Between points weight
	// follows a power of the length; past its ends nothing is reckoned.
	Weights []WeightPoint
	// Bulk is the live mass of a volume of drained seed.
	Bulk measure.Density
	// ClearanceEach is the water a gram of live seed clears, in litres an hour;
	// used where no published relation is held. Zero: not reckoned.
	ClearanceEach float64

	// The limits. WaterEach, the least water for one seed whatever its weight,
	// may be zero: not used.
	BedDepth  measure.Length
	Load      Load
	Water     WaterPerMass
	WaterEach measure.Flow

	PipeHouse, DrumHouse House
	// Meshes of both kinds of silo. Without meshes of a kind that kind is not used.
	Meshes []Mesh
	Move   Move
	// PipeSilosAtHand is how many pipe silos there are; zero: as many as needed.
	PipeSilosAtHand int
}

// points is a table of weights from shell lengths in millimetres and weights
// in milligrams.
func points(mmMg ...float64) []WeightPoint {
	var out []WeightPoint
	for i := 0; i+1 < len(mmMg); i += 2 {
		out = append(out, WeightPoint{Shell(mmMg[i]), measure.Mass(mmMg[i+1] * 1e-6)})
	}
	return out
}

// DefaultWeights is the table of weights a plan starts with. The weight at 1 mm
// is that of FAO Fisheries Technical Paper 471, §6.1 (but for mussels); all
// other points are common practice, no source: weigh yours.
func DefaultWeights(s Species) []WeightPoint {
	switch s {
	case Clam:
		return points(0.3, 0.006, 0.5, 0.027, 1, 0.21, 2, 1.8, 5, 27, 10, 210, 20, 1700)
	case Oyster:
		return points(0.3, 0.009, 0.5, 0.04, 1, 0.3, 2, 2.2, 5, 27, 10, 190, 20, 1300)
	case Scallop:
		return points(0.3, 0.006, 0.5, 0.027, 1, 0.21, 2, 1.6, 5, 20, 10, 130, 20, 900)
	}
	return points(0.3, 0.004, 0.5, 0.018, 1, 0.13, 2, 1, 5, 14, 10, 100, 20, 700)
}

// Default returns a plan for the kind with every number at its default, and
// without seed, silos or meshes. What each default rests on stands in Keys.
func Default(s Species) Plan {
	p := Plan{Species: s, Weights: DefaultWeights(s)}
	for _, k := range Keys() {
		if !k.Required {
			k.Set(&p, k.Default)
		}
	}
	return p
}
