package proof

// seedChecks are of seed: what it weighs, how it grows, what it needs, and how
// it is counted.
func seedChecks() []Row {
	const fao = "FAO Fisheries Technical Paper 471"
	return checked("Checked: seed", [][5]string{
		{"barge nursery of 32 containers", "over 1,200 and 38,400 L/min; 20 mm/s", fao + ", §6.6.2", seen, "./nursery/seed TestBargeNursery"},
		{"closed upweller", "600 g a unit, 200 g/m³", fao + ", fig. 94", worked, "./nursery/seed TestClosedUpweller"},
		{"oyster spat of 1 mm", "0.30 kg a million; clams and scallops 30 % lighter", fao + ", §6.1", seen, "./nursery/seed TestSpatWeight"},
		{"oysters on a 7 mm sieve", "0.15 to 0.25 g", "hatchery handling notes", seen, "./nursery/seed TestOystersOnSevenMillimetres"},
		{"oysters in summer and winter", "83.33 and 250 L/min/m²; 8.43 % a day", "Bacher & Baud 1992, abstract", worked, "./nursery/seed TestOystersInSummerAndWinter"},
		{"growth of hard clams and oysters", "0.75 and 0.45 mm a week; 5 to 8 mm in 6 to 12 weeks", "Pfeiffer & Rusch 2001; University of Florida", worked, "./nursery/seed TestPublishedGrowth"},
		{"ten drum silos on one pump", "397 L/min, 25.8 mm/s", "floating-upweller guide, Cornell Cooperative Extension", worked, "./nursery/seed TestTenDrumsOnOnePump"},
		{"clams in trays", "3,750 a tray", "a municipal land-based unit, field note", worked, "./nursery/seed TestClamsInTrays"},
		{"clearance of mussels and clams", "0.0004·L² L/h; 7 to 8 L/h", "Helgoland Marine Research, doi 10.1007/s10152-014-0419-y, table 3; SRAC 4301", seen, "./nursery/seed TestClearance"},
		{"tables of growth, weight and clearance", "what the publications say, worked out", "those above", worked, "./nursery/seed TestTables"},
		{"limits of the findings on seed", "0.5 mm; 7 and 12 mm; 10 and 20 L/min/kg; 120 kg/m²", fao + "; shares common practice", practice, "./nursery/seed TestLimitsOfFindings"},
		{"largest opening that holds seed", "1 mm seed on 1 mm mesh", "field note", seen, "./nursery/seed TestLargestOpening"},
		{"an oval seed through an opening", "none passes that is said to be held", "brute force over the slants", worked, "./nursery/seed TestOvalThroughOpening"},
		{"silos week by week", "a lot worked by hand", "worked by hand", worked, "./nursery/seed TestWeeksByHand"},
		{"Student's t", "two-sided 95 and 99 % points, to the last digit", "NIST/SEMATECH e-Handbook, 1.3.6.7.2", memory, "./nursery/seed TestStudentTable"},
		{"quantiles of t, chi-square and Poisson", "gonum's distributions agree", "gonum", run, "./nursery/seed TestQuantilesAgainstGonum"},
		{"limits of a Poisson mean", "exact 95 % limits", "Garwood 1936", memory, "./nursery/seed TestPoissonLimits"},
		{"one sample of 50 seed", "37.11 to 65.92", "Garwood 1936", memory, "./nursery/seed TestOneSample"},
		{"five samples by hand", "standard error 0.30332, t 2.776", "worked by hand", worked, "./nursery/seed TestCountedByVolume"},
		{"how often the interval holds the mean", "about 95 of 100 simulated batches", "simulation", worked, "./nursery/seed TestIntervalHoldsTheMean"},
		{"amounts as typed", "gallon, fluid ounce, pound, ounce", srcNIST44, memory, "./nursery/seed TestParseAmount"},
	})
}
