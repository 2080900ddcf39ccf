package bom

import (
	"bytes"
	"errors"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"silowright/bom/money"
)

// One list, written in every way that is read.
func TestReadPrices(t *testing.T) {
	want := []Offer{
		{Item: "pipe-sch40-2", Description: `pipe, "schedule 40", 2 in`, Pack: "10 ft", Holds: 3048, Kind: Length, Price: usd(t, "21.45"), Supplier: "Quay", Quoted: "2031-02-03"},
		{Item: "Drum", Pack: "each", Holds: 1, Kind: Each, Price: usd(t, "18")},
		{Item: "sealant", Pack: "10.1 fl oz", Holds: 10.1 * 29.5735295625, Kind: Volume, Price: usd(t, "9.4")},
	}
	for reason, text := range map[string]string{
		"commas": head +
			"pipe-sch40-2,\"pipe, \"\"schedule 40\"\", 2 in\",10,ft,21.45,Quay,2031-02-03\nDrum,,1,each,18,,\nsealant,,10.1,fl oz,9.40,,\n",
		"semicolons": "item;description;pack;unit;price;supplier;quoted\n" +
			"pipe-sch40-2;\"pipe, \"\"schedule 40\"\", 2 in\";10;ft;21.45;Quay;2031-02-03\nDrum;;1;each;18;;\nsealant;;10.1;fl oz;9.40;;\n",
		"a mark before the first byte, lines that end in CR LF, no last one": "\ufeff" + strings.ReplaceAll(head, "\n", "\r\n") +
			"pipe-sch40-2,\"pipe, \"\"schedule 40\"\", 2 in\",10,ft,21.45,Quay,2031-02-03\r\nDrum,,1,each,18,,\r\nsealant,,10.1,fl oz,9.40,,",
		"another order, capitals, quotes, blanks": "\"Price\", UNIT ,Pack,\"Item\",quoted,supplier,Description\n" +
			"21.45,Feet,10,pipe-sch40-2,2031-02-03,Quay,\"pipe, \"\"schedule 40\"\",  2 in\"\n18,EACH,1, Drum,,,\n \"9.40\",Fl Oz,10.1,sealant,,,\n",
		"notes, empty rows, rows without a price": "# our prices; all \"firm\"\n\n" + head + ",,,,,,\n# a note, with commas\n\"# quoted, too\"\n" +
			"pipe-sch40-2,\"pipe, \"\"schedule 40\"\", 2 in\",10,ft,21.45,Quay,2031-02-03\nmarker,,1,each,,,\nscreen,,,,,,\nDrum,,1,each,18,,\n\nsealant,,10.1,fl oz,9.40,,\n",
		"what may be left out is": "item,pack,unit,price,description,supplier,quoted\n" +
			"pipe-sch40-2,10,ft,21.45,\"pipe, \"\"schedule 40\"\", 2 in\",Quay,2031-02-03\nDrum,1,each,18\nsealant,10.1,fl oz,9.40\n",
	} {
		got, err := ReadPrices("p.csv", strings.NewReader(text), Listing{Currency: "USD"})
		if err != nil {
			t.Errorf("%s: %v", reason, err)
			continue
		}
		if diff := cmp.Diff(want, got.Offers, cmpopts.IgnoreUnexported(Offer{}), cmpopts.IgnoreFields(Offer{}, "Row", "From")); diff != "" {
			t.Errorf("%s (-want +got):\n%s", reason, diff)
		}
	}
	rows := list(t, "# a note\ndrum,,1,each,1,,\n\nmarker,,1,each,2,,\n").Offers
	if rows[0].Row != 3 || rows[1].Row != 5 {
		t.Errorf("rows %d and %d of the file, want 3 and 5", rows[0].Row, rows[1].Row)
	}
	if l, err := ReadPrices("p.csv", strings.NewReader("item,pack,unit,price\n"), Listing{Currency: "USD"}); err != nil || len(l.Offers) != 0 {
		t.Errorf("headings alone: %v, %v", l, err)
	}
}

