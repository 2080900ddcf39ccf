package seed

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"silowright/geometry"
	"silowright/geometry/measure"
)

func wantFinding(t *testing.T, fs []geometry.Finding, id string, l geometry.Level) {
	t.Helper()
	for _, f := range fs {
		if f.ID == id {
			if f.Level != l {
				t.Errorf("%s: got %s (%s), want %s", id, f.Level, f.Says, l)
			}
			return
		}
	}
	t.Errorf("no finding %s", id)
}

// Every key has its own field, keeps what it is given, has its default in its
// range, and refuses what is past it by its own name with a hint.
func TestKeys(t *testing.T) {
	seen := map[string]bool{}
	snake := regexp.MustCompile(`^[a-z]+(_[a-z]+)*$`)
	for _, k := range Keys() {
		if seen[k.Name] || !snake.MatchString(k.Name) || k.Means == "" {
			t.Errorf("%s: twice, not snake case, or without a meaning", k.Name)
		}
		seen[k.Name] = true
		p := cove()
		if !k.Required {
			def := Default(Clam)
			if got := k.Get(&def); math.Abs(got-k.Default) > 1e-9*math.Max(1, k.Default) || k.Default < k.Low || k.Default > k.High || k.Basis.Kind == "" {
				t.Errorf("%s: default %v, got %v, range %v to %v, basis %q", k.Name, k.Default, got, k.Low, k.High, k.Basis.Kind)
			}
		}
		v := (k.Low + k.High) / 2
		if k.Whole {
			v = math.Floor(v)
		}
		k.Set(&p, v)
		if got := k.Get(&p); math.Abs(got-v) > 1e-9*math.Max(1, v) {
			t.Errorf("%s: set %v, got %v", k.Name, v, got)
		}
		for _, o := range Keys() {
			if base := cove(); o.Name != k.Name && o.Get(&p) != o.Get(&base) {
				t.Errorf("setting %s changes %s", k.Name, o.Name)
			}
		}
		for _, bad := range []float64{k.High*1.01 + 1, k.Low - 1, math.NaN(), math.Inf(1)} {
			if k.Whole && !(math.Abs(bad) < 1e15) {
				continue
			}
			p = cove()
			k.Set(&p, bad)
			err := p.Check()
			if err == nil || !strings.HasPrefix(err.Error(), "seed."+k.Name+": ") || !strings.Contains(err.Error(), ", allowed: ") || !strings.Contains(err.Error(), "; hint: ") {
				t.Errorf("%s = %v: got %v", k.Name, bad, err)
			}
		}
	}
}

func TestWords(t *testing.T) {
	for _, w := range Words() {
		p := cove()
		for _, a := range w.Allowed {
			if !w.Set(&p, a) || w.Get(&p) != a {
				t.Errorf("%s: %q is not kept", w.Name, a)
			}
		}
		if w.Set(&p, "else") || !w.Set(&p, w.Default) {
			t.Errorf("%s takes a word not listed, or not its default", w.Name)
		}
	}
	for _, l := range Lists() {
		if l.Means == "" || l.Basis.Kind == "" || len(l.Units) != max(1, len(l.Fields)) {
			t.Errorf("%s: %+v", l.Name, l)
		}
	}
	for s := range Species(len(speciesNames)) {
		if err := checkWeights(Plan{Size: 1, Weights: DefaultWeights(s)}); err != nil {
			t.Errorf("default weights of %s: %v", s, err)
		}
	}
}

