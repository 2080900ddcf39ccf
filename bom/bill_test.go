package bom

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"silowright/bom/money"
	"silowright/geometry"
	"silowright/geometry/measure"
)

// Several rows of an item: the one that costs least for the quantity, not the
// cheapest pack nor the cheapest unit; of two that cost the same the earlier
// row (12 drums).
func TestCheapestOffer(t *testing.T) {
	prices := list(t, "drum,,1,each,2.00,one,\ndrum,,10,each,12.00,ten,\ndrum,,1,each,2.00,later,\n")
	for drums, want := range map[float64]string{1: "one", 5: "one", 6: "one", 7: "ten", 10: "ten", 11: "one", 12: "one", 13: "ten", 20: "ten"} {
		b, err := price([]Need{{Item: "drum", Category: Drums, Kind: Each, Drum: drums}}, prices, "USD", 1, 0)
		if err != nil {
			t.Fatal(err)
		}
		if l := b.Lines[0]; l.Supplier != want || l.Choice != "least with all orders counted, of 3 offers from 3 suppliers" {
			t.Errorf("%v drums: %s, %q, want %s", drums, l.Supplier, l.Choice, want)
		}
	}
}

// A pack shorter than a piece is no offer for it, and the bill says why.
func TestPackTooShort(t *testing.T) {
	need := Need{Item: "pipe-sdr35-8", Category: Pipe, Kind: Length, Pipe: 2 * 357.1875, Pieces: []Piece{{355.6, 1.5875, 2, ""}}}
	b, err := price([]Need{need}, list(t, "pipe-sdr35-8,,1,ft,2,,\n"), "USD", 0, 2)
	if err != nil || b.Complete() || b.Lines[0].Choice != "no pack is as long as the longest piece" {
		t.Errorf("%+v, %v", b, err)
	}
	if b.Categories[0].InCurrency() != "no price" {
		t.Errorf("%s", b.Categories[0].InCurrency())
	}
	b, err = price([]Need{need}, list(t, "pipe-sdr35-8,,1,ft,2,,\npipe-sdr35-8,,14,in,9,,\n"), "USD", 0, 2)
	if err != nil || boughtOf(b.Lines[0]) != 2 || b.Total != usd(t, "18") || b.Lines[0].Left != 0 {
		t.Errorf("two of 14 in to the hair: %+v, %v", b, err)
	}
	if b.Categories[0].InCurrency() != "USD 18.00" {
		t.Errorf("%s", b.Categories[0].InCurrency())
	}
}

func TestPriceRefuses(t *testing.T) {
	need := Need{Item: "hose-2", Category: Hose, Kind: Length, Drum: 1000}
	huge := need
	huge.Drum = 1e17
	for _, c := range []struct {
		reason string
		need   Need
		rows   string
		want   string
	}{
		{"the wrong kind of unit", need, "hose-2,,5,L,1,,\n", `prices.csv:2: unit: hose-2 is sold by "5 L", but a build needs it by length, allowed: mm, cm, m, in, ft, yd`},
		{"sold by the piece", need, "hose-2,,1,each,1,,\n", `hose-2 is sold by "each"`},
		{"more packs than can be counted", huge, "hose-2,,1,mm,9999999,,\n", "prices.csv:2: pack: hose-2: amount too large"},
		{"no number", Need{Item: "x", Kind: Each, Drum: math.NaN()}, "", "x: the quantity needed is out of range"},
		{"no end", Need{Item: "x", Kind: Each, Drum: math.Inf(1)}, "", "out of range"},
		{"less than nothing", Need{Item: "x", Kind: Each, Drum: -1, Pipe: 2}, "", "out of range"},
	} {
		_, err := price([]Need{c.need}, list(t, c.rows), "USD", 1, 0)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", c.reason, err)
		}
	}
	prices := list(t, "hose-2,,1,m,1,,\n")
	if _, err := price([]Need{need}, prices, "EUR", 1, 0); !errors.Is(err, money.ErrCurrency) {
		t.Errorf("dollars on a bill in euros: %v", err)
	}
	rows := ""
	var needs []Need
	for i := range 3 {
		rows += fmt.Sprintf("i%d,,1,each,6000000000000,,\n", i)
		needs = append(needs, Need{Item: fmt.Sprintf("i%d", i), Category: Tools, Kind: Each, Drum: 1})
	}
	if _, err := price(needs, list(t, rows), "USD", 1, 0); !errors.Is(err, money.ErrTooLarge) {
		t.Errorf("a total past every bound: %v", err)
	}
}

