package seed

import (
	"slices"

	"silowright/geometry/measure"
)

// SeasonWeek is one week of all lots together.
type SeasonWeek struct {
	Week  int          `json:"week"`
	Count int          `json:"count"`
	Mass  measure.Mass `json:"mass_kg"`
	Drum  int          `json:"drum_silos"`
	Pipe  int          `json:"pipe_silos"`
	Flow  measure.Flow `json:"flow_mm3_s"`
}

// Season is several lots by the week of the season.
type Season struct {
	Weeks []SeasonWeek `json:"weeks"` // without gaps, the earliest first
	Peak  Peak         `json:"peak"`
}

// Together adds lots up by the week. Lots are never mixed: each has silos of
// its own.
func Together(lots []SiloNeed) Season {
	by := map[int]SeasonWeek{}
	var weeks []int
	for _, lot := range lots {
		for _, w := range lot.Weeks {
			s, seen := by[w.Week]
			if !seen {
				weeks = append(weeks, w.Week)
			}
			by[w.Week] = SeasonWeek{w.Week, s.Count + w.Count, s.Mass + w.Mass, s.Drum + w.Drum, s.Pipe + w.Pipe, s.Flow + w.Flow}
		}
	}
	var out Season
	if len(weeks) == 0 {
		return out
	}
	for n := slices.Min(weeks); n <= slices.Max(weeks); n++ {
		w := by[n]
		w.Week = n
		out.Weeks = append(out.Weeks, w)
		out.Peak.take(n, w.Drum, w.Pipe, w.Flow)
	}
	return out
}
