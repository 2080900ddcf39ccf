package bom

import (
	"fmt"
	"math/big"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"silowright/bom/money"
	"silowright/geometry/measure"
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

	Width    measure.Length `json:"width_mm,omitempty"`  // of mesh, screen or sheet sold by length
	ByLength bool           `json:"by_length,omitempty"` // any number of packs comes in one piece
	From     int64          `json:"from"`                // the price holds from this many packs on
	Listed   *money.Money   `json:"listed,omitempty"`    // as the list gives it, when that is in another currency

	holds *big.Rat // Holds, exactly
	key   string   // of Item, see itemKey
}

// columns are the headings a price list may have; those of needed it must.
var (
	columns = []string{"item", "description", "pack", "unit", "width", "form", "from", "price", "currency", "supplier", "quoted"}
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
func (r row) offer(how Listing) (o Offer, ok bool, err error) {
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
		return o, false, fmt.Errorf("%s: %d fields under %d headings; hint: %s, and put quotes round a field that holds the separator",
			o.Item, len(r.fields), len(r.at), how.pointHint())
	}
	price := r.field("price")
	if price == "" {
		return o, false, nil
	}
	o.key = itemKey(o.Item)
	if err := how.wrongPoint(r); err != nil {
		return o, false, err
	}
	if err := o.pack(how.point(r.field("pack")), r.field("unit")); err != nil {
		return o, false, err
	}
	if err := o.form(r, how); err != nil {
		return o, false, err
	}
	if err := o.price(how.point(price), r.field("currency"), how); err != nil {
		return o, false, err
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

// form sets the width, whether packs hang together, and from how many packs on
// the price holds.
func (o *Offer) form(r row, how Listing) error {
	if text := how.point(r.field("width")); text != "" {
		l, err := measure.ParseLength(text, measure.UnitMM)
		if other, _ := measure.ParseLength(text, measure.UnitInch); err != nil || other != l {
			return fmt.Errorf("width: %.40q is not a length with its unit; hint: as in 48 in or 1200 mm", text)
		}
		if l < narrowest || l > widest {
			return fmt.Errorf("width: %.40q is out of range, allowed: %g to %g mm; hint: how wide the roll or sheet is", text, narrowest.MM(), widest.MM())
		}
		if o.Kind != Length {
			return fmt.Errorf("width: %s is sold by %q; hint: a roll or sheet with a width has its length under pack, as in 1 yd", o.Item, o.Pack)
		}
		o.Width = l
		o.Pack += " × " + text
	}
	switch form := strings.ToLower(r.field("form")); form {
	case "", "whole":
	case "by length":
		if o.Kind != Length {
			return fmt.Errorf("form: %s is sold by %q; hint: only what is sold by a length can be cut \"by length\"", o.Item, o.Pack)
		}
		o.ByLength = true
	default:
		return fmt.Errorf("form: %.40q is not known, allowed: whole, by length; hint: by length is any number of packs in one piece, cut off the roll", form)
	}
	o.From = 1
	if text := r.field("from"); text != "" {
		n, err := strconv.ParseInt(text, 10, 64)
		if err != nil || n < 1 || n > mostFrom {
			return fmt.Errorf("from: %.40q is not a number of packs, allowed: 1 to %d; hint: from how many packs on this price holds", text, mostFrom)
		}
		o.From = n
	}
	return nil
}

// The bounds of a width and of a tier.
const (
	narrowest measure.Length = 10
	widest    measure.Length = 20000
	mostFrom                 = 1_000_000_000
)

// price sets the price, turned into the list's currency where the row names
// another.
func (o *Offer) price(text, code string, how Listing) error {
	c := how.Currency
	if code != "" {
		var err error
		if c, err = money.ParseCurrency(code); err != nil {
			return fmt.Errorf("currency: %w", err)
		}
	}
	p, err := money.Parse(text, c)
	if err != nil {
		return fmt.Errorf("price: %w", err)
	}
	if o.Price = p; c == how.Currency {
		return nil
	}
	rate := how.rate(c)
	if rate == nil {
		return fmt.Errorf("currency: %s in a list in %s: %w; hint: give a rate in the job file: [exchange] %s = 1.25 is what one %s costs in %s",
			c, how.Currency, money.ErrCurrency, c, c, how.Currency)
	}
	o.Listed = &p
	if o.Price, err = p.In(how.Currency, rate); err != nil {
		return fmt.Errorf("price: %w", err)
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
