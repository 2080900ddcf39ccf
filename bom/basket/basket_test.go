package basket

import (
	"errors"
	"math/big"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Worked by hand, amounts in cents.
func TestOrder(t *testing.T) {
	for _, c := range []struct {
		reason string
		goods  int64
		seller Seller
		want   Order
	}{
		{"nothing ordered costs nothing", 0, Seller{Shipping: 500, FreeFrom: -1, Minimum: 1000}, Order{}},
		{"goods and shipping", 2000, Seller{Shipping: 500, FreeFrom: -1}, Order{2000, 0, 500, 0, 2500}},
		{"8 % on goods", 2000, Seller{Shipping: 500, FreeFrom: -1, Tax: 80_000}, Order{2000, 0, 500, 160, 2660}},
		{"8 % on shipping too", 2000, Seller{500, -1, 0, 80_000, true}, Order{2000, 0, 500, 200, 2700}},
		{"6.25 % of 40 is 2.5, half away from zero", 40, Seller{FreeFrom: -1, Tax: 62_500}, Order{40, 0, 0, 3, 43}},
		{"6.25 % of 39 is 2.4375", 39, Seller{FreeFrom: -1, Tax: 62_500}, Order{39, 0, 0, 2, 41}},
		{"free from 50.00, at 50.00", 5000, Seller{Shipping: 500, FreeFrom: 5000}, Order{5000, 0, 0, 0, 5000}},
		{"47.00: 3.00 more save 5.00", 4700, Seller{Shipping: 500, FreeFrom: 5000}, Order{4700, 300, 0, 0, 5000}},
		{"45.00: 5.00 more save nothing", 4500, Seller{Shipping: 500, FreeFrom: 5000}, Order{4500, 0, 500, 0, 5000}},
		{"45.00 with 8 % on goods: 5.40 for 5.00", 4500, Seller{Shipping: 500, FreeFrom: 5000, Tax: 80_000}, Order{4500, 0, 500, 360, 5360}},
		{"45.50 with 8 %: 4.86 for 5.00", 4550, Seller{Shipping: 500, FreeFrom: 5000, Tax: 80_000}, Order{4550, 450, 0, 400, 5400}},
		{"minimum of 25.00", 1000, Seller{Shipping: 300, FreeFrom: -1, Minimum: 2500}, Order{1000, 1500, 300, 0, 2800}},
		{"minimum of 25.00, free from 27.00", 1000, Seller{Shipping: 300, FreeFrom: 2700, Minimum: 2500}, Order{1000, 1700, 0, 0, 2700}},
		{"a minimum that is above free shipping", 1000, Seller{Shipping: 300, FreeFrom: 2000, Minimum: 2500}, Order{1000, 1500, 0, 0, 2500}},
		{"free from 0", 1, Seller{Shipping: 300}, Order{1, 0, 0, 0, 1}},
	} {
		if d := cmp.Diff(c.want, OrderOf(c.goods, c.seller)); d != "" {
			t.Errorf("%s (−want +got)\n%s", c.reason, d)
		}
	}
}

func seller(r *rand.Rand, money int64) Seller {
	s := Seller{Shipping: r.Int64N(money/4 + 1), FreeFrom: -1}
	if r.IntN(2) == 0 {
		s.FreeFrom = r.Int64N(2 * money)
	}
	if r.IntN(3) == 0 {
		s.Minimum = r.Int64N(money)
	}
	if r.IntN(2) == 0 {
		s.Tax, s.TaxShipping = r.Int64N(250_000), r.IntN(2) == 0
	}
	return s
}

// The order against its definition, the least over every y, with the tax in
// rational numbers; and the total never falls as goods grow.
func TestOrderIsTheLeast(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2))
	for range 60 {
		s := seller(r, 60)
		last := int64(0)
		for goods := int64(1); goods < 80; goods++ {
			got, least := OrderOf(goods, s), int64(1<<62)
			for y := max(goods, s.Minimum); y < 200; y++ {
				ship, taxed := s.Shipping, y
				if s.FreeFrom >= 0 && y >= s.FreeFrom {
					ship = 0
				}
				if s.TaxShipping {
					taxed += ship
				}
				tax := new(big.Rat).SetFrac64(taxed*s.Tax, 1_000_000)
				tax.Add(tax, big.NewRat(1, 2))
				least = min(least, y+ship+new(big.Int).Quo(tax.Num(), tax.Denom()).Int64())
			}
			if got.Total != least || got.Goods != goods || got.TopUp < 0 || got.Goods+got.TopUp+got.Shipping+got.Tax != got.Total {
				t.Fatalf("goods %d, %+v: %+v, want total %d", goods, s, got, least)
			}
			if got.Total < last {
				t.Fatalf("goods %d, %+v: total falls from %d to %d", goods, s, last, got.Total)
			}
			last = got.Total
		}
	}
}

