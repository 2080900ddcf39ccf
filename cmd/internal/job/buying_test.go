package job

import (
	"math"
	"math/big"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"silowright/bom"
	"silowright/bom/money"
	"silowright/bom/work"
	"silowright/geometry"
	"silowright/geometry/measure"
)

const bought = `
[buying]
tax = "8.25 %"
tax_shipping = true
contingency = 0.05
quote_days = 60
date = 2031-03-01

[bench]
hold = "5"
keep = 0

[[supplier]]
name = "Quay"
shipping = "12.50"
free_from = 300
minimum = 25
tax = 0

[[supplier]]
name = "Lane"

[choose]
cement = "Quay"

[exchange]
EUR = 1.08
JPY = "0.0067"

[on_hand]
"hose-clamp-1-1/2" = 12
sealant = "150 mL"
"pipe-sch40-2" = ["49 in", "3 ft", {amount = "1 m", count = 4}]
"mesh-1.6-mm" = {amount = "3 ft", width = "48 in", count = 2}

[[pipe_run]]
pipe = 3
length = "6 ft 8 in"
count = 4

[rates]
hose_per_inlet = "5 ft"
cement_joint = 7
blade_life = 0

[work]
wage = 24.5
crew = 2
clamps = 6
learning = 0.85
hours_per_day = 7.5

[prices]
decimal = "comma"
`

func TestBuying(t *testing.T) {
	f, err := Parse("job.toml", []byte(least+bought))
	if err != nil {
		t.Fatal(err)
	}
	usd := func(minor int64) money.Money { return money.Money{Minor: minor, Currency: "USD"} }
	free, none := usd(30000), bom.Share(0)
	const in = measure.Inch
	want := bom.Terms{Currency: "USD", Tax: 82500, TaxShipping: true, Date: "2031-03-01", QuoteDays: 60,
		Suppliers: []bom.Supplier{{Name: "Quay", Shipping: usd(1250), FreeFrom: &free, Minimum: usd(2500), Tax: &none}, {Name: "Lane", Shipping: usd(0), Minimum: usd(0)}},
		Choose:    []bom.Chosen{{Item: "cement", Supplier: "Quay"}}, Saw: bom.Bench{Trim: in / 4, Hold: 5 * in}}
	if d := cmp.Diff(want, f.Terms); d != "" {
		t.Errorf("terms (-want +got):\n%s", d)
	}
	held := []bom.Held{{Item: "hose-clamp-1-1/2", Kind: bom.Each, Amount: 1, Count: 12}, {Item: "sealant", Kind: bom.Volume, Amount: 150, Count: 1},
		{Item: "pipe-sch40-2", Kind: bom.Length, Amount: 49 * 25.4, Count: 1}, {Item: "pipe-sch40-2", Kind: bom.Length, Amount: 914.4, Count: 1},
		{Item: "pipe-sch40-2", Kind: bom.Length, Amount: 1000, Count: 4}, {Item: "mesh-1.6-mm", Kind: bom.Length, Amount: 914.4, Width: 48 * in, Count: 2}}
	if d := cmp.Diff(held, f.Held, cmpopts.EquateApprox(0, 1e-9)); d != "" {
		t.Errorf("on hand (-want +got):\n%s", d)
	}
	runs := []bom.Run{{Name: "manifold", Pipe: geometry.PipeRef{Size: "3", Series: "sch40"}, Length: 6*measure.Foot + 8*in, Count: 4}}
	if d := cmp.Diff(runs, f.Runs, cmpopts.EquateApprox(0, 1e-9)); d != "" {
		t.Errorf("runs (-want +got):\n%s", d)
	}
	if !f.Listing.Comma || len(f.Listing.Exchange) != 2 || f.Listing.Exchange[0].Rate.Cmp(big.NewRat(27, 25)) != 0 || f.Listing.Exchange[1].Rate.Cmp(big.NewRat(67, 10000)) != 0 {
		t.Errorf("%+v", f.Listing)
	}
	if f.Contingency != 50000 || f.Wage != usd(2450) || f.Work.People != 2 || f.Work.Learning != 0.85 || f.Work.Day != work.Minutes(450) {
		t.Errorf("%v, %v, %+v", f.Contingency, f.Wage, f.Work)
	}
	r := bom.DefaultRates()
	r.HosePerInlet, r.CementJoint, r.BladeLife, r.ClampsAtOnce = 5*measure.Foot, 7*measure.Millilitre, 0, 6
	if d := cmp.Diff(r, f.Rates); d != "" {
		t.Errorf("rates (-want +got):\n%s", d)
	}
}

// Litres are taken where millilitres are; a price list has both.
func TestHeldLitres(t *testing.T) {
	f, err := Parse("job.toml", []byte(least+"[on_hand]\nsealant = \"1.5 L\"\nprimer = \"0.2l\"\ncement = \"2 fl oz\"\n"))
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]float64{"sealant": 1500, "primer": 200, "cement": 59.1470591} // a US fluid ounce is 29.5735295625 mL
	for _, h := range f.Held {
		if h.Kind != bom.Volume || math.Abs(h.Amount-want[h.Item]) > 1e-6 {
			t.Errorf("%+v", h)
		}
	}
	if len(f.Held) != 3 {
		t.Errorf("%+v", f.Held)
	}
}

