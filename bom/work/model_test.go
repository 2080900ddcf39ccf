package work

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
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
			if g.whole && p.start/night != (p.end-1)/night {
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
			g.whole = g.whole && g.ticks <= s.day
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
	var follow func(t int)
	follow = func(t int) {
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
			for !worked(at) || g.whole && at%1440+need > day {
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
			follow(at)
			ends[k] = ends[k][:i]
			next[k]--
		}
		if done {
			best = (t-1)/1440 + 1
		}
	}
	follow(0)
	return best
}

// Tiny builds: the plan is the least of all orders, and says so; the bound is
// never above it.
func TestPlanIsTheLeastOfAllOrders(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	tight := 0
	for i := range 3000 {
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
	for range 300 {
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
