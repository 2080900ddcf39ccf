package proof

// checked makes rows of one group: what, expected and how near, source,
// standing, test.
func checked(group string, rows [][5]string) []Row {
	out := make([]Row, len(rows))
	for i, r := range rows {
		out[i] = Row{Group: group, What: r[0], Value: r[1], Source: r[2], Standing: r[3], Test: r[4]}
	}
	return out
}

const (
	srcSP811  = "NIST Special Publication 811, appendix B"
	srcNIST44 = "NIST Handbook 44, appendix C"
	plane     = "plane geometry, worked by hand"
)

// partChecks are of units, stock parts and the solved silo.
func partChecks() []Row {
	return checked("Checked: units, parts, geometry", [][5]string{
		{"units of length, volume, mass, stress, power, flow and temperature", "LibreOffice's CONVERT, to 1e-12 (pound, psi and hp, which it rounds, to 3e-7)", "LibreOffice", run, "./geometry/measure TestUnitsByLibreOffice"},
		{"psi and horsepower made of pound, foot and gravity", "to 1e-9; g of the gonum library", "gonum, unit/constant", run, "./geometry/measure TestUnitsOfUnits"},
		{"inches, feet and fractions as read", "25.4 mm an inch, exact", "international inch, 1959; " + srcSP811, memory, "./geometry/measure TestParseLength"},
		{"lengths, volumes, masses, stresses in both units", "3.785412 L, 29.57353 mL, 0.45359237 kg, 6.894757 kPa", srcSP811, memory, "./geometry/measure TestBoth"},
		{"fractions of an inch as a tape is read", "the nearest division, reduced", "common practice, no source", practice, "./geometry/measure TestInch"},
		{"standard gravity of lifts and stresses", "9.80665 m/s², equal", "gonum, unit/constant", run, "./geometry/measure TestGravityOfGonum"},

		{"pressure pipe: outside, tolerance, wall, average inside", "every row as printed, to the thousandth", "ASTM D1785", seen, "./geometry/stock TestD1785AsPrinted"},
		{"pressure pipe: average inside against outside and wall", "outside − 2 × 1.06 × least wall, within .002 in", "ASTM D1785, walls 12 % over the least", memory, "./geometry/stock TestPressurePipeColumnsAgree"},
		{"a pipe of the tables, as the documentation shows it", "as printed", "ASTM D1785", seen, "./geometry/stock ExamplePipeOf"},
		{"pressure pipe: sizes read and looked up", "seven rows as printed", "ASTM D1785", seen, "./geometry/stock TestPressurePipe"},
		{"solvent sockets: sizes looked up", "as printed, to half the last place", "ASTM D2466, ASTM F789", seen, "./geometry/stock TestSockets"},
		{"solvent sockets and the 4 in sewer socket", "every row as printed", "ASTM D2466, ASTM F789", seen, "./geometry/stock TestD2466AsPrinted"},
		{"sewer pipe: outside, tolerance, walls", "every row as printed", "ASTM D3034; tolerances and the walls .180 and .360 from memory", memory, "./geometry/stock TestD3034AsPrinted"},
		{"sewer pipe: walls by the dimension ratio", "outside / 35 and / 26, to .0005 in", "ASTM F412, definition", worked, "./geometry/stock TestSewerPipe"},
		{"metric sewer and pressure pipe", "sizes and least walls as printed", "EN 1401-1, DIN 8062", seen, "./geometry/stock TestMetricPipe"},
		{"least outside and length of couplings", "to the hundredth of an inch", "ASTM D2466 and D1785, worked by hand", worked, "./geometry/stock TestCouplings"},
		{"band clamps", "ranges of seven sizes as a chart prints them", "SAE J1508", memory, "./geometry/stock TestClamps"},
		{"creep modulus, design stress and density of plastics", "psi as printed in MPa, to 0.05", "PE pipe handbook, chapter 3, table B.1.1; BS EN 1401-1:2009", seen, "./geometry/stock TestPlastics"},
		{"woven mesh: strand and open area", "strand to 1 µm, open area to 1 %", "mesh opening charts", worked, "./geometry/stock TestMeshes"},
		{"stoppers and the saws between top and bottom", "as charts print them", "size charts of stoppers and hole saws", seen, "./geometry/stock TestStoppersAndSaws"},
		{"stoppers: top and bottom of every number", "mm as printed", "size charts of tapered rubber stoppers", seen, "./geometry/stock TestStoppersAsPrinted"},
		{"holes for bulkhead fittings and for pipe to pass", "as charts print them; grommets from memory", "hole charts", memory, "./geometry/stock TestPipeHolesAsPrinted"},
		{"a cartridge of 10.1 fl oz", "298.7 mL ± 0.05", srcNIST44 + ": 231 in³ a gallon", worked, "./geometry/stock TestCartridge"},
		{"tapping screws: threads to the inch", "20, 18, 16, equal", "ASME B18.6.4, type AB", seen, "./geometry/stock TestScrews"},
		{"tapping screws: major, head, pilot hole", "as printed", "ASME B18.6.4, type AB; design guides for screws in plastics", seen, "./geometry/stock TestScrewsAsPrinted"},
		{"set and cure of PVC cement by size and warmth", "six rows as printed", "manual of a PVC pipe maker", seen, "./geometry/stock TestCementTimes"},
		{"lengths pipe is sold in, sheets, screws, cartridges", "as sold", "pipe trade catalogues; sheets, screws and cartridges common practice", practice, "./geometry/stock TestStockAsSold"},
		{"a cut-out that lifts well, the pilot bit", "1.5, 4.5, 2, 0.25 in; 1/4 and 1/16 in", "NIOSH Pub. 94-110, coupling notes, from memory; hole saw size charts", memory, "./geometry/stock TestRulesOfThumb"},

		{"22 figures of the trade: saws, stoppers, nipples, slots, outlet, screws, ring, pipe silo", "the level each gets", "common practice, no source", practice, "./geometry TestFiguresOfTheTrade"},
		{"limits of every check on the silo", "the limit printed, and a level on either side", "common practice, no source; hand from NIOSH Pub. 94-110, from memory", practice, "./geometry TestLimitsOfChecks"},
		{"nipple in its sockets", "2 in nipple fills 0.8607 in, to 0.005 mm", "ASTM D1785, ASTM D2466, worked by hand", worked, "./geometry TestNippleFill"},
		{"a sewer coupling", "4.450 in outside, 1.750 deep", "ASTM F789 and D3034", worked, "./geometry TestSewerCoupling"},
		{"a bulkhead fitting on a round wall", "gap 0.17820, stack 0.55320, cover 0.14249 in, by hand", "ASTM D2466 for its socket; plane geometry", worked, "./geometry TestBulkheadFit"},
		{"a bulkhead fitting that was not measured", "thread 2 15/16, flange 4 1/2 in and the rest", "usual proportions of bulkhead fittings", memory, "./geometry TestBulkheadProportions"},
		{"socket of a bulkhead fitting", "1.156 in for 2 in pipe: a nipple fills it or falls short", "ASTM D2466", two, "./geometry TestBulkheadFindings"},
		{"limits of a bulkhead fitting", "a level on either side of each", "common practice, no source", practice, "./geometry TestBulkheadLimits"},
		{"a metric socket", "31 mm deep for 50 mm pipe", "ISO 727-1", memory, "./geometry TestMetricSocket"},
		{"lifting limit", "H 40, V 20, D 60 cm: 9.09 kg ± 0.01", "NIOSH Pub. 94-110, multipliers", worked, "./geometry TestLiftLimit"},
		{"lifting limit, each multiplier by itself", "23 kg × the multiplier, to 1e-9", "NIOSH Pub. 94-110; twist and outermost reach from memory", memory, "./geometry TestLiftLimitTerms"},
		{"sag of the lattice", "a numeric integral of beam and string, within 0.2 %", "law of bending, numeric integral", worked, "./geometry TestSagByIntegration"},
		{"area of a lattice opening", "a numeric integral in polar coordinates, to 1e-7", "numeric integral", worked, "./geometry TestLatticeAreaAgainstIntegral"},
		{"the lattice that is common practice", "71.416 in² an opening, by hand", "common practice, no source; " + plane, practice, "./geometry TestLatticeOfCommonPractice"},
		{"chords from the datum", "R√2, 2R, R√2", "Euclid, Elements IV.6", worked, "./geometry TestChordFromDatum"},
		{"every chord of the marking tables", "distance of the points in the plane (Pythagoras)", plane, worked, "./geometry TestChordAgainstCoordinates"},
		{"heights, ring, mesh disc, seat, round wall of one drum", "by hand, to a thousandth of an inch", plane, worked, "./geometry TestStations"},
		{"ring 1 in wide", "too long by 5.294 in", "common practice, no source; by hand", practice, "./geometry TestRing"},
		{"foot into the base", "3.2898 in", plane, worked, "./geometry TestSeat"},
		{"no interference of foot and mouth anywhere", "point by point", "brute force", worked, "./geometry TestSinkAgainstBruteForce"},
		{"a saw's outline laid flat", "each point d/2 from the saw's axis", plane, worked, "./geometry TestOutlineRolledBack"},
		{"seed bay over the mesh", "a sum of thin slices; outlet's inside by ASTM D1785", "ASTM D1785; numeric sum", worked, "./geometry TestBedStandsOnTheMesh"},
		{"masses of body, base and ring", "cubic inches by hand, to 1e-5", "density of the PE pipe handbook; " + plane, worked, "./geometry TestMasses"},
		{"the resin's fillet", "5.7916 mL on 6 in sewer pipe, and a sum of thin rings", "Pappus and Guldin", worked, "./geometry TestResinBead"},
		{"open area of every template", "the solved silo's, by hand", plane, worked, "./geometry TestTemplateAreas"},
		{"turned, shifted, mirrored, stretched outlines", "area and length kept or multiplied", "theorems of plane geometry", worked, "./geometry/path TestTransformsOfAnyPath"},
		{"a circle of 285 mm as cubics of 45°", "off by 0.0012 mm at most", "the approximation's known error, 4.2e-6 of the radius", worked, "./geometry/path TestBeziersKeepTheRadius"},
		{"areas and lengths in closed form", "chains of short chords", "numeric sum", worked, "./geometry/path TestAreaAndLengthAgainstChords"},
	})
}
