package report

import (
	"fmt"
	"strings"

	"silowright/bom/money"
	"silowright/bom/work"
	"silowright/cmd/internal/plan"
	"silowright/geometry"
	"silowright/geometry/measure"
)

// Comparison sets two jobs side by side.
type Comparison struct {
	A    string          `json:"a"` // names of the jobs
	B    string          `json:"b"`
	Rows []ComparisonRow `json:"rows"`
	Only []OneSided      `json:"findings_that_differ"`
}

// ComparisonRow is one thing compared, written out.
type ComparisonRow struct {
	Group string `json:"group"`
	Name  string `json:"name"`
	A     string `json:"a"`
	B     string `json:"b"`
	More  string `json:"b_less_a"` // B less A; empty when it has no sense
}

// OneSided is a finding whose level is not the same in both jobs.
type OneSided struct {
	ID   string `json:"id"`
	A    string `json:"a"` // its level; "none" when the check was not made
	B    string `json:"b"`
	Says string `json:"says"` // by the worse of the two
}

// Compare sets plan a beside plan b.
func Compare(a, b *plan.Plan) (Comparison, error) {
	c := Comparison{A: a.Job.Name, B: b.Job.Name, Only: []OneSided{}}
	daysA, err := a.Days()
	if err != nil {
		return c, err
	}
	daysB, err := b.Days()
	if err != nil {
		return c, err
	}
	c.silos(a, b)
	c.cost(a, b)
	c.effort(a, b, daysA, daysB)
	c.water(a, b)
	c.findings(a, b)
	return c, nil
}

// JSON writes the comparison, indented.
func (c Comparison) JSON() ([]byte, error) { return Indented(c) }

func (c *Comparison) row(group, name, a, b, more string) {
	c.Rows = append(c.Rows, ComparisonRow{group, name, a, b, more})
}

func (c *Comparison) silos(a, b *plan.Plan) {
	count := func(name string, x, y int) {
		c.row("build", name, fmt.Sprint(x), fmt.Sprint(y), signed(y-x, fmt.Sprint(max(y-x, x-y))))
	}
	count("drum silos", a.Job.DrumSilos, b.Job.DrumSilos)
	count("pipe silos", a.Job.PipeSilos, b.Job.PipeSilos)
	kinds := func(of func(geometry.Silo) string, p *plan.Plan) string {
		var out []string
		for _, s := range p.Silos {
			if w := of(s); len(out) == 0 || out[len(out)-1] != w {
				out = append(out, w)
			}
		}
		return strings.Join(out, "; ")
	}
	for _, k := range []struct {
		name string
		of   func(geometry.Silo) string
	}{
		{"outlet", func(s geometry.Silo) string { return s.Spec.Outlet.Pipe.String() + ", " + string(s.Spec.Outlet.Joint) }},
		{"inlet", func(s geometry.Silo) string { return s.Spec.Inlet.Pipe.String() + ", " + string(s.Spec.Inlet.Joint) }},
		{"mesh opening", func(s geometry.Silo) string { return s.Spec.Mesh.Opening.Both(s.Spec.Units) }},
	} {
		c.row("build", k.name, kinds(k.of, a), kinds(k.of, b), "")
	}
}

func (c *Comparison) cost(a, b *plan.Plan) {
	sum := func(name string, x, y money.Money) {
		more := ""
		if d, err := y.Plus(money.Money{Minor: -x.Minor, Currency: x.Currency}); err == nil {
			more = signed64(d.Minor, d.Size().Plain())
		}
		c.row("cost", name, x.String(), y.String(), more)
	}
	x, y := a.Cost, b.Cost
	sum("goods", x.Bill.Goods, y.Bill.Goods)
	sum("shipping and top-up", plus(x.Bill.Shipping, x.Bill.TopUp), plus(y.Bill.Shipping, y.Bill.TopUp))
	sum("tax", x.Bill.Tax, y.Bill.Tax)
	sum("labour", x.Labour, y.Labour)
	sum("contingency", x.Contingency, y.Contingency)
	sum("whole build", x.Total, y.Total)
	sum("each drum silo", x.PerDrum, y.PerDrum)
	sum("each pipe silo", x.PerPipe, y.PerPipe)
	if !x.Bill.Complete() || !y.Bill.Complete() {
		c.row("cost", "items without a price", fmt.Sprint(len(x.Bill.Missing)), fmt.Sprint(len(y.Bill.Missing)), "")
	}
}

