package job

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"

	"silowright/geometry/measure"
	"silowright/nursery"
	"silowright/nursery/manifold"
)

// farmSections lists the sections on water, in the order of nursery.Keys.
func farmSections() []string {
	var out []string
	for _, k := range nursery.Keys() {
		if len(out) == 0 || out[len(out)-1] != k.Section {
			out = append(out, k.Section)
		}
	}
	return out
}

// farm reads what the job says of water, pump and pipes, and of seed.
func (r *reader) farm(top table, f *File) {
	f.Farm = nursery.DefaultFarm()
	for _, section := range farmSections() {
		t, ok := r.table(top, section)
		if !ok {
			continue
		}
		var known []string
		for _, k := range nursery.Keys() {
			if k.Section != section {
				continue
			}
			known = append(known, k.Name)
			v, ok := t.items[k.Name]
			if !ok {
				continue
			}
			if value, ok := r.farmValue(t.at(k.Name), v, k); ok {
				if err := k.Set(&f.Farm, value); err != nil {
					r.refused(t.at(k.Name), err)
				}
			}
		}
		if section == "pump" {
			known = append(known, energyKey)
			f.Energy = r.energy(t, f.Currency)
		}
		r.unknown(t, known, section)
	}
	f.Farm.Plan = r.seed(top)
	if len(r.errs) > 0 {
		return
	}
	if err := f.Farm.Check(); err != nil {
		r.refused("", err)
	}
}

// energyKey is the key of [pump] that is about money, which the nursery does not
// know of.
const energyKey = "kwh_price"

// energy reads what a kilowatt hour costs in the job's currency; nil when it is
// not told. It may have more digits than the currency.
func (r *reader) energy(t table, currency string) *big.Rat {
	v, ok := t.items[energyKey]
	if !ok {
		return nil
	}
	text, ok := v.(string)
	if n, bare := number(v); bare {
		text, ok = plain(n), true
	}
	price, fine := new(big.Rat).SetString(strings.TrimSpace(text))
	if !ok || !fine || len(text) > 24 || strings.ContainsAny(text, "eE/xX_") || price.Sign() < 0 || price.Cmp(mostRate) > 0 {
		r.fail(t.at(energyKey), show(v), "is not a price", "0 to 1000000 "+currency, `what a kilowatt hour costs, as in "0.185"`)
		return nil
	}
	return price
}

// refused notes an error that the nursery gives, which begins with the key.
func (r *reader) refused(path string, err error) {
	key, rest, _ := strings.Cut(err.Error(), ": ")
	why, hint, _ := strings.Cut(rest, "; hint: ")
	if path == "" {
		path = key
	}
	r.errs = append(r.errs, &Error{File: r.file, Line: r.lines.of(path), Key: key, Why: why, Hint: hint})
}

// farmValue reads a value of a key's kind.
func (r *reader) farmValue(path string, v any, k nursery.Key) (nursery.Value, bool) {
	var out nursery.Value
	ok := true
	switch k.Kind {
	case nursery.KindLength:
		var l measure.Length
		l, ok = r.length(path, v, measure.Length(k.Low), measure.Length(k.High))
		out.Number = l.MM()
	case nursery.KindFlow:
		var q measure.Flow
		q, ok = r.flow(path, v, measure.Flow(k.Low)*measure.LitrePerMinute, measure.Flow(k.High)*measure.LitrePerMinute)
		out.Number = q.LMin()
	case nursery.KindPower:
		out.Number, ok = r.power(path, v, k.Low, k.High)
	case nursery.KindYesNo:
		before := len(r.errs)
		out.Yes = r.yes(path, v)
		ok = len(r.errs) == before
	case nursery.KindWord:
		out.Text, ok = r.word(path, v, k.Words)
	case nursery.KindPipe:
		out.Text, ok = r.pipeSize(path, v)
	case nursery.KindPoints:
		out.Points, ok = r.points(path, v)
	case nursery.KindCount:
		var n int
		n, ok = r.count(path, v, int(k.Low), int(k.High))
		out.Number = float64(n)
	default:
		out.Number, ok = r.measured(path, v, k.Low, k.High, k.Unit)
	}
	return out, ok
}

