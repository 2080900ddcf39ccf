package sweep

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"math/big"
	"strings"

	"silowright/cmd/internal/output"
)

type coins struct {
	Minor    int64  `json:"minor"`
	Currency string `json:"currency"`
}

// billed is what of report.json the bill is added up from.
type billed struct {
	Units string `json:"units"`
	Costs struct {
		Labour, Contingency, Total coins
		Drums                      coins `json:"drum_silos_share"`
		Pipes                      coins `json:"pipe_silos_share"`
		PerDrum                    coins `json:"per_drum_silo"`
		PerPipe                    coins `json:"per_pipe_silo"`
		Parts                      []struct {
			Name string
			Sum  coins
		}
		Bill struct {
			DrumSilos int64 `json:"drum_silos"`
			PipeSilos int64 `json:"pipe_silos"`
			Lines     []struct {
				Item, Category, Supplier string
				Unit                     string
				Drum                     float64 `json:"drum_silos_need"`
				Pipe                     float64 `json:"pipe_silos_need"`
				Rack                     float64 `json:"from_the_rack"`
				Left                     float64 `json:"left_over"`
				Pieces, Flats            []any
				Buys                     []struct {
					Offer struct {
						Row      int
						Item     string
						Holds    float64
						Supplier string
					}
					Packs         int64
					Price, Amount coins
				}
				Amount *coins
				Worth  *coins `json:"left_over_worth"`
				Drums  *coins `json:"drum_silos_share"`
				Pipes  *coins `json:"pipe_silos_share"`
			}
			Orders []struct {
				Supplier                    string
				Items                       []string
				Goods, Shipping, Tax, Total coins
				TopUp                       coins `json:"top_up"`
			}
			Categories []struct {
				Category string
				Sum      coins
				Items    int
				Missing  int `json:"missing_prices"`
			}
			Goods, Shipping, Tax, Total coins
			TopUp                       coins    `json:"top_up"`
			Drums                       coins    `json:"drum_silos_share"`
			Pipes                       coins    `json:"pipe_silos_share"`
			PerDrum                     coins    `json:"per_drum_silo"`
			PerPipe                     coins    `json:"per_pipe_silo"`
			Missing                     []string `json:"missing_prices"`
		}
	}
}

// sums compares amounts and keeps what does not add up.
type sums struct {
	currency string
	out      []string
}

func (s *sums) same(what string, got coins, want int64) {
	if got.Minor != want || got.Currency != s.currency {
		s.out = append(s.out, fmt.Sprintf("%s: %d %s, added up %d %s", what, got.Minor, got.Currency, want, s.currency))
	}
}

