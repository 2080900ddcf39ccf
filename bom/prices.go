package bom

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math/big"
	"strings"
	"time"

	"silowright/bom/money"
)

// Offer is one row of a price list: what a pack holds and what it costs.
type Offer struct {
	Item        string      `json:"item"`
	Description string      `json:"description"`
	Pack        string      `json:"pack"` // as the list writes it, "10 ft"
	Price       money.Money `json:"price"`
	Supplier    string      `json:"supplier"`
	Quoted      string      `json:"quoted"` // ISO 8601 date, or empty
	Row         int         `json:"row"`    // in the file, from 1

	kind  Kind
	holds float64 // in kind's own unit
}

// PriceList is the offers of a file, in its order.
type PriceList struct {
	Name   string
	Offers []Offer
}

// columns are the headings a price list must have; supplier and quoted may be
// left out.
var columns = []string{"item", "description", "pack", "unit", "price", "supplier", "quoted"}

// maxPrices bounds a price list's size.
const maxPrices = 4 << 20

// ReadPrices reads a price list from CSV: a heading row with the columns item,
// pack, unit, price, and where given description, supplier, quoted, in any
// order; separated by commas or semicolons; with or without a byte-order mark.
// Errors name the file, the row and the column.
func ReadPrices(name string, r io.Reader, c money.Currency) (*PriceList, error) {
	data, err := io.ReadAll(io.LimitReader(r, maxPrices+1))
	if err != nil {
		return nil, fmt.Errorf("%s: cannot be read: %w", name, err)
	}
	if len(data) > maxPrices {
		return nil, fmt.Errorf("%s: is larger than %d MB; hint: is it a price list?", name, maxPrices>>20)
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	in := csv.NewReader(bytes.NewReader(data))
	first, _, _ := bytes.Cut(data, []byte("\n"))
	if bytes.Count(first, []byte(";")) > bytes.Count(first, []byte(",")) {
		in.Comma = ';'
	}
	in.FieldsPerRecord = -1
	in.TrimLeadingSpace = true
	head, err := in.Read()
	if err != nil {
		return nil, fmt.Errorf("%s: has no heading row; hint: %s", name, strings.Join(columns, ", "))
	}
	at, err := headings(name, head)
	if err != nil {
		return nil, err
	}
	out := &PriceList{Name: name}
	for {
		rec, err := in.Read()
		if errors.Is(err, io.EOF) {
			return out, nil
		}
		if err != nil {
			var p *csv.ParseError
			if errors.As(err, &p) {
				return nil, fmt.Errorf("%s:%d: column %d: %w; hint: put quotes round a field that holds a comma, and double a quote inside", name, p.Line, p.Column, p.Err)
			}
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		line, _ := in.FieldPos(0)
		if len(rec) == 1 && strings.TrimSpace(rec[0]) == "" || strings.HasPrefix(strings.TrimSpace(rec[0]), "#") {
			continue
		}
		o, err := readOffer(rec, at, c)
		if err != nil {
			return nil, fmt.Errorf("%s:%d: %w", name, line, err)
		}
		o.Row = line
		out.Offers = append(out.Offers, o)
	}
}

func headings(name string, head []string) (map[string]int, error) {
	at := map[string]int{}
	for i, h := range head {
		h = strings.ToLower(strings.TrimSpace(h))
		known := false
		for _, c := range columns {
			known = known || c == h
		}
		if !known {
			return nil, fmt.Errorf("%s:1: unknown column %q; hint: the columns are %s", name, h, strings.Join(columns, ", "))
		}
		if _, twice := at[h]; twice {
			return nil, fmt.Errorf("%s:1: column %q stands twice", name, h)
		}
		at[h] = i
	}
	for _, c := range []string{"item", "pack", "unit", "price"} {
		if _, ok := at[c]; !ok {
			return nil, fmt.Errorf("%s:1: column %q is missing; hint: the columns are %s", name, c, strings.Join(columns, ", "))
		}
	}
	return at, nil
}

// largestPack bounds what one pack may hold, in its kind's own unit.
const largestPack = 1e12

func readOffer(rec []string, at map[string]int, c money.Currency) (Offer, error) {
	field := func(name string) string {
		if i, ok := at[name]; ok && i < len(rec) {
			return strings.TrimSpace(rec[i])
		}
		return ""
	}
	o := Offer{Item: strings.ToLower(field("item")), Description: field("description"), Supplier: field("supplier"), Quoted: field("quoted")}
	if o.Item == "" {
		return o, fmt.Errorf("item: is empty; hint: the item's name, as the bill lists it")
	}
	u, ok := unitOf(field("unit"))
	if !ok {
		return o, fmt.Errorf("unit: %q is not known; hint: one of %s", field("unit"), unitNames)
	}
	pack := field("pack")
	n, ok := decimal(pack)
	if !ok || n.Sign() <= 0 {
		return o, fmt.Errorf("pack: %q is not a quantity above 0; hint: how many units one pack holds, as in 100 or 10.1", pack)
	}
	o.kind = u.kind
	o.holds, _ = new(big.Rat).Mul(n, u.per).Float64()
	if !(o.holds > 0 && o.holds < largestPack) {
		return o, fmt.Errorf("pack: %q is out of range; hint: how many units one pack holds", pack)
	}
	o.Pack = pack + " " + field("unit")
	if u.kind == Each && pack == "1" {
		o.Pack = "each"
	}
	var err error
	if o.Price, err = money.Parse(field("price"), c); err != nil {
		return o, fmt.Errorf("price: %w", err)
	}
	if o.Quoted != "" {
		if _, err := time.Parse("2006-01-02", o.Quoted); err != nil {
			return o, fmt.Errorf("quoted: %q is not a date; hint: year-month-day, as in 2026-03-14", o.Quoted)
		}
	}
	return o, nil
}

// decimal reads digits with at most one point, exactly.
func decimal(s string) (*big.Rat, bool) {
	if s == "" || len(s) > 15 {
		return nil, false
	}
	for i, r := range s {
		if (r < '0' || r > '9') && (r != '.' || strings.IndexByte(s, '.') != i || i == 0 || i == len(s)-1) {
			return nil, false
		}
	}
	return new(big.Rat).SetString(s)
}