// Each fault is told in one line: file, line, column, value, what is allowed.
func TestReadPricesRefuses(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"", "p.csv: has no row of headings; hint: item,description,pack"},
		{"\n\n# nothing\n", "p.csv: has no row of headings"},
		{"item,pack,unit\n", `p.csv:1: column "price" is missing`},
		{"item,pack,unit,prize\n", `p.csv:1: column 4: "prize" is not known, allowed: item, description, pack, unit, width, form, from, price, currency, supplier, quoted`},
		{"item,pack,unit,price,Item\n", `p.csv:1: column 5: "item" stands twice`},
		{"\n# x\nitem,pack,unit,cost\n", "p.csv:3: column 4"},
		{head + "drum,,1,each,18.005,,\n", `p.csv:2: price: "18.005": not an amount of money: USD has 2 digits`},
		{head + "\n\ndrum,,1,each,-18,,\n", `p.csv:4: price: "-18": not an amount of money; hint: an amount cannot be negative`},
		{head + "drum,,1,each,\"18,50\",,\n", "write a decimal point, not a comma"},
		{head + "drum,,1,each,\"1,234.50\",,\n", "no thousands mark"},
		{head + "drum,,1,each,18,50,,\n", "p.csv:2: drum: 8 fields under 7 headings; hint: write a decimal point, not a comma"},
		{head + "drum,,1,each,free,,\n", `p.csv:2: price: "free"`},
		{head + "drum,,1,each,1e300,,\n", `p.csv:2: price: "1e300"`},
		{head + "drum,,1,each,99999999999999999999,,\n", "amount too large; hint: at most USD 10,000,000,000,000.00"},
		{head + ",,1,each,18,,\n", "p.csv:2: item: is empty"},
		{head + "dr\x1b[31mum,,1,each,18,,\n", `p.csv:2: item: "dr\x1b[31mum" holds a character that cannot be printed; hint: `},
		{head + "drum,,1,each,18,\u202eQuay,\n", "p.csv:2: supplier: "},
		{head + "drum," + strings.Repeat("é", 201) + ",1,each,18,,\n", "is too long, allowed: 200 characters; hint: is a quote missing"},
		{head + "drum,,1,dozen,18,,\n", `p.csv:2: unit: "dozen" is not known, allowed: each, mm, cm, m, in, ft, yd, mm2, cm2, m2, in2, ft2, yd2, mL, L, fl oz, pt, qt, gal`},
		{head + "drum,,,each,18,,\n", `p.csv:2: pack: "" is not a quantity above 0`},
		{head + "drum,,0,each,18,,\n", `p.csv:2: pack: "0" is not`},
		{head + "drum,,-1,each,18,,\n", `p.csv:2: pack: "-1" is not`},
		{head + "drum,,1/2,each,18,,\n", `p.csv:2: pack: "1/2" is not`},
		{head + "drum,,NaN,each,18,,\n", `p.csv:2: pack: "NaN" is not`},
		{head + "drum,,1e3,each,18,,\n", `p.csv:2: pack: "1e3" is not`},
		{head + "drum,,.5,each,18,,\n", `p.csv:2: pack: ".5" is not`},
		{head + "hose,,99999999999999,m,18,,\n", `p.csv:2: pack: "99999999999999" m is out of range, allowed: 0.001 to 1e+12 mm`},
		{head + "hose,,0.0000001,m,18,,\n", `is out of range`},
		{head + "drum,,1,each,18,,3/2/2031\n", `p.csv:2: quoted: "3/2/2031" is not a date; hint: year-month-day`},
		{head + "drum,,1,each,18,,2031-02-30\n", `p.csv:2: quoted: "2031-02-30" is not a date`},
		{head + "drum,\"half a quote,1,each,18,,\n", "p.csv:2: character 32: extraneous or missing"},
		{head + "drum,a \"quoted\" word,1,each,18,,\n", "p.csv:2: character 8: bare"},
		{head + "drum,\xff,1,each,18,,\n", "p.csv: is not text in UTF-8; hint: save it as CSV in UTF-8"},
		{"i\x00t\x00e\x00m\x00", "p.csv: is not text in UTF-8"},
		{strings.Repeat(" ", MaxPrices+1), "p.csv: is larger than 4 MB"},
	} {
		l, err := ReadPrices("p.csv", strings.NewReader(c.text), Listing{Currency: "USD"})
		if err == nil {
			t.Errorf("%.60q is taken", c.text)
			continue
		}
		if l != nil {
			t.Errorf("%.60q: a list beside an error", c.text)
		}
		if !strings.Contains(err.Error(), c.want) || strings.ContainsAny(err.Error(), "\n\r") {
			t.Errorf("%.60q: got %q\nwant it to say %q", c.text, err, c.want)
		}
	}
	if _, err := ReadPrices("p.csv", strings.NewReader(head), Listing{Currency: "XYZ"}); err == nil || !strings.Contains(err.Error(), `currency "XYZ"`) {
		t.Errorf("an unknown currency: %v", err)
	}
	broken := errors.New("the disk is gone")
	if _, err := ReadPrices("p.csv", iotest.ErrReader(broken), Listing{Currency: "USD"}); !errors.Is(err, broken) {
		t.Errorf("a reader that fails: %v", err)
	}
}

