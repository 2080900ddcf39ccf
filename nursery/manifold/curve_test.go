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

// A curve by points passes them, never rises between or beyond them, and its
// slope is that of its heads.
func TestCurveByPoints(t *testing.T) {
	r := rand.New(rand.NewSource(3))
	for range 300 {
		var points []Point
		q, h := 0.0, 5+20*r.Float64()
		for range 2 + r.Intn(8) {
			points = append(points, Point{flowOf(q), headOf(h)})
			q += 1e-4 + 0.01*r.Float64()
			if r.Intn(4) > 0 {
				h *= r.Float64()
			}
		}
		c, err := CurveByPoints(points)
		if points[0].Head == points[len(points)-1].Head {
			if err == nil {
				t.Fatal("a level curve is taken")
			}
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range points {
			near(t, "head at a point", c.Head(p.Flow).Metres(), p.Head.Metres(), 1e-12*(1+p.Head.Metres()))
		}
		end := points[len(points)-1].Flow.M3S() * 1.5
		last, _ := c.at(0)
		for i := 1; i <= 3000; i++ {
			x := end * float64(i) / 3000
			h, slope := c.at(x)
			if h > last+1e-12 || slope > 0 {
				t.Fatalf("the curve rises at %g: %g over %g, slope %g", x, h, last, slope)
			}
			d := end * 1e-7
			up, _ := c.at(x + d)
			down, _ := c.at(x - d)
			if num := (up - down) / (2 * d); math.Abs(num-slope) > 1e-3*(math.Abs(slope)+10) && !nearPoint(points, x, 2*d) {
				t.Fatalf("slope at %g: %g, by differences %g", x, slope, num)
			}
			last = h
		}
		if !c.Beyond(flowOf(end)) || c.Beyond(points[len(points)-1].Flow) {
			t.Fatal("beyond the last point must be said, at it not")
		}
	}
}

func nearPoint(points []Point, x, d float64) bool {
	for _, p := range points {
		if math.Abs(p.Flow.M3S()-x) <= d {
			return true
		}
	}
	return false
}

// The pump slowed by the affinity laws in a system without rise runs at the
// matching point, when the loss goes by the square of the flow (Çengel &
// Cimbala, section 14-3); with a rise it gives less than that.
func TestSlowedPump(t *testing.T) {
	s := cove(t, 8)
	s.Suction.Pipe = flow.Pipe{}
	s.Suction.Strainer, s.Suction.FootValve = 0, 0
	square := func(p *flow.Pipe) { p.Length, p.K = 0, 3 }
	square(&s.Main)
	for i := range s.Segments {
		square(&s.Segments[i])
	}
	for i := range s.Laterals {
		square(&s.Laterals[i].Hose)
		s.Laterals[i].Rise, s.Laterals[i].Silo = 0, nil
	}
	fast := solved(t, s)
	full := s.Pump.Curve
	var err error
	if s.Pump.Curve, err = full.AtSpeed(0.8); err != nil {
		t.Fatal(err)
	}
	slow := solved(t, s)
	near(t, "flow ratio", float64(slow.Total/fast.Total), 0.8, 1e-9)
	near(t, "head ratio", float64(slow.Pump.Head/fast.Pump.Head), 0.64, 1e-9)
	near(t, "water power ratio", float64(slow.Pump.Water/fast.Pump.Water), 0.512, 1e-9)
	for i := range s.Laterals {
		s.Laterals[i].Rise = 2 * metre
	}
	lifted := solved(t, s)
	s.Pump.Curve = full
	if ratio := float64(lifted.Total / solved(t, s).Total); ratio >= 0.79 {
		t.Errorf("with a rise the flow falls to %v, want less than the ratio of speeds", ratio)
	}
}

// What is refused, and that the message begins with the key and ends in a hint.
func TestRefuses(t *testing.T) {
	nan := math.NaN()
	tests := []struct {
		key    string
		change func(*System)
	}{
		{"water.density", func(s *System) { s.Water.Density = 0 }},
		{"water.density", func(s *System) { s.Water.Density = measure.Density(nan) }},
		{"water.viscosity", func(s *System) { s.Water.Viscosity = 0 }},
		{"water.vapour", func(s *System) { s.Water.Vapour = -1 }},
		{"pump", func(s *System) { s.Pump.Curve = Curve{} }},
		{"pump.motor", func(s *System) { s.Pump.Motor = 1.2 }},
		{"pump.efficiency.1", func(s *System) { s.Pump.Efficiency = []EfficiencyPoint{{0, 0}} }},
		{"pump.efficiency.2.flow", func(s *System) { s.Pump.Efficiency = []EfficiencyPoint{{1e6, .5}, {1e6, .5}} }},
		{"pump.npsh", func(s *System) { s.Pump.NPSHRequired = []Point{{0, 1}} }},
		{"suction.source", func(s *System) { s.Suction.Source = measure.Length(math.Inf(1)) }},
		{"suction.pump", func(s *System) { s.Suction.Pump = measure.Length(nan) }},
		{"suction.pipe.bore", func(s *System) { s.Suction.Pipe.Bore = 0 }},
		{"suction.strainer", func(s *System) { s.Suction.Strainer = -1 }},
		{"suction.foot_valve", func(s *System) { s.Suction.FootValve = nan }},
		{"suction.air", func(s *System) { s.Suction.Air = -1 }},
		{"suction.alpha", func(s *System) { s.Suction.Alpha = 0.5 }},
		{"main.bore", func(s *System) { s.Main.Bore = 0 }},
		{"main.roughness", func(s *System) { s.Main.Roughness = s.Main.Bore }},
		{"segments", func(s *System) { s.Segments = nil }},
		{"segments.2.length", func(s *System) { s.Segments[1].Length = -1 }},
		{"laterals", func(s *System) { s.Laterals = nil }},
		{"feed", func(s *System) { s.Feed = 3 }},
		{"laterals.3.hose.bore", func(s *System) { s.Laterals[2].Hose.Bore = 0 }},
		{"laterals.1.hose.length", func(s *System) { s.Laterals[0] = Lateral{Hose: flow.Pipe{Bore: 40}} }},
		{"laterals.1.valve.k", func(s *System) { s.Laterals[0].Valve.K = nan }},
		{"laterals.1.valve.wide", func(s *System) { s.Laterals[0].Valve.Wide = -1 }},
		{"laterals.1.valve.bore", func(s *System) { s.Laterals[0].Valve.Bore = -1 }},
		{"laterals.1.barb.k", func(s *System) { s.Laterals[0].Barb.K = -1 }},
		{"laterals.1.barb.bore", func(s *System) { s.Laterals[0].Barb.Bore = 0.1 }},
		{"laterals.1.branch", func(s *System) { s.Laterals[0].Branch = -1 }},
		{"laterals.1.rise", func(s *System) { s.Laterals[0].Rise = 1e9 }},
		{"laterals.2.silo", func(s *System) { s.Laterals[1].Silo = polynomial{static: measure.Length(nan)} }},
		{"laterals.2.silo", func(s *System) { s.Laterals[1].Silo = polynomial{square: measure.Length(math.Inf(-1)), at: 1} }},
	}
	for _, tt := range tests {
		t.Run(tt.key, func(t *testing.T) {
			s := cove(t, 3)
			tt.change(&s)
			_, err := Solve(s)
			refused(t, err, tt.key)
			_, err = MostEven(s)
			refused(t, err, tt.key)
		})
	}
}

func refused(t *testing.T, err error, key string) {
	t.Helper()
	if err == nil || !strings.HasPrefix(err.Error(), key+": ") || !strings.Contains(err.Error(), "; hint: ") || strings.Contains(err.Error(), "NaN") {
		t.Errorf("error %v, want one on %s with a hint", err, key)
	}
}

func TestRefusesCurves(t *testing.T) {
	p := func(q, h float64) Point { return Point{flowOf(q), headOf(h)} }
	for _, tt := range []struct {
		key    string
		points []Point
	}{
		{"pump.points", nil},
		{"pump.points", []Point{p(0, 5)}},
		{"pump.points", []Point{p(0, 5), p(1, 5)}},
		{"pump.points", []Point{p(0, 5), p(1, -5)}},
		{"pump.points.2.head", []Point{p(0, 5), p(0.5, 6), p(1, 1)}},
		{"pump.points.2.flow", []Point{p(0, 5), p(0, 4)}},
		{"pump.points.1.flow", []Point{p(-1, 5), p(0, 4)}},
		{"pump.points.2.head", []Point{p(0, 5), p(1, math.NaN())}},
	} {
		_, err := CurveByPoints(tt.points)
		refused(t, err, tt.key)
	}
	_, err := CurveByDuty(5*metre, p(1, 5))
	refused(t, err, "pump.duty.head")
	_, err = CurveByDuty(0, p(1, 5))
	refused(t, err, "pump.shut_off")
	_, err = Estimate(0, 0.5, 1025, 9*metre)
	refused(t, err, "pump.power")
	_, err = Estimate(1000, 5, 1025, 9*metre)
	refused(t, err, "pump.efficiency")
	_, err = Estimate(1000, 0.5, 1025, 0)
	refused(t, err, "pump.shut_off")
	_, err = Curve{}.AtSpeed(0)
	refused(t, err, "pump.speed")
	_, err = BallValve(2)
	refused(t, err, "valve.open")
	_, err = Throttle(cove(t, 3), 0)
	refused(t, err, "flow")
	_, err = PowerFailure(Standing{})
	refused(t, err, "silos")
	_, err = PowerFailure(Standing{Silos: []StandingSilo{{SeedFoot: 1}}})
	refused(t, err, "silos.1.seed.top")
}

// A silo whose head misbehaves, as no sound one does, is an answer or an error,
// never a hang: falling, jumping, and with a slope that is not its own.
func TestMisbehavingSilo(t *testing.T) {
	for name, head := range map[string]SiloHead{
		"falls":       headFunc(func(q float64) (float64, float64) { return 1 - 100*q, -100 }),
		"jumps":       headFunc(func(q float64) (float64, float64) { return math.Floor(q*2000) * 0.3, 0 }),
		"wrong slope": headFunc(func(q float64) (float64, float64) { return 200 * q, 1e9 }),
		"no slope":    headFunc(func(q float64) (float64, float64) { return 200 * q, 0 }),
	} {
		s := cove(t, 5)
		for i := range s.Laterals {
			s.Laterals[i].Silo = head
		}
		r, err := Solve(s)
		if err != nil {
			refused(t, err, "laterals")
			continue
		}
		if !finiteResult(r) {
			t.Errorf("%s: %+v", name, r)
		}
	}
}

type headFunc func(q float64) (h, slope float64)

func (f headFunc) Head(q measure.Flow) (measure.Length, float64) {
	h, m := f(q.M3S())
	return headOf(h), m * 1e-6
}

func finiteResult(r Result) bool {
	for _, x := range []float64{float64(r.Total), float64(r.Mean), r.Evenness, float64(r.MassError), float64(r.EnergyError),
		float64(r.Pump.Head), float64(r.Pump.Water), float64(r.Pump.Input), float64(r.NPSH.Available), float64(r.NPSH.Margin), float64(r.Main.Loss), float64(r.Suction.Loss)} {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	for _, f := range r.Laterals {
		for _, x := range []float64{float64(f.Flow), float64(f.Speed), float64(f.Tee), float64(f.Valve), float64(f.Hose), float64(f.Fittings), float64(f.Silo), float64(f.Short)} {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				return false
			}
		}
	}
	return true
}

// Whatever numbers are put in, what comes out is an error that names its key
// or finite flows that balance.
func FuzzSolve(f *testing.F) {
	f.Add(int64(1), uint8(3), uint8(0), 1.0, 40.0, 0.002)
	f.Add(int64(2), uint8(20), uint8(5), math.NaN(), -1.0, 1e300)
	f.Add(int64(3), uint8(1), uint8(9), 1e6, 1e-9, 0.0)
	f.Add(int64(4), uint8(30), uint8(7), 1e9, 999.0, 0.05)
	f.Fuzz(func(t *testing.T, seed int64, count, which uint8, a, b, c float64) {
		r := rand.New(rand.NewSource(seed))
		s := random(r, 1+int(count%40), seed%2 == 0)
		l := &s.Laterals[r.Intn(len(s.Laterals))]
		switch which % 11 {
		case 0:
			l.Valve.K, l.Hose.Bore, l.Barb.K = a, measure.Length(b), c
		case 1:
			l.Rise, l.Branch = headOf(a), b
		case 2:
			l.Silo = polynomial{headOf(a), headOf(b), headOf(c), 0.001 * m3s}
		case 3:
			s.Main.Length, s.Main.Bore, s.Main.K = headOf(a), measure.Length(b), c
		case 4:
			s.Water = sea.Water{Density: measure.Density(a), Viscosity: measure.Viscosity(c), Vapour: measure.Pressure(b)}
		case 5:
			if k, err := CurveByPoints([]Point{{0, headOf(a)}, {flowOf(c), headOf(b)}}); err == nil {
				s.Pump.Curve = k
			}
		case 6:
			if k, err := Estimate(measure.Power(a), c, 1025, headOf(b)); err == nil {
				s.Pump.Curve = k
			}
		case 7:
			if k, err := CurveByDuty(headOf(b), Point{flowOf(c), headOf(a)}); err == nil {
				s.Pump.Curve = k
			}
		case 8:
			s.Suction.Source, s.Suction.Pump, s.Suction.Alpha = headOf(a), headOf(b), c
		case 9:
			if v, err := BallValve(a); err == nil {
				l.Valve = v
			}
			l.Hose.Length, l.Hose.Roughness = headOf(b), measure.Length(c)
		case 10:
			s.Pump.Efficiency = []EfficiencyPoint{{flowOf(a), b}, {flowOf(c), 0.5}}
		}
		got, err := Solve(s)
		if err != nil {
			if !strings.Contains(err.Error(), ": ") || !strings.Contains(err.Error(), "; hint: ") || err == errUnsettled && which%11 != 2 {
				t.Fatalf("error %v", err)
			}
			return
		}
		if !finiteResult(got) {
			t.Fatalf("a number is not finite: %+v", got)
		}
		if which%11 != 2 {
			checkBalance(t, s, got)
		}
		if _, err := MostEven(s); err != nil && got.Least >= 0 && which%11 != 2 {
			t.Fatal(err)
		}
	})
}