func TestByHand(t *testing.T) {
	flat := func(shipping int64) Seller { return Seller{Shipping: shipping, FreeFrom: -1} }
	for _, c := range []struct {
		reason  string
		items   []Item
		sellers []Seller
		at      []int
		cost    int64
	}{
		{"nothing", nil, nil, []int{}, 0},
		{"nobody sells it", []Item{{-1, -1}}, []Seller{flat(1), flat(1)}, []int{-1}, 0},
		{"one order saves more than the cheaper price", []Item{{1000, 900}, {1000, -1}}, []Seller{flat(500), flat(500)}, []int{0, 0}, 2500},
		{"the cheaper price is worth a second order", []Item{{2000, 1400}, {1000, -1}}, []Seller{flat(500), flat(500)}, []int{1, 0}, 3400},
		{"a dearer item reaches free shipping: 24+26 = 50, not 24+5+25+5",
			[]Item{{2400, -1}, {2600, 2500}}, []Seller{{Shipping: 500, FreeFrom: 5000}, flat(500)}, []int{0, 0}, 5000},
		{"a minimum filled by a dearer item: 15+12, not 25 and 10",
			[]Item{{1500, -1}, {1200, 1000}}, []Seller{{FreeFrom: -1, Minimum: 2500}, flat(0)}, []int{0, 0}, 2700},
		{"tax decides: 100 at 10 % is 110, 105 without is less", []Item{{10000, 10500}}, []Seller{{FreeFrom: -1, Tax: 100_000}, flat(0)}, []int{1}, 10500},
		{"set beforehand", []Item{{-1, 10500}}, []Seller{flat(0), flat(900)}, []int{1}, 11400},
		{"given free, no order", []Item{{0, 100}}, []Seller{flat(500), flat(0)}, []int{0}, 0},
		{"three at one: each alone is cheaper elsewhere", []Item{{110, 100, -1, -1}, {110, -1, 100, -1}, {110, -1, -1, 100}},
			[]Seller{flat(40), flat(30), flat(30), flat(30)}, []int{0, 0, 0}, 370},
	} {
		got, err := Cheapest(c.items, c.sellers)
		if d := cmp.Diff(c.at, got.Seller); d != "" || err != nil || got.Cost != c.cost || got.Bound != c.cost || !got.Proven {
			t.Errorf("%s: %v %+v, want cost %d at (−want +got)\n%s", c.reason, err, got, c.cost, d)
		}
	}
}