func TestCheckRefuses(t *testing.T) {
	for _, c := range []struct {
		want string
		set  func(*Plan)
	}{
		{"seed.species: unknown", func(p *Plan) { p.Species = 9 }},
		{"seed.growth: unknown", func(p *Plan) { p.Growth = -1 }},
		{"seed.move: unknown", func(p *Plan) { p.Move = 2 }},
		{"seed.grade_at: 1.4", func(p *Plan) { p.GradeAt = 1.4 }},
		{"seed.pipe_silos_at_hand: 0", func(p *Plan) { p.Move = MoveByLoad }},
		{"drum: bed area", func(p *Plan) { p.DrumHouse.Area = 0 }},
		{"pipe_silo: bed area", func(p *Plan) { p.PipeHouse.Area = measure.Area(math.NaN()) }},
		{"seed.drum_meshes: 0", func(p *Plan) { p.Meshes = nil }},
		{"seed.pipe_meshes: 0 mm", func(p *Plan) { p.Meshes[0].Opening = 0 }},
		{"seed.drum_meshes: 1 mm", func(p *Plan) { p.Meshes[2].Long = 1 }},
		{"seed.drum_meshes: 7", func(p *Plan) { p.Meshes[1].In = 7 }},
		{"seed.weights: 1", func(p *Plan) { p.Weights = p.Weights[:1] }},
		{"seed.weights[1]: 0.3 mm", func(p *Plan) { p.Weights[1].Shell = p.Weights[0].Shell }},
		{"seed.weights[2]: 0 mg", func(p *Plan) { p.Weights[2].Each = 0 }},
		{"seed.weights[0]: NaN mm", func(p *Plan) { p.Weights[0].Shell = Shell(math.NaN()) }},
		{"seed.size: 25 mm", func(p *Plan) { p.Size = 25 }},
		{"seed.week_table[0]: 0 %", func(p *Plan) { p.WeekTable = []WeekRate{{}} }},
		{"seed.week_table[0]: 11 mm", func(p *Plan) { p.WeekTable = []WeekRate{{11, 0, 1}} }},
		{"seed.week_table[0]: 40 %/day", func(p *Plan) { p.Growth, p.WeekTable = ByWeight, []WeekRate{{0, 0.4, 1}} }},
		{"seed.weights: 2", func(p *Plan) { p.LeaveOn, p.Weeks = 40, 104 }},
	} {
		p := cove()
		c.set(&p)
		_, err := Need(p)
		if err == nil || !strings.HasPrefix(err.Error(), c.want) || !strings.Contains(err.Error(), "allowed: ") || !strings.Contains(err.Error(), "; hint: ") || strings.HasSuffix(err.Error(), ".") {
			t.Errorf("got %v, want %q … allowed … hint", err, c.want)
		}
	}
}

// Each finding fires when it should and is quiet when it should be.
func TestFindings(t *testing.T) {
	for _, c := range []struct {
		id    string
		level geometry.Level
		set   func(*Plan)
	}{
		{"held", geometry.OK, func(*Plan) {}},
		{"held", geometry.Stop, func(p *Plan) { p.Meshes = p.Meshes[1:] }},
		{"pipe-silos", geometry.OK, func(p *Plan) { p.PipeSilosAtHand = 50 }},
		{"size", geometry.OK, func(*Plan) {}},
		{"size", geometry.Caution, func(p *Plan) { p.Size = 0.45 }},
		{"leave", geometry.OK, func(*Plan) {}},
		{"leave", geometry.Caution, func(p *Plan) { p.LeaveOn = 5 }},
		{"leave", geometry.Caution, func(p *Plan) { p.LeaveOn = 13 }},
		{"reached", geometry.Caution, func(p *Plan) { p.Weeks = 3 }},
		{"water", geometry.OK, func(*Plan) {}},
		{"water", geometry.Caution, func(p *Plan) { p.Water = 5 }},
		{"load", geometry.OK, func(*Plan) {}},
		{"load", geometry.Caution, func(p *Plan) {
			p.Load, p.BedDepth, p.DrumHouse.Most = 400, 400, 500*measure.LitrePerMinute
		}},
		{"weight-1mm", geometry.OK, func(*Plan) {}},
		{"weight-1mm", geometry.Caution, func(p *Plan) { p.Weights[2].Each = 0.5e-6 }},
		{"weight-7mm-sieve", geometry.OK, func(p *Plan) { p.Species, p.Weights = Oyster, DefaultWeights(Oyster) }},
		{"weight-7mm-sieve", geometry.Caution, func(p *Plan) { p.Species = Oyster; p.SieveRatio = 0.4 }},
		{"growth", geometry.OK, func(*Plan) {}},
		{"growth", geometry.Caution, func(p *Plan) { p.WeekTable = []WeekRate{{1, 0, 1}} }},
		{"food", geometry.Caution, func(p *Plan) { p.ClearanceEach = 2 }},
		{"food", geometry.OK, func(p *Plan) { p.ClearanceEach = 0.1 }},
	} {
		p := cove()
		c.set(&p)
		wantFinding(t, Findings(p, need(t, p), measure.UnitInch), "seed."+c.id, c.level)
	}
	if got := Findings(cove(), SiloNeed{}, measure.UnitMM); got != nil {
		t.Errorf("no weeks: %v", got)
	}
}

