package nursery

import (
	"math"
	"testing"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/manifold"
	"silowright/nursery/seed"
)

// The way from tee to silo by hand, in velocity heads (Çengel and Cimbala,
// Fluid Mechanics, table 8-4): tee 2.0, ball valve wide open 0.05; the main with
// three elbows of 0.9 and a check valve of 2.0; the suction's pipe reaching in
// 0.8, one elbow, foot valve 1.4. Elevations are above the ground: the water 1.5
// m under it, the pump 1.8 m over the water, the outlet's invert as the silo
// stands.
func TestSystemByHand(t *testing.T) {
	f := cove()
	f.Failure.CheckValve = true
	f.Manifold.First = 2 * metre
	f.Manifold.Feed = FedAtCentre
	w, err := f.water()
	if err != nil {
		t.Fatal(err)
	}
	silo := invented(t)
	rooms, of, err := f.rooms([]Count{{silo, 5, 2}}, w)
	if err != nil {
		t.Fatal(err)
	}
	if len(rooms) != 2 || !rooms[0].piped || rooms[0].count != 2 || rooms[1].count != 3 || of[1] != 0 || of[2] != 1 {
		t.Errorf("the first two carry pipe silos: %v", of)
	}
	c, err := f.curve(w)
	if err != nil {
		t.Fatal(err)
	}
	s, err := f.system(w, c, rooms, of)
	if err != nil {
		t.Fatal(err)
	}
	l := s.Laterals[4]
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"tee", l.Branch, 2}, {"valve", l.Valve.K, 0.05}, {"30 mm hose into the inlet (ASTM D1785: 1.592 in), Borda and Carnot", l.Barb.K, math.Pow(1-math.Pow(30/(1.592*25.4), 2), 2)},
		{"main", s.Main.K, 3*0.9 + 2}, {"main's length, m", s.Main.Length.Metres(), 12}, {"tee's run", s.Segments[0].K, 0.9},
		{"suction", s.Suction.Pipe.K, 0.8 + 0.9}, {"foot valve", s.Suction.FootValve, 1.4},
		{"source, m", s.Suction.Source.Metres(), -1.5}, {"pump, m", s.Suction.Pump.Metres(), 0.3},
		{"outlet's invert, mm", l.Rise.MM(), (silo.Seat.FootHeight + silo.OutletInvert()).MM()},
		{"tee to tee, mm", s.Segments[0].Length.MM(), silo.Spec.Drum.Outside.MM() + 150},
		{"main's bore, in (ASTM D1785)", s.Main.Bore.Inches(), 3.998},
		{"fed at silo", float64(s.Feed + 1), 3},
	} {
		if math.Abs(c.got-c.want) > 2e-3 {
			t.Errorf("%s: %.4f, want %.4f", c.what, c.got, c.want)
		}
	}
}

// What spills first does so from the flow said: just under it nothing does,
// just over it that does.
func TestSpillsBeginWhereSaid(t *testing.T) {
	f := DefaultFarm()
	f.Supply.Each = 30 * lmin
	f.Bed.PipeMass, f.Bed.PipeSize, f.Bed.Size = 0.8, 1.5, 0.8
	s := study(t, []Count{{invented(t), 2, 1}}, f)
	for _, g := range s.Groups {
		for _, spill := range g.Spills {
			leaves := func(q measure.Flow) bool {
				d, err := flow.Solve(s.Water, g.Silo, q)
				if err != nil {
					t.Fatal(err)
				}
				switch spill.What {
				case "water by the handle slots":
					return d.ToSill < 0
				case "water over the rim":
					return d.ToRim < 0
				case "the drum silo's seed":
					return d.Seed.State == flow.WashingOut || d.SeedTop <= 0
				case "water into the pipe silo over its rim":
					return d.Pipe.ToRim < 0
				case "the pipe silo's seed":
					v := q.Through(flow.Disc(g.Silo.Pipe.Inside)) // all of it through the screen
					b := g.Silo.Pipe.Seed.At(s.Water, flow.Disc(g.Silo.Pipe.Inside), v)
					return b.State == flow.WashingOut || b.Depth >= g.Silo.Pipe.Invert-g.Silo.Pipe.Bottom
				}
				t.Fatalf("%q is not known", spill.What)
				return false
			}
			if leaves(spill.From*0.995) || !leaves(spill.From*1.005) {
				t.Errorf("piped %v: %s from %.2f L/min: under it %v, over it %v", g.Piped, spill.What, spill.From.LMin(), leaves(spill.From*0.995), leaves(spill.From*1.005))
			}
		}
		if len(g.Spills) < 3 {
			t.Errorf("piped %v: %+v", g.Piped, g.Spills)
		}
		if first, ok := g.First(); !ok || first.From > g.BeforeSlots || first.From > g.BeforeRim {
			t.Errorf("first %+v", first)
		}
	}
}

