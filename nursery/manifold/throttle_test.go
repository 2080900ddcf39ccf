package manifold

import (
	"math"
	"math/rand"
	"strings"
	"testing"

	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/sea"
)

// cove is the invented nursery of the examples: twelve silos on one dead-ended
// manifold, all alike.
func cove(t testing.TB, n int) System {
	t.Helper()
	water, err := sea.At(30, 18)
	if err != nil {
		t.Fatal(err)
	}
	each := 100 * measure.LitrePerMinute
	curve, err := CurveByDuty(9*metre, Point{each * measure.Flow(n), 5 * metre})
	if err != nil {
		t.Fatal(err)
	}
	s := System{
		Water: water,
		Suction: Suction{
			Pump: 1 * metre, Pipe: flow.Pipe{Bore: 102, Length: 3 * metre, Roughness: 0.0015, K: 0.9}, Strainer: 2, FootValve: 2,
		},
		Pump: Pump{Curve: curve, Efficiency: []EfficiencyPoint{{0, 0.3}, {each * measure.Flow(n), 0.65}}, Motor: 0.85},
		Main: flow.Pipe{Bore: 102, Length: 12 * metre, Roughness: 0.0015, K: 2.7},
	}
	for i := range n {
		s.Laterals = append(s.Laterals, Lateral{
			Branch: 2, Valve: Valve{K: 0.05}, Hose: flow.Pipe{Bore: 40, Length: 1.2 * metre, Roughness: 0.01}, Barb: Fitting{K: 1.5, Bore: 34},
			Rise: 1.1 * metre, Silo: polynomial{0.5 * metre, 0.02 * metre, 0.05 * metre, each},
		})
		if i > 0 {
			s.Segments = append(s.Segments, flow.Pipe{Bore: 78, Length: 0.9 * metre, Roughness: 0.0015, K: 0.9})
		}
	}
	return s
}

// The rows of the published tables of loss coefficients: ball valve wide open
// 0.05, one third closed 5.5, two thirds closed 200.
func TestBallValve(t *testing.T) {
	for open, k := range map[float64]float64{1: 0.05, 2. / 3: 5.5, 1. / 3: 200} {
		v, err := BallValve(open)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "k", v.K, k, 1e-9*k)
		back, _ := BallOpening(v.K)
		near(t, "opening", back, open, 1e-9)
	}
	last := 0.0
	for i := 1000; i > 0; i-- {
		v, err := BallValve(float64(i) / 1000)
		if err != nil {
			t.Fatal(err)
		}
		if !(v.K > last) {
			t.Fatalf("open %d/1000: k %g, not over %g", i, v.K, last)
		}
		last = v.K
		back, ok := BallOpening(v.K)
		near(t, "opening", back, float64(i)/1000, 1e-9)
		if want := i >= 334; ok != want {
			t.Errorf("open %d/1000: in the table %v, want %v", i, ok, want)
		}
	}
	if v, err := BallValve(0); err != nil || !v.Shut {
		t.Errorf("closed: %v, %v", v, err)
	}
}

// Valves set as told give every silo the flow they were set for, by solving
// the whole anew: at the flow of the worst silo, and at the most that all can
// have, where one valve is left wide open.
func TestThrottle(t *testing.T) {
	r := rand.New(rand.NewSource(9))
	systems := []System{cove(t, 12), cove(t, 1), cove(t, 40)}
	for range 100 {
		systems = append(systems, random(r, 1+r.Intn(25), false))
	}
	tried := 0
	for _, s := range systems {
		if len(s.Laterals) > 3 {
			s.Laterals[2].Valve.Shut = true
		}
		for i := range s.Laterals {
			s.Laterals[i].Valve.K = 0.05
		}
		open := solved(t, s)
		worst := open.Laterals[open.Least].Flow
		if worst <= 0 {
			continue
		}
		tried++
		most, err := MostEven(s)
		if err != nil {
			t.Fatal(err)
		}
		if most < worst*(1-1e-9) {
			t.Fatalf("the most for all, %g, is under what the worst has with all open, %g", most.LMin(), worst.LMin())
		}
		for _, target := range []measure.Flow{worst, most, worst / 2} {
			set, err := Throttle(s, target)
			if err != nil {
				t.Fatal(err)
			}
			if !set.Possible {
				t.Fatalf("%g L/min of %g is not possible", target.LMin(), most.LMin())
			}
			got := solved(t, s.WithSettings(set))
			least := math.Inf(1)
			for i, f := range got.Laterals {
				if f.Shut {
					continue
				}
				least = math.Min(least, set.Settings[i].K)
				near(t, "flow, L/min", f.Flow.LMin(), target.LMin(), 1e-7*target.LMin())
			}
			near(t, "evenness", got.Evenness, 1, 1e-7)
			near(t, "pump's head", got.Pump.Head.Metres(), set.Pump.Head.Metres(), 1e-7)
			if target == most {
				near(t, "k of the worst at the most for all", least, 0.05, 1e-4)
			}
		}
		over, err := Throttle(s, most*1.01)
		if err != nil {
			t.Fatal(err)
		}
		if over.Possible {
			t.Errorf("more than the most for all is said to be possible")
		}
	}
	if tried < 50 {
		t.Errorf("only %d systems tried", tried)
	}
}

