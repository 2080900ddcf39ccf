package seed

import (
	"errors"
	"math"
	"testing"

	"silowright/geometry/measure"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.6g, want %.6g ± %.2g", what, got, want, tol)
	}
}

const squareMetre measure.Area = 1e6

// flat is a plan in which all seed weighs each, whatever its size, near enough,
// and nothing grows or dies: the trade's own sums.
func flat(s Species, count int, each measure.Mass) Plan {
	p := Default(s)
	p.Count, p.Size, p.Weeks, p.GrowthLength, p.Survival = count, 4, 1, 0, 1
	p.Weights = []WeightPoint{{2, each / 4}, {4, each}, {8, each * 4}}
	p.Meshes = []Mesh{{In: Drum, Opening: 1}}
	p.DrumHouse = House{squareMetre, 1e4 * measure.LitrePerMinute}
	p.BedDepth = 500
	return p
}

func need(t *testing.T, p Plan) SiloNeed {
	t.Helper()
	n, err := Need(p)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// FAO Fisheries Technical Paper 471, §6.6.2: a barge nursery of 32 containers
// of 1 m², up to 120 kg each at 10 to 20 L/min/kg: over 1,200 L/min each, over
// 38,400 L/min in all. 1,200 L/min through 1 m² is 20 mm/s, worked out.
func TestBargeNursery(t *testing.T) {
	p := flat(Oyster, 32*120*10000, 0.1e-3)
	p.Load, p.Water = 120, 10
	n := need(t, p)
	w := n.Weeks[0]
	if n.Peak.Drum != 32 || w.Governs != ByLoad {
		t.Errorf("containers: got %d by %s, want 32 by load", n.Peak.Drum, w.Governs)
	}
	near(t, "all water, L/min", n.Peak.Flow.LMin(), 38400, 1e-6)
	near(t, "a container's water, L/min", w.PerSilo.Flow.LMin(), 1200, 1e-6)
	near(t, "upwelling, mm/s", float64(w.PerSilo.Speed), 20, 1e-9)
	near(t, "a container's seed, kg", w.PerSilo.Mass.Kg(), 120, 1e-9)
}

// FAO Fisheries Technical Paper 471, fig. 94: a closed upweller, a tank of
// 3 m³ and 10 cylinders of 60 g. 600 g a unit and 200 g/m³, worked out.
func TestClosedUpweller(t *testing.T) {
	p := flat(Clam, 600*1000, 1e-6)
	p.DrumHouse.Area = 1e4 // 60 g on 100 cm² is 6 kg/m²
	p.Load = 6
	w := need(t, p).Weeks[0]
	if w.Drum != 10 {
		t.Errorf("cylinders: got %d, want 10", w.Drum)
	}
	near(t, "a cylinder's seed, g", w.PerSilo.Mass.Kg()*1000, 60, 1e-9)
	near(t, "a unit's seed, g", w.Mass.Kg()*1000, 600, 1e-9)
	near(t, "seed in 3 m³, g", measure.Density(0.2).Of(3000*measure.Litre).Kg()*1000, w.Mass.Kg()*1000, 1e-9)
}

// FAO Fisheries Technical Paper 471, §6.1: a million oyster spat of 1 mm at
// about 0.3 mg, 0.30 kg; clams and scallops about 30 % lighter.
func TestSpatWeight(t *testing.T) {
	for _, c := range []struct {
		s  Species
		kg float64
	}{{Oyster, 0.30}, {Clam, 0.21}, {Scallop, 0.21}} {
		m, b, err := Weight(c.s, 1)
		if err != nil || b.Source == "" {
			t.Fatalf("%s: %v, source %q", c.s, err, b.Source)
		}
		near(t, c.s.String()+", a million, kg", m.Kg()*1e6, c.kg, 1e-12)
		p := Default(c.s)
		p.Count, p.Size, p.Meshes = 1e6, 1, []Mesh{{In: Drum, Opening: 0.3}}
		p.DrumHouse.Area = squareMetre
		near(t, c.s.String()+", default table, kg", need(t, p).Weeks[0].Mass.Kg(), c.kg, 1e-9)
		for _, l := range []Shell{0.5, 0.99, 1.01, 2, 10, Shell(math.NaN())} {
			var r *RangeError
			if _, _, err := Weight(c.s, l); !errors.As(err, &r) {
				t.Errorf("%s of %v mm: one point became a law: %v", c.s, l, err)
			}
		}
	}
	var r *RangeError
	if _, _, err := Weight(Mussel, 1); !errors.As(err, &r) || r.Source != "" {
		t.Errorf("mussel: got %v, want no published relation", err)
	}
}

// Hatchery handling notes: oysters on a 7 mm sieve weigh 0.15 to 0.25 g fresh
// graded. The default table and the default ratio fall in it.
func TestOystersOnSevenMillimetres(t *testing.T) {
	least, most, _, err := WeightOnSieve(Oyster, 7)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "least, g", least.Kg()*1000, 0.15, 1e-12)
	near(t, "most, g", most.Kg()*1000, 0.25, 1e-12)
	p := Default(Oyster)
	m, err := p.each(Sieve(7).Shell(p.SieveRatio))
	if err != nil || m < least || m > most {
		t.Errorf("default oyster held by 7 mm weighs %v g, %v; want 0.15 to 0.25", m.Kg()*1000, err)
	}
	for _, c := range []struct {
		s Species
		v Sieve
	}{{Oyster, 6}, {Oyster, 8}, {Clam, 7}} {
		if _, _, _, err := WeightOnSieve(c.s, c.v); err == nil {
			t.Errorf("%s on %v mm: no error outside the source", c.s, c.v)
		}
	}
}

