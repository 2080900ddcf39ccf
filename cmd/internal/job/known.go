package job

import (
	"math/big"
	"regexp"
	"slices"
	"strings"
	"sync"

	"silowright/bom"
	"silowright/bom/money"
	"silowright/bom/work"
	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/stock"
	"silowright/nursery"
	"silowright/nursery/seed"
)

// Kind says what a key holds.
type Kind string

// The kinds. A number may be written as text with a unit where Means or High
// says so.
const (
	KindLength Kind = "length"
	KindCount  Kind = "count"
	KindNumber Kind = "number"
	KindWord   Kind = "word" // one of Field.Words
	KindPipe   Kind = "pipe" // a nominal size of the tables
	KindText   Kind = "text"
	KindYes    Kind = "yes"  // true or false
	KindList   Kind = "list" // TOML's own writing
)

// knownKey is a key a job file can have, by its name without entry numbers.
type knownKey struct {
	section, name string
	means         string
	fallback      func(u measure.Unit) string
	// probe reads a value that nothing takes, for the reader to say what it
	// wants instead.
	probe func(r *reader, v any)
	kind  Kind // given where there is nothing to probe
	// unit is what a bare number is in where that is not the job's own; such a
	// number is written bare, for in quotes it would be in the job's.
	unit string
}

func (k knownKey) key() string {
	if k.section == "" {
		return k.name
	}
	return k.section + "." + k.name
}

func fixed(s string) func(measure.Unit) string { return func(measure.Unit) string { return s } }

// topFields are the keys above the first section.
var topFields = []knownKey{
	{name: "name", means: "printed on every page", fallback: fixed("nursery silos"), probe: func(r *reader, v any) { r.title("name", v, 60) }},
	{name: "units", means: "what a bare number means", fallback: fixed("in"), probe: func(r *reader, v any) { r.word("units", v, []string{"in", "mm"}) }},
	{name: "drum_silos", means: "how many drum silos to build", probe: func(r *reader, v any) { r.count("drum_silos", v, 0, maxCount) }},
	{name: "pipe_silos", means: "how many pipe silos to build; 0 for none", probe: func(r *reader, v any) { r.count("pipe_silos", v, 0, maxCount) }},
	{name: "currency", means: "three letters, as on the price list", fallback: fixed("USD"), kind: KindText},
	{name: "projection", means: "of the drawings: third or first angle", fallback: func(u measure.Unit) string { return string(geometry.DefaultProjection(u)) },
		probe: func(r *reader, v any) {
			r.word("projection", v, []string{string(geometry.ThirdAngle), string(geometry.FirstAngle)})
		}},
}

// drumFields are the keys of one [[drum]].
func drumFields() []knownKey {
	low, high := geometry.Drum{Outside: minOutside}.Circumference(), geometry.Drum{Outside: maxOutside}.Circumference()
	out := []knownKey{
		{section: "drum", name: "label", means: "at most 20 letters; files are named for it", probe: func(r *reader, v any) { r.title("label", v, maxLabel) }},
		{section: "drum", name: "count", means: "how many drums of this kind", probe: func(r *reader, v any) { r.count("count", v, 0, maxCount) }},
		{section: "drum", name: "circumference", means: "tape round the plain wall", probe: func(r *reader, v any) { r.length("c", v, low, high) }},
		{section: "drum", name: "outside", means: "outside diameter of the plain wall, in place of the circumference", probe: func(r *reader, v any) { r.length("o", v, minOutside, maxOutside) }},
	}
	for _, m := range drumMeasures {
		out = append(out, knownKey{section: "drum", name: m.key, means: m.means, probe: func(r *reader, v any) { r.length(m.key, v, m.low, m.high) }})
	}
	out = append(out, knownKey{section: "drum", name: "hoops", means: "lowest first, both edges measured up from the foot", kind: KindList})
	for _, h := range []struct {
		name, means string
		low, high   measure.Length
	}{{"from", "foot up to the hoop's lower edge", 0, 2500 * mm}, {"to", "foot up to its upper edge", 0, 2500 * mm},
		{"outside", "diameter over the hoop", minOutside, maxOutside + 200*mm}} {
		out = append(out, knownKey{section: "drum.hoops", name: h.name, means: h.means, probe: func(r *reader, v any) { r.length(h.name, v, h.low, h.high) }})
	}
	return out
}

