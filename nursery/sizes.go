package nursery

import (
	"math"
	"slices"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/stock"
	"silowright/nursery/flow"
	"silowright/nursery/manifold"
)

// Sizes are the smallest main and manifold of their own series that do. Of all
// choices that hold what is wanted it is the one with the least volume of pipe.
type Sizes struct {
	Main, Manifold geometry.PipeRef // with their series; Main is zero where no main was described
	// What they are held to. Evenness and Each are the job's limit and flow (or
	// what the seed asks), unless the widest pipes of the series come short of
	// them: then what those give, less a fiftieth and a tenth. Speed is that in
	// main and manifold.
	Evenness float64
	Each     measure.Flow // to the silo that gets least
	Speed    measure.Speed
	// EvennessShort and FlowShort say that no size comes up to the job's.
	EvennessShort, FlowShort bool
	// Held is false where no size holds even that: it is then the one with the
	// slowest water.
	Held bool
	Same bool // the job's own
	// What comes of it.
	GivesEvenness float64
	GivesSpeed    measure.Speed
	GivesLeast    measure.Flow
	GivesMean     measure.Flow
}

// Shares of what the widest pipes give that narrower ones must (common
// practice, no source).
const (
	evenShare = 0.98
	flowShare = 0.9
)

// sizes recommends main and manifold.
func (f Farm) sizes(sys manifold.System, rooms []room) (*Sizes, error) {
	z := &Sizes{Manifold: geometry.PipeRef{Series: seriesOf(f.Manifold.Pipe)}, Speed: f.Limits.Speed, Evenness: f.Limits.Evenness, Each: f.Supply.Each}
	for _, r := range rooms {
		if f.Supply.Each == 0 {
			z.Each = max(z.Each, f.seedsFlow(r))
		}
	}
	runs := bores(z.Manifold.Series)
	mains := []size{{}} // none described: the manifold's pipe
	if f.Main.Pipe.Size != "" {
		z.Main.Series = seriesOf(f.Main.Pipe)
		mains = bores(z.Main.Series)
	}
	widest := choice{mains[len(mains)-1], runs[len(runs)-1]}
	r, err := widest.solve(sys)
	if err != nil {
		return nil, err
	}
	if even := r.Evenness * evenShare; even < z.Evenness {
		z.Evenness, z.EvennessShort = even, r.Evenness < z.Evenness
	}
	if least := leastOf(r) * flowShare; least < z.Each || z.Each == 0 {
		z.FlowShort = z.Each > leastOf(r)
		z.Each = least
	}
	if z.Each == 0 {
		// Nothing reaches the last silo whatever the pipe.
		mains, runs = mains[len(mains)-1:], runs[len(runs)-1:]
	}
	return z, z.search(f, sys, mains, runs)
}

// manySilos is the number past which main and manifold are tried alike only.
const manySilos = 200

// search tries the choices from the least volume up.
func (z *Sizes) search(f Farm, sys manifold.System, mains, runs []size) error {
	n := len(sys.Laterals)
	mains = z.wide(mains, z.Each*measure.Flow(n))
	runs = z.wide(runs, z.Each*measure.Flow(max(sys.Feed, n-1-sys.Feed)))
	var all []choice
	for _, m := range mains {
		for i, r := range runs {
			if n <= manySilos || len(mains) == 1 || m.bore >= r.bore && (i+1 == len(runs) || m.bore < runs[i+1].bore) {
				all = append(all, choice{m, r})
			}
		}
	}
	slices.SortStableFunc(all, func(a, b choice) int {
		switch va, vb := a.volume(sys), b.volume(sys); {
		case va < vb:
			return -1
		case va > vb:
			return 1
		}
		return 0
	})
	if len(all) == 0 {
		all = []choice{{mains[len(mains)-1], runs[len(runs)-1]}}
	}
	slowest := measure.Speed(math.Inf(1))
	for _, c := range all {
		r, err := c.solve(sys)
		if err != nil {
			return err
		}
		fastest := r.Main.Speed
		if z.Main.Series == "" {
			fastest = 0
		}
		for _, p := range r.Segments {
			fastest = max(fastest, p.Speed)
		}
		z.Held = r.Evenness >= z.Evenness && leastOf(r) >= z.Each && (z.Speed == 0 || fastest <= z.Speed)
		if z.Held || fastest < slowest {
			slowest = fastest
			z.Main.Size, z.Manifold.Size = c.main.name, c.run.name
			z.GivesEvenness, z.GivesSpeed, z.GivesLeast, z.GivesMean = r.Evenness, fastest, leastOf(r), r.Mean
		}
		if z.Held {
			break
		}
	}
	z.Same = z.Manifold.Size == f.Manifold.Pipe.Size && z.Main.Size == f.Main.Pipe.Size
	return nil
}

// wide leaves out the sizes in which the flow q would run faster than the
// limit, which need not be tried: with every silo given its flow at least q
// runs in the pipe. The widest is kept.
func (z *Sizes) wide(sizes []size, q measure.Flow) []size {
	for len(sizes) > 1 && z.Speed > 0 && q.Through(flow.Disc(sizes[0].bore)) > z.Speed {
		sizes = sizes[1:]
	}
	return sizes
}

// size is one size of a series, choice one of main and manifold.
type size struct {
	name string
	bore measure.Length
}

type choice struct{ main, run size }

// bores lists the sizes of a series, narrowest first.
func bores(series string) (out []size) {
	for _, name := range bored(series) {
		p, _ := stock.PipeOf(name, series)
		out = append(out, size{name, p.Inside})
	}
	return out
}

// solve is the system with these pipes.
func (c choice) solve(sys manifold.System) (manifold.Result, error) {
	sys.Main.Bore = c.main.bore
	if c.main.bore == 0 {
		sys.Main.Bore = c.run.bore
	}
	sys.Segments = slices.Clone(sys.Segments)
	for i := range sys.Segments {
		sys.Segments[i].Bore = c.run.bore
	}
	return manifold.Solve(sys)
}

// volume orders choices by the pipe that they take; a part of no length still
// goes from narrow to wide.
func (c choice) volume(sys manifold.System) float64 {
	run := measure.Length(1)
	for _, p := range sys.Segments {
		run += p.Length
	}
	return flow.Disc(c.main.bore).Times(sys.Main.Length+1).ML() + flow.Disc(c.run.bore).Times(run).ML()
}

func leastOf(r manifold.Result) measure.Flow {
	if r.Least < 0 {
		return 0
	}
	return r.Laterals[r.Least].Flow
}
