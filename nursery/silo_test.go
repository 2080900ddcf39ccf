package nursery

import (
	"math"
	"testing"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/sea"
)

const inch = measure.Inch

// invented is a silo of an invented drum.
func invented(t testing.TB, change ...func(*geometry.Spec)) *geometry.Silo {
	t.Helper()
	d := geometry.Drum{Label: "blue", Count: 20, Outside: geometry.OutsideFromCircumference(72.125 * inch), Height: 34.5 * inch,
		Wall: 0.1875 * inch, FootOutside: 21.125 * inch, FootHeight: 2.25 * inch, HeadRecess: 0.875 * inch,
		Hoops: []geometry.Hoop{{From: 10.5 * inch, To: 12 * inch, Outside: 23.875 * inch}, {From: 22.75 * inch, To: 24.25 * inch, Outside: 23.875 * inch}}}
	spec := geometry.DefaultSpec(d, measure.UnitInch)
	for _, c := range change {
		c(&spec)
	}
	silos, err := geometry.Solve(geometry.Job{Kinds: []geometry.Spec{spec}})
	if err != nil {
		t.Fatal(err)
	}
	return &silos[0]
}

var stocking = Stocking{
	Seed:     flow.Bed{Mass: 5, Size: 2, Density: 1500, Voidage: 0.5, Sphericity: 0.8},
	PipeSeed: flow.Bed{Mass: 0.5, Size: 0.8, Density: 1500, Voidage: 0.5, Sphericity: 0.8},
}

// Heights and diameters of the default silo by hand from its drum: bore
// 72.125/π − 3/8 in; rim 22 3/4 − 1/16 − 1 − 1/16 = 21 5/8 in; outlet's middle 6
// in below it, its bore 2.049 in (ASTM D1785), so the invert stands at 14.6005
// in; sill 4 in below the rim.
func TestOfSilo(t *testing.T) {
	f := OfSilo(invented(t), stocking)
	if err := f.Check(); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		what      string
		got, want measure.Length
	}{
		{"bore", f.Bore, measure.Length(72.125/math.Pi-0.375) * inch},
		{"rim", f.Rim, 21.625 * inch},
		{"invert", f.Invert, (15.625 - 2.049/2) * inch},
		{"sill", f.Sill, 17.625 * inch},
		{"outlet's bore", f.Outlet.Bore, 2.049 * inch},
		{"mesh top", f.MeshTop, (0.1875 + 1./32) * inch},
		{"slot corner", f.Slot.Corner, 1 * inch},
	} {
		if math.Abs(float64(c.got-c.want)) > 1e-6 {
			t.Errorf("%s: %v mm, want %v", c.what, c.got.MM(), c.want.MM())
		}
	}
	if f.Slots != 2 || f.Pipe != nil || f.SeatAcross <= f.FootInside || f.SeatHeight <= 0 || f.SeatHeight > f.FootHeight {
		t.Errorf("%+v", f)
	}
	// 0.28 of the foot's area and a ring 1 in wide, 3/16 in thick: under 1 L
	if l := f.Solid.Litres(); l < 0.3 || l > 1 {
		t.Errorf("solid %.2f L", l)
	}
}

// The pipe silo hangs as the geometry has it, the two outlets on one level, and
// holds the drum silo's water back.
func TestPipeSiloHangs(t *testing.T) {
	s := invented(t)
	q := stocking
	q.WithPipeSilo = true
	f := OfSilo(s, q)
	if err := f.Check(); err != nil {
		t.Fatal(err)
	}
	p := f.Pipe
	// its open end is as long as the pipe above its screen
	if got := p.Rim - p.Bottom; math.Abs(float64(got-s.Spec.Pipe.Length)) > 1e-9 {
		t.Errorf("length %v, want %v", got, s.Spec.Pipe.Length)
	}
	if got := p.Invert + p.Out.Bore/2; math.Abs(float64(got-f.Invert-f.Outlet.Bore/2)) > 1e-9 {
		t.Errorf("the two outlets are not on one level: %v", got)
	}
	w, err := sea.At(30, 15)
	if err != nil {
		t.Fatal(err)
	}
	d, err := flow.Solve(w, f, 30*measure.LitrePerMinute)
	if err != nil {
		t.Fatal(err)
	}
	alone, err := flow.Solve(w, OfSilo(s, stocking), 30*measure.LitrePerMinute)
	if err != nil {
		t.Fatal(err)
	}
	if d.Pipe == nil || d.Level <= alone.Level || d.BeforeSlots >= alone.BeforeSlots {
		t.Errorf("with the pipe silo level %v, alone %v; before slots %v and %v", d.Level, alone.Level, d.BeforeSlots, alone.BeforeSlots)
	}
}

