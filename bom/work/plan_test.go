package work

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"silowright/bom"
)

// checkPlan holds the days as printed to the rates and the hours.
func checkPlan(t *testing.T, p DayPlan, batches []bom.Batch, r Rates) {
	t.Helper()
	h := Reckon(batches, r)
	total := Minutes(0)
	ended := map[string]int{}
	open := map[string]bool{}
	for i, d := range p.Days {
		if d.Number != i+1 {
			t.Errorf("day %d is numbered %d", i+1, d.Number)
		}
		sum := Minutes(0)
		for _, k := range d.Tasks {
			sum += k.Minutes
			id := k.Part + k.ID
			if k.From > 0 {
				if k.From != ended[id]+1 || k.Begun != open[id] {
					t.Errorf("day %d: %s of %s, %d were ended", d.Number, k.Name, k.Silos(), ended[id])
				}
				ended[id], open[id] = k.To, k.Open
				if k.Open {
					ended[id]--
				}
			}
		}
		near(t, "the day's tasks", sum, d.Work, 1e-6)
		full := Minutes(r.People) * r.Day
		if d.Work > full+1e-6 {
			t.Errorf("day %d: %s of work for %d people", d.Number, d.Work.Text(), r.People)
		}
		near(t, "idle", d.Idle, max(0, full-d.Work), 1e-6)
		total += d.Work
	}
	near(t, "all days", total, h.Total, 1e-4)
	for id, n := range ended {
		want := h.DrumSilos
		if strings.HasPrefix(id, PipeSilo) {
			want = h.PipeSilos
		}
		if n != want || open[id] {
			t.Errorf("%s: %d of %d silos ended", id, n, want)
		}
	}
	if h.DrumSilos > 0 && ended[DrumSilo+stageFinish] != h.DrumSilos || h.PipeSilos > 0 && ended[PipeSilo+stageFinish] != h.PipeSilos {
		t.Error("not every silo is signed off")
	}
	if len(p.Days) < p.Bound || p.Bound == len(p.Days) && !p.Proven || p.Why == "" {
		t.Errorf("%d days, bound %d (%s), proven %v", len(p.Days), p.Bound, p.Why, p.Proven)
	}
	if n := len(p.Days); n > 0 && (len(p.Days[n-1].Tasks) == 0 || len(p.Days[n-1].Curing) > 0) {
		t.Error("the last day has no work, or something is left to set")
	}
}

// One pipe silo, one person, by pencil: screen bonded on the first day, its
// clamp off on the second; the resin's full cure of 7 days counts from the
// first day's bonding, so rinsing is on the eighth, and a soak later the ninth,
// and another the tenth.
func TestPlanOnePipeSiloByPencil(t *testing.T) {
	r := DefaultRates()
	p, err := Plan(build(0, 1), r)
	if err != nil {
		t.Fatal(err)
	}
	checkPlan(t, p, build(0, 1), r)
	got := map[string]int{}
	for _, d := range p.Days {
		for _, k := range d.Tasks {
			got[k.ID] = d.Number
		}
	}
	for id, day := range map[string]int{stageSetUp: 1, stagePipe: 1, stageScreen: 1, stageTrim: 2, stageOutlet: 2, stageSoak: 8, stageAgain: 9, stageFinish: 10} {
		if got[id] != day {
			t.Errorf("%s is on day %d, want %d", id, got[id], day)
		}
	}
	if len(p.Days) != 10 || !p.Proven {
		t.Errorf("%d days, proven %v", len(p.Days), p.Proven)
	}
	if got := p.Days[0].Curing[0].Text(); got != "resin of pipe silo 1" {
		t.Errorf("the first night: %s", got)
	}
}

// Twelve pipe silos on four clamps that set overnight take three rounds, on
// three days; on twelve clamps one.
func TestPlanKeepsClampsFull(t *testing.T) {
	for clamps, rounds := range map[int]int{12: 1, 6: 2, 5: 3, 4: 3, 1: 12} {
		r := DefaultRates()
		r.People, r.Clamps = 2, clamps
		p, err := Plan(build(0, 12), r)
		if err != nil {
			t.Fatal(err)
		}
		checkPlan(t, p, build(0, 12), r)
		days := 0
		for _, d := range p.Days {
			for _, k := range d.Tasks {
				if k.ID == stageScreen {
					days++
				}
			}
		}
		if days != rounds || !p.Proven {
			t.Errorf("%d clamps: screens are bonded on %d days, want %d; proven %v", clamps, days, rounds, p.Proven)
		}
	}
}

// The build of twenty with twelve pipe silos: least, and so proven, with one to
// six people.
func TestPlanTwenty(t *testing.T) {
	for people := 1; people <= 6; people++ {
		r := DefaultRates()
		r.People = people
		p, err := Plan(build(20, 12), r)
		if err != nil {
			t.Fatal(err)
		}
		checkPlan(t, p, build(20, 12), r)
		if !p.Proven {
			t.Errorf("%d people: %d days, bound %d", people, len(p.Days), p.Bound)
		}
	}
}

