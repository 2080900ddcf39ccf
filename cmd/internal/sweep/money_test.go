package sweep

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"silowright/bom"
)

// terms are the conditions of buying as the job file states them, kept here so
// that the bill can be added up anew without the reader.
type terms struct {
	currency    string
	tax         int64 // parts per million
	taxShipping bool
	contingency int64
	suppliers   []seller
	rates       map[string]string // what one unit of another currency costs
	comma       bool
}

// seller is one [[supplier]].
type seller struct {
	name              string
	shipping, minimum int64 // minor units
	free              int64 // below 0 never
	tax               int64 // below 0 takes the terms' own
}

func (t terms) of(name string) seller {
	for _, s := range t.suppliers {
		if strings.EqualFold(s.name, name) {
			return s
		}
	}
	return seller{name: name, free: -1, tax: -1}
}

// digits of a currency after its point (ISO 4217).
func digits(currency string) int {
	switch currency {
	case "JPY":
		return 0
	case "KWD":
		return 3
	}
	return 2
}

// amount writes minor units as a price list does.
func amount(minor int64, currency string) string {
	d := digits(currency)
	s := fmt.Sprintf("%0*d", d+1, minor)
	if d == 0 {
		return s
	}
	return s[:len(s)-d] + "." + s[len(s)-d:]
}

// half is r rounded half away from zero; r is not below 0.
func half(r *big.Rat) int64 {
	twice := new(big.Int).Mul(r.Num(), big.NewInt(2))
	twice.Add(twice, r.Denom())
	return twice.Quo(twice, new(big.Int).Mul(r.Denom(), big.NewInt(2))).Int64()
}

// share is so many parts per million of an amount.
func share(minor, ppm int64) int64 {
	return half(new(big.Rat).SetFrac(new(big.Int).Mul(big.NewInt(minor), big.NewInt(ppm)), big.NewInt(1_000_000)))
}

var sellers = []string{"Heron Quay Supply (invented)", "Salt Lane Plastics (invented)", "Gull Street (invented)", ""}

// buying writes how the build is bought.
func (m *maker) buying() {
	t := &m.terms
	t.rates = map[string]string{}
	if m.chance(0.7) {
		b := m.doc.section("[buying]")
		if m.chance(0.7) {
			t.tax = int64(m.IntN(2500)) * 100
			b.put("tax", words("%q", fmt.Sprintf("%d.%02d %%", t.tax/10000, t.tax/100%100)))
		}
		if t.taxShipping = m.chance(0.4); t.taxShipping {
			b.put("tax_shipping", words("true"))
		}
		if m.chance(0.5) {
			t.contingency = int64(m.IntN(200)) * 1000
			b.put("contingency", words("%s", plain(float64(t.contingency)/1e6)))
		}
		if m.chance(0.3) {
			b.put("quote_days", words("%d", m.IntN(400)))
		}
		if m.chance(0.2) {
			b.put("date", words("%s", m.pick(`"2031-03-01"`, "2031-12-31", `"1999-01-01"`)))
		}
	}
	for _, name := range sellers[:m.IntN(4)] {
		s := seller{name: name, free: -1, tax: -1}
		b := &block{head: "[[supplier]]"}
		m.doc.blocks = append(m.doc.blocks, b)
		b.put("name", words("%s", quote(name)))
		if m.chance(0.7) {
			s.shipping = int64(m.IntN(9000))
			b.put("shipping", words("%q", amount(s.shipping, t.currency)))
		}
		if m.chance(0.4) {
			s.minimum = int64(m.IntN(60000))
			b.put("minimum", words("%q", amount(s.minimum, t.currency)))
		}
		if m.chance(0.4) {
			s.free = int64(m.IntN(150000))
			b.put("free_from", words("%q", amount(s.free, t.currency)))
		}
		if m.chance(0.2) {
			s.tax = int64(m.IntN(30)) * 10000
			b.put("tax", words("%q", fmt.Sprintf("%d %%", s.tax/10000)))
		}
		t.suppliers = append(t.suppliers, s)
	}
	for _, code := range []string{"CHF", "JPY"} {
		if code != t.currency && m.chance(0.3) {
			t.rates[code] = m.pick("1.06", "0.0071", "0.333333", "250")
			m.doc.section("[exchange]").put(code, words("%q", t.rates[code]))
		}
	}
	prices := m.doc.section("[prices]")
	prices.put("file", words(`"prices.csv"`))
	if t.comma = m.chance(0.2); t.comma {
		prices.put("decimal", words(`"comma"`))
	}
}

// offer is a row of the price list.
type offer struct {
	item, unit, width, form, supplier, quoted, currency string
	hundredths                                          int64 // of the unit, in one pack
	from, minor                                         int64
}

