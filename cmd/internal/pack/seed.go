package pack

import (
	"fmt"
	"strconv"
	"strings"

	"silowright/cmd/internal/plan"
	"silowright/cmd/internal/report"
	"silowright/geometry/measure"
	"silowright/nursery/seed"
	"silowright/render/sheets"
)

// splitWords parts a list of words at its commas.
func splitWords(s string) []string { return strings.Split(s, ", ") }

// seedPage hands the seed plan to its pages; nil without one.
func seedPage(p *plan.Plan) *sheets.Seed {
	if p.Water == nil || p.Water.Seed == nil {
		return nil
	}
	s, u := p.Water.Seed, p.Job.Units
	findings := p.Water.Findings(u)
	out := &sheets.Seed{Says: keySays(findings, []string{"seed."}, "seed.drum-silos", "seed.pipe-silos", "seed.flow", "seed.held", "seed.load"), FoodSays: said(findings, "seed.food"), Basis: basisOf(findings, "seed.")}
	out.Ladder = ladder(p, s.Plan, report.LadderOf(s.Plan, s.Need))
	if out.Ladder == nil {
		out.NoLadder = "No mesh of the job holds the seed as it comes."
	}
	if len(s.Need.Weeks) > 0 {
		out.Counts = counts(s.Plan, s.Need, u)
		out.Food = food(s.Need, u)
	}
	out.Plan = &sheets.SeedPlan{DrumHave: s.Drums, PipeHave: s.Pipes}
	k := s.Need.Peak
	out.Plan.Peak = []string{
		"At the most: " + report.SilosAtMost(k.Drum, "drum", k.DrumWeek) + ".",
		"At the most: " + report.SilosAtMost(k.Pipe, "pipe", k.PipeWeek) + ".",
		fmt.Sprintf("At the most: %s of water, in week %d.", k.Flow.Both(u), k.FlowWeek),
	}
	for _, w := range s.Need.Weeks {
		out.Plan.Weeks = append(out.Plan.Weeks, sheets.SeedWeek{Week: w.Week, Size: w.Shell.Both(u), Count: strconv.Itoa(w.Count), Mass: w.Mass.Both(u), Mesh: w.Mesh.Name,
			Drum: w.Drum, Pipe: w.Pipe, Flow: w.Flow, FlowSays: w.Flow.Both(u), Governs: w.Governs.String(), Does: report.WeekDoes(w),
			Peak: w.Week == k.DrumWeek || w.Week == k.PipeWeek && k.Pipe > 0})
	}
	return out
}

func ladder(p *plan.Plan, q seed.Plan, rungs []seed.Rung) *sheets.MeshLadder {
	if len(rungs) == 0 {
		return nil
	}
	u := p.Job.Units
	out := &sheets.MeshLadder{Across: "sieve that holds the smallest seed"}
	for _, r := range rungs {
		row := sheets.MeshRung{Name: r.Mesh.Opening.Both(u) + ", " + r.Mesh.In.String() + " silo", From: r.From.Length(), To: r.To.Length(), Says: r.From.Length().Metric() + " to " + r.To.Length().Metric() + " mm"}
		for _, s := range p.Silos {
			switch {
			case r.Mesh.In == seed.Drum && r.Mesh.Opening == s.Spec.Mesh.Opening:
				row.Own = "the job's mesh"
			case r.Mesh.In == seed.Pipe && r.Mesh.Opening == s.Spec.Pipe.Screen:
				row.Own = "the job's screen"
			}
		}
		out.Rungs = append(out.Rungs, row)
		if r.Ends {
			out.Says = append(out.Says, "No coarser mesh of the job takes over from "+r.Mesh.Opening.Both(u)+" before the seed leaves.")
		}
	}
	first, last := rungs[0], rungs[len(rungs)-1]
	out.Marks = []sheets.SizeMark{{Size: first.From.Length(), Name: "arrives"}, {Size: last.To.Length(), Name: "leaves"}}
	for i := 1; i < len(rungs); i++ {
		if rungs[i].Mesh.In != rungs[i-1].Mesh.In {
			out.Says = append(out.Says, "Move to the drum silos when the smallest seed is held by a sieve of "+rungs[i].From.Both(u)+".")
		}
	}
	return out
}

func counts(p seed.Plan, n seed.SiloNeed, u measure.Unit) []sheets.CountRow {
	w, last := n.Weeks[0], n.Weeks[len(n.Weeks)-1]
	return []sheets.CountRow{
		{Name: "seed that arrive", Value: strconv.Itoa(p.Count) + ", " + p.Species.String(), Note: "the job's own count; silowright count works out samples"},
		{Name: "mean shell on arrival", Value: p.Size.Both(u)},
		{Name: "mass on arrival", Value: w.Mass.Both(u)},
		{Name: "seed in a litre, drained", Value: strconv.FormatFloat(w.PerLitre, 'f', 0, 64)},
		{Name: fmt.Sprintf("seed alive in week %d", last.Week), Value: strconv.Itoa(last.Count) + ", " + last.Mass.Both(u)},
	}
}

// food are the weeks in which the seed clears most of its water, and least.
func food(n seed.SiloNeed, u measure.Unit) []sheets.Amount {
	var most *seed.Week
	for i := range n.Weeks {
		w := &n.Weeks[i]
		if w.Food.Reckoned && (most == nil || w.Food.Share > most.Food.Share) {
			most = w
		}
	}
	if most == nil {
		return nil
	}
	f := most.Food
	return []sheets.Amount{{Name: fmt.Sprintf("water the seed clears in week %d, the most of its share", most.Week), Sum: f.Cleared.Both(u)},
		{Name: "water it is given", Sum: f.Delivered.Both(u)}, {Name: "share", Sum: measure.Percent(f.Share)}}
}
