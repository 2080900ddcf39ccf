// Package plan takes a job the whole way in memory: job file → solved silos →
// takeoff → priced bill. It reads files and writes none.
package plan

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"sync"
	"syscall"
	"time"

	"silowright/bom"
	"silowright/bom/build"
	"silowright/bom/money"
	"silowright/bom/work"
	"silowright/cmd/internal/demo"
	"silowright/cmd/internal/input"
	"silowright/cmd/internal/job"
	"silowright/geometry"
	"silowright/nursery"
	"silowright/nursery/seed"
)

// Plan is a job worked out.
type Plan struct {
	Job      geometry.Job
	Currency money.Currency
	Silos    []geometry.Silo
	Findings []geometry.Finding
	Cuts     []bom.Cut
	Site     build.Site // what costs follow from
	Cost     build.Cost // of the counts asked for
	// Water is water and seed of the farm; nil when no drum silo is built, or when
	// the finding water.reckoned says why not.
	Water *nursery.Study
	// Energy is what the pump's energy costs a year; nil when no price is told,
	// or no pump, or it is not known what the pump draws.
	Energy   *money.Money
	Prices   *bom.PriceList
	Invented bool // the prices are the demo's
}

// Counts are the silos to cost, and the day to age quotations by, in place of
// the job's own; nil and "" keep the job's.
type Counts struct {
	Drum, Pipe *int
	Date       string
	Dry        bool // leave water and seed out: costs do not follow from them
}

// Check refuses a date that is none.
func (c Counts) Check() error {
	if _, err := time.Parse(time.DateOnly, c.Date); c.Date != "" && err != nil {
		return fmt.Errorf("date: %.40q is not a date; hint: year-month-day, as in 2031-02-28", c.Date)
	}
	return nil
}

// Load works out the job file at path.
func Load(path string) (*Plan, error) { return LoadFor(path, Counts{}) }

// LoadFor works out the job file at path for other counts.
func LoadFor(path string, c Counts) (*Plan, error) {
	f, err := job.Read(path)
	if err != nil {
		return nil, err
	}
	data, err := input.Whole(f.PricesPath, bom.MaxPrices)
	if err != nil {
		return nil, pricesError(f, err)
	}
	return workOut(f, f.PricesPath, data, c)
}

// Demo works out the embedded job.
func Demo() (*Plan, error) { return DemoFor(Counts{}) }

// DemoFor works out the embedded job for other counts.
func DemoFor(c Counts) (*Plan, error) {
	f, err := job.Parse(demo.JobName, demo.Job)
	if err != nil {
		return nil, err
	}
	p, err := workOut(f, demo.PricesName, demo.Prices, c)
	if err == nil {
		p.Invented = true
	}
	return p, err
}

func pricesError(f *job.File, err error) error {
	hint := "silowright start DIR writes a price list to begin with"
	why := "cannot be read: " + err.Error()
	switch {
	case errors.Is(err, fs.ErrNotExist):
		why = "no such file"
	case errors.Is(err, fs.ErrPermission):
		why, hint = "may not be read", "look at its permissions"
	case errors.Is(err, input.ErrDirectory):
		why, hint = err.Error(), "name the price list in it"
	case errors.Is(err, input.ErrChanged):
		why, hint = err.Error(), "let the program that writes it finish, and run this again"
	case errors.Is(err, syscall.EMFILE):
		hint = "close some programs, and run this again"
	}
	return fmt.Errorf("%s: prices.file: %q: %s; hint: %s", f.Name, f.Prices, why, hint)
}

func workOut(f *job.File, pricesName string, prices []byte, c Counts) (*Plan, error) {
	p := &Plan{Job: f.Job, Currency: money.Currency(f.Currency)}
	if c.Drum != nil {
		p.Job.DrumSilos = *c.Drum
	}
	if c.Pipe != nil {
		p.Job.PipeSilos = *c.Pipe
	}
	if c.Date != "" {
		f.Terms.Date = c.Date
	}
	var err error
	if p.Silos, err = geometry.Solve(p.Job); err != nil {
		return nil, fmt.Errorf("%s: %w", f.Name, err)
	}
	if f.FromSeed.Drum && c.Drum == nil || f.FromSeed.Pipe && c.Pipe == nil {
		if err = p.fromSeed(f, c); err != nil {
			return nil, fmt.Errorf("%s: %w", f.Name, err)
		}
	}
	for _, s := range p.Silos {
		p.Findings = append(p.Findings, s.Findings...)
	}
	if p.Prices, err = bom.ReadPrices(pricesName, bytes.NewReader(prices), f.Listing); err != nil {
		return nil, err
	}
	p.Site = build.Site{Silos: p.Silos, Units: p.Job.Units, Prices: p.Prices, Terms: f.Terms, Held: f.Held, Runs: f.Runs,
		Rates: f.Rates, Work: f.Work, Wage: f.Wage, Contingency: f.Contingency}
	// Costs and water do not depend on one another.
	var costing sync.WaitGroup
	costing.Go(func() { p.Cost, err = p.Site.Cost(p.Job.DrumSilos, p.Job.PipeSilos) })
	var dry error
	if p.Job.DrumSilos > 0 && !c.Dry {
		dry = p.water(f)
	}
	costing.Wait()
	if err = cmp.Or(err, dry); err != nil {
		return nil, fmt.Errorf("%s: %w", f.Name, err)
	}
	p.Cuts = bom.CutList(p.Cost.Batches, p.Job.Units, f.Runs...)
	return p, nil
}

