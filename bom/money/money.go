// Package money holds exact amounts of money: whole minor units (cents) of one
// currency. There is no floating point in it. Where a sum must be divided, one
// part is rounded half away from zero; Split shares a sum so that the shares
// add up to it again.
package money

import (
	"errors"
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"
)

// Money is an amount in minor units of a currency. The zero Money has no
// currency and can be added to any.
type Money struct {
	Minor    int64    `json:"minor"`
	Currency Currency `json:"currency"`
}

// The errors of this package.
var (
	ErrAmount   = errors.New("not an amount of money")
	ErrCode     = errors.New("not a currency")
	ErrCurrency = errors.New("different currencies")
	ErrTooLarge = errors.New("amount too large")
	ErrShare    = errors.New("cannot be shared")
)

// Limit bounds every amount, either way: 10^15 minor units. Sums of two such
// amounts are far from overflow.
const Limit = 1_000_000_000_000_000

// Parse reads an amount such as "12", "12.5" or "12.50": digits, a point and
// no more digits after it than the currency has. There is no sign, no
// thousands mark and no symbol. Blanks at either end do not count. Errors wrap
// ErrAmount or ErrTooLarge.
func Parse(s string, c Currency) (Money, error) {
	s = strings.TrimSpace(s)
	whole, part, point := strings.Cut(s, ".")
	switch {
	case !plainDigits(whole) || point && !plainDigits(part):
		return Money{}, fmt.Errorf("%.40q: %w; hint: %s", s, ErrAmount, wording(s))
	case len(part) > c.Digits() && c.Digits() == 0:
		return Money{}, fmt.Errorf("%.40q: %w: %s has no digits after the point; hint: whole numbers only", s, ErrAmount, c)
	case len(part) > c.Digits():
		return Money{}, fmt.Errorf("%.40q: %w: %s has %d digits after the point; hint: price a larger pack", s, ErrAmount, c, c.Digits())
	}
	n, err := strconv.ParseInt(whole+part+strings.Repeat("0", c.Digits()-len(part)), 10, 64)
	if err != nil || n > Limit {
		return Money{}, fmt.Errorf("%.40q: %w; hint: at most %s", s, ErrTooLarge, Money{Limit, c})
	}
	return Money{n, c}, nil
}

// wording says what is most likely wrong with an amount.
func wording(s string) string {
	plain := "digits with a point, as in 12.50"
	switch {
	case s == "":
		return plain
	case strings.HasPrefix(s, "-") || strings.HasPrefix(s, "−"):
		return "an amount cannot be negative"
	case strings.Count(s, ",") == 1 && !strings.Contains(s, "."):
		return "write a decimal point, not a comma, as in 12.50; no thousands mark"
	case strings.ContainsAny(s, ",' "):
		return "no thousands mark, as in 1234.50"
	}
	return plain + "; no sign or symbol"
}

func plainDigits(s string) bool {
	for _, r := range s {
		if r < '0' || r > '9' {
			return false
		}
	}
	return s != ""
}

// within returns n minor units of c, or ErrTooLarge.
func within(n *big.Int, c Currency) (Money, error) {
	if !n.IsInt64() || n.Int64() > Limit || n.Int64() < -Limit {
		return Money{}, ErrTooLarge
	}
	return Money{n.Int64(), c}, nil
}

// Plus adds. It fails on two currencies (ErrCurrency) and past Limit
// (ErrTooLarge).
func (m Money) Plus(o Money) (Money, error) {
	if m.Currency == "" {
		m.Currency = o.Currency
	}
	if o.Currency != "" && o.Currency != m.Currency {
		return Money{}, fmt.Errorf("%s and %s: %w", m.Currency, o.Currency, ErrCurrency)
	}
	return within(new(big.Int).Add(big.NewInt(m.Minor), big.NewInt(o.Minor)), m.Currency)
}

// Times multiplies by a whole number. It fails past Limit (ErrTooLarge).
func (m Money) Times(n int64) (Money, error) {
	return within(new(big.Int).Mul(big.NewInt(m.Minor), big.NewInt(n)), m.Currency)
}

// TimesRat multiplies by a ratio and rounds half away from zero to a whole
// minor unit. It fails past Limit (ErrTooLarge).
func (m Money) TimesRat(r *big.Rat) (Money, error) {
	p := new(big.Rat).Mul(new(big.Rat).SetInt64(m.Minor), r)
	half := big.NewRat(1, 2)
	if p.Sign() < 0 {
		half.Neg(half)
	}
	p.Add(p, half)
	return within(new(big.Int).Quo(p.Num(), p.Denom()), m.Currency)
}

// In turns m into another currency at a rate: what one unit of m's currency
// costs in the other, above 0. It rounds half away from zero to a whole minor
// unit of the other, and fails past Limit (ErrTooLarge).
func (m Money) In(c Currency, rate *big.Rat) (Money, error) {
	r := new(big.Rat).Mul(rate, new(big.Rat).SetFrac(pow10(c.Digits()), pow10(m.Currency.Digits())))
	out, err := m.TimesRat(r)
	out.Currency = c
	return out, err
}

func pow10(n int) *big.Int {
	return new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(n)), nil)
}

// Size is the amount without its sign.
func (m Money) Size() Money {
	if m.Minor < 0 {
		m.Minor = -m.Minor
	}
	return m
}

// Over divides by n, rounding half away from zero. It is zero for n = 0.
func (m Money) Over(n int64) Money {
	if n == 0 {
		return Money{0, m.Currency}
	}
	q, err := m.TimesRat(big.NewRat(1, n))
	if err != nil { // |1/n| ≤ 1: only an amount past Limit to begin with
		return Money{0, m.Currency}
	}
	return q
}

// Major is the amount in whole units of its currency, for places in drawings
// only: it is not exact.
func (m Money) Major() float64 {
	return float64(m.Minor) / math.Pow10(m.Currency.Digits())
}

// Plain writes the amount without its currency: "1234.50".
func (m Money) Plain() string {
	sign, whole, part := m.parts()
	if part != "" {
		part = "." + part
	}
	return sign + whole + part
}

// String writes the amount with its currency and thousands apart: "USD
// 1,234.50".
func (m Money) String() string {
	sign, whole, part := m.parts()
	var b strings.Builder
	if m.Currency != "" {
		b.WriteString(string(m.Currency) + " ")
	}
	b.WriteString(sign)
	for i, r := range whole {
		if i > 0 && (len(whole)-i)%3 == 0 {
			b.WriteByte(',')
		}
		b.WriteRune(r)
	}
	if part != "" {
		b.WriteString("." + part)
	}
	return b.String()
}

// parts are the amount's sign, whole units and what stands after the point.
func (m Money) parts() (sign, whole, part string) {
	n := uint64(m.Minor)
	if m.Minor < 0 {
		sign, n = "-", -n
	}
	d := m.Currency.Digits()
	s := fmt.Sprintf("%0*d", d+1, n)
	return sign, s[:len(s)-d], s[len(s)-d:]
}