// measured reads a number in a unit: bare, or text that ends in the unit, or
// for a temperature in °F. A percentage between 0 and 1 must be written with its
// unit: bare, 0.3 is as likely meant for 30 %.
func (r *reader) measured(path string, v any, low, high float64, unit string) (float64, bool) {
	told := v
	_, bare := number(v)
	if s, ok := v.(string); ok {
		text := strings.TrimSpace(s)
		fahrenheit := false
		if rest, is := strings.CutSuffix(text, "°F"); unit == "°C" && is {
			text, fahrenheit = rest, true
		}
		rest, named := strings.CutSuffix(text, unit)
		bare = !named
		f, err := strconv.ParseFloat(strings.TrimSpace(rest), 64)
		if err != nil || unit == "" {
			r.fail(path, show(v), "is not a number", plain(low)+" to "+plain(high)+" "+unit, `bare, or text with the unit, as in "`+plain(low)+" "+unit+`"`)
			return 0, false
		}
		if fahrenheit {
			f = (f - 32) * 5 / 9
		}
		v = f
	}
	if f, ok := number(v); ok && bare && strings.HasPrefix(unit, "%") && f > 0 && f < 1 {
		share := plain(math.Round(f*1e8) / 1e6)
		hint := fmt.Sprintf("write %s for %s %s", share, share, unit)
		if f >= low {
			hint += fmt.Sprintf(", or %q", plain(f)+" "+unit)
		}
		r.fail(path, show(told), "may be a share of one, and this is in "+unit, plain(low)+" to "+plain(high)+" "+unit, hint)
		return 0, false
	}
	return r.fraction(path, v, low, high, unit)
}

// flowUnits are the units a flow may be written in.
var flowUnits = []struct {
	name string
	per  measure.Flow
}{
	{"L/min", measure.LitrePerMinute}, {"L/s", measure.LitrePerSecond}, {"m3/h", measure.CubicMetrePerHour},
	{"m³/h", measure.CubicMetrePerHour}, {"gpm", measure.GallonPerMinute},
}

// flow reads a flow: text with its unit, or a bare number in gpm for a job in
// inches and in L/min for a metric one.
func (r *reader) flow(path string, v any, low, high measure.Flow) (measure.Flow, bool) {
	allowed := low.Both(r.units) + " to " + high.Both(r.units)
	per, text := measure.GallonPerMinute, ""
	if r.units == measure.UnitMM {
		per = measure.LitrePerMinute
	}
	n, ok := number(v)
	if s, isText := v.(string); isText {
		text, ok = strings.TrimSpace(s), false
		for _, u := range flowUnits {
			if rest, is := cutSuffixFold(text, u.name); is {
				f, err := strconv.ParseFloat(strings.TrimSpace(rest), 64)
				n, per, ok = f, u.per, err == nil
				break
			}
		}
	}
	q := measure.Flow(n) * per
	switch {
	case !ok || math.IsNaN(n) || math.IsInf(n, 0):
		r.fail(path, show(v), "is not a flow", allowed, `a number with its unit, as in "9 gpm" or "35 L/min"`)
		return 0, false
	case q < low || q > high:
		r.fail(path, show(v), "is out of range", allowed, "check the unit: gpm (US), L/min, L/s or m3/h")
		return 0, false
	}
	return q, true
}

func cutSuffixFold(s, suffix string) (string, bool) {
	if len(s) >= len(suffix) && strings.EqualFold(s[len(s)-len(suffix):], suffix) {
		return s[:len(s)-len(suffix)], true
	}
	return s, false
}

// power reads watts: bare, or text in W, kW or hp.
func (r *reader) power(path string, v any, low, high float64) (float64, bool) {
	n, ok := number(v)
	if s, isText := v.(string); isText {
		ok = false
		for _, u := range []struct {
			name string
			per  float64
		}{{"kW", 1000}, {"W", 1}, {"hp", float64(measure.Horsepower)}} {
			if rest, is := cutSuffixFold(strings.TrimSpace(s), u.name); is {
				f, err := strconv.ParseFloat(strings.TrimSpace(rest), 64)
				n, ok = f*u.per, err == nil
				break
			}
		}
	}
	if !ok {
		r.fail(path, show(v), "is not a power", plain(low)+" to "+plain(high)+" W", `watts, or text such as "5 hp" or "3.7 kW"`)
		return 0, false
	}
	if !(n >= low && n <= high) {
		r.fail(path, show(v), "is out of range", plain(low)+" to "+plain(high)+" W", "a bare number is in watts")
		return 0, false
	}
	return n, true
}

