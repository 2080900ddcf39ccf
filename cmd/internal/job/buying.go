package job

import (
	"fmt"
	"math/big"
	"strings"
	"time"

	"silowright/bom"
	"silowright/bom/money"
	"silowright/geometry/measure"
)

// buying reads how the build is bought: [buying], [bench], [[supplier]],
// [choose] and [exchange].
func (r *reader) buying(top table, f *File) {
	f.Terms = bom.Terms{Currency: money.Currency(f.Currency), Saw: defaultBench(r.units)}
	f.Contingency = 0
	if t, ok := r.table(top, "buying"); ok {
		r.unknown(t, []string{"tax", "tax_shipping", "contingency", "quote_days", "date"}, "buying")
		r.share(t, "tax", &f.Terms.Tax)
		r.share(t, "contingency", &f.Contingency)
		if v, ok := t.items["tax_shipping"]; ok {
			f.Terms.TaxShipping = r.yes(t.at("tax_shipping"), v)
		}
		if v, ok := t.items["quote_days"]; ok {
			f.Terms.QuoteDays, _ = r.count(t.at("quote_days"), v, 0, 36500)
		}
		if v, ok := t.items["date"]; ok {
			f.Terms.Date = r.date(t.at("date"), v)
		}
	}
	if t, ok := r.table(top, "bench"); ok {
		keys := benchKeys(&f.Terms.Saw)
		var known []string
		for _, k := range keys {
			known = append(known, k.name)
			if v, ok := t.items[k.name]; ok {
				*k.to, _ = r.length(t.at(k.name), v, 0, k.high)
			}
		}
		r.unknown(t, known, "bench")
	}
	for _, t := range r.tables(top, "supplier", "[[supplier]] with name below it") {
		f.Terms.Suppliers = append(f.Terms.Suppliers, r.supplier(t, f))
	}
	if t, ok := r.table(top, "choose"); ok {
		for _, item := range t.keys() {
			name, ok := r.title(t.at(item), t.items[item], 200)
			if ok {
				f.Terms.Choose = append(f.Terms.Choose, bom.Chosen{Item: item, Supplier: name})
			}
		}
	}
	r.exchange(top, f)
}

// benchKey is one key of [bench].
type benchKey struct {
	name, means string
	high        measure.Length
	to          *measure.Length
}

func benchKeys(b *bom.Bench) []benchKey {
	return []benchKey{
		{"trim", "sawn off one end of every stick first", 500 * mm, &b.Trim},
		{"hold", "the shortest piece the saw's clamp can hold", 2000 * mm, &b.Hold},
		{"keep", "offcuts at least this long go back on the rack; 0 keeps none", 20000 * mm, &b.Keep},
	}
}

// defaultBench is common practice, no source.
func defaultBench(u measure.Unit) bom.Bench {
	if u == measure.UnitMM {
		return bom.Bench{Trim: 5 * mm, Hold: 100 * mm, Keep: 300 * mm}
	}
	return bom.Bench{Trim: measure.Inch / 4, Hold: 4 * measure.Inch, Keep: measure.Foot}
}

func (r *reader) supplier(t table, f *File) bom.Supplier {
	var s bom.Supplier
	r.unknown(t, []string{"name", "shipping", "free_from", "minimum", "tax"}, "supplier")
	if v, ok := t.items["name"]; ok {
		s.Name, _ = r.title(t.at("name"), v, 200)
	} else {
		r.fail(t.at("name"), "", missing, "", "write the supplier's name as the price list does")
	}
	for _, other := range f.Terms.Suppliers {
		if strings.EqualFold(other.Name, s.Name) {
			r.fail(t.at("name"), show(s.Name), "stands twice", "", "keep one [[supplier]] a name")
		}
	}
	s.Shipping, s.Minimum = money.Money{Currency: f.Terms.Currency}, money.Money{Currency: f.Terms.Currency}
	r.money(t, "shipping", &s.Shipping)
	r.money(t, "minimum", &s.Minimum)
	if _, ok := t.items["free_from"]; ok {
		free := money.Money{Currency: f.Terms.Currency}
		r.money(t, "free_from", &free)
		s.FreeFrom = &free
	}
	if _, ok := t.items["tax"]; ok {
		var tax bom.Share
		r.share(t, "tax", &tax)
		s.Tax = &tax
	}
	return s
}

