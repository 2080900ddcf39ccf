package stock

import "silowright/geometry/measure"

// Hole is the hole a fitting asks for: from Min to Max, equal where one size
// is quoted.
type Hole struct {
	Min, Max measure.Length
	Origin   Origin
}

// holeRow is what goes through a wall for inch pressure pipe, inches. A pair
// of zeros is not known.
type holeRow struct {
	size                        string
	grommet                     float64
	bulkhead                    [2]float64
	bulkheadSeen, clearanceSeen Standing
	clearance                   [2]float64
}

var holeRows = [...]holeRow{
	{"1/2", 1.25, [2]float64{}, "", One, [2]float64{1.125, 1.125}},
	{"3/4", 1.25, [2]float64{}, "", One, [2]float64{1.25, 1.25}},
	{"1", 1.75, [2]float64{1.75, 1.75}, Two, One, [2]float64{1.5, 1.5}},
	{"1 1/4", 2, [2]float64{}, "", One, [2]float64{1.875, 2}},
	{"1 1/2", 2.5, [2]float64{2.375, 2.375}, One, Two, [2]float64{2, 2.125}},
	{"2", 3, [2]float64{3, 3}, Two, One, [2]float64{2.625, 2.75}},
	{"3", 4, [2]float64{4, 4.5}, One, One, [2]float64{3.75, 4}},
	{"4", 5, [2]float64{}, "", One, [2]float64{4.75, 5}},
}

func holeRowOf(size string) (holeRow, bool) {
	size = NormalSize(size)
	for _, r := range holeRows {
		if r.size == size {
			return r, true
		}
	}
	return holeRow{}, false
}

// GrommetHole is the hole a rubber pipe-to-tank grommet for inch pressure pipe
// of that size usually asks for, all from memory. Grommets differ: the label
// of the one in hand wins over this table.
func GrommetHole(size string) (Hole, bool) {
	r, ok := holeRowOf(size)
	if !ok {
		return Hole{}, false
	}
	return Hole{in(r.grommet), in(r.grommet), Origin{srcPractice, Memory}}, true
}

// BulkheadHole is the hole a threaded bulkhead fitting of that size asks for.
func BulkheadHole(size string) (Hole, bool) {
	r, ok := holeRowOf(size)
	if !ok || r.bulkhead[1] == 0 {
		return Hole{}, false
	}
	return Hole{in(r.bulkhead[0]), in(r.bulkhead[1]), Origin{"size charts of threaded bulkhead fittings", r.bulkheadSeen}}, true
}

// ClearanceHole is the hole quoted for inch pressure pipe of that size to pass
// freely. Sewer and metric pipe have other outsides: do not ask it for them.
func ClearanceHole(size string) (Hole, bool) {
	r, ok := holeRowOf(size)
	if !ok {
		return Hole{}, false
	}
	return Hole{in(r.clearance[0]), in(r.clearance[1]), Origin{"hole saw charts for pipe entrance", r.clearanceSeen}}, true
}
