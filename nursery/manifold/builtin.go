package manifold

import "silowright/geometry/stock"

// BuiltIn lists the numbers of this package, each with its source, its
// standing and the test that holds it.
func BuiltIn() []stock.Figure {
	n := stock.Numbers
	return []stock.Figure{
		{Of: "ballOpen ballThird ballTwoThirds", What: "ball valve open, one third closed, two thirds closed, K", Value: n(ballOpen, ballThird, ballTwoThirds),
			Origin: stock.Origin{Source: "two engineering tables of loss coefficients", Standing: stock.Two}, Test: "TestBallValve"},
		{Of: "standardAir", What: "standard atmosphere, Pa", Value: n(standardAir), Origin: stock.Seen("10th CGPM, 1954, as LibreOffice converts it"), Test: "TestStandardAir"},
		{Of: "siphonMost", What: "height over its level to which a siphon is taken to run", Value: stock.Lengths(siphonMost), Origin: stock.Custom(), Test: "TestPowerFailure"},
		{Of: "laminarTo", What: "Re up to which friction is that of slow flow", Value: n(laminarTo), Origin: stock.Custom(), Test: "TestLossIsFlows"},
	}
}
