package sheets

import (
	"fmt"
	"math"
	"math/rand"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
)

func nursery(t *testing.T) Pack { return withWater(small1(t)) }

func TestWaterIsWritten(t *testing.T) {
	holds(t, nursery(t), "water", "Each drum silo gets 8.4 to 9.6 gpm", "Caution: The handle slots spill first", "STOP: With the mesh a third fouled", "Level and flow",
		"rim", "7 1/2 in (191 mm)", "handle slot's sill", "scale 1:4", "Design flow, 9.25 gpm (35 L/min): level 2 3/16 in (56.2 mm).", "Water reaches the handle slots' sill", "Water reaches the rim",
		"What each silo gets", "mean 9.03 gpm (34.2 L/min)", "Silo 1 gets the most", "What the water loses", "Inlet stub and fittings", "1 1/2 in (38 mm)", "a third of the openings", "Whole silo", "3 11/16 in (94.2 mm)",
		"Does the body stay", "63 lb (28.6 kg)", "STOP: Fouled it lifts", "Pump and system", "181 gpm (684 L/min) at 14.1 ft (4.3 m)", "The pump runs where the curves meet", "estimated from its power",
		"kWh a year", "NPSH available", "NPSH required", "Pipes", "Suction", "NPS 4", "Hose to each", "as it is", "Silo by silo", "9.62 gpm (36.4 L/min)", "least: open its",
		"When the power fails", "foot valve closes", "Before the pump is connected", "ground-fault protection", "licensed electrician", "Local codes hold", "What these pages rest on", "EOS-80")
}

func TestSeedIsWritten(t *testing.T) {
	holds(t, nursery(t), "seed", "2,000,000 seed", "Caution: The peak, week 19", "Silos and water by week", "drum silos of this job: 20", "peak", "The most drum silos, 26",
		"Which mesh for which seed?", "arrives", "leaves", "Screen 500 µm, pipe silo", "0.55 to 1.3 mm", "Dark: this job's screen", "Move from pipe silos to drum silos in week 6",
		"Count and mass", "141,000", "133,000 to 149,000", "Seed plan by week", "1/16 in", "bed", "move to", "grade", "26", "peak", "Is there food enough?", "34 %", "FAO Fisheries Technical Paper 471")
}

// What is not there is said in one sentence, the caller's where it gives one.
func TestNoWaterNoSeed(t *testing.T) {
	p := small1(t)
	holds(t, p, "water", "No flow of water was worked out for this pack.")
	holds(t, p, "seed", "No seed was worked out for this pack.")
	p.Water, p.Seed = &Water{}, &Seed{}
	holds(t, p, "water", "No level of the water was worked out for this pack.", "No pump or manifold is described in the job: what each silo gets is not worked out.")
	holds(t, p, "seed", "No meshes were matched to seed", "No season of seed is described")
	p.Water, p.Seed = &Water{NoSection: "No outlet in this drum.", NoPump: "No pump: see the guide."}, &Seed{NoLadder: "No mesh holds it.", NoPlan: "No season."}
	holds(t, p, "water", "No outlet in this drum.", "No pump: see the guide.")
	holds(t, p, "seed", "No mesh holds it.", "No season.")
	if w := wordsOf(section(t, p, "water")...); strings.Contains(w, "Before the pump") {
		t.Error("a job without a pump is warned of one")
	}
}

// A source is listed once, at the section's end, under the number that stands
// behind each sentence that rests on it.
func TestSentencesLeadToSources(t *testing.T) {
	p := small1(t)
	p.Water = &Water{Says: []Said{{geometry.OK, "first", "book A"}, {geometry.OK, "second", "book B"}, {geometry.Stop, "third", "book A"}, {geometry.OK, "fourth", ""}}, SeatSays: Said{geometry.OK, "fifth", "book C"}}
	holds(t, p, "water", "First. [1]", "Second. [2]", "STOP: Third. [1]", "Fourth.", "Fifth. [3]", "What these pages rest on", "Sentences marked [1]", "book A", "Sentences marked [2]", "book B", "Sentences marked [3]", "book C")
	if n := strings.Count(wordsOf(section(t, p, "water")...), "book A"); n != 1 {
		t.Errorf("a source is listed %d times", n)
	}
}

