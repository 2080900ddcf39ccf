package pack

import (
	"fmt"
	"slices"
	"strconv"

	"silowright/bom/work"
	"silowright/cmd/internal/plan"
	"silowright/cmd/internal/report"
	"silowright/geometry/measure"
	"silowright/render/sheets"
)

// workPage hands hours and days to their page.
func workPage(p *plan.Plan, c report.Costs) *sheets.Work {
	h, r := p.Cost.Hours, p.Site.Work
	out := &sheets.Work{}
	for _, o := range h.Operations {
		if o.All > 0 {
			out.Operations = append(out.Operations, sheets.WorkRow{Name: o.Name, Unit: o.Unit, PerSilo: measure.Number(o.PerSilo, 2), Minutes: measure.Number(float64(o.Each), 2),
				First: measure.Number(float64(o.First), 2), Whole: measure.Number(o.All.Hours(), 2), Note: o.Part})
		}
	}
	out.Total = sheets.WorkRow{Name: "Whole build, with set-up of " + h.SetUp.Text(), Whole: measure.Number(h.Total.Hours(), 2)}
	out.Lines = []sheets.Amount{
		{Name: "crew", Sum: strconv.Itoa(r.People)},
		{Name: "hours a day, each", Sum: measure.Number(r.Day.Hours(), 2)},
		{Name: "pipe silos whose resin sets at one time", Sum: strconv.Itoa(r.Clamps)},
		{Name: "learning: each doubling of the count leaves of a silo's time", Sum: measure.Number(100*r.Learning, 2) + " %"},
		{Name: "wage, an hour", Sum: p.Site.Wage.String()},
	}
	if h.DrumSilos > 0 {
		out.Lines = append(out.Lines, sheets.Amount{Name: "first drum silo; each on average", Sum: h.FirstDrum.Text() + "; " + h.PerDrum.Text()})
	}
	if h.PipeSilos > 0 {
		out.Lines = append(out.Lines, sheets.Amount{Name: "first pipe silo; each on average", Sum: h.FirstPipe.Text() + "; " + h.PerPipe.Text()})
	}
	days(out, c.Laid)
	return out
}

// daysShown is how many days of a long build are set out on paper; report.json
// has all of them.
const daysShown = 70

// days sets the day plan out by stage.
func days(out *sheets.Work, d work.DayPlan) {
	var ids []string
	for _, day := range d.Days {
		for _, t := range day.Tasks {
			if !slices.Contains(ids, t.ID) {
				ids = append(ids, t.ID)
				out.Stages = append(out.Stages, t.Name)
			}
		}
	}
	for i, day := range d.Days {
		if i == daysShown {
			break
		}
		row := sheets.WorkDay{Name: strconv.Itoa(day.Number), Does: make([]string, len(ids)), Cures: make([]string, len(ids)), Hours: measure.Number(day.Work.Hours(), 2)}
		for _, t := range day.Tasks {
			row.Does[slices.Index(ids, t.ID)] = short(t)
		}
		for _, c := range day.Curing {
			if at := slices.Index(ids, c.After); at >= 0 {
				row.Cures[at] = joinedWith(row.Cures[at], c.What+" "+fromTo(c.From, c.To))
			}
		}
		out.Days = append(out.Days, row)
	}
	claim := fmt.Sprintf("No order of the work takes fewer than %d: %s.", d.Bound, d.Why)
	if d.Proven {
		claim = fmt.Sprintf("No order of the work takes fewer: %s.", d.Why)
	}
	out.Notes = append(out.Notes, fmt.Sprintf("%d days with this crew and these clamps. %s", len(d.Days), claim))
	if len(d.Days) > daysShown {
		out.Notes = append(out.Notes, fmt.Sprintf("The first %d days are shown; report.json has all.", daysShown))
	}
}

// joinedWith adds words to what is said already.
func joinedWith(said, more string) string {
	if said == "" {
		return more
	}
	return said + ", " + more
}

// short writes which silos a task is on: "1–4".
func short(t work.Task) string {
	if t.From == 0 {
		return "all"
	}
	return fromTo(t.From, t.To)
}

// fromTo writes a row of silos: "1–4", and "4" when it is one.
func fromTo(from, to int) string {
	if from == to {
		return strconv.Itoa(from)
	}
	return fmt.Sprintf("%d–%d", from, to)
}
