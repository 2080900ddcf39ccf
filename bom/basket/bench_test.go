package basket

import (
	"math/rand/v2"
	"testing"
)

// typical is a build's buy list: sixty items, four of five sold by one or two
// of eight sellers, the rest by up to five.
func typical(seed uint64) ([]Item, []Seller) {
	r := rand.New(rand.NewPCG(seed, 60))
	const m = 8
	sellers := make([]Seller, m)
	for j := range sellers {
		sellers[j] = Seller{Shipping: 600 + r.Int64N(2000), FreeFrom: -1, Tax: 80_000, TaxShipping: j%2 == 0}
		if j%2 == 0 {
			sellers[j].FreeFrom = 5000 * (1 + r.Int64N(8))
		}
		if j%3 == 0 {
			sellers[j].Minimum = 2500
		}
	}
	items := make([]Item, 60)
	for i := range items {
		items[i] = make(Item, m)
		base := 300 + r.Int64N(6000)
		n := 1 + r.IntN(2)
		if i%5 == 0 {
			n = 3 + r.IntN(3)
		}
		for j := range items[i] {
			items[i][j] = -1
		}
		for _, j := range r.Perm(m)[:n] {
			items[i][j] = base * (85 + r.Int64N(30)) / 100
		}
	}
	return items, sellers
}

// hard is n items all sold by m sellers at nearly one price.
func hard(seed uint64, n, m int) ([]Item, []Seller) {
	r := rand.New(rand.NewPCG(seed, 61))
	sellers := make([]Seller, m)
	for j := range sellers {
		sellers[j] = Seller{Shipping: 900 + r.Int64N(900), FreeFrom: 10_000 + r.Int64N(20_000), Tax: 80_000}
		if j%3 == 0 {
			sellers[j].Minimum = 5000
		}
	}
	items := make([]Item, n)
	for i := range items {
		items[i] = make(Item, m)
		base := 300 + r.Int64N(6000)
		for j := range items[i] {
			items[i][j] = base * (90 + r.Int64N(20)) / 100
		}
	}
	return items, sellers
}

func bench(b *testing.B, make func(seed uint64) ([]Item, []Seller)) {
	const set = 16
	var items [set][]Item
	var sellers [set][]Seller
	for i := range set {
		items[i], sellers[i] = make(uint64(i))
	}
	b.ReportAllocs()
	b.ResetTimer()
	proven := 0
	for i := range b.N {
		c, err := Cheapest(items[i%set], sellers[i%set])
		if err != nil {
			b.Fatal(err)
		}
		if c.Proven {
			proven++
		}
	}
	b.ReportMetric(100*float64(proven)/float64(b.N), "%proven")
}

func BenchmarkTypical(b *testing.B) { bench(b, typical) }
func BenchmarkFew(b *testing.B) {
	bench(b, func(seed uint64) ([]Item, []Seller) { i, s := typical(seed); return i[:12], s })
}
func BenchmarkHard20x5(b *testing.B) {
	bench(b, func(seed uint64) ([]Item, []Seller) { return hard(seed, 20, 5) })
}
func BenchmarkHard60x8(b *testing.B) {
	bench(b, func(seed uint64) ([]Item, []Seller) { return hard(seed, 60, 8) })
}
