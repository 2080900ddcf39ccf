// Package plan takes a job the whole way in memory: job file → solved silos →
// takeoff → priced bill. It reads files and writes none.
package plan

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"

	"silowright/bom"
	"silowright/bom/money"
	"silowright/cmd/internal/demo"
	"silowright/cmd/internal/job"
	"silowright/geometry"
)

// Plan is a job worked out.
type Plan struct {
	Job      geometry.Job
	Currency money.Currency
	Silos    []geometry.Silo
	Findings []geometry.Finding
	Batches  []bom.Batch
	Rates    bom.Rates
	Cuts     []bom.Cut
	Bill     bom.Bill
	Prices   *bom.PriceList
	Invented bool // the prices are the demo's
}

// Counts are the silos to cost in place of the job's own; nil keeps the job's.
type Counts struct{ Drum, Pipe *int }

// Load works out the job file at path.
func Load(path string) (*Plan, error) { return LoadFor(path, Counts{}) }

// LoadFor works out the job file at path for other counts.
func LoadFor(path string, c Counts) (*Plan, error) {
	f, err := job.Read(path)
	if err != nil {
		return nil, err
	}
	data, err := os.ReadFile(f.PricesPath)
	if err != nil {
		return nil, pricesError(f, err)
	}
	return build(f, f.PricesPath, data, c)
}

// Demo works out the embedded job.
func Demo() (*Plan, error) { return DemoFor(Counts{}) }

// DemoFor works out the embedded job for other counts.
func DemoFor(c Counts) (*Plan, error) {
	f, err := job.Parse(demo.JobName, demo.Job)
	if err != nil {
		return nil, err
	}
	p, err := build(f, demo.PricesName, demo.Prices, c)
	if err == nil {
		p.Invented = true
	}
	return p, err
}

func pricesError(f *job.File, err error) error {
	why := "cannot be read"
	switch {
	case errors.Is(err, fs.ErrNotExist):
		why = "no such file"
	case errors.Is(err, fs.ErrPermission):
		why = "may not be read"
	}
	return fmt.Errorf("%s: prices.file: %q: %s; hint: silowright start DIR writes a price list to begin with", f.Name, f.Prices, why)
}

func build(f *job.File, pricesName string, prices []byte, c Counts) (*Plan, error) {
	p := &Plan{Job: f.Job, Currency: money.Currency(f.Currency), Rates: bom.DefaultRates()}
	if c.Drum != nil {
		p.Job.DrumSilos = *c.Drum
	}
	if c.Pipe != nil {
		p.Job.PipeSilos = *c.Pipe
	}
	var err error
	if p.Silos, err = geometry.Solve(p.Job); err != nil {
		return nil, fmt.Errorf("%s: %w", f.Name, err)
	}
	for _, s := range p.Silos {
		p.Findings = append(p.Findings, s.Findings...)
	}
	if p.Prices, err = bom.ReadPrices(pricesName, bytes.NewReader(prices), p.Currency); err != nil {
		return nil, err
	}
	p.Batches = bom.Batches(p.Silos, p.Job.DrumSilos, p.Job.PipeSilos)
	p.Cuts = bom.CutList(p.Batches, p.Job.Units)
	needs := bom.Takeoff(p.Batches, p.Rates, p.Job.Units)
	p.Bill, err = bom.Price(needs, p.Prices, p.Currency, p.Job.DrumSilos, p.Job.PipeSilos)
	return p, err
}

// Tally says how many findings there are of each level.
func (p *Plan) Tally() string {
	n := map[geometry.Level]int{}
	for _, f := range p.Findings {
		n[f.Level]++
	}
	say := func(k int, one, many string) string {
		if k == 1 {
			return "1 " + one
		}
		return fmt.Sprintf("%d %s", k, many)
	}
	return strings.Join([]string{say(n[geometry.Stop], "stop", "stops"), say(n[geometry.Caution], "caution", "cautions"),
		say(n[geometry.OK], "check ok", "checks ok")}, ", ")
}
