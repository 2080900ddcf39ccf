package manifold

import (
	"fmt"
	"math"
	"math/rand"
	"testing"

	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/sea"
)

// random is a system such as a nursery might have, with n laterals; wild ones
// have sizes from anywhere, some silos too high and some valves shut.
func random(r *rand.Rand, n int, wild bool) System {
	between := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	logs := func(a, b float64) float64 { return a * math.Pow(b/a, r.Float64()) }
	pipe := func(bore, length float64) flow.Pipe {
		p := flow.Pipe{Bore: measure.Length(bore), Length: headOf(length), K: between(0, 4)}
		p.Roughness = measure.Length(logs(1e-3, 0.3))
		if r.Intn(4) == 0 {
			p.Roughness = 0
		}
		return p
	}
	s := System{
		Water: sea.Water{Density: measure.Density(between(1000, 1030)), Viscosity: measure.Viscosity(between(8e-4, 1.7e-3)), Vapour: 2000},
		Main:  pipe(between(60, 150), between(0.5, 60)), Feed: 0, Segments: make([]flow.Pipe, n-1), Laterals: make([]Lateral, n),
	}
	s.Suction = Suction{Source: headOf(between(-2, 0)), Pump: headOf(between(-2, 3)), Pipe: pipe(between(60, 150), between(1, 10)), Strainer: 2, FootValve: 3}
	if r.Intn(3) == 0 {
		s.Feed = r.Intn(n)
	}
	head, most := between(5, 20), between(0.001, 0.004)*float64(min(n, 60))
	switch r.Intn(3) {
	case 0:
		c, err := CurveByPoints([]Point{{0, headOf(head)}, {flowOf(most / 3), headOf(head * 0.95)}, {flowOf(most * 0.8), headOf(head * 0.6)}, {flowOf(most), headOf(head * 0.2)}})
		if err != nil {
			panic(err)
		}
		s.Pump.Curve = c
	case 1:
		c, err := CurveByDuty(headOf(head), Point{flowOf(most / 2), headOf(head * 0.7)})
		if err != nil {
			panic(err)
		}
		s.Pump.Curve = c
	default:
		c, err := Estimate(measure.Power(most/2*head*gravity*1025), 0.65, 1025, headOf(2*head))
		if err != nil {
			panic(err)
		}
		s.Pump.Curve = c
	}
	for i := range s.Segments {
		s.Segments[i] = pipe(between(50, 110), between(0.3, 2))
	}
	for i := range s.Laterals {
		l := Lateral{
			Name: fmt.Sprint("silo ", i+1), Branch: 2, Hose: pipe(between(19, 52), between(0.3, 3)),
			Valve: Valve{K: between(0.05, 3)}, Barb: Fitting{K: between(0, 1), Bore: measure.Length(between(15, 45))}, Rise: headOf(between(0.5, 0.8)),
			Silo: polynomial{headOf(between(0, 0.1)), headOf(between(0, 0.2)), headOf(between(0, 0.2)), 0.002 * m3s},
		}
		if wild {
			l.Valve.K = logs(0.05, 1e6)
			l.Valve.Shut = r.Intn(6) == 0
			if r.Intn(4) == 0 {
				l.Rise = headOf(between(-3, head*1.5))
			}
			if r.Intn(5) == 0 {
				l.Hose.Length = 0
			}
			if i > 0 && r.Intn(5) == 0 {
				s.Segments[i-1] = pipe(logs(8, 300), logs(0.01, 300))
			}
			if i > 0 && r.Intn(9) == 0 {
				s.Segments[i-1] = flow.Pipe{Bore: 60}
			}
		}
		s.Laterals[i] = l
	}
	return s
}

// Mass is kept at every tee and energy round every path, within 1e-9 of the
// pump's flow and head, for whatever system.
func TestBalance(t *testing.T) {
	r := rand.New(rand.NewSource(5))
	starved := 0
	for range 800 {
		s := random(r, 1+r.Intn(40), r.Intn(2) == 0)
		starved += checkBalance(t, s, solved(t, s))
	}
	if starved < 100 {
		t.Errorf("%d starved silos: the systems try too little", starved)
	}
}