func TestErrors(t *testing.T) {
	ok := Seller{FreeFrom: -1}
	for _, c := range []struct {
		reason  string
		items   []Item
		sellers []Seller
		is      error
	}{
		{"a cost missing", []Item{{1}}, []Seller{ok, ok}, ErrInput},
		{"a cost too large", []Item{{Limit + 1}}, []Seller{ok}, ErrInput},
		{"shipping below 0", nil, []Seller{{Shipping: -1}}, ErrInput},
		{"minimum below 0", nil, []Seller{{Minimum: -1}}, ErrInput},
		{"tax above 100 %", nil, []Seller{{Tax: Million + 1}}, ErrInput},
		{"free shipping out of range", nil, []Seller{{FreeFrom: Limit + 1}}, ErrInput},
		{"items that add up to too much", []Item{{Limit}, {1}}, []Seller{ok}, ErrTooLarge},
		{"shipping that adds up to too much", nil, []Seller{{Shipping: Limit}, {Minimum: 1}}, ErrTooLarge},
		{"tax takes the cost past the limit", []Item{{Limit}}, []Seller{{Tax: 1}}, ErrTooLarge},
	} {
		if got, err := Cheapest(c.items, c.sellers); !errors.Is(err, c.is) {
			t.Errorf("%s: %v, %+v; want %v", c.reason, err, got, c.is)
		}
	}
}

// instance draws a basket; one price in density is missing.
func instance(r *rand.Rand, items, sellers int, money int64, missing float64) ([]Item, []Seller) {
	list, s := make([]Item, items), make([]Seller, sellers)
	for j := range s {
		s[j] = seller(r, money)
	}
	for i := range list {
		list[i] = make(Item, sellers)
		base := 1 + r.Int64N(money)
		for j := range sellers {
			list[i][j] = base + r.Int64N(base/4+2)
			switch {
			case r.Float64() < missing:
				list[i][j] = -1
			case r.IntN(60) == 0:
				list[i][j] = 0
			}
		}
	}
	return list, s
}

// exhaustive tries every seller for every item.
func exhaustive(items []Item, sellers []Seller) int64 {
	goods, best := make([]int64, len(sellers)), int64(1<<62)
	var try func(i int)
	try = func(i int) {
		if i == len(items) {
			sum := int64(0)
			for j, g := range goods {
				sum += OrderOf(g, sellers[j]).Total
			}
			best = min(best, sum)
			return
		}
		sold := false
		for j, c := range items[i] {
			if c >= 0 {
				sold = true
				goods[j] += c
				try(i + 1)
				goods[j] -= c
			}
		}
		if !sold {
			try(i + 1)
		}
	}
	try(0)
	return best
}

// sound tells whether a choice is one, and its sums are its own.
func sound(t *testing.T, items []Item, sellers []Seller, c Choice) {
	t.Helper()
	goods, sum := make([]int64, len(sellers)), int64(0)
	for i, at := range c.Seller {
		if at < 0 {
			if slices.ContainsFunc(items[i], func(n int64) bool { return n >= 0 }) {
				t.Fatalf("item %d is sold but not bought", i)
			}
			continue
		}
		if items[i][at] < 0 {
			t.Fatalf("item %d is bought at %d, where it is not sold", i, at)
		}
		goods[at] += items[i][at]
	}
	for j, o := range c.Orders {
		if o != OrderOf(goods[j], sellers[j]) {
			t.Fatalf("order %d is %+v for goods of %d", j, o, goods[j])
		}
		sum += o.Total
	}
	if sum != c.Cost || c.Bound > c.Cost || c.Proven != (c.Bound == c.Cost) {
		t.Fatalf("cost %d, bound %d, proven %v; orders cost %d", c.Cost, c.Bound, c.Proven, sum)
	}
}

func TestAgainstEnumeration(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 3))
	for i := range 3000 {
		money := []int64{20, 1000, 100_000}[i%3]
		items, sellers := instance(r, 1+r.IntN(7), 1+r.IntN(4), money, 0.3)
		got, err := Cheapest(items, sellers)
		if err != nil {
			t.Fatal(err)
		}
		sound(t, items, sellers, got)
		if want := exhaustive(items, sellers); got.Cost != want || !got.Proven {
			t.Fatalf("items %v, sellers %+v: %+v, want cost %d", items, sellers, got, want)
		}
	}
}
