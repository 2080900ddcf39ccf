package sheets

import (
	"slices"
	"strconv"
	"strings"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/render/charts"
)

func setSeed(f *flow, p *Pack) {
	s := p.Seed
	if s == nil {
		f.para("No seed was worked out for this pack.")
		return
	}
	var from sources
	f.saying(&from, s.Says...)
	f.weeksChart(s.Plan)
	f.ladder(s.Ladder, s.NoLadder)
	if len(s.Counts) > 0 {
		f.whole("Count and mass", countTable(s.Counts))
	}
	f.weeksTable(s.Plan, s.NoPlan)
	f.headedLines("Is there food enough?", "Food", s.Food)
	f.saying(&from, s.FoodSays)
	f.bases(from, s.Basis)
}

// rungsOnPage is how many meshes one drawing of the ladder holds at most.
const rungsOnPage = 24

// ladder draws the meshes on a scale of size.
func (f *flow) ladder(l *MeshLadder, none string) {
	if l == nil || len(l.Rungs) == 0 {
		f.heading("Which mesh for which seed?")
		f.para(orElse(none, "No meshes were matched to seed for this pack."))
		return
	}
	for i, n := 0, 0; i < len(l.Rungs); i += n {
		c := charts.Ranges{Width: f.wide(), Value: charts.Axis{Says: f.safe(orElse(l.Across, "size of seed")) + ", mm", Second: "in", Factor: 1 / measure.Inch.MM()}}
		for _, m := range l.Marks[:min(len(l.Marks), 6)] {
			c.Marks = append(c.Marks, charts.ValueMark{At: m.Size.MM(), Name: f.safe(m.Name)})
		}
		n = min(len(l.Rungs)-i, rungsOnPage, c.RowsIn(f.bottom()-topY-14))
		for _, r := range l.Rungs[i : i+n] {
			c.Rows = append(c.Rows, charts.Range{Name: f.safe(upper(r.Name)), Says: f.safe(r.Says), From: r.From.MM(), To: r.To.MM(), Dark: r.Own != ""})
		}
		d := c.Draw()
		if i == 0 {
			f.headingOver("Which mesh for which seed?", d.Height+2)
		}
		f.need(d.Height + 2)
		f.place(d, marginL, f.y, 1)
		f.y += d.Height + 2
	}
	for _, r := range l.Rungs {
		if r.Own != "" {
			f.para("Dark: " + r.Own + ", " + r.Name + ".")
		}
	}
	for _, w := range l.Says {
		f.para(sentence(w))
	}
}

func countTable(list []CountRow) table {
	t := table{cols: []column{{head: "Counted or weighed", share: 52, bold: true}, {head: "Value", share: 44, right: true}, {head: "Lies between", share: 50, right: true}, {head: "", share: 38}}}
	between := false
	for _, r := range list {
		between = between || r.Interval != ""
	}
	for _, r := range list {
		row := []cell{say(upper(r.Name)), say(r.Value), say(r.Interval), say(r.Note)}
		if !between {
			row = slices.Delete(row, 2, 3)
		}
		t.add(row...)
	}
	if !between { // nothing was sampled: its room to the notes
		t.cols = slices.Delete(t.cols, 2, 3)
		t.cols[2].share += 50
	}
	return t
}

// weeksTall is the height of the season's chart.
const weeksTall length = 84

// weeksChart draws the season.
func (f *flow) weeksChart(p *SeedPlan) {
	if p == nil || len(p.Weeks) == 0 {
		return
	}
	axis := flowAxis(f.units)
	c := charts.Weeks{Width: f.wide(), Height: weeksTall, Flow: axis, Drums: max(p.DrumHave, 0), PeakSays: "peak"}
	if p.DrumHave > 0 {
		c.DrumsSay = "drum silos of this job: " + strconv.Itoa(p.DrumHave)
	}
	for _, w := range p.Weeks {
		c.Weeks = append(c.Weeks, charts.Week{N: w.Week, Drum: w.Drum, Pipe: w.Pipe, Flow: inFlow(w.Flow, f.units), Peak: w.Peak})
	}
	f.headingOver("Silos and water by week", weeksTall+2)
	f.place(c.Draw(), marginL, f.y, 1)
	f.y += weeksTall + 2
	for _, s := range p.Peak {
		f.para(sentence(s))
	}
}

// weeksTable sets a row a week; those of the peak are bold and grey.
func (f *flow) weeksTable(p *SeedPlan, none string) {
	if p == nil || len(p.Weeks) == 0 {
		f.heading("Seed plan by week")
		f.para(orElse(none, "No season of seed is described in the job: silos are not counted by week."))
		return
	}
	t := table{tight: true, cols: []column{{head: "Week", share: 15, bold: true}, {head: "Size", share: 22}, {head: "Count", share: 21, right: true}, {head: "Mass", share: 23},
		{head: "Mesh", share: 24}, {head: "Drum silos", share: 15, right: true}, {head: "Pipe silos", share: 14, right: true}, {head: "Flow", share: 25},
		{head: "Set by", share: 17}, {head: "This week", share: 20}}}
	narrow := f.wide() < 165
	if narrow { // the last two in one, the others as wide as they must be
		t.cols = t.cols[:9]
		t.cols[0].share, t.cols[1].share, t.cols[2].share, t.cols[3].share, t.cols[7].share = 17, 21, 25, 22, 26
		t.cols[8] = column{head: "Set by, and what is done", share: 26}
	}
	for _, w := range p.Weeks {
		row := []cell{strong(strconv.Itoa(w.Week)), twice(w.Size), say(w.Count), twice(w.Mass), twice(w.Mesh), say(silos(w.Drum)), say(silos(w.Pipe)), twice(w.FlowSays), say(w.Governs), say(w.Does)}
		if w.Peak {
			row[9] = say("peak", w.Does)
		}
		if narrow {
			row[8].paras = append(row[8].paras, row[9].paras...)
			row = row[:9]
		}
		for i := range row {
			if w.Peak {
				row[i].bold, row[i].shade = true, 0.12
			}
		}
		if w.Level != geometry.OK {
			row[len(row)-1].mark = levelMark(w.Level)
		}
		t.add(row...)
	}
	f.headingOver("Seed plan by week", f.tableStart(t)+30)
	f.table(t)
}

// twice sets an amount in two units on two lines.
func twice(s string) cell {
	if a, b, ok := strings.Cut(s, " ("); ok {
		return say(a, "("+b)
	}
	return say(s)
}

// silos writes a count of silos, none as a dash.
func silos(n int) string {
	if n == 0 {
		return "–"
	}
	return strconv.Itoa(n)
}