func plus(x, y money.Money) money.Money {
	s, err := x.Plus(y)
	if err != nil { // both are part of a total in range
		return x
	}
	return s
}

func (c *Comparison) effort(a, b *plan.Plan, daysA, daysB work.DayPlan) {
	time := func(name string, x, y work.Minutes) {
		c.row("work", name, x.Text(), y.Text(), signed64(int64(y-x), (max(y, x)-min(y, x)).Text()))
	}
	time("whole build", a.Cost.Hours.Total, b.Cost.Hours.Total)
	time("each drum silo", a.Cost.Hours.PerDrum, b.Cost.Hours.PerDrum)
	time("each pipe silo", a.Cost.Hours.PerPipe, b.Cost.Hours.PerPipe)
	x, y := len(daysA.Days), len(daysB.Days)
	c.row("work", "days", fmt.Sprint(x), fmt.Sprint(y), signed(y-x, fmt.Sprint(max(y-x, x-y))))
}

// water compares what the water passes in one silo of each kind, the kinds in
// the order of the jobs.
func (c *Comparison) water(a, b *plan.Plan) {
	for i := range max(len(a.Silos), len(b.Silos)) {
		name := ""
		if max(len(a.Silos), len(b.Silos)) > 1 {
			name = fmt.Sprintf(", kind %d", i+1)
		}
		for _, k := range []struct {
			name string
			of   func(geometry.Silo) measure.Area
		}{
			{"lattice open area", func(s geometry.Silo) measure.Area { return s.Lattice.OpenArea }},
			{"open area through mesh and lattice", geometry.Silo.OpenArea},
			{"outlet bore", geometry.Silo.OutletBore},
		} {
			x, okX := areaOf(a, i, k.of)
			y, okY := areaOf(b, i, k.of)
			row := ComparisonRow{"water", k.name + name, "–", "–", ""}
			if okX {
				row.A = x.Both(a.Job.Units)
			}
			if okY {
				row.B = y.Both(a.Job.Units)
			}
			if okX && okY && x > 0 {
				row.More = fmt.Sprintf("%+.1f %%", 100*(float64(y/x)-1))
			}
			c.Rows = append(c.Rows, row)
		}
	}
}

func areaOf(p *plan.Plan, i int, of func(geometry.Silo) measure.Area) (measure.Area, bool) {
	if i >= len(p.Silos) {
		return 0, false
	}
	return of(p.Silos[i]), true
}

// findings compares the worst level of each check.
func (c *Comparison) findings(a, b *plan.Plan) {
	c.row("findings", "tally", a.Tally(), b.Tally(), "")
	worst := func(p *plan.Plan) map[string]geometry.Finding {
		out := map[string]geometry.Finding{}
		for _, f := range p.Findings {
			if g, ok := out[f.ID]; !ok || f.Level > g.Level {
				out[f.ID] = f
			}
		}
		return out
	}
	inA, inB := worst(a), worst(b)
	seen := map[string]bool{}
	for _, f := range append(append([]geometry.Finding{}, a.Findings...), b.Findings...) {
		if seen[f.ID] {
			continue
		}
		seen[f.ID] = true
		x, okX := inA[f.ID]
		y, okY := inB[f.ID]
		if okX && okY && x.Level == y.Level || x.Level == geometry.OK && y.Level == geometry.OK {
			continue
		}
		says := x.Says
		if !okX || y.Level > x.Level {
			says = y.Says
		}
		c.Only = append(c.Only, OneSided{f.ID, level(x, okX), level(y, okY), says})
	}
}

func level(f geometry.Finding, ok bool) string {
	if !ok {
		return "none"
	}
	return f.Level.String()
}

// signed writes a size with the sign of n; "same" for none.
func signed(n int, size string) string { return signed64(int64(n), size) }

func signed64(n int64, size string) string {
	switch {
	case n > 0:
		return "+" + size
	case n < 0:
		return "−" + size
	}
	return "same"
}
