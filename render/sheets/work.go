package sheets

import "strings"

// Work is the labour of the build and the plan of its days, by the job's own
// numbers.
type Work struct {
	Operations []WorkRow
	Total      WorkRow  // the foot of the table; no name: none
	Lines      []Amount // such as learning, crew, hours a day, rate
	Stages     []string // of the day plan, in the order of work
	Days       []WorkDay
	Notes      []string // such as what holds the plan up
}

// WorkRow is one operation, numbers written out.
type WorkRow struct {
	Name    string
	Unit    string // what is counted: "m of cut", "hole"
	PerSilo string // how many of those
	Minutes string // for each
	First   string // minutes for the first silo
	Whole   string // hours for the whole build
	Note    string
}

// WorkDay is one day of the plan.
type WorkDay struct {
	Name  string   // "1", "Mon 3"
	Does  []string // by stage: how many are done that day, "" none
	Cures []string // by stage: what sets overnight at its end, "" nothing
	Hours string   // worked by the whole crew
}

func setWork(f *flow, p *Pack) {
	w := p.Work
	if w == nil {
		f.para("No hours were worked out for this pack.")
		return
	}
	f.paraAt(0, "These are the job's own numbers: they are no standard. Change them in the job file when your shop has timed itself.", true)
	if len(w.Lines) > 0 {
		t := table{cols: []column{{head: "What the hours rest on", share: 130, bold: true}, {head: "", share: 54, right: true}}}
		for _, l := range w.Lines {
			t.add(say(upper(l.Name)), say(l.Sum))
		}
		f.table(t)
	}
	if len(w.Operations) > 0 {
		f.headed("Operations", w.operations())
	}
	w.plan(f)
	f.items(w.Notes...)
}

func (w *Work) operations() table {
	t := table{cols: []column{{head: "Operation", share: 66, bold: true}, {head: "Counted in", share: 28}, {head: "Each silo takes", share: 22, right: true},
		{head: "Minutes for each", share: 22, right: true}, {head: "First silo, minutes", share: 22, right: true}, {head: "Whole build, hours", share: 24, right: true}}}
	row := func(r WorkRow, set func(...string) cell) {
		t.add(strong(upper(r.Name), r.Note), set(r.Unit), set(r.PerSilo), set(r.Minutes), set(r.First), set(r.Whole))
	}
	bands := w.banded()
	for i, r := range w.Operations {
		if bands {
			if i == 0 || r.Note != w.Operations[i-1].Note {
				t.band(upper(r.Note))
			}
			r.Note = ""
		}
		row(r, say)
	}
	if w.Total.Name != "" {
		row(w.Total, strong)
	}
	return t
}

// banded reports whether the notes of the operations are titles of groups of
// them: each has one and most are that of the operation before.
func (w *Work) banded() bool {
	changes := 0
	for i, r := range w.Operations {
		if r.Note == "" {
			return false
		}
		if i == 0 || r.Note != w.Operations[i-1].Note {
			changes++
		}
	}
	return 2*changes <= len(w.Operations)
}

// daysAcross is how many days of the plan stand side by side.
const daysAcross = 7

// plan sets the day plan: a row a stage, a column a day; a field that is
// worked on is grey and says what is done. A table of the nights follows.
func (w *Work) plan(f *flow) {
	if len(w.Days) == 0 || len(w.Stages) == 0 {
		return
	}
	var tables []table
	for i := 0; i < len(w.Days); i += daysAcross {
		tables = append(tables, w.daysTable(w.Days[i:min(i+daysAcross, len(w.Days))]))
	}
	const key = "Grey: worked on that day, with which are done. \"Sets\": it needs the night, and the next stage waits for it; what sets is in the table of nights."
	room := length(40)
	if tall := f.paraTall(key) + f.tallOf(tables[0]); tall <= f.bottom()-topY-20 {
		room = tall
	}
	f.headingOver("Day plan: "+count(len(w.Days), "day", "days"), room)
	f.para(key)
	for _, t := range tables {
		if tall := f.tallOf(t); tall <= f.bottom()-topY {
			f.need(tall)
		}
		f.table(t)
	}
	if t := w.nights(); len(t.rows) > 0 {
		f.headed("What sets overnight", t)
	}
}

// daysTable is the plan of the days that stand side by side.
func (w *Work) daysTable(days []WorkDay) table {
	t := table{grid: true, cols: []column{{head: "Stage", share: 44, bold: true}}}
	hours := false
	for _, d := range days {
		t.cols = append(t.cols, column{head: "Day " + d.Name, share: 20})
		hours = hours || d.Hours != ""
	}
	if len(w.Days) > daysAcross { // days of the same width in every row of them
		for range daysAcross - len(days) {
			t.cols = append(t.cols, column{share: 20})
		}
	}
	for n, stage := range w.Stages {
		r := []cell{say(upper(stage))}
		idle := true
		for _, d := range days {
			c := d.stage(n)
			idle = idle && c.paras[0] == ""
			r = append(r, c)
		}
		if !idle || len(w.Days) <= daysAcross {
			t.add(r...)
		}
	}
	if hours {
		r := []cell{say("Hours of work")}
		for _, d := range days {
			r = append(r, say(d.Hours))
		}
		t.add(r...)
	}
	if len(t.rows) == 0 {
		t.add(say("Nothing is done"))
	}
	return t
}

// nights says what sets after each day, stage by stage.
func (w *Work) nights() table {
	t := table{cols: []column{{head: "Night after", share: 30, bold: true}, {head: "Leave alone", share: 154}}}
	for _, d := range w.Days {
		var sets []string
		for n, c := range d.Cures {
			if n < len(w.Stages) && c != "" {
				sets = append(sets, upper(w.Stages[n])+": "+c)
			}
		}
		if len(sets) > 0 {
			t.add(say("day "+d.Name), say(strings.Join(sets, "; ")))
		}
	}
	return t
}

// stage is what is done for a stage on a day.
func (d WorkDay) stage(n int) cell {
	c := say("")
	if n < len(d.Does) && d.Does[n] != "" {
		c = strong(d.Does[n])
		c.shade = 0.15
	}
	if n < len(d.Cures) && d.Cures[n] != "" {
		if c.shade == 0 {
			return say("sets")
		}
		c.paras = append(c.paras, "sets")
	}
	return c
}
