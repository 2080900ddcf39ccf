package job

import (
	"fmt"
	"strings"

	"silowright/bom"
	"silowright/bom/money"
	"silowright/bom/work"
	"silowright/geometry/measure"
)

// rate is one key of [rates].
type rate struct {
	name, means string
	read        func(r *reader, path string, v any, to *bom.Rates)
	write       func(d bom.Rates, u measure.Unit) string
	bare        bool
}

// rateKeys lists the keys of [rates]; common practice, no source: all ranges.
var rateKeys = []rate{
	rateLength("hose_per_inlet", "supply hose from the manifold to one silo", 100*mm, 50000*mm, func(q *bom.Rates) *measure.Length { return &q.HosePerInlet }),
	rateCount("hose_clamps", "clamps on that hose", 0, 10, func(q *bom.Rates) *int { return &q.HoseClamps }),
	rateVolume("cement_joint", "solvent cement for one socket", func(q *bom.Rates) *measure.Volume { return &q.CementJoint }),
	rateVolume("primer_joint", "primer for one socket", func(q *bom.Rates) *measure.Volume { return &q.PrimerJoint }),
	rateVolume("acetone_metre", "acetone for a metre of bead's ground", func(q *bom.Rates) *measure.Volume { return &q.AcetonePerM }),
	rateLength("blade_life", "jigsaw travel one blade lasts; 0 counts none", 0, 1e6*mm, func(q *bom.Rates) *measure.Length { return &q.BladeLife }),
	rateLength("sandpaper_life", "cut edge one sheet smooths; 0 counts none", 0, 1e6*mm, func(q *bom.Rates) *measure.Length { return &q.SandpaperLife }),
	rateCount("points_per_disc", "screw points one cutting disc takes off; 0 counts none", 0, 100000, func(q *bom.Rates) *int { return &q.PointsPerDisc }),
	rateCount("holes_per_pilot_bit", "holes one pilot bit starts; 0 counts none", 0, 100000, func(q *bom.Rates) *int { return &q.HolesPerPilotBit }),
	rateCount("marker_silos", "silos one marker marks; 0 counts none", 0, 100000, func(q *bom.Rates) *int { return &q.MarkerSilos }),
	rateCount("tape_joints", "threaded joints one roll of thread tape seals; 0 counts none", 0, 100000, func(q *bom.Rates) *int { return &q.TapeJoints }),
}

func rateLength(name, means string, low, high measure.Length, at func(*bom.Rates) *measure.Length) rate {
	return rate{name, means,
		func(r *reader, path string, v any, to *bom.Rates) { *at(to), _ = r.length(path, v, low, high) },
		func(d bom.Rates, u measure.Unit) string { return written(*at(&d), u) }, false}
}

func rateCount(name, means string, low, high int, at func(*bom.Rates) *int) rate {
	return rate{name, means,
		func(r *reader, path string, v any, to *bom.Rates) { *at(to), _ = r.count(path, v, low, high) },
		func(d bom.Rates, _ measure.Unit) string { return fmt.Sprint(*at(&d)) }, true}
}

func rateVolume(name, means string, at func(*bom.Rates) *measure.Volume) rate {
	return rate{name, means,
		func(r *reader, path string, v any, to *bom.Rates) {
			*at(to), _ = r.volume(path, v, 0, 1000*measure.Millilitre)
		},
		func(d bom.Rates, _ measure.Unit) string { return writtenVolume(*at(&d)) }, false}
}

