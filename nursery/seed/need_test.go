package seed

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// cove is an invented lot: 600,000 clams of 1.5 mm, drums of 22 in bore,
// pipe silos of 8 in.
func cove() Plan {
	p := Default(Clam)
	p.Count, p.Size = 600000, 1.5
	bore, pipe := 22*measure.Inch, 7.9*measure.Inch
	p.DrumHouse.Area, p.PipeHouse.Area = bore.Times(bore)*math.Pi/4, pipe.Times(pipe)*math.Pi/4
	p.Meshes = []Mesh{{"40", Pipe, 0.435, 0}, {"24", Pipe, 0.808, 0}, {"drum", Drum, 1.566, 0}}
	return p
}

// The lot worked by hand: it comes 1.5 mm long, grows 0.75 mm a week, 97 %
// live. The smallest is 0.8·1.5 = 1.2 mm and gains 0.7·0.75 = 0.525 mm a week;
// times 0.7 that is held by 0.84, 1.2075, 1.575, 1.9425 mm. Mesh 0.435 holds
// from 0.522 mm, 0.808 from 0.9696, 1.566 from 1.8792: pipe silos on 40, then
// two weeks on 24, drum from week 4.
func TestWeeksByHand(t *testing.T) {
	n := need(t, cove())
	for i, w := range []struct {
		shell, smallest float64
		in              Kind
		mesh            string
		moved, newMesh  bool
	}{
		{1.5, 0.84, Pipe, "40", false, false},
		{2.25, 1.2075, Pipe, "24", false, true},
		{3, 1.575, Pipe, "24", false, false},
		{3.75, 1.9425, Drum, "drum", true, true},
	} {
		g := n.Weeks[i]
		near(t, "shell", float64(g.Shell), w.shell, 1e-12)
		near(t, "smallest", float64(g.Smallest), w.smallest, 1e-12)
		near(t, "count", float64(g.Count), 600000*math.Pow(0.97, float64(i)), 0.5)
		if g.In != w.in || g.Mesh.Name != w.mesh || g.Moved != w.moved || g.NewMesh != w.newMesh || !g.Held {
			t.Errorf("week %d: %s on %q, moved %v, new mesh %v", g.Week, g.In, g.Mesh.Name, g.Moved, g.NewMesh)
		}
	}
	// The mean is 10 mm, held by 7 mm, after 8.5/0.75 = 11.3 weeks: in week 13.
	last := n.Weeks[len(n.Weeks)-1]
	if !n.Reached || last.Week != 13 || !last.Leaves {
		t.Errorf("leaves in week %d, reached %v; want 13", last.Week, n.Reached)
	}
	// In week 11 the mean is 9 mm: between 5 mm, 27 mg and 10 mm, 210 mg that
	// is 27·(210/27)^(ln 1.8/ln 2) = 153.7 mg, times 600,000·0.97^10 = 68.0 kg,
	// over 30 kg/m² on 0.24525 m²: 9.24, ten drums, and 680 L/min.
	w := n.Weeks[10]
	near(t, "each, mg", w.Each.Kg()*1e6, 27*math.Pow(210.0/27, math.Log(1.8)/math.Log(2)), 1e-9)
	near(t, "mass, kg", w.Mass.Kg(), 68.0, 0.05)
	near(t, "flow, L/min", w.Flow.LMin(), 680, 0.5)
	if w.Drum != 10 || w.Governs != ByLoad {
		t.Errorf("week 11: %d drums by %s, want 10 by load", w.Drum, w.Governs)
	}
	want := []stay{
		{Pipe, cove().Meshes[0], 1, 1, 1.5, 0.84},
		{Pipe, cove().Meshes[1], 2, 3, 2.25, 1.2075},
		{Drum, cove().Meshes[2], 4, 13, 3.75, 1.9425},
	}
	if d := cmp.Diff(want, stays(n), cmp.Comparer(func(a, b Sieve) bool { return math.Abs(float64(a-b)) < 1e-12 })); d != "" {
		t.Errorf("steps (-want +got):\n%s", d)
	}
}

