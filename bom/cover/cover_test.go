package cover

import (
	"errors"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// at is a pack at one price whatever the number.
func at(holds, price int64) Pack { return Pack{holds, []Tier{{1, price}}} }

// Worked by hand; the trade's packs, invented prices in cents.
func TestByHand(t *testing.T) {
	for _, c := range []struct {
		reason string
		need   int64
		packs  []Pack
		counts []int64
		cost   int64
	}{
		{"nothing is needed", 0, []Pack{at(100, 899)}, []int64{0}, 0},
		{"nothing is needed and nothing sold", 0, nil, []int64{}, 0},
		{"one screw takes a box", 1, []Pack{at(100, 899)}, []int64{1}, 899},
		{"a full box is enough", 100, []Pack{at(100, 899)}, []int64{1}, 899},
		{"one more takes another", 101, []Pack{at(100, 899)}, []int64{2}, 1798},
		{"three of 100 cost 2697, one of 500 costs 2499", 240, []Pack{at(100, 899), at(500, 2499)}, []int64{0, 1}, 2499},
		{"two of 100 cost 1798, less than one of 500", 200, []Pack{at(100, 899), at(500, 2499)}, []int64{2, 0}, 1798},
		{"500 + 100 = 3398, two of 500 = 4998, six of 100 = 5394", 600, []Pack{at(100, 899), at(500, 2499)}, []int64{1, 1}, 3398},
		{"9 at 10.00 cost 90.00, 10 at 8.00 cost 80.00", 9, []Pack{{1, []Tier{{1, 1000}, {10, 800}}}}, []int64{10}, 8000},
		{"7 at 10.00 cost 70.00, 10 at 8.00 cost 80.00", 7, []Pack{{1, []Tier{{1, 1000}, {10, 800}}}}, []int64{7}, 7000},
		{"8 at 10.00 cost as much as 10 at 8.00: fewest packs", 8, []Pack{{1, []Tier{{1, 1000}, {10, 800}}}}, []int64{8}, 8000},
		{"sold from 5 packs only", 12, []Pack{{10, []Tier{{5, 300}}}}, []int64{5}, 1500},
		{"5 of the cheap cost 15.00, 2 of the dear 14.00", 12, []Pack{{10, []Tier{{5, 300}}}, at(10, 700)}, []int64{0, 2}, 1400},
		{"a dear single completes ten of the lower tier: 10×8 + 1×9 = 89, 11×8 = 88", 11,
			[]Pack{{1, []Tier{{1, 1000}, {10, 800}}}, at(1, 900)}, []int64{11, 0}, 8800},
		{"two sizes both at their least number: 5×10 and 3×7 hold 71", 71,
			[]Pack{{10, []Tier{{5, 100}}}, {7, []Tier{{3, 70}}}}, []int64{5, 3}, 710},
		{"equal price: the earlier pack", 5, []Pack{at(5, 100), at(5, 100)}, []int64{1, 0}, 100},
		{"equal cost: one large instead of two small", 10, []Pack{at(5, 50), at(10, 100)}, []int64{0, 1}, 100},
		{"equal cost and number: more of the earlier", 3, []Pack{at(1, 10), at(2, 20), at(3, 31)}, []int64{1, 1, 0}, 30},
		{"6, 9 and 20 hold 43 only with waste: 20+9+9+6 = 44", 43, []Pack{at(6, 6), at(9, 9), at(20, 20)}, []int64{1, 2, 1}, 44},
		{"a price that rises is not dodged: 3×10, not 2 and 1 apart", 3, []Pack{{1, []Tier{{1, 10}, {3, 20}}}}, []int64{3}, 60},
		{"a rationed cheap pack and a dear one for the rest", 10, []Pack{{1, []Tier{{1, 10}, {5, 40}}}, at(1, 30)}, []int64{4, 6}, 220},
		{"free packs: three are the fewest, 3+3+4 has more of the earlier than 4+4+4", 10, []Pack{at(3, 0), at(4, 0)}, []int64{2, 1}, 0},
	} {
		got, err := Least(c.need, c.packs)
		want := Choice{Counts: c.counts, Cost: c.cost, Bound: c.cost, Proven: true}
		if d := cmp.Diff(want, got); d != "" || err != nil {
			t.Errorf("%s: %v (−want +got)\n%s", c.reason, err, d)
		}
	}
}

// The need as large as it may be: 1e15 screws in boxes of 100 and 250 at
// 8.99 and 20.00; 250 for 20.00 is the better value, and 1e15/250 is whole.
func TestLargeNeed(t *testing.T) {
	got, err := Least(Limit, []Pack{at(1_000_000, 899), at(2_500_000, 2000)})
	want := Choice{Counts: []int64{0, 400_000_000}, Cost: 800_000_000_000, Bound: 800_000_000_000, Proven: true}
	if d := cmp.Diff(want, got); d != "" || err != nil {
		t.Error(err, d)
	}
	// Sizes that share no factor, all of one value: the waste is 0, as any
	// need from (9973−1)(9967−1) on can be made up of 9973 and 9967 exactly
	// (Sylvester 1884).
	need := int64(999_999_999_999_989)
	got, err = Least(need, []Pack{at(9973, 9973), at(9967, 9967), at(9949, 9949)})
	if err != nil || got.Cost != need || !got.Proven {
		t.Errorf("%v %+v: want cost %d, proven", err, got, need)
	}
}

func TestErrors(t *testing.T) {
	for _, c := range []struct {
		reason string
		need   int64
		packs  []Pack
		is     error
	}{
		{"need below 0", -1, []Pack{at(1, 1)}, ErrInput},
		{"need above the limit", Limit + 1, []Pack{at(1, 1)}, ErrInput},
		{"no pack", 1, nil, ErrInput},
		{"an empty pack", 1, []Pack{at(0, 1)}, ErrInput},
		{"no price", 1, []Pack{{1, nil}}, ErrInput},
		{"price below 0", 1, []Pack{at(1, -1)}, ErrInput},
		{"tier from 0", 1, []Pack{{1, []Tier{{0, 1}}}}, ErrInput},
		{"tiers that fall", 1, []Pack{{1, []Tier{{5, 1}, {5, 2}}}}, ErrInput},
		{"cost past the limit", Limit, []Pack{at(1, 2)}, ErrTooLarge},
		{"cost past 64 bits", Limit, []Pack{at(1, Limit), at(3, Limit)}, ErrTooLarge},
		{"least number past 64 bits", 5, []Pack{{Limit, []Tier{{Limit, Limit}}}}, ErrTooLarge},
	} {
		if got, err := Least(c.need, c.packs); !errors.Is(err, c.is) {
			t.Errorf("%s: %v, %+v; want %v", c.reason, err, got, c.is)
		}
	}
}

// cost is what n packs cost, and whether so many are sold.
func cost(p Pack, n int64) (int64, bool) {
	price := int64(-1)
	for _, t := range p.Tiers {
		if n >= t.From {
			price = t.Price
		}
	}
	return n * price, n == 0 || price >= 0
}

// exhaustive tries all counts up to what need and the tiers can make useful.
func exhaustive(need int64, packs []Pack) Choice {
	var best Choice
	var packsOf int64
	n := make([]int64, len(packs))
	var try func(i int, rest, paid, count int64)
	try = func(i int, rest, paid, count int64) {
		if i == len(packs) {
			better := best.Counts == nil || paid < best.Cost || paid == best.Cost &&
				(count < packsOf || count == packsOf && slices.Compare(n, best.Counts) > 0)
			if rest <= 0 && better {
				best, packsOf = Choice{slices.Clone(n), paid, paid, true}, count
			}
			return
		}
		most := max((max(rest, 0)+packs[i].Holds-1)/packs[i].Holds, packs[i].Tiers[len(packs[i].Tiers)-1].From)
		for n[i] = 0; n[i] <= most; n[i]++ {
			if c, sold := cost(packs[i], n[i]); sold {
				try(i+1, rest-n[i]*packs[i].Holds, paid+c, count+n[i])
			}
		}
		n[i] = 0
	}
	try(0, need, 0, 0)
	return best
}

// instance draws packs with up to three tiers, most of them falling.
func instance(r *rand.Rand, kinds int, holds, price, from int64) []Pack {
	packs := make([]Pack, kinds)
	for i := range packs {
		p := Pack{Holds: 1 + r.Int64N(holds)}
		f, v := int64(1), 1+r.Int64N(price)
		if r.IntN(4) == 0 {
			f += r.Int64N(from)
		}
		for range 1 + r.IntN(3) {
			p.Tiers = append(p.Tiers, Tier{f, v})
			f += 1 + r.Int64N(from)
			if v = v * (50 + r.Int64N(50)) / 100; r.IntN(8) == 0 {
				v = r.Int64N(price + 1)
			}
		}
		packs[i] = p
	}
	return packs
}

// Exhaustive enumeration gives the same counts, not only the same cost.
func TestAgainstEnumeration(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	for i := range 6000 {
		price := int64(30)
		if i%3 == 0 {
			price = 3 // many ties
		}
		packs := instance(r, 1+r.IntN(4), 12, price, 4)
		need := 1 + r.Int64N(40)
		got, err := Least(need, packs)
		if d := cmp.Diff(exhaustive(need, packs), got); d != "" || err != nil {
			t.Fatalf("need %d, packs %v: %v (−want +got)\n%s", need, packs, err, d)
		}
	}
}
