package main

import (
	"bytes"
	"strings"
	"testing"

	"silowright/bom"
	"silowright/cmd/internal/job"
	"silowright/geometry"
	"silowright/geometry/measure"
)

// The list that start writes is read as it stands, and empty; with the # off
// and prices filled in it prices every item of the job that start writes.
func TestBlankPrices(t *testing.T) {
	for _, u := range []measure.Unit{measure.UnitInch, measure.UnitMM} {
		f, err := job.Parse("job.toml", job.Template(u))
		if err != nil {
			t.Fatal(err)
		}
		text, err := blankPrices(f)
		if err != nil {
			t.Fatal(err)
		}
		list, err := bom.ReadPrices("prices.csv", bytes.NewReader(text), f.Listing)
		if err != nil {
			t.Fatal(err)
		}
		if len(list.Offers) != 0 {
			t.Errorf("%s: an item nobody priced has a price: %+v", u, list.Offers[0])
		}
		filled := strings.ReplaceAll(strings.ReplaceAll(string(text), "\n# ", "\n"), ",,,,\n", ",,2.50,,\n")
		filled = strings.NewReplacer("Take the", "# Take the", "Other sizes", "# Other sizes", "\"Mesh, screen", "\"# Mesh, screen", "Mesh, screen and", "# Mesh, screen and").Replace(filled)
		list, err = bom.ReadPrices("prices.csv", strings.NewReader(filled), f.Listing)
		if err != nil {
			t.Fatal(err)
		}
		silos, err := geometry.Solve(f.Job)
		if err != nil {
			t.Fatal(err)
		}
		needs := bom.Takeoff(bom.Batches(silos, 1, 1), bom.DefaultRates(), u)
		bill, err := bom.Buy(needs, list, nil, f.Terms, 1, 1)
		if err != nil {
			t.Fatal(err)
		}
		if !bill.Complete() || len(bill.Lines) < 20 {
			t.Errorf("%s: %d lines, without a price: %v", u, len(bill.Lines), bill.Missing)
		}
	}
}