// The first page holds all that is to be seen at a glance.
func TestFirstPageOfWater(t *testing.T) {
	for _, paper := range []Paper{Letter, A4} {
		secs, err := Sections(nursery(t), paper, "water")
		if err != nil {
			t.Fatal(err)
		}
		first := wordsOf(secs[0].Pages[0])
		for _, w := range []string{"Each drum silo gets", "spill first", "Level and flow", "Water reaches the rim", "What each silo gets", "With one silo shut"} {
			if !strings.Contains(first, w) {
				t.Errorf("no %q on the first page", w)
			}
		}
	}
}

// numbers are the plain numbers written with an anchor, with the places of
// their middles.
func numbers(d render.Drawing, a render.Anchor) (vs []float64, at []path.Point) {
	for _, x := range d.Texts {
		if v, err := strconv.ParseFloat(strings.NewReplacer(",", "", "−", "-").Replace(x.Words), 64); err == nil && x.Anchor == a {
			vs, at = append(vs, v), append(at, path.Pt(x.At.X, x.At.Y+x.Size/2))
		}
	}
	return vs, at
}

// Every level of the section, and every point of the curve beside it, stands
// within 0.1 mm of where both the written scale of reduction and the written
// numbers of the axes say. Inches are 25.4 mm and US gallons 231 cubic inches
// by definition.
func TestLevelFigureIsToScale(t *testing.T) {
	for _, u := range []measure.Unit{measure.UnitInch, measure.UnitMM} {
		p := withWater(packOf(t, u, 12, drum("blue", 20, 23)))
		s := p.Water.Section
		d := s.draw(184, u)
		if err := render.Check(d); err != nil {
			t.Fatal(err)
		}
		scale := length(0)
		if m := regexp.MustCompile(`scale 1:(\d+)`).FindStringSubmatch(wordsOf(d)); m != nil {
			fmt.Sscan(m[1], &scale)
		}
		vs, at := numbers(d, render.Right)
		k := (at[len(at)-1].Y - at[0].Y) / length(vs[len(vs)-1]-vs[0]) // of paper for one of the axis
		unit := measure.Inch
		if u == measure.UnitMM {
			unit = 1
		}
		if (k*scale - unit).Abs() > 0.001*unit {
			t.Errorf("axis: %.3f mm for one, want %.3f", float64(k*scale), float64(unit))
		}
		y := func(z length) length { return at[0].Y + (z/unit-length(vs[0]))*k }
		level := func(z length, l render.Layer) {
			for _, st := range d.Strokes {
				b := st.Path.Bounds()
				if st.Layer == l && (b.Max.Y-b.Min.Y).Abs() < 1e-9 && (b.Min.Y-y(z)).Abs() < 0.1 {
					return
				}
			}
			t.Errorf("no %s line at %v mm", l.Group(), float64(z))
		}
		level(s.Design.Level, render.Water)
		level(s.Pipe.Surface, render.Water)
		level(s.Slot.Sill, render.Thin)
		level(s.Slot.Top, render.Thin)
		level(s.Slot.Sill, render.Hidden) // across the curve's field
		level(s.Rim, render.Hidden)
		edges := map[string]length{"rim": s.Rim, "pipe silo's rim": s.Pipe.Rim, "invert": 0, "crown": s.Outlet, "slot's sill": s.Slot.Sill, "slot's top": s.Slot.Top}
		for name, z := range edges {
			found := false
			for _, f := range d.Fills {
				b := f.Path.Bounds()
				found = found || f.Shade == 1 && ((b.Max.Y-y(z)).Abs() < 0.1 || (b.Min.Y-y(z)).Abs() < 0.1)
			}
			if !found {
				t.Errorf("no wall ends at the %s", name)
			}
		}
		below, ax := numbers(d, render.Middle)
		var fs []float64
		var xs []length
		for i := range below { // those below the field
			if ax[i].Y < at[0].Y {
				fs, xs = append(fs, below[i]), append(xs, ax[i].X)
			}
		}
		n := len(fs) - 1
		var curve []path.Point
		for _, st := range d.Strokes {
			if st.Layer == render.Outline && len(st.Path) > 20 {
				curve = st.Path.Flatten(0.01)[0]
			}
		}
		if n < 1 || len(curve) < 20 {
			t.Fatal("no curve or no scale below it")
		}
		for i := range curve[:len(curve)-1] { // the last is cut at the field's edge
			q := float64(s.Curve[i].Flow) * 60 / (231 * 25.4 * 25.4 * 25.4)
			if u == measure.UnitMM {
				q = float64(s.Curve[i].Flow) * 60 / 1e6
			}
			want := path.Pt(xs[0]+(xs[n]-xs[0])*length((q-fs[0])/(fs[n]-fs[0])), y(s.Curve[i].Level))
			if (curve[i].X-want.X).Abs() > 0.1 || (curve[i].Y-want.Y).Abs() > 0.1 {
				t.Errorf("point %d at (%.2f, %.2f), want (%.2f, %.2f)", i, float64(curve[i].X), float64(curve[i].Y), float64(want.X), float64(want.Y))
			}
		}
	}
}