// priced writes what hangs on the bill: the price list, what is on the rack,
// and suppliers chosen for an item.
func (m *maker) priced(lines []bom.Line) (list string, offers map[int]offer) {
	offers = map[int]offer{}
	var rows []string
	head := "item,description,pack,unit,width,form,from,price,currency,supplier,quoted"
	rows = append(rows, head)
	complete := m.chance(0.5)
	for _, l := range lines {
		if !complete && m.chance(0.1) {
			continue
		}
		for range 1 + m.IntN(3) {
			for _, o := range m.offer(l) {
				rows = append(rows, o.row(m.terms.comma))
				offers[len(rows)] = o
			}
		}
	}
	m.onHand(lines)
	sep := rows
	if m.terms.comma {
		sep = slices.Clone(rows)
		sep[0] = strings.ReplaceAll(head, ",", ";")
	}
	list = strings.Join(sep, "\n") + "\n"
	switch {
	case m.chance(0.1):
		list = "\ufeff" + strings.ReplaceAll(list, "\n", "\r\n")
	case m.nerve == hostile && m.chance(0.15):
		list += m.pick("drum,,1,each,,,,free,,,\n", "x\n", "\"\n", ",,,,,,,,,,1,2,3\n", "drum,,0,each,,,,1,,,\n", "drum,,1,dozen,,,,1,,,\n", "\x00", "drum,,1,each,1 in,,,1,,,\n")
	}
	return list, offers
}

// offer is one pack of an item, with its tiers.
func (m *maker) offer(l bom.Line) []offer {
	o := offer{item: l.Item, supplier: sellers[m.IntN(4)], from: 1, hundredths: 100, unit: "each", minor: int64(m.logBetween(1, 30000)), currency: m.terms.currency}
	switch l.Kind {
	case bom.Length:
		o.unit = m.pick("ft", "m", "mm", "in", "yd")
		o.hundredths = map[string]int64{"ft": 1000, "m": 300, "mm": 300000, "in": 12000, "yd": 400}[o.unit] * int64(1+m.IntN(3)) / 2
		if m.chance(0.2) {
			o.form = "by length"
		}
	case bom.Area:
		if m.chance(0.8) {
			o.unit, o.hundredths, o.width = m.pick("yd", "m"), 100, m.pick("48 in", "1200 mm", "36 in", "2 m")
			if o.form = "by length"; m.chance(0.4) {
				o.form, o.hundredths = m.pick("", "whole"), 100*int64(1+m.IntN(25))
			}
		} else {
			o.unit, o.hundredths = m.pick("m2", "ft2", "yd2"), 100*int64(1+m.IntN(10))
		}
	case bom.Volume:
		o.unit = m.pick("mL", "fl oz", "L", "qt")
		o.hundredths = map[string]int64{"mL": 30000, "fl oz": 1010, "L": 100, "qt": 100}[o.unit]
	default:
		o.hundredths = 100 * []int64{1, 1, 1, 5, 10, 12, 100}[m.IntN(7)]
	}
	if m.chance(0.6) {
		o.quoted = m.pick("2031-02-03", "2031-02-10", "2030-01-31")
	}
	for code := range m.terms.rates {
		if len(m.terms.rates) == 1 && m.chance(0.1) {
			o.currency = code
		}
	}
	out := []offer{o}
	for range m.IntN(3) {
		if m.chance(0.3) {
			o.from += int64(1 + m.IntN(20))
			o.minor = max(1, o.minor*int64(80+m.IntN(25))/100)
			out = append(out, o)
		}
	}
	return out
}

func (o offer) row(comma bool) string {
	pack := fmt.Sprintf("%d.%02d", o.hundredths/100, o.hundredths%100)
	price := amount(o.minor, o.currency)
	sep := ","
	if comma {
		pack, price, sep = strings.Replace(pack, ".", ",", 1), strings.Replace(price, ".", ",", 1), ";"
	}
	return strings.Join([]string{`"` + strings.ReplaceAll(o.item, `"`, `""`) + `"`, "", pack, o.unit, o.width, o.form, fmt.Sprint(o.from), price, o.currency, o.supplier, o.quoted}, sep)
}

// price is what one pack costs in the job's currency.
func (o offer) price(t terms) int64 {
	if o.currency == t.currency {
		return o.minor
	}
	r, _ := new(big.Rat).SetString(t.rates[o.currency])
	ten := func(n int) *big.Rat {
		return new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(n)), nil))
	}
	r.Mul(r, new(big.Rat).SetInt64(o.minor))
	r.Mul(r, ten(digits(t.currency)))
	return half(r.Quo(r, ten(digits(o.currency))))
}

// onHand puts things on the rack and chooses suppliers.
func (m *maker) onHand(lines []bom.Line) {
	if m.chance(0.4) {
		b := m.doc.section("[on_hand]")
		for _, l := range lines {
			if m.chance(0.15) {
				b.put(quote(l.Item), m.held(l))
			}
		}
		if m.chance(0.2) {
			b.put(`"nothing of the kind"`, words("3"))
		}
	}
	if m.chance(0.2) {
		b := m.doc.section("[choose]")
		for _, l := range lines {
			if m.chance(0.1) {
				b.put(quote(l.Item), words("%s", quote(sellers[m.IntN(3)])))
			}
		}
	}
}

func (m *maker) held(l bom.Line) value {
	if m.nerve == hostile && m.chance(0.1) {
		return words("%s", m.pick(`"x"`, "-1", "1.5", "[[]]", "{}", `{amount = 3, width = "1 m"}`, `"3 m"`, `"1 L"`, "true"))
	}
	switch l.Kind {
	case bom.Length:
		return words(`["%d in", "%d mm"]`, 1+m.IntN(60), 1+m.IntN(2000))
	case bom.Area:
		return words(`{amount = "%d in", width = %q, count = %d}`, 1+m.IntN(80), m.pick("48 in", "600 mm"), m.IntN(4))
	case bom.Volume:
		return words(`"%d mL"`, m.IntN(500))
	}
	return words("%d", m.IntN(100))
}
