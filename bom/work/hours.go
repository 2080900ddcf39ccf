package work

import (
	"silowright/bom"
	"silowright/geometry"
)

// The two things built, as Operation.Part writes them.
const (
	DrumSilo = "drum silo"
	PipeSilo = "pipe silo"
)

// Operation is one kind of work on a silo.
type Operation struct {
	ID      string  // part and work: "drum-jigsaw"
	Step    string  // id of the build step it belongs to
	Name    string  // "saw the lattice"
	Part    string  // DrumSilo or PipeSilo
	Unit    string  // what is counted: "m", "holes"
	PerSilo float64 // units in one silo, the average of the kinds built
	Each    Minutes // a unit
	First   Minutes // the first silo: PerSilo × Each
	All     Minutes // the whole build, learning applied
	Why     string  // how the amount came about

	stage string
}

// Hours are the hours of a build: people-minutes, whoever works them.
type Hours struct {
	Operations []Operation // drum silo's first, in the order of the build
	DrumSilos  int
	PipeSilos  int
	SetUpDrum  Minutes // SetUp for each kind of drum silo built
	SetUpPipe  Minutes
	SetUp      Minutes // both
	FirstDrum  Minutes // the first drum silo, without set-up
	FirstPipe  Minutes
	Drum       Minutes // all drum silos, without set-up
	Pipe       Minutes
	Total      Minutes // SetUp + Drum + Pipe
	PerDrum    Minutes // Drum over the drum silos built, 0 for none
	PerPipe    Minutes
	NextDrum   Minutes // one drum silo more than are built, of the average kind
	NextPipe   Minutes
}

// Reckon works out the hours of a build. Drum silos of several kinds share one
// learning sequence, and pipe silos another: the first silo's time is the
// average of the kinds, each counted as often as it is built, so that the order
// the kinds are built in does not matter. Rates are taken as they are; Check
// says whether they can be.
func Reckon(batches []bom.Batch, r Rates) Hours {
	var h Hours
	drums, pipes := 0, 0
	for _, b := range batches {
		if b.Drum > 0 {
			drums++
		}
		if b.Pipe > 0 {
			pipes++
		}
		h.DrumSilos += max(0, b.Drum)
		h.PipeSilos += max(0, b.Pipe)
	}
	h.SetUpDrum, h.SetUpPipe = r.SetUp*Minutes(drums), r.PipeSetUp*Minutes(pipes)
	h.SetUp = h.SetUpDrum + h.SetUpPipe

	drumOps := average(batches, DrumSilo, func(b bom.Batch) int { return b.Drum }, r.drumWork)
	pipeOps := average(batches, PipeSilo, func(b bom.Batch) int { return b.Pipe }, r.pipeWork)
	h.FirstDrum, h.Drum = learn(drumOps, Sum(h.DrumSilos, r.Learning))
	h.FirstPipe, h.Pipe = learn(pipeOps, Sum(h.PipeSilos, r.Learning))
	h.Total = h.SetUp + h.Drum + h.Pipe
	h.PerDrum, h.PerPipe = shared(h.Drum, h.DrumSilos), shared(h.Pipe, h.PipeSilos)
	h.NextDrum = h.FirstDrum * Minutes(factor(h.DrumSilos+1, r.Learning))
	h.NextPipe = h.FirstPipe * Minutes(factor(h.PipeSilos+1, r.Learning))
	h.Operations = append(drumOps, pipeOps...)
	return h
}

// average lists a part's operations with the units of the average silo. When
// none is built, all kinds count as one each, so that the next one has a time.
func average(batches []bom.Batch, part string, count func(bom.Batch) int, of func(geometry.Silo) []Operation) []Operation {
	n := 0
	for _, b := range batches {
		n += max(0, count(b))
	}
	var out []Operation
	for _, b := range batches {
		weight := float64(max(0, count(b)))
		if n > 0 {
			weight /= float64(n)
		} else {
			weight = 1 / float64(len(batches))
		}
		if weight == 0 {
			continue
		}
		ops := of(b.Silo)
		if out == nil {
			out = make([]Operation, len(ops))
			for i, o := range ops {
				out[i] = o
				out[i].Part, out[i].PerSilo = part, 0
			}
		}
		for i, o := range ops {
			out[i].PerSilo += weight * o.PerSilo
		}
	}
	return out
}

// learn fills in the times of operations, sum times the first silo's for all.
func learn(ops []Operation, sum float64) (first, all Minutes) {
	for i := range ops {
		o := &ops[i]
		o.First = Minutes(o.PerSilo) * o.Each
		o.All = o.First * Minutes(sum)
		first += o.First
		all += o.All
	}
	return first, all
}

func shared(all Minutes, n int) Minutes {
	if n == 0 {
		return 0
	}
	return all / Minutes(n)
}
