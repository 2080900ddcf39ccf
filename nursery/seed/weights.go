package seed

import (
	"fmt"
	"math"

	"silowright/geometry/measure"
)

// each returns the live weight of one seed of shell length l by the plan's own
// table; an error past its ends.
func (p Plan) each(l Shell) (measure.Mass, error) {
	x, ok := between(float64(l), p.Weights, func(w WeightPoint) float64 { return float64(w.Shell) }, func(w WeightPoint) float64 { return float64(w.Each) })
	if !ok {
		return 0, p.pastTable(l.Both(measure.UnitMM))
	}
	return measure.Mass(x), nil
}

// shellOf returns the shell length of a seed of live weight m, by the table.
func (p Plan) shellOf(m measure.Mass) (Shell, error) {
	x, ok := between(float64(m), p.Weights, func(w WeightPoint) float64 { return float64(w.Each) }, func(w WeightPoint) float64 { return float64(w.Shell) })
	if !ok {
		return 0, p.pastTable(figures(m.Kg()*1e6) + " mg")
	}
	return Shell(x), nil
}

func (p Plan) pastTable(what string) error {
	low, high := p.Weights[0], p.Weights[len(p.Weights)-1]
	return fmt.Errorf("seed.%s: %s, lies outside the table of weights, allowed: %s to %s (%s mg to %s mg); hint: add a point, nothing is reckoned past its ends",
		KeyWeights, what, low.Shell.Both(measure.UnitMM), high.Shell.Both(measure.UnitMM), figures(low.Each.Kg()*1e6), figures(high.Each.Kg()*1e6))
}

// between reads y at x off a table that rises in both, by a power law between
// two points; ok is false past the ends.
func between(x float64, table []WeightPoint, xs, ys func(WeightPoint) float64) (y float64, ok bool) {
	last := len(table) - 1
	// A week's growth may end on the last point but for rounding.
	const slack = 1e-9
	if !(x >= xs(table[0])*(1-slack) && x <= xs(table[last])*(1+slack)) {
		return 0, false
	}
	i := 1
	for i < last && x > xs(table[i]) {
		i++
	}
	a, b := table[i-1], table[i]
	share := math.Log(x/xs(a)) / math.Log(xs(b)/xs(a))
	return ys(a) * math.Exp(share*math.Log(ys(b)/ys(a))), true
}
