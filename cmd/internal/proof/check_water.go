package proof

// waterChecks are of sea water, pipes, outlets, screens, beds and pumps.
func waterChecks() []Row {
	const (
		cengel   = "Çengel and Cimbala, Fluid Mechanics"
		idelchik = "Idelchik, Handbook of Hydraulic Resistance"
		course   = "university course in particle mechanics, questions as set"
	)
	return checked("Checked: water", [][5]string{
		{"density of sea water", "four check values as printed, three worked by hand, to 5e-6 kg/m³", "UNESCO Technical Papers in Marine Science 44, p. 19, check values", seen, "./nursery/sea TestPublished"},
		{"viscosity of sea water", "six values, to 5e-5 mPa·s", "Sharqawy, Lienhard and Zubair 2010, worked by hand", worked, "./nursery/sea TestPublished"},
		{"sea water, as the documentation shows it", "density as printed", "UNESCO Technical Papers in Marine Science 44", seen, "./nursery/sea ExampleAt"},
		{"viscosity of sea water: coefficients", "ten, to the last digit printed", "Sharqawy, Lienhard and Zubair 2010, equations 22 and 23", seen, "./nursery/sea TestSharqawyAsPrinted"},
		{"sea water at 15 °C", "1026.0210 kg/m³ ± 0.1, 1.220 mPa·s ± 0.001, 1670.9 Pa ± 0.5", "ITTC 7.5-02-01-03 (2011)", seen, "./nursery/sea TestPublished"},
		{"vapour pressure of fresh water at 300 K", "3536.6 Pa ± 1", "IAPWS-IF97, table 35", memory, "./nursery/sea TestPublished"},
		{"ten metres of sea water", "100.518 kPa, to 1e-6 Pa", "standard gravity, worked by hand", worked, "./nursery/sea TestHead"},
		{"standard gravity of the water", "9.80665 m/s², equal", "gonum, unit/constant", run, "./nursery/sea TestGravityOfGonum"},
		{"0 °C in kelvin", "273.15, to 1e-9", "LibreOffice's CONVERT", run, "./nursery/sea TestKelvinByLibreOffice"},
		{"a standard atmosphere", "101,325 Pa, to seven figures", "LibreOffice's CONVERT", run, "./nursery/manifold TestStandardAir"},

		{"friction factor", "0.017397 at Re 126,432; 0.031519 at Re 116,865", cengel + ", inputs of examples 8-3 and 8-8", worked, "./nursery/flow TestFrictionWorked"},
		{"friction factor everywhere", "within 3 % and 2 % of two explicit equations, its own equation to 1e-12", "Swamee and Jain 1976, Haaland 1983", memory, "./nursery/flow TestFrictionAgainstExplicit"},
		{"friction of slow flow", "32·μ·L·V/D², to 1e-9", "Hagen and Poiseuille, any textbook", memory, "./nursery/flow TestSlowFlow"},
		{"200 ft of 2 in pipe", "27.24 ft, 11.80 psi", cengel + ", inputs of example 8-3", worked, "./nursery/flow TestPipeExample83"},
		{"89 m of 50 mm cast iron with fittings", "source at 31.82 m", cengel + ", inputs of example 8-8", worked, "./nursery/flow TestPipeExample88"},
		{"two pipes side by side", "0.03001 m³/s, head 19.06 m", cengel + ", inputs of example 8-7", worked, "./nursery/flow TestPipeExample87"},
		{"friction of Schedule 40 plastic pipe, C = 150", "20 entries within 12 % and a digit and a half", "Illinois Administrative Code, title 77, part 906, appendix A", seen, "./nursery/flow TestIllinoisTable"},
		{"sudden steps of the bore", "K 1, 0.5, 0.5625, 0.375", cengel + ", table 8-4", memory, "./nursery/flow TestSteps"},
		{"losses of fittings", "K of eleven fittings as printed", "two engineering tables of loss coefficients", two, "./nursery/flow TestFittingsAsPublished"},
		{"roughness of plastic and rubber", "0.0015 and 0.01 mm", cengel + ", table 8-2", memory, "./nursery/flow TestRoughness"},
		{"a mitre bend", "1.1 velocity heads", cengel + ", table 8-4", memory, "./nursery/flow TestTurns"},

		{"round side outlet running part full", "three ways within 7 %", "Staus and von Sanden; Greve; critical depth", memory, "./nursery/flow TestRoundWeirs"},
		{"California pipe method", "d 0.34, a 0.25 ft: 0.049 ft³/s; brink depth 0.70 to 0.76 of the critical", "Vanleer 1922 (seen); Smith 1962 (from memory)", memory, "./nursery/flow TestCaliforniaPipe"},
		{"outlet against culverts", "inlet control within 8 %", "FHWA, HDS 5", memory, "./nursery/flow TestOutletAgainstCulverts"},
		{"outlet well under water", "2.906 and 3.906 L/s through 50 mm under 0.30 m", "handbooks of hydraulics, coefficients", memory, "./nursery/flow TestSubmerged"},
		{"outlet with a hose", "level by hand, within 2 %", "Haaland 1983, worked by hand", memory, "./nursery/flow TestHosedOutlet"},
		{"handle slots as weirs", "1.705 m³/s over 1 m at 1 m of head", cengel + ", chapter 13", memory, "./nursery/flow TestSlots"},
		{"flow through any opening", "a fine midpoint rule", "numeric integral", worked, "./nursery/flow TestSpillQuadrature"},
		{"screens", "K 1.65, 3.99, 6.35; 0.147, 0.097", idelchik + ", diagram 8-6 (from memory); Blevins 1984 (seen)", memory, "./nursery/flow TestScreenK"},
		{"screens at slow flow", "within a factor of 2.5", "Armour and Cannon 1968", memory, "./nursery/flow TestScreenSlow"},
		{"fine strands", "22/Re, to 1e-9", idelchik + ", diagram 8-6", memory, "./nursery/flow TestFineStrand"},
		{"the lattice as a perforated plate", "K of six open shares, within 3 %", idelchik + ", diagram 8-1", memory, "./nursery/flow TestLatticeK"},
		{"packed and fluidised bed", "375e3·V + 10.94e6·V² Pa/m; 16.04 mm/s", course, worked, "./nursery/flow TestBedWorked"},
		{"weight of a fluidised bed", "4,414.5 Pa", course, worked, "./nursery/flow TestBedWeight"},
		{"settling of a grain", "within 6 %; exponent within a third", "Schiller and Naumann 1933; Khan and Richardson 1989", memory, "./nursery/flow TestSettling"},
		{"settling of odd shapes", "16 speeds of four sphericities, worked apart, to 1e-8", "Haider and Levenspiel 1989, coefficients", memory, "./nursery/flow TestSettlingOfOddShapes"},
		{"drag of cube, tetrahedron and others at high speed", "5.31 − 4.88·φ, within 9 %", "Pettyjohn and Christiansen 1948", memory, "./nursery/flow TestDragOfSolids"},
		{"water of ten drum silos on one pump", "105 gpm, 397 L/min, 25.8 mm/s each", "floating-upweller guide, Cornell Cooperative Extension", worked, "./nursery/flow TestUpwellingInDrum"},
		{"body on its seat", "10 L of lift from 40 mm over 0.25 m²", "hydrostatics, worked by hand", worked, "./nursery/flow TestSeatByHand"},
		{"lift on the foot's shoulder", "by the water it keeps out", "Archimedes' law", worked, "./nursery/flow TestShoulder"},

		{"two branches off one pipe", "0.916 L/s = 0.416 + 0.500", cengel + ", inputs of example 8-9", worked, "./nursery/manifold TestBranching"},
		{"two pipes from one pump", "0.0300, 0.00415, 0.0259 m³/s", cengel + ", inputs of example 8-7", worked, "./nursery/manifold TestParallel"},
		{"flow by gravity", "31.82 m for 6 L/s", cengel + ", inputs of example 8-8", worked, "./nursery/manifold TestGravity"},
		{"suction head of a flooded pump", "8.914, 7.096, 4.760, 1.905 m", cengel + ", inputs of example 14-3", worked, "./nursery/manifold TestSuction"},
		{"affinity laws", "80 % speed: 0.8 Q, 0.64 H", cengel + ", section 14-3", memory, "./nursery/manifold TestAffinity"},
		{"power of a slowed pump", "0.512", cengel + ", section 14-3", memory, "./nursery/manifold TestSlowedPump"},
		{"a pump of 5 hp", "637, 382, 255 gpm at 6, 10, 15 m", "Q·H = ηP/(ρg), worked out", worked, "./nursery/manifold TestEstimate"},
		{"pipe with many outlets", "F = 1/(m+1) + 1/(2N) + √(m−1)/(6N²)", "Christiansen 1942, University of California Bulletin 670", memory, "./nursery/manifold TestMultipleOutlets"},
		{"ball valves by how far closed", "K 0.05, 5.5, 200", "two engineering tables of loss coefficients", two, "./nursery/manifold TestBallValve"},
		{"whole networks", "a general Newton's method with dense LU agrees", "gonum", run, "./nursery/manifold TestIndependentSolver"},
		{"mass and energy of any network", "to 1e-9", "conservation, reckoned anew", worked, "./nursery/manifold TestBalance"},
		{"power failure", "levels by hydrostatics", "hydrostatics, worked by hand", worked, "./nursery/manifold TestPowerFailure"},
		{"energy of a year", "1 kW all day: 8760 kWh", "worked by hand", worked, "./nursery/manifold TestYear"},

		{"the farm's way of the water by hand", "velocity heads of each fitting", cengel + ", table 8-4", memory, "./nursery TestSystemByHand"},
		{"losses taken are those shown", "equal", "two engineering tables of loss coefficients", two, "./nursery TestLossesAreTheTables"},
		{"silo as water sees it", "heights and bores by hand; outlet by ASTM D1785", "ASTM D1785, worked by hand", worked, "./nursery TestOfSilo"},
		{"ten silos share one pump", "105 gpm each, within 0.02", "floating-upweller guide, Cornell Cooperative Extension", worked, "./nursery TestTenSilosShareOnePump"},
		{"flow by what the seed asks", "50 L/min for 5 kg", "FAO Fisheries Technical Paper 471, §6.6.2", worked, "./nursery TestFlowBySeed"},
		{"recommended pipe sizes", "the least of all choices; limits common practice", "exhaustive search", practice, "./nursery TestSizesAreTheSmallest"},
		{"what is taken when nobody tells", "20 m, 1.2 openings, 150 mm, 0.98 and 0.9, 2 ft", "common practice, no source", practice, "./nursery TestCustom"},
	})
}
