package sheets

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
	if p.Work == nil {
		f.para("No hours were worked out for this pack.")
		return
	}
}
