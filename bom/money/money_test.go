package money

import (
	"errors"
	"math"
	"math/big"
	"math/rand/v2"
	"testing"
)

func TestParse(t *testing.T) {
	for _, c := range []struct {
		in       string
		currency Currency
		minor    int64
		text     string
	}{
		{"12.34", "USD", 1234, "USD 12.34"},
		{"12.3", "USD", 1230, "USD 12.30"},
		{"12", "USD", 1200, "USD 12.00"},
		{"0", "USD", 0, "USD 0.00"},
		{"0.05", "EUR", 5, "EUR 0.05"},
		{" 1234.5 ", "USD", 123450, "USD 1,234.50"},
		{"0001.10", "USD", 110, "USD 1.10"},
		{"1500", "JPY", 1500, "JPY 1,500"},
		{"1.234", "KWD", 1234, "KWD 1.234"},
		{"1.2", "BHD", 1200, "BHD 1.200"},
		{"999999.99", "USD", 99999999, "USD 999,999.99"},
		{"1000000", "USD", 100000000, "USD 1,000,000.00"},
		{"10000000000000.00", "USD", Limit, "USD 10,000,000,000,000.00"},
	} {
		m, err := Parse(c.in, c.currency)
		if err != nil || m.Minor != c.minor || m.Currency != c.currency {
			t.Errorf("%q %s: got %+v, %v, want %d", c.in, c.currency, m, err, c.minor)
		}
		if m.String() != c.text {
			t.Errorf("%q: printed %q, want %q", c.in, m.String(), c.text)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for in, want := range map[string]error{
		"": ErrAmount, " ": ErrAmount, ".": ErrAmount, ".5": ErrAmount, "5.": ErrAmount, "-1": ErrAmount, "+1": ErrAmount,
		"1,50": ErrAmount, "1,234.50": ErrAmount, "$5": ErrAmount, "5 USD": ErrAmount, "1e3": ErrAmount, "NaN": ErrAmount, "Inf": ErrAmount,
		"0x10": ErrAmount, "1_0": ErrAmount, "1.2.3": ErrAmount, "1.234": ErrAmount, "٣": ErrAmount, "1 000": ErrAmount,
		"10000000000000.01": ErrTooLarge, "99999999999999999999999999": ErrTooLarge,
	} {
		if m, err := Parse(in, "USD"); !errors.Is(err, want) {
			t.Errorf("%q: got %v, %v, want %v", in, m, err, want)
		}
	}
	if _, err := Parse("12.5", "JPY"); !errors.Is(err, ErrAmount) {
		t.Errorf("yen have no sen in a price: %v", err)
	}
}

// ISO 4217, list one: minor units (from memory).
func TestCurrencies(t *testing.T) {
	for code, want := range map[Currency]int{"USD": 2, "EUR": 2, "GBP": 2, "CAD": 2, "MXN": 2, "JPY": 0, "KRW": 0, "CLP": 0, "VND": 0, "ISK": 0, "KWD": 3, "BHD": 3, "TND": 3, "OMR": 3} {
		c, err := ParseCurrency(string(code))
		if err != nil || c.Digits() != want {
			t.Errorf("%s: %d digits (%v), want %d", code, c.Digits(), err, want)
		}
	}
	for _, bad := range []string{"", "usd", "US", "USDX", "XYZ", "€", "U$D"} {
		if c, err := ParseCurrency(bad); !errors.Is(err, ErrCode) || c != "" || Currency(bad).Known() {
			t.Errorf("%q is taken for a currency: %q, %v", bad, c, err)
		}
	}
	for c, n := range digits {
		if len(c) != 3 || n != 0 && n != 2 && n != 3 {
			t.Errorf("%s: %d", c, n)
		}
	}
}

func TestPlus(t *testing.T) {
	sum, err := Money{}.Plus(Money{150, "USD"})
	if err != nil || sum != (Money{150, "USD"}) {
		t.Errorf("nothing and a sum: %v, %v", sum, err)
	}
	if _, err := (Money{1, "USD"}).Plus(Money{1, "EUR"}); !errors.Is(err, ErrCurrency) {
		t.Errorf("two currencies are added: %v", err)
	}
	for _, m := range []Money{{Limit, "USD"}, {math.MaxInt64, "USD"}} {
		if _, err := m.Plus(Money{1, "USD"}); !errors.Is(err, ErrTooLarge) {
			t.Errorf("%d + 1: %v", m.Minor, err)
		}
	}
	if _, err := (Money{math.MinInt64, "USD"}).Plus(Money{math.MinInt64, "USD"}); !errors.Is(err, ErrTooLarge) {
		t.Errorf("wraps round: %v", err)
	}
}

func TestTimes(t *testing.T) {
	// 20 drums at 18.00
	if m, err := (Money{1800, "USD"}).Times(20); err != nil || m.Plain() != "360.00" {
		t.Errorf("%v, %v", m, err)
	}
	if _, err := (Money{math.MaxInt64, "USD"}).Times(2); !errors.Is(err, ErrTooLarge) {
		t.Errorf("wraps round: %v", err)
	}
	// Half away from zero.
	for _, c := range []struct {
		minor, num, den, want int64
	}{
		{1, 1, 2, 1}, {-1, 1, 2, -1}, {3, 1, 2, 2}, {5, 1, 2, 3}, {1, 1, 3, 0}, {2, 1, 3, 1}, {100, 1, 3, 33}, {200, 1, 3, 67}, {1000, 7, 100, 70}, {999, 1, 2, 500},
	} {
		m, err := Money{c.minor, "USD"}.TimesRat(big.NewRat(c.num, c.den))
		if err != nil || m.Minor != c.want {
			t.Errorf("%d × %d/%d: %d, %v, want %d", c.minor, c.num, c.den, m.Minor, err, c.want)
		}
	}
	if m := (Money{100, "USD"}).Over(0); m != (Money{0, "USD"}) {
		t.Errorf("over nothing: %v", m)
	}
	// Half away from zero, either way (IEEE 754-2019, 4.3.1, ties to away).
	for _, c := range []struct{ minor, n, want int64 }{
		{1, 2, 1}, {-1, 2, -1}, {3, 2, 2}, {-3, 2, -2}, {5, 10, 1}, {-5, 10, -1}, {4, 10, 0}, {-4, 10, 0},
		{1, 3, 0}, {2, 3, 1}, {-2, 3, -1}, {7, -2, -4}, {Limit, 1, Limit}, {-Limit, 3, -333333333333333},
	} {
		if got := (Money{c.minor, "USD"}).Over(c.n); got != (Money{c.want, "USD"}) {
			t.Errorf("%d over %d: %+v, want %d", c.minor, c.n, got, c.want)
		}
	}
	if m := (Money{136840, "USD"}).Over(20); m.Plain() != "68.42" {
		t.Errorf("1368.40 over 20: %v", m)
	}
}

func TestSplit(t *testing.T) {
	for _, c := range []struct {
		reason  string
		minor   int64
		weights []int64
		want    []int64
	}{
		{"equal thirds of a unit: the first gets what is left", 100, []int64{1, 1, 1}, []int64{34, 33, 33}},
		{"largest remainder first", 10, []int64{6, 6, 2}, []int64{4, 4, 2}}, // 4.29 4.29 1.43
		{"no weight, no share", 7, []int64{0, 3}, []int64{0, 7}},
		{"one", 7, []int64{5}, []int64{7}},
		{"a credit", -100, []int64{1, 1, 1}, []int64{-34, -33, -33}},
		{"nothing by nothing", 0, []int64{0, 0}, []int64{0, 0}},
	} {
		var w []*big.Rat
		for _, x := range c.weights {
			w = append(w, big.NewRat(x, 1))
		}
		got, err := Money{c.minor, "USD"}.Split(w...)
		if err != nil {
			t.Fatalf("%s: %v", c.reason, err)
		}
		for i := range got {
			if got[i].Minor != c.want[i] || got[i].Currency != "USD" {
				t.Errorf("%s: %v, want %v", c.reason, got, c.want)
			}
		}
	}
	if _, err := (Money{1, "USD"}).Split(big.NewRat(0, 1), big.NewRat(0, 1)); !errors.Is(err, ErrShare) {
		t.Errorf("a sum by no weights: %v", err)
	}
	if _, err := (Money{1, "USD"}).Split(big.NewRat(-1, 1), big.NewRat(2, 1)); !errors.Is(err, ErrShare) {
		t.Errorf("a negative weight: %v", err)
	}
	if _, err := (Money{math.MinInt64, "USD"}).Split(big.NewRat(1, 1)); !errors.Is(err, ErrTooLarge) {
		t.Errorf("past the limit: %v", err)
	}
}

// Shares add up, and each is within one minor unit of its exact part.
func TestSplitAtRandom(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 217))
	for range 5000 {
		m := Money{r.Int64N(Limit) >> r.IntN(50), "USD"}
		w := make([]*big.Rat, 1+r.IntN(6))
		sum := new(big.Rat)
		for i := range w {
			w[i] = big.NewRat(r.Int64N(1000), 1+r.Int64N(1000))
			sum.Add(sum, w[i])
		}
		if sum.Sign() == 0 {
			continue
		}
		shares, err := m.Split(w...)
		if err != nil {
			t.Fatal(err)
		}
		var all int64
		for i, s := range shares {
			all += s.Minor
			part := new(big.Rat).SetInt64(m.Minor)
			part.Mul(part, w[i]).Quo(part, sum)
			part.Sub(part, new(big.Rat).SetInt64(s.Minor))
			if part.Abs(part).Cmp(big.NewRat(1, 1)) >= 0 {
				t.Fatalf("%v by %v: share %d is off by %s", m, w, i, part.FloatString(3))
			}
		}
		if all != m.Minor {
			t.Fatalf("%v by %v: shares add up to %d", m, w, all)
		}
	}
}

