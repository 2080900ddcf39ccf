package nursery

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/stock"
	"silowright/nursery/manifold"
)

// Kind says what a key of the job file holds.
type Kind int

// The kinds.
const (
	KindLength Kind = iota // Number, mm
	KindFlow               // Number, L/min
	KindPower              // Number, W
	KindNumber             // Number, in the key's Unit
	KindCount              // Number, whole
	KindYesNo              // Yes
	KindWord               // Text, one of the key's Words
	KindPipe               // Text, a nominal size of stock's tables
	KindPoints             // Points of flow and head
)

// Value is what a key holds; which field counts goes by the key's Kind. Of
// water.below_ground, which has no default, Yes tells whether it was set.
type Value struct {
	Number float64
	Text   string
	Yes    bool
	Points []manifold.Point
}

// Key is one key of the job file on water. The seed's own stand in the package
// seed.
type Key struct {
	Section, Name string
	Means         string // one line for the job file's comment
	Kind          Kind
	// Unit of Number, Low and High: "mm", "L/min", "W", "%", "g/kg", "°C",
	// "m/s", "kg", "kg/m³", "h", or "" for a count or a ratio.
	Unit      string
	Low, High float64 // allowed, both ends counted in
	Words     []string
	// Default as the job file would have it; empty: none, the key is left out.
	Default string
	Basis   geometry.Basis // of the default

	get func(*Farm) Value
	set func(*Farm, Value)
}

// At is the key with its section: "pump.power".
func (k Key) At() string { return k.Section + "." + k.Name }

// Get is the key's value in f.
func (k Key) Get(f Farm) Value { return k.get(&f) }

// Set writes v to f. It refuses what the key's kind and range do not allow;
// what must fit together is held by Farm.Check.
func (k Key) Set(f *Farm, v Value) error {
	if err := k.check(v); err != nil {
		return err
	}
	k.set(f, v)
	return nil
}

// check says what is wrong with a value by itself.
func (k Key) check(v Value) error {
	switch k.Kind {
	case KindYesNo:
		return nil
	case KindWord:
		if !slices.Contains(k.Words, v.Text) {
			return k.fault(fmt.Sprintf("%.40q", v.Text), "not one of its words", strings.Join(k.Words, ", "))
		}
		return nil
	case KindPipe:
		if v.Text != "" && !slices.ContainsFunc(stock.Pipes(), func(p stock.Pipe) bool { return p.Size == v.Text }) {
			return k.fault(fmt.Sprintf("%.40q", v.Text), "not a pipe size of the tables", `a nominal size such as "3" or "110"`)
		}
		return nil
	case KindPoints:
		for _, p := range v.Points {
			if !within(p.Flow.LMin(), 0, mostLMin) {
				return k.fault(plain(p.Flow.LMin())+" L/min", "a flow out of range", "0 to 100000 L/min")
			}
			if !within(p.Head.Metres(), 0, 500) {
				return k.fault(plain(p.Head.Metres())+" m", "a head out of range", "0 to 500 m")
			}
		}
		return nil
	}
	why := ""
	switch {
	case math.IsNaN(v.Number):
		why = "not a number"
	case v.Number < k.Low-slack(k.Low):
		why = "too little"
	case v.Number > k.High+slack(k.High):
		why = "too much"
	case k.Kind == KindCount && v.Number != math.Trunc(v.Number):
		why = "not a whole number"
	default:
		return nil
	}
	return k.fault(k.unit(plain(v.Number)), why, k.unit(plain(k.Low)+" to "+plain(k.High)))
}

// slack lets a bound that was turned from another unit stand.
func slack(x float64) float64 { return 1e-9 * math.Abs(x) }

func (k Key) unit(s string) string {
	if k.Unit == "" {
		return s
	}
	return s + " " + k.Unit
}

