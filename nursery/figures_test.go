package nursery

import (
	"math"
	"testing"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/nursery/sea"
)

// What is taken when the job does not tell, and what findings are held to:
// common practice, no source.
func TestCustom(t *testing.T) {
	f := cove()
	w, err := sea.At(30, 15)
	if err != nil {
		t.Fatal(err)
	}
	p := DefaultFarm()
	p.Pump.Power = 1500
	c, err := p.curve(w)
	if err != nil {
		t.Fatal(err)
	}
	if h := c.Head(0); math.Abs(h.Metres()-20) > 1e-9 {
		t.Errorf("a pump of 1500 W gives %v m at no flow, 20 m is taken", h.Metres())
	}

	// The mesh's opening is 1/16 in, 1.5875 mm; 1.2 of it are 1.905 mm.
	q := DefaultFarm().stocking(invented(t), false)
	if d := q.Seed.Size.MM(); math.Abs(d-1.905) > 1e-6 {
		t.Errorf("seed of %v mm is taken on a mesh of 1/16 in", d)
	}

	// The widest drum and 150 mm.
	rooms, of, err := f.rooms([]Count{{invented(t), 8, 0}}, w)
	if err != nil {
		t.Fatal(err)
	}
	if d := f.spacing(rooms) - invented(t).Spec.Drum.Outside; math.Abs(d.MM()-150) > 1e-9 {
		t.Errorf("silos stand %v mm apart past their width", d.MM())
	}

	// An evenness and a flow that no pipe gives: less a fiftieth and a tenth of
	// what the widest do.
	f.Limits.Evenness, f.Supply.Each = 1, 0
	curve, err := f.curve(w)
	if err != nil {
		t.Fatal(err)
	}
	sys, err := f.system(w, curve, rooms, of)
	if err != nil {
		t.Fatal(err)
	}
	z, err := f.sizes(sys, rooms)
	if err != nil {
		t.Fatal(err)
	}
	all := bores("sch40")
	wide, err := choice{all[len(all)-1], all[len(all)-1]}.solve(sys)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(z.Evenness-0.98*wide.Evenness) > 1e-9 {
		t.Errorf("held to an evenness of %v, the widest pipes give %v", z.Evenness, wide.Evenness)
	}
	f.Supply.Each = 1000 * lmin
	if z, err = f.sizes(sys, rooms); err != nil {
		t.Fatal(err)
	}
	if math.Abs(float64(z.Each)-0.9*float64(leastOf(wide))) > 1e-6 {
		t.Errorf("held to %v L/min each, the widest pipes give %v", z.Each.LMin(), leastOf(wide).LMin())
	}

	// 2 ft of suction head over what the pump requires.
	for over, want := range map[measure.Length]geometry.Level{2*measure.Foot - 1: geometry.Caution, 2*measure.Foot + 1: geometry.OK} {
		var s Study
		s.Given.NPSH = true
		s.Pumping = &Pumping{}
		s.Pumping.Result.NPSH.Known, s.Pumping.Result.NPSH.Available, s.Pumping.Result.NPSH.Margin = true, 5*metre, over
		if got := s.npsh(measure.UnitMM)[0].Level; got != want {
			t.Errorf("%v mm over: %v", over, got)
		}
	}
}