// More people or clamps never make it longer.
func TestPlanMoreHandsNeverTakeLonger(t *testing.T) {
	rnd := rand.New(rand.NewPCG(4, 3))
	for range 30 {
		batches := build(rnd.IntN(12), rnd.IntN(9))
		r := DefaultRates()
		r.Screw = Minutes(rnd.IntN(8))
		r.Screen = Minutes(5 + rnd.IntN(60))
		r.FullCure = Minutes(rnd.IntN(100)) * Hour
		r.ResinCure = Minutes(rnd.IntN(30)) * Hour
		r.Soak = Minutes(rnd.IntN(30)) * Hour
		r.Day = Minutes(2+rnd.IntN(8)) * Hour
		days := map[[2]int]int{}
		for people := 1; people <= 4; people++ {
			for clamps := 1; clamps <= 4; clamps++ {
				r.People, r.Clamps = people, clamps
				p, err := Plan(batches, r)
				if err != nil {
					t.Fatal(err)
				}
				checkPlan(t, p, batches, r)
				n := len(p.Days)
				days[[2]int{people, clamps}] = n
				if a, ok := days[[2]int{people - 1, clamps}]; ok && a < n {
					t.Errorf("%d people take %d days, one fewer %d", people, n, a)
				}
				if a, ok := days[[2]int{people, clamps - 1}]; ok && a < n {
					t.Errorf("%d clamps take %d days, one fewer %d", clamps, n, a)
				}
			}
		}
	}
}

// The ends of the ranges: everything at its least, its most, and nothing to
// build.
func TestPlanAtTheEndsOfTheRanges(t *testing.T) {
	low, high := DefaultRates(), DefaultRates()
	for _, k := range Keys() {
		if err := k.Set(&low, k.Low); err != nil {
			t.Fatal(err)
		}
		if err := k.Set(&high, k.High); err != nil {
			t.Fatal(err)
		}
	}
	for _, r := range []Rates{low, high} {
		p, err := Plan(build(3, 2), r)
		if err != nil {
			t.Fatal(err)
		}
		checkPlan(t, p, build(3, 2), r)
	}
	if p, err := Plan(build(0, 0), low); err != nil || len(p.Days) != 0 || !p.Proven {
		t.Errorf("nothing built: %+v %v", p, err)
	}
	if p, err := Plan(nil, low); err != nil || len(p.Days) != 0 {
		t.Errorf("no batches: %+v %v", p, err)
	}
	for _, n := range []int{500_000, math.MaxInt32} {
		_, err := Plan(build(n, 0), DefaultRates())
		if err == nil || !strings.HasPrefix(err.Error(), "work.hours_per_day: 8 h, the build takes at least ") {
			t.Errorf("%d silos: %v", n, err)
		}
	}
	slow := DefaultRates()
	slow.Clamps = 1
	if _, err := Plan(build(0, 50_000), slow); err == nil {
		t.Error("50,000 pipe silos on one clamp were laid out")
	}
}

// The same build gives the same plan.
func TestPlanIsDeterministic(t *testing.T) {
	r := DefaultRates()
	r.People, r.Clamps = 3, 5
	one, err := Plan(build(37, 23), r)
	if err != nil {
		t.Fatal(err)
	}
	two, err := Plan(build(37, 23), r)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(one, two); d != "" {
		t.Error(d)
	}
}

// Cold weather's cement (12 h) keeps the leak test off for a night more than
// the table's 2 h would, when nothing else has to set.
func TestPlanWaitsForCement(t *testing.T) {
	r := DefaultRates()
	r.SealantCure, r.FullCure, r.Soak, r.SetUp = 0, 0, 0, 0
	day := func(cement Minutes) (leak, joints int) {
		r.CementCure = cement
		p, err := Plan(build(1, 0), r)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range p.Days {
			for _, k := range d.Tasks {
				switch k.ID {
				case stageLeak:
					leak = d.Number
				case stageJoints:
					joints = d.Number
				}
			}
		}
		return leak, joints
	}
	if leak, joints := day(0); leak != joints {
		t.Errorf("2 h: joints on day %d, test on day %d", joints, leak)
	}
	if leak, joints := day(12 * Hour); leak != joints+1 {
		t.Errorf("12 h: joints on day %d, test on day %d", joints, leak)
	}
}

// Ten thousand are laid out as twenty are, within a hundredth of the bound.
func TestPlanTenThousand(t *testing.T) {
	r := DefaultRates()
	r.People, r.Clamps = 6, 16
	batches := build(10_000, 6000)
	p, err := Plan(batches, r)
	if err != nil {
		t.Fatal(err)
	}
	checkPlan(t, p, batches, r)
	if float64(len(p.Days)) > 1.01*float64(p.Bound)+1 {
		t.Errorf("%d days, bound %d (%s)", len(p.Days), p.Bound, p.Why)
	}
}