// checkBalance reckons both anew from the printed result, and returns the
// number of starved silos.
func checkBalance(t *testing.T, s System, r Result) (starved int) {
	t.Helper()
	scale := 1 + r.Pump.Head.Abs().Metres()
	n := len(s.Laterals)
	for i, l := range s.Laterals {
		f := r.Laterals[i]
		// Along the pipe from the source to the silo.
		h := s.Suction.Source + r.Pump.Head - r.Suction.Loss - r.Main.Loss
		for k := s.Feed; k < i; k++ {
			h -= r.Segments[k].Loss
		}
		for k := s.Feed; k > i; k-- {
			h -= r.Segments[k-1].Loss
		}
		switch {
		case f.Flow < 0:
			t.Fatalf("%s: flow %g m³/s", f.Name, f.Flow.M3S())
		case f.Shut != l.Valve.Shut || f.Shut && f.Flow != 0:
			t.Fatalf("%s: shut %v, flow %g", f.Name, f.Shut, f.Flow.M3S())
		case f.Starved:
			starved++
			still, _ := l.Silo.Head(0)
			if f.Flow != 0 || (h-l.Rise-still).Metres() > 1e-9*scale {
				t.Fatalf("%s: starved with %g m to spare", f.Name, (h - l.Rise - still).Metres())
			}
		case !f.Shut:
			left := h - l.Rise - f.Silo - f.Valve - f.Hose - f.Fittings
			if left.Abs().Metres() > 1e-9*scale {
				t.Fatalf("%s of %d: energy off by %g m", f.Name, n, left.Metres())
			}
			silo, _ := l.Silo.Head(f.Flow)
			v := f.Flow.M3S() / (math.Pi / 4 * math.Pow(l.Hose.Bore.Metres(), 2))
			if got, want := f.Silo.Metres(), silo.Metres(); math.Abs(got-want) > 1e-12*(1+want) {
				t.Fatalf("%s: silo's head %g, want %g", f.Name, got, want)
			}
			if got, want := f.Valve.Metres(), l.Valve.K*v*v/(2*gravity); math.Abs(got-want) > 1e-9*(want+1e-9) {
				t.Fatalf("%s: valve's loss %g, want %g", f.Name, got, want)
			}
		}
		in := measure.Flow(0)
		if i == s.Feed {
			in = r.Main.Flow
		}
		out := f.Flow
		if i > 0 {
			if i > s.Feed {
				in += r.Segments[i-1].Flow
			} else {
				out += r.Segments[i-1].Flow
			}
		}
		if i < n-1 {
			if i < s.Feed {
				in += r.Segments[i].Flow
			} else {
				out += r.Segments[i].Flow
			}
		}
		if math.Abs(float64(in-out)) > 1e-9*float64(r.Total) {
			t.Fatalf("tee %d: %g in, %g out", i+1, in.M3S(), out.M3S())
		}
	}
	return starved
}

// Shutting one valve never lowers another silo's flow.
func TestShutting(t *testing.T) {
	r := rand.New(rand.NewSource(6))
	for range 250 {
		s := random(r, 2+r.Intn(20), r.Intn(2) == 0)
		before := solved(t, s)
		i := r.Intn(len(s.Laterals))
		s.Laterals[i].Valve.Shut = true
		after := solved(t, s)
		for k := range s.Laterals {
			if k == i {
				continue
			}
			was, is := float64(before.Laterals[k].Flow), float64(after.Laterals[k].Flow)
			if is < was-1e-9*(was+1e-3*float64(before.Total)) {
				t.Fatalf("silo %d falls from %g to %g when %d of %d is shut", k, was, is, i, len(s.Laterals))
			}
		}
		if after.Total > before.Total*(1+1e-9) {
			t.Fatalf("the whole rises from %v to %v", before.Total, after.Total)
		}
	}
}

// More head gives every silo more: a higher source, or the pump turned faster.
func TestFlowRisesWithHead(t *testing.T) {
	r := rand.New(rand.NewSource(7))
	for k := range 250 {
		s := random(r, 1+r.Intn(20), r.Intn(2) == 0)
		before := solved(t, s)
		if k%2 == 0 {
			s.Suction.Source += headOf(0.01 + r.Float64())
		} else {
			faster, err := s.Pump.Curve.AtSpeed(1.01 + 0.3*r.Float64())
			if err != nil {
				t.Fatal(err)
			}
			s.Pump.Curve = faster
		}
		after := solved(t, s)
		for k := range s.Laterals {
			was, is := float64(before.Laterals[k].Flow), float64(after.Laterals[k].Flow)
			if is < was*(1-1e-9) || was > 0 && is <= was {
				t.Fatalf("silo %d goes from %g to %g with more head", k, was, is)
			}
		}
	}
}
