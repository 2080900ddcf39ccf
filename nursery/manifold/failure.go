package manifold

import (
	"fmt"

	"silowright/geometry/measure"
)

// Standing is how everything stands when the power fails. All elevations are
// above one datum of the job's own.
type Standing struct {
	// Source is the elevation of the water that is pumped from; at low tide if
	// it is the sea.
	Source measure.Length
	// Pump is the elevation of the pump's centre.
	Pump measure.Length
	// Main is the highest point of the water's way in suction and main,
	// Manifold that in the manifold.
	Main, Manifold Peak
	// Check is a foot valve in the suction or a check valve in the main that
	// holds. Water still passes it from the source on.
	Check bool
	Silos []StandingSilo
}

// Peak is the highest point of a pipe. A vent or a vacuum breaker on it lets
// air in, so that no siphon runs over it.
type Peak struct {
	Height measure.Length
	Vented bool
}

// StandingSilo is one silo when the power fails.
type StandingSilo struct {
	Name string
	// Level is the water's level in it while the pump runs.
	Level measure.Length
	// Outlet is the invert of its outlet, over which it spills.
	Outlet measure.Length
	// Inlet is the invert of the opening through which water comes in: what
	// lies over it can run back. For a hose hung over the rim it is the hose's
	// end.
	Inlet measure.Length
	// Hose is the highest point of its lateral.
	Hose Peak
	// Check is a check valve in its lateral that holds, Shut a shut valve.
	Check, Shut bool
	// SeedTop is the elevation of the bed's top, SeedFoot that of the mesh.
	SeedTop, SeedFoot measure.Length
}

// Way is the way the water takes.
type Way string

// The ways.
const (
	// Stays: the silo stands at its outlet, or where it stood under it.
	Stays Way = "stays"
	// Back: it runs back through inlet, manifold and pump to the source.
	Back Way = "back to the source"
	// Across: it runs through the manifold into another silo and out there.
	Across Way = "across to a lower silo"
	// Onward: the source stands over the outlet and goes on feeding it.
	Onward Way = "on from the source by gravity"
)

// Failure is what comes of a power failure.
type Failure struct {
	Silos []SiloFailure // in the order of the silos
	// Prime is whether the pump keeps its water: it does when it stands no
	// higher than the source or behind a valve that holds.
	Prime bool
	// Dry counts the silos whose seed is left wholly or partly dry, Siphons
	// those that a siphon empties.
	Dry, Siphons int
}

// SiloFailure is what comes of one silo.
type SiloFailure struct {
	Name string
	Way  Way
	// Level is the lowest level at which its water comes to rest.
	Level measure.Length
	// Siphon is whether the water is drawn over a point higher than Level; a
	// vent or a vacuum breaker there ends it.
	Siphon bool
	// Bare is whether no water stands over the mesh, Part whether some of the
	// bed stands out of the water.
	Bare, Part bool
}

// Oxygen is what is said of the seed in still water.
const Oxygen = "How long seed lives in still water is not worked out: no published basis was found"

// siphonMost is the height over its level to which water can be drawn: the
// air's pressure less the vapour's is 10 m of it; less in practice, so that a
// siphon is taken to run where it may.
const siphonMost = 10 * measure.Metre

// PowerFailure says which way the water runs once the pump stops, down to what
// level, and whether seed is left dry. It is hydrostatics alone: every pipe is
// taken to be full at the start, every valve said to hold to hold, and each
// silo to run down to the lowest level that any open way allows; how fast is
// not said. A silo first spills down to its outlet. From there water runs on
// until it stands level with the far end, until the inlet's invert lets air in,
// or until it stands at a vented peak. An error names the input at fault.
func PowerFailure(s Standing) (Failure, error) {
	if err := s.check(); err != nil {
		return Failure{}, err
	}
	f := Failure{Silos: make([]SiloFailure, len(s.Silos)), Prime: s.Check || s.Pump <= s.Source}
	low := s.lowest()
	for i, silo := range s.Silos {
		r := s.after(i, low)
		r.Name = silo.Name
		r.Bare = r.Level <= silo.SeedFoot
		r.Part = !r.Bare && r.Level < silo.SeedTop
		f.Silos[i] = r
		if r.Bare || r.Part {
			f.Dry++
		}
		if r.Siphon && r.Way != Onward {
			f.Siphons++
		}
	}
	return f, nil
}

// still is the level once the silo has spilt down to its outlet.
func (o StandingSilo) still() measure.Length { return min(o.Level, o.Outlet) }

// end is the lowest level at which a silo takes in water from the manifold.
func (o StandingSilo) end() measure.Length {
	e := max(o.still(), o.Inlet)
	if o.Hose.Vented {
		e = max(e, o.Hose.Height)
	}
	return e
}