// randomList prices every item of a takeoff at random, some twice, some not.
func randomList(t *testing.T, r *rand.Rand, needs []Need) *PriceList {
	var b strings.Builder
	for _, n := range needs {
		for range r.IntN(3) {
			pack, unit := 1+r.IntN(60), map[Kind]string{Each: "each", Length: "ft", Area: "ft2", Volume: "fl oz"}[n.Kind]
			fmt.Fprintf(&b, "%s,,%d,%s,%d.%02d,,\n", n.Item, pack, unit, r.IntN(90), r.IntN(100))
		}
	}
	return list(t, b.String())
}

// Two kinds of drum, solved: real quantities.
func solved(t testing.TB) []geometry.Silo {
	t.Helper()
	drum := func(label string, n int, around measure.Length) geometry.Spec {
		return geometry.DefaultSpec(geometry.Drum{Label: label, Count: n, Outside: geometry.OutsideFromCircumference(around), Height: 34.5 * in,
			Wall: in * 3 / 16, FootOutside: 21.125 * in, FootHeight: 2.25 * in, HeadRecess: in * 7 / 8,
			Hoops: []geometry.Hoop{{From: 10.5 * in, To: 12 * in, Outside: 23.875 * in}, {From: 22.75 * in, To: 24.25 * in, Outside: 23.875 * in}}}, measure.UnitInch)
	}
	a, b := drum("blue", 13, 72.125*in), drum("white", 8, 71.5*in)
	b.Mesh.Opening, b.Outlet.Pipe.Size, b.Outlet.Saw = 2, "1 1/2", 2.125*in
	silos, err := geometry.Solve(geometry.Job{Kinds: []geometry.Spec{a, b}})
	if err != nil {
		t.Fatal(err)
	}
	return silos
}

// Whatever the prices: lines add up to the total, shares add up to lines and
// totals, every pack is needed, no offer is cheaper, and one more silo of
// either sort never makes a build cheaper.
func TestBillAtRandom(t *testing.T) {
	silos := solved(t)
	r := rand.New(rand.NewPCG(20, 12))
	for range 60 {
		drums, pipes := r.IntN(40), r.IntN(25)
		full := Takeoff(Batches(silos, 60, 60), DefaultRates(), measure.UnitInch)
		prices := randomList(t, r, full)
		price := func(drums, pipes int) Bill {
			b, err := price(Takeoff(Batches(silos, drums, pipes), DefaultRates(), measure.UnitInch), prices, "USD", drums, pipes)
			if err != nil {
				t.Fatal(err)
			}
			return b
		}
		b := price(drums, pipes)
		checkSums(t, b)
		checkChoices(t, b, prices)
		for _, more := range []Bill{price(drums+1, pipes), price(drums, pipes+1)} {
			if more.Total.Minor < b.Total.Minor {
				t.Errorf("%d+%d silos cost %v, %d+%d only %v", drums, pipes, b.Total, more.DrumSilos, more.PipeSilos, more.Total)
			}
		}
	}
}

func checkSums(t *testing.T, b Bill) {
	t.Helper()
	var total, drums, pipes, cats int64
	missing := 0
	for _, l := range b.Lines {
		if l.Amount == nil {
			missing++
			continue
		}
		if l.Drums.Minor+l.Pipes.Minor != l.Amount.Minor || l.Drums.Minor < 0 || l.Pipes.Minor < 0 {
			t.Errorf("%s: %v and %v are not %v", l.Item, l.Drums, l.Pipes, l.Amount)
		}
		paid, holds, largest := int64(0), 0.0, 0.0
		for _, y := range l.Buys {
			if y.Amount.Minor != y.Packs*y.Price.Minor || y.Packs < 1 {
				t.Errorf("%s: %d packs at %v, %v", l.Item, y.Packs, y.Price, y.Amount)
			}
			paid, holds, largest = paid+y.Amount.Minor, holds+float64(y.Packs)*y.Offer.Holds, max(largest, y.Offer.Holds)
		}
		if paid != l.Amount.Minor || l.Left < 0 || l.Pieces == nil && (holds < l.Total()-1e-6 || math.Abs(l.Left-(holds-l.Total())) > 1e-5*holds) {
			t.Errorf("%s: %v for %v, %g of %g, %g left", l.Item, paid, l.Amount, l.Total(), holds, l.Left)
		}
		if l.Worth.Minor < 0 || l.Worth.Minor > l.Amount.Minor {
			t.Errorf("%s: %v left over of %v", l.Item, l.Worth, l.Amount)
		}
		total, drums, pipes = total+l.Amount.Minor, drums+l.Drums.Minor, pipes+l.Pipes.Minor
	}
	items := 0
	for _, c := range b.Categories {
		cats, items = cats+c.Sum.Minor, items+c.Items
	}
	if total != b.Total.Minor || cats != total || drums != b.Drums.Minor || pipes != b.Pipes.Minor || drums+pipes != total || items != len(b.Lines) || missing != len(b.Missing) {
		t.Errorf("lines %d, categories %d, drums %d + pipes %d, total %v; %d missing, %v", total, cats, drums, pipes, b.Total, missing, b.Missing)
	}
	if b.DrumSilos == 0 && (b.Drums.Minor != 0 || b.PerDrum.Minor != 0) || b.PipeSilos == 0 && b.Pipes.Minor != 0 {
		t.Errorf("no silos, yet %v and %v", b.Drums, b.Pipes)
	}
	if n := int64(b.DrumSilos); n > 0 && (2*(b.PerDrum.Minor*n-b.Drums.Minor) > n || 2*(b.Drums.Minor-b.PerDrum.Minor*n) > n) {
		t.Errorf("%v over %d is %v", b.Drums, n, b.PerDrum)
	}
}

