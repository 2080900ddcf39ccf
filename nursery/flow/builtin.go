package flow

import "silowright/geometry/stock"

// BuiltIn lists the numbers of this package that LossTable does not show, each
// with its source, its standing and the test that holds it.
func BuiltIn() []stock.Figure {
	const (
		cengel   = "Çengel and Cimbala, Fluid Mechanics"
		idelchik = "Idelchik, Handbook of Hydraulic Resistance"
		haider   = "Haider and Levenspiel 1989"
	)
	n := stock.Numbers
	seen := func(of, what, value, source, test string) stock.Figure {
		return stock.Figure{Of: of, What: what, Value: value, Origin: stock.Seen(source), Test: test}
	}
	recalled := func(of, what, value, source, test string) stock.Figure {
		return stock.Figure{Of: of, What: what, Value: value, Origin: stock.Recalled(source), Test: test}
	}
	return []stock.Figure{
		recalled("laminarFactor", "friction of slow flow, f·Re", n(laminarFactor), "Hagen and Poiseuille", "TestSlowFlow"),
		recalled("colebrookRough colebrookSmooth", "Colebrook's equation: under the roughness, over Re·√f", n(colebrookRough, colebrookSmooth), "Colebrook 1939", "TestFrictionWorked"),
		{Of: "laminarEnd turbulentStart transition", What: "Re where flow begins to turn turbulent, and where it is", Value: n(laminarEnd, turbulentStart), Origin: stock.Custom(), Test: "TestFrictionContinuous"},
		recalled("PlasticRoughness HoseRoughness", "roughness of plastic pipe, of hose", stock.Lengths(PlasticRoughness, HoseRoughness), cengel+", table 8-2", "TestRoughness"),
		{Of: "sharpEntrance", What: "sharp entrance, and the step to a narrower bore, K", Value: n(sharpEntrance), Origin: stock.Origin{Source: srcTables, Standing: stock.Two}, Test: "TestSteps"},
		recalled("mitreK", "square mitre bend, K", n(mitreK), cengel+", table 8-4", "TestTurns"),
		recalled("orificeCd", "sharp-edged orifice, discharge coefficient", n(orificeCd), cengel, "TestSubmerged"),
		recalled("tubeCd", "short tube that runs full, discharge coefficient", n(tubeCd), "handbooks of hydraulics", "TestSubmerged"),
		{Of: "crestCd", What: "weir with critical depth on its crest, discharge coefficient 1/√3", Value: n(crestCd),
			Origin: stock.Origin{Source: cengel + ", chapter 13", Standing: stock.Derived}, Test: "TestSlots"},
		recalled("stausBase stausShallow stausDeep", "round weir: a + D/(b·H) + c·H/D", n(stausBase, stausShallow, stausDeep), "Staus and von Sanden", "TestRoundWeirs"),
		recalled("greveFactor greveBore greveHead", "round weir: a·D^b·H^c, SI", n(greveFactor, greveBore, greveHead), "Greve", "TestRoundWeirs"),
		recalled("plateEdge", "perforated plate: factor of √(1 − α)", n(plateEdge), idelchik+", diagram 8-1", "TestLatticeK"),
		recalled("wovenOnce", "woven wire, K = a·(1 − α) + (1/α − 1)²", n(wovenOnce), idelchik+", diagram 8-6", "TestScreenK"),
		recalled("fineStrand", "woven wire at slow flow, K·Re on the strand", n(fineStrand), idelchik+", diagram 8-6", "TestFineStrand"),
		seen("blevinsOnce blevinsTwice", "screen of round bars, K = a·(1 − α) + b·(1 − α)²", n(blevinsOnce, blevinsTwice), "Blevins 1984", "TestScreenK"),
		seen("sparse", "open share from which that holds", n(sparse), "Blevins 1984", "TestScreenK"),
		{Of: "blendFrom", What: "open share from which the two relations for screens are blended", Value: n(blendFrom), Origin: stock.Custom(), Test: "TestScreenK"},
		recalled("ergunViscous ergunInertial", "packed bed: viscous and inertial factor", n(ergunViscous, ergunInertial), "Ergun 1952", "TestBedWorked"),
		recalled("wenYuBase wenYuSlope", "fluidising, Re = √(a² + b·Ar) − a", n(wenYuBase, wenYuSlope), "Wen and Yu 1966", "TestBedWorked"),
		recalled("haiderA terminal", "drag of a grain: ln A by powers of the sphericity", n(haiderA[:]...), haider, "TestSettlingOfOddShapes"),
		recalled("haiderB", "drag of a grain: B by powers of the sphericity", n(haiderB[:]...), haider, "TestSettlingOfOddShapes"),
		recalled("haiderC", "drag of a grain: ln C by powers of the sphericity", n(haiderC[:]...), haider, "TestSettlingOfOddShapes"),
		recalled("haiderD", "drag of a grain: ln D by powers of the sphericity", n(haiderD[:]...), haider, "TestSettlingOfOddShapes"),
		{Of: "thinnest", What: "share of water past which a bed counts as washed out", Value: n(thinnest), Origin: stock.Custom(), Test: "TestThinnestBed"},
	}
}
