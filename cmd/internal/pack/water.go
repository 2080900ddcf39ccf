package pack

import (
	"fmt"
	"slices"
	"strconv"

	"silowright/cmd/internal/plan"
	"silowright/cmd/internal/report"
	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/nursery"
	"silowright/nursery/flow"
	"silowright/nursery/manifold"
	"silowright/render/sheets"
)

// waterPage hands the water to its pages; nil when no drum silo is built.
func waterPage(p *plan.Plan) *sheets.Water {
	s := p.Water
	if s == nil {
		return nil
	}
	u := p.Job.Units
	findings := s.Findings(u)
	out := &sheets.Water{Says: keySays(findings, waterParts, "water.sill", "water.first", "manifold.evenness", "manifold.throttle", "pump.reaches", "pump.guess", "failure.drains"),
		NoPump: "No pump is described in the job; the flows below are from " + string(s.From) + ". Describe the pump under [pump] and the manifold under [manifold]."}
	g := fullest(s)
	out.Section = levelSection(p, s, g)
	out.Losses, out.Seat, out.SeatSays = losses(g, u), seat(g, u), said(findings, "water.seat")
	out.Flows = siloFlows(s, u)
	out.Basis = basisOf(findings, waterParts...)
	if s.Pumping != nil {
		out.Pump = pumpChart(s, u)
		out.Lines = pumpLines(p, u)
		out.Pipes = pipeRows(s, u)
	} else if s.Asks != nil {
		out.Lines = []sheets.Amount{{Name: "a pump must give", Sum: s.Asks.Total.Both(u) + " at " + s.Asks.Head.BothLong(u)}}
	}
	if s.Failure != nil {
		out.Failure = report.FailureSays(*s.Failure, u)
	}
	return out
}

// fullest is the group whose silo stands closest to spilling.
func fullest(s *nursery.Study) nursery.Group {
	best := s.Groups[0]
	for _, g := range s.Groups {
		if g.Most.ToSill < best.Most.ToSill {
			best = g
		}
	}
	return best
}

// waterParts are how the ids of findings on water begin.
var waterParts = []string{"water.", "manifold.", "main.", "pump.", "suction.", "lateral.", "failure."}

// keySays are the findings of a page that a reader must see first: those that
// are not ok, worst first, then those that answer what is asked, by id. All of
// them stand among the findings at the front of the pack.
func keySays(findings []geometry.Finding, begins []string, asked ...string) []sheets.Said {
	var out []sheets.Said
	put := func(f geometry.Finding) {
		out = append(out, sheets.Said{Level: f.Level, Words: f.Says, Basis: f.Basis.String()})
	}
	for _, lv := range []geometry.Level{geometry.Stop, geometry.Caution} {
		for _, f := range findings {
			if f.Level == lv && beginsWith(f.ID, begins) {
				put(f)
			}
		}
	}
	for _, id := range asked {
		for _, f := range findings {
			if f.Level == geometry.OK && f.ID == id {
				put(f)
			}
		}
	}
	return out
}

func beginsWith(id string, begins []string) bool {
	return slices.ContainsFunc(begins, func(b string) bool { return len(id) >= len(b) && id[:len(b)] == b })
}

// said is the worst finding of an id.
func said(findings []geometry.Finding, id string) sheets.Said {
	var out sheets.Said
	for _, f := range findings {
		if f.ID == id && (out.Words == "" || f.Level > out.Level) {
			out = sheets.Said{Level: f.Level, Words: f.Says, Basis: f.Basis.String()}
		}
	}
	return out
}

// basisOf lists what the findings' numbers rest on, each source once.
func basisOf(findings []geometry.Finding, begins ...string) []sheets.BasisLine {
	var out []sheets.BasisLine
	for _, f := range findings {
		line := sheets.BasisLine{What: f.ID, Source: f.Basis.String()}
		at := slices.IndexFunc(out, func(b sheets.BasisLine) bool { return b.Source == line.Source })
		switch {
		case !beginsWith(f.ID, begins):
		case at < 0:
			out = append(out, line)
		case !slices.Contains(splitWords(out[at].What), f.ID):
			out[at].What += ", " + f.ID
		}
	}
	return out
}

// siloOf is the solved silo of a group's kind.
func siloOf(p *plan.Plan, g nursery.Group) geometry.Silo {
	at := slices.IndexFunc(p.Silos, func(s geometry.Silo) bool { return s.Spec.Drum.Label == g.Drum })
	return p.Silos[max(0, at)]
}

