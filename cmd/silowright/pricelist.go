package main

import (
	"bytes"
	"encoding/csv"

	"silowright/bom"
	"silowright/cmd/internal/job"
	"silowright/geometry"
	"silowright/geometry/measure"
)

// blankPrices is a price list to fill in for a job: every item of its takeoff
// in a usual pack, without a price. Each row is a comment until the builder
// takes the # off, so that an item nobody priced stays without a price.
func blankPrices(f *job.File) ([]byte, error) {
	silos, err := geometry.Solve(f.Job)
	if err != nil {
		return nil, err
	}
	needs := bom.Takeoff(bom.Batches(silos, f.Job.DrumSilos, f.Job.PipeSilos), f.Rates, f.Job.Units, f.Runs...)
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	rows := [][]string{{"item", "description", "pack", "unit", "price", "supplier", "quoted"},
		{"# Take the # off a row and fill in pack, unit and price; quoted is a date such as 2031-02-28."},
		{"# Other sizes in the job have other item names: silowright cost names every item it finds no price for."}}
	for _, n := range needs {
		pack, unit := usualPack(n, f.Job.Units)
		rows = append(rows, []string{"# " + n.Item, n.Description, pack, unit, "", "", ""})
	}
	if err := w.WriteAll(rows); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// usualPack is a pack to begin with; common practice, no source. The builder
// writes what the shop really sells.
func usualPack(n bom.Need, u measure.Unit) (pack, unit string) {
	metric := u == measure.UnitMM
	switch {
	case n.Kind == bom.Length && metric:
		return "3", "m"
	case n.Kind == bom.Length:
		return "10", "ft"
	case n.Kind == bom.Area && metric:
		return "1", "m2"
	case n.Kind == bom.Area:
		return "10", "ft2"
	case n.Kind == bom.Volume:
		return "300", "mL"
	}
	return "1", "each"
}
