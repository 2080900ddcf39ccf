package build_test

import (
	"math"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"silowright/bom"
	"silowright/bom/build"
	"silowright/bom/money"
	"silowright/bom/work"
	"silowright/geometry"
	"silowright/geometry/measure"
)

const in = measure.Inch

// site is an invented drum with invented prices.
func site(t testing.TB, rows string) build.Site {
	t.Helper()
	spec := geometry.DefaultSpec(geometry.Drum{Label: "A", Count: 20, Outside: geometry.OutsideFromCircumference(72.125 * in), Height: 34.5 * in,
		Wall: in * 3 / 16, FootOutside: 21.125 * in, FootHeight: 2.25 * in, HeadRecess: in * 7 / 8,
		Hoops: []geometry.Hoop{{From: 10.5 * in, To: 12 * in, Outside: 23.875 * in}, {From: 22.75 * in, To: 24.25 * in, Outside: 23.875 * in}}}, measure.UnitInch)
	silos, err := geometry.Solve(geometry.Job{Kinds: []geometry.Spec{spec}, DrumSilos: 20})
	if err != nil {
		t.Fatal(err)
	}
	list, err := bom.ReadPrices("p.csv", strings.NewReader("item,pack,unit,price,supplier\n"+rows), bom.Listing{Currency: "USD"})
	if err != nil {
		t.Fatal(err)
	}
	w := work.DefaultRates()
	w.Learning = 1
	return build.Site{Silos: silos, Prices: list, Terms: bom.Terms{Currency: "USD"}, Rates: bom.DefaultRates(), Work: w}
}

func usd(minor int64) money.Money { return money.Money{Minor: minor, Currency: "USD"} }

// Drums at 18.00 and nothing else priced; work at 24.00 an hour without
// learning costs hours × 24, and the contingency is 5 % of both.
func TestCost(t *testing.T) {
	s := site(t, "drum,1,each,18,a\n")
	s.Wage, s.Contingency = usd(2400), 50000
	c, err := s.Cost(10, 0)
	if err != nil {
		t.Fatal(err)
	}
	if c.Bill.Total != usd(18000) {
		t.Errorf("goods %v", c.Bill.Total)
	}
	labour := float64(c.Hours.Total) / 60 * 2400
	if d := float64(c.Labour.Minor) - labour; d > 0.51 || d < -0.51 {
		t.Errorf("labour %v, want %.2f", c.Labour, labour/100)
	}
	both := c.Bill.Total.Minor + c.Labour.Minor
	if d := float64(c.Contingency.Minor) - 0.05*float64(both); d > 0.51 || d < -0.51 {
		t.Errorf("contingency %v of %d", c.Contingency, both)
	}
	if c.Total.Minor != both+c.Contingency.Minor || c.Drums != c.Total || c.Pipes.Minor != 0 || c.PerDrum != c.Total.Over(10) {
		t.Errorf("%v, %v, %v, %v", c.Total, c.Drums, c.Pipes, c.PerDrum)
	}
	sum := int64(0)
	share := 0.0
	for _, p := range c.Parts {
		sum, share = sum+p.Sum.Minor, share+p.Share
	}
	if sum != c.Total.Minor || share < 1-1e-9 || share > 1+1e-9 {
		t.Errorf("parts come to %d and %v", sum, share)
	}
}