// ruleFields are the keys that rules cover.
func ruleFields() []knownKey {
	var out []knownKey
	for _, q := range rules {
		out = append(out, knownKey{section: q.section, name: q.name, means: means[q.key()], probe: func(r *reader, v any) { q.read(r, q.key(), v) }})
	}
	return out
}

// siteFields are the keys about parts measured, money and work.
func siteFields() []knownKey {
	var out []knownKey
	put := func(section, name, means string, fallback func(measure.Unit) string, probe func(*reader, any)) {
		out = append(out, knownKey{section: section, name: name, means: means, fallback: fallback, probe: probe})
	}
	text := func(section, name, means, fallback string) {
		out = append(out, knownKey{section: section, name: name, means: means, fallback: fixed(fallback), kind: KindText})
	}
	text("prices", "file", "the price list, beside the job file", "prices.csv")
	put("prices", "decimal", "how numbers in the price list are written", fixed("point"), func(r *reader, v any) { r.word("decimal", v, []string{"point", "comma"}) })
	for _, k := range fittingKinds() {
		for _, m := range k.measures {
			put("fittings."+k.name, m.key, m.means, nil, func(r *reader, v any) { r.length(m.key, v, m.low, m.high) })
		}
		for _, q := range k.words {
			put("fittings."+k.name, q.key, q.means, fixed(q.words[0]), func(r *reader, v any) { r.word(q.key, v, q.words) })
		}
	}
	share := func(section, name, means, fallback string) {
		put(section, name, means, fixed(fallback), func(r *reader, v any) {
			var s bom.Share
			r.share(table{items: map[string]any{name: v}}, name, &s)
		})
	}
	amount := func(section, name, means, fallback string) {
		put(section, name, means, fixed(fallback), func(r *reader, v any) {
			m := money.Money{Currency: "USD"}
			r.money(table{items: map[string]any{name: v}}, name, &m)
		})
	}
	share("buying", "tax", `of goods: a fraction of one, or text such as "8.25 %"`, "0")
	put("buying", "tax_shipping", "shipping is taxed too", fixed("false"), func(r *reader, v any) { r.yes("tax_shipping", v) })
	share("buying", "contingency", "added to everything for what nobody thought of", "0")
	put("buying", "quote_days", "a quotation older than this is warned of; left out: never", fixed(""), func(r *reader, v any) { r.count("quote_days", v, 0, 36500) })
	text("buying", "date", "the day quotations are aged by; left out: the newest quotation's own", "")
	var b bom.Bench
	for _, k := range benchKeys(&b) {
		put("bench", k.name, k.means, func(u measure.Unit) string {
			d := defaultBench(u)
			for _, o := range benchKeys(&d) {
				if o.name == k.name {
					return written(*o.to, u)
				}
			}
			return ""
		}, func(r *reader, v any) { r.length(k.name, v, 0, k.high) })
	}
	text("supplier", "name", "the name in the price list", "")
	amount("supplier", "shipping", "what an order's shipping costs", "0")
	amount("supplier", "free_from", "goods from which shipping is free", "")
	amount("supplier", "minimum", "least goods of an order", "0")
	share("supplier", "tax", "where it is not that of [buying]", "")
	text("choose", "", "an item that comes from this supplier whatever others ask", "")
	out = append(out, knownKey{section: "exchange", means: "what one unit of this currency costs in the job's own", fallback: fixed(""), kind: KindNumber},
		knownKey{section: "on_hand", means: "what is on the rack: " + heldExample, fallback: fixed(""), kind: KindList})
	text("pipe_run", "name", "what the pipe is for", "manifold")
	put("pipe_run", "pipe", "nominal size of the pipe", nil, func(r *reader, v any) { r.pipeSize("pipe", v) })
	put("pipe_run", "series", "series of the pipe", fixed(""), func(r *reader, v any) { r.word("series", v, pipeSeries()) })
	put("pipe_run", "length", "how long each piece is", nil, func(r *reader, v any) { r.length("length", v, 10*mm, 100000*mm) })
	put("pipe_run", "count", "how many pieces", fixed("1"), func(r *reader, v any) { r.count("count", v, 0, maxCount) })
	for _, k := range rateKeys {
		put("rates", k.name, k.means, func(u measure.Unit) string { return k.write(bom.DefaultRates(), u) }, func(r *reader, v any) {
			var q bom.Rates
			k.read(r, k.name, v, &q)
		})
	}
	amount(work.Section, "wage", "what an hour costs, in the job's currency", "0")
	for _, k := range work.Keys() {
		put(work.Section, k.Name, k.Means, fixed(plain(k.Get(work.DefaultRates()))), func(r *reader, v any) {
			var q work.Rates
			r.workKey(k.Name, v, k, &q)
		})
	}
	return append(out, growingFields()...)
}

