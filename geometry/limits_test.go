package geometry

import (
	"math"
	"testing"

	"silowright/geometry/measure"
)

// Every limit a finding is held to, in inches, as a builder would have it:
// common practice, no source; the hand by the coupling notes of NIOSH Pub.
// 94-110 (from memory).
func TestLimitsOfChecks(t *testing.T) {
	thin := exampleSilo(t)
	loose := func(saw length) Level {
		h, err := SolveHole(HoleSpec{Pipe: PipeRef{"50", "pn10"}, Saw: saw, Joint: JointCouplings, Nipple: 60, Radius: 290, Wall: 4})
		if err != nil {
			t.Fatal(err)
		}
		return HoleChecks(h, measure.UnitMM)[0].Level
	}
	for _, c := range []struct {
		id   string
		want length
	}{
		{"outlet.saw-pipe", inch / 64}, {"outlet.saw-cover", inch / 8},
		{"outlet.rim", inch}, {"inlet.drain", inch}, {"outlet.hoop-1", inch / 4}, {"inlet.hoop", inch / 4},
		{"lattice.ledge", inch / 2}, {"mesh.disc-lattice", inch}, {"lattice.sag", thin.Spec.Lattice.Across / 20},
		{"handle.hand-length", 4.5 * inch}, {"handle.hand-height", 1.5 * inch}, {"handle.edge", 0.25 * inch},
		{"handle.sill-outlet", inch / 2}, {"inlet.head", inch / 4}, {"drain.foot", inch / 4},
		{"seat.nests", inch / 2}, {"seat.plenum", 2 * inch},
		{"pipe-silo.under", inch}, {"pipe-silo.round", inch / 2}, {"pipe-silo.drape", 1.5 * inch}, {"pipe-silo.rim", 2 * inch},
	} {
		near(t, c.id, length(find(t, thin, c.id).Limit.Value), c.want, 1e-9)
	}
	// 50 mm pipe, no clearance hole quoted: loose from 15 % of 50 mm and the
	// 1/64 in that counts as tight.
	if got := loose(50 + 7.5 + 0.39); got != OK {
		t.Errorf("7.89 mm over a 50 mm pipe: %v", got)
	}
	if got := loose(50 + 7.5 + 0.41); got != Caution {
		t.Errorf("7.91 mm over a 50 mm pipe: %v", got)
	}
	// Where one level turns into the next.
	for _, c := range []struct {
		id           string
		level        Level
		under, above func(*Spec)
	}{
		{"handle.hand-length", Stop, func(s *Spec) { s.Handle.Length = 3.249 * inch }, func(s *Spec) { s.Handle.Length = 3.251 * inch }},
		{"handle.hand-height", Stop, func(s *Spec) { s.Handle.Height = 0.999 * inch }, func(s *Spec) { s.Handle.Height = 1.001 * inch }},
		{"pipe-silo.drape", Stop, func(s *Spec) { s.Pipe.Drape = 0.749 * inch }, func(s *Spec) { s.Pipe.Drape = 0.751 * inch }},
	} {
		if a, b := find(t, exampleSilo(t, c.under), c.id).Level, find(t, exampleSilo(t, c.above), c.id).Level; a != c.level || b >= c.level {
			t.Errorf("%s: %v just under, %v just over", c.id, a, b)
		}
	}
	// The plenum: a drum cut so that 1 in is left, a hair less, a hair more.
	for _, c := range []struct {
		over length
		want Level
	}{{-0.001 * inch, Stop}, {0.001 * inch, Caution}} {
		s := thin
		s.Seat.Plenum = 1*inch + c.over
		for _, f := range seatChecks(&s) {
			if f.ID == "seat.plenum" && f.Level != c.want {
				t.Errorf("plenum of 1 in and %v: %v", c.over, f.Level)
			}
		}
	}
	// The clamp: 1/8 in to spare, a hair less, a hair more; the grommet's saw.
	for _, c := range []struct {
		spare length
		want  Level
	}{{0.124 * inch, Caution}, {0.126 * inch, OK}} {
		s := thin
		s.Pipe.ClampMin, s.Pipe.ClampMax = s.Pipe.ClampOver-inch, s.Pipe.ClampOver+c.spare
		for _, f := range pipeSiloChecks(&s) {
			if f.ID == "pipe-silo.clamp" && f.Level != c.want {
				t.Errorf("clamp with %v mm to spare: %v", c.spare, f.Level)
			}
		}
	}
	for saw, want := range map[length]Level{2*inch + 0.031*inch: OK, 2*inch + 0.032*inch: Stop} {
		h := Hole{Name: "outlet", Joint: JointGrommet, Saw: saw, Fits: Fits{Grommet: GrommetFit{Hole: 2 * inch, Known: true, Label: true}}}
		if got := HoleChecks(h, measure.UnitInch)[0].Level; got != want {
			t.Errorf("a saw of %v mm for a 2 in grommet: %v", saw, got)
		}
	}
}

