package money_test

import (
	"fmt"
	"math/big"

	"silowright/bom/money"
)

// Money is exact, and what is split adds up to what it was.
func ExampleMoney_Split() {
	m, err := money.Parse("100.00", "USD")
	if err != nil {
		fmt.Println(err)
		return
	}
	parts, err := m.Split(big.NewRat(1, 1), big.NewRat(1, 1), big.NewRat(1, 1))
	fmt.Println(parts, err)
	// Output: [USD 33.34 USD 33.33 USD 33.33] <nil>
}

// An amount that is no amount is refused.
func ExampleParse() {
	m, err := money.Parse("1234.50", "USD")
	fmt.Println(m, err)
	_, err = money.Parse("1,234.50", "USD")
	fmt.Println(err)
	// Output:
	// USD 1,234.50 <nil>
	// "1,234.50": not an amount of money; hint: no thousands mark, as in 1234.50
}