// Each limit governs when it is the tightest, and the week keeps every limit.
func TestEachLimitGoverns(t *testing.T) {
	for _, c := range []struct {
		limit Limit
		set   func(*Plan)
	}{
		{ByDepth, func(p *Plan) { p.BedDepth = 2 }},
		{ByLoad, func(p *Plan) { p.Load = 1 }},
		{ByWater, func(p *Plan) { p.DrumHouse.Most = 2 * measure.LitrePerMinute }},
		{ByWaterEach, func(p *Plan) { p.WaterEach = 100 * litrePerDay }},
	} {
		p := cove()
		c.set(&p)
		for _, w := range need(t, p).Weeks[4:] {
			if w.Governs != c.limit || w.Drum < 2 {
				t.Errorf("week %d: %d drums by %s, want several by %s", w.Week, w.Drum, w.Governs, c.limit)
			}
			holdLimits(t, p, w)
		}
	}
}

// holdLimits: shared over the silos told, no limit is passed; over one fewer,
// one is.
func holdLimits(t *testing.T, p Plan, w Week) {
	t.Helper()
	// A silo counts as full and no more up to a billionth over.
	over := func(n int, by float64) bool {
		s, x := p.share(w, n), 1+by
		return float64(s.Load) > float64(p.Load)*x || float64(s.Depth) > float64(p.BedDepth)*x || float64(s.Flow) > float64(p.house(w.In).Most)*x
	}
	n := w.Drum + w.Pipe
	if over(n, 2e-9) {
		t.Errorf("week %d: %d silos pass a limit: %+v", w.Week, n, w.PerSilo)
	}
	if n > 1 && !over(n-1, 5e-10) {
		t.Errorf("week %d: %d silos would do, %d are told", w.Week, n-1, n)
	}
}

// anyPlan is a plan drawn at random over the keys' ranges near their defaults.
func anyPlan(rng *rand.Rand) Plan {
	p := Default(Species(rng.IntN(4)))
	vary := func(low, high float64) float64 { return low * math.Pow(high/low, rng.Float64()) }
	p.Count, p.Size = int(vary(1e3, 1e7)), Shell(vary(0.4, 4))
	p.DrumHouse = House{measure.Area(vary(1e5, 4e5)), measure.Flow(vary(20, 400)) * measure.LitrePerMinute}
	p.PipeHouse = House{measure.Area(vary(1e4, 6e4)), measure.Flow(vary(2, 40)) * measure.LitrePerMinute}
	p.BedDepth, p.Load, p.Water = measure.Length(vary(5, 100)), Load(vary(2, 100)), WaterPerMass(vary(2, 50))
	p.WaterEach = measure.Flow(vary(0.01, 1)) * litrePerDay
	p.GrowthLength, p.Survival = measure.Length(vary(0.1, 1)), vary(0.8, 1)
	if rng.IntN(2) == 0 {
		p.Growth, p.GrowthWeight = ByWeight, vary(0.01, 0.06)
	}
	for _, o := range []float64{0.154, 0.273, 0.435, 0.808} {
		p.Meshes = append(p.Meshes, Mesh{In: Pipe, Opening: measure.Length(o)})
	}
	p.Meshes = append(p.Meshes, Mesh{In: Drum, Opening: measure.Length(vary(0.4, 3))}, Mesh{In: Drum, Opening: 3})
	return p
}

// More seed never needs fewer silos or less water, in any week; and every week
// keeps the limits with as few silos as do.
func TestMoreSeedNeedsMore(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for range 300 {
		p := anyPlan(rng)
		few := need(t, p)
		more := p
		more.Count += 1 + rng.IntN(p.Count)
		many := need(t, more)
		for i, a := range few.Weeks {
			holdLimits(t, p, a)
			b := many.Weeks[i]
			if b.Drum < a.Drum || b.Pipe < a.Pipe || b.Flow < a.Flow {
				t.Fatalf("week %d: %d seed need %d + %d, %d need %d + %d", a.Week, p.Count, a.Drum, a.Pipe, more.Count, b.Drum, b.Pipe)
			}
		}
		if many.Peak.Drum < few.Peak.Drum || many.Peak.Pipe < few.Peak.Pipe || many.Peak.Flow < few.Peak.Flow {
			t.Fatalf("peak fell: %+v to %+v", few.Peak, many.Peak)
		}
	}
}

