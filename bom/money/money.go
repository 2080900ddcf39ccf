// Package money holds exact amounts of money: whole minor units (cents) of one
// currency. There is no floating point in it. Where a sum must be divided the
// rounding is half away from zero, and Split shares a sum so that the shares
// add up to it again.
package money

import (
	"errors"
	"fmt"
	"math"
	"math/big"
	"strings"
)

// Currency is an ISO 4217 code, such as "USD".
type Currency string

// exponents are the digits after the point of currencies that do not have two
// (ISO 4217).
var exponents = map[Currency]int{
	"BIF": 0, "CLP": 0, "DJF": 0, "GNF": 0, "ISK": 0, "JPY": 0, "KMF": 0, "KRW": 0, "PYG": 0, "RWF": 0,
	"UGX": 0, "VND": 0, "VUV": 0, "XAF": 0, "XOF": 0, "XPF": 0,
	"BHD": 3, "IQD": 3, "JOD": 3, "KWD": 3, "LYD": 3, "OMR": 3, "TND": 3,
}

// Digits is how many digits the currency has after the point: two unless ISO
// 4217 says otherwise.
func (c Currency) Digits() int {
	if n, ok := exponents[c]; ok {
		return n
	}
	return 2
}

// Money is an amount in minor units of a currency. The zero Money has no
// currency and can be added to any.
type Money struct {
	Minor    int64    `json:"minor"`
	Currency Currency `json:"currency"`
}

// The errors of this package.
var (
	ErrAmount   = errors.New("not an amount of money")
	ErrCurrency = errors.New("different currencies")
	ErrTooLarge = errors.New("amount too large")
)

// limit keeps sums of many amounts far from overflow: 10^15 minor units.
const limit = 1_000_000_000_000_000

// Parse reads an amount such as "12", "12.5" or "12.50": digits, a point and
// no more digits after it than the currency has. There is no sign and no
// thousands mark.
func Parse(s string, c Currency) (Money, error) {
	s = strings.TrimSpace(s)
	whole, part, point := strings.Cut(s, ".")
	digits := func(s string) bool {
		for _, r := range s {
			if r < '0' || r > '9' {
				return false
			}
		}
		return true
	}
	if whole == "" || !digits(whole) || !digits(part) || point && part == "" || len(whole) > 13 {
		return Money{}, fmt.Errorf("%q: %w; hint: digits with a point, as in 12.50", s, ErrAmount)
	}
	if len(part) > c.Digits() {
		return Money{}, fmt.Errorf("%q: %w: %s has %d digits after the point", s, ErrAmount, c, c.Digits())
	}
	for len(part) < c.Digits() {
		part += "0"
	}
	var n int64
	for _, r := range whole + part {
		n = n*10 + int64(r-'0')
	}
	if n > limit {
		return Money{}, fmt.Errorf("%q: %w", s, ErrTooLarge)
	}
	return Money{n, c}, nil
}

// Plus adds. It fails on two currencies and past 10^15 minor units.
func (m Money) Plus(o Money) (Money, error) {
	if m.Currency == "" {
		m.Currency = o.Currency
	}
	if o.Currency != "" && o.Currency != m.Currency {
		return Money{}, fmt.Errorf("%s and %s: %w", m.Currency, o.Currency, ErrCurrency)
	}
	sum := m.Minor + o.Minor
	if sum > limit || sum < -limit {
		return Money{}, ErrTooLarge
	}
	return Money{sum, m.Currency}, nil
}

// Times multiplies by a whole number.
func (m Money) Times(n int64) (Money, error) {
	p := new(big.Int).Mul(big.NewInt(m.Minor), big.NewInt(n))
	if !p.IsInt64() || p.Int64() > limit || p.Int64() < -limit {
		return Money{}, ErrTooLarge
	}
	return Money{p.Int64(), m.Currency}, nil
}

// Over divides by n, rounding half away from zero. It is zero for n = 0.
func (m Money) Over(n int64) Money {
	if n == 0 {
		return Money{0, m.Currency}
	}
	q := new(big.Rat).SetFrac64(m.Minor, n)
	half := big.NewRat(1, 2)
	if q.Sign() < 0 {
		half.Neg(half)
	}
	q.Add(q, half)
	return Money{new(big.Int).Quo(q.Num(), q.Denom()).Int64(), m.Currency}
}

// Split shares m by two weights that are not negative; the first share is
// rounded half away from zero and the second is what is left, so that they
// add up. Weights of zero and zero give all to the first.
func (m Money) Split(a, b float64) (Money, Money) {
	if !(a > 0) && b > 0 {
		return Money{0, m.Currency}, m
	}
	first := m.Minor
	if b > 0 {
		first = int64(math.Round(float64(m.Minor) * (a / (a + b))))
	}
	return Money{first, m.Currency}, Money{m.Minor - first, m.Currency}
}

// Plain writes the amount without its currency: "1234.50".
func (m Money) Plain() string {
	n := m.Minor
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	d := m.Currency.Digits()
	s := fmt.Sprintf("%0*d", d+1, n)
	if d == 0 {
		return sign + s
	}
	return sign + s[:len(s)-d] + "." + s[len(s)-d:]
}

// String writes the amount with its currency and thousands apart: "USD
// 1,234.50".
func (m Money) String() string {
	whole, part, _ := strings.Cut(m.Plain(), ".")
	sign := ""
	if strings.HasPrefix(whole, "-") {
		sign, whole = "-", whole[1:]
	}
	var b strings.Builder
	for i, r := range whole {
		if i > 0 && (len(whole)-i)%3 == 0 {
			b.WriteByte(',')
		}
		b.WriteRune(r)
	}
	out := strings.TrimSpace(string(m.Currency)) + " " + sign + b.String()
	if part != "" {
		out += "." + part
	}
	return out
}