// Levels written close together are spread, keep their order and their pitch.
func TestSpread(t *testing.T) {
	ys := []length{50, 49, 48, 20, 3, 2}
	spread(ys, 8, 4, 60)
	want := []length{52, 44, 36, 20, 12, 4}
	for i := range ys {
		if i > 0 && ys[i-1]-ys[i] < 8-1e-9 {
			t.Errorf("%v are closer than 8", ys)
		}
		if ys[i] < 4 || ys[i] > 60 {
			t.Errorf("%v leave 4 to 60", ys)
		}
	}
	if ys[3] != want[3] || ys[5] != want[5] {
		t.Errorf("%v, want %v", ys, want)
	}
}

// A long manifold: the table names the first, the last, the least, the most
// and what is amiss; the chart has few enough bars to be read.
func TestManySilos(t *testing.T) {
	p := nursery(t)
	w := p.Water.Flows
	w.Silos = nil
	for i := range 4000 {
		q := measure.Flow(36-0.001*float64(i)) * measure.LitrePerMinute
		w.Silos = append(w.Silos, SiloFlow{Name: fmt.Sprint(i + 1), Flow: q, Says: q.Both(measure.UnitInch)})
	}
	w.Silos[1717].Flow, w.Silos[2222].Worst, w.Silos[2222].Note = 99*measure.LitrePerMinute, geometry.Stop, "spills over the rim"
	holds(t, p, "water", "of 4000 silos are drawn", "Silo by silo", "1", "1718", "2223", "spills over the", "4000", "3992 more silos")
	pages := section(t, p, "water")
	if len(pages) > 6 {
		t.Errorf("%d pages of water", len(pages))
	}
	shown, least, most := w.shown(mostSilos)
	if len(shown) > mostSilos+3 || least != 3999 || most != 1717 {
		t.Errorf("%d shown, least %d, most %d", len(shown), least, most)
	}
}

// A season of sixty weeks runs on over pages, each with its head, no week lost.
func TestLongSeason(t *testing.T) {
	p := nursery(t)
	w := p.Seed.Plan.Weeks[7]
	p.Seed.Plan.Weeks = nil
	for n := 1; n <= 60; n++ {
		w.Week, w.Peak, w.Size = n, n == 44, fmt.Sprintf("size of week %d.", n)
		p.Seed.Plan.Weeks = append(p.Seed.Plan.Weeks, w)
	}
	for _, paper := range []Paper{Letter, A4, {180, 200}} {
		secs, err := Sections(p, paper, "seed")
		if err != nil {
			t.Fatal(err)
		}
		all, heads := wordsOf(secs[0].Pages...), 0
		for n := 1; n <= 60; n++ {
			if !regexp.MustCompile(fmt.Sprintf(`size of\s+week\s+%d\.`, n)).MatchString(all) {
				t.Errorf("week %d is lost", n)
			}
		}
		for i, d := range secs[0].Pages {
			checkPage(t, fmt.Sprintf("seed page %d", i+1), d)
			page := wordsOf(d)
			if strings.Contains(page, "size of") {
				heads++
				if !strings.Contains(page, "Mesh") {
					t.Errorf("page %d has no head", i+1)
				}
			}
		}
		if most := map[length]int{Letter.Width: 4, A4.Width: 4, 180: 7}[paper.Width]; heads > most {
			t.Errorf("%d pages of weeks on paper %s wide, want at most %d", heads, paper.Width.Metric(), most)
		}
	}
}

