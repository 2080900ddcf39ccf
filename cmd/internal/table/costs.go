package table

import (
	"fmt"

	"silowright/cmd/internal/plan"
	"silowright/cmd/internal/report"
	"silowright/geometry"
)

// costs are what a build costs, amounts written out.
type costs struct {
	Currency string      `json:"currency"`
	Total    string      `json:"total"`
	PerDrum  string      `json:"perDrum"`
	PerPipe  string      `json:"perPipe"`
	Hours    string      `json:"hours"`
	Days     int         `json:"days"`
	Orders   []order     `json:"orders"`
	Points   []costPoint `json:"points"`
	Curve    []curvePart `json:"curve"`
	Counted  string      `json:"counted"` // what n of the curve counts
	Parts    []costPart  `json:"parts"`
	Missing  []string    `json:"missing"`
	Warnings []string    `json:"warnings"`
	Items    []costItem  `json:"items"`
	Invented bool        `json:"invented"` // the prices are the demo's
}

type order struct {
	Supplier string `json:"supplier"`
	Goods    string `json:"goods"`
	Shipping string `json:"shipping"`
	Tax      string `json:"tax"`
	Total    string `json:"total"`
}

type costPoint struct {
	Drums   int    `json:"drums"`
	Pipes   int    `json:"pipes"`
	Total   string `json:"total"`
	PerDrum string `json:"perDrum"`
	PerPipe string `json:"perPipe"`
	Own     bool   `json:"own"` // the build asked for
}

type curvePart struct {
	N    int     `json:"n"`
	Each float64 `json:"each"`
	Says string  `json:"says"`
	Own  bool    `json:"own"`
}

type costPart struct {
	Name  string  `json:"name"`
	Sum   string  `json:"sum"`
	Share float64 `json:"share"`
}

type costItem struct {
	Item        string `json:"item"`
	Category    string `json:"category"`
	Description string `json:"description"`
	Need        string `json:"need"`
	Rack        string `json:"rack"`
	Packs       string `json:"packs"`
	Supplier    string `json:"supplier"`
	Amount      string `json:"amount"` // empty without a price
}

func costsOf(p *plan.Plan, c report.Costs) *costs {
	out := &costs{Currency: string(p.Currency), Total: p.TotalText(), Hours: p.Cost.Hours.Total.Text(), Days: len(c.Laid.Days),
		Missing: c.Bill.Missing, Warnings: c.Bill.Warnings, Counted: "drum silos", Invented: p.Invented}
	if p.Job.DrumSilos > 0 {
		out.PerDrum = c.PerDrum.String()
	}
	if p.Job.PipeSilos > 0 {
		out.PerPipe = c.PerPipe.String()
	}
	for _, o := range c.Bill.Orders {
		out.Orders = append(out.Orders, order{o.Supplier, o.Goods.String(), o.Shipping.String(), o.Tax.String(), o.Total.String()})
	}
	for _, q := range c.Points {
		out.Points = append(out.Points, costPoint{q.Drums, q.Pipes, q.Total.String(), q.PerDrum.String(), q.PerPipe.String(), q.Own})
	}
	if p.Job.DrumSilos == 0 {
		out.Counted = "pipe silos"
	}
	for _, q := range c.Curve {
		n, each := q.Drums, q.PerDrum
		if p.Job.DrumSilos == 0 {
			n, each = q.Pipes, q.PerPipe
		}
		out.Curve = append(out.Curve, curvePart{n, each.Major(), each.String(), q.Own})
	}
	for _, q := range c.Parts {
		out.Parts = append(out.Parts, costPart{q.Name, q.Sum.String(), q.Share})
	}
	for _, l := range c.Bill.Lines {
		row := costItem{Item: l.Item, Category: l.Category, Description: l.Description, Need: l.Text(l.Total(), p.Job.Units), Supplier: l.Supplier}
		if l.Rack > 0 {
			row.Rack = l.Text(l.Rack, p.Job.Units)
		}
		for i, b := range l.Buys {
			if i > 0 {
				row.Packs += ", "
			}
			row.Packs += fmt.Sprintf("%d × %s", b.Packs, b.Offer.Pack)
		}
		if l.Amount != nil {
			row.Amount = l.Amount.String()
		}
		out.Items = append(out.Items, row)
	}
	return out
}

// waterLine is one thing said of water and seed.
type waterLine struct {
	Drum string `json:"drum"`
	Name string `json:"name"`
	Both string `json:"both"`
}

// waterOf says what a silo passes and holds.
func waterOf(p *plan.Plan) []waterLine {
	var out []waterLine
	for _, s := range p.Silos {
		u := s.Spec.Units
		add := func(name, both string) { out = append(out, waterLine{s.Spec.Drum.Label, name, both}) }
		add("lattice open area", s.Lattice.OpenArea.Both(u))
		add("open area through mesh and lattice", geometry.Silo.OpenArea(s).Both(u))
		add("outlet bore", geometry.Silo.OutletBore(s).Both(u))
		add("mesh opening", s.Spec.Mesh.Opening.Both(u))
		add("seed bay, mesh up to the outlet's invert", s.Weights.SeedBay.Both(u))
		add("plenum", s.Weights.PlenumVolume.Both(u))
		add("wet seed on the mesh", s.Spec.Load.Seed.Both(u))
		out = append(out, flowsOf(p, s.Spec.Drum.Label)...)
	}
	return out
}

// flowsOf says what water the silos of a kind get and where it goes.
func flowsOf(p *plan.Plan, drum string) []waterLine {
	if p.Water == nil {
		return nil
	}
	var out []waterLine
	u := p.Job.Units
	for _, g := range p.Water.Groups {
		if g.Drum != drum {
			continue
		}
		with := "without a pipe silo"
		if g.Piped {
			with = "with a pipe silo"
		}
		out = append(out, waterLine{drum, with + ": water, from " + string(p.Water.From), g.Most.Flow.Both(u)},
			waterLine{drum, with + ": stands over the outlet's invert", g.Most.Level.Both(u)},
			waterLine{drum, with + ": below the handle slots", g.Most.ToSill.Both(u)})
		if spill, ok := g.First(); ok {
			out = append(out, waterLine{drum, with + ": first to leave it beside the outlet", spill.What + ", from " + spill.From.Both(u)})
		}
	}
	return out
}