// water works water and seed out. What cannot be reckoned with, such as a silo
// whose foot stands on the head, or seed that outgrows its table of weights, is
// a caution: the rest of the pack holds.
func (p *Plan) water(f *job.File) error {
	w, err := nursery.Solve(countsOf(bom.Batches(p.Silos, p.Job.DrumSilos, p.Job.PipeSilos)), f.Farm)
	if err != nil {
		p.Findings = append(p.Findings, geometry.Finding{ID: "water.reckoned", Level: geometry.Caution, Key: keyOf(err),
			Says: "water and seed are not reckoned for these silos: " + err.Error(), Basis: geometry.Basis{Kind: geometry.Worked}})
		return nil
	}
	p.Water = &w
	p.Findings = append(p.Findings, w.Findings(p.Job.Units)...)
	if w.Pumping == nil || w.Pumping.Result.Pump.Input == 0 || f.Energy == nil {
		return nil
	}
	cost, err := build.Energy(w.Pumping.KWhAYear, f.Energy, p.Currency)
	p.Energy = &cost
	return err
}

// keyOf is the key of the job file that an error of the nursery begins with;
// water.flow when it begins with none, as when a part of a silo is at fault.
func keyOf(err error) string {
	key, _, _ := strings.Cut(err.Error(), ": ")
	seeded := strings.HasPrefix(key, "seed.") && slices.ContainsFunc(seed.Lists(), func(l seed.List) bool { return key == "seed."+l.Name })
	if seeded || key == "drum_silos" || slices.ContainsFunc(nursery.Keys(), func(k nursery.Key) bool { return key == k.At() }) {
		return key
	}
	return "water.flow"
}

// countsOf hands the silos built to the nursery.
func countsOf(batches []bom.Batch) []nursery.Count {
	var out []nursery.Count
	for i := range batches {
		b := &batches[i]
		out = append(out, nursery.Count{Silo: &b.Silo, Drum: b.Drum, Pipe: b.Pipe})
	}
	return out
}

// mostTries bounds how often the seed plan is asked again: more silos with pipe
// silos hung in them take less water each, and so more are needed.
const mostTries = 8

// fromSeed takes the counts that the job leaves to the seed plan: as many silos
// as its peak needs, on the job's own pipes but without its pump. The kinds of
// drum share them as they share a build.
func (p *Plan) fromSeed(f *job.File, c Counts) error {
	farm := f.Farm
	farm.Pump = nursery.DefaultFarm().Pump
	drum, pipe := f.FromSeed.Drum && c.Drum == nil, f.FromSeed.Pipe && c.Pipe == nil
	key := "drum_silos"
	if !drum {
		key = "pipe_silos"
	}
	for range mostTries {
		w, err := nursery.Solve(countsOf(bom.Batches(p.Silos, max(1, p.Job.DrumSilos), p.Job.PipeSilos)), farm)
		if err != nil {
			return fmt.Errorf("%s: the seed plan does not tell how many: %w", key, err)
		}
		peak, enough := w.Seed.Need.Peak, true
		if drum && peak.Drum > p.Job.DrumSilos {
			p.Job.DrumSilos, enough = peak.Drum, false
		}
		if pipe && peak.Pipe > p.Job.PipeSilos {
			p.Job.PipeSilos, enough = peak.Pipe, false
		}
		if enough {
			break
		}
	}
	if len(p.Job.Kinds) == 1 {
		p.Job.Kinds[0].Drum.Count = p.Job.DrumSilos
	}
	var err error
	p.Silos, err = geometry.Solve(p.Job)
	return err
}

// Days lays the work out in days.
func (p *Plan) Days() (work.DayPlan, error) { return work.Plan(p.Cost.Batches, p.Site.Work) }

// TotalText is what the build costs for a reader: "incomplete: 3 items without
// a price, the others USD 12.00" when prices are missing.
func (p *Plan) TotalText() string { return p.Cost.Bill.Incomplete(p.Cost.Total) }

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