// The peak is the most of any week, and in the first week that has it.
func TestPeak(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 8))
	for range 100 {
		n := need(t, anyPlan(rng))
		var want Peak
		for i := len(n.Weeks) - 1; i >= 0; i-- {
			w := n.Weeks[i]
			if w.Drum >= want.Drum && w.Drum > 0 {
				want.Drum, want.DrumWeek = w.Drum, w.Week
			}
			if w.Pipe >= want.Pipe && w.Pipe > 0 {
				want.Pipe, want.PipeWeek = w.Pipe, w.Week
			}
			if w.Flow >= want.Flow {
				want.Flow, want.FlowWeek = w.Flow, w.Week
			}
		}
		if d := cmp.Diff(want, n.Peak); d != "" {
			t.Fatalf("peak (-want +got):\n%s", d)
		}
	}
}

// By load, seed stays in the pipe silos at hand while they're enough; when
// they're not it moves, and the drums' peak doesn't fall.
func TestMoveByLoad(t *testing.T) {
	p := cove()
	p.Move, p.PipeSilosAtHand = MoveByLoad, 40
	n := need(t, p)
	moved := false
	for _, w := range n.Weeks {
		if w.In == Pipe && w.Pipe > 40 {
			t.Errorf("week %d: %d pipe silos, 40 are at hand", w.Week, w.Pipe)
		}
		moved = moved || w.Moved
	}
	if byMesh := need(t, cove()); !moved || n.Peak.Pipe <= byMesh.Peak.Pipe || n.Peak.Drum != byMesh.Peak.Drum {
		t.Errorf("moved %v, peak %+v; by mesh %+v", moved, n.Peak, byMesh.Peak)
	}
	// In week 2, 582,000 clams of 2.25 mm at 2.5 mg are 1.5 kg: more than the
	// 0.95 kg on one pipe silo's 316 cm², and no drum mesh holds them yet.
	p.PipeSilosAtHand = 1
	n = need(t, p)
	if w, short := n.ShortOf(n.Peak.Drum, 1); !short || w.Week != 2 || w.Pipe != 2 {
		t.Errorf("short %v: %d pipe silos in week %d, want 2 in week 2", short, w.Pipe, w.Week)
	}
	wantFinding(t, Findings(p, n, measure.UnitMM), "seed.pipe-silos", geometry.Stop)
}

// A lot graded afresh comes to the limit again, and only then is told.
func TestGrade(t *testing.T) {
	p := cove()
	p.Weeks = 20
	var graded []int
	for _, w := range need(t, p).Weeks {
		if w.Grade {
			graded = append(graded, w.Week)
		}
	}
	// (1.2·1.5 + 1.3d)/(0.8·1.5 + 0.7d) = 1.7 at d = 2.18 of shell: 2.9 weeks,
	// week 4, at 3.75 mm; then 1.7 from there takes d = (1.7·0.8 − 1.2)·3.75/
	// (1.3 − 1.7·0.7) = 5.45: 7.3 weeks, week 12.
	if d := cmp.Diff([]int{4, 12}, graded); d != "" {
		t.Errorf("graded (-want +got):\n%s", d)
	}
}

// A table of weeks goes before the rates, week by week.
func TestWeekTable(t *testing.T) {
	p := cove()
	p.WeekTable = []WeekRate{{0.1, 0, 0.5}, {0.2, 0, 1}}
	n := need(t, p)
	near(t, "week 2", float64(n.Weeks[1].Shell), 1.6, 1e-12)
	near(t, "week 3", float64(n.Weeks[2].Shell), 1.8, 1e-12)
	near(t, "week 4", float64(n.Weeks[3].Shell), 2.55, 1e-12)
	if n.Weeks[1].Count != 300000 || n.Weeks[2].Count != 300000 || n.Weeks[3].Count != 291000 {
		t.Errorf("counts %d, %d, %d", n.Weeks[1].Count, n.Weeks[2].Count, n.Weeks[3].Count)
	}
}

// stay is the time the lot spends on one mesh.
type stay struct {
	In   Kind
	Mesh Mesh
	// From and To are the first and the last week on it.
	From int
	To   int
	// Shell and Smallest are as it comes onto the mesh.
	Shell    Shell
	Smallest Sieve
}

// stays returns the meshes the lot lies on, in the order of the weeks. Weeks in
// which no mesh holds it are left out.
func stays(n SiloNeed) []stay {
	var out []stay
	for _, w := range n.Weeks {
		if !w.Held {
			continue
		}
		if k := len(out) - 1; k >= 0 && out[k].In == w.In && out[k].Mesh == w.Mesh {
			out[k].To = w.Week
			continue
		}
		out = append(out, stay{w.In, w.Mesh, w.Week, w.Week, w.Shell, w.Smallest})
	}
	return out
}
