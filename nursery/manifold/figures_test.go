package manifold

import (
	"math"
	"testing"

	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/sea"
	"silowright/render/outside"
)

// A standard atmosphere in pascals, as LibreOffice converts it, who holds it to
// seven figures.
func TestStandardAir(t *testing.T) {
	if got := outside.Convert(t, "atm", "Pa")[0]; math.Abs(got-standardAir) > 0.01 {
		t.Errorf("%v Pa, LibreOffice says %v", standardAir, got)
	}
}

// The loss kept ready for the solver is flow.PipeLoss, on both sides of where
// slow flow ends.
func TestLossIsFlows(t *testing.T) {
	w, err := sea.At(30, 15)
	if err != nil {
		t.Fatal(err)
	}
	p := flow.Pipe{Bore: 25, Length: 10 * measure.Metre, Roughness: flow.PlasticRoughness, K: 1.5}
	l := newLoss(p, w)
	for re := 95.0; re < 8000; re += 5 { // 2005 and 2010 lie just past the slow flow's end
		q := measure.Flow(re*w.Kinematic()*math.Pi/4*p.Bore.Metres()) * measure.CubicMetrePerSec
		want, _ := flow.PipeLoss(w, p, q)
		if got, _ := l.at(q.M3S()); math.Abs(got/want.Metres()-1) > 1e-9 {
			t.Errorf("Re %.0f: %v m, want %v", re, got, want.Metres())
		}
	}
}
