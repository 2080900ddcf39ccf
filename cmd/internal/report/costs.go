package report

import (
	"silowright/bom"
	"silowright/bom/build"
	"silowright/bom/work"
	"silowright/cmd/internal/plan"
)

// Costs is what a build costs: every sum with what it was added up from. A sum
// of the bill goes back to its lines, a line to its packs, offer and row of the
// price list, and to its takeoff under why.
type Costs struct {
	build.Cost
	Bill   bom.Bill      `json:"bill"`
	Hours  Hours         `json:"hours"`
	Days   Days          `json:"days"`
	Laid   work.DayPlan  `json:"-"`
	Points []build.Point `json:"points"` // 5, 10, 20, 50 and the build's own count
	Curve  []build.Point `json:"curve"`  // from 1 on
}

// Hours are the hours of work, in minutes of one person.
type Hours struct {
	SetUp      float64     `json:"set_up_min"`
	Drum       float64     `json:"drum_silos_min"`
	Pipe       float64     `json:"pipe_silos_min"`
	Total      float64     `json:"total_min"`
	Learning   float64     `json:"learning"`
	Wage       string      `json:"wage_an_hour"`
	Operations []Operation `json:"operations"`
}

// Operation is one kind of work on a silo.
type Operation struct {
	ID      string  `json:"id"`
	Name    string  `json:"name"`
	Part    string  `json:"part"`
	Unit    string  `json:"unit"`
	PerSilo float64 `json:"units_a_silo"`
	Each    float64 `json:"min_a_unit"`
	First   float64 `json:"first_silo_min"`
	All     float64 `json:"all_min"`
	Why     string  `json:"why"`
}

// Days is the day plan.
type Days struct {
	Days   []Day  `json:"days"`
	Bound  int    `json:"at_least_days"`
	Proven bool   `json:"proven_fewest"`
	Why    string `json:"why"`
}

// Day is one day of it.
type Day struct {
	Number int      `json:"day"`
	Tasks  []Task   `json:"tasks"`
	Curing []string `json:"sets_overnight"`
	Work   float64  `json:"work_min"`
}

// Task is what is done of one stage on a day.
type Task struct {
	Stage   string  `json:"stage"`
	Name    string  `json:"name"`
	On      string  `json:"on"`
	Minutes float64 `json:"min"`
}

// CostsOf works out what a report says of costs.
func CostsOf(p *plan.Plan) (Costs, error) {
	c := Costs{Cost: p.Cost, Bill: p.Cost.Bill, Hours: hoursOf(p.Cost.Hours)}
	c.Hours.Learning, c.Hours.Wage = p.Site.Work.Learning, p.Site.Wage.Plain()
	var err error
	if c.Points, err = p.Site.Points(p.Job.DrumSilos, p.Job.PipeSilos); err != nil {
		return c, err
	}
	if c.Curve, err = p.Site.Curve(p.Job.DrumSilos, p.Job.PipeSilos); err != nil {
		return c, err
	}
	c.Laid, err = p.Days()
	c.Days = daysOf(c.Laid)
	return c, err
}

// JSON writes the costs, indented.
func (c Costs) JSON() ([]byte, error) { return Indented(c) }

func hoursOf(h work.Hours) Hours {
	out := Hours{SetUp: float64(h.SetUp), Drum: float64(h.Drum), Pipe: float64(h.Pipe), Total: float64(h.Total), Operations: []Operation{}}
	for _, o := range h.Operations {
		out.Operations = append(out.Operations, Operation{o.ID, o.Name, o.Part, o.Unit, o.PerSilo, float64(o.Each), float64(o.First), float64(o.All), o.Why})
	}
	return out
}

func daysOf(d work.DayPlan) Days {
	out := Days{Days: []Day{}, Bound: d.Bound, Proven: d.Proven, Why: d.Why}
	for _, day := range d.Days {
		o := Day{Number: day.Number, Tasks: []Task{}, Curing: []string{}, Work: float64(day.Work)}
		for _, t := range day.Tasks {
			o.Tasks = append(o.Tasks, Task{t.ID, t.Name, t.Silos(), float64(t.Minutes)})
		}
		for _, s := range day.Curing {
			o.Curing = append(o.Curing, s.Text())
		}
		out.Days = append(out.Days, o)
	}
	return out
}
