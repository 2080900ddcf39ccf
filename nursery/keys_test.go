package nursery

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/nursery/manifold"
	"silowright/nursery/seed"
)

// other is a value that a key allows and that is not its default.
func other(k Key) Value {
	switch k.Kind {
	case KindYesNo:
		return Value{Yes: true}
	case KindWord:
		return Value{Text: k.Words[len(k.Words)-1]}
	case KindPipe:
		return Value{Text: "3"}
	case KindPoints:
		return Value{Points: []manifold.Point{{Flow: 0, Head: 9000}, {Flow: 6e6, Head: 2000}}}
	case KindCount:
		return Value{Number: k.High}
	}
	return Value{Number: k.Low + (k.High-k.Low)/3}
}

// Every key gives back what was set, changes nothing else, and refuses what
// lies outside its range by its own name.
func TestKeysRoundTrip(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range Keys() {
		if seen[k.At()] || k.Means == "" || k.Section == "" {
			t.Errorf("%s: named twice, or means nothing", k.At())
		}
		seen[k.At()] = true
		f, v := DefaultFarm(), other(k)
		if err := k.Set(&f, v); err != nil {
			t.Errorf("%s: %v", k.At(), err)
			continue
		}
		got := k.Get(f)
		if math.Abs(got.Number-v.Number) > 1e-9*(1+math.Abs(v.Number)) || got.Text != v.Text || k.Kind == KindYesNo && !got.Yes || !slices.Equal(got.Points, v.Points) {
			t.Errorf("%s: set %+v, got %+v", k.At(), v, got)
		}
		for _, o := range Keys() {
			if o.At() != k.At() && !cmp.Equal(o.Get(f), o.Get(DefaultFarm())) {
				t.Errorf("%s changes %s", k.At(), o.At())
			}
		}
		var wrong []Value
		switch k.Kind {
		case KindYesNo:
			continue
		case KindWord, KindPipe:
			wrong = []Value{{Text: "sideways"}}
		case KindPoints:
			wrong = []Value{{Points: []manifold.Point{{Flow: -1e9, Head: 1}}}, {Points: []manifold.Point{{Flow: 1, Head: measure.Length(math.NaN())}}}}
		default:
			wrong = []Value{{Number: k.Low - 1}, {Number: k.High + 1}, {Number: math.NaN()}, {Number: math.Inf(1)}}
		}
		if k.Kind == KindCount {
			wrong = append(wrong, Value{Number: 0.5})
		}
		before := f
		for _, v := range wrong {
			err := k.Set(&f, v)
			if err == nil || !strings.HasPrefix(err.Error(), k.At()+": ") || !strings.Contains(err.Error(), "allowed") || strings.Contains(err.Error(), "\n") {
				t.Errorf("%s: %+v: %v", k.At(), v, err)
			}
		}
		if !cmp.Equal(before, f) {
			t.Errorf("%s: a refused value was written", k.At())
		}
	}
}

// The defaults that the keys print are those of DefaultFarm.
func TestKeyDefaults(t *testing.T) {
	for _, k := range Keys() {
		v, want := k.Get(DefaultFarm()), ""
		switch k.Kind {
		case KindYesNo:
			want = fmt.Sprint(v.Yes)
		case KindWord, KindPipe:
			want = v.Text
		case KindPoints:
		case KindLength:
			want = plain(v.Number) + " mm"
			if v.Number == (3 * measure.Foot).MM() {
				want = "3 ft"
			}
		default:
			want = plain(v.Number)
			if k.Unit == "%" {
				want += " %"
			}
		}
		if k.Default != want && k.At() != "water.below_ground" {
			t.Errorf("%s: default %q, DefaultFarm has %q", k.At(), k.Default, want)
		}
	}
	if err := DefaultFarm().Check(); err != nil {
		t.Error(err)
	}
	if g := DefaultFarm().Given(); g != (Given{}) {
		t.Errorf("%+v", g)
	}
}