func levelSection(p *plan.Plan, s *nursery.Study, g nursery.Group) *sheets.LevelSection {
	u, si, w := p.Job.Units, siloOf(p, g), g.Silo
	over := func(height measure.Length) measure.Length { return height - w.Invert }
	out := &sheets.LevelSection{Bore: w.Bore, Wall: si.Spec.Drum.Wall, Rim: over(w.Rim), Outlet: w.Outlet.Bore,
		Nipple: (si.Outlet.PipeOutside - si.Outlet.PipeInside) / 2, Stub: w.Outlet.Length - si.Spec.Drum.Wall, Mesh: over(w.MeshTop),
		Design: sheets.LevelAt{Flow: g.Most.Flow, Level: g.Most.Level}, Says: g.Most.Flow.Both(u)}
	if len(p.Silos) > 1 {
		out.Drum = g.Drum
	}
	if w.Slots > 0 {
		out.Slot = &sheets.SlotSeen{Sill: over(w.Sill), Top: over(w.Sill) + w.Slot.Height, Long: w.Slot.Length}
	}
	if q := w.Pipe; q != nil && g.Most.Pipe != nil {
		out.Pipe = &sheets.PipeSeen{Outside: si.Pipe.Outside, Wall: (si.Pipe.Outside - q.Inside) / 2, Gap: measure.Inch, Rim: over(q.Rim), Screen: over(q.Bottom),
			Surface: over(q.Invert) + g.Most.Pipe.Level}
	}
	for _, q := range g.Levels(s.Water) {
		out.Curve = append(out.Curve, sheets.LevelAt{Flow: q.Flow, Level: q.Level})
	}
	mark := func(name string, q measure.Flow, level measure.Length) {
		if q > 0 && q < flow.MostFlow {
			out.Marks = append(out.Marks, sheets.LevelMark{At: sheets.LevelAt{Flow: q, Level: level}, Name: name, Says: q.Both(u)})
		}
	}
	if w.Slots > 0 {
		mark("reaches the handle slots", g.BeforeSlots, g.Sill)
	}
	mark("reaches the rim", g.BeforeRim, g.Rim)
	if g.BeforePipeRim > 0 {
		mark("reaches the pipe silo's rim", g.BeforePipeRim, g.PipeRim)
	}
	return out
}

func losses(g nursery.Group, u measure.Unit) []sheets.Loss {
	c, f := g.Most.Clean, g.Most.Fouled
	row := func(name string, clean, fouled measure.Length) sheets.Loss {
		out := sheets.Loss{Name: name, Clean: clean.Both(u)}
		if fouled != clean {
			out.Fouled = fouled.Both(u)
		}
		return out
	}
	mesh := row("mesh", c.Mesh, f.Mesh)
	if open := g.Silo.Mesh.Fouled; open > 0 {
		mesh.Note = measure.Percent(open) + " of the openings shut"
	}
	total := row("in all, over the outlet's invert, with the level", g.Most.CleanHead, g.Most.FouledHead)
	total.Total = true
	return []sheets.Loss{row("inlet, stub and fittings", c.Inlet, f.Inlet), row("plenum", c.Plenum, f.Plenum), row("lattice", c.Lattice, f.Lattice), mesh, row("seed", c.Seed, f.Seed), total}
}

func seat(g nursery.Group, u measure.Unit) []sheets.Amount {
	s := g.Most.FouledSeat
	if s.Pressure == 0 {
		return nil
	}
	return []sheets.Amount{{Name: "lift of the standing water on the shoulder, seed and lattice", Sum: s.Shoulder.Both(u)}, {Name: "lift by the drop across lattice, mesh and seed", Sum: s.Drop.Both(u)},
		{Name: "weight of body and wet seed", Sum: s.Weight.Both(u)}, {Name: "left on the seat", Sum: s.Rests.Both(u)}}
}

func siloFlows(s *nursery.Study, u measure.Unit) *sheets.SiloFlows {
	out := &sheets.SiloFlows{Mean: s.Mean, MeanSays: s.Mean.Both(u)}
	for i, o := range s.Silos {
		q := sheets.SiloFlow{Name: strconv.Itoa(o.Place), Flow: o.Flow, Says: o.Flow.Both(u), Level: o.Level.Both(u), Freeboard: o.ToSill.Both(u), Valve: valve(s, i)}
		switch {
		case o.Starved:
			q.Worst, q.Note = geometry.Stop, "gets no water"
		case o.ToSill <= 0:
			q.Worst, q.Note = geometry.Stop, "spills by the handle slots"
		case o.Bed == flow.WashingOut || o.PipeBed == flow.WashingOut:
			q.Worst, q.Note = geometry.Stop, "seed washes out"
		}
		out.Silos = append(out.Silos, q)
	}
	least, most := s.Silos[s.Least], s.Silos[s.Most]
	if s.Least == s.Most {
		out.Says = append(out.Says, fmt.Sprintf("Flows from %s: all %s, each %s.", s.From, s.Total.Both(u), s.Mean.Both(u)))
	} else {
		out.Says = append(out.Says, fmt.Sprintf("Flows from %s: all %s, each on average %s; silo %d gets the least, %s, silo %d the most, %s; the least is %s of the average.",
			s.From, s.Total.Both(u), s.Mean.Both(u), least.Place, least.Flow.Both(u), most.Place, most.Flow.Both(u), measure.Percent(s.Evenness)))
	}
	if q := s.Pumping; q != nil && len(q.Settings.Settings) > 0 {
		out.Says = append(out.Says, fmt.Sprintf("The valve settings below give each silo %s.", q.Settings.Flow.Both(u)))
	}
	return out
}

