package bom

import (
	"math/big"
	"strings"
)

// unit is what a pack may be counted in: its kind, and how many of the kind's
// own unit one of it is, exactly.
type unit struct {
	kind Kind
	per  *big.Rat
}

func rat(s string) *big.Rat {
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		panic("not a number: " + s) // the table below is part of the program
	}
	return r
}

// units are the units a price list may use. Inch 25.4 mm and US gallon 231 in³
// exactly (NIST Handbook 44, appendix C).
var units = map[string]unit{
	"each": {Each, rat("1")}, "mm": {Length, rat("1")}, "cm": {Length, rat("10")}, "m": {Length, rat("1000")},
	"in": {Length, rat("25.4")}, "ft": {Length, rat("304.8")}, "yd": {Length, rat("914.4")},
	"mm2": {Area, rat("1")}, "m2": {Area, rat("1000000")}, "ft2": {Area, rat("92903.04")}, "yd2": {Area, rat("836127.36")},
	"ml": {Volume, rat("1")}, "l": {Volume, rat("1000")}, "fl oz": {Volume, rat("29.5735295625")}, "gal": {Volume, rat("3785.411784")},
}

// unitNames are the units in the order a message lists them.
const unitNames = "each, mm, cm, m, in, ft, yd, m2, ft2, yd2, mL, L, fl oz, gal"

func unitOf(s string) (unit, bool) {
	u, ok := units[strings.ToLower(strings.Join(strings.Fields(s), " "))]
	return u, ok
}