// Whatever is given, nothing leaves the page, no words run into others.
func TestAnyNursery(t *testing.T) {
	r := rand.New(rand.NewSource(7))
	for i := range 60 {
		p := anyNursery(r)
		paper := []Paper{Letter, A4, {180, 200}, {420, 297}}[i%4]
		secs, err := Sections(p, paper, growParts...)
		if err != nil {
			t.Fatalf("%d: %v", i, err)
		}
		checkSections(t, i, secs)
	}
}

// anyNursery is water and seed of random size with random, long, broken and
// huge values.
func anyNursery(r *rand.Rand) Pack {
	word := func() string {
		return []string{"", "a", "9.2 gpm (35 L/min)", "hose of the north shed, tall", strings.Repeat("endless", 20), "名 \x00 ½ □", strings.Repeat("many words ", 30)}[r.Intn(7)]
	}
	broken := func(v float64) float64 {
		switch r.Intn(60) {
		case 0:
			return math.NaN()
		case 1:
			return math.Inf(1)
		case 2:
			return -5
		case 3:
			return 0
		}
		return v
	}
	long := func(most float64) length { return length(broken(r.Float64() * most)) }
	flow := func() measure.Flow {
		return measure.Flow(broken(r.Float64()*math.Pow(10, 2+float64(r.Intn(6))))) * measure.LitrePerMinute
	}
	words := func(most int) []string {
		var out []string
		for range r.Intn(most) {
			out = append(out, word())
		}
		return out
	}
	levelOf := func() geometry.Level { return geometry.Level(r.Intn(3)) }
	sums := func() (out []Amount) {
		for range r.Intn(9) {
			out = append(out, Amount{word(), word()})
		}
		return out
	}
	p := Pack{Name: word(), Units: measure.Unit(r.Intn(2))}
	w := &Water{NoSection: word(), NoPump: word(), Seat: sums(), Lines: sums(), Failure: words(5), SeatSays: Said{levelOf(), word(), word()}}
	s := &Seed{NoLadder: word(), NoPlan: word(), Food: sums(), FoodSays: Said{levelOf(), word(), word()}}
	for range r.Intn(7) {
		w.Says, s.Says = append(w.Says, Said{levelOf(), word(), word()}), append(s.Says, Said{levelOf(), word(), word()})
		w.Losses = append(w.Losses, Loss{word(), word(), word(), word(), r.Intn(4) == 0})
		w.Pipes = append(w.Pipes, PipeRow{word(), word(), word(), word(), word(), word(), levelOf()})
		w.Basis, s.Basis = append(w.Basis, BasisLine{word(), word()}), append(s.Basis, BasisLine{word(), word()})
		s.Counts = append(s.Counts, CountRow{word(), word(), word(), word()})
	}
	if r.Intn(6) > 0 {
		rim := 30 + r.Float64()*700
		l := &LevelSection{Drum: word(), Bore: long(900), Wall: long(9), Rim: length(rim), Outlet: length(rim * (0.02 + 0.9*r.Float64())), Nipple: long(8), Stub: long(200), Mesh: -long(600),
			Design: LevelAt{flow(), long(rim * 1.3)}, Says: word()}
		if r.Intn(2) == 0 {
			l.Slot = &SlotSeen{Sill: length(rim * (r.Float64() - 0.2)), Top: length(rim * 0.9), Long: 100}
		}
		if r.Intn(2) == 0 {
			l.Pipe = &PipeSeen{Outside: 20 + long(400), Wall: long(8), Gap: long(300), Rim: long(rim), Screen: -long(500), Surface: long(rim) - long(100)}
		}
		q := 0.0
		for n := range r.Intn(300) {
			l.Curve = append(l.Curve, LevelAt{measure.Flow(broken(q*1e6)) / 60, length(broken(float64(n) * rim / 90))})
			q += r.Float64() * 3
		}
		for range r.Intn(5) {
			l.Marks = append(l.Marks, LevelMark{LevelAt{measure.Flow(r.Float64()*q*1e6) / 60, long(rim)}, word(), word()})
		}
		w.Section = l
	}
	if r.Intn(4) > 0 {
		c := &PumpChart{Duty: HeadAt{flow(), long(9000)}, DutySays: word(), Estimated: word()}
		for range r.Intn(50) {
			c.Pump, c.System = append(c.Pump, HeadAt{flow(), long(20000)}), append(c.System, HeadAt{flow(), long(20000)})
		}
		w.Pump = c
	}
	fs := &SiloFlows{Mean: flow(), MeanSays: word(), Says: words(4)}
	for n := range r.Intn([]int{5, 70, 900}[r.Intn(3)]) {
		fs.Silos = append(fs.Silos, SiloFlow{[]string{fmt.Sprint(n + 1), word()}[r.Intn(40)/39], flow(), word(), word(), word(), word(), geometry.Level(r.Intn(90) / 88), word()})
	}
	w.Flows = fs
	l := &MeshLadder{Across: word(), Says: words(4)}
	for range r.Intn(40) {
		l.Rungs = append(l.Rungs, MeshRung{word(), long(30), long(40), word(), word(), levelOf()})
	}
	for range r.Intn(9) {
		l.Marks = append(l.Marks, SizeMark{long(30), word()})
	}
	s.Ladder = l
	plan := &SeedPlan{Peak: words(3), DrumHave: r.Intn(60) - 4, PipeHave: r.Intn(9)}
	for n := range r.Intn(70) {
		plan.Weeks = append(plan.Weeks, SeedWeek{n + r.Intn(3), word(), word(), word(), word(), r.Intn(90) - 2, r.Intn(90) - 2, flow(), word(), word(), word(), r.Intn(30) == 0, levelOf()})
	}
	s.Plan = plan
	p.Water, p.Seed = w, s
	return p
}