// growingFields are the keys about water and seed.
func growingFields() []knownKey {
	var out []knownKey
	for _, k := range nursery.Keys() {
		fallback := func(u measure.Unit) string {
			switch {
			case k.Default == "":
				return ""
			case k.Kind == nursery.KindFlow || k.Kind == nursery.KindPower:
				return strings.TrimSuffix(k.Default, " "+k.Unit) + " " + k.Unit
			}
			return strings.Trim(farmDefault(k, u), `"`)
		}
		q := knownKey{section: k.Section, name: k.Name, means: farmMeaning(k), fallback: fallback, probe: func(r *reader, v any) { r.farmValue(k.Name, v, k) }}
		if k.Kind == nursery.KindPoints {
			q.kind, q.probe = KindList, nil
		}
		out = append(out, q)
	}
	out = append(out, knownKey{section: "pump", name: energyKey, means: "what a kilowatt hour costs, in the job's currency", fallback: fixed(""), kind: KindText})
	for _, w := range seed.Words() {
		out = append(out, knownKey{section: seedSection, name: w.Name, means: w.Means, fallback: fixed(w.Default), probe: func(r *reader, v any) { r.word(w.Name, v, w.Allowed) }})
	}
	for _, k := range seed.Keys() {
		q := knownKey{section: seedSection, name: k.Name, means: k.Means, probe: func(r *reader, v any) { r.seedNumber(k.Name, v, k) }}
		fallback := plain(k.Default)
		switch {
		case k.Required:
			fallback = ""
		case k.Unit == "mm" || k.Unit == "L/min":
			fallback += " " + k.Unit
		}
		if q.fallback = fixed(fallback); k.Unit == "mm" {
			q.unit = k.Unit
		}
		out = append(out, q)
	}
	for _, l := range seed.Lists() {
		out = append(out, knownKey{section: seedSection, name: l.Name, means: l.Means, fallback: fixed(""), kind: KindList})
	}
	return out
}

// catalogue lists every key a job file can have, in the order of Template.
var catalogue = sync.OnceValue(func() []knownKey {
	return slices.Concat(topFields, drumFields(), ruleFields(), siteFields())
})

// wants is what the reader asks of a key: its kind and what it allows.
type wants struct {
	kind      Kind
	low, high string
	words     []string
	unit      string
	bare      bool // a number by itself is written without quotes
}

// kindsOf says by the reader's complaint what a key holds.
var kindsOf = map[string]Kind{
	"is not a length": KindLength, "is not a whole number": KindCount, "is not a number": KindNumber, "is not a share": KindNumber,
	"is not known here": KindWord, "is not a pipe size of the tables": KindPipe, "is not a stopper's number": KindWord, "is not yes or no": KindYes,
}