func TestBoth(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{Load(30).Both(measure.UnitMM), "30 kg/m² (6.14 lb/ft²)"},
		{WaterPerMass(10).Both(measure.UnitInch), "1.2 gpm/lb (10 L/min/kg)"},
		{Shell(10).Both(measure.UnitMM), "10 mm (13/32 in)"},
		{Sieve(7).Both(measure.UnitMM), "7 mm (9/32 in)"},
		{Load(math.NaN()).Both(measure.UnitMM), "out of range kg/m² (out of range lb/ft²)"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

// FuzzNeed: whatever stands in the keys, an error or a table of finite numbers.
func FuzzNeed(f *testing.F) {
	f.Add(600000, 1.5, 26, 0.7, 0.2, 0.75, 0.97, 30.0, 10.0, 120.0, 7.0, 0.05, uint8(0))
	f.Add(1, 0.3, 104, 1.0, 0.0, 10.0, 0.01, 0.05, 0.1, 1.0, 40.0, 0.3, uint8(255))
	f.Fuzz(func(t *testing.T, count int, size float64, weeks int, ratio, spread, growth, survival, load, water, most, leave, rate float64, kinds uint8) {
		p := cove()
		p.Species, p.Growth, p.Move = Species(kinds&3), Growth(kinds>>2&1), Move(kinds>>3&1)
		p.PipeSilosAtHand = int(kinds >> 4)
		p.Count, p.Size, p.Weeks, p.SieveRatio, p.Spread = count, Shell(size), weeks, ratio, spread
		p.GrowthLength, p.GrowthWeight, p.Survival = measure.Length(growth), rate, survival
		p.Load, p.Water, p.LeaveOn = Load(load), WaterPerMass(water), Sieve(leave)
		p.DrumHouse.Most = measure.Flow(most) * measure.LitrePerMinute
		n, err := Need(p)
		if err != nil {
			if !strings.Contains(err.Error(), "; hint: ") || strings.ContainsAny(err.Error(), "\n") {
				t.Errorf("message: %q", err)
			}
			return
		}
		for _, w := range n.Weeks {
			s := w.PerSilo
			for _, x := range []float64{float64(w.Shell), float64(w.Smallest), float64(w.Largest), float64(w.Each), float64(w.Mass), float64(w.Flow),
				w.PerLitre, float64(s.Mass), float64(s.Load), float64(s.Depth), float64(s.Flow), float64(s.Speed), w.Food.Share, float64(w.Food.Cleared)} {
				if !finite(x) || x < 0 {
					t.Fatalf("week %d: %+v", w.Week, w)
				}
			}
			if w.Drum < 0 || w.Pipe < 0 || w.Drum+w.Pipe < 1 {
				t.Fatalf("week %d: %d + %d silos", w.Week, w.Drum, w.Pipe)
			}
			holdLimits(t, p, w)
		}
		Findings(p, n, measure.UnitInch)
	})
}
