package manifold

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"silowright/geometry/measure"
)

// Elevations in mm over low water. The silos stand on a float or a bench with
// the inlet under the mesh; the rules are hydrostatics: water runs to the lower
// level by any way that is open and full, and stops where air gets in.
func TestPowerFailure(t *testing.T) {
	silo := func(change func(*StandingSilo)) StandingSilo {
		o := StandingSilo{
			Name: "A", Level: 1650, Outlet: 1600, Inlet: 1100, Hose: Peak{Height: 1150}, SeedTop: 1400, SeedFoot: 1300,
		}
		if change != nil {
			change(&o)
		}
		return o
	}
	bench := func(change func(*Standing), silos ...StandingSilo) Standing {
		s := Standing{Source: 0, Pump: 500, Main: Peak{Height: 1000}, Manifold: Peak{Height: 1000}, Silos: silos}
		if change != nil {
			change(&s)
		}
		return s
	}
	high := silo(nil)
	low := silo(func(o *StandingSilo) { o.Name, o.Level, o.Outlet = "B", 1400, 1350 })
	tests := []struct {
		reason string
		s      Standing
		want   []SiloFailure
		prime  bool
	}{
		{"nothing holds: down to the inlet, under the mesh", bench(nil, high),
			[]SiloFailure{{Name: "A", Way: Back, Level: 1100, Siphon: true, Bare: true}}, false},
		{"a foot valve holds: stands at the outlet", bench(func(s *Standing) { s.Check = true }, high),
			[]SiloFailure{{Name: "A", Way: Stays, Level: 1600}}, true},
		{"its own check valve holds, the pump still loses its water", bench(nil, silo(func(o *StandingSilo) { o.Check = true })),
			[]SiloFailure{{Name: "A", Way: Stays, Level: 1600}}, false},
		{"a shut valve holds too", bench(nil, silo(func(o *StandingSilo) { o.Shut = true })),
			[]SiloFailure{{Name: "A", Way: Stays, Level: 1600}}, false},
		{"hose looped over the outlet's level, unbroken: a siphon", bench(nil, silo(func(o *StandingSilo) { o.Hose.Height = 2000 })),
			[]SiloFailure{{Name: "A", Way: Back, Level: 1100, Siphon: true, Bare: true}}, false},
		{"the same loop with a vacuum breaker: stands", bench(nil, silo(func(o *StandingSilo) { o.Hose = Peak{2000, true} })),
			[]SiloFailure{{Name: "A", Way: Stays, Level: 1600}}, false},
		{"a vented loop in the bed's height wets only its foot", bench(nil, silo(func(o *StandingSilo) { o.Hose = Peak{1350, true} })),
			[]SiloFailure{{Name: "A", Way: Back, Level: 1350, Part: true}}, false},
		{"a vented loop at the bed's top keeps it wet", bench(nil, silo(func(o *StandingSilo) { o.Hose = Peak{1400, true} })),
			[]SiloFailure{{Name: "A", Way: Back, Level: 1400}}, false},
		{"hose ends in air over the rim: nothing to draw", bench(nil, silo(func(o *StandingSilo) { o.Inlet, o.Hose.Height = 1800, 1900 })),
			[]SiloFailure{{Name: "A", Way: Stays, Level: 1600}}, false},
		{"overhead manifold, unbroken: a siphon over it", bench(func(s *Standing) { s.Manifold.Height = 2500 }, high),
			[]SiloFailure{{Name: "A", Way: Back, Level: 1100, Siphon: true, Bare: true}}, false},
		{"overhead manifold with a vent: stands", bench(func(s *Standing) { s.Manifold = Peak{2500, true} }, high),
			[]SiloFailure{{Name: "A", Way: Stays, Level: 1600}}, false},
		{"a loop higher than air can push breaks by itself", bench(func(s *Standing) { s.Main.Height = 12000 }, high),
			[]SiloFailure{{Name: "A", Way: Stays, Level: 1600}}, false},
		{"a hair over 10 m of water breaks", bench(func(s *Standing) { s.Main.Height = 1600 + 10_010 }, high),
			[]SiloFailure{{Name: "A", Way: Stays, Level: 1600}}, false},
		{"a hair under 10 m runs", bench(func(s *Standing) { s.Main.Height = 1600 + 9_990 }, high),
			[]SiloFailure{{Name: "A", Way: Back, Level: 1100, Siphon: true, Bare: true}}, false},
		{"floating unit: the sea outside stands in the bed", bench(func(s *Standing) { s.Source, s.Pump, s.Main.Height, s.Manifold.Height = 1380, 900, 900, 900 }, high),
			[]SiloFailure{{Name: "A", Way: Back, Level: 1380, Part: true}}, true},
		{"pond over the outlet feeds on through check valves", bench(func(s *Standing) { s.Source, s.Check = 1700, true }, silo(func(o *StandingSilo) { o.Check = true })),
			[]SiloFailure{{Name: "A", Way: Onward, Level: 1600}}, true},
		{"pond over the outlet but a vented peak over the pond", bench(func(s *Standing) { s.Source, s.Main, s.Check = 1700, Peak{2000, true}, true }, high),
			[]SiloFailure{{Name: "A", Way: Stays, Level: 1600}}, true},
		{"foot valve holds, one silo lower: the higher spills through it", bench(func(s *Standing) { s.Check = true }, high, low),
			[]SiloFailure{{Name: "A", Way: Across, Level: 1350, Part: true}, {Name: "B", Way: Stays, Level: 1350, Part: true}}, true},
		{"the same with the higher's own check valve", bench(func(s *Standing) { s.Check = true }, silo(func(o *StandingSilo) { o.Check = true }), low),
			[]SiloFailure{{Name: "A", Way: Stays, Level: 1600}, {Name: "B", Way: Stays, Level: 1350, Part: true}}, true},
		{"two alike behind a foot valve stand", bench(func(s *Standing) { s.Check = true }, high, high),
			[]SiloFailure{{Name: "A", Way: Stays, Level: 1600}, {Name: "A", Way: Stays, Level: 1600}}, true},
	}
	for _, tt := range tests {
		t.Run(tt.reason, func(t *testing.T) {
			got, err := PowerFailure(tt.s)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(tt.want, got.Silos); diff != "" {
				t.Errorf("-want +got:\n%s", diff)
			}
			if got.Prime != tt.prime {
				t.Errorf("prime kept: %v, want %v", got.Prime, tt.prime)
			}
			dry := 0
			for _, f := range got.Silos {
				if f.Bare || f.Part {
					dry++
				}
			}
			if dry != got.Dry {
				t.Errorf("%d dry, want %d", got.Dry, dry)
			}
		})
	}
}

func TestPowerFailureSays(t *testing.T) {
	s := Standing{Pump: 500, Silos: []StandingSilo{{Name: "silo 1", Level: 1650, Outlet: 1600, Inlet: 1100, Hose: Peak{Height: 2000}, SeedTop: 1400, SeedFoot: 1300}}}
	f, err := PowerFailure(s)
	if err != nil {
		t.Fatal(err)
	}
	want := "silo 1: water runs back to the source, drawn by a siphon that a vent at the highest point would end, down to 1100 mm (43 5/16 in); the seed is left dry"
	if got := f.Silos[0].Says(measure.UnitMM); got != want {
		t.Errorf("%q, want %q", got, want)
	}
	for _, part := range []string{"seed is left dry in 1 of 1 silos", "must be primed", "siphon draws down 1", Oxygen} {
		if !strings.Contains(f.Says(), part) {
			t.Errorf("%q lacks %q", f.Says(), part)
		}
	}
}