// A bulkhead fitting: its flange 1/8 in past the hole, 1/16 in of thread to
// spare, half a gasket of gap squeezed away and two drawn flat (common practice,
// no source).
func TestBulkheadLimits(t *testing.T) {
	level := func(id string, b BulkheadFit) Level {
		h := Hole{Name: "outlet", Joint: JointBulkhead, Fits: Fits{Bulkhead: b}}
		for _, f := range HoleChecks(h, measure.UnitInch) {
			if f.ID == "outlet."+id {
				return f.Level
			}
		}
		t.Fatalf("no %s", id)
		return Stop
	}
	fit := func(gasket, gap, stack, grip, cover length) BulkheadFit {
		return BulkheadFit{BulkheadMeasure: BulkheadMeasure{Gasket: gasket, Grip: grip}, Gap: gap, Stack: stack, Cover: cover}
	}
	for _, c := range []struct {
		id   string
		fit  BulkheadFit
		want Level
	}{
		{"bulkhead-cover", fit(3, 0, 0, 0, 0.126*inch), OK}, {"bulkhead-cover", fit(3, 0, 0, 0, 0.124*inch), Caution},
		{"bulkhead-grip", fit(3, 0, 10, 10+0.0626*inch, 0), OK}, {"bulkhead-grip", fit(3, 0, 10, 10+0.0624*inch, 0), Caution},
		{"bulkhead-curve", fit(3, 1.49, 0, 0, 0), OK}, {"bulkhead-curve", fit(3, 1.51, 0, 0, 0), Caution},
		{"bulkhead-curve", fit(3, 5.99, 0, 0, 0), Caution}, {"bulkhead-curve", fit(3, 6.01, 0, 0, 0), Stop},
	} {
		if got := level(c.id, c.fit); got != c.want {
			t.Errorf("%s, %+v: %v, want %v", c.id, c.fit, got, c.want)
		}
	}
}

// A nipple fills nine tenths of both sockets: ok; under half: a stop (common
// practice, no source).
func TestNippleShares(t *testing.T) {
	for share, want := range map[float64]Level{0.899: Caution, 0.901: OK, 0.499: Stop, 0.501: Caution} {
		h := Hole{Name: "outlet", Joint: JointCouplings, Fits: Fits{Coupling: CouplingFit{Depth: 100, Fill: length(100 * share)}}}
		if got := nippleCheck(h, measure.UnitMM).Level; got != want {
			t.Errorf("%v of the socket: %v, want %v", share, got, want)
		}
	}
}

// From 15 to 85 % of a stopper's taper in the hole is a good seat (common
// practice, no source).
func TestStopperShares(t *testing.T) {
	for share, want := range map[float64]Level{0.149: Caution, 0.151: OK, 0.849: OK, 0.851: Caution, 1: Stop, 0: Stop} {
		h := Hole{Name: "drain", Joint: JointStopper, Diameter: 50, Fits: Fits{Stopper: StopperFit{Number: "11", Top: 56, Bottom: 48, Length: 25, SeatFraction: share}}}
		if got := stopperCheck(h, measure.UnitMM).Level; got != want {
			t.Errorf("%v of the taper: %v, want %v", share, got, want)
		}
	}
}

