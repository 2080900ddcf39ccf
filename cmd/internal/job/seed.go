package job

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"silowright/geometry/measure"
	"silowright/nursery/seed"
)

// seedSection is the section of the seed to be raised.
const seedSection = "seed"

// seed reads [seed]; nil when there is none.
func (r *reader) seed(top table) *seed.Plan {
	t, ok := r.table(top, seedSection)
	if !ok {
		return nil
	}
	p := seed.Default(seed.Clam)
	var known []string
	for i, w := range seed.Words() {
		known = append(known, w.Name)
		v, ok := t.items[w.Name]
		if !ok {
			continue
		}
		if text, ok := r.word(t.at(w.Name), v, w.Allowed); ok {
			w.Set(&p, text)
		}
		if i == 0 { // the species: the weights go by it
			p.Weights = seed.DefaultWeights(p.Species)
		}
	}
	for _, k := range seed.Keys() {
		known = append(known, k.Name)
		v, ok := t.items[k.Name]
		if !ok {
			if k.Required {
				r.fail(t.at(k.Name), "", missing, strings.TrimSpace(plain(k.Low)+" to "+plain(k.High)+" "+k.Unit), k.Means)
			}
			continue
		}
		if n, ok := r.seedNumber(t.at(k.Name), v, k); ok {
			k.Set(&p, n)
		}
	}
	for _, l := range seed.Lists() {
		known = append(known, l.Name)
		if v, ok := t.items[l.Name]; ok {
			r.seedList(t.at(l.Name), v, l, &p)
		}
	}
	r.unknown(t, known, seedSection)
	return &p
}

func (r *reader) seedNumber(path string, v any, k seed.Key) (float64, bool) {
	switch {
	case k.Whole:
		n, ok := r.count(path, v, int(k.Low), int(k.High))
		return float64(n), ok
	case k.Unit == "mm":
		l, ok := r.seedLength(path, v, measure.Length(k.Low), measure.Length(k.High))
		return l.MM(), ok
	case k.Unit == "L/min":
		q, ok := r.flow(path, v, measure.Flow(k.Low)*measure.LitrePerMinute, measure.Flow(k.High)*measure.LitrePerMinute)
		return q.LMin(), ok
	}
	return r.measured(path, v, k.Low, k.High, k.Unit)
}

// seedLength reads a length of seed or mesh, which the trade gives in mm in
// either system: a bare number is in millimetres.
func (r *reader) seedLength(path string, v any, low, high measure.Length) (measure.Length, bool) {
	if n, bare := number(v); bare {
		v = plain(n) + " mm"
	}
	return r.length(path, v, low, high)
}

// seedList reads one of the lists into the plan.
func (r *reader) seedList(path string, v any, l seed.List, p *seed.Plan) {
	list, ok := v.([]any)
	if !ok || len(list) > 104 {
		r.fail(path, show(v), "is not a list", "up to 104 entries", l.Means)
		return
	}
	var weights []seed.WeightPoint
	var weeks []seed.WeekRate
	for i, v := range list {
		at := entry(path, i)
		if len(l.Fields) == 0 {
			opening, ok := r.seedLength(at, v, 0.02*mm, 40*mm)
			if !ok {
				return
			}
			m := seed.Mesh{Name: plain(opening.MM()) + " mm", In: seed.Drum, Opening: opening}
			if l.Name == seed.KeyPipeMeshes {
				m.In = seed.Pipe
			}
			p.Meshes = append(p.Meshes, m)
			continue
		}
		items, ok := v.(map[string]any)
		if !ok {
			r.fail(at, show(v), "is not an entry", "", fmt.Sprintf("write {%s = …, %s = …}", l.Fields[0], l.Fields[1]))
			return
		}
		t := table{path: at, items: items, lines: r.lines}
		r.unknown(t, l.Fields, seedSection+"."+l.Name)
		pair, ok := r.seedPair(t, l, p.Growth)
		if !ok {
			return
		}
		if l.Name == seed.KeyWeights {
			weights = append(weights, seed.WeightPoint{Shell: seed.Shell(pair[0]), Each: measure.Mass(pair[1] * 1e-6)})
			continue
		}
		w := seed.WeekRate{Survival: pair[1] / 100}
		if p.Growth == seed.ByLength {
			w.Length = measure.Length(pair[0])
		} else {
			w.Weight = pair[0] / 100
		}
		weeks = append(weeks, w)
	}
	switch l.Name {
	case seed.KeyWeights:
		p.Weights = weights
	case seed.KeyWeekTable:
		p.WeekTable = weeks
	}
}

// seedPair reads the two numbers of an entry.
func (r *reader) seedPair(t table, l seed.List, g seed.Growth) (pair [2]float64, ok bool) {
	for i, name := range l.Fields {
		v, given := t.items[name]
		if !given {
			r.fail(t.at(name), "", missing, l.Units[i], l.Means)
			return pair, false
		}
		if name == "size" || name == "growth" && g == seed.ByLength {
			length, ok := r.seedLength(t.at(name), v, 0, 100*mm)
			if !ok {
				return pair, false
			}
			pair[i] = length.MM()
			continue
		}
		unit, most := entryRange(name)
		if pair[i], ok = r.measured(t.at(name), v, 0, most, unit); !ok {
			return pair, false
		}
	}
	return pair, true
}

// entryRange is the unit of an entry's number, but for lengths, and the most that
// is read in it: those of the section's key that says the same for every week.
func entryRange(name string) (unit string, most float64) {
	of := map[string]string{"growth": "growth_weight", "survival": "survival"}[name]
	for _, k := range seed.Keys() {
		if k.Name == of {
			return k.Unit, k.High
		}
	}
	return "mg", 1e7 // each: the plan itself holds it
}

// seedTemplate is the section's part of a job file to begin with.
func seedTemplate(b *strings.Builder) {
	b.WriteString("\n# The seed to be raised; take the # off the section's own line too.\n# [seed]\n")
	line := func(name, value, means string) { fmt.Fprintf(b, "# %-19s = %-13s # %s\n", name, value, means) }
	for _, w := range seed.Words() {
		line(w.Name, strconv.Quote(w.Default), w.Means+": "+strings.Join(w.Allowed, ", "))
	}
	for _, k := range seed.Keys() {
		value, means := plain(k.Default), k.Means
		if k.Required {
			value = seedExample[k.Name]
		}
		if k.Unit != "" {
			means = k.Unit + ": " + means
		}
		line(k.Name, value, means)
	}
	for _, l := range seed.Lists() {
		value := "[0.3, 0.6]"
		switch {
		case slices.Contains(l.Fields, "each"):
			value = "[{size = 1, each = 0.21}, {size = 5, each = 27}]"
		case len(l.Fields) > 0:
			value = "[{growth = 0.5, survival = 95}]"
		}
		line(l.Name, value, l.Means)
	}
}

// seedExample shows the keys that must be given.
var seedExample = map[string]string{"count": "500000", "size": "1.0"}
