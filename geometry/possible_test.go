package geometry

import (
	"math"
	"testing"

	"silowright/geometry/measure"
)

// possibleSpec is an invented drum with the defaults for it.
func possibleSpec() Spec {
	const in = measure.Inch
	return DefaultSpec(Drum{Label: "A", Count: 1, Outside: 23 * in, Height: 34 * in, Wall: in / 5,
		FootOutside: 21 * in, FootHeight: 2 * in, HeadRecess: in,
		Hoops: []Hoop{{10 * in, 12 * in, 24 * in}, {22 * in, 24 * in, 24 * in}}}, measure.UnitInch)
}

func TestDefaultsArePossible(t *testing.T) {
	if f, bad := possibleSpec().Impossible(); bad {
		t.Errorf("%+v", f)
	}
}

// Each row moves one size just past what the others leave, and then just
// within. Bounds are worked out by hand in the reason.
func TestImpossible(t *testing.T) {
	const in = measure.Inch
	for _, c := range []struct {
		reason   string
		key      string
		at       func(*Spec) *length
		bad, fit length
	}{
		{"the foot is no wider than the wall, 23 in", "drum.foot_outside", func(s *Spec) *length { return &s.Drum.FootOutside }, 23.01 * in, 23 * in},
		{"the upper hoop begins above the lower one, which ends at 12 in", "drum.hoops.from", func(s *Spec) *length { return &s.Drum.Hoops[1].From }, 11.99 * in, 12.5 * in},
		{"a hoop ends above where it begins, 22 in", "drum.hoops.to", func(s *Spec) *length { return &s.Drum.Hoops[1].To }, 22 * in, 22.1 * in},
		{"a hoop ends at the drum's height, 34 in", "drum.hoops.to", func(s *Spec) *length { return &s.Drum.Hoops[1].To }, 34.01 * in, 34 * in},
		{"a hoop stands out from the wall, 23 in", "drum.hoops.outside", func(s *Spec) *length { return &s.Drum.Hoops[0].Outside }, 23 * in, 23.1 * in},
		{"the head and its thickness lie within the base, 34 - 22 = 12 in", "drum.head_recess", func(s *Spec) *length { return &s.Drum.HeadRecess }, 11.9 * in, 11.7 * in},
		{"ring and two kerfs of 1/16 leave 10 mm above the foot's 2 in: 22 - 2 - 1/8 in - 10 mm = 494.8 mm", "ring.width", func(s *Spec) *length { return &s.Ring.Width }, 495, 494},
		{"the lattice lies within the foot, 21 - 2/5 in less 2 mm = 521.2 mm", "lattice.across", func(s *Spec) *length { return &s.Lattice.Across }, 521.5, 521},
		{"the outlet lies on the body: 22 - 1/8 - 1 in = 20 7/8 in", "outlet.below_rim", func(s *Spec) *length { return &s.Outlet.BelowRim }, 20.875 * in, 20.8 * in},
		{"the inlet lies on the base, 12 in", "inlet.above_ground", func(s *Spec) *length { return &s.Inlet.AboveGround }, 12 * in, 11.9 * in},
		{"the drain lies on the base, 12 in", "drain.above_ground", func(s *Spec) *length { return &s.Drain.AboveGround }, 12 * in, 11.9 * in},
		{"once round is 23π = 72.257 in", "outlet.round", func(s *Spec) *length { return &s.Outlet.Round }, 72.26 * in, 72.25 * in},
		{"the side hole lies on the pipe, 14 in", "pipe_silo.outlet_above_screen", func(s *Spec) *length { return &s.Pipe.OutletAboveScreen }, 14 * in, 13.9 * in},
	} {
		s := possibleSpec()
		*c.at(&s) = c.bad
		f, bad := s.Impossible()
		if !bad || f.Key != c.key || f.Why == "" || f.Hint == "" {
			t.Errorf("%s: at %v mm got %+v, %v; want a fault of %s", c.reason, c.bad, f, bad, c.key)
		}
		if f.Value != c.bad || (c.bad >= f.Low && c.bad <= f.High) {
			t.Errorf("%s: fault holds %v within [%v, %v]", c.reason, f.Value, f.Low, f.High)
		}
		s = possibleSpec()
		*c.at(&s) = c.fit
		if f, bad := s.Impossible(); bad && f.Key == c.key {
			t.Errorf("%s: at %v mm refused: %+v", c.reason, c.fit, f)
		}
	}
}

// The widest bar that the fault offers does open: its first opening has three
// pilots apart from one another and an area; a bar 1 mm wider is refused.
func TestWidestBarOpens(t *testing.T) {
	for bars := 2; bars <= 6; bars++ {
		for _, edge := range []Edge{EdgeArc, EdgeStraight} {
			s := possibleSpec()
			s.Lattice.Bars, s.Lattice.Edge, s.Lattice.BarWidth = bars, edge, 15*measure.Inch
			f, bad := s.Impossible()
			if !bad || f.Key != "lattice.bar_width" {
				t.Fatalf("%d bars of 15 in: %+v", bars, f)
			}
			s.Lattice.BarWidth = f.High - 0.001
			if f, bad := s.Impossible(); bad {
				t.Fatalf("%d bars: the width offered is refused: %+v", bars, f)
			}
			l := lattice(s)
			for i, p := range l.Pilots {
				q := l.Pilots[(i+1)%3]
				if d := distance(p, q); !(d > s.Lattice.Pilot/2) || math.IsNaN(float64(d)) {
					t.Errorf("%d bars, %s: pilots %v mm apart", bars, edge, d)
				}
			}
			if !(l.Area > 0) {
				t.Errorf("%d bars, %s: area %v", bars, edge, l.Area)
			}
			s.Lattice.BarWidth = f.High + 1
			if _, bad := s.Impossible(); !bad {
				t.Errorf("%d bars: a wider bar than offered is taken", bars)
			}
		}
	}
}