// A batch shared by hand: 68 kg over 10 silos of 0.25 m² is 27.2 kg/m², and at
// 0.8 kg/L that is 34 mm deep.
func TestShare(t *testing.T) {
	s := Share(450001, 68, 800, 0.25e6, 10)
	if s.Count != 45000 {
		t.Errorf("got %d a silo, want 45000", s.Count)
	}
	near(t, "kg", s.Mass.Kg(), 6.8, 1e-12)
	near(t, "kg/m²", float64(s.Load), 27.2, 1e-12)
	near(t, "mm", float64(s.Depth), 34, 1e-12)
	if got := Share(1, 1, 800, 1, 0); got != (PerSilo{}) {
		t.Errorf("over no silos: %+v", got)
	}
}

// Bacher & Baud 1992, abstract: 120,000 oysters a square metre with 1 L/day
// each in summer, from 0.014 to 2.2 g in 60 days; 3 L/day each in winter. The
// rest is worked out.
func TestOystersInSummerAndWinter(t *testing.T) {
	for _, c := range []struct {
		season                string
		litresADay, lpm, mmps float64
	}{{"summer", 1, 83.33, 1.389}, {"winter", 3, 250, 4.167}} {
		p := flat(Oyster, 120000, 0.014e-3)
		p.WaterEach = measure.Flow(c.litresADay) * litrePerDay
		p.Water = 0.1
		w := need(t, p).Weeks[0]
		if w.Drum != 1 {
			t.Fatalf("%s: got %d silos, want the one square metre", c.season, w.Drum)
		}
		near(t, c.season+", L/min/m²", w.Flow.LMin(), c.lpm, 0.005)
		near(t, c.season+", mm/s", float64(w.PerSilo.Speed), c.mmps, 0.0005)
	}
	for _, g := range GrowthFigures() {
		rate, ok := g.PerDay()
		if !ok {
			continue
		}
		near(t, "growth, %/day", rate*100, 8.43, 0.005)
		near(t, "doubling, days", doubling(rate), 8.22, 0.005)
		near(t, "summer water, L/min/m²", (g.WaterEach * measure.Flow(g.PerArea)).LMin(), 83.33, 0.005)
		// Grown by the plan for 60 days at that rate: 56 days are 8 weeks, and
		// 0.014 g becomes 0.014·e^(0.08429·56).
		p := flat(Oyster, 1000, 0.014e-3)
		p.Weights = []WeightPoint{{4, 0.014e-3}, {40, 2.2e-3}}
		p.Growth, p.GrowthWeight, p.Weeks, p.LeaveOn = ByWeight, rate, 9, 40
		last := need(t, p).Weeks[8]
		near(t, "after 8 weeks, g", last.Each.Kg()*1000, 0.014*math.Pow(2.2/0.014, 56.0/60), 1e-9)
	}
}

// Pfeiffer & Rusch 2001, hard clams in a fluidised bed: 1.0 g/cm² from 4.4 to
// 5.9 mm in 14 days; 3.0 g/cm² from 4.2 to 6.0 mm in 28 days. 10 and 30 kg/m²,
// 0.75 and 0.45 mm a week, worked out. University of Florida: seed of 1 to
// 2 mm takes 6 to 12 weeks to 5 to 6 mm (clam) or 6 to 8 mm (oyster).
func TestPublishedGrowth(t *testing.T) {
	near(t, "1.0 g/cm²", float64(LoadOf(0.001, 100)), 10, 1e-12)
	near(t, "3.0 g/cm²", float64(LoadOf(0.003, 100)), 30, 1e-12)
	want := []struct {
		s           Species
		load        Load
		least, most float64
	}{
		{Clam, 10, 0.75, 0.75}, {Clam, 30, 0.45, 0.45},
		{Clam, 0, 3.0 / 12, 5.0 / 6}, {Oyster, 0, 4.0 / 12, 7.0 / 6},
	}
	i := 0
	for _, g := range GrowthFigures() {
		least, most, ok := g.PerWeek()
		if !ok {
			continue
		}
		if g.Species != want[i].s || g.Load != want[i].load || g.Basis.Source == "" {
			t.Errorf("row %d: got %s at %v (%s)", i, g.Species, g.Load, g.Basis)
		}
		near(t, g.Basis.Source+", least mm/week", float64(least), want[i].least, 1e-9)
		near(t, g.Basis.Source+", most mm/week", float64(most), want[i].most, 1e-9)
		i++
	}
	if i != len(want) {
		t.Errorf("got %d figures told by length, want %d", i, len(want))
	}
	// The plan grows the same: 4.4 mm at 0.75 mm a week is 5.9 mm in two weeks.
	p := flat(Clam, 1000, 1e-5)
	p.Size, p.GrowthLength, p.Weeks = 4.4, 0.75, 3
	near(t, "shell after 14 days", float64(need(t, p).Weeks[2].Shell), 5.9, 1e-9)
}

