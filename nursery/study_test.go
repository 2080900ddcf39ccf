package nursery

import (
	"encoding/json"
	"math"
	"math/rand"
	"reflect"
	"strings"
	"testing"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/manifold"
	"silowright/nursery/seed"
)

const gpm = measure.GallonPerMinute

// pumped is a farm with a pump of the curve given, its water level with the
// ground and pipes that nobody described.
func pumped(points ...manifold.Point) Farm {
	f := DefaultFarm()
	f.Supply.BelowKnown = true
	f.Pump.Points = points
	return f
}

func study(t testing.TB, counts []Count, f Farm) Study {
	t.Helper()
	s, err := Solve(counts, f)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Ten silos from one pump rated 1,050 gpm get 105 gpm, 397 L/min, each
// (floating-upweller guide, Cornell Cooperative Extension): with a manifold
// that loses nothing ten equal silos share to the last digit. The rated flow is
// a steep curve through 1,050 gpm.
func TestTenSilosShareOnePump(t *testing.T) {
	f := pumped(manifold.Point{Flow: 1049.9 * gpm, Head: 100 * metre}, manifold.Point{Flow: 1050 * gpm, Head: 3 * metre}, manifold.Point{Flow: 1050.1 * gpm, Head: 0})
	f.Lateral.HoseBore = 3 * inch
	f.Lateral.Hose = 1 * inch
	s := study(t, []Count{{invented(t), 10, 0}}, f)
	for _, o := range s.Silos {
		if g := o.Flow.GPM(); math.Abs(g-105) > 0.02 || math.Abs(o.Flow.LMin()-397) > 0.6 {
			t.Errorf("silo %d: %.3f gpm, want 105 (397 L/min)", o.Place, g)
		}
	}
	if s.Evenness < 1-1e-9 || math.Abs(s.Total.GPM()-1050) > 0.2 {
		t.Errorf("evenness %v, total %v gpm", s.Evenness, s.Total.GPM())
	}
}

// One silo alone: what the pump's curve and the silo's own head agree on, by
// bisection outside the manifold. The hose is as wide and short as to lose
// nothing but the tee's two velocity heads.
func TestOneSiloByHand(t *testing.T) {
	f := pumped()
	f.Pump.Points = nil
	f.Pump.ShutOff, f.Pump.Duty = 4*metre, manifold.Point{Flow: 300 * measure.LitrePerMinute, Head: 1 * metre}
	f.Supply.Below = 500
	silo := invented(t)
	s := study(t, []Count{{silo, 1, 0}}, f)
	r := OfSilo(silo, f.stocking(silo, false))
	short := func(q measure.Flow) float64 {
		x := float64(q / (300 * measure.LitrePerMinute))
		have := 4000 - 3000*x*x
		h, _ := r.Head(s.Water, q)
		hose, _ := flow.PipeLoss(s.Water, flow.Pipe{Bore: r.Inlet.Bore, Length: 3 * measure.Foot, Roughness: flow.HoseRoughness, K: 2 + 0.05}, q)
		rise := silo.Seat.FootHeight + silo.OutletInvert() + 500
		return have - float64(h+hose+rise)
	}
	low, high := measure.Flow(0), 300*measure.LitrePerMinute
	for range 60 {
		if mid := (low + high) / 2; short(mid) > 0 {
			low = mid
		} else {
			high = mid
		}
	}
	if got := s.Silos[0].Flow; math.Abs(float64(got/low)-1) > 1e-4 {
		t.Errorf("%v L/min, want %v", got.LMin(), low.LMin())
	}
	if s.Silos[0].Flow != s.Total || s.Evenness != 1 {
		t.Errorf("total %v, evenness %v", s.Total.LMin(), s.Evenness)
	}
	// ρgQH/(η·ηm) for 24 h a day, 365 days
	p := s.Pumping.Result.Pump
	kwh := float64(s.Water.Density) * 9.80665 * p.Flow.M3S() * p.Head.Metres() / (0.65 * 0.85) / 1000 * 24 * 365
	if math.Abs(s.Pumping.KWhAYear-kwh) > 1e-6*kwh {
		t.Errorf("%.1f kWh a year, want %.1f", s.Pumping.KWhAYear, kwh)
	}
}

// Two equal silos on a manifold that loses nothing get equal flows; each on a
// narrow pipe the far one gets less, and the sum is the pump's.
func TestTwoSilos(t *testing.T) {
	f := pumped(manifold.Point{Flow: 0, Head: 5 * metre}, manifold.Point{Flow: 400 * measure.LitrePerMinute, Head: 2 * metre})
	s := study(t, []Count{{invented(t), 2, 0}}, f)
	if a, b := s.Silos[0].Flow, s.Silos[1].Flow; math.Abs(float64(a/b)-1) > 1e-9 {
		t.Errorf("%v and %v L/min", a.LMin(), b.LMin())
	}
	f.Manifold.Pipe, f.Manifold.Spacing = geometry.PipeRef{Size: "1 1/2"}, 10*metre
	s = study(t, []Count{{invented(t), 2, 0}}, f)
	a, b := s.Silos[0].Flow, s.Silos[1].Flow
	if b >= a || math.Abs(float64((a+b)/s.Pumping.Result.Total)-1) > 1e-9 {
		t.Errorf("near %v, far %v, pump %v L/min", a.LMin(), b.LMin(), s.Pumping.Result.Total.LMin())
	}
	if e := float64(b / ((a + b) / 2)); math.Abs(s.Evenness-e) > 1e-12 {
		t.Errorf("evenness %v, want %v", s.Evenness, e)
	}
	if s.Least != 1 || s.Most != 0 {
		t.Errorf("least %d, most %d", s.Least, s.Most)
	}
}

// What a pump must give, taken for a pump of just that duty, gives every silo
// its flow.
func TestAskedDutyGivesTheFlow(t *testing.T) {
	f := DefaultFarm()
	f.Supply.Each, f.Supply.BelowKnown, f.Supply.Below = 60*measure.LitrePerMinute, true, 1200
	f.Manifold.Pipe = geometry.PipeRef{Size: "4"}
	counts := []Count{{invented(t), 12, 3}}
	a := study(t, counts, f).Asks
	if a == nil || math.Abs(a.Total.LMin()-720) > 1e-9 {
		t.Fatalf("%+v", a)
	}
	f.Pump.ShutOff, f.Pump.Duty = a.Head*2, manifold.Point{Flow: a.Total, Head: a.Head}
	s := study(t, counts, f)
	if e := s.Pumping.MostEven; math.Abs(float64(e/f.Supply.Each)-1) > 1e-3 {
		t.Errorf("that pump gives %v L/min each, want 60", e.LMin())
	}
}

// The tabled head lies within half a millimetre of the silo's own and never
// falls.
func TestHeadTable(t *testing.T) {
	f := DefaultFarm()
	f.Bed.PipeMass = 1
	w, _ := f.water()
	for _, piped := range []bool{false, true} {
		s := flow.InWater{Silo: OfSilo(invented(t), f.stocking(invented(t), piped)), Water: w}
		table := tableOf(s)
		last := measure.Length(0)
		for q := 0.05; q < 2990; q *= 1.013 {
			want, _ := s.Head(measure.Flow(q) * measure.LitrePerMinute)
			got, slope := table.Head(measure.Flow(q) * measure.LitrePerMinute)
			if d := math.Abs(float64(got - want)); d > 0.5+2e-4*float64(want) && q > 0.2 {
				t.Errorf("piped %v, %.2f L/min: %.3f mm, want %.3f", piped, q, got.MM(), want.MM())
			}
			if got < last || slope < 0 {
				t.Errorf("piped %v: head falls at %.2f L/min", piped, q)
			}
			last = got
		}
	}
}

// randomFarm is any farm that the keys allow, with most keys left alone.
func randomFarm(r *rand.Rand) Farm {
	f := DefaultFarm()
	pick := func(l ...string) string { return l[r.Intn(len(l))] }
	f.Supply.Salinity, f.Supply.Temperature = 42*r.Float64(), measure.Temperature(40*r.Float64())
	if r.Intn(2) == 0 {
		f.Supply.Each = measure.Flow(math.Pow(10, 3.4*r.Float64())) * measure.LitrePerMinute
	}
	if r.Intn(3) == 0 {
		f.Supply.Hose = flow.Hose{Bore: measure.Length(20 + 80*r.Float64()), Length: measure.Length(5000 * r.Float64()), Drop: measure.Length(2000*r.Float64() - 500)}
	}
	f.Supply.MeshFouled, f.Supply.ScreenFouled = 0.99*r.Float64(), 0.99*r.Float64()
	f.Bed.PipeMass = measure.Mass(4 * r.Float64())
	if r.Intn(2) == 0 {
		f.Bed.Size = measure.Length(0.2 + 10*r.Float64())
	}
	if r.Intn(4) > 0 {
		f.Supply.BelowKnown, f.Supply.Below = true, measure.Length(8000*r.Float64()-3000)
	}
	if f.Supply.BelowKnown {
		head, q := measure.Length(500+20000*r.Float64()), measure.Flow(math.Pow(10, 1+3*r.Float64()))*measure.LitrePerMinute
		switch r.Intn(4) {
		case 0:
			f.Pump.Points = []manifold.Point{{Flow: 0, Head: head}, {Flow: q, Head: head * 0.8}, {Flow: 2 * q, Head: head * 0.2}}
			f.Pump.NPSH = []manifold.Point{{Flow: 0, Head: 500}, {Flow: q, Head: 2000}, {Flow: 2 * q, Head: 6000}}
		case 1:
			f.Pump.ShutOff, f.Pump.Duty = head, manifold.Point{Flow: q, Head: head / 2}
		case 2:
			f.Pump.Power = measure.Power(50 + 5000*r.Float64())
		}
	}
	if r.Intn(2) == 0 {
		f.Suction = Suction{Lift: measure.Length(6000*r.Float64() - 2000), Length: measure.Length(1 + 9000*r.Float64()), Pipe: geometry.PipeRef{Size: pick("2", "3", "90")}, Bends: r.Intn(4), FootValve: FootValve(pick("none", "hinged", "poppet"))}
	}
	if r.Intn(2) == 0 {
		f.Main = Main{Pipe: geometry.PipeRef{Size: pick("2", "4", "90")}, Length: measure.Length(30000 * r.Float64()), Bends: r.Intn(5), Highest: measure.Length(3000 * r.Float64())}
	}
	if r.Intn(3) > 0 {
		f.Manifold = Manifold{Pipe: geometry.PipeRef{Size: pick("1 1/2", "3", "6", "63")}, Height: measure.Length(1500 * r.Float64()), Feed: Feed(pick("end", "centre"))}
	}
	f.Lateral.ValveOpen = 0.05 + 0.95*r.Float64()
	if r.Intn(3) == 0 {
		f.Lateral.HoseBore, f.Lateral.BarbBore = measure.Length(15+60*r.Float64()), measure.Length(10+60*r.Float64())
	}
	f.Failure = Failing{r.Intn(2) == 0, r.Intn(2) == 0, r.Intn(2) == 0}
	if r.Intn(3) == 0 {
		p := seed.Default(seed.Species(r.Intn(4)))
		p.Count, p.Size = 1000+r.Intn(3e6), seed.Shell(1+2*r.Float64())
		f.Plan = &p
	}
	return f
}

// Whatever the farm, water that goes in comes out, evenness is a share, all
// that is said is said in numbers, and stops rest on a flow that was told.
func TestRandomFarms(t *testing.T) {
	r := rand.New(rand.NewSource(5))
	blue := invented(t)
	red := invented(t, func(s *geometry.Spec) { s.Drum.Label = "red"; s.Outlet.BelowRim = 8 * inch })
	for k := range 200 {
		f := randomFarm(r)
		counts := []Count{{blue, 1 + r.Intn(9), r.Intn(6)}, {red, r.Intn(4), r.Intn(3)}}
		s, err := Solve(counts, f)
		if err != nil {
			if strings.Contains(err.Error(), "\n") || !strings.Contains(err.Error(), "hint") {
				t.Errorf("%d: %v", k, err)
			}
			if !strings.HasPrefix(err.Error(), "seed.") {
				t.Errorf("%d: a farm in all ranges was refused: %v", k, err)
			}
			continue
		}
		if len(s.Silos) != counts[0].Drum+counts[1].Drum {
			t.Fatalf("%d: %d silos", k, len(s.Silos))
		}
		sum := measure.Flow(0)
		for _, o := range s.Silos {
			sum += o.Flow
		}
		if !(s.Evenness >= 0 && s.Evenness <= 1) || s.Total > 0 && math.Abs(float64(sum/s.Total)-1) > 1e-9 {
			t.Errorf("%d: evenness %v, sum %v of %v", k, s.Evenness, sum, s.Total)
		}
		if p := s.Pumping; p != nil && p.Result.Total > 0 && math.Abs(float64(sum/p.Result.Pump.Flow)-1) > 1e-9 {
			t.Errorf("%d: the pump's %v against %v", k, p.Result.Pump.Flow, sum)
		}
		// JSON refuses NaN and infinity anywhere.
		if _, err := json.Marshal(s); err != nil {
			t.Errorf("%d: %v", k, err)
		}
		if again, err := Solve(counts, f); k%50 == 0 && (err != nil || !reflect.DeepEqual(s, again)) {
			t.Errorf("%d: another answer the second time", k)
		}
		seen := map[string]bool{}
		for _, u := range []measure.Unit{measure.UnitInch, measure.UnitMM} {
			for _, d := range s.Findings(u) {
				if d.Says == "" || strings.Contains(d.Says, "out of range") || strings.Contains(d.Says, "NaN") || strings.Contains(d.Says, "%!") ||
					math.IsNaN(d.Measured.Value) || math.IsInf(d.Measured.Value, 0) || math.IsNaN(d.Limit.Value) || math.IsInf(d.Limit.Value, 0) ||
					d.Key == "" || d.Basis.Kind == "" {
					t.Errorf("%d: %+v", k, d)
				}
				if d.Level == geometry.Stop && strings.HasPrefix(d.ID, "water.") && d.ID != "water.flow" && s.soft() {
					t.Errorf("%d: %s stops by an unsure flow", k, d.ID)
				}
				seen[d.ID] = true
			}
		}
		if !s.Given.Pump && (seen["pump.curve"] || seen["manifold.evenness"] || seen["pump.npsh"]) {
			t.Errorf("%d: something is said of a pump that nobody described", k)
		}
	}
}
