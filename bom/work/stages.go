package work

import (
	"math"
	"strconv"

	"silowright/bom"
	"silowright/geometry"
	"silowright/geometry/measure"
)

// stage is a stretch of work that every silo of a part goes through.
type stage struct {
	id      string
	name    string
	part    string
	minutes Minutes // people-minutes for one silo
	ticks   int64   // the crew's time for one silo
	n       int     // silos that go through it; 1 for set-up
	waits   []wait
	whole   bool // ended the day it is begun; its ticks are no more than a day's
	takes   bool // a clamp, when it is begun
	frees   bool // that clamp, when it is ended
}

// wait is what a silo's stage waits for: an earlier stage of the same silo
// (or the set-up), ended so long ago.
type wait struct {
	on   int    // index in the shop's stages
	hold ticks  // since its end
	what string // "sealant"; "" when nothing sets
}

// ticks is a time by the clock in microseconds. Whole numbers keep the plan,
// its bound and its tests on one reckoning.
type ticks = int64

const (
	minute ticks = 60_000_000
	night        = 24 * 60 * minute // from one morning to the next
)

// clock is m as ticks.
func clock(m Minutes) ticks { return ticks(math.Round(float64(m) * float64(minute))) }

// shop is a build ready to be laid out in days.
type shop struct {
	stages []stage
	chains [][]int // the stages of each part in order, set-up first
	crew   int     // who can work at one time
	day    ticks   // worked a day
	clamps int
}

// outline is a stage of a part's plan before the build's numbers are in.
type outline struct {
	id, name string
	whole    bool
	takes    bool
	frees    bool
	holds    []hold
}

// hold is a wait on an earlier stage by id.
type hold struct {
	on   string
	time Minutes
	what string
}

// newShop makes the stages of a build from its hours.
func newShop(batches []bom.Batch, r Rates, h Hours) *shop {
	s := &shop{clamps: r.Clamps, day: clock(r.Day), crew: max(1, min(r.People, h.DrumSilos+h.PipeSilos))}
	if h.DrumSilos > 0 {
		s.chain(DrumSilo, h, h.SetUpDrum, h.DrumSilos, r.drumOutline(batches))
	}
	if h.PipeSilos > 0 {
		s.chain(PipeSilo, h, h.SetUpPipe, h.PipeSilos, r.pipeOutline(batches))
	}
	return s
}

func (r Rates) drumOutline(batches []bom.Batch) []outline {
	j := r.joints(batches, func(b bom.Batch) int { return b.Drum },
		func(s geometry.Silo) []geometry.Hole { return []geometry.Hole{s.Outlet, s.Inlet} },
		func(s geometry.Silo) measure.Length { return s.Inlet.PipeOutside })
	return []outline{
		{id: stageClean, name: "wash, check and measure"},
		{id: stagePart, name: "mark and part the drum"},
		{id: stageOpen, name: "lattice"},
		{id: stageHoles, name: "wall holes and handle slots"},
		{id: stageRing, name: "mesh, ring and screws"},
		{id: stageSeal, name: "seal the ring", whole: true},
		{id: stageJoints, name: "outlet, inlet and drain", whole: true},
		{id: stageLeak, name: "seat and leak test", holds: []hold{
			{stageSeal, r.SealantCure, "ring sealant"}, {stageJoints, j.sealant, "coupling sealant"}, {stageJoints, j.cement, "cement"}}},
		{id: stageSoak, name: "rinse, first soak", holds: []hold{
			{stageLeak, r.LeakStand, "leak test"}, {stageSeal, r.FullCure, "full cure of the ring sealant"}, {stageJoints, j.full, "full cure of the coupling sealant"}}},
		{id: stageAgain, name: "drain, second soak", holds: []hold{{stageSoak, r.Soak, "first soak"}}},
		{id: stageFinish, name: "drain, rinse, sign off", holds: []hold{{stageAgain, r.Soak, "second soak"}}},
	}
}

func (r Rates) pipeOutline(batches []bom.Batch) []outline {
	j := r.joints(batches, func(b bom.Batch) int { return b.Pipe },
		func(s geometry.Silo) []geometry.Hole { return []geometry.Hole{s.Pipe.Hole} },
		func(s geometry.Silo) measure.Length { return s.Pipe.Hole.PipeOutside })
	return []outline{
		{id: stagePipe, name: "cut the pipe and its side hole"},
		{id: stageScreen, name: "clamp and bond the screen", whole: true, takes: true},
		{id: stageTrim, name: "clamp off, trim the screen", frees: true, holds: []hold{{stageScreen, r.ResinCure, "resin"}}},
		{id: stageOutlet, name: "outlet and reducing adapter", whole: true},
		{id: stageSoak, name: "rinse, first soak", holds: []hold{
			{stageOutlet, j.cement, "cement"}, {stageOutlet, j.full, "full cure of the coupling sealant"}, {stageScreen, r.FullCure, "full cure of the resin"}}},
		{id: stageAgain, name: "second soak", holds: []hold{{stageSoak, r.Soak, "first soak"}}},
		{id: stageFinish, name: "rinse, sign off", holds: []hold{{stageAgain, r.Soak, "second soak"}}},
	}
}

// chain adds a part's set-up and stages.
func (s *shop) chain(part string, h Hours, setUp Minutes, n int, rows []outline) {
	var at []int
	index := map[string]int{}
	add := func(st stage) {
		if len(at) > 0 {
			st.waits = append([]wait{{on: at[len(at)-1]}}, st.waits...)
		}
		st.part = part
		st.ticks = s.crewTime(st.minutes)
		index[st.id] = len(s.stages)
		at = append(at, len(s.stages))
		s.stages = append(s.stages, st)
	}
	if setUp > 0 {
		add(stage{id: stageSetUp, name: "set up: templates, jigs, trial holes", minutes: setUp, n: 1})
	}
	for _, o := range rows {
		st := stage{id: o.id, name: o.name, n: n, takes: o.takes, frees: o.frees}
		for _, op := range h.Operations {
			if op.Part == part && op.stage == o.id {
				st.minutes += op.All / Minutes(n)
			}
		}
		// One person's day decides, so that a larger crew is never held to more.
		st.whole = o.whole && clock(st.minutes) <= s.day
		for _, w := range o.holds {
			if w.time > 0 {
				st.waits = append(st.waits, wait{index[w.on], clock(w.time), w.what})
			}
		}
		add(st)
	}
	s.chains = append(s.chains, at)
}

// crewTime is how long the crew is at so many people-minutes, rounded up to a
// microsecond, so that no day holds more than it has; at least one, so that
// time goes on.
func (s *shop) crewTime(m Minutes) ticks {
	return max(1, ticks(math.Ceil(float64(m)*float64(minute)/float64(s.crew)-0.01)))
}

// jobs is how many silo-stages there are.
func (s *shop) jobs() int {
	n := 0
	for _, st := range s.stages {
		n += st.n
	}
	return n
}

// toDo is all the crew's time.
func (s *shop) toDo() ticks {
	sum := ticks(0)
	for _, g := range s.stages {
		sum += ticks(g.n) * g.ticks
	}
	return sum
}

// silos writes which silos, by their numbers from 1.
func silos(part string, from, to int) string {
	if from == to {
		return part + " " + strconv.Itoa(from)
	}
	return part + "s " + strconv.Itoa(from) + " to " + strconv.Itoa(to)
}