func TestWrongBuying(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"[buying]\ntaxx = 1", `unknown key "buying.taxx"; hint: did you mean "buying.tax"?`},
		{"[buying]\ntax = 8.25", `buying.tax: 8.25 is out of range, allowed: 0 to 1; hint: write a share as a fraction of one: 0.15, or "15 %"`},
		{"[buying]\ntax = -0.1", `buying.tax: -0.1 is out of range`},
		{"[buying]\ntax = nan", `buying.tax: NaN is not a share`},
		{"[buying]\ntax = inf", `buying.tax: +Inf is not a share`},
		{"[buying]\ntax = \"8.25\"", `buying.tax: "8.25" is out of range`},
		{"[buying]\ntax = \"a lot\"", `buying.tax: "a lot" is not a share`},
		{"[buying]\ntax = \"1/3\"", `buying.tax: "1/3" is not a share`},
		{"[buying]\ntax = 0.12345678", `buying.tax: 0.12345678 has too many digits`},
		{"[buying]\ntax_shipping = 1", `buying.tax_shipping: 1 is not yes or no, allowed: true, false`},
		{"[buying]\ndate = \"3/1/31\"", `buying.date: "3/1/31" is not a date; hint: year-month-day`},
		{"[buying]\nquote_days = -1", `buying.quote_days: -1 is out of range`},
		{"[bench]\nhold = -1", `bench.hold: -1 is out of range`},
		{"[bench]\nholds = 1", `did you mean "bench.hold"?`},
		{"[[supplier]]\nshipping = 1", `supplier.name: is missing`},
		{"[[supplier]]\nname = \"a\"\n[[supplier]]\nname = \"A\"", `supplier.name: "A" stands twice`},
		{"[[supplier]]\nname = \"a\"\nshipping = \"1,50\"", `supplier.shipping: "1,50" is not an amount in USD; hint: digits with at most 2 after a point`},
		{"[[supplier]]\nname = \"a\"\nshipping = -1", `supplier.shipping: -1 is not an amount`},
		{"[[supplier]]\nname = \"a\"\nminimum = 1e30", `supplier.minimum: 1e+30 is not an amount`},
		{"[supplier]\nname = \"a\"", `supplier: a section is not a list; hint: write [[supplier]]`},
		{"[choose]\ncement = 5", `choose.cement: 5 is not text`},
		{"[exchange]\nUSD = 1", `exchange.USD: "USD" is not another currency's code`},
		{"[exchange]\neuro = 1", `exchange.euro: "euro" is not another currency's code`},
		{"[exchange]\nEUR = 0", `exchange.EUR: 0 is not a rate, allowed: 0.000001 to 1000000; hint: what one EUR costs in USD`},
		{"[exchange]\nEUR = \"1/3\"", `exchange.EUR: "1/3" is not a rate`},
		{"[on_hand]\nsealant = -1", `on_hand.sealant: -1 is out of range`},
		{"[on_hand]\nsealant = 1.5", `on_hand.sealant: 1.5 is not a whole number`},
		{"[on_hand]\nsealant = true", `on_hand.sealant: true is not an amount; hint: 12, "150 mL"`},
		{"[on_hand]\nsealant = \"much\"", `on_hand.sealant: "much" is not an amount; hint: 12, "150 mL"`},
		{"[on_hand]\nsealant = \"150 g\"", `on_hand.sealant: "150 g" is not an amount; hint: 12, "150 mL"`},
		{"[on_hand]\nsealant = \"1 gal\"", `on_hand.sealant: "1 gal" is not a volume, allowed: 0 to 1000000 mL`},
		{"[on_hand]\nmesh = {width = 48}", `on_hand.mesh.amount: is missing`},
		{"[on_hand]\nmesh = {amount = 3, width = 48}", `on_hand.mesh.amount: 3 has a width, but no unit`},
		{"[on_hand]\nmesh = {amount = \"3 ft\", wide = 48}", `unknown key "on_hand.wide"; hint: did you mean "on_hand.width"?`},
		{"[on_hand]\nmesh = {amount = \"3 ft\", count = 1.5}", `on_hand.mesh.count: 1.5 is not a whole number`},
		{"[[pipe_run]]\nlength = 5", `pipe_run.pipe: is missing`},
		{"[[pipe_run]]\npipe = 3", `pipe_run.length: is missing`},
		{"[[pipe_run]]\npipe = \"17\"\nlength = 5", `pipe_run.pipe: "17" is not a pipe size of the tables`},
		{"[[pipe_run]]\npipe = 3\nseries = \"pn10\"\nlength = 5", `pipe_run.pipe: "3" does not come in the series pn10`},
		{"[[pipe_run]]\npipe = 3\nlength = 0", `pipe_run.length: 0 is out of range`},
		{"[rates]\nblade = 3", `unknown key "rates.blade"`},
		{"[rates]\nhose_clamps = 11", `rates.hose_clamps: 11 is out of range, allowed: 0 to 10`},
		{"[rates]\ncement_joint = \"x\"", `rates.cement_joint: "x" is not a volume`},
		{"[work]\ncrew = 0", `work.crew: 0 is out of range, allowed: 1 to 1000`},
		{"[work]\ncrew = 1.5", `work.crew: 1.5 is not a whole number`},
		{"[work]\nlearning = 0.4", `work.learning: 0.4 is out of range, allowed: 0.5 to 1`},
		{"[work]\nwage = \"lots\"", `work.wage: "lots" is not an amount in USD`},
		{"[work]\nholes = 3", `unknown key "work.holes"; hint: did you mean "work.hole"?`},
		{"[prices]\ndecimal = \";\"", `prices.decimal: ";" is not known here, allowed: point, comma`},
	} {
		_, err := Parse("job.toml", []byte(least+c.text+"\n"))
		if err == nil || !strings.Contains(err.Error(), c.want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%q: %v\nwant %s", c.text, err, c.want)
		}
	}
}
