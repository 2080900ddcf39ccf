package bom

import (
	"math"
	"math/big"
	"slices"
	"strings"
	"testing"

	"silowright/bom/money"
	"silowright/geometry/measure"
)

const wide = "item,pack,unit,width,form,from,price,currency,supplier,quoted\n"

func wideList(t testing.TB, rows string, how Listing) *PriceList {
	t.Helper()
	l, err := ReadPrices("p.csv", strings.NewReader(wide+rows), how)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

var dollars = Listing{Currency: "USD"}

func TestRollsTiersAndCurrencies(t *testing.T) {
	euro := Listing{Currency: "USD", Exchange: []Exchange{{"EUR", big.NewRat(27, 25)}, {"JPY", big.NewRat(1, 150)}}}
	l := wideList(t, "mesh,1,yd,48 in,by length,,18,,a,\ncement,1,each,,,12,3.5,EUR,a,\nresin,1,L,,whole,,1500,JPY,,\n", euro)
	mesh, cement, resin := l.Offers[0], l.Offers[1], l.Offers[2]
	if mesh.Width != 48*in || !mesh.ByLength || mesh.Holds != 914.4 || mesh.Pack != "1 yd × 48 in" || mesh.From != 1 {
		t.Errorf("%+v", mesh)
	}
	// 3.50 EUR at 1.08 is 3.78 USD; 1500 JPY at 1/150 is 10 USD.
	if cement.From != 12 || cement.Price != usd(t, "3.78") || *cement.Listed != (money.Money{Minor: 350, Currency: "EUR"}) {
		t.Errorf("%+v", cement)
	}
	if resin.Price != usd(t, "10") || resin.ByLength {
		t.Errorf("%+v", resin)
	}
}

func TestDecimalComma(t *testing.T) {
	l, err := ReadPrices("p.csv", strings.NewReader("item;pack;unit;width;price\nmesh;1,5;m;1,2 m;12,50\nsealant;\"0,3\";L;;9\n"), Listing{Currency: "EUR", Comma: true})
	if err != nil || l.Offers[0].Price.Minor != 1250 || l.Offers[0].Holds != 1500 || l.Offers[0].Width != 1200 || l.Offers[1].Holds != 300 {
		t.Errorf("%+v, %v", l, err)
	}
	_, err = ReadPrices("p.csv", strings.NewReader("item;pack;unit;price\nmesh;1;m;12.50\n"), Listing{Currency: "EUR", Comma: true})
	if err == nil || !strings.Contains(err.Error(), `p.csv:2: price: "12.50" has a decimal point in a list with decimal commas; hint: write "12,50"`) {
		t.Errorf("%v", err)
	}
}

func TestNewColumnsRefuse(t *testing.T) {
	for _, c := range []struct{ row, want string }{
		{"mesh,1,yd,48,,,18,,,", `p.csv:2: width: "48" is not a length with its unit; hint: as in 48 in or 1200 mm`},
		{"mesh,1,yd,wide,,,18,,,", `width: "wide" is not a length`},
		{"mesh,1,yd,1 mm,,,18,,,", `width: "1 mm" is out of range, allowed: 10 to 20000 mm`},
		{"mesh,1,yd,-48 in,,,18,,,", `width: "-48 in"`},
		{"drum,1,each,48 in,,,18,,,", `width: drum is sold by "each"`},
		{"drum,1,each,,by length,,18,,,", `form: drum is sold by "each"`},
		{"mesh,1,yd,,rolled,,18,,,", `form: "rolled" is not known, allowed: whole, by length`},
		{"drum,1,each,,,0,18,,,", `from: "0" is not a number of packs`},
		{"drum,1,each,,,1.5,18,,,", `from: "1.5" is not a number of packs`},
		{"drum,1,each,,,,18,EUR,,", `currency: EUR in a list in USD: different currencies; hint: give a rate in the job file: [exchange] EUR = 1.25`},
		{"drum,1,each,,,,18,euro,,", `currency: "euro": not a currency`},
	} {
		if _, err := ReadPrices("p.csv", strings.NewReader(wide+c.row+"\n"), dollars); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %s", c.row, err, c.want)
		}
	}
}

