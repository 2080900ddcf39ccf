package seed

import (
	"testing"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// Every limit a finding on seed is held to. Clams suit upwelling from about
// 0.5 mm, seed leaves for mesh of 7 to 12 mm, a barge nursery gives 10 to
// 20 L/min/kg and holds 120 kg/m² (FAO Fisheries Technical Paper 471, §6.6.2);
// half of the water cleared and half as much again in the weights are common
// practice, no source.
func TestLimitsOfFindings(t *testing.T) {
	limit := func(id string, want float64, set func(*Plan)) {
		t.Helper()
		p := cove()
		set(&p)
		for _, f := range Findings(p, need(t, p), measure.UnitMM) {
			if f.ID == "seed."+id {
				near(t, id, f.Limit.Value, want, 1e-9)
				return
			}
		}
		t.Errorf("no finding %s", id)
	}
	same := func(*Plan) {}
	limit("size", 0.5, same)
	limit("leave", 7, func(p *Plan) { p.LeaveOn = 6.9 })
	limit("leave", 12, func(p *Plan) { p.LeaveOn = 12.1 })
	limit("water", 10, same)
	limit("water", 20, func(p *Plan) { p.Water = 20.1 })
	limit("food", 50, same)
	limit("load", 120, func(p *Plan) {
		p.Load, p.BedDepth, p.DrumHouse.Most = 400, 400, 500*measure.LitrePerMinute
	})
	// The table's weight at 1 mm is 0.21 mg: 0.315 is half as much again.
	for mg, want := range map[float64]geometry.Level{0.314: geometry.OK, 0.316: geometry.Caution, 0.141: geometry.OK, 0.139: geometry.Caution} {
		p := cove()
		p.Weights = points(0.5, 0.02, 1, mg, 5, 27, 10, 210, 20, 1700)
		wantFinding(t, Findings(p, need(t, p), measure.UnitMM), "seed.weight-1mm", want)
	}
}
