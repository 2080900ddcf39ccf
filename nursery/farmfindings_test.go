package nursery

import (
	"strings"
	"testing"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/nursery/manifold"
	"silowright/nursery/seed"
)

const lmin = measure.LitrePerMinute

// cove is an invented farm that is well laid out: 8 silos at 35 L/min from a
// pump on a hard-standing beside the water, wide pipes, a foot valve.
func cove() Farm {
	f := pumped(manifold.Point{Flow: 0, Head: 5 * metre}, manifold.Point{Flow: 250 * lmin, Head: 3.2 * metre}, manifold.Point{Flow: 500 * lmin, Head: 1 * metre})
	f.Pump.NPSH = []manifold.Point{{Flow: 0, Head: 1 * metre}, {Flow: 500 * lmin, Head: 2 * metre}}
	f.Supply.Below = 1.5 * metre
	f.Suction = Suction{Lift: 1.8 * metre, Length: 4 * metre, Pipe: geometry.PipeRef{Size: "4"}, Bends: 1, FootValve: HingedFootValve}
	f.Main = Main{Pipe: geometry.PipeRef{Size: "4"}, Length: 10 * metre, Bends: 3}
	f.Manifold = Manifold{Pipe: geometry.PipeRef{Size: "4"}, Height: 150, Feed: FedAtEnd}
	f.Lateral.HoseBore = 30
	f.Bed.Size = 2
	return f
}