// A box of 100 screws at 8.00, from 5 boxes on at 6.00: 450 screws are five
// boxes at 30.00; 350 are five too, for four at 8.00 are 32.00. With 120 on the
// rack 350 need three at 8.00.
func TestTiersAndRack(t *testing.T) {
	l := wideList(t, "screw,100,each,,,,8,,,\nscrew,100,each,,,5,6,,,\n", dollars)
	buy := func(screws float64, rack int) Line {
		var held []Held
		if rack > 0 {
			held = []Held{{Item: "Screw", Kind: Each, Amount: 1, Count: rack}}
		}
		b, err := Buy([]Need{{Item: "screw", Category: Fasteners, Kind: Each, Drum: screws}}, l, held, Terms{Currency: "USD"}, 1, 0)
		if err != nil {
			t.Fatal(err)
		}
		return b.Lines[0]
	}
	for _, c := range []struct {
		screws, used, left float64
		rack               int
		packs              int64
		sum                string
	}{
		{450, 0, 50, 0, 5, "30"}, {350, 0, 150, 0, 5, "30"}, {300, 0, 0, 0, 3, "24"},
		{350, 120, 70, 120, 3, "24"}, {120, 120, 0, 500, 0, "0"},
	} {
		x := buy(c.screws, c.rack)
		if boughtOf(x) != c.packs || *x.Amount != usd(t, c.sum) || x.Rack != c.used || x.Left != c.left || !x.Proven {
			t.Errorf("%v screws, %d on the rack: %d packs, %v, %v used, %v left", c.screws, c.rack, boughtOf(x), x.Amount, x.Rack, x.Left)
		}
	}
}

// Twelve nipples of 2 1/2 in with a kerf of 1/16: 48 of them would come off a
// 10 ft stick. Two on the rack of 15 in give five each (5 × 2 9/16 − 1/16 =
// 12 3/4, and a sixth would make 15 5/16), the last two come off a stick bought.
func TestSticksOffTheRack(t *testing.T) {
	need := Need{Item: "pipe", Category: Pipe, Kind: Length, Drum: 12 * 2.5625 * 25.4, Pieces: []Piece{{2.5 * in, in / 16, 12, "nipple"}}}
	l := wideList(t, "pipe,10,ft,,,,21.45,,,\npipe,20,ft,,,,35,,,\n", dollars)
	held := []Held{{Item: "pipe", Kind: Length, Amount: 15 * 25.4, Count: 2}}
	b, err := Buy([]Need{need}, l, held, Terms{Currency: "USD", Saw: Bench{Keep: 12 * in}}, 1, 0)
	if err != nil {
		t.Fatal(err)
	}
	x := b.Lines[0]
	if *x.Amount != usd(t, "21.45") || !x.Proven || x.Cutting.Says() != "proven least" {
		t.Errorf("%v, %+v", x.Amount, x.Cutting)
	}
	cut := 0
	for _, s := range x.Cutting.Sticks {
		for _, p := range s.Pieces {
			cut += p.Count * s.Count
		}
	}
	if cut != 12 {
		t.Errorf("%d pieces are cut of 12", cut)
	}
	// Three on the rack do, and nothing is bought.
	held[0].Count = 3
	b, err = Buy([]Need{need}, l, held, Terms{Currency: "USD"}, 1, 0)
	if err != nil || len(b.Lines[0].Buys) != 0 || b.Total.Minor != 0 || len(b.Orders) != 0 || b.Lines[0].Choice != "on the rack" {
		t.Errorf("%+v, %v", b.Lines[0], err)
	}
}

// Discs of 570 from a roll 1000 wide, cut by the metre: four in zigzag take
// 1692.5 mm, which is 2 m; 2 m × 1 m hold 4 × 570² of which is counted as used.
func TestMeshByTheMetre(t *testing.T) {
	need := Need{Item: "mesh", Category: MeshScreen, Kind: Area, Drum: 4 * 570 * 570, Flats: []Flat{{"mesh disc", Disc, 570, 4}}}
	l := wideList(t, "mesh,1,m,1000 mm,by length,,10,,,\n", dollars)
	b, err := Buy([]Need{need}, l, nil, Terms{Currency: "USD"}, 4, 0)
	if err != nil {
		t.Fatal(err)
	}
	x := b.Lines[0]
	if boughtOf(x) != 2 || math.Abs(float64(x.Lays[0].Parts[0].Length)-1692.5) > 0.05 || !x.Proven {
		t.Errorf("%d m, %+v", boughtOf(x), x.Lays)
	}
	if want := 2000.0*1000 - 4*570*570; math.Abs(x.Left-want) > 0.01 {
		t.Errorf("left %v, want %v", x.Left, want)
	}
	// What is left in one piece: 2000 − 1692.5 = 307.5 mm of 1000, of 20.00.
	if x.Worth.Minor != 308 && x.Worth.Minor != 307 {
		t.Errorf("worth %v", x.Worth)
	}
	// A whole roll of 3 m at 25 costs more than 2 m at 10; at 15 less.
	for price, packs := range map[string]int64{"25": 2, "15": 1} {
		l := wideList(t, "mesh,1,m,1000 mm,by length,,10,,,\nmesh,3,m,1 m,,,"+price+",,,\n", dollars)
		b, err := Buy([]Need{need}, l, nil, Terms{Currency: "USD"}, 4, 0)
		if err != nil || boughtOf(b.Lines[0]) != packs {
			t.Errorf("%s: %d, %v", price, boughtOf(b.Lines[0]), err)
		}
	}
	// A piece on the rack 1200 × 600 mm gives two discs, and the other two take
	// 570·(1 + √(1 − 0.7544²)) = 944.2 mm of the roll: 1 m.
	held := []Held{{Item: "mesh", Kind: Length, Amount: 1200, Width: 600, Count: 1}}
	b, err = Buy([]Need{need}, l, held, Terms{Currency: "USD"}, 4, 0)
	if err != nil || b.Lines[0].Rack != 2*570*570 || boughtOf(b.Lines[0]) != 1 || !b.Lines[0].Lays[0].Rack {
		t.Errorf("%+v, %v", b.Lines[0], err)
	}
	// No roll is wide enough: no price, and it says why.
	b, err = Buy([]Need{need}, wideList(t, "mesh,1,m,500 mm,by length,,10,,,\n", dollars), nil, Terms{Currency: "USD"}, 4, 0)
	if err != nil || b.Complete() || b.Lines[0].Choice != "no roll or sheet is as wide and long as the largest part" {
		t.Errorf("%+v, %v", b.Lines[0], err)
	}
}

