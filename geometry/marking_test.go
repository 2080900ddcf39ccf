package geometry

import (
	"math"
	"testing"

	"silowright/geometry/measure"
	"silowright/geometry/path"
)

// markedSilo is an invented drum 20 in across, solved by hand as far as
// marking needs.
func markedSilo() Silo {
	in := func(x float64) length { return length(x) * measure.Inch }
	var s Silo
	s.Spec.Drum = Drum{Outside: in(20), Height: in(34), Wall: in(0.2)}
	s.Spec.Ring.Width = in(1)
	s.Spec.Lattice = LatticeSpec{Across: in(18), Bars: 2, BarWidth: in(1.5), Pilot: in(0.25)}
	s.Stations = Stations{BaseCut: in(23), RingTop: in(22.9375), RingBottom: in(21.9375), Rim: in(21.875), BaseHeight: in(11)}
	quarter := length(math.Pi) * in(5)
	s.Outlet = Hole{Name: "outlet", Part: "body", Height: in(15.875), BelowRim: in(6)}
	s.Inlet = Hole{Name: "inlet", Part: "base", Height: in(4)}
	s.Drain = Hole{Name: "drain", Part: "base", Height: in(4), Round: 2 * quarter}
	for i := range s.Slots {
		s.Slots[i] = Slot{Top: in(2), Sill: in(4), Length: in(4.5), CornerR: in(1), Round: quarter * length(1+2*i)}
	}
	s.Pipe = PipeSilo{Outside: in(8.4), Hole: Hole{Part: "pipe silo", Height: in(9), BelowRim: in(5)}}
	s.Ring = Ring{Length: in(59), InnerRadius: in(9.3), Screws: 5, JointEdge: in(0.5), Step: in(14)}
	s.Lattice.Openings = 4
	return s
}

// The chord a quarter of the way round is R√2, half way round 2R, and three
// quarters again R√2 (Euclid, Elements IV.6: the square in a circle).
func TestChordFromDatum(t *testing.T) {
	want := map[string]float64{"outlet, centre": 0, "handle slot 1, middle": 10 * math.Sqrt2, "handle slot 2, middle": 10 * math.Sqrt2, "drain, centre": 20}
	seen := 0
	for _, m := range Marks(markedSilo()) {
		w, ok := want[m.What]
		if !ok {
			continue
		}
		seen++
		if math.Abs(m.Chord.Inches()-w) > 1e-9 {
			t.Errorf("%s: chord %.6f in, want %.6f", m.What, m.Chord.Inches(), w)
		}
		if got := m.Round + m.Leftwards(); math.Abs(got.Inches()-20*math.Pi) > 1e-9 && m.Round != 0 {
			t.Errorf("%s: right and left way together %.4f in, want once round", m.What, got.Inches())
		}
	}
	if seen != len(want) {
		t.Errorf("found %d of %d points", seen, len(want))
	}
}

// Every chord agrees with the distance between the two points as placed in
// the plane (Pythagoras).
func TestChordAgainstCoordinates(t *testing.T) {
	n := 0
	for _, m := range Marks(markedSilo()) {
		if m.Radius == 0 || m.AllRound {
			continue
		}
		n++
		a, r := float64(m.Round/m.Radius), float64(m.Radius)
		d := math.Hypot(r*math.Cos(a)-r, r*math.Sin(a))
		if math.Abs(d-float64(m.Chord)) > 1e-9 {
			t.Errorf("%s: chord %v, by coordinates %v", m.What, m.Chord, d)
		}
		if m.Round < 0 || m.Leftwards() < 0 {
			t.Errorf("%s: %v round the wall is more than once round", m.What, m.Round)
		}
	}
	if n < 12 {
		t.Errorf("only %d points on a wall", n)
	}
}

// A slot beside the datum has an end hole left of it: its distance to the
// right goes nearly once round.
func TestMarkLeftOfDatum(t *testing.T) {
	s := markedSilo()
	s.Slots[0].Round = 0
	for _, m := range Marks(s) {
		if m.What == "handle slot 1, left end hole" {
			if math.Abs(m.Leftwards().Inches()-1.25) > 1e-9 {
				t.Errorf("left end %.4f in left of the datum, want 4 1/2 / 2 - 1 = 1 1/4", m.Leftwards().Inches())
			}
			return
		}
	}
	t.Error("no left end hole")
}

// Heights up and down make up the part, and the ring's last screw stands as
// far from its end as the first from the other.
func TestMarksAddUp(t *testing.T) {
	s := markedSilo()
	s.Ring.Step = (length(2*math.Pi)*s.Ring.InnerRadius - 2*s.Ring.JointEdge) / 4
	whole := map[string]length{"drum": s.Spec.Drum.Height, "body": s.Stations.Rim, "base": s.Stations.BaseHeight, "pipe silo": 14 * measure.Inch}
	var screws []MarkedPoint
	for _, m := range Marks(s) {
		if w, ok := whole[m.Part]; ok && math.Abs(float64(m.Height+m.BelowRim-w)) > 1e-9 {
			t.Errorf("%s, %s: %v up and %v down do not make %v", m.Part, m.What, m.Height, m.BelowRim, w)
		}
		if m.Part == "ring strip" && m.Height > 0 {
			screws = append(screws, m)
		}
	}
	if len(screws) != 5 {
		t.Fatalf("%d screws, want 5", len(screws))
	}
	if first, last := screws[0].Round, s.Ring.Length-screws[4].Round; math.Abs(float64(first-last)) > 1e-9 {
		t.Errorf("first screw %v from its end, last %v", first, last)
	}
}

// A lattice of two bars at right angles: an inner corner hole stands on the
// diagonal, √2·(half bar + half pilot) from the centre; rays on the circle are
// the sides of a square, R√2 apart.
func TestLatticeByCompass(t *testing.T) {
	s := markedSilo()
	in := measure.Inch
	y := 0.875 * in
	x := length(math.Sqrt(float64((9*in-0.125*in)*(9*in-0.125*in) - y*y)))
	s.Lattice.Pilots = [3]path.Point{path.Pt(y, y), path.Pt(x, y), path.Pt(y, x)}
	m := LatticeMarks(s)
	for _, c := range []struct {
		what      string
		got, want length
	}{
		{"circle", m.Circle, 9 * in},
		{"rays", m.RayChord, 9 * math.Sqrt2 * in},
		{"pilot line", m.PilotLine, 0.875 * in},
		{"inner hole", m.ApexPilot, 0.875 * math.Sqrt2 * in},
		{"outer hole, tangent inside the circle", m.OuterPilot, 8.875 * in},
		{"span", m.PilotSpan, (x - y) * math.Sqrt2},
	} {
		if math.Abs(float64(c.got-c.want)) > 1e-9 {
			t.Errorf("%s: %v, want %v", c.what, c.got, c.want)
		}
	}
	if m.Rays != 4 || m.Openings != 4 {
		t.Errorf("%d rays, %d openings, want 4 and 4", m.Rays, m.Openings)
	}
}
