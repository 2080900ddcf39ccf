package work

import (
	"math"
	"testing"

	"silowright/bom"
	"silowright/geometry"
)

func near(t *testing.T, what string, got, want Minutes, within float64) {
	t.Helper()
	if math.Abs(float64(got-want)) > within {
		t.Errorf("%s: got %.6f min, want %.6f min", what, float64(got), float64(want))
	}
}

// One drum silo and one pipe silo by pencil: amounts of handSilo × minutes.
func TestReckonFirstSiloByPencil(t *testing.T) {
	r := Rates{Clean: 30, Mark: 15, Jigsaw: 4, Smooth: 1, Bore: 0.5, Hole: 6, MeshDisc: 15, Ring: 10, Screw: 2, Bead: 5,
		PipeCut: 4, Socket: 3, Grommet: 4, Stopper: 1, Seat: 5, LeakTest: 15, Rinse: 8, Screen: 15, Trim: 8, PipeRinse: 3,
		SetUp: 100, PipeSetUp: 40, Learning: 0.9}
	h := Reckon(build(1, 1), r)
	slots := 2 * (0.140 + 0.04*math.Pi) // m
	drum := 30 + 15.0 +                 // drum, marks
		2*2*4 + 8*1 + // two cuts of 2 m, four edges
		18*0.5 + 3*4 + 6*1 + // lattice: 18 corner holes, 3 m, both faces
		3*6 + 4*0.5 + slots*4 + 2*slots*1 + // holes, slots
		15 + 10 + 0.03*4 + 20*2 + // mesh, ring 30 mm wide, screws
		1.8*5 + // bead
		4 + 2*3 + 2*math.Pi*0.07*5 + // outlet: nipple, two sockets, two faces
		2*4 + 4*3 + 2*math.Pi*0.06*5 + 1 + // inlet: nipple and stub, two couplings, stub in coupling and adapter; stopper
		5 + 15 + 3*8 // seat, leak test, three rinses
	pipe := 2*4 + 1 + 6.0 + // two cuts, 2 × 0.5 m of edge, hole
		15 + 0.5*5 + 8 + // screen, resin, trim
		3 + 4 + // adapter, grommet
		3*3
	near(t, "drum silo", h.FirstDrum, Minutes(drum), 1e-9)
	near(t, "pipe silo", h.FirstPipe, Minutes(pipe), 1e-9)
	near(t, "set-up", h.SetUp, 140, 0)
	near(t, "total", h.Total, Minutes(drum+pipe+140), 1e-9)
	near(t, "the second drum silo, at 90 %", h.NextDrum, Minutes(0.9*drum), 1e-9)
}

// The operations add up; the next silo is what one more adds; set-up is not
// learned and counts once a kind.
func TestReckonAddsUp(t *testing.T) {
	r := DefaultRates()
	for _, c := range []struct{ drum, pipe int }{{0, 0}, {1, 0}, {0, 1}, {20, 12}, {10_000, 6000}} {
		h := Reckon(build(c.drum, c.pipe), r)
		drum, pipe := Minutes(0), Minutes(0)
		for _, o := range h.Operations {
			if o.Part == DrumSilo {
				drum += o.All
			} else {
				pipe += o.All
			}
			if o.Step == "" || o.stage == "" || o.Why == "" || o.Unit == "" {
				t.Errorf("%s lacks step, stage, unit or reason", o.ID)
			}
		}
		near(t, "drum silos", drum, h.Drum, 1e-6)
		near(t, "pipe silos", pipe, h.Pipe, 1e-6)
		near(t, "total", h.Drum+h.Pipe+h.SetUp, h.Total, 1e-6)
		more := Reckon(build(c.drum+1, c.pipe+1), r)
		near(t, "next drum silo", h.NextDrum, more.Drum-h.Drum, 1e-5)
		near(t, "next pipe silo", h.NextPipe, more.Pipe-h.Pipe, 1e-5)
	}
	// 20 silos at 90 %: Σ n^(log₂ 0.9) = 14.608 (cumulative table value of
	// operations textbooks, 14.61).
	h := Reckon(build(20, 0), r)
	if got := float64(h.Drum / h.FirstDrum); math.Abs(got-14.61) > 0.005 {
		t.Errorf("20 silos take %.4f times the first", got)
	}
}

