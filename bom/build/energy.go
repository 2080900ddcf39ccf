package build

import (
	"fmt"
	"math"
	"math/big"

	"silowright/bom/money"
)

// Energy is what so many kilowatt hours cost at a price for each in whole units
// of the currency, to a whole minor unit, half away from zero. It fails on an
// amount of energy that is no number and past money.Limit.
func Energy(kwh float64, price *big.Rat, c money.Currency) (money.Money, error) {
	if math.IsNaN(kwh) || math.IsInf(kwh, 0) || kwh < 0 {
		return money.Money{}, fmt.Errorf("pump.kwh_price: %v kWh a year, out of range; hint: look for a number that is far out under [pump]", kwh)
	}
	one, err := money.Parse("1", c)
	if err != nil {
		return money.Money{}, err
	}
	cost, err := one.TimesRat(new(big.Rat).Mul(new(big.Rat).SetFloat64(kwh), price))
	if err != nil {
		return cost, fmt.Errorf("pump.kwh_price: what %.0f kWh a year cost: %w; hint: the price of one kilowatt hour, as in \"0.185\"", kwh, err)
	}
	return cost, nil
}
