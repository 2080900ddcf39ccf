package bom

import (
	"math"
	"slices"
	"strings"
	"testing"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// Twenty drum silos and eight pipe silos of the silo filled in by hand.
// Amounts are worked out beside each row; rates are the package's defaults,
// all common practice, no source.
func TestTakeoff(t *testing.T) {
	const (
		ft   = 304.8
		ft2  = ft * ft
		in3  = 25.4 * 25.4 * 25.4 / 1000 // mL
		bead = 1. / 16                   // in², 1/4 × 1/4
	)
	s := handSilo()
	got := Takeoff([]Batch{{s, 20, 8}}, DefaultRates(), measure.UnitInch)
	travel := float64(s.JigsawTravel()) // geometry's own, tested there
	want := []struct {
		item       string
		kind       Kind
		drum, pipe float64
		why        string // in the trace
	}{
		{"drum", Each, 20, 0, "20 of kind blue"},
		{"pipe-sch40-2", Length, 20 * 2.5625 * 25.4, 0, "20 × outlet nipple, 2 1/2 in (63.5 mm) and a kerf of 1/16 in"},
		{"pipe-sch40-1-1/2", Length, 20 * (2.0625 + 6.0625) * 25.4, 8 * 4.0625 * 25.4, "8 × short pipe, 4 in"},
		{"pipe-sdr35-8", Length, 0, 8 * 14.0625 * 25.4, "8 × pipe silo, 14 in"},
		{"coupling-2", Each, 40, 0, "2 × 20 at the outlet"},
		{"coupling-1-1/2", Each, 40, 0, "2 × 20 at the inlet"},
		{"stopper-11", Each, 20, 0, "1 × 20 at the drain"},
		{"hose-adapter-1-1/2", Each, 20, 0, "1 × 20"},
		{"grommet-1-1/2", Each, 0, 8, "1 × 8 at the pipe silo outlet"},
		{"adapter-2x1-1/2", Each, 0, 8, "1 × 8"},
		{"mesh-1.6-mm", Area, 20 * 4 * ft2, 0, "20 discs 24 in (609.6 mm) across, each counted as a square"},
		{"screen-0.3-mm", Area, 0, 8 * ft2, "8 squares of 12 in"},
		{"cement", Volume, 20 * (2 + 2 + 2) * 6, 8 * 6, "2 sockets × 20 on the inlet stub, 6 mL each"},
		{"primer", Volume, 20 * 6 * 4, 8 * 4, "4 mL each"},
		{"sealant", Volume, 20 * bead * (60 + 2*3*math.Pi + 2*2.5*math.Pi) * in3, 0, "20 × 61.5 mL along the ring"},
		{"screw-8-5/8-in", Each, 400, 0, "20 × 20 in the ring"},
		{"acetone", Volume, 20 * 1.524 * 15, 8 * 0.6096 * 15, "20 × 1.52 m of ring bead, 15 mL a metre"},
		{"resin", Volume, 0, 8 * bead * 24 * in3, "8 × 24.6 mL"},
		{"hose-1-1/2", Length, 20 * 1500, 0, "20 × 59 1/16 in (1500 mm)"},
		{"hose-clamp-1-1/2", Each, 40, 0, "2 × 20"},
		{"cutting-disc", Each, 400. / 150, 0, "20 × 20 screw points"},
		{"jigsaw-blade", Each, 20 * travel / 25000, 0, "25 m each"},
		{"sandpaper", Each, 20 * travel / 15000, 0, "15 m each"},
		{"marker", Each, 2, 0.8, "20 silos, 10 a marker; 8 silos"},
		{"pilot-bit", Each, 0.6, 0.08, "68 holes, 100 a bit"},
		{"hole-saw-2-1/2-in", Each, 20. / 28, 8. / 28, "20 × outlet, 8 × pipe silo outlet"},
		{"hole-saw-2-in", Each, 1, 0, "20 × inlet, 20 × drain"},
		{"hole-saw-arbor", Each, 60. / 68, 8. / 68, "all hole saws"},
		{"drill-5/16-in", Each, 1, 0, "lattice"},
		{"drill-for-screw-8", Each, 1, 0, "ring"},
		{"plywood", Area, 400 * 25.4 * 25.4, 0, "1 square of 20 in"},
		{"band-clamp-152", Each, 0, 4, "4 of 8 pipe silos set at one time"},
	}
	if len(got) != len(want) {
		t.Errorf("%d items, want %d", len(got), len(want))
	}
	for i := range min(len(got), len(want)) {
		n, w := got[i], want[i]
		if n.Item != w.item || n.Kind != w.kind {
			t.Errorf("%d: %s in %s, want %s in %s", i, n.Item, n.Kind, w.item, w.kind)
			continue
		}
		if math.Abs(n.Drum-w.drum) > 1e-9*(1+w.drum) || math.Abs(n.Pipe-w.pipe) > 1e-9*(1+w.pipe) {
			t.Errorf("%s: drum silos %.6f and pipe silos %.6f, want %.6f and %.6f", n.Item, n.Drum, n.Pipe, w.drum, w.pipe)
		}
		if math.Abs(n.EachDrum*20-n.Drum) > 1e-9*(1+n.Drum) || math.Abs(n.EachPipe*8-n.Pipe) > 1e-9*(1+n.Pipe) {
			t.Errorf("%s: each %.6f and %.6f", n.Item, n.EachDrum, n.EachPipe)
		}
		if !strings.Contains(n.Why, w.why) {
			t.Errorf("%s: %q does not say %q", n.Item, n.Why, w.why)
		}
		if n.Description == "" || n.Category == "" || strings.Contains(n.Item, " ") || strings.Contains(n.Why, "%!") {
			t.Errorf("%+v", n)
		}
	}
}

// What a joint needs changes with its kind.
func TestJoints(t *testing.T) {
	s := handSilo()
	s.Spec.Inlet.Joint, s.Inlet.Joint = geometry.JointGrommet, geometry.JointGrommet
	s.Spec.Outlet.Joint, s.Outlet.Joint = geometry.JointGrommet, geometry.JointGrommet
	s.Pipe.Hole.Joint = geometry.JointCouplings
	s.Pipe.Hole.Coupling.Outside = 2.5 * in
	got := Takeoff([]Batch{{s, 3, 2}}, DefaultRates(), measure.UnitInch)
	for _, c := range []struct {
		reason     string
		item       string
		drum, pipe float64
	}{
		{"the stub itself goes through the grommet: no nipple at the inlet", "pipe-sch40-1-1/2", 3 * 6.0625 * 25.4, 2 * 4.0625 * 25.4},
		{"one grommet a hole", "grommet-1-1/2", 3, 0},
		{"and one at the outlet", "grommet-2", 3, 0},
		{"two couplings a pipe silo", "coupling-1-1/2", 0, 4},
		{"stub in the hose adapter; two couplings and the reducing adapter", "cement", 3 * 6, 2 * 3 * 6},
	} {
		if n := itemNamed(t, got, c.item); math.Abs(n.Drum-c.drum) > 1e-6 || math.Abs(n.Pipe-c.pipe) > 1e-6 {
			t.Errorf("%s: %s: %.3f and %.3f, want %.3f and %.3f", c.reason, c.item, n.Drum, n.Pipe, c.drum, c.pipe)
		}
	}
	for _, n := range got {
		if n.Item == "coupling-2" {
			t.Error("couplings for a grommet's hole")
		}
	}
}

// A bulkhead fitting brings its gasket and locknut: one a hole, the pipe
// cemented into its one socket, no coupling, no nipple at the inlet and no
// sealant but the ring's.
func TestBulkheadTakesNoSealant(t *testing.T) {
	s := handSilo()
	for _, j := range []*geometry.Joint{&s.Spec.Inlet.Joint, &s.Inlet.Joint, &s.Spec.Outlet.Joint, &s.Outlet.Joint} {
		*j = geometry.JointBulkhead
	}
	got := Takeoff([]Batch{{s, 3, 0}}, DefaultRates(), measure.UnitInch)
	for _, c := range []struct {
		reason, item string
		drum         float64
	}{
		{"one at the inlet", "bulkhead-fitting-1-1/2", 3},
		{"one at the outlet", "bulkhead-fitting-2", 3},
		{"the stub itself goes in: no nipple at the inlet", "pipe-sch40-1-1/2", 3 * 6.0625 * 25.4},
		{"the outlet's pipe outside", "pipe-sch40-2", 3 * 2.5625 * 25.4},
		{"a socket each at outlet and inlet, and the hose adapter's", "cement", 3 * 3 * 6},
		{"the ring's bead alone", "sealant", 3 * s.Sealant.Volume.ML()},
	} {
		if n := itemNamed(t, got, c.item); math.Abs(n.Drum-c.drum) > 1e-6 {
			t.Errorf("%s: %s: %.3f, want %.3f", c.reason, c.item, n.Drum, c.drum)
		}
	}
	for _, n := range got {
		if strings.HasPrefix(n.Item, "coupling-") || strings.HasPrefix(n.Item, "gasket") {
			t.Errorf("%s beside bulkhead fittings", n.Item)
		}
	}
}

// A fitting with threaded ends is another one, and takes a male adapter for each
// pipe: outlet and inlet, the pipe silo's own, and where a pipe silo hangs the
// inner end of the outlet. A roll of tape does 20 threads, as the rates say.
// Nothing else changes.
func TestThreadedBulkheadTakesAdapters(t *testing.T) {
	silo := func(end geometry.End) geometry.Silo {
		s := handSilo()
		for _, h := range []*geometry.Hole{&s.Inlet, &s.Outlet, &s.Pipe.Hole} {
			h.Joint, h.Bulkhead.Ends = geometry.JointBulkhead, end
		}
		s.Spec.Inlet.Joint, s.Spec.Outlet.Joint = geometry.JointBulkhead, geometry.JointBulkhead
		return s
	}
	sockets := Takeoff([]Batch{{silo(geometry.EndSocket), 3, 2}}, DefaultRates(), measure.UnitInch)
	got := Takeoff([]Batch{{silo(geometry.EndThread), 3, 2}}, DefaultRates(), measure.UnitInch)
	want := map[string][2]float64{
		"bulkhead-fitting-threaded-1-1/2": {3, 2}, "bulkhead-fitting-threaded-2": {3, 0},
		"male-adapter-1-1/2": {3, 2}, "male-adapter-2": {3, 2}, "thread-tape": {6. / 20, 4. / 20},
	}
	for item, w := range want {
		if n := itemNamed(t, got, item); math.Abs(n.Drum-w[0])+math.Abs(n.Pipe-w[1]) > 1e-9 {
			t.Errorf("%s: %v and %v, want %v", item, n.Drum, n.Pipe, w)
		}
	}
	for _, n := range sockets {
		if strings.HasPrefix(n.Item, "male-adapter") || n.Item == "thread-tape" {
			t.Errorf("%s for sockets", n.Item)
		}
		if strings.HasPrefix(n.Item, "bulkhead-fitting") {
			continue
		}
		if o := itemNamed(t, got, n.Item); o.Drum != n.Drum || o.Pipe != n.Pipe {
			t.Errorf("%s: %v and %v with threads, %v and %v with sockets", n.Item, o.Drum, o.Pipe, n.Drum, n.Pipe)
		}
	}
	for _, n := range got {
		if strings.HasPrefix(n.Item, "bulkhead-fitting-") && !strings.HasPrefix(n.Item, "bulkhead-fitting-threaded-") {
			t.Errorf("%s for threads", n.Item)
		}
	}
	var into []string
	for _, c := range CutList([]Batch{{silo(geometry.EndThread), 3, 2}}, measure.UnitInch) {
		if strings.HasSuffix(c.Note, "one end goes into a male adapter") {
			into = append(into, c.Piece)
		}
	}
	if strings.Join(into, ", ") != "outlet pipe, inlet stub, short pipe" {
		t.Errorf("cut for an adapter: %q", into)
	}
}

// What is left out: no silos, no screw points, no rate, no clamp that fits.
func TestTakeoffLeavesOut(t *testing.T) {
	s := handSilo()
	if got := Takeoff([]Batch{{s, 0, 0}}, DefaultRates(), measure.UnitInch); got == nil || len(got) != 0 {
		t.Errorf("no silos need %v", got)
	}
	if got := Takeoff(nil, DefaultRates(), measure.UnitInch); len(got) != 0 {
		t.Errorf("no batches need %v", got)
	}
	s.Ring.Protrudes = -in / 8
	s.Pipe.Clamp = ""
	for _, n := range Takeoff([]Batch{{s, 2, 2}}, Rates{}, measure.UnitInch) {
		for _, out := range []string{"cutting-disc", "band-clamp", "jigsaw-blade", "sandpaper", "marker", "pilot-bit", "cement", "primer", "acetone", "hose-1", "hose-clamp"} {
			if strings.HasPrefix(n.Item, out) {
				t.Errorf("%s: %s", n.Item, n.Why)
			}
		}
	}
	for _, n := range Takeoff([]Batch{{s, 0, 2}}, DefaultRates(), measure.UnitInch) {
		if n.Drum != 0 || n.EachDrum != 0 {
			t.Errorf("pipe silos alone: %s for drum silos", n.Item)
		}
	}
}

// Two kinds of drum: what is alike is one item, two meshes are two.
func TestTakeoffOfTwoKinds(t *testing.T) {
	a, b := handSilo(), handSilo()
	b.Spec.Drum.Label, b.Spec.Mesh.Opening, b.Spec.Lattice.Pilot = "white", 2, 3*in/8
	got := Takeoff([]Batch{{a, 7, 0}, {b, 5, 0}}, DefaultRates(), measure.UnitInch)
	if n := itemNamed(t, got, "drum"); n.Drum != 12 || n.Why != "7 of kind blue; 5 of kind white" {
		t.Errorf("%+v", n)
	}
	if n := itemNamed(t, got, "mesh-2-mm"); math.Abs(n.Drum-5*609.6*609.6) > 1e-6 {
		t.Errorf("%+v", n)
	}
	if n := itemNamed(t, got, "hole-saw-2-in"); n.Total() != 1 {
		t.Errorf("two hole saws of one size: %+v", n)
	}
	if itemNamed(t, got, "drill-3/8-in").Total() != 1 || itemNamed(t, got, "drill-5/16-in").Total() != 1 {
		t.Error("each pilot has its bit")
	}
	if n := itemNamed(t, got, "plywood"); math.Abs(n.Drum-2*508*508) > 1e-6 {
		t.Errorf("a template a kind: %+v", n)
	}
}

// Screens 5 µm apart are two items, and so are fittings for pressure and sewer
// pipe of one nominal size; one opening typed in two ways is one item.
func TestItemsAreToldApart(t *testing.T) {
	a, b := handSilo(), handSilo()
	a.Spec.Pipe.Screen, b.Spec.Pipe.Screen = 0.120, 0.125
	a.Spec.Mesh.Opening, b.Spec.Mesh.Opening = in/16, 1.5875
	a.Outlet.Pipe, b.Outlet.Pipe = geometry.PipeRef{Size: "4", Series: "sch40"}, geometry.PipeRef{Size: "4", Series: "sdr35"}
	a.Spec.Outlet.Pipe, b.Spec.Outlet.Pipe = a.Outlet.Pipe, b.Outlet.Pipe
	a.Spec.Inlet.Pipe.Series = "sch80" // as wide as sch40: ASTM D1785
	got := Takeoff([]Batch{{a, 3, 2}, {b, 5, 4}}, DefaultRates(), measure.UnitInch)
	for item, want := range map[string]float64{
		"screen-0.12-mm": 2 * 304.8 * 304.8, "screen-0.125-mm": 4 * 304.8 * 304.8, "mesh-1.588-mm": 8 * 609.6 * 609.6,
		"coupling-4": 6, "coupling-sewer-4": 10, "pipe-sch40-4": 3 * 2.5625 * 25.4, "pipe-sdr35-4": 5 * 2.5625 * 25.4,
		"adapter-4x1-1/2": 2, "adapter-sewer-4x1-1/2": 4, "hose-adapter-1-1/2": 8,
	} {
		if n := itemNamed(t, got, item); math.Abs(n.Total()-want) > 1e-5 {
			t.Errorf("%s: %v, want %v", item, n.Total(), want)
		}
	}
	seen := map[string]bool{}
	for _, n := range got {
		if seen[itemKey(n.Item)] {
			t.Errorf("%s stands twice", n.Item)
		}
		seen[itemKey(n.Item)] = true
	}
}

// Every need comes out, in the order of the categories, whatever its category.
func TestByCategory(t *testing.T) {
	needs := []Need{{Item: "a", Category: "of no list", Kind: Each, Drum: 1}, {Item: "b", Category: Tools}, {Item: "c", Category: Drums}, {Item: "d"}, {Item: "e", Category: Tools}, {Item: "f", Category: Pipe}}
	var order string
	for _, n := range byCategory(needs) {
		order += n.Item
	}
	if order != "cfbead" {
		t.Errorf("in the order %s", order)
	}
	known := categories()
	for _, n := range Takeoff([]Batch{{handSilo(), 3, 2}}, DefaultRates(), measure.UnitInch) {
		if !slices.Contains(known, n.Category) {
			t.Errorf("%s: %q is no category", n.Item, n.Category)
		}
	}
	b, err := price(needs[:1], list(t, "a,,1,each,1,,\n"), "USD", 1, 0)
	if err != nil || len(b.Categories) != 1 || b.Categories[0].Category != "of no list" {
		t.Errorf("a bill leaves it out: %+v, %v", b, err)
	}
}

// A metric job names its sizes in mm.
func TestMetricItems(t *testing.T) {
	s := handSilo()
	s.Spec.Units = measure.UnitMM
	s.Outlet.Saw, s.Spec.Screws = 65, geometry.ScrewSpec{Size: "ST4.2", Length: 16}
	s.Spec.Outlet.Pipe = geometry.PipeRef{Size: "63", Series: "pn10"}
	s.Spec.Lattice.Pilot = 8
	got := Takeoff([]Batch{{s, 1, 1}}, DefaultRates(), measure.UnitMM)
	for _, item := range []string{"hole-saw-65-mm", "screw-ST4.2-16-mm", "drill-8-mm", "pipe-pn10-63", "adapter-63x1-1/2", "drill-for-screw-ST4.2"} {
		itemNamed(t, got, item)
	}
}

func TestNeedText(t *testing.T) {
	for _, c := range []struct {
		kind   Kind
		amount float64
		u      measure.Unit
		want   string
	}{
		{Length, 3048, measure.UnitInch, "10 ft (3.05 m)"},
		{Length, 3048, measure.UnitMM, "3.05 m (10 ft)"},
		{Area, 92903.04 * 32, measure.UnitInch, "32 ft² (2.97 m²)"},
		{Volume, 298.7, measure.UnitInch, "10.1 fl oz (299 mL)"},
		{Volume, 1e-9, measure.UnitMM, "0 mL (0 fl oz)"},
		{Volume, 0.3, measure.UnitMM, "0.3 mL (0.01 fl oz)"},
		{Each, 0.0004, measure.UnitInch, "0.0004"},
		{Each, 40, measure.UnitInch, "40"},
		{Each, 2. / 3, measure.UnitInch, "0.67"},
	} {
		if got := (Need{Kind: c.kind}).Text(c.amount, c.u); got != c.want {
			t.Errorf("%v %s: %q, want %q", c.amount, c.kind, got, c.want)
		}
	}
}
