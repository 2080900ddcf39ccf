package geometry

import (
	"math"

	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

// BuiltIn lists the numbers of this package that are no default of a job, each
// with its source, its standing and the test that holds it.
func BuiltIn() []stock.Figure {
	const (
		niosh   = "NIOSH Pub. 94-110, revised lifting equation"
		hand    = "NIOSH Pub. 94-110, coupling notes"
		beams   = "bending of a beam and pull of a string under a load that grows with the radius"
		limits  = "TestLimitsOfChecks"
		lifting = "TestLiftLimitTerms"
	)
	n := stock.Numbers
	custom := func(of, what, value, test string) stock.Figure {
		return stock.Figure{Of: of, What: what, Value: value, Origin: stock.Custom(), Test: test}
	}
	limit := func(of, what string, l ...length) stock.Figure { return custom(of, what, stock.Lengths(l...), limits) }
	figure := func(of, what, value string, o stock.Origin, test string) stock.Figure {
		return stock.Figure{Of: of, What: what, Value: value, Origin: o, Test: test}
	}
	return []stock.Figure{
		limit("tight", "check: saw over the pipe's largest outside, at least", tight),
		custom("loosePercent", "check: hole over a pipe without quoted clearance hole, at most", n(loosePercent)+" % of its outside", limits),
		limit("coverGood", "check: coupling past the edge of the hole, good from", coverGood),
		limit("grommetSlack", "check: saw off the hole a grommet asks for, at most", grommetSlack),
		custom("fillGood fillBad", "check: share of a socket that a nipple fills, good from, stop under", n(fillGood, fillBad), "TestNippleShares"),
		custom("seatShallow seatDeep", "check: share of a stopper's taper in the hole, from, to", n(seatShallow, seatDeep), "TestStopperShares"),
		limit("web", "check: sound wall between cuts, good from", web),
		limit("besideHoop", "check: wall between a cut and a hoop, good from", besideHoop),
		limit("ledge", "check: foot left round the lattice, good from", ledge),
		limit("meshPast", "check: mesh disc over the lattice, good from", meshPast),
		custom("sagSpan", "check: sag of the lattice, at most", "1/"+n(sagSpan)+" of the span", limits),
		limit("handShort handLow", "check: slot too short, too low for a hand, under", handShort, handLow),
		figure("handLong handHigh handEdge", "check: slot's length, height, edge good for a hand, from",
			stock.Lengths(handLong, handHigh, handEdge), stock.Recalled(hand), limits),
		limit("crownBelow", "check: outlet's crown under the slots' sill, good from", crownBelow),
		limit("plenumRoom", "check: joint over the head, joint under the foot, good from", plenumRoom),
		limit("seatEnters", "check: foot into the base, good from", seatEnters),
		limit("plenumBad plenumGood", "check: plenum, stop under, good from", plenumBad, plenumGood),
		limit("clampSpare", "check: spare range of a band clamp, good from", clampSpare),
		limit("hangsOver", "check: pipe silo over the mesh, good from", hangsOver),
		limit("hangsFrom", "check: pipe silo from the far wall, good from", hangsFrom),
		limit("drapeBad drapeGood", "check: screen down the pipe, stop under, good from", drapeBad, drapeGood),
		limit("rimOver", "check: pipe silo's open end over its outlet's crown, good from", rimOver),

		figure("loadConstant", "lifting: load constant", measure.Mass(loadConstant).Both(measure.UnitMM), stock.Seen(niosh), lifting),
		figure("reachNear", "lifting: multiplier of the horizontal distance H in cm", n(reachNear)+"/H", stock.Seen(niosh), lifting),
		figure("handsOff handsBest", "lifting: multiplier of the height V in cm", "1 − "+n(handsOff)+"·|V − "+n(handsBest)+"|", stock.Seen(niosh), lifting),
		figure("travelFar travelGain", "lifting: multiplier of the travel D in cm", n(travelFar)+" + "+n(travelGain)+"/D", stock.Seen(niosh), lifting),
		figure("travelNear reachMost handsMost", "lifting: least D, most H, most V, cm", n(travelNear, reachMost, handsMost), stock.Recalled(niosh), lifting),
		figure("twistOff", "lifting: multiplier of the twist A in degrees", "1 − "+n(twistOff)+"·A", stock.Recalled(niosh), lifting),
		figure("reachBody", "lifting: hands to ankles past half the load's width", n(reachBody)+" cm", stock.Recalled(niosh), lifting),

		figure("sagBends sagPulls sagStrain", "sag of a bar: bending, pull, strain", n(sagBends, sagPulls, sagStrain),
			stock.Origin{Source: beams, Standing: stock.Derived}, "TestSagByIntegration"),
		figure("threadUnder gasketThick gripLong headLong", "bulkhead fitting not measured: thread under the hole, gasket, grip, head",
			stock.Lengths(threadUnder, gasketThick, gripLong, headLong), stock.Recalled("usual proportions of bulkhead fittings"), "TestBulkheadProportions"),
		figure("flangeWide betweenSockets nutOutside adapterNeck", "bulkhead fitting not measured: flange and locknut over the hole, times; between sockets; locknut outside; a male adapter's thread to its socket",
			n(flangeWide)+"; "+stock.Lengths(betweenSockets, nutOutside, adapterNeck), stock.Recalled("usual proportions of bulkhead fittings"), "TestBulkheadProportions"),
		figure("hexFlats", "locknut: a hexagon's flats over its corners", n(hexFlats), stock.Origin{Source: "√3/2", Standing: stock.Derived}, "TestBulkheadFit"),
		custom("flangeCovers gripSpare", "check: bulkhead's flange past the hole, thread to spare, good from", stock.Lengths(flangeCovers, gripSpare), "TestBulkheadLimits"),
		custom("gasketTakes gasketDrawn", "check: gap under a bulkhead's flange, gaskets, good to, stop over", n(gasketTakes, gasketDrawn), "TestBulkheadLimits"),
		figure("metricSocket", "metric solvent socket, deeper than half the pipe's outside by", stock.Lengths(metricSocket), stock.Recalled("ISO 727-1"), "TestMetricSocket"),
		custom("grommetFlange", "grommet's flange past its hole", stock.Lengths(grommetFlange), "TestFootprints"),
		custom("insidePipe", "short pipe into the pipe silo past its grommet", stock.Lengths(insidePipe), "TestHandRules"),
		custom("screwAtJoint", "ring's end screws from its ends", stock.Lengths(screwAtJoint), "TestHandRules"),
		custom("hoopWide", "share of a hoop's height over which it is widest", n(math.Round(hoopWide*1e3)/1e3), "TestMouth"),
		custom("tapeError", "what a tape read by hand may be off by", stock.Lengths(tapeError), "TestTapeError"),
		figure("pilotBit", "drill in a hole saw's arbor, on the templates", stock.Lengths(pilotBit), stock.Seen("hole saw size charts"), "TestHandRules"),
	}
}
