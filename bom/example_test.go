package bom_test

import (
	"fmt"
	"strings"

	"silowright/bom"
)

// A price list of a few rows (invented), and what it costs to buy from it.
func ExampleBuy() {
	list, err := bom.ReadPrices("prices.csv", strings.NewReader(`item,description,pack,unit,price,supplier
grommet-2,pipe-to-tank grommet,1,each,4.25,Gull Supply
grommet-2,box of ten,10,each,36.00,Gull Supply
`), bom.Listing{Currency: "USD"})
	if err != nil {
		fmt.Println(err)
		return
	}
	needs := []bom.Need{{Item: "grommet-2", Description: "pipe-to-tank grommet for 2 pipe", Category: bom.Fittings, Kind: bom.Each, Drum: 12}}
	bill, err := bom.Buy(needs, list, nil, bom.Terms{Currency: "USD"}, 12, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, b := range bill.Lines[0].Buys {
		fmt.Println(b.Packs, "×", b.Offer.Description)
	}
	fmt.Println(bill.Total, "in all,", bill.PerDrum, "a drum silo")
	// Output:
	// 2 × pipe-to-tank grommet
	// 1 × box of ten
	// USD 44.50 in all, USD 3.71 a drum silo
}