// asks finds out what a key wants by offering it what nothing takes.
func (k knownKey) asks(u measure.Unit) wants {
	w := wants{kind: k.kind}
	if k.probe == nil {
		return w
	}
	r := &reader{units: u, stoppers: map[string]geometry.StopperMeasure{}}
	k.probe(r, struct{}{})
	if len(r.errs) == 0 {
		w.kind = KindText
		return w
	}
	e := r.errs[0]
	w.kind = kindsOf[e.Why]
	w.bare = w.kind == KindCount || w.kind == KindNumber || e.Why == "is not a flow" || e.Why == "is not a power" || k.unit != ""
	if w.kind == "" {
		w.kind = KindText
	}
	switch w.kind {
	case KindWord, KindPipe:
		if e.Allowed != "" {
			w.words = strings.Split(e.Allowed, ", ")
		}
		if e.Why == "is not a stopper's number" {
			for _, s := range stock.Stoppers() {
				w.words = append(w.words, s.Number)
			}
		}
	case KindYes:
		w.words = []string{"true", "false"}
	default:
		w.low, w.high, _ = strings.Cut(e.Allowed, " to ")
		if at := strings.LastIndexByte(w.high, ' '); at > 0 && w.kind != KindLength {
			w.high, w.unit = w.high[:at], w.high[at+1:]
		}
		switch {
		case e.Why == "is not a flow":
			w.low, w.high, _ = strings.Cut(e.Allowed, " to ")
			w.unit = ""
		case w.high == "" || w.kind == KindText && w.unit != "mL" && w.unit != "W":
			w.low, w.high, w.unit = "", "", ""
		}
	}
	if k.unit != "" {
		w.unit = k.unit
	}
	return w
}

// asked keeps what every key wants, by units.
var asked = [2]func() map[string]wants{
	sync.OnceValue(func() map[string]wants { return askAll(measure.UnitInch) }),
	sync.OnceValue(func() map[string]wants { return askAll(measure.UnitMM) }),
}

func askAll(u measure.Unit) map[string]wants {
	out := map[string]wants{}
	for _, k := range catalogue() {
		out[k.key()] = k.asks(u)
	}
	return out
}

// general is a path's key by its name in the catalogue: without entry numbers,
// without the drum that a section is of, and without the names that items and
// fittings go by.
func general(path []step) string {
	if len(path) > 2 && path[0].name == "drum" && path[1].name != "hoops" {
		path = path[1:]
	}
	var names []string
	for _, s := range path {
		names = append(names, s.name)
	}
	switch {
	case len(names) == 4 && names[0] == "fittings":
		return names[0] + "." + names[1] + "." + names[3]
	case len(names) == 2 && slices.Contains([]string{"choose", "exchange", "on_hand"}, names[0]):
		return names[0] + "."
	}
	return strings.Join(names, ".")
}

// listed are the names that an entry number may stand behind.
var listed = []string{"drum", "hoops", "supplier", "pipe_run", "on_hand"}

// wantsAt is what a path's key wants, and whether a job file can have it. An
// entry of a list is a list.
func wantsAt(path []step) (wants, bool) {
	for i, s := range path {
		if s.index >= 0 && !slices.Contains(listed, s.name) && (i == 0 || path[0].name != "on_hand") {
			return wants{}, false
		}
	}
	last := path[len(path)-1]
	if last.index >= 0 {
		whole := last
		whole.index = -1
		return wants{kind: KindList}, len(path) == 1 || general(append(slices.Clone(path[:len(path)-1]), whole)) == "drum.hoops"
	}
	for _, s := range path[:len(path)-1] { // an entry's key names the entry
		if s.index < 0 && (s.name == "drum" || s.name == "supplier" || s.name == "pipe_run" || s.name == "hoops") {
			return wants{}, false
		}
	}
	w, ok := asked[0]()[general(path)]
	return w, ok
}

var bareNumber = regexp.MustCompile(`^[+-]?[0-9]{1,15}(\.[0-9]{1,15})?$`)

// encode writes a value for the file as its kind is written.
func (w wants) encode(value string) string {
	if w.bare {
		if r, ok := new(big.Rat).SetString(value); ok && bareNumber.MatchString(value) {
			if n := strings.TrimPrefix(value, "+"); len(n) > 1 && n[0] == '0' && n[1] != '.' {
				return plain(ratFloat(r)) // TOML has no leading zeros
			}
			return value
		}
	}
	switch w.kind {
	case KindYes:
		if low := strings.ToLower(value); low == "true" || low == "false" {
			return low
		}
	case KindList:
		if strings.ContainsAny(value[:1], `[{"'`) || bareNumber.MatchString(value) {
			return value
		}
	}
	return quoteTOML(value)
}

func ratFloat(r *big.Rat) float64 {
	f, _ := r.Float64()
	return f
}
