package work

import (
	"math"
	"strings"
	"testing"
)

func TestDefaultRatesAreInRange(t *testing.T) {
	if err := DefaultRates().check(); err != nil {
		t.Error(err)
	}
}

// Each key reads and writes its own field, and no other key's.
func TestKeysGetAndSet(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range Keys() {
		if seen[k.Name] || k.Means == "" || k.Low > k.High {
			t.Errorf("%s: twice, without a meaning, or an empty range", k.Name)
		}
		seen[k.Name] = true
		r := DefaultRates()
		v := k.High
		if k.Get(r) == v {
			v = k.Low
		}
		if err := k.Set(&r, v); err != nil || k.Get(r) != v {
			t.Errorf("%s: set to %g, read %g, error %v", k.Name, v, k.Get(r), err)
		}
		for _, o := range Keys() {
			if o.Name != k.Name && o.Get(r) != o.Get(DefaultRates()) {
				t.Errorf("%s also sets %s", k.Name, o.Name)
			}
		}
	}
}

func TestCheckNamesKeyValueAndRange(t *testing.T) {
	for _, c := range []struct {
		key   string
		value float64
		want  string
	}{
		{"learning", 1.2, "work.learning: 1.2, too much, 0.5 to 1; hint: "},
		{"learning", math.NaN(), "work.learning: NaN, not a number, 0.5 to 1; hint: "},
		{"hours_per_day", 0, "work.hours_per_day: 0, too little, 0.5 to 24 h; hint: "},
		{"crew", 0, "work.crew: 0, too little, 1 to 1000; hint: "},
		{"clamps", 2.5, "work.clamps: 2.5, not a whole number, 1 to 100000; hint: "},
		{"screw", math.Inf(1), "work.screw: +Inf, too much, 0 to 1440 min; hint: "},
		{"full_cure", -1, "work.full_cure: -1, too little, 0 to 5000 h; hint: "},
	} {
		for _, k := range Keys() {
			if k.Name != c.key {
				continue
			}
			r := DefaultRates()
			if err := k.Set(&r, c.value); err == nil || !strings.HasPrefix(err.Error(), c.want) {
				t.Errorf("set %s: %v, want %s", c.key, err, c.want)
			}
			if r != DefaultRates() {
				t.Errorf("set %s wrote a refused value", c.key)
			}
		}
	}
	r := DefaultRates()
	r.Day = 25 * Hour
	if err := r.check(); err == nil || !strings.HasPrefix(err.Error(), "work.hours_per_day: 25, too much, 0.5 to 24 h; hint: ") {
		t.Error(err)
	}
	if _, err := Plan(build(1, 1), r); err == nil {
		t.Error("Plan took rates out of range")
	}
}

func TestMinutesText(t *testing.T) {
	for m, want := range map[Minutes]string{0: "0 min", 0.25: "0.25 min", 45: "45 min", 59.6: "1 h", 120: "2 h", 425: "7 h 05 min", -30: "-30 min", 6000.4: "100 h"} {
		if got := m.Text(); got != want {
			t.Errorf("%g: got %q, want %q", float64(m), got, want)
		}
	}
}
