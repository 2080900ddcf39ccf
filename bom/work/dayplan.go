package work

import (
	"fmt"

	"silowright/bom"
)

// MaxDays is the longest build that is laid out.
const MaxDays = 20_000

// Task is what is done of one stage on one day.
type Task struct {
	ID      string  // the stage's: "screen"
	Name    string  // "clamp and bond the screen"
	Part    string  // DrumSilo or PipeSilo
	From    int     // silos by number, from 1; 0 for set-up
	To      int     // the last one worked on
	Begun   bool    // From was begun the day before
	Open    bool    // To is ended the day after
	Minutes Minutes // of one person
}

// Silos writes which silos a task is on: "drum silos 1 to 4".
func (t Task) Silos() string {
	if t.From == 0 {
		return t.Part + "s"
	}
	return silos(t.Part, t.From, t.To)
}

// Setting is what is left to set or to soak overnight.
type Setting struct {
	After string // the stage it follows, as in Task.ID
	What  string // "resin"
	Part  string
	From  int
	To    int
}

// Text writes it out: "resin of pipe silos 1 to 4".
func (s Setting) Text() string { return s.What + " of " + silos(s.Part, s.From, s.To) }

// Day is one day of the build.
type Day struct {
	Number int    // from 1; every day counts, also those on which things only set
	Tasks  []Task // in the order they are begun
	Curing []Setting
	Work   Minutes // of one person, all tasks
	Idle   Minutes // of one person, what the whole crew has left
}

// DayPlan is a build laid out in days.
type DayPlan struct {
	Days   []Day
	Bound  int    // no order of the work takes fewer days
	Proven bool   // len(Days) is the least, by the bound or by search
	Why    string // what makes the bound
}

// Plan lays a build out so that it takes few days with the crew, the clamps
// and the day the rates give; the package comment says by which model of the
// shop. It tries rules for what to do first, then exchanges in the best one,
// and looks a small build through. One person or one clamp more never makes
// the plan longer: what fewer could do counts too. Rates out of range and
// builds of more than MaxDays are errors.
func Plan(batches []bom.Batch, r Rates) (DayPlan, error) {
	if err := r.check(); err != nil {
		return DayPlan{}, err
	}
	h := Reckon(batches, r)
	if h.DrumSilos+h.PipeSilos == 0 {
		return DayPlan{Proven: true, Why: "nothing is built"}, nil
	}
	shopOf := func(people, clamps int) *shop {
		q := r
		q.People, q.Clamps = people, clamps
		return newShop(batches, q, h)
	}
	people, clamps := max(1, min(r.People, h.DrumSilos+h.PipeSilos)), max(1, min(r.Clamps, h.PipeSilos))
	best, b, err := planOf(shopOf, people, clamps, h)
	if err != nil {
		return DayPlan{}, err
	}
	return DayPlan{Days: best.written(r.Day * Minutes(r.People)), Bound: b.days, Proven: best.proven, Why: b.why}, nil
}

// tooLong is the error for a build past MaxDays.
func tooLong(days float64, r string) error {
	return fmt.Errorf("%s.hours_per_day: %s, the build takes at least %.0f days, at most %d are laid out; hint: longer days, a larger crew or fewer silos", Section, r, days, MaxDays)
}

// planOf lays a build out with so many people and clamps at most.
func planOf(shopOf func(people, clamps int) *shop, people, clamps int, h Hours) (*laid, bound, error) {
	s := shopOf(people, clamps)
	day := Minutes(float64(s.day) / float64(minute))
	if d := float64(h.Total) / float64(day) / float64(s.crew); d > MaxDays {
		return nil, bound{}, tooLong(d, day.Text())
	}
	b := s.least()
	if b.days > MaxDays {
		return nil, bound{}, tooLong(float64(b.days), day.Text())
	}
	best := s.lay(b, MaxDays)
	if best == nil {
		return nil, bound{}, tooLong(MaxDays+1, day.Text())
	}
	// What fewer people or clamps could do, as long as they can be better.
	for p := people; p >= 1 && !best.proven; p-- {
		for c := clamps; c >= 1; c-- {
			if p == people && c == clamps {
				continue
			}
			q := shopOf(p, c)
			low := q.least()
			if low.days >= best.days {
				if c == clamps {
					p = 0 // still fewer people are no better
				}
				break
			}
			if l := q.lay(low, best.days-1); l != nil && l.days < best.days {
				l.proven = l.days <= b.days
				best = l
			}
		}
	}
	return best, b, nil
}
