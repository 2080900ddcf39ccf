package manifold

import (
	"fmt"
	"math"
	"sort"

	"silowright/geometry/measure"
	"silowright/nursery/flow"
)

// Size is a pipe that can be bought.
type Size struct {
	Name            string
	Bore, Roughness measure.Length
}

// Limits are what pipes must hold.
type Limits struct {
	// Evenness is the least flow over the mean, 0 to 1; 0.9 is common practice,
	// no source.
	Evenness float64
	// Speed is the highest in main, manifold and hoses; 1.5 m/s (5 ft/s) is
	// common practice, no source. 0 is no limit.
	Speed measure.Speed
	// Flow is the least any silo must get; 0 is no limit.
	Flow measure.Flow
}

// Choices are the sizes to choose from for each part; none keeps the part as
// it is.
type Choices struct{ Main, Manifold, Laterals []Size }

// Chosen is what Recommend found.
type Chosen struct {
	// Held is whether any choice holds the limits. If none does, the choice
	// is the one that comes nearest, and Result shows what it misses.
	Held bool
	// Main, Manifold and Laterals are the sizes, empty where the part is kept.
	Main, Manifold, Laterals Size
	System                   System
	Result                   Result
	// Speed is the highest in main, manifold and hoses.
	Speed measure.Speed
	// Tried is how many choices were solved.
	Tried int
}

// mostChoices keeps a search from running for hours.
const mostChoices = 20000

// Recommend finds the smallest pipe that holds the limits: of all choices of
// one size each for main, manifold and laterals, that with the least volume of
// pipe. The K of fittings is kept. Choices are solved from the smallest up and
// the first that holds is the answer. An error names the input at fault.
func Recommend(s System, c Choices, l Limits) (Chosen, error) {
	switch {
	case !within(l.Evenness, 0, 1):
		return Chosen{}, fmt.Errorf("limits.evenness: %s, not from 0 to 1; hint: 0.9", number(l.Evenness))
	case !within(l.Speed.MS(), 0, 100):
		return Chosen{}, fmt.Errorf("limits.speed: %s, not from 0 to 100 m/s; hint: 1.5 m/s", l.Speed.Both(measure.UnitMM))
	case !within(l.Flow.M3S(), 0, maxFlow):
		return Chosen{}, badFlow("limits.flow", l.Flow)
	case max(len(c.Main), 1)*max(len(c.Manifold), 1)*max(len(c.Laterals), 1) > mostChoices:
		return Chosen{}, fmt.Errorf("sizes: %d × %d × %d choices, more than %d; hint: shorter lists",
			len(c.Main), len(c.Manifold), len(c.Laterals), mostChoices)
	}
	if err := s.check(); err != nil {
		return Chosen{}, err
	}
	best, miss := Chosen{}, math.Inf(1)
	for k, try := range s.choices(c) {
		sys := s.sized(try)
		r, err := Solve(sys)
		if err != nil {
			return Chosen{}, err
		}
		speed := r.fastest()
		off := math.Max(0, l.Evenness-r.Evenness)
		if l.Speed > 0 {
			off += math.Max(0, float64(speed/l.Speed)-1)
		}
		if l.Flow > 0 && r.Least >= 0 {
			off += math.Max(0, 1-float64(r.Laterals[r.Least].Flow/l.Flow))
		}
		if off < miss {
			miss = off
			best = Chosen{Main: try[0], Manifold: try[1], Laterals: try[2], System: sys, Result: r, Speed: speed}
		}
		best.Tried = k + 1
		if off == 0 {
			best.Held = true
			break
		}
	}
	return best, nil
}

// choices are all choices of main, manifold and laterals, smallest first; of
// equals the one listed first.
func (s System) choices(c Choices) [][3]Size {
	keep := func(l []Size) []Size {
		if len(l) == 0 {
			return []Size{{}}
		}
		return l
	}
	manifold, hoses := measure.Length(0), measure.Length(0)
	for _, p := range s.Segments {
		manifold += p.Length
	}
	for _, l := range s.Laterals {
		hoses += l.Hose.Length
	}
	volume := func(t [3]Size) float64 {
		sq := func(z Size) float64 { return float64(z.Bore) * float64(z.Bore) }
		// A part of no length still goes from small to large.
		const least = 1e-3
		return sq(t[0])*float64(s.Main.Length+least) + sq(t[1])*float64(manifold+least) + sq(t[2])*float64(hoses+least)
	}
	var all [][3]Size
	for _, a := range keep(c.Main) {
		for _, b := range keep(c.Manifold) {
			for _, d := range keep(c.Laterals) {
				all = append(all, [3]Size{a, b, d})
			}
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return volume(all[i]) < volume(all[j]) })
	return all
}

// sized is the system with its pipes of the sizes given; a bore of 0 keeps.
func (s System) sized(t [3]Size) System {
	fit := func(p *flow.Pipe, z Size) {
		if z.Bore != 0 {
			p.Bore, p.Roughness = z.Bore, z.Roughness
		}
	}
	fit(&s.Main, t[0])
	s.Segments = append([]flow.Pipe(nil), s.Segments...)
	for i := range s.Segments {
		fit(&s.Segments[i], t[1])
	}
	s.Laterals = append([]Lateral(nil), s.Laterals...)
	for i := range s.Laterals {
		l := &s.Laterals[i]
		fit(&l.Hose, t[2])
	}
	return s
}

// fastest is the highest speed in main, manifold and hoses.
func (r Result) fastest() measure.Speed {
	most := r.Main.Speed
	for _, p := range r.Segments {
		most = max(most, p.Speed)
	}
	for _, l := range r.Laterals {
		most = max(most, l.Speed)
	}
	return most
}