func TestText(t *testing.T) {
	for _, c := range []struct {
		m           Money
		text, plain string
	}{
		{Money{-123456, "USD"}, "USD -1,234.56", "-1234.56"},
		{Money{-5, "USD"}, "USD -0.05", "-0.05"},
		{Money{7, ""}, "0.07", "0.07"},
		{Money{math.MinInt64, "JPY"}, "JPY -9,223,372,036,854,775,808", "-9223372036854775808"},
	} {
		if c.m.String() != c.text || c.m.Plain() != c.plain {
			t.Errorf("%+v: %q, %q", c.m, c.m.String(), c.m.Plain())
		}
	}
}

// What Parse takes it writes back to the same amount.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"12.34", "0", "-1", "1,5", "9999999999999.99", ".5", "5."} {
		f.Add(s, "USD")
		f.Add(s, "JPY")
		f.Add(s, "KWD")
	}
	f.Fuzz(func(t *testing.T, s, code string) {
		m, err := Parse(s, Currency(code))
		if err != nil {
			if m != (Money{}) {
				t.Errorf("an amount beside an error: %+v", m)
			}
			return
		}
		if m.Minor < 0 || m.Minor > Limit {
			t.Errorf("%q: %d", s, m.Minor)
		}
		if again, err := Parse(m.Plain(), m.Currency); err != nil || again != m {
			t.Errorf("%q: %q reads back as %+v, %v", s, m.Plain(), again, err)
		}
	})
}
