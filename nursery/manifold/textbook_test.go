package manifold

import (
	"math"
	"testing"

	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/sea"
)

const (
	metre = measure.Metre
	mm    = measure.Millimetre
	m3s   = measure.CubicMetrePerSec
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %.6g, want %.6g ± %.2g", what, got, want, tol)
	}
}

// steady is a pump that gives the same head at any flow of interest: a source
// under pressure.
func steady(t *testing.T, head float64) Curve {
	t.Helper()
	c, err := CurveByDuty(headOf(head), Point{1e-9 * m3s, headOf(head * (1 - 1e-8))})
	if err != nil {
		t.Fatal(err)
	}
	c.c = 0
	return c
}

func solved(t *testing.T, s System) Result {
	t.Helper()
	r, err := Solve(s)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Çengel & Cimbala, "Fluid Mechanics: Fundamentals and Applications", example
// 8-9 (the title's edition from memory), inputs as published, answers by the
// exact Colebrook equation: a shower and a flushing cistern on one pipe.
func TestBranching(t *testing.T) {
	bath := func(flushing bool) System {
		pipe := func(l float64) flow.Pipe { return flow.Pipe{Bore: 15 * mm, Length: headOf(l), Roughness: 0.0015 * mm} }
		w := sea.Water{Density: 998, Viscosity: 998 * 1.004e-6}
		s := System{
			Water: w, Pump: Pump{Curve: steady(t, 200e3/(998*9.81))}, Main: pipe(5), Segments: []flow.Pipe{{Bore: 15 * mm}},
			Laterals: []Lateral{
				{Name: "shower", Hose: pipe(6), Valve: Valve{K: 24.7}, Rise: 2 * metre},
				{Name: "cistern", Hose: pipe(1), Valve: Valve{K: 26.9, Shut: !flushing}},
			},
		}
		return s
	}
	both := solved(t, bath(true))
	near(t, "shower with cistern, L/s", both.Laterals[0].Flow.M3S()*1e3, 0.416, 0.001)
	near(t, "cistern, L/s", both.Laterals[1].Flow.M3S()*1e3, 0.500, 0.001)
	near(t, "both, L/s", both.Total.M3S()*1e3, 0.916, 0.001)
	alone := solved(t, bath(false))
	near(t, "shower alone, L/s", alone.Total.M3S()*1e3, 0.527, 0.001)
}

// Çengel & Cimbala, example 8-7: two pipes side by side from a pump of 8 kW.
// Answers by the exact Colebrook equation; the text has 0.0300, 0.00415 and
// 0.0259 m³/s.
func TestParallel(t *testing.T) {
	c, err := Estimate(8000, 0.70, 998, 100*metre)
	if err != nil {
		t.Fatal(err)
	}
	pipe := func(d measure.Length) flow.Pipe { return flow.Pipe{Bore: d, Length: 36 * metre, Roughness: 0.045 * mm} }
	s := System{
		Water: sea.Water{Density: 998, Viscosity: 1.002e-3}, Pump: Pump{Curve: c, Efficiency: []EfficiencyPoint{{0, 0.70}}},
		Main: flow.Pipe{Bore: 1 * metre}, Segments: []flow.Pipe{{Bore: 1 * metre}},
		Laterals: []Lateral{{Hose: pipe(40 * mm), Rise: 8 * metre}, {Hose: pipe(80 * mm), Rise: 8 * metre}},
	}
	r := solved(t, s)
	near(t, "40 mm", r.Laterals[0].Flow.M3S(), 0.00415, 0.00001)
	near(t, "80 mm", r.Laterals[1].Flow.M3S(), 0.02586, 0.00003)
	near(t, "both", r.Total.M3S(), 0.03001, 0.00004)
	near(t, "pump head", r.Pump.Head.Metres(), 19.06, 0.02)
	near(t, "shaft power", float64(r.Pump.Shaft), 8000, 1)
	if !r.Pump.Estimated {
		t.Error("a point on a guessed curve must say so")
	}
}

// Çengel & Cimbala, example 8-8: flow by gravity through one pipe; the source's
// surface for 6 L/s, by the exact Colebrook equation.
func TestGravity(t *testing.T) {
	s := System{
		Water: sea.Water{Density: 999.7, Viscosity: 1.307e-3}, Pump: Pump{Curve: steady(t, 31.82)}, Main: flow.Pipe{Bore: 1 * metre},
		Laterals: []Lateral{{
			Hose: flow.Pipe{Bore: 50 * mm, Length: 89 * metre, Roughness: 0.26 * mm, K: 0.5 + 2*0.3 + 0.2 + 1.06}, Rise: 4 * metre,
		}},
	}
	r := solved(t, s)
	near(t, "flow, L/s", r.Total.M3S()*1e3, 6.00, 0.002)
	near(t, "speed, m/s", r.Laterals[0].Speed.MS(), 3.0558, 0.001)
	f, _ := flow.Friction(116865, 0.26/50)
	near(t, "friction factor", f, 0.031519, 1e-6)
}

// Çengel & Cimbala, example 14-3: what stands at the inlet of a flooded pump.
func TestSuction(t *testing.T) {
	s := System{
		Water: sea.Water{Density: 997, Viscosity: 8.91e-4, Vapour: 3169},
		Suction: Suction{
			Pump: -1.219 * metre, Air: 101300, Alpha: 1.05, Strainer: 2, FootValve: 3,
			Pipe: flow.Pipe{Bore: 4 * measure.Inch, Length: 10.5 * measure.Foot, Roughness: 0.02 * measure.Inch, K: 2.4},
		},
	}
	for gpm, want := range map[float64]float64{300: 8.914, 400: 7.096, 500: 4.760, 600: 1.905} {
		n, err := s.NPSHAt(measure.Flow(gpm) * measure.GallonPerMinute)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "NPSH available, m", n.Available.Metres(), want, 0.01)
	}
	// A made-up pump that requires 1 m at 100 gpm and 4 m at 400: past the last
	// point told the line goes straight on, and is marked.
	s.Pump.NPSHRequired = []Point{{100 * measure.GallonPerMinute, 1 * metre}, {400 * measure.GallonPerMinute, 4 * metre}}
	for gpm, ends := range map[float64]float64{300: 0, 400: 0, 500: 400} {
		n, err := s.NPSHAt(measure.Flow(gpm) * measure.GallonPerMinute)
		if err != nil || math.Abs(float64(n.Ends/measure.GallonPerMinute)-ends) > 1e-9 {
			t.Errorf("%g gpm: told up to %v, %v", gpm, n.Ends, err)
		}
		near(t, "NPSH required, m", n.Required.Metres(), gpm/100, 1e-9)
	}
}

