// Package build costs a whole build: what is bought, the hours of work, and
// what is added for what nobody thought of, for the counts asked for and for
// every other count.
package build

import (
	"fmt"
	"math"
	"math/big"

	"silowright/bom"
	"silowright/bom/money"
	"silowright/bom/work"
	"silowright/geometry"
	"silowright/geometry/measure"
)

// Site is everything a cost follows from but the counts.
type Site struct {
	Silos       []geometry.Silo // one a kind, solved
	Units       measure.Unit
	Prices      *bom.PriceList
	Terms       bom.Terms
	Held        []bom.Held
	Runs        []bom.Run
	Rates       bom.Rates
	Work        work.Rates
	Wage        money.Money // an hour
	Contingency bom.Share   // of everything else
}

// Cost is what a build of so many silos costs. When the bill lacks prices,
// every sum leaves those items out.
type Cost struct {
	Batches     []bom.Batch `json:"-"`
	Bill        bom.Bill    `json:"-"`
	Hours       work.Hours  `json:"-"`
	Labour      money.Money `json:"labour"`
	Contingency money.Money `json:"contingency"`
	Total       money.Money `json:"total"`            // bill, labour and contingency
	Drums       money.Money `json:"drum_silos_share"` // Drums + Pipes = Total
	Pipes       money.Money `json:"pipe_silos_share"`
	PerDrum     money.Money `json:"per_drum_silo"` // Drums over the drum silos, half away from zero; 0 for none
	PerPipe     money.Money `json:"per_pipe_silo"`
	Parts       []Part      `json:"parts"` // where the money goes, in the bill's order
}

// Part is one thing that money goes to.
type Part struct {
	Name  string      `json:"name"`
	Sum   money.Money `json:"sum"`
	Share float64     `json:"share"` // of the total, 0 to 1
}

// Cost works out a build of so many drum and pipe silos. Its errors are those
// of bom.Buy.
func (s Site) Cost(drums, pipes int) (Cost, error) {
	c := Cost{Batches: bom.Batches(s.Silos, drums, pipes)}
	var err error
	needs := bom.Takeoff(c.Batches, s.Rates, s.Units, s.Runs...)
	if c.Bill, err = bom.Buy(needs, s.Prices, s.Held, s.Terms, drums, pipes); err != nil {
		return c, err
	}
	c.Hours = work.Reckon(c.Batches, s.Work)
	return c, s.add(&c)
}

// add adds work and contingency to the bill.
func (s Site) add(c *Cost) error {
	drum, err := s.wages(c.Hours.SetUpDrum + c.Hours.Drum)
	if err != nil {
		return err
	}
	pipe, err := s.wages(c.Hours.SetUpPipe + c.Hours.Pipe)
	if err != nil {
		return err
	}
	sum := totals{currency: s.Terms.Currency}
	c.Labour = sum.of(drum, pipe)
	c.Drums, c.Pipes = sum.of(c.Bill.Drums, drum), sum.of(c.Bill.Pipes, pipe)
	before := sum.of(c.Drums, c.Pipes)
	if sum.err != nil {
		return sum.err
	}
	if c.Contingency, err = s.Contingency.Of(before); err != nil {
		return fmt.Errorf("contingency: %w; hint: look for a price, a count or a wage that is far out", err)
	}
	extra, err := c.Contingency.Split(new(big.Rat).SetInt64(c.Drums.Minor), new(big.Rat).SetInt64(c.Pipes.Minor))
	if err != nil {
		return fmt.Errorf("contingency: %w; hint: look for a price, a count or a wage that is far out", err)
	}
	c.Drums, c.Pipes = sum.of(c.Drums, extra[0]), sum.of(c.Pipes, extra[1])
	c.Total = sum.of(c.Drums, c.Pipes)
	c.PerDrum, c.PerPipe = c.Drums.Over(int64(c.Bill.DrumSilos)), c.Pipes.Over(int64(c.Bill.PipeSilos))
	c.Parts = c.parts()
	return sum.err
}

// wages are what so much work costs, to a whole minor unit, half away from
// zero.
func (s Site) wages(m work.Minutes) (money.Money, error) {
	wage := money.Money{Minor: s.Wage.Minor, Currency: s.Terms.Currency}
	if math.IsNaN(float64(m)) || math.IsInf(float64(m), 0) {
		return wage, fmt.Errorf("work: the hours are out of range; hint: look for a number that is far out under [work]")
	}
	hours := new(big.Rat).SetFloat64(float64(m))
	out, err := wage.TimesRat(hours.Quo(hours, big.NewRat(60, 1)))
	if err != nil {
		return out, fmt.Errorf("work: labour: %w; hint: look for a number that is far out under [work]", err)
	}
	return out, nil
}

// totals adds amounts and keeps the first error.
type totals struct {
	currency money.Currency
	err      error
}

func (t *totals) of(list ...money.Money) money.Money {
	sum := money.Money{Currency: t.currency}
	for _, m := range list {
		next, err := sum.Plus(m)
		if err != nil && t.err == nil {
			t.err = fmt.Errorf("total: %w; hint: look for a price, a count or a wage that is far out", err)
		}
		sum = next
	}
	return sum
}

// parts lists where the money goes.
func (c *Cost) parts() []Part {
	var out []Part
	put := func(name string, m money.Money) {
		if m.Minor != 0 {
			out = append(out, Part{name, m, float64(m.Minor) / float64(c.Total.Minor)})
		}
	}
	for _, cat := range c.Bill.Categories {
		put(cat.Category, cat.Sum)
	}
	put("top-up of orders", c.Bill.TopUp)
	put("shipping", c.Bill.Shipping)
	put("tax", c.Bill.Tax)
	put("labour", c.Labour)
	put("contingency", c.Contingency)
	return out
}