// lowest are the indices of the two silos that take in water at the lowest
// levels, −1 for none; the second is for the first's own way across.
func (s Standing) lowest() [2]int {
	low := [2]int{-1, -1}
	for i, o := range s.Silos {
		switch {
		case o.Shut:
		case low[0] < 0 || o.end() < s.Silos[low[0]].end():
			low = [2]int{i, low[0]}
		case low[1] < 0 || o.end() < s.Silos[low[1]].end():
			low[1] = i
		}
	}
	return low
}

// after is what comes of silo i.
func (s Standing) after(i int, low [2]int) SiloFailure {
	o := s.Silos[i]
	f := SiloFailure{Way: Stays, Level: o.still()}
	if o.Shut {
		return f
	}
	if to, siphon := run(s.Source, o.Inlet, o.Outlet, []Peak{s.Main, s.Manifold, o.Hose}); to < s.Source {
		return SiloFailure{Way: Onward, Level: o.Outlet, Siphon: siphon}
	}
	if o.Check {
		return f
	}
	if !s.Check {
		if to, siphon := run(o.still(), o.Inlet, s.Source, []Peak{o.Hose, s.Manifold, s.Main}); to < f.Level {
			f.Way, f.Level, f.Siphon = Back, to, siphon
		}
	}
	k := low[0]
	if k == i {
		k = low[1]
	}
	if k >= 0 {
		if to, siphon := run(o.still(), o.Inlet, s.Silos[k].end(), []Peak{o.Hose, s.Manifold, s.Silos[k].Hose}); to < f.Level {
			f.Way, f.Level, f.Siphon = Across, to, siphon
		}
	}
	return f
}

// run is the level to which water at from falls on its way over the peaks to
// the level end, and whether it does so by a siphon. It falls no further than
// the inlet at which it goes in, or comes out, and stays at from where no water
// passes.
func run(from, inlet, end measure.Length, peaks []Peak) (to measure.Length, siphon bool) {
	to = max(end, inlet)
	for _, p := range peaks {
		if p.Vented {
			to = max(to, p.Height)
		} else if p.Height > from+siphonMost {
			return from, false
		}
	}
	if to >= from {
		return from, false
	}
	for _, p := range peaks {
		siphon = siphon || p.Height > to
	}
	return to, siphon
}

// Says is one sentence on the silo, lengths in u first.
func (f SiloFailure) Says(u measure.Unit) string {
	seed := "the seed stays under water"
	switch {
	case f.Bare:
		seed = "the seed is left dry"
	case f.Part:
		seed = "the top of the bed is left dry"
	}
	at := f.Level.Both(u)
	switch f.Way {
	case Stays:
		return fmt.Sprintf("%s: water stays at %s; %s", f.Name, at, seed)
	case Onward:
		return fmt.Sprintf("%s: water runs %s and keeps it at %s or over; %s", f.Name, f.Way, at, seed)
	}
	how := ""
	if f.Siphon {
		how = ", drawn by a siphon that a vent at the highest point would end,"
	}
	return fmt.Sprintf("%s: water runs %s%s down to %s; %s", f.Name, f.Way, how, at, seed)
}

// Says sums up in a few sentences.
func (f Failure) Says() string {
	text := fmt.Sprintf("When the power fails no seed in %d silos is left dry.", len(f.Silos))
	if f.Dry > 0 {
		text = fmt.Sprintf("When the power fails seed is left dry in %d of %d silos: fit a check valve that holds, or a vented peak over the seed.", f.Dry, len(f.Silos))
	}
	if f.Siphons > 0 {
		text += fmt.Sprintf(" A siphon draws down %d.", f.Siphons)
	}
	if f.Prime {
		text += " The pump keeps its water."
	} else {
		text += " The pump loses its water and must be primed before it is started."
	}
	return text + " " + Oxygen + "."
}

func (s Standing) check() error {
	line := []struct {
		key string
		h   measure.Length
	}{{"source", s.Source}, {"pump.elevation", s.Pump}, {"main.peak", s.Main.Height}, {"manifold.peak", s.Manifold.Height}}
	for _, e := range line {
		if err := elevation(e.key, e.h); err != nil {
			return err
		}
	}
	if len(s.Silos) == 0 || len(s.Silos) > maxLaterals {
		return fmt.Errorf("silos: %d given, from 1 to %d are looked at; hint: one for each lateral", len(s.Silos), maxLaterals)
	}
	for i, o := range s.Silos {
		for _, e := range []struct {
			key string
			h   measure.Length
		}{{"level", o.Level}, {"outlet", o.Outlet}, {"inlet", o.Inlet}, {"hose.peak", o.Hose.Height}, {"seed.top", o.SeedTop}, {"seed.foot", o.SeedFoot}} {
			if !within(e.h.Metres(), -maxHead, maxHead) {
				return elevation(fmt.Sprintf("silos.%d.%s", i+1, e.key), e.h)
			}
		}
		if o.SeedTop < o.SeedFoot {
			return fmt.Errorf("silos.%d.seed.top: %s, under its foot at %s; hint: both are elevations",
				i+1, o.SeedTop.Both(measure.UnitMM), o.SeedFoot.Both(measure.UnitMM))
		}
	}
	return nil
}
