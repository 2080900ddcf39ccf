package cover

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"testing"

	"silowright/render/outside"
)

// program writes a choice of packs in the CPLEX LP format: for each tier a
// count n and whether the tier is used, z.
func program(need int64, packs []Pack) []byte {
	var cost, holds, rows, whole, binary bytes.Buffer
	for i, p := range packs {
		for k, t := range p.Tiers {
			last := max(t.From, (need+p.Holds-1)/p.Holds)
			if k+1 < len(p.Tiers) {
				last = p.Tiers[k+1].From - 1
			}
			fmt.Fprintf(&cost, " + %d n%d_%d", t.Price, i, k)
			fmt.Fprintf(&holds, " + %d n%d_%d", p.Holds, i, k)
			fmt.Fprintf(&rows, " n%d_%d - %d z%d_%d >= 0\n n%d_%d - %d z%d_%d <= 0\n", i, k, t.From, i, k, i, k, last, i, k)
			fmt.Fprintf(&whole, " n%d_%d", i, k)
			fmt.Fprintf(&binary, " z%d_%d", i, k)
		}
		for k := range p.Tiers {
			fmt.Fprintf(&rows, " + z%d_%d", i, k)
		}
		rows.WriteString(" <= 1\n")
	}
	return fmt.Appendf(nil, "Minimize\n cost:%s\nSubject To\n%s >= %d\n%sGeneral\n%s\nBinary\n%s\nEnd\n",
		cost.Bytes(), holds.Bytes(), need, rows.Bytes(), whole.Bytes(), binary.Bytes())
}

// GLPK and CBC, general-purpose solvers of mixed integer programs, find the
// same least cost; needs and contents larger than enumeration reaches.
func TestAgainstSolvers(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 6))
	for i := range 200 {
		packs := instance(r, 1+r.IntN(4), 60, 400, 6)
		need := 1 + r.Int64N(600)
		got, err := Least(need, packs)
		if err != nil {
			t.Fatal(err)
		}
		file := outside.File(t, fmt.Sprintf("%d.lp", i), program(need, packs))
		glpk, cbc := outside.Least(t, file)
		if got.Cost != glpk || got.Cost != cbc || !got.Proven {
			t.Errorf("need %d, packs %v: %+v; GLPK %d, CBC %d", need, packs, got, glpk, cbc)
		}
	}
}
