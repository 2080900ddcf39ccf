package bom

import (
	"fmt"
	"math/big"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"silowright/bom/money"
)

// Offer is one row of a price list: what a pack holds and what it costs.
type Offer struct {
	Item        string      `json:"item"` // as the list writes it
	Description string      `json:"description"`
	Pack        string      `json:"pack"`  // as the list writes it, "10 ft"
	Holds       float64     `json:"holds"` // one pack, in Kind's own unit
	Kind        Kind        `json:"unit"`
	Price       money.Money `json:"price"` // of one pack
	Supplier    string      `json:"supplier"`
	Quoted      string      `json:"quoted"` // ISO 8601 date, or empty
	Row         int         `json:"row"`    // line in the file, from 1

	holds *big.Rat // Holds, exactly
}

// columns are the headings a price list may have; those of needed it must.
var (
	columns = []string{"item", "description", "pack", "unit", "price", "supplier", "quoted"}
	needed  = []string{"item", "pack", "unit", "price"}
)

// The bounds of what one pack may hold, in its kind's own unit.
const (
	smallestPack = 1e-3
	largestPack  = 1e12
)

// longestText bounds what a field of words holds, in characters.
const longestText = 200

// unprintable tells control characters and such as turn the direction of text;
// blanks have been made plain ones before.
func unprintable(r rune) bool { return !unicode.IsPrint(r) }

// row is a row of the file under its headings.
type row struct {
	fields []string
	at     map[string]int
}

func (r row) field(name string) string {
	if i, ok := r.at[name]; ok && i < len(r.fields) {
		return strings.Join(strings.Fields(r.fields[i]), " ")
	}
	return ""
}

// offer reads r; a row without a price is no offer (ok false).
func (r row) offer(c money.Currency) (o Offer, ok bool, err error) {
	o = Offer{Item: r.field("item"), Description: r.field("description"), Supplier: r.field("supplier"), Quoted: r.field("quoted")}
	if o.Item == "" {
		return o, false, fmt.Errorf("item: is empty; hint: the item's name, as silowright cost lists it")
	}
	for _, f := range []struct{ name, text string }{{"item", o.Item}, {"description", o.Description}, {"supplier", o.Supplier}} {
		if strings.ContainsFunc(f.text, unprintable) {
			return o, false, fmt.Errorf("%s: %.40q holds a character that cannot be printed; hint: type it anew", f.name, f.text)
		}
		if utf8.RuneCountInString(f.text) > longestText {
			return o, false, fmt.Errorf("%s: %.40q is too long, allowed: %d characters; hint: is a quote missing at the end of a field?", f.name, f.text, longestText)
		}
	}
	if len(r.fields) > len(r.at) {
		return o, false, fmt.Errorf("%s: %d fields under %d headings; hint: write a decimal point, not a comma, and put quotes round a field that holds the separator",
			o.Item, len(r.fields), len(r.at))
	}
	price := r.field("price")
	if price == "" {
		return o, false, nil
	}
	if err := o.pack(r.field("pack"), r.field("unit")); err != nil {
		return o, false, err
	}
	if o.Price, err = money.Parse(price, c); err != nil {
		return o, false, fmt.Errorf("price: %w", err)
	}
	if o.Quoted != "" {
		if _, err := time.Parse(time.DateOnly, o.Quoted); err != nil {
			return o, false, fmt.Errorf("quoted: %.40q is not a date; hint: year-month-day, as in 2031-02-28, or leave it empty", o.Quoted)
		}
	}
	return o, true, nil
}

// pack sets what the offer's pack holds.
func (o *Offer) pack(pack, unit string) error {
	u, ok := unitOf(unit)
	if !ok {
		return fmt.Errorf("unit: %.40q is not known, allowed: %s; hint: what the number under pack counts", unit, unitNames(""))
	}
	n, ok := decimal(pack)
	if !ok || n.Sign() <= 0 {
		return fmt.Errorf("pack: %.40q is not a quantity above 0; hint: how many units one pack holds, as in 100 or 10.1", pack)
	}
	o.Kind, o.holds = u.kind, u.holds(n)
	o.Holds, _ = o.holds.Float64()
	if o.Holds < smallestPack || o.Holds > largestPack {
		return fmt.Errorf("pack: %.40q %s is out of range, allowed: %g to %g %s; hint: how many units one pack holds",
			pack, u.name, smallestPack, largestPack, u.kind)
	}
	o.Pack = pack + " " + u.name
	if u.kind == Each && pack == "1" {
		o.Pack = "each"
	}
	return nil
}

// decimal reads digits with at most one point, exactly.
func decimal(s string) (*big.Rat, bool) {
	whole, part, point := strings.Cut(s, ".")
	if len(s) > 20 || !digits(whole) || point && !digits(part) {
		return nil, false
	}
	return new(big.Rat).SetString(s)
}

func digits(s string) bool {
	return s != "" && strings.Trim(s, "0123456789") == ""
}
