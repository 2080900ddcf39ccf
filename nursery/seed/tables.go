package seed

import (
	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

// Tables lists what is published on seed and held here, each row with its
// source and standing, for a reader. "Worked out" heads what the source does
// not tell in so many words but follows from what it does. Lengths and loads
// are in both units.
func Tables() []stock.Table {
	return []stock.Table{growthTable(), weightTable(), clearanceTable()}
}

// newTable starts a table; columns are all but the last two.
func newTable(name, title string, columns ...string) stock.Table {
	return stock.Table{Name: name, Title: title, Columns: append(columns, "source", "standing")}
}

// addRow appends a row.
func addRow(t *stock.Table, o stock.Origin, cells ...string) {
	t.Rows = append(t.Rows, append(cells, o.Source, string(o.Standing)))
}

// seen is the origin of what was seen in one publication.
func seen(source string) stock.Origin { return stock.Origin{Source: source, Standing: stock.One} }

const notTold = "not told"

func growthTable() stock.Table {
	t := newTable("growth", "Growth of seed as published: figures to hold a plan against, no law",
		"kind", "days", "from", "to", "growth, worked out", "load on the mesh", "seed a m² (ft²)", "water each")
	for _, g := range GrowthFigures() {
		days := figures(g.LeastDays)
		if g.MostDays != g.LeastDays {
			days += " to " + figures(g.MostDays)
		}
		from, to, grown := span(g.FromLeast, g.From), span(g.To, g.ToMost), notTold
		if rate, ok := g.PerDay(); ok {
			from, to = weighs(g.FromMass, g.FromMass), weighs(g.ToMass, g.ToMass)
			grown = figures(rate*100) + " % a day, doubles in " + figures(doubling(rate)) + " days"
		} else if least, most, ok := g.PerWeek(); ok {
			grown = span(Shell(least), Shell(most)) + " a week"
		}
		load, number, water := notTold, notTold, notTold
		if g.Load > 0 {
			load = g.Load.Both(measure.UnitMM)
		}
		if g.PerArea > 0 {
			const squareFoot = 0.3048 * 0.3048
			number = figures(g.PerArea) + " (" + figures(g.PerArea*squareFoot) + ")"
		}
		if g.WaterEach > 0 {
			water = litres(float64(g.WaterEach/litrePerDay), float64(g.WaterEach/litrePerDay)) + " a day"
		}
		addRow(&t, seen(g.Basis.Source), g.Species.String(), days, from, to, grown, load, number, water)
	}
	return t
}

func weightTable() stock.Table {
	t := newTable("seed-weight", "Live weight of one seed as published: single points, not to be extended by a cube law", "kind", "size", "weighs")
	for s := range Species(len(speciesNames)) {
		if r := weightRelation(s); r.at != nil {
			m := measure.Mass(r.at(float64(r.from)))
			from := seen(r.source)
			if s != Oyster { // told as a share of the oyster's
				from.Standing = stock.Derived
			}
			addRow(&t, from, s.String(), "shell of "+span(Shell(r.from), Shell(r.to)), weighs(m, m))
		}
	}
	for s := range Species(len(speciesNames)) {
		if r, most := sieveRelation(s); r.at != nil {
			addRow(&t, seen(r.source), s.String(), "held by a sieve of "+span(Shell(r.from), Shell(r.to)), weighs(measure.Mass(r.at(float64(r.from))), most))
		}
	}
	return t
}

func clearanceTable() stock.Table {
	t := newTable("clearance", "Water that one animal clears of food as published", "kind", "size", "clears in an hour")
	for s := range Species(len(speciesNames)) {
		if r := clearanceRelation(s); r.at != nil {
			addRow(&t, seen(r.source), s.String(), "shell of "+span(Shell(r.from), Shell(r.to)), litres(r.at(float64(r.from)), r.at(float64(r.to)))+", by the square of the length")
		}
	}
	a := adultClearance
	addRow(&t, seen(a.source), a.species.String(), "grown, no figure for seed", litres(float64(a.least/litrePerHour), float64(a.most/litrePerHour)))
	return t
}

// span writes a range of lengths: "5 to 6 mm (0.197 to 0.236 in)".
func span(a, b Shell) string {
	return ranged(a.Length().MM(), b.Length().MM(), "mm", a.Length().Inches(), b.Length().Inches(), "in")
}

// weighs writes a range of weights, in milligrams and ounces.
func weighs(a, b measure.Mass) string {
	return ranged(a.Milligrams(), b.Milligrams(), "mg", a.Pounds()*16, b.Pounds()*16, "oz")
}

// litres writes a range of litres, with US gallons.
func litres(a, b float64) string {
	gallon := measure.GallonPerMinute.LMin()
	return ranged(a, b, "L", a/gallon, b/gallon, "gal")
}

// ranged writes a range in both units, one number where its ends are the same.
func ranged(a, b float64, unit string, a2, b2 float64, unit2 string) string {
	ends := func(a, b float64) string {
		if figures(a) == figures(b) {
			return figures(a)
		}
		return figures(a) + " to " + figures(b)
	}
	return ends(a, b) + " " + unit + " (" + ends(a2, b2) + " " + unit2 + ")"
}