// A grommet has no coupling to pass and no nipple to count; a foot that does
// not go into the base has no seat.
func TestOfSiloVariants(t *testing.T) {
	f := OfSilo(invented(t, func(s *geometry.Spec) { s.Inlet.Joint = geometry.JointGrommet }), stocking)
	if f.Inlet.K != 0 || f.Inlet.Length != 6*inch {
		t.Errorf("grommet: %+v", f.Inlet)
	}
	f = OfSilo(invented(t, func(s *geometry.Spec) {
		s.Inlet.Joint, s.Outlet.Joint = geometry.JointBulkhead, geometry.JointBulkhead
		m := geometry.BulkheadMeasure{Bore: inch}
		s.Fittings = geometry.Fittings{Bulkheads: map[string]geometry.BulkheadMeasure{s.Inlet.Pipe.Size: m, s.Outlet.Pipe.Size: m}}
	}), stocking)
	if f.Inlet.K != perCoupling || f.Inlet.Length != 6*inch || f.Inlet.Bore != inch || f.Outlet.Bore != inch {
		t.Errorf("bulkhead fittings of 1 in bore: inlet %+v, outlet bore %v", f.Inlet, f.Outlet.Bore)
	}
	f = OfSilo(invented(t, func(s *geometry.Spec) {
		s.Inlet.Joint = geometry.JointBulkhead
		s.Fittings = geometry.Fittings{Bulkheads: map[string]geometry.BulkheadMeasure{s.Inlet.Pipe.Size: {Ends: geometry.EndThread}}}
	}), stocking)
	if f.Inlet.K != 2*perCoupling {
		t.Errorf("an adapter in a bulkhead fitting: %+v", f.Inlet)
	}
	f = OfSilo(invented(t, func(s *geometry.Spec) { s.Drum.FootOutside = s.Drum.Outside + 3*inch }), stocking)
	if f.SeatAcross != 0 || f.SeatHeight != 0 {
		t.Errorf("not seated: %v, %v", f.SeatAcross, f.SeatHeight)
	}
}

// The losses taken on the way are those of the table that is shown.
func TestLossesAreTheTables(t *testing.T) {
	table := map[string]string{}
	for _, r := range flow.LossTable().Rows {
		table[r[0]] = r[1]
	}
	for name, k := range map[string]float64{
		"entrance, sharp": flatFace, "entrance, pipe reaching in": reachesIn, "coupling or union": perCoupling,
		"elbow 90°, socket or thread": elbow, "tee, branch": teeBranch, "tee, straight through": teeRun,
		"swing check valve": swingCheck, "foot valve, hinged, with strainer": hingedFoot, "foot valve, poppet, with strainer": poppetFoot,
	} {
		if got := plain(k); got != table[name] {
			t.Errorf("%s: K %s is taken, the table has %q", name, got, table[name])
		}
	}
}

// A slot's ends are half circles in any units: what rounding leaves between
// half its height, worked out anew from sill and top, and the radius of its ends
// does not keep the silo from being reckoned with.
func TestSlotCornerFitsItsSlot(t *testing.T) {
	for k := range 400 {
		below := measure.Length(30 + 0.37*float64(k))
		f := OfSilo(invented(t, func(s *geometry.Spec) { s.Handle.BelowRim, s.Handle.Height, s.Outlet.BelowRim = below, 50, 250 }), stocking)
		if err := f.Check(); err != nil {
			t.Fatalf("%.2f mm below the rim: %v", below.MM(), err)
		}
	}
}
