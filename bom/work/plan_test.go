package work

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"silowright/bom"
)

// span is when one silo went through one stage.
type span struct{ start, end ticks }

// spans unrolls a plan's blocks silo by silo.
func spans(t *testing.T, st *shopState) [][]span {
	t.Helper()
	out := make([][]span, len(st.stages))
	begun := make([]ticks, len(st.stages)) // work done on the silo in hand
	since := make([]ticks, len(st.stages))
	for _, b := range st.blocks {
		g := st.stages[b.stage]
		at, left := b.start, b.work
		if len(out[b.stage]) != b.from || b.begun != (begun[b.stage] > 0) {
			t.Fatalf("%s: block from silo %d after %d ended", g.id, b.from, len(out[b.stage]))
		}
		for left > 0 {
			if begun[b.stage] == 0 {
				since[b.stage] = at
			}
			do := min(left, g.ticks-begun[b.stage])
			begun[b.stage] += do
			at, left = at+do, left-do
			if begun[b.stage] == g.ticks {
				out[b.stage] = append(out[b.stage], span{since[b.stage], at})
				begun[b.stage] = 0
			}
		}
	}
	return out
}

// checkLaid holds a plan to everything the model of the shop promises.
func checkLaid(t *testing.T, l *laid) {
	t.Helper()
	s := l.shop
	all := spans(t, l.state)
	clock := ticks(0)
	for _, b := range l.state.blocks {
		if b.start < clock {
			t.Fatalf("two stages at one time: %d before %d", b.start, clock)
		}
		if b.start%night+b.work > s.day {
			t.Fatalf("work at night: %s from %d for %d", s.stages[b.stage].id, b.start, b.work)
		}
		clock = b.start + b.work
	}
	if l.days != int((clock-1)/night)+1 {
		t.Errorf("%d days, the last work ends at %d", l.days, clock)
	}
	inHand := map[ticks]int{}
	for k, g := range s.stages {
		if len(all[k]) != g.n {
			t.Fatalf("%s: %d of %d silos ended", g.id, len(all[k]), g.n)
		}
		for i, p := range all[k] {
			for _, w := range g.waits {
				if on := all[w.on][min(i, s.stages[w.on].n-1)]; p.start < on.end+w.hold {
					t.Errorf("%s of silo %d begun %d before %s was ended and set", g.id, i+1, on.end+w.hold-p.start, s.stages[w.on].id)
				}
			}
			if g.whole && g.ticks <= s.day && p.start/night != (p.end-1)/night {
				t.Errorf("%s of silo %d was left over night", g.id, i+1)
			}
			if g.takes {
				inHand[p.start]++
			}
			if g.frees {
				inHand[p.end]--
			}
		}
	}
	for k, g := range s.stages {
		if !g.takes {
			continue
		}
		for _, p := range all[k] {
			held := 0
			for at, n := range inHand {
				if at <= p.start {
					held += n
				}
			}
			if held > s.clamps {
				t.Errorf("%d clamps on at %d, there are %d", held, p.start, s.clamps)
			}
		}
	}
}

// randomShop is a small made-up shop: one or two parts, few silos and stages.
func randomShop(r *rand.Rand, silos, stages int) *shop {
	s := &shop{crew: 1, day: ticks(2+r.IntN(7)) * 60 * minute, clamps: 1 + r.IntN(2)}
	parts := 1 + r.IntN(2)
	for p := range parts {
		n := 1 + r.IntN(silos)
		var chain []int
		count := 1 + r.IntN(stages)
		pair := -1
		if p == 0 && count > 1 && r.IntN(2) == 0 {
			pair = r.IntN(count - 1)
		}
		for i := range count {
			g := stage{id: fmt.Sprint(p, "-", i), name: "stage", part: []string{PipeSilo, DrumSilo}[p], n: n, ticks: ticks(1+r.IntN(180)) * minute,
				whole: r.IntN(3) == 0, takes: i == pair, frees: pair >= 0 && i == pair+1}
			if i > 0 {
				hold := ticks(0)
				if r.IntN(2) == 0 {
					hold = ticks(r.IntN(30*60)) * minute
				}
				g.waits = append(g.waits, wait{on: chain[i-1], hold: hold, what: "set"})
				if i > 1 && r.IntN(3) == 0 {
					g.waits = append(g.waits, wait{on: chain[i-2], hold: ticks(r.IntN(50*60)) * minute, what: "full"})
				}
			}
			chain = append(chain, len(s.stages))
			s.stages = append(s.stages, g)
		}
		s.chains = append(s.chains, chain)
	}
	return s
}

// leastByHand goes through every order of a tiny shop's work, minute by
// minute, and gives the fewest days. It shares nothing with the search.
func leastByHand(s *shop) int {
	best := math.MaxInt
	next := make([]int, len(s.stages))
	ends := make([][]int, len(s.stages)) // minutes
	day := int(s.day / minute)
	worked := func(m int) bool { return m%1440 < day }
	var go_ func(t int)
	go_ = func(t int) {
		if t > 0 && (t-1)/1440+1 >= best {
			return
		}
		done := true
		for k, g := range s.stages {
			if next[k] >= g.n {
				continue
			}
			done = false
			i, at, ok := next[k], t, true
			for _, w := range g.waits {
				if i >= next[w.on] {
					ok = false
					break
				}
				at = max(at, ends[w.on][i]+int(w.hold/minute))
			}
			if g.takes && ok {
				for f, h := range s.stages {
					if h.frees && i-next[f] >= s.clamps {
						ok = false
					}
				}
			}
			if !ok {
				continue
			}
			need := int(g.ticks / minute)
			for !worked(at) || g.whole && need <= day && at%1440+need > day {
				at++
			}
			for need > 0 {
				if worked(at) {
					need--
				}
				at++
			}
			next[k]++
			ends[k] = append(ends[k], at)
			go_(at)
			ends[k] = ends[k][:i]
			next[k]--
		}
		if done {
			best = (t-1)/1440 + 1
		}
	}
	go_(0)
	return best
}

// Tiny builds: the plan is the least of all orders, and says so; the bound is
// never above it.
func TestPlanIsTheLeastOfAllOrders(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	tight := 0
	for i := range 400 {
		s := randomShop(r, 3, 3)
		if s.jobs() > 9 {
			continue
		}
		b := s.least()
		l := s.lay(b, MaxDays)
		checkLaid(t, l)
		want := leastByHand(s)
		if l.days != want || !l.proven || b.days > want {
			t.Errorf("shop %d: %d days, proven %v, bound %d; every order: %d\n%+v", i, l.days, l.proven, b.days, want, s)
		}
		if b.days == want {
			tight++
		}
	}
	t.Logf("the bound alone met the least in %d", tight)
}

// Middling builds keep every promise, whatever rule laid them out.
func TestEveryRuleKeepsTheModel(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2))
	for range 150 {
		s := randomShop(r, 25, 6)
		b := s.least()
		for _, q := range s.rules() {
			st, ok := s.run(q, MaxDays)
			if !ok {
				t.Fatal("not laid out")
			}
			l := &laid{shop: s, state: st, days: s.daysTo(st.finish())}
			checkLaid(t, l)
			if l.days < b.days {
				t.Errorf("%d days, below the bound of %d (%s)", l.days, b.days, b.why)
			}
		}
	}
}

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
	for range 12 {
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