// A currency without cents is priced without them.
func TestReadPricesInYen(t *testing.T) {
	l, err := ReadPrices("p.csv", strings.NewReader(head+"drum,,1,each,2500,,\n"), Listing{Currency: "JPY"})
	if err != nil || l.Offers[0].Price != (money.Money{Minor: 2500, Currency: "JPY"}) {
		t.Errorf("%+v, %v", l, err)
	}
	if _, err := ReadPrices("p.csv", strings.NewReader(head+"drum,,1,each,2500.00,,\n"), Listing{Currency: "JPY"}); err == nil {
		t.Error("yen with two digits after the point are taken")
	}
}

// Whatever is read, an offer that comes back can be bought.
func FuzzReadPrices(f *testing.F) {
	for _, s := range []string{"", head + "drum,,1,each,18,,2031-02-03\n", "item;pack;unit;price\ndrum;1;each;18\n", "\ufeffprice,unit,pack,item\n1,m,3,hose\n# x\n\"a\"", head + "\"drum\",\"a\"\"b\",1,ea,0,,\n"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		l, err := ReadPrices("p.csv", strings.NewReader(string(data)), Listing{Currency: "USD"})
		if err != nil {
			if strings.Contains(err.Error(), "%!") && !bytes.Contains(data, []byte("%!")) {
				t.Errorf("message: %v", err)
			}
			if !strings.HasPrefix(err.Error(), "p.csv:") || !strings.Contains(err.Error(), "; hint: ") || strings.ContainsAny(err.Error(), "\n\r\x1b") || len(err.Error()) > 1000 {
				t.Errorf("not one short line that names file and hint: %q", err)
			}
			return
		}
		for _, o := range l.Offers {
			if o.Item == "" || !(o.Holds >= smallestPack && o.Holds <= largestPack) || o.Price.Minor < 0 || o.Price.Currency != "USD" || o.Row < 2 {
				t.Errorf("%+v", o)
			}
			b, err := price([]Need{{Item: o.Item, Kind: o.Kind, Drum: 3.25}}, &PriceList{Name: "p", Currency: "USD", Offers: []Offer{o}}, "USD", 1, 0)
			if err == nil && (len(b.Lines) != 1 || float64(boughtOf(b.Lines[0]))*o.Holds < 3.25*(1-1e-12)) {
				t.Errorf("%d packs of %g hold no 3.25", boughtOf(b.Lines[0]), o.Holds)
			}
			if err != nil && !errors.Is(err, money.ErrTooLarge) {
				t.Errorf("%+v: %v", o, err)
			}
		}
	})
}