// A drum more costs 18.00 until a pack is full: drums in packs of ten at 150.00
// make a step of 150.00 at the eleventh, and nothing at the twelfth.
func TestMarginal(t *testing.T) {
	s := site(t, "drum,10,each,150,a\n")
	for n, want := range map[int]int64{9: 0, 10: 15000, 11: 0, 19: 0, 20: 15000} {
		pts, err := s.Points(n, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range pts {
			if p.Own && p.NextDrum != usd(want) {
				t.Errorf("the one after %d costs %v, want %v", n, p.NextDrum, usd(want))
			}
		}
	}
}

// The named sizes and the build's own, ascending, pipe silos in proportion.
func TestPointsAndCurve(t *testing.T) {
	s := site(t, "drum,1,each,18,a\n")
	pts, err := s.Points(20, 12)
	if err != nil {
		t.Fatal(err)
	}
	want := [][2]int{{5, 3}, {10, 6}, {20, 12}, {50, 30}}
	for i, p := range pts {
		if i >= len(want) || p.Drums != want[i][0] || p.Pipes != want[i][1] || p.Own != (p.Drums == 20) {
			t.Errorf("%+v", p)
		}
	}
	if pts, err = s.Points(0, 7); err != nil || len(pts) != 5 || pts[1].Pipes != 7 || !pts[1].Own || pts[1].Drums != 0 {
		t.Errorf("%+v, %v", pts, err)
	}
	for _, n := range []int{0, 1, 7, 20, 49, 50, 51, 500, 100000} {
		c, err := s.Curve(n, n/2)
		if err != nil {
			t.Fatal(err)
		}
		own, last := n == 0, 0
		for _, p := range c {
			if p.Drums+p.Pipes <= last && n > 0 {
				t.Errorf("%d: %d after %d", n, p.Drums, last)
			}
			last, own = p.Drums+p.Pipes, own || p.Own
		}
		if !own || len(c) > 40 || c[0].Drums != boolInt(n > 0) {
			t.Errorf("%d: %d places, from %d to %d, own %v", n, len(c), c[0].Drums, c[len(c)-1].Drums, own)
		}
	}
}

func boolInt(b bool) int {
	if b {
		return 1
	}
	return 0
}

// At random: shares add up to the total, a larger build never costs less, and a
// supplier's shipping is in the total once.
func TestCostAtRandom(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 50))
	for range 40 {
		s := site(t, "drum,1,each,18,a\ndrum,7,each,110,b\nscrew-6-3/4-in,100,each,8,b\nsealant,300,mL,9,a\ncoupling-2,5,each,9,b\n")
		s.Wage, s.Contingency = usd(r.Int64N(5000)), bom.Share(r.Int64N(200000))
		s.Work.Learning = 0.8 + 0.2*r.Float64()
		s.Terms.Tax = bom.Share(r.Int64N(250000))
		free := usd(20000 + r.Int64N(50000))
		s.Terms.Suppliers = []bom.Supplier{{Name: "a", Shipping: usd(r.Int64N(8000)), FreeFrom: &free}, {Name: "b", Minimum: usd(r.Int64N(20000))}}
		last := int64(0)
		for _, n := range []int{1, 2, 5, 13, 20, 200} {
			c, err := s.Cost(n, n/3)
			if err != nil {
				t.Fatal(err)
			}
			b := c.Bill
			if c.Drums.Minor+c.Pipes.Minor != c.Total.Minor || c.Total.Minor != b.Total.Minor+c.Labour.Minor+c.Contingency.Minor {
				t.Errorf("%d: %v + %v of %v", n, c.Drums, c.Pipes, c.Total)
			}
			if b.Total.Minor != b.Goods.Minor+b.TopUp.Minor+b.Shipping.Minor+b.Tax.Minor || b.Drums.Minor+b.Pipes.Minor != b.Total.Minor {
				t.Errorf("%d: %+v", n, b.Orders)
			}
			if c.Total.Minor < last {
				t.Errorf("%d silos cost %v, fewer %d", n, c.Total, last)
			}
			last = c.Total.Minor
		}
	}
}

// 19,474 kWh at 0.185 is 3602.69; yen have no digits after the point.
func TestEnergy(t *testing.T) {
	if m, err := build.Energy(19474, big.NewRat(37, 200), "USD"); err != nil || m != usd(360269) {
		t.Errorf("%v, %v", m, err)
	}
	if m, err := build.Energy(10, big.NewRat(255, 10), "JPY"); err != nil || m != (money.Money{Minor: 255, Currency: "JPY"}) {
		t.Errorf("%v, %v", m, err)
	}
	for _, bad := range []float64{math.NaN(), math.Inf(1), -1} {
		if _, err := build.Energy(bad, big.NewRat(1, 5), "USD"); err == nil {
			t.Errorf("%v kWh are priced", bad)
		}
	}
}