// Whatever a job calls its parts, every page stays sound.
func FuzzGrowingWords(f *testing.F) {
	f.Add("blue", "note")
	f.Add("", " \n\t ")
	f.Add(strings.Repeat("M", 900), strings.Repeat("ab cd ", 100))
	f.Add("\xff\xfe broken", "😀 名前 \u202e turned \u0301")
	f.Fuzz(func(t *testing.T, a, b string) {
		if len(a)+len(b) > 4000 {
			t.Skip("longer than a job file's lines")
		}
		p := withWater(Pack{Name: a, Revision: b})
		w, s := p.Water, p.Seed
		said := []Said{{geometry.Stop, a, b}, {geometry.OK, b, a}}
		w.Says, s.Says, w.SeatSays, s.FoodSays = said, said, said[0], said[1]
		w.Section.Drum, w.Section.Says, w.Section.Marks[0].Name, w.Section.Marks[1].Says = a, b, a, b
		w.Losses[0] = Loss{a, b, a, b, true}
		w.Pump.DutySays, w.Pump.Estimated, w.Flows.MeanSays, w.Flows.Says[0] = a, b, a, b
		w.Flows.Silos[0] = SiloFlow{a, 1, b, a, b, a, geometry.Caution, b}
		w.Pipes[0] = PipeRow{a, b, a, b, a, b, geometry.Stop}
		w.Failure, w.Basis, s.Basis = []string{a, b}, []BasisLine{{a, b}}, []BasisLine{{b, a}}
		s.Ladder.Across, s.Ladder.Rungs[0].Name, s.Ladder.Rungs[1].Says, s.Ladder.Rungs[2].Own, s.Ladder.Marks[0].Name, s.Ladder.Marks[1].Name = a, b, a, b, a, b
		s.Counts[0], s.Food[0], s.Plan.Peak[0] = CountRow{a, b, a, b}, Amount{b, a}, a
		s.Plan.Weeks[0] = SeedWeek{1, a, b, a, b, 1, 1, 1, a, b, a, true, geometry.Stop}
		secs, err := Sections(p, Letter, growParts...)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range secs {
			for _, d := range s.Pages {
				checkPage(t, s.ID, d)
			}
		}
	})
}