// Each finding fires where it should and keeps quiet where it should.
func TestFarmFindings(t *testing.T) {
	plan := func(n int) func(*Farm) {
		return func(f *Farm) {
			p := seed.Default(seed.Clam)
			p.Count, p.Size = n, 2
			f.Plan = &p
		}
	}
	bare := func(f *Farm) { *f = DefaultFarm() }
	given := func(q measure.Flow) func(*Farm) {
		return func(f *Farm) { *f = DefaultFarm(); f.Supply.Each = q }
	}
	power := func(f *Farm) { f.Pump = DefaultFarm().Pump; f.Pump.Power = 1500 }
	small := func(f *Farm) { f.Bed.Size = 0.4; f.Supply.Each = 900 * lmin; f.Pump = DefaultFarm().Pump }
	for _, c := range []struct {
		reason string
		change func(*Farm)
		id     string
		level  geometry.Level
		says   string // "" with level -1: no such finding
	}{
		{"little water", given(40 * lmin), "water.sill", geometry.OK, "below the handle slots"},
		{"a flow that the job gives stops", given(200 * lmin), "water.sill", geometry.Stop, "leaves by the handle slots too"},
		{"the same by default", func(f *Farm) { bare(f); f.Plan = nil; f.Supply.Hose.Length, f.Supply.Hose.Bore = 3*metre, 12 }, "water.sill", geometry.Caution, "only what the seed's weight asks"},
		{"the same by a guess", func(f *Farm) { power(f); f.Lateral.HoseBore = 50 }, "water.sill", geometry.Caution, "a guess from the pump's power"},
		{"small seed in a flood", small, "water.seed", geometry.Stop, "washes out"},
		{"the same by the mesh", func(f *Farm) { small(f); f.Bed.Size = 0; f.Bed.Density = 1060 }, "water.seed", geometry.Caution, "give bed.size"},
		{"nobody told", bare, "water.told", geometry.Caution, "reckoned with what its seed asks"},
		{"told", given(40 * lmin), "water.told", -1, ""},
		{"what spills first", given(40 * lmin), "water.first", geometry.OK, "water by the handle slots"},
		{"past it", given(200 * lmin), "water.first", geometry.Caution, "throttle it"},
		{"wide pipes", nil, "manifold.evenness", geometry.OK, "% of the mean"},
		{"narrow pipe", func(f *Farm) { f.Manifold.Pipe.Size = "1 1/2" }, "manifold.evenness", geometry.Caution, "take a wider manifold"},
		{"pipe not told", func(f *Farm) { f.Manifold.Pipe.Size = "" }, "manifold.evenness", -1, ""},
		{"pipe not told", func(f *Farm) { f.Manifold.Pipe.Size = "" }, "manifold.told", geometry.Caution, "give manifold.pipe"},
		{"no pump", given(40 * lmin), "manifold.evenness", -1, ""},
		{"wide pipes", nil, "manifold.speed", geometry.OK, "within"},
		{"narrow pipe", func(f *Farm) { f.Manifold.Pipe.Size = "1 1/4" }, "manifold.speed", geometry.Caution, "wider bore"},
		{"no spacing told", nil, "manifold.spacing", -1, ""},
		{"room for each", func(f *Farm) { f.Manifold.Spacing = 800 }, "manifold.spacing", geometry.OK, "side by side in one row"},
		{"closer than a drum", func(f *Farm) { f.Manifold.Spacing = 300 }, "manifold.spacing", geometry.Caution, "on both sides of the manifold"},
		{"wide main", nil, "main.speed", geometry.OK, "within"},
		{"narrow main", func(f *Farm) { f.Main.Pipe.Size = "1 1/2" }, "main.speed", geometry.Caution, "wider bore"},
		{"no main told", func(f *Farm) { f.Main = Main{} }, "main.speed", -1, ""},
		{"hose", nil, "lateral.speed", geometry.OK, "within"},
		{"narrow hose", func(f *Farm) { f.Lateral.HoseBore = 12 }, "lateral.speed", geometry.Caution, "wider bore"},
		{"sizes", func(f *Farm) { f.Supply.Each = 30 * lmin }, "manifold.size", geometry.OK, "the smallest that does"},
		{"no size does", func(f *Farm) { f.Limits.Speed = 100 }, "manifold.size", geometry.Caution, "comes nearest"},
		{"no pipe gives so much", func(f *Farm) { f.Supply.Each = 200 * lmin }, "manifold.size", geometry.Caution, "another pump"},
		{"room to throttle", func(f *Farm) { f.Supply.Each = 30 * lmin }, "manifold.throttle", geometry.OK, "all of it leaves by the outlets"},
		{"still too much", func(f *Farm) { f.Pump.Points[1].Flow, f.Pump.Points[2].Flow = 2500*lmin, 5000*lmin; f.Pump.NPSH = nil }, "manifold.throttle", geometry.Caution, "set them for less"},
		{"one shut", nil, "manifold.shut", geometry.OK, "the others get more"},
		{"one shut spills", func(f *Farm) {
			f.Lateral.HoseBore = 50
			f.Pump.Points[1] = manifold.Point{Flow: 510 * lmin, Head: 3.2 * metre}
			f.Pump.Points[2] = manifold.Point{Flow: 520 * lmin, Head: 0}
		}, "manifold.shut", geometry.Caution, "throttle the rest before"},
		{"reached", func(f *Farm) { f.Supply.Each = 30 * lmin }, "pump.reaches", geometry.OK, "can give every silo"},
		{"reached, none wanted", nil, "pump.reaches", geometry.OK, "reaches every silo"},
		{"too much wanted", func(f *Farm) { f.Supply.Each = 200 * lmin }, "pump.reaches", geometry.Caution, "larger pump"},
		{"too low", func(f *Farm) { f.Supply.Below = 9 * metre }, "pump.reaches", geometry.Stop, "lifts no water into 8 of 8"},
		{"on the curve", nil, "pump.curve", geometry.OK, "on its curve"},
		{"beyond it", func(f *Farm) {
			f.Pump.Points = []manifold.Point{{Flow: 0, Head: 8 * metre}, {Flow: 50 * lmin, Head: 7.9 * metre}}
		}, "pump.curve", geometry.Caution, "past the last point"},
		{"guessed", power, "pump.curve", geometry.Caution, "guessed from its power"},
		{"suction", nil, "pump.npsh", geometry.OK, "over what it requires"},
		{"not told what it requires", func(f *Farm) { f.Pump.NPSH = nil }, "pump.npsh", geometry.OK, "give pump.npsh"},
		{"close", func(f *Farm) {
			f.Pump.NPSH = []manifold.Point{{Flow: 0, Head: 7.6 * metre}, {Flow: 500 * lmin, Head: 7.7 * metre}}
		}, "pump.npsh", geometry.Caution, "fouled strainer"},
		{"cavitates", func(f *Farm) {
			f.Pump.NPSH = []manifold.Point{{Flow: 0, Head: 9 * metre}, {Flow: 500 * lmin, Head: 9.5 * metre}}
		}, "pump.npsh", geometry.Stop, "it cavitates"},
		{"told for less than runs", func(f *Farm) {
			f.Pump.NPSH = []manifold.Point{{Flow: 0, Head: 1 * metre}, {Flow: 20 * lmin, Head: 1.1 * metre}}
		}, "pump.npsh", geometry.Caution, "is told up to 20 L/min"},
		{"in the water", func(f *Farm) { f.Suction = DefaultFarm().Suction; f.Pump.NPSH = nil }, "pump.npsh", -1, ""},
		{"energy", nil, "pump.energy", geometry.OK, "kWh in a year at 24 h a day"},
		{"what a pump must give", func(f *Farm) { given(40 * lmin)(f); f.Supply.BelowKnown = true }, "pump.asks", geometry.OK, "a pump must give 320 L/min"},
		{"source not known", given(40 * lmin), "pump.asks", -1, ""},
		{"foot valve", nil, "failure.drains", geometry.OK, "no seed is left dry"},
		{"none", func(f *Farm) { f.Suction.FootValve = NoFootValve }, "failure.drains", geometry.Caution, "left dry in 8 of 8"},
		{"none", func(f *Farm) { f.Suction.FootValve = NoFootValve }, "failure.siphon", geometry.Caution, "siphon draws down 8 of 8"},
		{"none but a check valve", func(f *Farm) { f.Suction.FootValve = NoFootValve; f.Failure.CheckValve = true }, "failure.drains", geometry.OK, "no seed is left dry"},
		{"an air break over the hoses", func(f *Farm) {
			f.Suction.FootValve = NoFootValve
			f.Failure.HoseAirBreak = true
			f.Lateral.HoseTop = 0.6 * metre
		}, "failure.drains", geometry.OK, "no seed is left dry"},
		{"source not known", given(40 * lmin), "failure.drains", -1, ""},
		{"no foot valve", func(f *Farm) { f.Suction.FootValve = NoFootValve }, "failure.prime", geometry.Caution, "loses its water"},
		{"foot valve", nil, "failure.prime", geometry.OK, "keeps its water"},
		{"few seed", plan(50_000), "seed.drum-silos", geometry.OK, "are enough every week"},
		{"many seed", plan(5_000_000), "seed.drum-silos", geometry.Caution, "build more"},
		{"few seed", plan(50_000), "seed.flow", geometry.OK, "are enough every week"},
		{"many seed", plan(5_000_000), "seed.flow", geometry.Caution, "a larger pump"},
		{"no pipe silos", func(f *Farm) { plan(50_000)(f); f.Plan.Size = 1 }, "seed.pipe-silos", geometry.Stop, "the job has none"},
		{"none needed", func(f *Farm) { plan(50_000)(f); f.Plan.Size = 4 }, "seed.pipe-silos", -1, ""},
		{"no plan", nil, "seed.drum-silos", -1, ""},
	} {
		f := cove()
		if c.change != nil {
			c.change(&f)
		}
		s, err := Solve([]Count{{invented(t), 8, 0}}, f)
		if err != nil {
			t.Errorf("%s, %s: %v", c.id, c.reason, err)
			continue
		}
		var hit *geometry.Finding
		found := s.Findings(measure.UnitMM)
		for i := range found {
			if found[i].ID == c.id {
				hit = &found[i]
			}
		}
		switch {
		case c.level < 0 && hit != nil:
			t.Errorf("%s, %s: said all the same: %s", c.id, c.reason, hit.Says)
		case c.level < 0:
		case hit == nil:
			t.Errorf("%s, %s: not said", c.id, c.reason)
		case hit.Level != c.level || !strings.Contains(hit.Says, c.says):
			t.Errorf("%s, %s: %v %q, want %v with %q", c.id, c.reason, hit.Level, hit.Says, c.level, c.says)
		}
	}
}

