package stock

import (
	"strconv"
	"strings"

	"silowright/geometry/measure"
)

// Figure is a number built into the code that is a row of no table.
type Figure struct {
	// Of names the constants, or the functions that hold the number, blanks
	// between: "orificeCd".
	Of    string
	What  string // "sharp-edged orifice, discharge coefficient"
	Value string // with its unit; made from the constant, never typed again
	Origin
	Test string // the test of its own package that holds it
}

// Numbers writes numbers to all their digits: "0.95, 0.2".
func Numbers(xs ...float64) string {
	out := make([]string, len(xs))
	for i, x := range xs {
		out[i] = strconv.FormatFloat(x, 'g', -1, 64)
	}
	return strings.Join(out, ", ")
}

// Lengths writes lengths in both units, to a hundredth of a millimetre:
// "0.125 in (3.18 mm)".
func Lengths(ls ...measure.Length) string {
	out := make([]string, len(ls))
	for i, l := range ls {
		out[i] = measure.Number(l.Inches(), 4) + " in (" + measure.Number(l.MM(), 2) + " mm)"
	}
	return strings.Join(out, ", ")
}

// BuiltIn lists the numbers of this package that no table shows.
func BuiltIn() []Figure {
	bit, past, o := PilotBit()
	return []Figure{
		{"CementHumidFactor", "PVC cement above 60 % humidity, times as long", Numbers(CementHumidFactor), Seen("manual of a PVC pipe maker"), "TestCementTimes"},
		{"PilotBit", "pilot bit of a hole saw, diameter", Lengths(bit), o, "TestRulesOfThumb"},
		{"PilotBit", "pilot bit, past the saw's teeth", Lengths(past), o, "TestRulesOfThumb"},
	}
}
