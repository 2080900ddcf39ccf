package proof

// buyingChecks are of cutting, packing, ordering, money and work.
func buyingChecks() []Row {
	const (
		solvers = "GLPK (glpsol) and CBC"
		texts   = "operations textbooks, unit-time learning curve"
		trying  = "exhaustive search"
	)
	return checked("Checked: buying, money, work", [][5]string{
		{"cutting plans of random tasks", "the same least cost", solvers, run, "./bom/sticks TestAgainstGeneralSolvers"},
		{"cutting plans of tiny tasks", "the least of all plans there are", trying, worked, "./bom/sticks TestAgainstEveryPlan"},
		{"u120_00 of binpack1", "48 bins, proven", "OR-Library; Beasley 1990, Falkenauer 1996", memory, "./bom/sticks TestU120"},
		{"class t60 of bin packing", "20 bins each, by construction", "Falkenauer 1996", memory, "./bom/sticks TestTriplets"},
		{"class u120 of bin packing", "each proven", "Falkenauer 1996", memory, "./bom/sticks TestUniform"},
		{"sticks with kerf and trim", "Σ(l + k) ≤ L + k; rounded-up bound wrong at 132: 3 sticks", "worked by hand; two general solvers agree", worked, "./bom/sticks TestByHand"},
		{"orders over suppliers", "the same least cost", solvers, run, "./bom/basket TestAgainstSolvers"},
		{"orders of a few items", "the least of every choice", trying, worked, "./bom/basket TestAgainstEnumeration"},
		{"an order with shipping, free shipping, least order, tax", "its definition in rational numbers, to the cent", "definition, exact", worked, "./bom/basket TestOrderIsTheLeast"},
		{"packs and price tiers", "the same least cost", solvers, run, "./bom/cover TestAgainstSolvers"},
		{"packs of small needs", "the same counts", trying, worked, "./bom/cover TestAgainstEnumeration"},
		{"packs that fill any large need exactly", "no waste from (a − 1)(b − 1) on", "Sylvester 1884", memory, "./bom/cover TestLargeNeed"},
		{"ratios of whole numbers", "math/big's rationals, equal", "Go's math/big", run, "./bom/ratio TestCompareAgainstBig"},
		{"short runs of discs on a roll", "lengths in closed form, to 1e-9", "circles in a strip, worked out", worked, "./bom/rolls TestShortestKnown"},
		{"long runs of discs on a roll", "density of two rows proven; wider ones best found", "Füredi 1991; Groemer's inequality", memory, "./bom/rolls TestLongRuns"},
		{"discs on a roll against a square", "greatest least distance of n points", "Peikert, Würtz, Monagan, de Groot 1991", memory, "./bom/rolls TestAgainstSquare"},
		{"short runs of discs against a search", "never over 3 % shorter, never past the bound", "random search that knows no pattern", worked, "./bom/rolls TestAgainstSearch"},
		{"discs drawn on a roll", "cover n·π·d²/4 of poppler's picture", "poppler", run, "./bom/rolls TestCovered"},
		{"parts nested on a sheet", "six of 300 × 400 on 1000 × 1000 by hand", "worked by hand", worked, "./bom/nest TestRowsByHand"},
		{"rounding of shares and taxes", "half away from zero", "IEEE 754-2019, 4.3.1", memory, "./bom/money TestTimes"},
		{"minor units of currencies", "0, 2, 3 digits", "ISO 4217, list one", memory, "./bom/money TestCurrencies"},
		{"feet, yards, gallons, quarts, pints of price lists", "exact factors", srcNIST44, memory, "./bom TestUnits"},
		{"packs a quantity takes; beads a cartridge runs", "24.3 ft of 1/4 in bead from 10.1 fl oz", srcNIST44 + ", worked by hand", worked, "./bom TestPacks"},
		{"a bill by hand", "to the cent", "worked by hand", worked, "./bom TestBillByHand"},
		{"takeoff of 20 drum and 8 pipe silos", "each amount by hand", "worked by hand; rates common practice, no source", practice, "./bom TestTakeoff"},
		{"pressure and sewer pipe are told apart", "items by ASTM D1785's outsides", "ASTM D1785", seen, "./bom TestItemsAreToldApart"},
		{"CSV files", "forms 1, 4, 6, 7 of section 2", "RFC 4180", memory, "./bom TestTable"},
		{"cells a spreadsheet would run", "none begins with = + - @, tab, return", "OWASP, CSV Injection", memory, "./bom TestHarmless"},
		{"energy of a year in money", "19,474 kWh at 0.185: 3602.69", "worked by hand", worked, "./bom/build TestEnergy"},
		{"cost of one silo more", "by hand, to the cent", "worked by hand", worked, "./bom/build TestMarginal"},
		{"learning curve, unit factors", "90 %: 0.634 at 20 as printed; 0.7047 at 10, 80 %: 0.3812 worked out", texts, seen, "./bom/work TestFactor"},
		{"learning curve, a worked question", "60 %, T(20) 0.2 h: 0.12 and 0.072 h", texts, seen, "./bom/work TestFactorWorkedQuestion"},
		{"learning curve, sum of 20", "14.608 (printed 14.61)", texts + ", cumulative table", memory, "./bom/work TestReckonAddsUp"},
		{"sum of the harmonic series", "H(100) = 5.18737751763962", "mathematical tables; Euler's constant", worked, "./bom/work TestSumHarmonic"},
		{"cure of cement in the day plan", "1 h, 2 h, 6 h by size", "manual of a PVC pipe maker", seen, "./bom/work TestCementCure"},
		{"hours of the first silo", "each operation by pencil", "worked by hand; rates common practice, no source", practice, "./bom/work TestReckonFirstSiloByPencil"},
		{"day plans of tiny shops", "the least of all orders of work", trying, worked, "./bom/work TestPlanIsTheLeastOfAllOrders"},
		{"the bill's total as a spreadsheet", "recomputed without stored values, to the cent", "LibreOffice", run, "./cmd/internal/workbook TestLibreOffice"},
		{"the workbook's file", "a zip archive without times, read back", "ECMA-376; excelize", run, "./cmd/internal/workbook TestSameBytes"},
		{"text in the workbook", "no cell is a formula, also once saved as CSV", "excelize; OWASP, CSV Injection", run, "./cmd/internal/workbook TestNothingRuns"},
	})
}
