package flow

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"silowright/geometry/measure"
	"silowright/nursery/sea"
)

// schillerNaumann is the terminal Re of a sphere by the drag of Schiller and
// Naumann (1933), C = 24/Re·(1 + 0.15·Re^0.687), Re up to 1000: ¾·C·Re² = Ar.
func schillerNaumann(ar float64) float64 {
	return math.Exp(root(func(x float64) float64 {
		re := math.Exp(x)
		return 18*re*(1+0.15*math.Pow(re, 0.687)) - ar
	}, -20, 20))
}

// khanRichardson is the exponent of Richardson and Zaki for spheres by Khan
// and Richardson (1989), (4.8 + 2.4·x)/(1 + x), x = 0.043·Ar^0.57 (from
// memory).
func khanRichardson(ar float64) float64 {
	x := 0.043 * math.Pow(ar, 0.57)
	return (4.8 + 2.4*x) / (1 + x)
}

// grit is spheres of 1.5 mm and specific gravity 2.5, poured to voidage 0.4.
var grit = Bed{Mass: 1, Size: 1.5, Density: 2500, Voidage: 0.4, Sphericity: 1}

// Worked questions on packed and fluidised beds, university course in
// particle mechanics: 1.5 mm spheres, voidage 0.4, in water of 1000 kg/m³ and
// 1 mPa·s. Ergun: ΔP/L = 375e3·V + 10.94e6·V². Fluidising at 16.04 mm/s by
// Ergun and 15.02 mm/s by Wen and Yu (Ar 49,663, Re 22.53).
func TestBedWorked(t *testing.T) {
	w := water(1000, 1e-3)
	for _, v := range []float64{0.001, 0.005, 0.01, 0.016} {
		got, _ := grit.ergun(w, 1, measure.Speed(v)*measure.MetrePerSecond)
		closeTo(t, "Ergun, Pa/m", got, 375e3*v+10.94e6*v*v, 5e-4)
	}
	s := grit.At(w, 1e6, 1)
	closeTo(t, "Ar", archimedes(w, grit.Size, grit.Density), 49663, 5e-4)
	closeTo(t, "fluidises, mm/s", float64(s.Fluidises), 16.04, 1e-3)
	closeTo(t, "Wen and Yu, mm/s", float64(s.WenYu), 15.02, 1e-3)
	closeTo(t, "Re", s.WenYu.MS()*0.0015/1e-6, 22.53, 1e-3)
}

// The same course: 0.5 m of 1 mm spheres of 2500 kg/m³ at voidage 0.4 is
// carried by 4,414.5 Pa (worked with g = 9.81).
func TestBedWeight(t *testing.T) {
	w := water(1000, 1e-3)
	b := Bed{Mass: 0.5 * 0.6 * 2500, Size: 1, Density: 2500, Voidage: 0.4, Sphericity: 1}
	s := b.At(w, 1e6, 50)
	closeTo(t, "poured, m", s.Poured.Metres(), 0.5, 1e-12)
	closeTo(t, "drop, Pa", float64(s.Drop), 4414.5, 5e-4)
	if s.State != Fluidised {
		t.Errorf("%v", s.State)
	}
}

// A sphere's terminal speed by Haider and Levenspiel lies within 6 % of
// Schiller and Naumann's drag; the exponent that joins both ends of the
// fluidised bed within a third of Khan and Richardson's.
func TestSettling(t *testing.T) {
	w := water(1000, 1e-3)
	for d := 0.3; d < 4; d *= 1.2 {
		b := grit
		b.Size, b.Density = measure.Length(d), 1500
		ar := archimedes(w, b.Size, b.Density)
		re := b.terminal(w).MS() * d * 1e-3 / 1e-6
		if re < 1000 {
			closeTo(t, "terminal Re", re, schillerNaumann(ar), 0.06)
		}
		s := b.At(w, 1e6, 1)
		n := math.Log(float64(s.Sinks/s.Fluidises)) / math.Log(1/b.Voidage)
		closeTo(t, "exponent", n, khanRichardson(ar), 0.34)
		if n < khanRichardson(ar)*0.95 {
			t.Errorf("%g mm: exponent %.2f, Khan and Richardson %.2f", d, n, khanRichardson(ar))
		}
	}
}