// points reads a curve: a list of {flow = …, head = …}.
func (r *reader) points(path string, v any) ([]manifold.Point, bool) {
	const example = `write [{flow = "0 gpm", head = "40 ft"}, {flow = "200 gpm", head = "32 ft"}]`
	list, ok := v.([]any)
	if !ok || len(list) == 0 || len(list) > 100 {
		r.fail(path, show(v), "is not a list of points", "1 to 100 points", example)
		return nil, false
	}
	var out []manifold.Point
	for i, v := range list {
		items, ok := v.(map[string]any)
		if !ok {
			r.fail(entry(path, i), show(v), "is not a point", "", example)
			return nil, false
		}
		t := table{path: entry(path, i), items: items, lines: r.lines}
		r.unknown(t, []string{"flow", "head"}, keyName(path))
		flow, head := items["flow"], items["head"]
		if flow == nil || head == nil {
			r.fail(t.path, "", missing, "flow and head", example)
			return nil, false
		}
		q, ok := r.flow(t.at("flow"), flow, 0, mostFlow)
		if !ok {
			return nil, false
		}
		if _, text := head.(string); !text {
			r.fail(t.at("head"), show(head), "has no unit", "0 to 500 m", `a head is text with its unit, as in "32 ft" or "9.5 m"`)
			return nil, false
		}
		h, ok := r.length(t.at("head"), head, 0, 500*measure.Metre)
		if !ok {
			return nil, false
		}
		out = append(out, manifold.Point{Flow: q, Head: h})
	}
	return out, true
}

// mostFlow is the most a curve's point may give.
const mostFlow = 100000 * measure.LitrePerMinute

// farmTemplate is the part of a job file to begin with that is about water and
// seed, every key as a comment with its default.
func farmTemplate(b *strings.Builder, u measure.Unit) {
	section := ""
	for _, k := range nursery.Keys() {
		if k.Section != section {
			section = k.Section
			fmt.Fprintf(b, "\n[%s] # %s\n", section, farmMeans[section])
			if section == "pump" {
				fmt.Fprintf(b, "# %-19s = %-13s # %s\n", energyKey, `"0.18"`, "what a kilowatt hour costs, in the job's currency")
			}
		}
		fmt.Fprintf(b, "# %-19s = %-13s # %s\n", k.Name, farmDefault(k, u), farmMeaning(k))
	}
	seedTemplate(b)
}

// farmDefault is a key's default, or an example where there is none, as the job
// file would have it.
func farmDefault(k nursery.Key, u measure.Unit) string {
	switch k.Kind {
	case nursery.KindPoints:
		return `[{flow = "0 gpm", head = "40 ft"}, {flow = "200 gpm", head = "32 ft"}]`
	case nursery.KindPipe:
		return `"3"`
	case nursery.KindWord:
		if k.Default == "" {
			return `"sch40"`
		}
		return strconv.Quote(k.Default)
	case nursery.KindLength:
		return strconv.Quote(written(measure.Length(k.Get(nursery.DefaultFarm()).Number), u))
	}
	return strings.TrimSpace(strings.TrimSuffix(k.Default, k.Unit))
}

// farmMeaning is a key's meaning with its unit.
func farmMeaning(k nursery.Key) string {
	switch {
	case k.Kind == nursery.KindLength || k.Unit == "":
		return k.Means
	case k.Kind == nursery.KindFlow:
		return k.Means + `; as in "9 gpm" or "35 L/min"`
	}
	return k.Unit + ": " + k.Means
}

// farmMeans says what the sections on water are for.
var farmMeans = map[string]string{
	"water":    "the sea water, and how much of it each silo is to have",
	"pump":     "its curve, or what its plate tells",
	"suction":  "from the water to the pump",
	"main":     "from the pump to the manifold",
	"manifold": "along the silos",
	"lateral":  "from the manifold to each silo",
	"bed":      "the seed as the water finds it",
	"failure":  "what there is against a power failure",
}