// One finding of each check for each kind, of the worst silo, wherever on the
// manifold it stands; no two findings alike.
func TestWorstOfEachKind(t *testing.T) {
	blue := invented(t)
	red := invented(t, func(s *geometry.Spec) { s.Drum.Label = "red" })
	f := cove()
	f.Manifold.Pipe.Size = "2" // the near ones get most
	f.Lateral.HoseBore = 50
	f.Bed.PipeMass, f.Bed.PipeSize = 0.5, 2
	s := study(t, []Count{{blue, 6, 3}, {red, 6, 0}}, f)
	seen := map[string]int{}
	for _, d := range s.Findings(measure.UnitInch) {
		seen[d.Drum+" "+d.ID]++
		if d.ID == "water.sill" && d.Drum == "blue" && (d.Level != geometry.Stop || !strings.HasPrefix(d.Says, "silo 1, which gets the most: ")) {
			t.Errorf("%v %s", d.Level, d.Says)
		}
	}
	for what, n := range seen {
		if n != 1 {
			t.Errorf("%s: said %d times", what, n)
		}
	}
	for _, want := range []string{"blue water.sill", "red water.sill", "blue water.pipe-rim", "blue water.first-piped", "blue water.first", " manifold.evenness"} {
		if seen[want] == 0 {
			t.Errorf("%s: not said", want)
		}
	}
	if seen["red water.pipe-rim"] > 0 {
		t.Error("a pipe silo where none hangs")
	}
}
