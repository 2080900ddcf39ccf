package bom

import (
	"math/big"
	"strings"
)

// unit is what a pack may be counted in: its kind, and how many of the kind's
// own unit one of it is, exactly.
type unit struct {
	name string // as a message lists it
	kind Kind
	per  string
	also []string // other ways to write it
}

// unitTable are the units a price list may use. 1 in is 25.4 mm exactly, a US
// gallon 231 in³ and a fluid ounce 1/128 of it (NIST Handbook 44, appendix C).
var unitTable = []unit{
	{"each", Each, "1", []string{"ea", "pc", "pcs"}},
	{"mm", Length, "1", nil},
	{"cm", Length, "10", nil},
	{"m", Length, "1000", nil},
	{"in", Length, "25.4", []string{"inch", "inches"}},
	{"ft", Length, "304.8", []string{"foot", "feet"}},
	{"yd", Length, "914.4", []string{"yard", "yards"}},
	{"mm2", Area, "1", []string{"mm²", "sq mm"}},
	{"cm2", Area, "100", []string{"cm²", "sq cm"}},
	{"m2", Area, "1000000", []string{"m²", "sq m"}},
	{"in2", Area, "645.16", []string{"in²", "sq in"}},
	{"ft2", Area, "92903.04", []string{"ft²", "sq ft"}},
	{"yd2", Area, "836127.36", []string{"yd²", "sq yd"}},
	{"mL", Volume, "1", nil},
	{"L", Volume, "1000", nil},
	{"fl oz", Volume, "29.5735295625", nil},
	{"pt", Volume, "473.176473", nil},
	{"qt", Volume, "946.352946", nil},
	{"gal", Volume, "3785.411784", nil},
}

// units finds a unit by any way of writing it, in lower case.
var units = func() map[string]unit {
	out := map[string]unit{}
	for _, u := range unitTable {
		for _, name := range append([]string{u.name}, u.also...) {
			out[strings.ToLower(name)] = u
		}
	}
	return out
}()

// unitNames lists the units of a kind, or all for "", as a message does.
func unitNames(k Kind) string {
	var names []string
	for _, u := range unitTable {
		if k == "" || u.kind == k {
			names = append(names, u.name)
		}
	}
	return strings.Join(names, ", ")
}

// unitOf finds a unit, case and doubled blanks apart.
func unitOf(s string) (unit, bool) {
	u, ok := units[itemKey(s)]
	return u, ok
}

// holds is what n of the unit come to in its kind's own unit.
func (u unit) holds(n *big.Rat) *big.Rat {
	per, _ := new(big.Rat).SetString(u.per) // the table is tested
	return per.Mul(per, n)
}