// effort reads [rates] and [work]: what no measure of the silo gives.
func (r *reader) effort(top table, f *File) {
	f.Rates, f.Work = bom.DefaultRates(), work.DefaultRates()
	f.Wage = money.Money{Currency: money.Currency(f.Currency)}
	if t, ok := r.table(top, "rates"); ok {
		var known []string
		for _, k := range rateKeys {
			known = append(known, k.name)
			if v, ok := t.items[k.name]; ok {
				k.read(r, t.at(k.name), v, &f.Rates)
			}
		}
		r.unknown(t, known, "rates")
	}
	if t, ok := r.table(top, work.Section); ok {
		r.money(t, "wage", &f.Wage)
		known := []string{"wage"}
		for _, k := range work.Keys() {
			known = append(known, k.Name)
			if v, ok := t.items[k.Name]; ok {
				r.workKey(t.at(k.Name), v, k, &f.Work)
			}
		}
		r.unknown(t, known, work.Section)
	}
	f.Rates.ClampsAtOnce = f.Work.Clamps
}

func (r *reader) workKey(path string, v any, k work.Key, to *work.Rates) {
	n, ok := 0.0, false
	if k.Whole {
		var whole int
		whole, ok = r.count(path, v, int(k.Low), int(k.High))
		n = float64(whole)
	} else {
		n, ok = r.fraction(path, v, k.Low, k.High, k.Unit)
	}
	if !ok {
		return
	}
	if err := k.Set(to, n); err != nil {
		r.fail(path, show(v), "cannot be", plain(k.Low)+" to "+plain(k.High), k.Means)
	}
}

// buyingTemplate is the part of a job file to begin with that is about money
// and work, every key as a comment with its default.
func buyingTemplate(b *strings.Builder, u measure.Unit) {
	line := func(name, value, means string) { fmt.Fprintf(b, "# %-19s = %-13s # %s\n", name, value, means) }
	b.WriteString("\n[buying] # tax, and how sure the prices are\n")
	line("tax", "0", `of goods: a fraction of one, or text such as "8.25 %"`)
	line("tax_shipping", "false", "shipping is taxed too")
	line("contingency", "0", "added to everything for what nobody thought of")
	line("quote_days", "60", "a quotation older than this is warned of; left out: never")
	line("date", `"2031-03-01"`, "the day quotations are aged by; left out: the newest quotation's own")
	b.WriteString("\n[bench] # how pipe is sawn\n")
	bench := defaultBench(u)
	for _, k := range benchKeys(&bench) {
		line(k.name, fmt.Sprintf("%q", written(*k.to, u)), k.means)
	}
	b.WriteString("\n[rates] # what is used up; common practice, no source: put your own numbers\n")
	for _, k := range rateKeys {
		value := k.write(bom.DefaultRates(), u)
		if !k.bare {
			value = fmt.Sprintf("%q", value)
		}
		line(k.name, value, k.means)
	}
	b.WriteString("\n[work] # minutes and crew; common practice, no source: time your own first silos\n")
	line("wage", `"0"`, "what an hour costs, in the job's currency")
	for _, k := range work.Keys() {
		line(k.Name, plain(k.Get(work.DefaultRates())), strings.TrimSpace(k.Unit+" "+k.Means))
	}
	b.WriteString(`
# What one supplier asks of an order; repeat for each.
# [[supplier]]
# name      = "the name in the price list"
# shipping  = "45"
# free_from = "500"            # goods from which shipping is free
# minimum   = "50"             # least goods of an order
# tax       = "8 %"            # where it is not that of [buying]

# [choose]                     # an item that comes from one supplier whatever others ask
# cement = "the name in the price list"

# [exchange]                   # what one unit of another currency in the price list costs
# CHF = 1.10

# What is on the rack is used first and not bought again, by the item names that
# silowright cost prints: a count, what is left in a can, sticks by length, or
# pieces of mesh with their width.
# [on_hand]
# "hose-clamp-1-1/2" = 12
# sealant            = "150 mL"
# "pipe-sch40-2"     = ["49 in", "3 ft"]
# "mesh-1.6-mm"      = {amount = "3 ft", width = "48 in", count = 2}

# Pipe for the manifold and the mains, cut and bought with the rest.
# [[pipe_run]]
# name   = "manifold"
# pipe   = "3"
# length = "6 ft 8 in"
# count  = 4
`)
}