// The same relation worked through apart, bisecting ¾·C·Re² = Ar with the
// coefficients of Haider and Levenspiel (Powder Technology 58, 1989, table 6,
// from memory), for grains of 1500 kg/m³ in water of 1000 kg/m³ and 1 mPa·s:
// mm/s for spheres of 0.3, 2, 20 and 60 mm, which lie where A, B, C' and D count.
func TestSettlingOfOddShapes(t *testing.T) {
	w := water(1000, 1e-3)
	for _, c := range []struct{ sphericity, small, middling, large, largest float64 }{
		{0.5, 11.151942207, 63.410131414, 189.676795135, 329.035015932},
		{0.6, 12.713804282, 74.518034322, 219.510541890, 380.927409393},
		{0.8, 14.985712959, 107.815555206, 303.869825316, 524.607219414},
		{1.0, 16.116966021, 131.861399640, 543.273000309, 896.425189631},
	} {
		for d, want := range map[measure.Length]float64{0.3: c.small, 2: c.middling, 20: c.large, 60: c.largest} {
			b := Bed{Mass: 1, Size: d, Density: 1500, Voidage: 0.5, Sphericity: c.sphericity}
			closeTo(t, "terminal speed, mm/s", float64(b.terminal(w)), want, 1e-8)
		}
	}
}

// At high Reynolds numbers bodies as long as they are wide fall with C = 5.31 −
// 4.88·φ (Pettyjohn and Christiansen, Chemical Engineering Progress 44, 1948,
// from memory: tetrahedron, cube, octahedron, cube without its corners).
func TestDragOfSolids(t *testing.T) {
	w := water(1000, 1e-3)
	for _, p := range []float64{0.67, 0.806, 0.846, 0.906} {
		b := Bed{Mass: 1, Size: 60, Density: 1500, Voidage: 0.5, Sphericity: p}
		re := b.terminal(w).MS() * b.Size.Metres() / 1e-6
		closeTo(t, "drag", 4.0/3*archimedes(w, b.Size, b.Density)/(re*re), 5.31-4.88*p, 0.09)
	}
}

// The drop meets the bed's weight at Fluidises and never falls; the bed lies,
// is carried, washes out, in that order, and its depth never falls before.
func TestBedMonotone(t *testing.T) {
	w, err := sea.At(30, 15)
	if err != nil {
		t.Fatal(err)
	}
	r := rand.New(rand.NewPCG(5, 6))
	for range 200 {
		b := Bed{Mass: measure.Mass(0.1 + 20*r.Float64()), Size: measure.Length(0.3 + 10*r.Float64()), Density: measure.Density(1100 + 900*r.Float64()),
			Voidage: 0.35 + 0.3*r.Float64(), Sphericity: 0.5 + 0.5*r.Float64()}
		if err := b.Check("seed"); err != nil {
			t.Fatal(err)
		}
		at := b.At(w, 2e5, 0)
		here, _ := b.ergun(w, at.Poured.Metres(), at.Fluidises)
		closeTo(t, "drop where it fluidises", here, float64(at.Most), 1e-9)
		last := at
		for v := measure.Speed(0.01); v < 1500; v *= 1.03 {
			s := b.At(w, 2e5, v)
			switch {
			case s.Drop < last.Drop, s.State < last.State, s.Voidage < last.Voidage,
				s.State != WashingOut && s.Depth < last.Depth, math.IsInf(float64(s.Depth), 0),
				s.State == Packed && s.Depth != s.Poured:
				t.Fatalf("%+v: %+v after %+v", b, s, last)
			}
			// the solids are all there
			if s.State != WashingOut {
				closeTo(t, "solids", s.Depth.Metres()*(1-s.Voidage)*0.2, float64(b.Mass)/float64(b.Density), 1e-9)
			}
			last = s
		}
		if last.State != WashingOut {
			t.Errorf("%+v: %v at 1.5 m/s", b, last.State)
		}
	}
}

func TestNoBed(t *testing.T) {
	w := water(1000, 1e-3)
	if s := (Bed{}).At(w, 1e5, 10); s != (BedState{Speed: 10, Voidage: 1}) || s.State.String() != "no seed" {
		t.Errorf("%+v", s)
	}
	if h, slope := (Bed{}).loss(w, 1e5, 10); h != 0 || slope != 0 {
		t.Errorf("%v, %v", h, slope)
	}
}

func TestBedCheck(t *testing.T) {
	if err := (Bed{}).Check("seed"); err != nil {
		t.Error(err)
	}
	for key, change := range map[string]func(*Bed){
		"seed.mass":       func(b *Bed) { b.Mass = -1 },
		"seed.size":       func(b *Bed) { b.Size = 0 },
		"seed.density":    func(b *Bed) { b.Density = 1000 },
		"seed.voidage":    func(b *Bed) { b.Voidage = 1 },
		"seed.sphericity": func(b *Bed) { b.Sphericity = 0 },
	} {
		b := grit
		change(&b)
		if err := b.Check("seed"); err == nil || !strings.HasPrefix(err.Error(), key+": ") || !strings.Contains(err.Error(), "hint: ") {
			t.Errorf("%s: %v", key, err)
		}
	}
}