// Two sizes of disc off whole rolls: what one size leaves at the end of a roll
// the next size uses, and a thousand rolls take no longer than one.
func TestTwoSizesOnWholeRolls(t *testing.T) {
	need := Need{Item: "mesh", Category: MeshScreen, Kind: Area, Drum: 1,
		Flats: []Flat{{"mesh disc", Disc, 600, 5000}, {"mesh disc", Disc, 300, 1001}}}
	l := wideList(t, "mesh,2,m,600 mm,,,10,,,\n", dollars)
	b, err := Buy([]Need{need}, l, nil, Terms{Currency: "USD"}, 4, 0)
	if err != nil {
		t.Fatal(err)
	}
	// A roll of 2 m gives three of 600, and in the last 200 mm none of 300.
	large, small := 0, 0
	for _, lay := range b.Lines[0].Lays {
		end := measure.Length(0)
		for _, p := range lay.Parts {
			if p.From < end-1e-6 || p.From+p.Length > 2000+1e-6 {
				t.Errorf("a part from %v to %v", p.From, p.From+p.Length)
			}
			if end = p.From + p.Length; p.Across == 600 {
				large += p.Count * lay.Count
			} else {
				small += p.Count * lay.Count
			}
		}
	}
	if large != 5000 || small != 1001 {
		t.Errorf("%d and %d are laid", large, small)
	}
	if n := boughtOf(b.Lines[0]); n < 1667+80 || n > 1667+100 {
		t.Errorf("%d rolls", n)
	}
}

// Plates are nested on sheets: 4 squares of 600 lie on 1220 × 2440, and a
// ninth takes a second sheet.
func TestPlates(t *testing.T) {
	for n, sheets := range map[int]int64{1: 1, 8: 1, 9: 2} {
		need := Need{Item: "plywood", Category: Tools, Kind: Area, Drum: float64(n) * 360000, Flats: []Flat{{"template", Plate, 600, n}}}
		b, err := Buy([]Need{need}, wideList(t, "plywood,2440,mm,1220 mm,,,34,,,\n", dollars), nil, Terms{Currency: "USD"}, 1, 0)
		if err != nil || boughtOf(b.Lines[0]) != sheets {
			t.Errorf("%d squares: %d sheets, %v", n, boughtOf(b.Lines[0]), err)
		}
	}
}

