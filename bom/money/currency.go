package money

import (
	"fmt"
	"strings"
)

// Currency is an ISO 4217 code, such as "USD".
type Currency string

// byDigits are the currencies in use, by the digits their minor unit has after
// the point: ISO 4217, list one, from memory. Codes for metals, funds, tests
// and accounting units are left out.
var byDigits = map[int]string{
	0: "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF",
	2: "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CNY COP CRC " +
		"CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR " +
		"IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR " +
		"MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS " +
		"SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD UYU UZS VES WST XCD XCG YER ZAR ZMW",
	3: "BHD IQD JOD KWD LYD OMR TND",
}

var digits = table()

func table() map[Currency]int {
	out := map[Currency]int{}
	for n, codes := range byDigits {
		for _, c := range strings.Fields(codes) {
			out[Currency(c)] = n
		}
	}
	return out
}

// ParseCurrency reads an ISO 4217 code: three capital letters of a currency in
// the table. Its errors wrap ErrCode.
func ParseCurrency(s string) (Currency, error) {
	c := Currency(s)
	if _, ok := digits[c]; ok {
		return c, nil
	}
	if _, ok := digits[Currency(strings.ToUpper(strings.TrimSpace(s)))]; ok {
		return "", fmt.Errorf("%.20q: %w; hint: write %s", s, ErrCode, strings.ToUpper(strings.TrimSpace(s)))
	}
	return "", fmt.Errorf("%.20q: %w; hint: three capital letters (ISO 4217), as in USD, EUR or JPY", s, ErrCode)
}

// Known reports whether the currency is in the table.
func (c Currency) Known() bool {
	_, ok := digits[c]
	return ok
}

// Digits is how many digits the currency has after the point: 0, 2 or 3 by
// ISO 4217, and 2 for a code that is not in the table.
func (c Currency) Digits() int {
	if n, ok := digits[c]; ok {
		return n
	}
	return 2
}
