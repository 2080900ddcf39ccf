package cover

import (
	"math/rand/v2"
	"testing"
)

func bench(b *testing.B, need func(i int) int64, packs func(i int) []Pack) {
	const set = 64
	var n [set]int64
	var p [set][]Pack
	for i := range set {
		n[i], p[i] = need(i), packs(i)
	}
	b.ReportAllocs()
	b.ResetTimer()
	proven := 0
	for i := range b.N {
		c, err := Least(n[i%set], p[i%set])
		if err != nil {
			b.Fatal(err)
		}
		if c.Proven {
			proven++
		}
	}
	b.ReportMetric(100*float64(proven)/float64(b.N), "%proven")
}

var boxes = []Pack{at(25, 349), at(100, 899), {500, []Tier{{1, 3499}, {4, 2999}}}}

func BenchmarkOnePack(b *testing.B) {
	bench(b, func(i int) int64 { return int64(100 + 37*i) }, func(int) []Pack { return boxes[1:2] })
}
func BenchmarkTypical(b *testing.B) {
	bench(b, func(i int) int64 { return int64(100 + 37*i) }, func(int) []Pack { return boxes })
}
func BenchmarkTypicalThousandfold(b *testing.B) {
	bench(b, func(i int) int64 { return 1000 * int64(100+37*i) }, func(int) []Pack { return boxes })
}
func BenchmarkManyTiers(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 1))
	bench(b, func(int) int64 { return 1000 + r.Int64N(100_000) }, func(int) []Pack { return instance(r, 8, 1000, 10_000, 20) })
}

// BenchmarkHard has large sizes without a common factor, all of nearly one
// value.
func BenchmarkHard(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 2))
	bench(b, func(int) int64 { return 1_000_000 + r.Int64N(1_000_000) }, func(int) []Pack {
		p := make([]Pack, 6)
		for i := range p {
			h := 5000 + r.Int64N(5000)
			p[i] = at(h, h+r.Int64N(h/500))
		}
		return p
	})
}