// NIOSH Pub. 94-110: each multiplier by itself, worked by hand; the twist's,
// the reach past the load and the outermost reach are from memory.
func TestLiftLimitTerms(t *testing.T) {
	for _, c := range []struct {
		what          string
		h, v, d, a    float64
		want, wantErr float64
	}{
		{"the best lift of all: the load constant", 25, 75, 25, 0, 23, 1e-9},
		{"nearer than 25 cm counts as 25", 10, 75, 25, 0, 23, 1e-9},
		{"twice as far, half as much", 50, 75, 25, 0, 11.5, 1e-9},
		{"hands on the floor: 1 − 0.003·75", 25, 0, 25, 0, 23 * 0.775, 1e-9},
		{"hands at 175 cm: 1 − 0.003·100", 25, 175, 25, 0, 23 * 0.7, 1e-9},
		{"lifted by 100 cm: 0.82 + 4.5/100", 25, 75, 100, 0, 23 * 0.865, 1e-9},
		{"a travel of 10 cm counts as 25", 25, 75, 10, 0, 23, 1e-9},
		{"twisted by 90°: 1 − 0.0032·90", 25, 75, 25, 90, 23 * 0.712, 1e-9},
		{"63 cm is reached", 63, 75, 25, 0, 23 * 25. / 63, 1e-9},
		{"63.1 cm is not", 63.1, 75, 25, 0, 0, 0},
		{"nor 176 cm high", 25, 176, 25, 0, 0, 0},
	} {
		if got := liftLimit(c.h, c.v, c.d, c.a, 1, 1).Kg(); math.Abs(got-c.want) > c.wantErr {
			t.Errorf("%s: %v kg, want %v", c.what, got, c.want)
		}
	}
	// A body 58.3 cm wide is held 20 + 29.2 cm away, hands by the slots.
	s := exampleSilo(t)
	h := 20 + float64(s.Spec.Drum.Outside)/20
	v := float64(s.Seat.FootHeight+s.Stations.Rim-s.Slots[0].Top) / 10
	if got, want := siloLiftLimit(&s).Kg(), 23*25/h*(1-0.003*math.Abs(v-75)); math.Abs(got-want) > 1e-9 {
		t.Errorf("out of its base: %v kg, by hand %v", got, want)
	}
}

// ISO 727-1 (from memory): a metric solvent socket is half the pipe's outside
// and 6 mm deep, 50 mm pipe 31 mm.
func TestMetricSocket(t *testing.T) {
	h, err := SolveHole(HoleSpec{Pipe: PipeRef{"50", "pn10"}, Saw: 52, Joint: JointCouplings, Nipple: 60, Radius: 290, Wall: 4})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "socket", h.Coupling.Depth, 31, 1e-9)
}

// What a joint takes up on the wall: a grommet's flange 1/4 in past its hole
// all round (common practice, no source).
func TestFootprints(t *testing.T) {
	h, err := SolveHole(HoleSpec{Pipe: PipeRef{"1 1/2", "sch40"}, Saw: 2.5 * inch, Joint: JointGrommet, Radius: 11 * inch, Wall: 4})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "grommet", h.Footprint, 3*inch, 1e-9)
}

// Rules of the hand, common practice, no source: a short pipe reaches 1 in past
// its grommet, a ring's end screws stand 1/2 in from its ends, a hole saw
// starts by a drill of 1/4 in.
func TestHandRules(t *testing.T) {
	s := exampleSilo(t)
	near(t, "end screws", s.Ring.JointEdge, inch/2, 1e-9)
	// 4 in of short pipe, 0.240 in of it in the pipe silo's wall (ASTM D3034,
	// SDR 35), 1 in past the grommet and 1.094 in in the adapter's socket, 1.156
	// in in each socket of the coupling (ASTM D2466).
	near(t, "stand-off", s.Pipe.StandOff, (4-0.240-1-1.094+2*1.156)*inch, 0.02)
	drilled := false
	for _, tm := range s.Templates {
		for _, p := range tm.Shapes {
			if b := p.Path.Bounds(); p.Role == Drill && tm.ID == "blue-outlet" && math.Abs(float64(b.Max.X-b.Min.X-inch/4)) < 1e-6 {
				drilled = true
			}
		}
	}
	if !drilled {
		t.Error("the outlet's template has no 1/4 in hole to drill")
	}
}

// A tape off by 1/16 in shifts the seat as a circumference or a wall off by
// 1/16 in does.
func TestTapeError(t *testing.T) {
	s := exampleSilo(t)
	moved := exampleSilo(t, func(q *Spec) { q.Drum.Wall += inch / 16 })
	near(t, "wall", s.Seat.ShiftWallUp, moved.Seat.Enters-s.Seat.Enters, 1e-6)
}

// A hoop 1 1/2 in high is widest over two thirds of it, 1 in, and narrows over
// the rest (common practice, no source).
func TestMouth(t *testing.T) {
	s := exampleSilo(t)
	m := mouthProfile(s.Spec, s.Stations)
	near(t, "widest down to", m[1].At, 1*inch, 1e-9)
	near(t, "there", m[1].Across, 23.5*inch, 1e-9)
	near(t, "narrow from", m[2].At, 1.5*inch, 1e-9)
}