// checkChoices looks through every offer for a cheaper one, in plain floating
// point, pieces laid down one by one; and for each item, no mixture of packs can
// cost less than the quantity at the best price a unit.
func checkChoices(t *testing.T, b Bill, list *PriceList) {
	t.Helper()
	for _, l := range b.Lines {
		best, unit := math.Inf(1), math.Inf(1)
		for _, o := range list.Offers {
			if o.Item != l.Item {
				continue
			}
			packs := math.Ceil(l.Total()/o.Holds - 1e-9)
			if len(l.Pieces) > 0 {
				packs = layDown(l.Pieces, o.Holds)
			}
			best = min(best, packs*float64(o.Price.Minor))
			unit = min(unit, float64(o.Price.Minor)/o.Holds)
		}
		if l.Amount == nil && !math.IsInf(best, 1) || l.Amount != nil && (float64(l.Amount.Minor) > best || len(l.Pieces) == 0 && float64(l.Amount.Minor) < l.Total()*unit*(1-1e-9)) {
			t.Errorf("%s: %v, the cheapest is %v", l.Item, l.Amount, best)
		}
	}
}

// layDown saws pieces one by one, longest first, in plain floating point: the
// sticks begun, or +Inf when one is too short. No plan needs more.
func layDown(pieces []Piece, stick float64) float64 {
	n, left := 0.0, -1.0
	kerf := math.Inf(1)
	for _, p := range pieces {
		kerf = min(kerf, float64(p.Kerf))
	}
	for _, p := range pieces {
		for range p.Count {
			takes := float64(p.Length + p.Kerf)
			if left < takes-1e-7 {
				n, left = n+1, stick+kerf
			}
			if left < takes-1e-7 {
				return math.Inf(1)
			}
			left -= takes
		}
	}
	return n
}

// A bill for other programs: minor units and currency, null where there is no
// price.
func TestBillJSON(t *testing.T) {
	needs := []Need{{Item: "drum", Category: Drums, Kind: Each, Drum: 2}, {Item: "marker", Category: Tools, Kind: Each, Drum: 1}}
	b, err := price(needs, list(t, "drum,,1,each,18.50,Quay,2031-02-03\n"), "USD", 2, 0)
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(b)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		`"total":{"minor":3700,"currency":"USD"}`, `"missing_prices":["marker"]`, `"buys":[],"from_the_rack":0,"choice":"","amount":null`,
		`"price":{"minor":1850,"currency":"USD"}`, `"pack":"each","holds":1,"unit":"each"`, `"row":2`,
	} {
		if !strings.Contains(string(text), want) {
			t.Errorf("%s is not in %s", want, text)
		}
	}
	empty, err := price(nil, list(t, ""), "USD", 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	if text, _ := json.Marshal(empty); strings.Contains(string(text), "null") {
		t.Errorf("nothing to buy is written %s", text)
	}
}

// The work grows with the kinds of drum, not with the silos.
func BenchmarkBill(b *testing.B) {
	silos := solved(b)
	prices, err := ReadPrices("p.csv", strings.NewReader(head+"drum,,1,each,18,,\nsealant,,10.1,fl oz,9.4,,\n"), Listing{Currency: "USD"})
	if err != nil {
		b.Fatal(err)
	}
	for _, n := range []int{20, 10000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				if _, err := price(Takeoff(Batches(silos, n, n/2), DefaultRates(), measure.UnitInch), prices, "USD", n, n/2); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
