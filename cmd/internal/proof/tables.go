package proof

import (
	"strings"

	"silowright/geometry/stock"
	"silowright/nursery/flow"
	"silowright/nursery/seed"
)

// held says of a table which declarations its rows are read from, and which
// test holds them.
func held() map[string]struct{ of, test string } {
	return map[string]struct{ of, test string }{
		"pressure-pipe":        {"geometry/stock.pressureRows", "./geometry/stock TestD1785AsPrinted"},
		"out-of-round":         {"geometry/stock.OutOfRounds", "./geometry/stock TestD1785AsPrinted"},
		"sewer-pipe":           {"geometry/stock.sewerRows", "./geometry/stock TestD3034AsPrinted"},
		"metric-sewer-pipe":    {"geometry/stock.metricSewerRows", "./geometry/stock TestMetricAsPrinted"},
		"metric-pressure-pipe": {"geometry/stock.metricPressureRows geometry/stock.MetricOutsides", "./geometry/stock TestMetricAsPrinted"},
		"sockets":              {"geometry/stock.socketRows geometry/stock.SewerSocketOf", "./geometry/stock TestD2466AsPrinted"},
		"couplings":            {"geometry/stock.Couplings", "./geometry/stock TestCouplings"},
		"stock-lengths":        {"geometry/stock.StockLengths", "./geometry/stock TestStockAsSold"},
		"hole-saws":            {"geometry/stock.holeSawsSeen geometry/stock.holeSawsRemembered", "./geometry/stock TestStoppersAndSaws"},
		"pipe-holes":           {"geometry/stock.holeRows", "./geometry/stock TestPipeHolesAsPrinted"},
		"stoppers":             {"geometry/stock.stopperRows geometry/stock.Stoppers", "./geometry/stock TestStoppersAsPrinted"},
		"clamps":               {"geometry/stock.Clamps", "./geometry/stock TestClamps"},
		"screws":               {"geometry/stock.Screws", "./geometry/stock TestScrewsAsPrinted"},
		"screw-lengths":        {"geometry/stock.ScrewLengths", "./geometry/stock TestStockAsSold"},
		"screw-holes":          {"geometry/stock.ScrewRule", "./geometry/stock TestScrewsAsPrinted"},
		"meshes":               {"geometry/stock.meshOpenings geometry/stock.Meshes", "./geometry/stock TestMeshes"},
		"cartridges":           {"geometry/stock.Cartridges", "./geometry/stock TestStockAsSold"},
		"cement":               {"geometry/stock.CementTimes", "./geometry/stock TestCementTimes"},
		"plastics": {"geometry/stock.creepRows geometry/stock.PEShortModulus geometry/stock.PEDesignStress geometry/stock.PEDensity geometry/stock.peDensityMin " +
			"geometry/stock.peDensityMax geometry/stock.PVCModulus geometry/stock.PVCLongModulus geometry/stock.PVCDensity", "./geometry/stock TestPlastics"},
		"sheets":         {"geometry/stock.Sheets", "./geometry/stock TestStockAsSold"},
		"hand-hold":      {"geometry/stock.HandHoldRule", "./geometry/stock TestRulesOfThumb"},
		"fitting-losses": {"nursery/flow.fittings", "./nursery/flow TestFittingsAsPublished"},
		"growth":         {"nursery/seed.GrowthFigures", "./nursery/seed TestPublishedGrowth"},
		"seed-weight":    {"nursery/seed.spatAtOneMM nursery/seed.lighterShare nursery/seed.sieveAt nursery/seed.sieveLeast nursery/seed.sieveMost", "./nursery/seed TestTables"},
		"clearance":      {"nursery/seed.musselLeast nursery/seed.musselMost nursery/seed.musselFactor nursery/seed.adultClearance", "./nursery/seed TestClearance"},
	}
}

// tables are the rows of every table a reader is shown.
func tables() []Row {
	var out []Row
	held := held()
	for _, t := range append(append(stock.Tables(), flow.LossTable()), seed.Tables()...) {
		last := len(t.Columns) - 2
		for _, r := range t.Rows {
			var cells []string
			for i, c := range r[1:last] {
				cells = append(cells, t.Columns[i+1]+": "+c)
			}
			row := Row{Group: t.Title, What: t.Name + " " + r[0], Value: strings.Join(cells, "; "),
				Source: r[last], Standing: shorter.Replace(r[last+1]), Test: held[t.Name].test, of: strings.Fields(held[t.Name].of)}
			if last == 1 {
				row.What, row.Value = t.Name, r[0]
			}
			out = append(out, row)
		}
	}
	return out
}