// billFaults adds the bill of report.json up anew, from the rows of the price
// list and the terms as they were written, in whole coins.
func billFaults(report []byte, files []output.File, t terms, offers map[int]offer) []string {
	s := &sums{currency: t.currency}
	var r billed
	if err := json.Unmarshal(report, &r); err != nil {
		return []string{err.Error()}
	}
	b := r.Costs.Bill
	goods, drums, pipes, lines := map[string]int64{}, map[string]int64{}, map[string]int64{}, map[string]int64{}
	categories, missing := map[string]int64{}, 0
	var all, drumShare, pipeShare int64
	for _, l := range b.Lines {
		if l.Amount == nil {
			if missing++; len(l.Buys) > 0 {
				s.out = append(s.out, l.Item+": bought without an amount")
			}
			continue
		}
		sum, holds := int64(0), 0.0
		for _, y := range l.Buys {
			o, ok := offers[y.Offer.Row]
			if !ok || !strings.EqualFold(o.item, l.Item) || !strings.EqualFold(o.supplier, l.Supplier) {
				s.out = append(s.out, fmt.Sprintf("%s: row %d of the price list is %+v", l.Item, y.Offer.Row, o))
				continue
			}
			if y.Packs < o.from || y.Packs < 1 {
				s.out = append(s.out, fmt.Sprintf("%s: %d packs at the price from %d", l.Item, y.Packs, o.from))
			}
			s.same(l.Item+": price", y.Price, o.price(t))
			s.same(l.Item+": amount of a row", y.Amount, o.price(t)*y.Packs)
			sum += o.price(t) * y.Packs
			holds += y.Offer.Holds * float64(y.Packs)
		}
		s.same(l.Item, *l.Amount, sum)
		s.same(l.Item+": shares", coins{l.Drums.Minor + l.Pipes.Minor, l.Drums.Currency}, sum)
		if worth := l.Worth.Minor; worth < 0 || worth > sum {
			s.out = append(s.out, fmt.Sprintf("%s: what is left is worth %d of %d", l.Item, worth, sum))
		}
		if need := l.Drum + l.Pipe; len(l.Pieces) == 0 && len(l.Flats) == 0 && holds+l.Rack < need-1e-5-1e-12*need {
			s.out = append(s.out, fmt.Sprintf("%s: %g bought and %g from the rack for %g", l.Item, holds, l.Rack, need))
		}
		categories[l.Category] += sum
		all += sum
		if len(l.Buys) > 0 {
			goods[l.Supplier] += sum
			drums[l.Supplier] += l.Drums.Minor
			pipes[l.Supplier] += l.Pipes.Minor
			lines[l.Supplier]++
		}
		drumShare += l.Drums.Minor
		pipeShare += l.Pipes.Minor
	}
	s.same("goods", b.Goods, all)
	if missing != len(b.Missing) {
		s.out = append(s.out, fmt.Sprintf("%d items without a price, %d are listed", missing, len(b.Missing)))
	}
	for _, c := range b.Categories {
		s.same("category "+c.Category, c.Sum, categories[c.Category])
	}
	var topUp, shipping, tax, ordered int64
	for _, o := range b.Orders {
		s.order(o.Supplier, [5]coins{o.Goods, o.TopUp, o.Shipping, o.Tax, o.Total}, goods[o.Supplier], t)
		if int64(len(o.Items)) != lines[o.Supplier] {
			s.out = append(s.out, fmt.Sprintf("order of %q: %d items, %d lines", o.Supplier, len(o.Items), lines[o.Supplier]))
		}
		topUp, shipping, tax, ordered = topUp+o.TopUp.Minor, shipping+o.Shipping.Minor, tax+o.Tax.Minor, ordered+o.Total.Minor
	}
	if len(b.Orders) != len(goods) {
		s.out = append(s.out, fmt.Sprintf("%d orders to %d suppliers", len(b.Orders), len(goods)))
	}
	s.same("top-up", b.TopUp, topUp)
	s.same("shipping", b.Shipping, shipping)
	s.same("tax", b.Tax, tax)
	s.same("total of the orders", b.Total, ordered)
	s.same("total of the bill", b.Total, all+topUp+shipping+tax)
	s.same("shares of the bill", coins{b.Drums.Minor + b.Pipes.Minor, b.Drums.Currency}, b.Total.Minor)
	s.per("the bill's", b.PerDrum, b.Drums.Minor, b.DrumSilos)
	s.per("the bill's", b.PerPipe, b.Pipes.Minor, b.PipeSilos)
	// the shares of goods; those of shipping and tax go by them, to a coin an order
	if d := b.Drums.Minor - drumShare; d < 0 || d > topUp+shipping+tax {
		s.out = append(s.out, fmt.Sprintf("drum silos bear %d beside goods of %d", d, drumShare))
	}
	c := r.Costs
	before := b.Total.Minor + c.Labour.Minor
	s.same("contingency", c.Contingency, share(before, t.contingency))
	s.same("total cost", c.Total, before+c.Contingency.Minor)
	s.same("shares of the cost", coins{c.Drums.Minor + c.Pipes.Minor, c.Drums.Currency}, c.Total.Minor)
	s.per("the build's", c.PerDrum, c.Drums.Minor, b.DrumSilos)
	s.per("the build's", c.PerPipe, c.Pipes.Minor, b.PipeSilos)
	var parts int64
	for _, p := range c.Parts {
		parts += p.Sum.Minor
	}
	s.same("where the money goes", coins{parts, t.currency}, c.Total.Minor)
	s.tables(files, r, t)
	return s.out
}

