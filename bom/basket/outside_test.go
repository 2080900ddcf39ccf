package basket

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"testing"

	"silowright/render/outside"
)

// program writes a basket in the CPLEX LP format. Amounts are in hundreds of
// minor units and tax in whole per cent, so that every tax is a whole number
// of minor units and no rounding comes in.
func program(items []Item, sellers []Seller) []byte {
	var cost, rows, binary bytes.Buffer
	for j, s := range sellers {
		tax := s.Tax / 10_000
		onShip := int64(0)
		if s.TaxShipping {
			onShip = tax
		}
		fmt.Fprintf(&cost, " + %d y%d + %d p%d", 100+tax, j, s.Shipping/100*(100+onShip), j)
		fmt.Fprintf(&rows, " y%d", j) // what is spent is the goods at least
		for i, item := range items {
			if item[j] > 0 {
				fmt.Fprintf(&rows, " - %d x%d_%d", item[j]/100, i, j)
			}
		}
		fmt.Fprintf(&rows, " >= 0\n y%d - %d u%d >= 0\n", j, s.Minimum/100, j)
		if s.FreeFrom < 0 { // shipping is paid, or enough is spent
			fmt.Fprintf(&rows, " p%d - u%d >= 0\n", j, j)
		} else {
			fmt.Fprintf(&rows, " y%d - %d u%d + %d p%d >= 0\n", j, s.FreeFrom/100, j, s.FreeFrom/100, j)
		}
		fmt.Fprintf(&binary, " u%d p%d", j, j)
	}
	for i, item := range items {
		sold := false
		for j, c := range item {
			if c >= 0 {
				fmt.Fprintf(&rows, " + x%d_%d", i, j)
				fmt.Fprintf(&binary, " x%d_%d", i, j)
				sold = true
			}
		}
		if sold {
			rows.WriteString(" = 1\n")
		}
		for j, c := range item {
			if c > 0 {
				fmt.Fprintf(&rows, " u%d - x%d_%d >= 0\n", j, i, j)
			}
		}
	}
	return fmt.Appendf(nil, "Minimize\n cost:%s\nSubject To\n%sBinary\n%s\nEnd\n", cost.Bytes(), rows.Bytes(), binary.Bytes())
}

// coarse draws a basket of amounts in hundreds and taxes in per cent, from one
// of a few to twelve items.
func coarse(r *rand.Rand) ([]Item, []Seller) {
	items, sellers := instance(r, 3+r.IntN(10), 2+r.IntN(4), 60, 0.4)
	for i := range items {
		for j, c := range items[i] {
			if c > 0 {
				items[i][j] = c * 100
			}
		}
	}
	for j, s := range sellers {
		sellers[j].Shipping, sellers[j].Minimum, sellers[j].Tax = s.Shipping*100, s.Minimum*200, s.Tax/10_000*10_000
		if s.FreeFrom >= 0 {
			sellers[j].FreeFrom = s.FreeFrom * 200
		}
	}
	return items, sellers
}

// GLPK and CBC, general-purpose solvers of mixed integer programs, find the
// same least cost.
func TestAgainstSolvers(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 5))
	for i := range 200 {
		items, sellers := coarse(r)
		got, err := Cheapest(items, sellers)
		if err != nil {
			t.Fatal(err)
		}
		sound(t, items, sellers, got)
		file := outside.File(t, fmt.Sprintf("%d.lp", i), program(items, sellers))
		glpk, cbc := outside.Least(t, file)
		if got.Cost != glpk || got.Cost != cbc || !got.Proven {
			t.Errorf("basket %d: %d, proven %v; GLPK %d, CBC %d\n%v\n%+v", i, got.Cost, got.Proven, glpk, cbc, items, sellers)
		}
	}
}