// valve is how far a silo's valve is to stand open; empty without a pump.
func valve(s *nursery.Study, i int) string {
	if s.Pumping == nil || i >= len(s.Pumping.Settings.Settings) {
		return ""
	}
	return ValveSays(s.Pumping.Settings.Settings[i])
}

// ValveSays is a valve's setting in words.
func ValveSays(v manifold.Setting) string {
	switch {
	case v.Shut:
		return "shut"
	case !v.Possible:
		return "cannot be set"
	case !v.Throttle:
		return "open"
	case !v.InTable:
		return "hardly open"
	}
	return measure.Percent(v.Open) + " open"
}

func pumpChart(s *nursery.Study, u measure.Unit) *sheets.PumpChart {
	at := s.Pumping.Result.Pump
	out := &sheets.PumpChart{Duty: sheets.HeadAt{Flow: at.Flow, Head: at.Head}, DutySays: at.Flow.Both(u) + " at " + at.Head.BothLong(u)}
	if at.Estimated {
		out.Estimated = "The pump's curve is guessed from its power and efficiency: a first look only."
	}
	heads := func(points []manifold.Point) (out []sheets.HeadAt) {
		for _, q := range points {
			out = append(out, sheets.HeadAt{Flow: q.Flow, Head: q.Head})
		}
		return out
	}
	pump, system := s.Pumping.Heads()
	out.Pump, out.System = heads(pump), heads(system)
	return out
}

func pumpLines(p *plan.Plan, u measure.Unit) []sheets.Amount {
	s := p.Water
	q := s.Pumping
	at, n := q.Result.Pump, q.Result.NPSH
	out := []sheets.Amount{{Name: "pump's duty", Sum: at.Flow.Both(u) + " at " + at.Head.BothLong(u)}}
	if at.Input > 0 {
		out = append(out, sheets.Amount{Name: "power drawn", Sum: at.Input.Both(u)}, sheets.Amount{Name: "energy a year", Sum: q.Energy().Text(u)})
	}
	if p.Energy != nil {
		out = append(out, sheets.Amount{Name: "what it costs a year", Sum: p.Energy.String()})
	}
	out = append(out, sheets.Amount{Name: "net positive suction head there is", Sum: n.Available.BothLong(u)})
	if n.Known {
		out = append(out, sheets.Amount{Name: "net positive suction head the pump requires", Sum: n.Required.BothLong(u)})
	}
	out = append(out, sheets.Amount{Name: "the most that every silo can have at once", Sum: q.MostEven.Both(u)})
	if s.Asks != nil {
		out = append(out, sheets.Amount{Name: "the flow wanted asks of a pump", Sum: s.Asks.Total.Both(u) + " at " + s.Asks.Head.BothLong(u)})
	}
	return out
}

func pipeRows(s *nursery.Study, u measure.Unit) []sheets.PipeRow {
	q, f := s.Pumping, s.Farm
	limit := f.Limits.Speed
	row := func(run string, pipe geometry.PipeRef, at manifold.PipeFlow, advised geometry.PipeRef) sheets.PipeRow {
		out := sheets.PipeRow{Run: run, Pipe: nursery.Named(pipe), Flow: at.Flow.Both(u), Speed: at.Speed.Both(u), Loss: at.Loss.Both(u)}
		if advised.Size != "" {
			out.Advised = advised.String()
		}
		if limit > 0 && at.Speed > limit {
			out.Level = geometry.Caution
			out.Speed += ", over " + limit.Both(u)
		}
		return out
	}
	var out []sheets.PipeRow
	if s.Given.Suction {
		out = append(out, row("suction", f.Suction.Pipe, q.Result.Suction, geometry.PipeRef{}))
	}
	sizes := nursery.Sizes{}
	if q.Sizes != nil && q.Sizes.Held {
		sizes = *q.Sizes
	}
	if s.Given.Main {
		out = append(out, row("main, pump to manifold", f.Main.Pipe, q.Result.Main, sizes.Main))
	}
	if s.Given.Manifold && len(q.Result.Segments) > 0 {
		fastest := slices.MaxFunc(q.Result.Segments, func(a, b manifold.PipeFlow) int { return int(a.Speed - b.Speed) })
		out = append(out, row("manifold, where it runs fastest", f.Manifold.Pipe, fastest, sizes.Manifold))
	}
	return out
}