// Shipping decides: b asks 1.00 less for cement but 15.00 to ship. Tax is 10 %
// of goods at a. One is fixed to b by the job, and then everything is cheapest
// there.
func TestOrders(t *testing.T) {
	needs := []Need{{Item: "cement", Category: Fasteners, Kind: Each, Drum: 1}, {Item: "drum", Category: Drums, Kind: Each, Drum: 3, Pipe: 1}}
	l := wideList(t, "cement,1,each,,,,10,,a,2031-01-01\ncement,1,each,,,,9,,b,2031-02-28\ndrum,1,each,,,,20,,a,2031-02-28\ndrum,1,each,,,,21,,b,2031-02-28\n", dollars)
	free := usd(t, "100")
	tax := Share(50000)
	terms := Terms{Currency: "USD", Tax: 100000, QuoteDays: 30, Suppliers: []Supplier{
		{Name: "A", Shipping: usd(t, "8"), FreeFrom: &free}, {Name: "b", Shipping: usd(t, "15"), Tax: &tax}}}
	b, err := Buy(needs, l, nil, terms, 3, 1)
	if err != nil {
		t.Fatal(err)
	}
	// 90 of goods at a, 8 to ship, 9 tax: 107. At b 93 + 15 + 4.65 = 112.65.
	if len(b.Orders) != 1 || b.Orders[0].Supplier != "a" || b.Total != usd(t, "107") || b.Shipping != usd(t, "8") || b.Tax != usd(t, "9") || !b.Proven {
		t.Errorf("%+v", b.Orders)
	}
	if b.Drums.Minor+b.Pipes.Minor != b.Total.Minor {
		t.Errorf("%v + %v", b.Drums, b.Pipes)
	}
	// 70 of goods is the drum silos', 20 the pipe silo's; 17.00 in proportion.
	if b.Drums != usd(t, "83.22") || b.Pipes != usd(t, "23.78") {
		t.Errorf("%v, %v", b.Drums, b.Pipes)
	}
	if len(b.Warnings) != 1 || !strings.Contains(b.Warnings[0], "cement: quoted 2031-01-01, 58 days before 2031-02-28, allowed: 30") {
		t.Errorf("%q", b.Warnings)
	}
	terms.Choose = []Chosen{{"cement", "B"}}
	if b, err = Buy(needs, l, nil, terms, 3, 1); err != nil || len(b.Orders) != 1 || b.Orders[0].Supplier != "b" || b.Total != usd(t, "112.65") {
		t.Errorf("%+v, %v", b.Orders, err)
	}
	terms.Choose = []Chosen{{"cement", "nobody"}}
	if b, err = Buy(needs, l, nil, terms, 3, 1); err != nil || b.Complete() || !strings.Contains(b.Lines[0].Choice, "nobody, has no offer") {
		t.Errorf("%+v, %v", b.Lines[0], err)
	}
}

func TestRackRefuses(t *testing.T) {
	needs := []Need{{Item: "pipe", Kind: Length, Drum: 1, Pieces: []Piece{{1, 0, 1, ""}}}, {Item: "mesh", Kind: Area, Drum: 1, Flats: []Flat{{"d", Disc, 1, 1}}}}
	for _, c := range []struct {
		held Held
		want string
	}{
		{Held{Item: "pipe", Kind: Each, Amount: 1, Count: 3}, `on_hand: pipe: is counted in each, but a build needs it by length`},
		{Held{Item: "mesh", Kind: Length, Amount: 900, Count: 1}, "on_hand: mesh: by area needs a length and a width"},
		{Held{Item: "pipe", Kind: Length, Amount: 900, Width: 20, Count: 1}, "on_hand: pipe"},
	} {
		if _, err := Buy(needs, wideList(t, "", dollars), []Held{c.held}, Terms{Currency: "USD"}, 1, 0); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%+v: %v", c.held, err)
		}
	}
	b, err := Buy(nil, wideList(t, "", dollars), []Held{{Item: "anchor", Kind: Each, Amount: 1, Count: 1}}, Terms{Currency: "USD"}, 0, 0)
	if err != nil || len(b.Warnings) != 1 || !strings.Contains(b.Warnings[0], "on_hand: anchor: this build uses none") {
		t.Errorf("%q, %v", b.Warnings, err)
	}
}

// A supplier or an item whose name is mistyped in the terms would count for
// nothing; the bill says so.
func TestNamesThatNothingUses(t *testing.T) {
	l := wideList(t, "drum,1,each,,,,18,,Salt Lane,\n", dollars)
	terms := Terms{Currency: "USD", Suppliers: []Supplier{{Name: " salt lane", Shipping: usd(t, "5")}, {Name: "Salt Lan", Shipping: usd(t, "65")}},
		Choose: []Chosen{{"drum", "Salt Lane"}, {"drums", "Salt Lane"}}}
	b, err := Buy([]Need{{Item: "drum", Kind: Each, Drum: 1}}, l, nil, terms, 1, 0)
	want := []string{
		"choose: drums: this build uses none; hint: silowright cost lists the items it uses",
		"supplier: Salt Lan: sells nothing in " + l.Name + ", so its shipping, minimum and tax count for nothing; hint: write the name as the list does",
	}
	if err != nil || !slices.Equal(b.Warnings, want) || b.Total != usd(t, "23") { // 18 and 5 of shipping
		t.Errorf("%q, %v, %v", b.Warnings, b.Total, err)
	}
	if b, err = Buy(nil, wideList(t, "", dollars), nil, Terms{Currency: "USD", Suppliers: terms.Suppliers}, 1, 0); err != nil || len(b.Warnings) > 0 {
		t.Errorf("an empty list: %q, %v", b.Warnings, err)
	}
}

func TestShare(t *testing.T) {
	if got, err := Share(82500).Of(usd(t, "99.99")); err != nil || got != usd(t, "8.25") || Share(82500).Percent() != "8.25 %" {
		t.Errorf("%v, %v, %s", got, err, Share(82500).Percent()) // 8.249175
	}
}