// The curves of the plot cross where the pump runs, and the system's rises.
func TestCurvesCross(t *testing.T) {
	s := study(t, []Count{{invented(t), 8, 2}}, cove())
	p := s.Pumping
	pump, system := p.Heads()
	crosses := false
	for i, x := range system {
		if i > 0 && (x.Flow <= system[i-1].Flow || x.Head <= system[i-1].Head) {
			t.Errorf("the system's curve falls: %+v", system)
		}
		crosses = crosses || x.Flow == p.Result.Pump.Flow && x.Head == p.Result.Pump.Head
	}
	if !crosses || len(system) < 3 {
		t.Errorf("%+v does not meet %+v", system, p.Result.Pump)
	}
	for i, x := range pump {
		if i > 0 && x.Head > pump[i-1].Head {
			t.Errorf("the pump's curve rises: %+v", pump)
		}
	}
	if first := pump[0]; first.Flow != 0 || math.Abs(first.Head.Metres()-5) > 1e-9 {
		t.Errorf("%+v", first)
	}
}

// Set as listed, the valves give every silo one flow.
func TestSettingsEven(t *testing.T) {
	f := cove()
	f.Manifold.Pipe.Size = "2"
	f.Supply.Each = 25 * lmin
	counts := []Count{{invented(t), 8, 2}}
	s := study(t, counts, f)
	if !s.Pumping.Wanted || s.Evenness > 0.95 {
		t.Fatalf("evenness %v, wanted %v", s.Evenness, s.Pumping.Wanted)
	}
	w, _ := f.water()
	rooms, of, err := f.rooms(counts, w)
	if err != nil {
		t.Fatal(err)
	}
	c, _ := f.curve(w)
	sys, err := f.system(w, c, rooms, of)
	if err != nil {
		t.Fatal(err)
	}
	r, err := manifold.Solve(sys.WithSettings(s.Pumping.Settings))
	if err != nil {
		t.Fatal(err)
	}
	for i, l := range r.Laterals {
		if math.Abs(l.Flow.LMin()-25) > 1e-3 {
			t.Errorf("silo %d: %.4f L/min, want 25", i+1, l.Flow.LMin())
		}
	}
	sh := s.Pumping.Shut
	if sh.Place != 1 && sh.Place != 3 || sh.Ratio < 1 || sh.TotalAfter >= s.Total {
		t.Errorf("%+v", sh)
	}
}

