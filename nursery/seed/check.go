package seed

import (
	"fmt"

	"silowright/geometry/measure"
)

// The limits of a plan's lists. Ranges are common practice, no source: they
// keep out slips of the pen and keep every number finite.
const (
	maxPoints                           = 100
	maxWeekRows                         = 104
	maxMeshes                           = 100
	minOpening, maxOpening              = 0.02 * measure.Millimetre, 50 * measure.Millimetre
	minArea, maxArea       measure.Area = 500, 10e6
	minEach, maxEach       measure.Mass = 1e-10, 0.5
	minShell, maxShell     Shell        = 0.05, 200
)

// Check reports the first thing in p that can't be, by the key's name in the
// section [seed]; nil when all can.
func (p Plan) Check() error {
	for _, k := range Keys() {
		v := k.Get(&p)
		const slack = 1e-9 // a change of units rounds
		if !(v >= k.Low*(1-slack) && v <= k.High*(1+slack)) {
			return wrong(k.Name, v, k.Unit, "is out of range", fmt.Sprintf("%s to %s", withUnit(k.Low, k.Unit), withUnit(k.High, k.Unit)), k.Means)
		}
	}
	for _, c := range []func(Plan) error{checkWords, checkSilos, checkMeshes, checkWeights, checkWeekTable} {
		if err := c(p); err != nil {
			return err
		}
	}
	return nil
}

func checkWords(p Plan) error {
	for _, w := range Words() {
		if got := w.Get(&p); got == "unknown" {
			return fmt.Errorf("seed.%s: unknown, is not a word known here, allowed: %q; hint: %s", w.Name, w.Allowed, w.Means)
		}
	}
	if least := (1 + p.Spread) / (1 - p.Spread); !(p.GradeAt > least*(1+1e-9)) {
		return wrong("grade_at", p.GradeAt, "", "is no more than a lot has that was graded this minute, by size_spread", "above "+figures(least), "raise it, or grade to a narrower spread")
	}
	if p.Move == MoveByLoad && p.PipeSilosAtHand == 0 {
		return wrong("pipe_silos_at_hand", 0, "", "tells of no pipe silos that could be full, by move = \"load\"", "1 to 100000", "give the pipe silos you have, or move = \"mesh\"")
	}
	return nil
}

func checkSilos(p Plan) error {
	for _, h := range []struct {
		key  string
		kind Kind
		area measure.Area
	}{{"pipe_silo", Pipe, p.PipeHouse.Area}, {"drum", Drum, p.DrumHouse.Area}} {
		if !p.uses(h.kind) {
			continue
		}
		if !(h.area >= minArea && h.area <= maxArea) {
			return fmt.Errorf("%s: bed area of a %s silo %s cm², is out of range, allowed: %g to %g cm²; hint: it follows from the silo's measures",
				h.key, h.kind, number(h.area.MM2()/100), minArea.MM2()/100, maxArea.MM2()/100)
		}
	}
	return nil
}

// uses reports whether p has a mesh for silos of kind k.
func (p Plan) uses(k Kind) bool {
	for _, m := range p.Meshes {
		if m.In == k {
			return true
		}
	}
	return false
}

func meshKey(k Kind) string {
	if k == Drum {
		return KeyDrumMeshes
	}
	return KeyPipeMeshes
}

