package nursery

import (
	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

// BuiltIn lists the numbers of this package that are no default of a job, each
// with its source, its standing and the test that holds it.
func BuiltIn() []stock.Figure {
	n := stock.Numbers
	custom := func(of, what, value, test string) stock.Figure {
		return stock.Figure{Of: of, What: what, Value: value, Origin: stock.Custom(), Test: test}
	}
	loss := func(of, what, value string, o stock.Origin) stock.Figure {
		return stock.Figure{Of: of, What: what, Value: value, Origin: o, Test: "TestLossesAreTheTables"}
	}
	two := stock.Origin{Source: "two engineering tables of loss coefficients", Standing: stock.Two}
	return []stock.Figure{
		loss("elbow teeBranch teeRun", "loss taken: elbow, tee's branch, tee's run, K", n(elbow, teeBranch, teeRun), two),
		loss("flatFace reachesIn", "loss taken: entrance with a flat face, with a pipe reaching in, K", n(flatFace, reachesIn), two),
		loss("swingCheck perCoupling", "loss taken: check valve, coupling, K", n(swingCheck, perCoupling), stock.Recalled("Çengel and Cimbala, Fluid Mechanics, table 8-4")),
		loss("hingedFoot poppetFoot", "loss taken: foot valve hinged, poppet, K", n(hingedFoot, poppetFoot), stock.Recalled("75 and 420 times the fully turbulent friction factor of steel pipe")),
		{Of: "leastWater", What: "water for a kilogram of seed when nobody told, L/min/kg", Value: n(float64(leastWater)),
			Origin: stock.Seen("FAO Fisheries Technical Paper 471, §6.6.2"), Test: "TestFlowBySeed"},
		custom("guessShutOff", "head at no flow of a pump of which only the power is told", guessShutOff.BothLong(measure.UnitMM), "TestCustom"),
		custom("leastMargin", "check: suction head over what the pump requires, at least", leastMargin.BothLong(measure.UnitMM), "TestCustom"),
		custom("overOpening", "seed's size when none is told, openings of the mesh", n(overOpening), "TestCustom"),
		custom("evenShare flowShare", "share of the widest pipes' evenness and flow that narrower ones must give", n(evenShare, flowShare), "TestCustom"),
		custom("standApart", "tee to tee when not told, past the widest drum", stock.Lengths(standApart), "TestCustom"),
	}
}
