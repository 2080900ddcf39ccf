package bom

import (
	"math/big"
	"testing"
)

// Exact factors by NIST Handbook 44, appendix C: 1 yd = 0.9144 m, 1 ft =
// 0.3048 m, 1 gal = 231 in³ = 128 fl oz = 8 pt = 4 qt.
func TestUnits(t *testing.T) {
	of := func(n, unit string) *big.Rat {
		u, ok := unitOf(unit)
		if !ok {
			t.Fatalf("%s is no unit", unit)
		}
		r, ok := new(big.Rat).SetString(n)
		if !ok {
			t.Fatal(n)
		}
		return u.holds(r)
	}
	for _, c := range []struct{ n, unit, n2, unit2 string }{
		{"1", "yd", "0.9144", "m"},
		{"1", "ft", "0.3048", "m"},
		{"12", "in", "1", "ft"},
		{"1", "in", "2.54", "cm"},
		{"100", "cm", "1", "m"},
		{"144", "in2", "1", "ft2"},
		{"9", "sq ft", "1", "yd²"},
		{"10000", "cm2", "1", "M2"},
		{"1", "m²", "1000000", "mm2"},
		{"128", "fl oz", "1", "gal"},
		{"8", "pt", "1", "gal"},
		{"4", "qt", "1", "gal"},
		{"1", "L", "1000", "ml"},
		{"1", "gal", "3.785411784", "L"}, // 231 × 2.54³ cm³
		{"3", "pcs", "3", "each"},
		{"10", "FL  OZ", "10", "fl oz"},
	} {
		if a, b := of(c.n, c.unit), of(c.n2, c.unit2); a.Cmp(b) != 0 {
			t.Errorf("%s %s is %s, %s %s is %s", c.n, c.unit, a.FloatString(6), c.n2, c.unit2, b.FloatString(6))
		}
	}
	gallon := new(big.Rat).SetFrac64(231*254*254*254, 1000*1000) // in³ to cm³
	if of("1", "gal").Cmp(gallon) != 0 {
		t.Errorf("a gallon is %s mL", of("1", "gal").FloatString(6))
	}
	for _, u := range unitTable {
		if _, ok := new(big.Rat).SetString(u.per); !ok {
			t.Errorf("%s: %q", u.name, u.per)
		}
		if got, ok := unitOf(u.name); !ok || got.kind != u.kind {
			t.Errorf("%s is not found by its name", u.name)
		}
	}
	for _, bad := range []string{"", "furlong", "kg", "m3", "oz", "'"} {
		if u, ok := unitOf(bad); ok {
			t.Errorf("%q is %s", bad, u.name)
		}
	}
}