// The work is all the jigsaw's travel and all the holes that the silo's own
// geometry counts.
func TestReckonLeavesNoCutOut(t *testing.T) {
	s := handSilo()
	travel, holes := 0.0, 0.0
	for _, o := range Reckon(build(1, 1), Rates{Jigsaw: 1, Hole: 2}).Operations {
		switch o.Each {
		case 1:
			travel += o.PerSilo
		case 2:
			holes += o.PerSilo
		}
	}
	if want := s.JigsawTravel().Metres(); math.Abs(travel-want) > 1e-9 {
		t.Errorf("%g m sawn, the silo has %g m", travel, want)
	}
	if want := len(s.Holes()); holes != float64(want) {
		t.Errorf("%g holes, the silo has %d", holes, want)
	}
}

// Two kinds share one learning sequence at their average, and have a set-up
// each.
func TestReckonTwoKinds(t *testing.T) {
	r := DefaultRates()
	a, b := handSilo(), handSilo()
	b.Ring.Screws = 50 // 30 more
	b.Outlet.Joint, b.Outlet.Coupling = geometry.JointGrommet, geometry.CouplingFit{}
	one := Reckon([]bom.Batch{{Silo: a, Drum: 1}}, r).FirstDrum
	two := Reckon([]bom.Batch{{Silo: b, Drum: 1}}, r).FirstDrum
	h := Reckon([]bom.Batch{{Silo: a, Drum: 15}, {Silo: b, Drum: 5, Pipe: 3}}, r)
	near(t, "first", h.FirstDrum, (15*one+5*two)/20, 1e-9)
	near(t, "set-up", h.SetUp, 2*r.SetUp+r.PipeSetUp, 0)
	back := Reckon([]bom.Batch{{Silo: b, Drum: 5, Pipe: 3}, {Silo: a, Drum: 15}}, r)
	near(t, "whichever comes first", back.Total, h.Total, 1e-9)
}

// A bulkhead fitting is fitted once and cemented in one socket; no bead cures.
func TestBulkheadHours(t *testing.T) {
	s := handSilo()
	s.Outlet.Joint = geometry.JointBulkhead
	ops := map[string]float64{}
	for _, o := range DefaultRates().drumWork(s) {
		ops[o.ID] = o.PerSilo
	}
	if ops["drum-outlet-grommet"] != 1 || ops["drum-outlet-sockets"] != 1 || ops["drum-outlet-bead"] != 0 {
		t.Errorf("fitted %v, sockets %v, bead %v", ops["drum-outlet-grommet"], ops["drum-outlet-sockets"], ops["drum-outlet-bead"])
	}
	threaded := s
	threaded.Outlet.Bulkhead.Ends = geometry.EndThread
	for _, o := range append(DefaultRates().drumWork(threaded), DefaultRates().pipeWork(threaded)...) {
		if want := map[string]float64{"drum-outlet-grommet": 2, "drum-outlet-sockets": 1, "pipe-outlet-grommet": fitted(s.Pipe.Hole) + 1}[o.ID]; want != 0 && o.PerSilo != want {
			t.Errorf("with threaded ends %s: %v, want %v", o.ID, o.PerSilo, want)
		}
	}
	one := func(s geometry.Silo) []geometry.Hole { return []geometry.Hole{s.Outlet} }
	set := DefaultRates().joints([]bom.Batch{{Silo: s, Drum: 1}}, func(b bom.Batch) int { return b.Drum }, one, func(geometry.Silo) length { return 0 })
	if set.sealant != 0 || set.full != 0 || set.cement != 120 { // 2 in pipe: 2 h
		t.Errorf("sealant %v, cement %v", set.sealant.Text(), set.cement.Text())
	}
}

// Cement cures by the pipe maker's manual (60 to 100 °F): 1 h up to 1 1/4 in,
// 2 h up to 3 in, 6 h from 4 in; the slowest joint counts.
func TestCementCure(t *testing.T) {
	var r Rates
	for _, c := range []struct {
		reason string
		inches []float64
		want   Minutes
	}{
		{"no joint", nil, 0},
		{"1/2 in", []float64{0.840}, 60},
		{"1 1/4 in", []float64{1.660}, 60},
		{"1 1/2 in", []float64{1.900}, 120},
		{"3 in", []float64{3.500}, 120},
		{"4 in", []float64{4.500}, 360},
		{"past the table", []float64{12.75}, 360},
		{"50 mm pipe, between 1 1/2 and 2 in", []float64{50 / 25.4}, 120},
		{"the slowest of two", []float64{4.5, 0.84}, 360},
	} {
		var pipes []length
		for _, i := range c.inches {
			pipes = append(pipes, length(i*25.4))
		}
		if got := r.cementCure(pipes); got != c.want {
			t.Errorf("%s: got %s, want %s", c.reason, got.Text(), c.want.Text())
		}
	}
	r.CementCure = 10
	if got := r.cementCure([]length{100}); got != 10 {
		t.Error("the job's own hours do not win")
	}
}
