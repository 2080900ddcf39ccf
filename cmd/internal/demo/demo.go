// Package demo holds the job that silowright works on when it is given none:
// the nursery at Tidewrack Cove, which is invented, as are its drums, prices
// and suppliers.
package demo

import _ "embed"

// JobName and PricesName are the names the two files go by in messages.
const (
	JobName    = "demo/job.toml"
	PricesName = "demo/prices.csv"
)

// Job is the job file, TOML.
//
//go:embed job.toml
var Job []byte

// Prices is the price list, CSV.
//
//go:embed prices.csv
var Prices []byte