func (k Key) fault(value, why, allowed string) error {
	return fmt.Errorf("%s: %s, %s, allowed: %s; hint: %s", k.At(), value, why, allowed, k.Means)
}

// plain writes a number to ten figures, which hides the rounding of a change
// of units.
func plain(v float64) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "out of range"
	}
	s, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 10, 64), 64)
	if err != nil {
		return "out of range"
	}
	return strconv.FormatFloat(s, 'f', -1, 64)
}

func within(x, low, high float64) bool { return x >= low && x <= high }

// mostLMin is the most that a pump is taken to give.
const mostLMin = 100000

// table builds keys section by section.
type table struct {
	section string
	basis   geometry.Basis
	keys    []Key
}

func (t *table) add(k Key, get func(*Farm) Value, set func(*Farm, Value)) *Key {
	k.Section, k.get, k.set = t.section, get, set
	k.Basis = t.basis
	t.keys = append(t.keys, k)
	return &t.keys[len(t.keys)-1]
}

// number is a key whose unit is scale of the field's own.
func number[T ~float64](t *table, kind Kind, name, unit string, scale, low, high float64, def, means string, field func(*Farm) *T) {
	t.add(Key{Name: name, Means: means, Kind: kind, Unit: unit, Low: low, High: high, Default: def},
		func(f *Farm) Value { return Value{Number: float64(*field(f)) / scale} },
		func(f *Farm, v Value) { *field(f) = T(v.Number * scale) })
}

func (t *table) length(name string, low, high measure.Length, def, means string, field func(*Farm) *measure.Length) {
	number(t, KindLength, name, "mm", 1, float64(low), float64(high), def, means, field)
}

func (t *table) percent(name string, low, high float64, def, means string, field func(*Farm) *float64) {
	number(t, KindNumber, name, "%", 0.01, low, high, def, means, field)
}

func (t *table) count(name string, high int, means string, field func(*Farm) *int) {
	t.add(Key{Name: name, Means: means, Kind: KindCount, High: float64(high), Default: "0"},
		func(f *Farm) Value { return Value{Number: float64(*field(f))} },
		func(f *Farm, v Value) { *field(f) = int(v.Number) })
}

func (t *table) yesNo(name, means string, field func(*Farm) *bool) {
	t.add(Key{Name: name, Means: means, Kind: KindYesNo, Default: "false"},
		func(f *Farm) Value { return Value{Yes: *field(f)} },
		func(f *Farm, v Value) { *field(f) = v.Yes })
}

func word[T ~string](t *table, name, means string, field func(*Farm) *T, words ...T) {
	k := Key{Name: name, Means: means, Kind: KindWord, Default: string(words[0])}
	for _, w := range words {
		k.Words = append(k.Words, string(w))
	}
	t.add(k, func(f *Farm) Value { return Value{Text: string(*field(f))} }, func(f *Farm, v Value) { *field(f) = T(v.Text) })
}

// pipe is a size and its series.
func (t *table) pipe(means string, field func(*Farm) *geometry.PipeRef) {
	t.add(Key{Name: "pipe", Means: means, Kind: KindPipe},
		func(f *Farm) Value { return Value{Text: field(f).Size} },
		func(f *Farm, v Value) { field(f).Size = v.Text })
	t.add(Key{Name: "series", Means: "series of that pipe", Kind: KindWord, Words: append([]string{""}, stock.Series()...)},
		func(f *Farm) Value { return Value{Text: field(f).Series} },
		func(f *Farm, v Value) { field(f).Series = v.Text })
	t.keys[len(t.keys)-1].Means += "; left out: sch40 for inch sizes, pn10 for metric ones"
}

func (t *table) points(name, means string, field func(*Farm) *[]manifold.Point) {
	t.add(Key{Name: name, Means: means, Kind: KindPoints},
		func(f *Farm) Value { return Value{Points: slices.Clone(*field(f))} },
		func(f *Farm, v Value) { *field(f) = slices.Clone(v.Points) })
}