// In the cove the last silo gets the least, so it is the last whose valve is
// left alone, and valves are closed more the nearer they are to the pump.
func TestThrottleNearest(t *testing.T) {
	s := cove(t, 12)
	r := solved(t, s)
	if r.Least != 11 || r.Most != 0 {
		t.Fatalf("least %d, most %d", r.Least, r.Most)
	}
	most, err := MostEven(s)
	if err != nil {
		t.Fatal(err)
	}
	set, err := Throttle(s, most)
	if err != nil {
		t.Fatal(err)
	}
	for i := range 11 {
		a, b := set.Settings[i], set.Settings[i+1]
		if !(a.K > b.K) || !(a.Open < b.Open) || !a.Throttle || !a.InTable {
			t.Errorf("silo %d: k %g open %g, next %g open %g", i+1, a.K, a.Open, b.K, b.Open)
		}
	}
	if set.Settings[11].Throttle {
		t.Error("the last silo's valve must stay wide open")
	}
}

// The energy of a year: 1 kW drawn all day is 8760 kWh.
func TestYear(t *testing.T) {
	near(t, "kWh", PumpPoint{Input: 1000}.KWhPerYear(24), 8760, 1e-9)
	near(t, "kWh", PumpPoint{Input: 1500}.KWhPerYear(12), 6570, 1e-9)
	r := solved(t, cove(t, 12))
	p := r.Pump
	near(t, "water's power", float64(p.Water), 1021.6*9.80665*p.Flow.M3S()*p.Head.Metres(), 0.002*float64(p.Water))
	near(t, "input", float64(p.Input), float64(p.Water)/p.Efficiency/0.85, 1e-6)
	if p.Efficiency < 0.5 || p.Efficiency > 0.65 {
		t.Errorf("efficiency %v", p.Efficiency)
	}
}

// Drum silos on the manifold, each with its mesh, seed and outlet: the head
// each asks is that of its own study at the flow it gets.
func TestDrumSilos(t *testing.T) {
	s := cove(t, 20)
	for i := range s.Laterals {
		s.Laterals[i].Silo = drum(s.Water, measure.Mass(i%5))
		s.Laterals[i].Rise = 1.5 * metre
	}
	r := solved(t, s)
	checkBalance(t, s, r)
	for i, f := range r.Laterals {
		st, err := flow.Solve(s.Water, s.Laterals[i].Silo.(flow.InWater).Silo, f.Flow)
		if err != nil {
			t.Fatal(err)
		}
		if f.Silo < st.Level || f.Flow <= 0 {
			t.Errorf("silo %d: asks %v, stands at %v", i+1, f.Silo, st.Level)
		}
	}
	if r.Evenness < 0.1 || r.Evenness >= 1 {
		t.Errorf("evenness %v", r.Evenness)
	}
	s.Laterals[3].Silo = flow.InWater{Water: s.Water}
	_, err := Solve(s)
	if err == nil || !strings.HasPrefix(err.Error(), "laterals.4.silo: ") {
		t.Errorf("a silo of no size: %v", err)
	}
}

// drum is an invented drum silo with so much seed in it.
func drum(w sea.Water, seed measure.Mass) flow.InWater {
	return flow.InWater{Water: w, Silo: flow.Silo{
		Inlet:    flow.Pipe{Bore: 40.4, Length: 230, Roughness: flow.PlasticRoughness, K: 0.5},
		BaseBore: 573, Plenum: 180,
		FootInside: 527, FootOutside: 536.6, FootHeight: 57.2, Bore: 573, Outside: 582.5, Rim: 520,
		LatticeOpen: 0.72, Mesh: flow.Screen{Opening: 1.6, Open: 0.45, Fouled: 0.5}, MeshTop: 5.6, BedAcross: 517,
		Seed:   flow.Bed{Mass: seed, Size: 2, Density: 1500, Voidage: 0.5, Sphericity: 0.8},
		Outlet: flow.Outlet{Bore: 52, Length: 70, Roughness: flow.PlasticRoughness, Entrance: 0.5}, Invert: 342,
		Slot: flow.Slot{Length: 114.3, Height: 50.8, Corner: 25.4}, Slots: 2, Sill: 418.4,
		SeatAcross: 573, SeatHeight: 45, Body: 11, Solid: 6e5,
	}}
}