// Floating-upweller guide, Cornell Cooperative Extension: 10 silos from 55 gal
// drums on a pump rated 1,050 gpm. 105 gpm or 397 L/min each and 25.8 mm/s at
// a bore of 22.5 in, worked out: rated, not measured.
func TestTenDrumsOnOnePump(t *testing.T) {
	bore := 22.5 * measure.Inch
	p := flat(Oyster, 1, 0)
	p.DrumHouse = House{bore.Times(bore) * math.Pi / 4, 105 * measure.GallonPerMinute}
	p.Weights = []WeightPoint{{2, 1e-6}, {4, 1e-5}}
	// As much seed as 1,050 gpm serves at 10 L/min/kg.
	p.Water, p.Load = 10, 500
	p.Count = int((1050 * measure.GallonPerMinute).LMin() / 10 / 1e-5)
	w := need(t, p).Weeks[0]
	if w.Drum != 10 || w.Governs != ByWater {
		t.Fatalf("got %d silos by %s, want 10 by water", w.Drum, w.Governs)
	}
	near(t, "each, gpm", w.PerSilo.Flow.GPM(), 105, 0.001)
	near(t, "each, L/min", w.PerSilo.Flow.LMin(), 397, 0.5)
	near(t, "upwelling, mm/s", float64(w.PerSilo.Speed), 25.8, 0.05)
}

// A municipal land-based unit, field note: 75,000 clams in 20 trays, 2 to 3
// gpm each. 3,750 a tray, worked out.
func TestClamsInTrays(t *testing.T) {
	p := flat(Clam, 75000, 2e-5)
	p.DrumHouse = House{squareMetre, 2 * measure.GallonPerMinute}
	p.Water = WaterPerMass((40 * measure.GallonPerMinute).LMin() / 1.5)
	w := need(t, p).Weeks[0]
	if w.Drum != 20 || w.PerSilo.Count != 3750 {
		t.Errorf("got %d trays of %d, want 20 of 3750", w.Drum, w.PerSilo.Count)
	}
}

// Helgoland Marine Research, doi 10.1007/s10152-014-0419-y, table 3: juvenile
// mussel 1.5 to 25 mm, 0.0004·L^2.00 L/h. SRAC 4301: adult hard clam 7 to 8 L/h.
func TestClearance(t *testing.T) {
	for mm, lph := range map[Shell]float64{1.5: 0.0009, 5: 0.01, 10: 0.04, 25: 0.25} {
		q, b, err := Clearance(Mussel, mm)
		if err != nil || b.Source == "" {
			t.Fatal(err)
		}
		near(t, "mussel, L/h", q.LMin()*60, lph, 1e-12)
	}
	for _, c := range []struct {
		s Species
		l Shell
	}{{Mussel, 1.49}, {Mussel, 25.1}, {Mussel, Shell(math.Inf(1))}, {Clam, 5}, {Oyster, 5}, {Scallop, 5}} {
		var r *RangeError
		if _, _, err := Clearance(c.s, c.l); !errors.As(err, &r) {
			t.Errorf("%s of %v mm: got %v, want a range error", c.s, c.l, err)
		}
	}
	if adultClearance.species != Clam {
		t.Errorf("grown %s, want the clam", adultClearance.species)
	}
	near(t, "clam, least L/h", adultClearance.least.LMin()*60, 7, 1e-9)
	near(t, "clam, most L/h", adultClearance.most.LMin()*60, 8, 1e-9)
	// 100,000 mussels of 10 mm clear 4,000 L/h, two thirds of 100 L/min.
	f := FoodOf(Mussel, 100000, 10, 1e-4, 0.5, 100*measure.LitrePerMinute)
	near(t, "share cleared", f.Share, 4000.0/6000, 1e-12)
	if f.Outside != nil || f.Basis.Source != srcMussel {
		t.Errorf("mussel in range: got %v, %v", f.Outside, f.Basis)
	}
	f = FoodOf(Clam, 1000, 5, 2e-5, 0.5, measure.LitrePerMinute)
	near(t, "clam by the grower's 0.5 L/h/g on 20 g, share of 60 L/h", f.Share, 10.0/60, 1e-12)
	if f.Outside == nil || f.Basis.Source != "" {
		t.Errorf("clam: got %v, %v; want the grower's own number and why", f.Outside, f.Basis)
	}
	if f = FoodOf(Clam, 1000, 5, 2e-5, 0, measure.LitrePerMinute); f.Reckoned || f.Share != 0 || f.Outside == nil {
		t.Errorf("clam without a number: got %+v, want not reckoned", f)
	}
}
