package cover

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// sound tells whether a choice holds the need and costs what it says.
func sound(t *testing.T, need int64, packs []Pack, c Choice) {
	t.Helper()
	holds, paid := int64(0), int64(0)
	for i, n := range c.Counts {
		p, sold := cost(packs[i], n)
		if !sold || n < 0 {
			t.Fatalf("%d of pack %d, which are not sold", n, i)
		}
		holds, paid = holds+n*packs[i].Holds, paid+p
	}
	if holds < need || paid != c.Cost || c.Bound > c.Cost || c.Proven != (c.Bound == c.Cost) {
		t.Fatalf("need %d, packs %v: %+v; holds %d, costs %d", need, packs, c, holds, paid)
	}
}

// Wherever the step limit strikes, the bound is not above the least cost and
// the choice is one.
func TestBoundIsCertain(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 10))
	stopped := 0
	for range 6000 {
		packs := instance(r, 2+r.IntN(3), 12, 40, 5)
		need := 1 + r.Int64N(40)
		got, err := least(need, packs, r.IntN(8), r.IntN(8))
		if err != nil {
			t.Fatal(err)
		}
		sound(t, need, packs, got)
		if want := exhaustive(need, packs).Cost; got.Bound > want || got.Cost < want {
			t.Fatalf("need %d, packs %v: cost %d, bound %d, least %d", need, packs, got.Cost, got.Bound, want)
		}
		if !got.Proven {
			stopped++
		}
	}
	if stopped < 300 {
		t.Errorf("only %d searches were stopped", stopped)
	}
}

// A pack that is added is never dearer; a higher price, a higher need, a pack
// that holds less is never cheaper.
func TestMonotone(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 11))
	for range 3000 {
		packs := instance(r, 1+r.IntN(4), 500, 3000, 10)
		need := 1 + r.Int64N(20_000)
		must := func(need int64, packs []Pack) int64 {
			c, err := Least(need, packs)
			if err != nil || !c.Proven {
				t.Fatalf("need %d, packs %v: %v, %+v", need, packs, err, c)
			}
			sound(t, need, packs, c)
			return c.Cost
		}
		before := must(need, packs)
		if c := must(need, append(slices.Clone(packs), instance(r, 1, 500, 3000, 10)...)); c > before {
			t.Fatalf("need %d, packs %v: with another pack %d, before %d", need, packs, c, before)
		}
		if c := must(need+r.Int64N(100), packs); c < before {
			t.Fatalf("need %d, packs %v: for more %d, before %d", need, packs, c, before)
		}
		dear, i := slices.Clone(packs), r.IntN(len(packs))
		dear[i].Tiers = slices.Clone(dear[i].Tiers)
		dear[i].Tiers[r.IntN(len(dear[i].Tiers))].Price += 1 + r.Int64N(100)
		if c := must(need, dear); c < before {
			t.Fatalf("need %d, packs %v: with a higher price %d, before %d", need, packs, c, before)
		}
		dear[i].Holds = 1 + r.Int64N(dear[i].Holds)
		if c := must(need, dear); c < before {
			t.Fatalf("need %d, packs %v: with a smaller pack %d, before %d", need, packs, c, before)
		}
	}
}

// The work does not grow with the need: the same steps for a million times it.
func TestWorkIsThatOfThePacks(t *testing.T) {
	steps := func(need int64) int {
		s, _ := newSearch(need, boxes)
		s.singles()
		s.steps, s.open = costSteps, huge
		s.cases()
		s.ties = true
		s.cases()
		return costSteps - s.steps
	}
	for _, k := range []int64{1, 1000, 1_000_000, 1_000_000_000} {
		if n := steps(2000*k + 137); n > 200 {
			t.Errorf("need %d takes %d steps", 2000*k+137, n)
		}
	}
}

// Any numbers: an error or a sound choice, and for a small need the least.
func FuzzLeast(f *testing.F) {
	f.Add(int64(40), []byte{1, 5, 1, 200, 10, 100, 0, 7, 2, 90}, int64(1))
	f.Add(int64(43), []byte{6, 1, 6, 0, 9, 1, 9, 0, 20, 1, 20}, int64(1))
	f.Add(int64(Limit), []byte{255, 1, 3, 0, 7, 2, 9}, int64(1_000_003))
	f.Fuzz(func(t *testing.T, need int64, data []byte, unit int64) {
		var packs []Pack
		for len(data) >= 3 && len(packs) < 5 {
			p := Pack{Holds: int64(data[0])}
			if data = data[1:]; p.Holds == 255 {
				p.Holds = unit
			}
			for len(data) >= 2 && data[0] != 0 {
				p.Tiers = append(p.Tiers, Tier{int64(data[0]), int64(data[1]) * max(1, unit)})
				data = data[2:]
			}
			if packs = append(packs, p); len(data) > 0 {
				data = data[1:]
			}
		}
		got, err := Least(need, packs)
		if err != nil || need > 1<<40 {
			return
		}
		sound(t, need, packs, got)
		if need <= 60 && len(packs) <= 2 {
			if want := exhaustive(need, packs); got.Proven && got.Cost != want.Cost {
				t.Fatalf("need %d, packs %v: %+v, want %+v", need, packs, got, want)
			}
		}
	})
}