// The sizes recommended hold what they are held to, and no choice of less
// volume does: all are tried here, each as a farm of those pipes. Limits:
// evenness 0.9 and 1.5 m/s (5 ft/s), common practice, no source; a stricter
// pair; and no limit of speed.
func TestSizesAreTheSmallest(t *testing.T) {
	for _, c := range []struct {
		each     measure.Flow
		evenness float64
		speed    measure.Speed
	}{{0, 0.9, 1500}, {30 * lmin, 0.9, 1500}, {0, 0.97, 1000}, {20 * lmin, 0.5, 0}} {
		f := cove()
		f.Supply.Each, f.Limits = c.each, Limits{c.evenness, c.speed}
		counts := []Count{{invented(t), 8, 0}}
		z := study(t, counts, f).Pumping.Sizes
		if !z.Held || z.GivesEvenness < z.Evenness || z.GivesLeast < z.Each || z.Speed > 0 && z.GivesSpeed > z.Speed {
			t.Fatalf("%+v: %+v", c, z)
		}
		w, _ := f.water()
		rooms, of, _ := f.rooms(counts, w)
		curve, _ := f.curve(w)
		best, name := math.Inf(1), ""
		for _, m := range bores("sch40") {
			for _, run := range bores("sch40") {
				g := f
				g.Main.Pipe, g.Manifold.Pipe = geometry.PipeRef{Size: m.name}, geometry.PipeRef{Size: run.name}
				sys, err := g.system(w, curve, rooms, of)
				if err != nil {
					t.Fatal(err)
				}
				r, err := manifold.Solve(sys)
				if err != nil {
					t.Fatal(err)
				}
				least, fast, sum := r.Laterals[0].Flow, r.Main.Speed, measure.Flow(0)
				for _, l := range r.Laterals {
					least, sum = min(least, l.Flow), sum+l.Flow
				}
				for _, p := range r.Segments {
					fast = max(fast, p.Speed)
				}
				if float64(least/sum)*8 >= z.Evenness && least >= z.Each && (c.speed == 0 || fast <= c.speed) {
					volume := m.bore.Times(m.bore).Times(sys.Main.Length + 1)
					for _, p := range sys.Segments {
						volume += run.bore.Times(run.bore).Times(p.Length)
					}
					if v := volume.ML(); v < best {
						best, name = v, m.name+" and "+run.name
					}
				}
			}
		}
		if name+" sch40" != z.Main.Size+" and "+z.Manifold.String() || z.Main.Series != "sch40" {
			t.Errorf("%+v: %s and %s, want %s", c, z.Main, z.Manifold, name)
		}
	}
}

// One valve shut: what it had goes to the others, most of it to the silo whose
// tee is nearest, and no other silo loses by it. The whole is solved anew here.
func TestShut(t *testing.T) {
	f := cove()
	f.Manifold.Pipe.Size = "2"
	counts := []Count{{invented(t), 8, 2}}
	s := study(t, counts, f)
	sh := s.Pumping.Shut
	if sh.Place != s.Most+1 {
		t.Fatalf("silo %d is shut, silo %d gets most", sh.Place, s.Most+1)
	}
	w, _ := f.water()
	rooms, of, _ := f.rooms(counts, w)
	c, _ := f.curve(w)
	sys, err := f.system(w, c, rooms, of)
	if err != nil {
		t.Fatal(err)
	}
	sys.Laterals[s.Most].Valve.Shut = true
	r, err := manifold.Solve(sys)
	if err != nil {
		t.Fatal(err)
	}
	most, at := measure.Flow(0), 0
	for i, l := range r.Laterals {
		if i == s.Most {
			continue
		}
		gain := l.Flow - s.Silos[i].Flow
		if gain < 0 {
			t.Errorf("silo %d loses %v L/min", i+1, -gain.LMin())
		}
		if gain > most {
			most, at = gain, i
		}
	}
	if sh.GainsMost != at+1 || sh.Flow != r.Laterals[at].Flow || sh.TotalAfter != r.Total || sh.TotalAfter >= s.Total {
		t.Errorf("%+v, want silo %d at %v", sh, at+1, r.Laterals[at].Flow)
	}
	if want := float64(r.Laterals[at].Flow / s.Silos[at].Flow); math.Abs(sh.Ratio-want) > 1e-12 || want <= 1 {
		t.Errorf("ratio %v, want %v", sh.Ratio, want)
	}
	if one := study(t, []Count{{invented(t), 1, 0}}, f).Pumping.Shut; one != nil {
		t.Errorf("a single silo has no others: %+v", one)
	}
}