func (s *sums) per(whose string, got coins, sum, n int64) {
	if n > 0 {
		s.same(whose+" cost of one silo", got, half(big.NewRat(sum, n)))
	}
}

// order works an order out of its goods on its supplier's terms: the least
// order first, then free shipping where its top-up costs less than shipping.
func (s *sums) order(name string, got [5]coins, goods int64, t terms) {
	v := t.of(name)
	rate := t.tax
	if v.tax >= 0 {
		rate = v.tax
	}
	spend := func(y int64) [5]int64 {
		o := [5]int64{goods, y - goods, 0, 0, 0}
		taxed := y
		if v.free < 0 || y < v.free {
			if o[2] = v.shipping; t.taxShipping {
				taxed += v.shipping
			}
		}
		o[3] = share(taxed, rate)
		o[4] = y + o[2] + o[3]
		return o
	}
	want := spend(max(goods, v.minimum))
	if free := spend(max(goods, v.minimum, v.free)); v.free >= 0 && free[4] < want[4] {
		want = free
	}
	if goods == 0 {
		want = [5]int64{}
	}
	for i, what := range []string{"goods", "top-up", "shipping", "tax", "total"} {
		s.same(fmt.Sprintf("order of %q: %s", name, what), got[i], want[i])
	}
}

// tables holds bill.csv and the buy lists against the report.
func (s *sums) tables(files []output.File, r billed, t terms) {
	b := r.Costs.Bill
	orders := map[int64]int{}
	for _, o := range b.Orders {
		orders[o.Total.Minor]++
	}
	for _, f := range files {
		if f.Name != "bill.csv" && !strings.HasPrefix(f.Name, "orders/") {
			continue
		}
		rows, err := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(f.Data, []byte("\ufeff")))).ReadAll()
		if err != nil {
			s.out = append(s.out, f.Name+": "+err.Error())
			continue
		}
		at := map[string]int{}
		for i, h := range rows[0] {
			at[h] = i
		}
		sum, last := int64(0), int64(0)
		for _, row := range rows[1:] {
			n, ok := minorOf(row[at["amount"]], t.currency)
			if !ok && row[at["amount"]] != "no price" {
				s.out = append(s.out, fmt.Sprintf("%s: amount %q", f.Name, row[at["amount"]]))
			}
			if row[at["item"]] != "" && row[at["pack"]] != "" {
				sum += n
			}
			switch name, _, _ := strings.Cut(row[0], ","); {
			case f.Name == "bill.csv" && name == "total":
				last = n
			case f.Name != "bill.csv" && name == "order total":
				last = n
			}
		}
		if f.Name == "bill.csv" {
			s.same("bill.csv: rows", coins{sum, t.currency}, b.Goods.Minor)
			if len(b.Lines) > len(b.Missing) {
				s.same("bill.csv: total", coins{last, t.currency}, b.Total.Minor)
			}
			continue
		}
		if orders[last]--; orders[last] < 0 {
			s.out = append(s.out, fmt.Sprintf("%s: total %d is no order's", f.Name, last))
		}
	}
}

// minorOf reads an amount as a table writes it.
func minorOf(text, currency string) (int64, bool) {
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		return 0, false
	}
	r.Mul(r, new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(digits(currency))), nil)))
	return r.Num().Int64(), r.IsInt()
}

// nearMinor reads a number of a spreadsheet, which is binary, as an amount: it
// is within a thousandth of a coin of one.
func nearMinor(text, currency string) (int64, bool) {
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		return 0, false
	}
	r.Mul(r, new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(digits(currency))), nil)))
	f, _ := r.Float64()
	return int64(math.Round(f)), math.Abs(f-math.Round(f)) < 1e-3
}
