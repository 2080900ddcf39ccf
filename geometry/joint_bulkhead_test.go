package geometry

import (
	"math"
	"strings"
	"testing"

	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

// bulkhead2 is an invented 2 in fitting, measured in inches.
func bulkhead2() BulkheadMeasure {
	return BulkheadMeasure{Hole: 3 * inch, Thread: 2.9375 * inch, Flange: 4 * inch, Nut: 3.9375 * inch, Gasket: 0.1875 * inch,
		Grip: 1 * inch, Head: 0.875 * inch, Length: 3.25 * inch, Bore: 1.9375 * inch}
}

// bulkheadHole is a bulkhead fitting in a drum's wall of 11.5 in radius and
// 3/16 in, changed as asked.
func bulkheadHole(t *testing.T, change ...func(*HoleSpec, *BulkheadMeasure)) Hole {
	t.Helper()
	m := bulkhead2()
	q := HoleSpec{Name: "outlet", Part: "body", Pipe: PipeRef{"2", "sch40"}, Saw: 3 * inch, Oversize: inch / 32, Joint: JointBulkhead,
		Radius: 11.5 * inch, Wall: 0.1875 * inch}
	for _, c := range change {
		c(&q, &m)
	}
	q.Fittings = Fittings{Bulkheads: map[string]BulkheadMeasure{q.Pipe.Size: m}}
	h, err := SolveHole(q)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// The fit by hand: inner radius 11.3125 in, flange 4 in across:
// 11.3125 − √(11.3125² − 2²) = 0.17820 in; wall and gasket 0.375 in more;
// 3 1/32 in hole, thread 2 15/16 in to one side; the locknut of 3 15/16 in
// across its corners is 3.9375·√3/2 = 3.40998 in across its flats:
// (3.40998 − 3.03125)/2 − (3.03125 − 2.9375)/2 = 0.14249 in.
func TestBulkheadFit(t *testing.T) {
	h := bulkheadHole(t)
	b := h.Bulkhead
	for _, c := range []struct {
		name      string
		got, want length
	}{
		{"gap", b.Gap, 0.17820 * inch}, {"stack", b.Stack, 0.55320 * inch}, {"cover", b.Cover, 0.14249 * inch},
		{"outer", b.Outer, (3.25 - 0.875 - 0.55320) * inch}, {"footprint", h.Footprint, 4 * inch},
		{"stands inside", h.Inner, 0.875 * inch}, {"bore", h.Bore(), 1.9375 * inch},
		{"socket: ASTM D2466", b.Depth, 1.156 * inch},
	} {
		if (c.got - c.want).Abs() > 1e-4*inch {
			t.Errorf("%s: %v mm, want %v", c.name, float64(c.got), float64(c.want))
		}
	}
	if !b.Measured || !b.Label || !b.Known() {
		t.Errorf("measured %v, label %v", b.Measured, b.Label)
	}
}

// Each finding fires and stays quiet.
func TestBulkheadFindings(t *testing.T) {
	type change = func(*HoleSpec, *BulkheadMeasure)
	for _, c := range []struct {
		reason, id string
		change     change
		want       Level
		says       string
	}{
		{"the hole its maker asks for", "saw-bulkhead", func(*HoleSpec, *BulkheadMeasure) {}, OK, "is what the fitting asks for"},
		{"1/32 in off is within what a saw is given", "saw-bulkhead", func(q *HoleSpec, _ *BulkheadMeasure) { q.Saw += inch / 32 }, OK, ""},
		{"a saw 1/8 in too large", "saw-bulkhead", func(q *HoleSpec, _ *BulkheadMeasure) { q.Saw += inch / 8 }, Stop, "change the saw"},
		{"a saw 1/16 in too small", "saw-bulkhead", func(q *HoleSpec, _ *BulkheadMeasure) { q.Saw -= inch / 16 }, Stop, "asks for a hole of 3 in"},
		{"a thread wider than the hole", "saw-bulkhead", func(_ *HoleSpec, m *BulkheadMeasure) { m.Thread = 3.1 * inch }, Stop, "does not go through"},
		{"a thread narrower than the pipe", "saw-bulkhead", func(_ *HoleSpec, m *BulkheadMeasure) { m.Thread = 2.3 * inch }, Stop, "measure it again"},
		{"unmeasured, the size charts agree: 3 in", "saw-bulkhead", func(_ *HoleSpec, m *BulkheadMeasure) { *m = BulkheadMeasure{} }, Caution, "size charts"},
		{"unmeasured, the size charts say another", "saw-bulkhead", func(q *HoleSpec, m *BulkheadMeasure) { *m = BulkheadMeasure{}; q.Saw = 2.5 * inch }, Stop, "measure the fitting"},
		{"charts that give a range, 4 to 4 1/2 in for 3 in: between them", "saw-bulkhead", func(q *HoleSpec, m *BulkheadMeasure) {
			*m = BulkheadMeasure{}
			q.Pipe.Size, q.Saw = "3", 4.25*inch
		}, Caution, "agrees"},
		{"no chart gives 1 1/4 in", "saw-bulkhead", func(q *HoleSpec, m *BulkheadMeasure) {
			*m = BulkheadMeasure{}
			q.Pipe.Size, q.Saw = "1 1/4", 2*inch
		}, Caution, "no table"},
		{"flange and nut well past the hole", "bulkhead-cover", func(*HoleSpec, *BulkheadMeasure) {}, OK, ""},
		{"a locknut whose flats end at the hole's edge, its corners past it", "bulkhead-cover", func(_ *HoleSpec, m *BulkheadMeasure) { m.Nut = 3.5 * inch }, Stop, "falls short"},
		{"a small flange", "bulkhead-cover", func(_ *HoleSpec, m *BulkheadMeasure) { m.Flange = 3.25 * inch }, Caution, "only"},
		{"a flange smaller than the hole", "bulkhead-cover", func(_ *HoleSpec, m *BulkheadMeasure) { m.Flange = 3 * inch }, Stop, "falls short"},
		{"half the gasket takes up a nearly flat wall", "bulkhead-curve", func(q *HoleSpec, _ *BulkheadMeasure) { q.Radius = 40 * inch }, OK, "takes it up"},
		{"a drum's wall must be drawn flat", "bulkhead-curve", func(*HoleSpec, *BulkheadMeasure) {}, Caution, "draw the wall flat"},
		{"on 8 in pipe it does not seal", "bulkhead-curve", func(q *HoleSpec, _ *BulkheadMeasure) { q.Radius = 4.2 * inch }, Stop, "does not seal"},
		{"pipe enough for its socket, 1.156 in (ASTM D2466)", "bulkhead-pipe", func(q *HoleSpec, _ *BulkheadMeasure) { q.Nipple = 2.5 * inch }, OK, "fills"},
		{"pipe for less than nine tenths of it", "bulkhead-pipe", func(q *HoleSpec, _ *BulkheadMeasure) { q.Nipple = inch }, Caution, "less than a full joint"},
		{"pipe for less than half of it", "bulkhead-pipe", func(q *HoleSpec, _ *BulkheadMeasure) { q.Nipple = 0.5 * inch }, Stop, "too little"},
		{"an adapter's socket, in threaded ends", "bulkhead-pipe", func(q *HoleSpec, m *BulkheadMeasure) { q.Nipple, m.Ends = inch, EndThread }, Caution, "the socket of the adapter in the fitting's outer thread 1 1/8 in"},
		{"thread to spare", "bulkhead-grip", func(*HoleSpec, *BulkheadMeasure) {}, OK, "whole thread"},
		{"no thread to spare", "bulkhead-grip", func(_ *HoleSpec, m *BulkheadMeasure) { m.Grip = 0.58 * inch }, Caution, "hardly"},
		{"a wall too thick for its grip", "bulkhead-grip", func(q *HoleSpec, _ *BulkheadMeasure) { q.Wall = 0.75 * inch }, Stop, "does not reach"},
	} {
		t.Run(c.id+", "+c.reason, func(t *testing.T) {
			h := bulkheadHole(t, c.change)
			var f Finding
			for _, x := range HoleChecks(h, measure.UnitInch) {
				if x.ID == "outlet."+c.id {
					f = x
				}
			}
			if f.Level != c.want || f.ID == "" || !strings.Contains(f.Says, c.says) {
				t.Errorf("%v: %s", f.Level, f.Says)
			}
			if f.Level != OK && !strings.HasPrefix(f.Key, "outlet.") {
				t.Errorf("key %q", f.Key)
			}
		})
	}
}

// Its footprint is held against hoops, rim and slots; the saws offered are
// those that suit it; a narrow bore lowers the crown and the open area.
func TestBulkheadInASilo(t *testing.T) {
	use := func(below length, m BulkheadMeasure) Silo {
		return exampleSilo(t, func(s *Spec) {
			s.Outlet.Joint, s.Outlet.Saw, s.Outlet.BelowRim = JointBulkhead, 3*inch, below
			s.Fittings = Fittings{Bulkheads: map[string]BulkheadMeasure{"2": m}}
		})
	}
	s := use(6*inch, bulkhead2())
	if f := find(t, s, "outlet.rim"); math.Abs(f.Measured.Value-float64(4*inch)) > 1e-6 { // 6 − 4/2
		t.Errorf("to the rim %v mm, want 4 in", f.Measured.Value)
	}
	wide := bulkhead2()
	wide.Flange = 13 * inch
	if f := find(t, use(6*inch, wide), "outlet.rim"); f.Level != Stop {
		t.Errorf("a flange past the rim: %v", f.Level)
	}
	narrow := bulkhead2()
	narrow.Bore = inch
	n := use(6*inch, narrow)
	if n.outletCrown() >= s.outletCrown() || n.OutletBore() >= s.OutletBore() {
		t.Errorf("a bore of 1 in: crown %v, open %v", n.outletCrown(), n.OutletBore())
	}
	var saws []length
	for _, saw := range SawsFor(s.Outlet) {
		saws = append(saws, saw.Diameter)
	}
	if len(saws) == 0 {
		t.Error("no saw offered for a hole of 3 in")
	}
	for _, d := range saws {
		if (d - 3*inch).Abs() > inch/32 {
			t.Errorf("a saw of %v mm offered", float64(d))
		}
	}
	if _, ok := stock.BulkheadHole("2"); !ok {
		t.Error("the charts have lost 2 in")
	}
}

// A fitting that was not measured, by the proportions taken from memory; 3 in is
// the hole that size charts give for 2 in pipe, 1.156 in a socket (ASTM D2466).
func TestBulkheadProportions(t *testing.T) {
	b := bulkheadHole(t, func(_ *HoleSpec, m *BulkheadMeasure) { *m = BulkheadMeasure{} }).Bulkhead
	for _, c := range []struct {
		name      string
		got, want length
	}{
		{"thread", b.Thread, 2.9375 * inch}, {"flange", b.Flange, 4.5 * inch}, {"locknut", b.Nut, 4.5 * inch},
		{"gasket", b.Gasket, 0.125 * inch}, {"grip", b.Grip, 0.75 * inch}, {"head", b.Head, 0.75 * inch},
		{"length", b.Length, (2*1.156 + 0.125) * inch},
	} {
		near(t, c.name, c.got, c.want, 1e-6)
	}
	if b.Adapter != 0 {
		t.Errorf("an adapter %v mm long in a socket", float64(b.Adapter))
	}
	// Threaded ends: 1/4 in from an adapter's thread to its socket, 2.369 in at
	// the bottom (ASTM D2466) and a pipe's wall of 0.154 in round it (D1785); it
	// stands as far into the drum.
	h := bulkheadHole(t, func(_ *HoleSpec, m *BulkheadMeasure) { *m = BulkheadMeasure{Ends: EndThread} })
	near(t, "adapter", h.Bulkhead.Adapter, (0.25+1.156)*inch, 1e-6)
	near(t, "stands inside with an adapter", h.Inner, (0.75+0.25+1.156)*inch, 1e-6)
	near(t, "adapter's outside", h.Bulkhead.Across, (2.369+2*0.154)*inch, 1e-6)
	// A head as long as both sockets: half an inch is left for the locknut.
	long := bulkheadHole(t, func(_ *HoleSpec, m *BulkheadMeasure) { *m = BulkheadMeasure{Head: 4 * inch} }).Bulkhead
	near(t, "outside", long.Outer, 0.5*inch, 1e-6)
	near(t, "under a long head", long.Length, 4*inch+long.Stack+0.5*inch, 1e-6)
}
