// Package basket picks the supplier of each item so that all orders together
// cost least: goods, shipping, what must be spent to reach a minimum, and tax.
// Money is whole minor units; there is no floating point and no clock in it.
package basket

import (
	"errors"
	"fmt"
)

var (
	// ErrTooLarge is wrapped by the error for amounts that add up to more
	// than Limit.
	ErrTooLarge = errors.New("too large")
	// ErrInput is wrapped by the errors for an amount or a rate out of range.
	ErrInput = errors.New("out of range")
)

// Item is what the needed quantity of an item costs at each seller, in minor
// units of money; below 0 where it is not sold. A supplier that is set
// beforehand is the only one with a cost of 0 or more.
type Item []int64

// Choice is where to buy.
type Choice struct {
	Seller []int   // of each item, −1 when nobody sells it
	Orders []Order // at each seller, zero when nothing is ordered there
	Cost   int64   // the totals of all orders
	Bound  int64   // no choice costs less; equal to Cost when Proven
	Proven bool    // Cost is the least there is
}

// Cheapest finds the sellers of items that cost least. An item comes from one
// seller. Items that cost 0 come from the first who gives them, and do not make
// an order by themselves. The same input gives the same choice; among choices
// that cost the same none is preferred.
//
// The search ends after a set number of steps, some hundredths of a second;
// Proven is then false, Cost the best found and Bound still certain. A handful
// of sellers and some sixty items, most of them sold by one or two sellers, take
// a small part of that.
//
// Errors wrap ErrInput, or ErrTooLarge when the dearest costs of the items and
// all shippings and minimums add up to more than Limit, or the cost does.
func Cheapest(items []Item, sellers []Seller) (Choice, error) {
	return cheapest(items, sellers, stepLimit)
}

func cheapest(items []Item, sellers []Seller, steps int) (Choice, error) {
	if err := check(items, sellers); err != nil {
		return Choice{}, err
	}
	c := Choice{Seller: make([]int, len(items)), Orders: make([]Order, len(sellers))}
	goods := make([]int64, len(sellers))
	s := newSearch(items, sellers, c.Seller)
	c.Bound = s.run(steps)
	for k, i := range s.items {
		c.Seller[i] = s.best[k]
	}
	for i, at := range c.Seller {
		if at >= 0 {
			goods[at] += items[i][at]
		}
	}
	for j := range sellers {
		c.Orders[j] = OrderOf(goods[j], sellers[j])
		c.Cost += c.Orders[j].Total
	}
	c.Bound = min(c.Bound, c.Cost)
	c.Proven = c.Bound == c.Cost
	if c.Cost > Limit {
		return Choice{}, fmt.Errorf("basket: costs %d in minor units of money, %w, allowed: %d; hint: is a price off by its decimals?", c.Cost, ErrTooLarge, int64(Limit))
	}
	return c, nil
}

func check(items []Item, sellers []Seller) error {
	sum := int64(0)
	add := func(n int64) bool { sum += n; return sum <= Limit }
	for j, s := range sellers {
		for _, f := range []struct {
			name         string
			n, low, high int64
		}{
			{"shipping", s.Shipping, 0, Limit}, {"minimum", s.Minimum, 0, Limit},
			{"tax", s.Tax, 0, Million}, {"free_from", s.FreeFrom, -Limit, Limit},
		} {
			if f.n < f.low || f.n > f.high {
				return fmt.Errorf("sellers[%d].%s: %d is %w, allowed: %d to %d; hint: money in minor units, tax in parts per million", j, f.name, f.n, ErrInput, f.low, f.high)
			}
		}
		if !add(s.Shipping) || !add(s.Minimum) {
			return fmt.Errorf("sellers[%d]: shippings and minimums add up to more than %d, %w; hint: is one off by its decimals?", j, int64(Limit), ErrTooLarge)
		}
	}
	for i, item := range items {
		if len(item) != len(sellers) {
			return fmt.Errorf("items[%d]: %d costs, %w, allowed: %d, one a seller; hint: below 0 where it is not sold", i, len(item), ErrInput, len(sellers))
		}
		dearest := int64(0)
		for j, c := range item {
			if dearest = max(dearest, c); c > Limit {
				return fmt.Errorf("items[%d][%d]: %d is %w, allowed: up to %d; hint: minor units of money", i, j, c, ErrInput, int64(Limit))
			}
		}
		if !add(dearest) {
			return fmt.Errorf("items[%d]: costs add up to more than %d, %w; hint: is a price off by its decimals?", i, int64(Limit), ErrTooLarge)
		}
	}
	return nil
}
