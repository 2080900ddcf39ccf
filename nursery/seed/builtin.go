package seed

import "silowright/geometry/stock"

// BuiltIn lists the numbers of this package that are no default of a job and
// stand in no table, each with its source, its standing and the test that
// holds it.
func BuiltIn() []stock.Figure {
	n := stock.Numbers
	return []stock.Figure{
		{Of: "clamUpwelling", What: "check: clams suit upwelling from, shell", Value: stock.Lengths(clamUpwelling.Length()), Origin: seen(srcFAO), Test: "TestLimitsOfFindings"},
		{Of: "leastLeaveOn mostLeaveOn", What: "check: seed leaves for mesh, from, to", Value: stock.Lengths(leastLeaveOn.Length(), mostLeaveOn.Length()), Origin: seen(srcFAO), Test: "TestLimitsOfFindings"},
		{Of: "leastWater mostWater", What: "check: water of a barge nursery, from, to, L/min/kg", Value: n(float64(leastWater), float64(mostWater)), Origin: seen(srcFAO + ", §6.6.2"), Test: "TestLimitsOfFindings"},
		{Of: "bargeLoad", What: "check: load of a barge nursery, at most, kg/m²", Value: n(float64(bargeLoad)), Origin: seen(srcFAO + ", §6.6.2"), Test: "TestLimitsOfFindings"},
		{Of: "mostShare", What: "check: share of the water that seed clears, at most", Value: n(mostShare), Origin: stock.Custom(), Test: "TestLimitsOfFindings"},
		{Of: "farWeight", What: "check: table of weights off the published ones, times, at most", Value: n(farWeight), Origin: stock.Custom(), Test: "TestLimitsOfFindings"},
	}
}
