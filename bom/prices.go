package bom

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math/big"
	"slices"
	"strings"
	"unicode/utf8"

	"silowright/bom/money"
)

// PriceList is the offers of a file, in its order. An item may stand in
// several rows; Buy takes what costs least.
type PriceList struct {
	Name     string // of the file, for messages
	Currency money.Currency
	Offers   []Offer
}

// MaxPrices is the most bytes that a price list may have.
const MaxPrices = 4 << 20

// Listing says how a price list is written.
type Listing struct {
	Currency money.Currency // of every price that names none
	Comma    bool           // numbers have a decimal comma
	Exchange []Exchange     // other currencies the list may hold
}

// Exchange is what one unit of a currency costs in the job's own.
type Exchange struct {
	Currency money.Currency
	Rate     *big.Rat
}

// rate finds a currency's rate, nil when none is given.
func (l Listing) rate(c money.Currency) *big.Rat {
	for _, e := range l.Exchange {
		if e.Currency == c {
			return e.Rate
		}
	}
	return nil
}

// point writes a number with a decimal point.
func (l Listing) point(number string) string {
	if !l.Comma {
		return number
	}
	return strings.Replace(number, ",", ".", 1)
}

// wrongPoint names the column of a row whose number has a decimal point in a
// list that has decimal commas.
func (l Listing) wrongPoint(r row) error {
	for _, name := range []string{"pack", "width", "price"} {
		if f := r.field(name); l.Comma && strings.Contains(f, ".") {
			return fmt.Errorf("%s: %.40q has a decimal point in a list with decimal commas; hint: write %.40q, or take decimal out of [prices] in the job file",
				name, f, strings.Replace(f, ".", ",", 1))
		}
	}
	return nil
}

func (l Listing) pointHint() string {
	if l.Comma {
		return "a list with a decimal comma is separated by semicolons"
	}
	return "write a decimal point, not a comma, or say decimal = \"comma\" under [prices] in the job file"
}

// ReadPrices reads a price list from CSV (RFC 4180) in UTF-8: a row of headings
// with item, pack, unit and price, and where given description, width, form,
// from, currency, supplier and quoted, in any order and in either case;
// separated by commas or semicolons; with or without a byte-order mark. pack
// is how many units one pack holds, price what one pack costs. width makes it a
// roll or sheet; form "by length" means that any number of packs comes in one
// piece; from is the number of packs from which the price holds (rows that
// differ in from and price alone are one pack's tiers). A row that begins with
// # is a note, and a row without a price is an item nobody has priced yet.
// Errors name file, line and column.
func ReadPrices(name string, r io.Reader, how Listing) (*PriceList, error) {
	if c := how.Currency; !c.Known() {
		return nil, fmt.Errorf("%s: prices cannot be read in currency %.20q; hint: a code of ISO 4217 in the job file, as in USD, EUR or JPY", name, string(c))
	}
	in, err := openCSV(name, r)
	if err != nil {
		return nil, err
	}
	out := &PriceList{Name: name, Currency: how.Currency, Offers: []Offer{}}
	var at map[string]int
	for {
		rec, err := in.Read()
		if errors.Is(err, io.EOF) && at == nil {
			return nil, fmt.Errorf("%s: has no row of headings; hint: %s", name, strings.Join(columns, ","))
		}
		if errors.Is(err, io.EOF) {
			return out, nil
		}
		if err != nil {
			return nil, csvError(name, err)
		}
		line, _ := in.FieldPos(0)
		if note(rec) {
			continue
		}
		if at == nil {
			if at, err = headings(rec); err != nil {
				return nil, fmt.Errorf("%s:%d: %w", name, line, err)
			}
			continue
		}
		o, ok, err := row{rec, at}.offer(how)
		if err != nil {
			return nil, fmt.Errorf("%s:%d: %w", name, line, err)
		}
		if o.Row = line; ok {
			out.Offers = append(out.Offers, o)
		}
	}
}

// openCSV finds out how the text is written.
func openCSV(name string, r io.Reader) (*csv.Reader, error) {
	data, err := io.ReadAll(io.LimitReader(r, MaxPrices+1))
	switch {
	case err != nil:
		return nil, fmt.Errorf("%s: cannot be read: %w", name, err)
	case len(data) > MaxPrices:
		return nil, fmt.Errorf("%s: is larger than %d MB; hint: is it a price list?", name, MaxPrices>>20)
	case !utf8.Valid(data) || bytes.IndexByte(data, 0) >= 0:
		return nil, fmt.Errorf("%s: is not text in UTF-8; hint: save it as CSV in UTF-8", name)
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	in := csv.NewReader(bytes.NewReader(data))
	in.Comma = separator(data)
	in.Comment = '#'
	in.FieldsPerRecord = -1
	in.TrimLeadingSpace = true
	return in, nil
}

// separator is the semicolon when the headings hold more of them than commas.
func separator(data []byte) rune {
	for line := range bytes.Lines(data) {
		line = bytes.TrimLeft(line, " \t\"")
		if len(bytes.TrimSpace(line)) == 0 || line[0] == '#' {
			continue
		}
		if bytes.Count(line, []byte(";")) > bytes.Count(line, []byte(",")) {
			return ';'
		}
		break
	}
	return ','
}

// note reports whether a row says nothing: a remark, or no field filled in.
func note(rec []string) bool {
	if strings.HasPrefix(strings.TrimSpace(rec[0]), "#") {
		return true
	}
	return !slices.ContainsFunc(rec, func(f string) bool { return strings.TrimSpace(f) != "" })
}

func csvError(name string, err error) error {
	var p *csv.ParseError
	if errors.As(err, &p) {
		return fmt.Errorf("%s:%d: character %d: %w; hint: put quotes round a field that holds a separator or a quote, and double the quote inside", name, p.Line, p.Column, p.Err)
	}
	return fmt.Errorf("%s: cannot be read: %w", name, err)
}

// headings finds each column.
func headings(head []string) (map[string]int, error) {
	at := map[string]int{}
	for i, h := range head {
		h = itemKey(h)
		if !slices.Contains(columns, h) {
			return nil, fmt.Errorf("column %d: %.40q is not known, allowed: %s; hint: the first row names the columns", i+1, h, strings.Join(columns, ", "))
		}
		if _, twice := at[h]; twice {
			return nil, fmt.Errorf("column %d: %q stands twice; hint: leave one out", i+1, h)
		}
		at[h] = i
	}
	for _, c := range needed {
		if _, ok := at[c]; !ok {
			return nil, fmt.Errorf("column %q is missing; hint: the columns are %s", c, strings.Join(columns, ", "))
		}
	}
	return at, nil
}
