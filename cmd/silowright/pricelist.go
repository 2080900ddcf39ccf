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
	rows := [][]string{{"item", "description", "pack", "unit", "width", "form", "from", "price", "supplier", "quoted"},
		{"# Mesh, screen and sheet have a width; form is \"by length\" for what is cut off a roll, from the least number of packs a price holds for."},
		{"# Take the # off a row and fill in pack, unit and price; quoted is a date such as 2031-02-28."},
		{"# Other sizes in the job have other item names: silowright cost names every item it finds no price for."}}
	for _, n := range needs {
		q := usualPack(n, f.Job.Units)
		rows = append(rows, []string{"# " + n.Item, n.Description, q.pack, q.unit, q.width, q.form, "", "", "", ""})
	}
	if err := w.WriteAll(rows); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// usual is how something is usually sold.
type usual struct{ pack, unit, width, form string }

// usualPack is a pack to begin with; common practice, no source. The builder
// writes what the shop really sells.
func usualPack(n bom.Need, u measure.Unit) usual {
	metric := u == measure.UnitMM
	switch {
	case n.Item == "plywood" && metric:
		return usual{"2440", "mm", "1220 mm", ""}
	case n.Item == "plywood":
		return usual{"8", "ft", "4 ft", ""}
	case n.Category == bom.Hose && n.Kind == bom.Length && metric:
		return usual{"1", "m", "", "by length"}
	case n.Category == bom.Hose && n.Kind == bom.Length:
		return usual{"1", "ft", "", "by length"}
	case n.Kind == bom.Length && metric:
		return usual{"3", "m", "", ""}
	case n.Kind == bom.Length:
		return usual{"10", "ft", "", ""}
	case n.Kind == bom.Area && metric:
		return usual{"1", "m", "1200 mm", "by length"}
	case n.Kind == bom.Area:
		return usual{"1", "yd", "48 in", "by length"}
	case n.Kind == bom.Volume:
		return usual{"300", "mL", "", ""}
	}
	return usual{"1", "each", "", ""}
}
