package seed

import (
	"math"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// GrowthFigure is one published result of growing seed: what was seen, at what
// load, from a source. It is a figure to hold a plan against, no law.
type GrowthFigure struct {
	Species Species
	// LeastDays and MostDays are how long it took; equal where one was told.
	LeastDays, MostDays float64
	// From and To are the mean shell lengths; FromLeast and ToMost spread them
	// where the source tells a range. All zero when the source told weights.
	FromLeast, From, To, ToMost Shell
	// FromMass and ToMass are the live weights; zero when it told lengths.
	FromMass, ToMass measure.Mass
	// Load on the mesh; zero when not told.
	Load Load
	// PerArea is the number of seed a square metre, and WaterEach the water
	// each was given; zero when not told.
	PerArea   float64
	WaterEach measure.Flow
	Basis     geometry.Basis
}

// PerWeek returns the least and the greatest growth of the shell in a week
// that the figure tells; ok is false when it told weights.
func (g GrowthFigure) PerWeek() (least, most measure.Length, ok bool) {
	if !(g.To > 0) || !(g.LeastDays > 0) || !(g.MostDays > 0) {
		return 0, 0, false
	}
	least = (g.To - g.From).Length() * measure.Length(7/g.MostDays)
	most = (g.ToMost - g.FromLeast).Length() * measure.Length(7/g.LeastDays)
	return least, most, true
}

// PerDay returns the specific growth of the live weight, ln(to/from)/days, as
// a share a day (0.0843 is 8.43 % a day); ok is false when it told lengths.
func (g GrowthFigure) PerDay() (rate float64, ok bool) {
	if !(g.FromMass > 0) || !(g.ToMass > 0) || !(g.MostDays > 0) {
		return 0, false
	}
	return math.Log(float64(g.ToMass/g.FromMass)) / g.MostDays, true
}

// doubling returns the days in which a weight doubles at the specific growth
// rate; 0 for a rate that is not positive.
func doubling(rate float64) float64 {
	if !(rate > 0) {
		return 0
	}
	return math.Ln2 / rate
}

// GrowthFigures lists the published figures held here.
func GrowthFigures() []GrowthFigure {
	figure := func(s Species, days float64, from, to Shell, load Load, source string) GrowthFigure {
		return GrowthFigure{Species: s, LeastDays: days, MostDays: days, FromLeast: from, From: from, To: to, ToMost: to,
			Load: load, Basis: published(source)}
	}
	florida := func(s Species, to, most Shell) GrowthFigure {
		return GrowthFigure{Species: s, LeastDays: 42, MostDays: 84, FromLeast: 1, From: 2, To: to, ToMost: most, Basis: published(srcFlorida)}
	}
	return []GrowthFigure{
		figure(Clam, 14, 4.4, 5.9, 10, srcPR01),
		figure(Clam, 28, 4.2, 6.0, 30, srcPR01),
		florida(Clam, 5, 6),
		{Species: Oyster, LeastDays: 60, MostDays: 60, FromMass: 0.014e-3, ToMass: 2.2e-3,
			PerArea: 120000, WaterEach: litrePerDay, Basis: published(srcBB92 + ", summer")},
		florida(Oyster, 6, 8),
	}
}
