package basket

import (
	"encoding/binary"
	"math/rand/v2"
	"slices"
	"testing"
)

// Wherever the step limit strikes, the bound is not above the least cost and
// the choice is one.
func TestBoundIsCertain(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 7))
	stopped := 0
	for i := range 3000 {
		items, sellers := instance(r, 1+r.IntN(7), 1+r.IntN(4), []int64{30, 3000}[i%2], 0.2)
		got, err := cheapest(items, sellers, r.IntN(16))
		if err != nil {
			t.Fatal(err)
		}
		sound(t, items, sellers, got)
		want := exhaustive(items, sellers)
		if got.Bound > want || got.Cost < want {
			t.Fatalf("items %v, sellers %+v: cost %d, bound %d, least %d", items, sellers, got.Cost, got.Bound, want)
		}
		if !got.Proven {
			stopped++
		}
	}
	if stopped < 300 {
		t.Errorf("only %d searches were stopped", stopped)
	}
}

// Sixty items all sold by eight sellers at nearly one price are more than the
// step limit allows; the answer stays within a few per cent of its bound.
func TestHardIsBounded(t *testing.T) {
	items, sellers := hard(3, 60, 8)
	got, err := Cheapest(items, sellers)
	if err != nil {
		t.Fatal(err)
	}
	sound(t, items, sellers, got)
	if (got.Cost-got.Bound)*50 > got.Cost {
		t.Errorf("cost %d, bound %d: more than 2 %% apart", got.Cost, got.Bound)
	}
}

// A cost that falls, a seller or a price that is added: never dearer. An item
// that is added: never cheaper.
func TestMonotone(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 8))
	cost := func(items []Item, sellers []Seller) int64 {
		c, err := Cheapest(items, sellers)
		if err != nil || !c.Proven {
			t.Fatalf("%v, %+v", err, c)
		}
		return c.Cost
	}
	for range 400 {
		items, sellers := instance(r, 2+r.IntN(12), 2+r.IntN(4), 1000, 0.4)
		before := cost(items, sellers)
		if c := cost(items[1:], sellers); c > before {
			t.Fatalf("without an item %d, with it %d", c, before)
		}
		more, last := slices.Clone(items), len(sellers)
		for i := range more {
			more[i] = append(slices.Clone(more[i]), r.Int64N(1200)-100)
			if !slices.ContainsFunc(items[i], func(c int64) bool { return c >= 0 }) {
				more[i][last] = -1 // nobody sold it; that stays so
			}
		}
		if c := cost(more, append(slices.Clone(sellers), seller(r, 1000))); c > before {
			t.Fatalf("with another seller %d, without %d\n%v\n%+v", c, before, items, sellers)
		}
		dear := slices.Clone(items)
		i, j := r.IntN(len(items)), r.IntN(last)
		if dear[i] = slices.Clone(dear[i]); dear[i][j] >= 0 {
			dear[i][j] += 1 + r.Int64N(300)
		}
		if c := cost(dear, sellers); c < before {
			t.Fatalf("with a higher price %d, before %d\n%v\n%+v", c, before, items, sellers)
		}
		worse := slices.Clone(sellers)
		worse[j].Shipping += r.Int64N(100)
		worse[j].Minimum += r.Int64N(100)
		worse[j].Tax += r.Int64N(10_000)
		if c := cost(items, worse); c < before {
			t.Fatalf("with a worse seller %d, before %d\n%v\n%+v", c, before, items, sellers)
		}
	}
}

// The order of items is no matter to the cost, nor that of sellers.
func TestOrderOfInput(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 9))
	for range 300 {
		items, sellers := instance(r, 1+r.IntN(12), 1+r.IntN(5), 500, 0.4)
		a, err := Cheapest(items, sellers)
		if err != nil {
			t.Fatal(err)
		}
		slices.Reverse(items)
		slices.Reverse(sellers)
		for _, item := range items {
			slices.Reverse(item)
		}
		if b, err := Cheapest(items, sellers); err != nil || a.Cost != b.Cost || !b.Proven {
			t.Fatalf("%v: %d, reversed %d", err, a.Cost, b.Cost)
		}
	}
}

// Any numbers: an error or a sound choice, and for few items the least.
func FuzzCheapest(f *testing.F) {
	f.Add([]byte{2, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20}, int64(1), int64(0))
	f.Add([]byte{3, 250, 100, 20, 3, 4, 5, 60, 7, 8, 9, 10, 110, 12, 13, 14, 15, 16, 17, 180, 19, 20, 7, 7, 7, 7}, int64(1_000_003), int64(-1))
	f.Add([]byte{1, 255, 255, 255, 255, 255, 255, 255, 255, 255}, int64(Limit/600), int64(Limit))
	f.Fuzz(func(t *testing.T, data []byte, unit, odd int64) {
		next := func() int64 {
			if len(data) == 0 {
				return 0
			}
			v := int64(data[0])
			if data = data[1:]; v == 255 {
				return odd
			}
			return (v - 20) * max(1, unit)
		}
		m := 1 + int(binary.LittleEndian.Uint16(append(slices.Clone(data), 0, 0))%4)
		sellers := make([]Seller, m)
		for j := range sellers {
			sellers[j] = Seller{next(), next(), next(), next() % 1_000_000, next()%2 == 0}
		}
		items := make([]Item, min(6, (len(data)+m-1)/m))
		for i := range items {
			items[i] = make(Item, m)
			for j := range items[i] {
				items[i][j] = next()
			}
		}
		for _, s := range sellers {
			if o := OrderOf(odd, s); o.Total < 0 || o.TopUp < 0 || o.Tax < 0 || o.Shipping < 0 {
				t.Fatalf("order of %d at %+v: %+v", odd, s, o)
			}
		}
		got, err := Cheapest(items, sellers)
		if err != nil {
			return
		}
		sound(t, items, sellers, got)
		if want := exhaustive(items, sellers); got.Cost != want || !got.Proven {
			t.Fatalf("items %v, sellers %+v: %+v, want %d", items, sellers, got, want)
		}
	})
}
