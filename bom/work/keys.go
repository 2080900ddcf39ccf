package work

import (
	"fmt"
	"math"
	"strconv"
)

// Section is the job file's section that holds the rates.
const Section = "work"

// Key is one number of the rates as it stands in the job file.
type Key struct {
	Name      string  // within the section: "hours_per_day"
	Means     string  // what it is
	Unit      string  // what it is given in: "min", "h", "" for counts and fractions
	Low, High float64 // allowed, both ends counted in
	Whole     bool    // whole numbers only

	in      float64 // one of Unit, as the field holds it
	minutes func(*Rates) *Minutes
	number  func(*Rates) *float64
	count   func(*Rates) *int
}

// Get is the key's value in r, in Unit.
func (k Key) Get(r Rates) float64 {
	switch {
	case k.minutes != nil:
		return float64(*k.minutes(&r)) / k.in
	case k.count != nil:
		return float64(*k.count(&r))
	}
	return *k.number(&r)
}

// Set writes a value given in Unit into r. It refuses what Check refuses.
func (k Key) Set(r *Rates, v float64) error {
	if err := k.check(v); err != nil {
		return err
	}
	switch {
	case k.minutes != nil:
		*k.minutes(r) = Minutes(v * k.in)
	case k.count != nil:
		*k.count(r) = int(v)
	default:
		*k.number(r) = v
	}
	return nil
}

// check says what is wrong with a value.
func (k Key) check(v float64) error {
	why := ""
	switch {
	case math.IsNaN(v):
		why = "not a number"
	case v < k.Low:
		why = "too little"
	case v > k.High:
		why = "too much"
	case k.Whole && v != math.Trunc(v):
		why = "not a whole number"
	default:
		return nil
	}
	unit := k.Unit
	if unit != "" {
		unit = " " + unit
	}
	return fmt.Errorf("%s.%s: %s, %s, %s to %s%s; hint: %s", Section, k.Name, plain(v), why, plain(k.Low), plain(k.High), unit, k.Means)
}

func plain(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// check reports the first rate that is outside its key's range.
func (r Rates) check() error {
	for _, k := range Keys() {
		if err := k.check(k.Get(r)); err != nil {
			return err
		}
	}
	return nil
}

// Keys lists the keys in the order of the work.
func Keys() []Key {
	min := func(name, means string, f func(*Rates) *Minutes) Key {
		return Key{Name: name, Means: means, Unit: "min", High: 1440, in: 1, minutes: f}
	}
	once := func(name, means string, f func(*Rates) *Minutes) Key {
		return Key{Name: name, Means: means, Unit: "min", High: 14400, in: 1, minutes: f}
	}
	hours := func(name, means string, low, high float64, f func(*Rates) *Minutes) Key {
		return Key{Name: name, Means: means, Unit: "h", Low: low, High: high, in: 60, minutes: f}
	}
	count := func(name, means string, high float64, f func(*Rates) *int) Key {
		return Key{Name: name, Means: means, Low: 1, High: high, Whole: true, count: f}
	}
	return []Key{
		min("clean", "minutes to wash, check and measure one drum", func(r *Rates) *Minutes { return &r.Clean }),
		min("mark", "minutes to mark one drum", func(r *Rates) *Minutes { return &r.Mark }),
		min("jigsaw_metre", "minutes to saw one metre", func(r *Rates) *Minutes { return &r.Jigsaw }),
		min("smooth_metre", "minutes to smooth one metre of edge", func(r *Rates) *Minutes { return &r.Smooth }),
		min("bore", "minutes to bore one hole for the blade", func(r *Rates) *Minutes { return &r.Bore }),
		min("hole", "minutes to set out and cut one hole by hole saw", func(r *Rates) *Minutes { return &r.Hole }),
		min("mesh_disc", "minutes to cut, snip and lay in one mesh disc", func(r *Rates) *Minutes { return &r.MeshDisc }),
		min("ring", "minutes to bend in and trim one ring", func(r *Rates) *Minutes { return &r.Ring }),
		min("screw", "minutes to bore, drive and file one screw", func(r *Rates) *Minutes { return &r.Screw }),
		min("bead_metre", "minutes to run one metre of sealant or resin", func(r *Rates) *Minutes { return &r.Bead }),
		min("pipe_cut", "minutes to cut one pipe square", func(r *Rates) *Minutes { return &r.PipeCut }),
		min("socket", "minutes to prime, cement and hold one socket", func(r *Rates) *Minutes { return &r.Socket }),
		min("grommet", "minutes to fit one grommet or bulkhead fitting", func(r *Rates) *Minutes { return &r.Grommet }),
		min("stopper", "minutes to try and push in one stopper", func(r *Rates) *Minutes { return &r.Stopper }),
		min("seat", "minutes to seat one body in its base", func(r *Rates) *Minutes { return &r.Seat }),
		min("leak_test", "minutes of hands-on work in one leak test", func(r *Rates) *Minutes { return &r.LeakTest }),
		min("rinse", "minutes for each of three rinses of a drum silo", func(r *Rates) *Minutes { return &r.Rinse }),
		min("screen", "minutes to cut, stretch and clamp one screen", func(r *Rates) *Minutes { return &r.Screen }),
		min("trim", "minutes to take one clamp off and trim the screen", func(r *Rates) *Minutes { return &r.Trim }),
		min("pipe_rinse", "minutes for each of three rinses of a pipe silo", func(r *Rates) *Minutes { return &r.PipeRinse }),
		once("set_up", "minutes once a kind of drum silo: templates, jigs, trial holes", func(r *Rates) *Minutes { return &r.SetUp }),
		once("pipe_set_up", "minutes once a kind of pipe silo", func(r *Rates) *Minutes { return &r.PipeSetUp }),
		{Name: "learning", Means: "what each doubling of the count leaves of the time a silo takes; 1 is no learning", Low: 0.5, High: 1,
			number: func(r *Rates) *float64 { return &r.Learning }},
		count("crew", "how many people work at one time", 1000, func(r *Rates) *int { return &r.People }),
		hours("hours_per_day", "hours each person works a day", 0.5, 24, func(r *Rates) *Minutes { return &r.Day }),
		count("clamps", "pipe silos whose resin sets at one time", 100000, func(r *Rates) *int { return &r.Clamps }),
		hours("cement_cure", "hours until a cemented joint carries water; 0 takes the pipe maker's table for its size", 0, 1000, func(r *Rates) *Minutes { return &r.CementCure }),
		hours("sealant_cure", "hours until sealed parts are leak tested", 0, 1000, func(r *Rates) *Minutes { return &r.SealantCure }),
		hours("resin_cure", "hours until the clamp comes off", 0, 1000, func(r *Rates) *Minutes { return &r.ResinCure }),
		hours("full_cure", "hours of the maker's full cure of sealant and resin, before silos are soaked", 0, 5000, func(r *Rates) *Minutes { return &r.FullCure }),
		hours("leak_stand", "hours a silo stands filled in the leak test", 0, 1000, func(r *Rates) *Minutes { return &r.LeakStand }),
		hours("soak", "hours of each of the two soaks", 0, 1000, func(r *Rates) *Minutes { return &r.Soak }),
	}
}