// Affinity laws (Çengel & Cimbala, section 14-3): 80 % speed gives 0.8 of the
// flow at 0.64 of the head, so that 10 m at 10 L/s become 6.4 m at 8 L/s. The
// power's 0.512 is held by TestSlowedPump.
func TestAffinity(t *testing.T) {
	c, err := CurveByPoints([]Point{{0, 12 * metre}, {0.01 * m3s, 10 * metre}, {0.02 * m3s, 4 * metre}})
	if err != nil {
		t.Fatal(err)
	}
	slow, err := c.AtSpeed(0.8)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "head of the slowed curve at 0.8 of the flow", slow.Head(0.008*m3s).Metres(), 6.4, 1e-9)
}

// Q·H = ηP/(ρg), worked out: 5 hp at an efficiency of 0.65 in sea water.
func TestEstimate(t *testing.T) {
	c, err := Estimate(5*measure.Horsepower, 0.65, 1025, 30*metre)
	if err != nil {
		t.Fatal(err)
	}
	for head, gpm := range map[float64]float64{6: 637, 10: 382, 15: 255} {
		near(t, "head at the flow", c.Head(measure.Flow(gpm)*measure.GallonPerMinute).Metres(), head, 0.01*head)
	}
	near(t, "shut-off", c.Head(0).Metres(), 30, 1e-12)
}

// Water that falls through a pump faster than its curve goes is not lifted by
// it: the motor's draw, ρgQH over the efficiencies, would be below nothing and
// is not told.
func TestNoPowerPastTheCurve(t *testing.T) {
	c, err := CurveByPoints([]Point{{Flow: 0, Head: 5 * metre}, {Flow: 60 * measure.LitrePerMinute, Head: 1 * metre}})
	if err != nil {
		t.Fatal(err)
	}
	s := System{
		Water: sea.Water{Density: 999.7, Viscosity: 1.307e-3}, Pump: Pump{Curve: c, Efficiency: []EfficiencyPoint{{Flow: 0, Efficiency: 0.6}}, Motor: 0.8}, Main: flow.Pipe{Bore: 1 * metre},
		Laterals: []Lateral{{Hose: flow.Pipe{Bore: 50 * mm, Length: 5 * metre, Roughness: 0.26 * mm, K: 1}, Rise: -6 * metre}},
	}
	r := solved(t, s)
	if !r.Pump.Beyond || r.Pump.Head >= 0 {
		t.Fatalf("the pump is not past its curve: %+v", r.Pump)
	}
	if r.Pump.Shaft != 0 || r.Pump.Input != 0 || r.Pump.KWhPerYear(24) != 0 {
		t.Errorf("draws %v W, %v kWh a year", float64(r.Pump.Input), r.Pump.KWhPerYear(24))
	}
}