// exchange reads [exchange]: what one unit of another currency costs.
func (r *reader) exchange(top table, f *File) {
	t, ok := r.table(top, "exchange")
	if !ok {
		return
	}
	for _, code := range t.keys() {
		path, v := t.at(code), t.items[code]
		c, err := money.ParseCurrency(code)
		if err != nil || string(c) == f.Currency {
			r.fail(path, show(code), "is not another currency's code", "three capital letters (ISO 4217), not "+f.Currency, "as in EUR = 1.08")
			continue
		}
		text, ok := v.(string)
		if n, bare := number(v); bare {
			text, ok = plain(n), true
		}
		rate, fine := new(big.Rat).SetString(strings.TrimSpace(text))
		if !ok || !fine || len(text) > 24 || strings.ContainsAny(text, "eE/xX_") || rate.Cmp(leastRate) < 0 || rate.Cmp(mostRate) > 0 {
			r.fail(path, show(v), "is not a rate", "0.000001 to 1000000", fmt.Sprintf("what one %s costs in %s, as in %s = 1.08", code, f.Currency, code))
			continue
		}
		f.Listing.Exchange = append(f.Listing.Exchange, bom.Exchange{Currency: c, Rate: rate})
	}
}

var leastRate, mostRate = big.NewRat(1, 1_000_000), big.NewRat(1_000_000, 1)

// share reads a part of one: a fraction such as 0.0825, or "8.25 %".
func (r *reader) share(t table, key string, to *bom.Share) {
	v, ok := t.items[key]
	if !ok {
		return
	}
	text, isText := v.(string)
	text = strings.TrimSpace(text)
	scale := big.NewRat(int64(bom.Whole), 1)
	if rest, percent := strings.CutSuffix(text, "%"); isText && percent {
		text, scale = strings.TrimSpace(rest), big.NewRat(int64(bom.Whole), 100)
	}
	if n, bare := number(v); bare {
		text, isText = plain(n), true
	}
	q, fine := new(big.Rat).SetString(text)
	if !isText || !fine || len(text) > 24 || strings.ContainsAny(text, "eE/xX_") {
		r.fail(t.at(key), show(v), "is not a share", "0 to 1", `a fraction of one as in 0.0825, or text such as "8.25 %"`)
		return
	}
	q.Mul(q, scale)
	if q.Sign() < 0 || q.Cmp(big.NewRat(int64(bom.Whole), 1)) > 0 {
		r.fail(t.at(key), show(v), "is out of range", "0 to 1", `write a share as a fraction of one: 0.15, or "15 %"`)
		return
	}
	if !q.IsInt() {
		r.fail(t.at(key), show(v), "has too many digits", "four after the point of a percentage", "round it")
		return
	}
	*to = bom.Share(q.Num().Int64())
}

// money reads an amount in the job's currency: text such as "45.00", or a bare
// number.
func (r *reader) money(t table, key string, to *money.Money) {
	v, ok := t.items[key]
	if !ok {
		return
	}
	text, isText := v.(string)
	if n, bare := number(v); bare {
		text, isText = plain(n), true
	}
	m, err := money.Parse(text, to.Currency)
	if !isText || err != nil {
		r.fail(t.at(key), show(v), "is not an amount in "+string(to.Currency), "", fmt.Sprintf("digits with at most %d after a point, as in \"45\"; no sign, symbol or thousands mark", to.Currency.Digits()))
		return
	}
	*to = m
}

// yes reads true or false.
func (r *reader) yes(path string, v any) bool {
	b, ok := v.(bool)
	if !ok {
		r.fail(path, show(v), "is not yes or no", "true, false", "write it without quotes")
	}
	return b
}

// date reads a day: text, or TOML's own date.
func (r *reader) date(path string, v any) string {
	s := strings.TrimSpace(fmt.Sprint(v))
	if _, err := time.Parse(time.DateOnly, s); err != nil {
		r.fail(path, show(v), "is not a date", "", "year-month-day, as in 2031-02-28")
		return ""
	}
	return s
}
