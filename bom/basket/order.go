package basket

import "math/bits"

// Limit is the largest amount of money, and Million the unit of a tax rate
// and its largest value.
const (
	Limit   = 1_000_000_000_000_000
	Million = 1_000_000
)

// Seller is what an order at one supplier costs beyond its goods. Amounts are
// minor units of money.
type Seller struct {
	Shipping    int64 // of one order, 0 to Limit
	FreeFrom    int64 // goods from which shipping is free; below 0 never
	Minimum     int64 // the least goods of an order, 0 none
	Tax         int64 // on goods, parts per million, 0 to Million
	TaxShipping bool  // tax is on shipping as well
}

// Order is the sums of one order, in minor units of money.
type Order struct {
	Goods    int64 // what the items cost
	TopUp    int64 // to be spent on anything else, so that the minimum or free shipping is reached
	Shipping int64
	Tax      int64 // on goods, top-up and, where taxed, shipping
	Total    int64
}

// OrderOf is the cheapest order at s that holds goods: spending y ≥ goods,
// y ≥ Minimum costs y + shipping(y) + tax(y), and TopUp is y − goods. Topping
// up for free shipping is done only where the total becomes less by it. Tax is
// rounded half away from zero to whole minor units, once per order. Goods of 0
// or less are no order. Numbers out of the ranges of Seller and Limit are
// taken as the nearest within.
//
// Total never falls as goods grow: it is the least of y + shipping(y) + tax(y)
// over all y ≥ max(goods, Minimum), and more goods leave fewer y to choose
// from. (Two y need be looked at: below FreeFrom the sum rises with y, so the
// least y is best; from FreeFrom on again.)
func OrderOf(goods int64, s Seller) Order {
	if goods <= 0 {
		return Order{}
	}
	goods = min(goods, Limit)
	y := max(goods, min(s.Minimum, Limit))
	o := s.spend(goods, y)
	if o.Shipping > 0 && s.FreeFrom >= 0 && s.FreeFrom < o.Total {
		if free := s.spend(goods, max(y, s.FreeFrom)); free.Total < o.Total {
			return free
		}
	}
	return o
}

// spend is the order of y ≥ goods.
func (s *Seller) spend(goods, y int64) Order {
	o := Order{Goods: goods, TopUp: y - goods}
	taxed := y
	if s.FreeFrom < 0 || y < s.FreeFrom {
		if o.Shipping = within(s.Shipping, Limit); s.TaxShipping {
			taxed += o.Shipping
		}
	}
	if s.Tax > 0 {
		o.Tax = parts(taxed, within(s.Tax, Million))
	}
	o.Total = y + o.Shipping + o.Tax
	return o
}

func within(n, most int64) int64 { return max(0, min(n, most)) }

// parts is n·ppm/1e6, rounded half up; n ≥ 0, 0 ≤ ppm ≤ 1e6.
func parts(n, ppm int64) int64 {
	hi, lo := bits.Mul64(uint64(n), uint64(ppm))
	lo, carry := bits.Add64(lo, Million/2, 0)
	q, _ := bits.Div64(hi+carry, lo, Million) // hi < ppm ≤ 1e6, and hi+carry < 1e6 as n < 2^62
	return int64(q)
}

// scale is floor(n·num/den) for n ≥ 0 and a result that fits.
func scale(n, num, den int64) int64 {
	hi, lo := bits.Mul64(uint64(n), uint64(num))
	if hi == 0 {
		return int64(lo / uint64(den))
	}
	q, _ := bits.Div64(hi, lo, uint64(den))
	return int64(q)
}