// What does not fit together is refused by the key to change.
func TestCheckNamesTheKey(t *testing.T) {
	curve := []manifold.Point{{Flow: 0, Head: 9000}, {Flow: 6e6, Head: 2000}}
	for _, c := range []struct {
		key    string
		change func(*Farm)
	}{
		{"water.salinity", func(f *Farm) { f.Supply.Salinity = 43 }},
		{"water.temperature", func(f *Farm) { f.Supply.Temperature = -1 }},
		{"water.flow", func(f *Farm) { f.Supply.Each = -1 }},
		{"water.outlet_hose_bore", func(f *Farm) { f.Supply.Hose.Length = 1000 }},
		{"water.below_ground", func(f *Farm) { f.Pump.Points = curve }},
		{"water.below_ground", func(f *Farm) { f.Pump.Power = 500 }},
		{"pump.curve", func(f *Farm) { *f = pumped(curve...); f.Pump.Power = 500 }},
		{"pump.curve", func(f *Farm) { *f = pumped(curve[0]) }},
		{"pump.curve.2.head", func(f *Farm) { *f = pumped(curve[0], manifold.Point{Flow: 6e6, Head: 9001}) }},
		{"pump.shut_off", func(f *Farm) { *f = pumped(); f.Pump.Duty = curve[1] }},
		{"pump.duty_head", func(f *Farm) { *f = pumped(); f.Pump.ShutOff = 2000; f.Pump.Duty = curve[1] }},
		{"pump.npsh", func(f *Farm) { f.Pump.NPSH = curve }},
		{"pump.npsh", func(f *Farm) { *f = pumped(curve...); f.Pump.NPSH = curve[:1] }},
		{"pump.efficiency", func(f *Farm) { f.Pump.Efficiency = 0 }},
		{"suction.pipe", func(f *Farm) { f.Suction.Length = 1000 }},
		{"suction.foot_valve", func(f *Farm) { f.Suction.FootValve = "flap" }},
		{"main.pipe", func(f *Farm) { f.Main.Length = 1000 }},
		{"main.pipe", func(f *Farm) { f.Main.Pipe = geometry.PipeRef{Size: "3", Series: "pn10"} }},
		{"manifold.pipe", func(f *Farm) { f.Manifold.Pipe.Size = "3.3" }},
		{"manifold.feed", func(f *Farm) { f.Manifold.Feed = "" }},
		{"lateral.valve_open", func(f *Farm) { f.Lateral.ValveOpen = 0 }},
		{"lateral.hose_bore", func(f *Farm) { f.Lateral.HoseBore = 2 }},
		{"bed.size", func(f *Farm) { f.Bed.Size = 0.05 }},
		{"bed.voidage", func(f *Farm) { f.Bed.Voidage = math.NaN() }},
		{"seed.count", func(f *Farm) {
			p := seed.Default(seed.Clam)
			p.Size = 2
			f.Plan = &p
		}},
	} {
		f := DefaultFarm()
		c.change(&f)
		err := f.Check()
		if err == nil || !strings.HasPrefix(err.Error(), c.key+":") || !strings.Contains(err.Error(), "hint: ") || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: %v", c.key, err)
		}
		if _, again := Solve([]Count{{invented(t), 2, 1}}, f); again == nil || again.Error() != err.Error() {
			t.Errorf("%s: solved all the same, %v", c.key, again)
		}
	}
	if _, err := Solve(nil, DefaultFarm()); err == nil || !strings.HasPrefix(err.Error(), "drum_silos: ") {
		t.Errorf("no silos: %v", err)
	}
	if _, err := Solve([]Count{{nil, 1, 0}}, DefaultFarm()); err == nil {
		t.Error("a kind without a silo")
	}
	if _, err := Solve([]Count{{invented(t), mostSilos + 1, 0}}, DefaultFarm()); err == nil {
		t.Error("too many silos")
	}
}
