package work

// written writes a laid out build down, day by day, for a crew that has full
// minutes a day.
func (l *laid) written(full Minutes) []Day {
	s := l.shop
	out := make([]Day, l.days)
	for i := range out {
		out[i].Number = i + 1
	}
	at := make([]int, len(s.stages)) // the stage's task of the day it was last worked on
	on := make([]int, len(s.stages)) // and that day
	for i := range on {
		on[i] = -1
	}
	for _, b := range l.state.blocks {
		d := int(b.start / night)
		g := &s.stages[b.stage]
		m := g.minutes * Minutes(float64(b.work)/float64(g.ticks))
		day := &out[d]
		day.Work += m
		to := b.from + b.n
		if b.open {
			to++
		}
		if on[b.stage] == d {
			t := &day.Tasks[at[b.stage]]
			t.To, t.Open = to, b.open
			t.Minutes += m
			continue
		}
		on[b.stage], at[b.stage] = d, len(day.Tasks)
		day.Tasks = append(day.Tasks, Task{ID: g.id, Name: g.name, Part: g.part, From: b.from + 1, To: to, Begun: b.begun, Open: b.open, Minutes: m})
	}
	for i := range out {
		d := &out[i]
		d.Idle = max(0, full-d.Work)
		for j := range d.Tasks {
			if t := &d.Tasks[j]; t.ID == stageSetUp {
				t.From, t.To = 0, 0
			}
		}
	}
	l.curing(out)
	return out
}

// curing lists what is left to set each evening.
func (l *laid) curing(out []Day) {
	s := l.shop
	for _, g := range s.stages {
		for _, w := range g.waits {
			if w.hold == 0 || w.what == "" {
				continue
			}
			var over, begun count
			for d := range out {
				e := ticks(d)*night + s.day
				b := begun.by(l.state.done[w.on], s.stages[w.on].ticks, e)
				a := over.by(l.state.done[w.on], s.stages[w.on].ticks, e-w.hold)
				if a < b {
					out[d].Curing = append(out[d].Curing, Setting{After: s.stages[w.on].id, What: w.what, Part: g.part, From: a + 1, To: b})
				}
			}
		}
	}
}

// count counts silos ended, for times that only grow.
type count struct{ stretch int }

// by is how many were ended at t or before.
func (c *count) by(done []stretch, each, t ticks) int {
	for c.stretch < len(done) {
		d := done[c.stretch]
		if t < d.first {
			return d.from
		}
		if n := 1 + int((t-d.first)/each); n < d.n {
			return d.from + n
		}
		c.stretch++
	}
	if len(done) == 0 {
		return 0
	}
	return done[len(done)-1].from + done[len(done)-1].n
}
