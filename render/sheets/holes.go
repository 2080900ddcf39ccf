package sheets

import (
	"fmt"
	"strings"

	"silowright/geometry"
)

func setHoles(f *flow, p *Pack) {
	f.para(datumSentence)
	for _, s := range p.Silos {
		title := "Holes through a wall"
		if len(p.Silos) > 1 {
			title = "Drum kind " + s.Spec.Drum.Label
		}
		f.headingOver(title, 60)
		f.table(holeTable(f, p, s))
		f.table(jointTable(f, p, s))
		f.headed("Handle slots", slotTable(f, s))
	}
}

// round says where on the wall a thing stands.
func round(f *flow, s length) string {
	if s.Abs() < 0.05 {
		return "on the datum"
	}
	return s.Both(f.units)
}

func holeTable(f *flow, p *Pack, s geometry.Silo) table {
	u := f.units
	t := table{cols: []column{{head: "Hole, part", share: 36, bold: true}, {head: "Centre, height", share: 37},
		{head: "Below the rim", share: 36}, {head: "Round the wall, datum to right", share: 38}, {head: "Hole saw; laid flat, wide", share: 37}}}
	for _, h := range holesOf(s, p.PipeSilos) {
		below := "–"
		if h.BelowRim > 0 {
			below = h.BelowRim.Both(u)
		}
		t.add(strong(h.Name, h.Part), say(h.Height.Both(u)), say(below), say(round(f, h.Round)), say(h.Saw.Both(u), h.Arc.Both(u)))
	}
	return t
}

func jointTable(f *flow, p *Pack, s geometry.Silo) table {
	u := f.units
	t := table{cols: []column{{head: "Hole", share: 26, bold: true}, {head: "Pipe outside; hole larger by", share: 40}, {head: "Joint", share: 68},
		{head: "Finding", share: 50}}}
	for _, h := range holesOf(s, p.PipeSilos) {
		pipe := say(pipeName(h.Pipe), h.PipeOutside.Both(u), "larger by "+h.Clearance.Both(u))
		if h.Joint == geometry.JointStopper {
			pipe = say("no pipe")
		}
		level, ids := holeFindings(p, s, h)
		words := []string{levelWord(level)}
		if len(ids) > 0 {
			words = []string{levelWord(level) + ": " + strings.Join(ids, ", ")}
		}
		t.add(say(h.Name), pipe, say(jointWords(f, h)), cell{paras: words, mark: levelMark(level)})
	}
	return t
}

// jointWords says what closes a hole and the number that makes it fit.
func jointWords(f *flow, h geometry.Hole) string {
	u := f.units
	switch h.Joint {
	case geometry.JointCouplings:
		c := h.Coupling
		return fmt.Sprintf("two couplings on a nipple %s long; each fills %s of a socket %s deep; coupling covers the hole by %s all round",
			c.Nipple.Both(u), c.Fill.Both(u), c.Depth.Both(u), c.Cover.Both(u))
	case geometry.JointGrommet:
		g := h.Grommet
		switch {
		case g.Label:
			return "rubber pipe-to-tank grommet; its label asks for a hole of " + g.Hole.Both(u)
		case g.Known:
			return "rubber pipe-to-tank grommet; the table (" + g.Standing + ") asks for a hole of " + g.Hole.Both(u) + ": read the label of yours"
		}
		return "rubber pipe-to-tank grommet; read the hole it asks for on its label"
	case geometry.JointStopper:
		switch t := h.Stopper; {
		case t.SeatDepth <= 0:
			return "tapered stopper No. " + t.Number + ", too large for the hole: it does not go in"
		case t.SeatDepth >= t.Length:
			return "tapered stopper No. " + t.Number + ", too small for the hole: it goes right through"
		}
		return fmt.Sprintf("tapered stopper No. %s, goes in %s of %s", h.Stopper.Number, h.Stopper.SeatDepth.Both(u), h.Stopper.Length.Both(u))
	}
	return string(h.Joint)
}

// holeFindings are the worst level among the findings of a hole and the ids of
// those that are not ok.
func holeFindings(p *Pack, s geometry.Silo, h geometry.Hole) (geometry.Level, []string) {
	worst := geometry.OK
	var ids []string
	for _, x := range p.Findings {
		if x.Drum != "" && x.Drum != s.Spec.Drum.Label || !concerns(x, s, h) {
			continue
		}
		worst = max(worst, x.Level)
		if x.Level != geometry.OK {
			ids = append(ids, x.ID)
		}
	}
	return worst, ids
}

// concerns reports whether a finding is about a hole, by the job-file key it
// asks to change.
func concerns(x geometry.Finding, s geometry.Silo, h geometry.Hole) bool {
	if h.Part != s.Pipe.Hole.Part {
		return strings.HasPrefix(x.Key, h.Name+".")
	}
	return x.Key == "pipe_silo.saw" || x.Key == "pipe_silo.joint" || strings.HasPrefix(x.Key, "pipe_silo.pipe_out")
}

func slotTable(f *flow, s geometry.Silo) table {
	u := f.units
	t := table{cols: []column{{head: "Slot", share: 12, bold: true}, {head: "Upper edge below the rim", share: 33}, {head: "Sill below the rim", share: 33},
		{head: "Middle, round the wall", share: 39}, {head: "Long, round the wall", share: 36}, {head: "End radius", share: 31}}}
	for i, sl := range s.Slots {
		t.add(say(fmt.Sprint(i+1)), say(sl.Top.Both(u)), say(sl.Sill.Both(u)), say(round(f, sl.Round)), say(sl.Length.Both(u)), say(sl.CornerR.Both(u)))
	}
	return t
}