// A power failure by hand: without a valve the water runs back over the inlet
// down to its invert, above the ground as the inlet is bored; with one it stays
// at the outlet's invert.
func TestFailureByHand(t *testing.T) {
	silo := invented(t)
	f := cove()
	f.Suction.FootValve = NoFootValve
	s := study(t, []Count{{silo, 3, 0}}, f)
	want := silo.Spec.Inlet.AboveGround - silo.Inlet.PipeInside/2
	for _, o := range s.Failure.Silos {
		if o.Way != manifold.Back || math.Abs(float64(o.Level-want)) > 1e-9 || !o.Bare {
			t.Errorf("%+v, want %v mm", o, want.MM())
		}
	}
	f.Suction.FootValve = PoppetFootValve
	s = study(t, []Count{{silo, 3, 0}}, f)
	want = silo.Seat.FootHeight + silo.OutletInvert()
	for _, o := range s.Failure.Silos {
		if o.Way != manifold.Stays || math.Abs(float64(o.Level-want)) > 1e-9 || o.Bare || o.Part {
			t.Errorf("%+v, want %v mm", o, want.MM())
		}
	}
}

// A plan is filled in from the silos: what they weigh seed on, their meshes,
// and no more water than they take without spilling; what the plan says stays.
func TestPlanFromSilos(t *testing.T) {
	silo := invented(t)
	p := seed.Default(seed.Clam)
	p.Count, p.Size = 300_000, 2
	f := cove()
	f.Plan = &p
	d := study(t, []Count{{silo, 8, 3}}, f).Seed
	ring := float64(silo.Ring.InnerRadius)
	if got, want := d.Plan.DrumHouse.Area.MM2(), math.Pi*ring*ring; math.Abs(got-want) > 1e-6*want {
		t.Errorf("area %v, want %v", got, want)
	}
	if len(d.Plan.Meshes) != 2 || d.Plan.Meshes[0].Opening != silo.Spec.Mesh.Opening || d.Plan.PipeSilosAtHand != 3 || d.Drums != 8 || d.Pipes != 3 {
		t.Errorf("%+v", d.Plan)
	}
	plain := study(t, []Count{{silo, 1, 0}}, cove()).Groups[0]
	if d.Plan.DrumHouse.Most != plain.BeforeSlots {
		t.Errorf("most %v, a silo takes %v L/min", d.Plan.DrumHouse.Most.LMin(), plain.BeforeSlots.LMin())
	}
	if len(d.Need.Weeks) == 0 || d.Need.Peak.Drum == 0 {
		t.Errorf("%+v", d.Need.Peak)
	}
	if p.DrumHouse.Area != 0 || len(p.Meshes) != 0 {
		t.Error("the job's own plan was changed")
	}
	// before the number of silos is known
	on, err := PlanOn([]*geometry.Silo{silo}, f)
	if err != nil || on.DrumHouse != d.Plan.DrumHouse || len(on.Meshes) != 2 {
		t.Errorf("%+v, %v", on, err)
	}
	if need, err := seed.Need(on); err != nil || need.Peak.Drum == 0 {
		t.Errorf("%+v, %v", need.Peak, err)
	}
	own := p
	own.Meshes = []seed.Mesh{{Name: "mine", In: seed.Drum, Opening: 0.9}}
	own.DrumHouse = seed.House{Area: 2e5, Most: 10 * lmin}
	f.Plan = &own
	d = study(t, []Count{{silo, 8, 3}}, f).Seed
	if d.Plan.DrumHouse != own.DrumHouse || len(d.Plan.Meshes) != 1 {
		t.Errorf("%+v", d.Plan)
	}
}

// Without a flow or a pump each silo is given what its seed asks: 10 L/min for
// a kilogram, the least of a barge nursery (FAO Fisheries Technical Paper 471,
// §6.6.2); 5 kg on the mesh are 50 L/min.
func TestFlowBySeed(t *testing.T) {
	s := study(t, []Count{{invented(t), 3, 0}}, DefaultFarm())
	if s.From != FromSeed || math.Abs(s.Silos[2].Flow.LMin()-50) > 1e-9 || math.Abs(s.Total.LMin()-150) > 1e-9 || s.Pumping != nil || s.Failure != nil || s.Seed != nil || s.Asks != nil {
		t.Errorf("%+v", s.Silos)
	}
	none := invented(t, func(s *geometry.Spec) { s.Load.Seed = 0 })
	s = study(t, []Count{{none, 3, 0}}, DefaultFarm())
	if s.Total != 0 || s.Groups[0].BeforeSlots <= 0 {
		t.Errorf("%+v", s)
	}
}