func checkMeshes(p Plan) error {
	if len(p.Meshes) == 0 || len(p.Meshes) > maxMeshes {
		return fmt.Errorf("seed.%s: %d, is no usable number of meshes, allowed: 1 to %d for both kinds of silo; hint: give the openings you have", KeyDrumMeshes, len(p.Meshes), maxMeshes)
	}
	for _, m := range p.Meshes {
		if m.In != Pipe && m.In != Drum {
			return fmt.Errorf("seed.%s: %d, is no kind of silo, allowed: pipe or drum; hint: name the silo the mesh is for", KeyDrumMeshes, m.In)
		}
		if !(m.Opening >= minOpening && m.Opening <= maxOpening) {
			return wrong(meshKey(m.In), m.Opening.MM(), "mm", "is out of range", fmt.Sprintf("%g mm to %g mm", minOpening.MM(), maxOpening.MM()), "give the clear width between strands, not the count")
		}
		if m.Long != 0 && !(m.Long >= m.Opening && m.Long <= maxOpening) {
			return wrong(meshKey(m.In), m.Long.MM(), "mm", "the long way of an opening is out of range", fmt.Sprintf("%s mm to %g mm", number(m.Opening.MM()), maxOpening.MM()), "leave it out for a square weave")
		}
	}
	return nil
}

func checkWeights(p Plan) error {
	if len(p.Weights) < 2 || len(p.Weights) > maxPoints {
		return fmt.Errorf("seed.%s: %d, is no usable number of points, allowed: 2 to %d; hint: weigh a counted sample of small and of large seed", KeyWeights, len(p.Weights), maxPoints)
	}
	for i, w := range p.Weights {
		at := fmt.Sprintf("%s[%d]", KeyWeights, i)
		switch {
		case !(w.Shell >= minShell && w.Shell <= maxShell):
			return wrong(at, float64(w.Shell), "mm", "size is out of range", fmt.Sprintf("%g mm to %g mm", float64(minShell), float64(maxShell)), "give the shell length")
		case !(w.Each >= minEach && w.Each <= maxEach):
			return wrong(at, w.Each.Kg()*1e6, "mg", "weight is out of range", fmt.Sprintf("%g mg to %g mg", minEach.Kg()*1e6, maxEach.Kg()*1e6), "give the live weight of one seed")
		case i > 0 && !(w.Shell > p.Weights[i-1].Shell*(1+1e-6) && w.Each > p.Weights[i-1].Each*(1+1e-6)):
			return wrong(at, float64(w.Shell), "mm", "does not grow from the point before it", "larger and heavier, point by point", "list the smallest first")
		}
	}
	if low, high := p.Weights[0].Shell, p.Weights[len(p.Weights)-1].Shell; p.Size < low || p.Size > high {
		return wrong("size", float64(p.Size), "mm", "lies outside the table of weights", fmt.Sprintf("%g mm to %g mm", float64(low), float64(high)), "add a point to "+KeyWeights+": nothing is reckoned past its ends")
	}
	return nil
}

func checkWeekTable(p Plan) error {
	if len(p.WeekTable) > maxWeekRows {
		return fmt.Errorf("seed.%s: %d, has too many weeks, allowed: 0 to %d; hint: later weeks go by growth and survival", KeyWeekTable, len(p.WeekTable), maxWeekRows)
	}
	for i, w := range p.WeekTable {
		at := fmt.Sprintf("%s[%d]", KeyWeekTable, i)
		switch {
		case !(w.Survival > 0 && w.Survival <= 1):
			return wrong(at, w.Survival*100, "%", "survival is out of range", "above 0 to 100 %", "seed alive at the week's end")
		case p.Growth == ByLength && !(w.Length >= 0 && w.Length <= 10):
			return wrong(at, w.Length.MM(), "mm", "growth is out of range", "0 to 10 mm", "shell grown in the week")
		case p.Growth == ByWeight && !(w.Weight >= 0 && w.Weight <= 0.3):
			return wrong(at, w.Weight*100, "%/day", "growth is out of range", "0 to 30 %/day", "growth of the live weight a day")
		}
	}
	return nil
}

func wrong(key string, v float64, unit, why, allowed, hint string) error {
	return fmt.Errorf("seed.%s: %s, %s, allowed: %s; hint: %s", key, withUnit(v, unit), why, allowed, hint)
}

// withUnit writes a number and its unit, if it has one.
func withUnit(v float64, unit string) string {
	if unit == "" {
		return number(v)
	}
	return number(v) + " " + unit
}
