package geometry

import (
	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

// grommetJoint is a rubber pipe-to-tank grommet that the pipe is pushed
// through.
func grommetJoint() joint {
	return joint{
		name:   JointGrommet,
		fit:    func(h *Hole, q HoleSpec) error { h.fitGrommet(q); return nil },
		checks: func(h Hole, u measure.Unit) []Finding { return []Finding{grommetCheck(h, u)} },
		suits: func(h Hole, saw, _ length) bool {
			return h.Grommet.Known && (saw-h.Grommet.Hole).Abs() <= grommetSlack
		},
		makeup: Makeup{By: "a grommet", Means: "rubber, the pipe pushed through", Part: "grommet", Item: "pipe-to-tank grommet for %s pipe",
			Parts: 1, Piped: true, Fitted: true},
	}
}

// GrommetMeasure is what a grommet's label says.
type GrommetMeasure struct{ Hole length }

// GrommetFit is what a grommet needs.
type GrommetFit struct {
	Hole     length
	Known    bool   // a label or a table gives the hole
	Label    bool   // the job states what the label reads
	Standing string // of the table's number
}

// fitGrommet works out what hole the grommet wants: the builder's reading of
// its label, or the table.
func (h *Hole) fitGrommet(q HoleSpec) {
	if g, ok := q.Fittings.Grommets[q.Pipe.Size]; ok && g.Hole > 0 {
		h.Grommet = GrommetFit{Hole: g.Hole, Known: true, Label: true}
	} else if t, ok := stock.GrommetHole(q.Pipe.Size); ok && q.Pipe.inchPressure() {
		h.Grommet = GrommetFit{Hole: t.Max, Known: true, Standing: string(t.Origin.Standing)}
	}
	h.Footprint = maxLength(h.Diameter, h.Grommet.Hole) + 2*grommetFlange
}

// grommetFlange is how far a grommet's flange stands past its hole (common
// practice, no source).
const grommetFlange = measure.Inch / 4

// grommetSlack is how far a saw may be from the hole a grommet asks for.
const grommetSlack = measure.Inch / 32

// grommetCheck holds the saw against the hole the grommet's label or the table
// asks for. The label, stated in the job, wins.
func grommetCheck(h Hole, u measure.Unit) Finding {
	g := h.Grommet
	id, key := h.id("saw-grommet"), h.Key()+".saw"
	off := h.Saw - g.Hole
	if !g.Known {
		return lengths(id, key, Caution, h.Saw, 0, Basis{Kind: FromMemory},
			"no table gives the hole for a %s grommet: read the grommet's own label and set fittings.grommet", h.Pipe.Size)
	}
	lv := OK
	if below(grommetSlack, off.Abs()) {
		lv = Stop
	}
	saw, asks := apart(h.Saw, g.Hole, u)
	if g.Label {
		b := Basis{JobSetting, "fittings.grommet, read from its label"}
		if lv == Stop {
			return lengths(id, key, lv, h.Saw, g.Hole, b, "the saw (%s) is not what the grommet's label asks for (%s): change the saw", saw, asks)
		}
		return lengths(id, key, lv, h.Saw, g.Hole, b, "the saw, %s, is what the grommet's label asks for%s", saw, unlike(saw, asks))
	}
	b := Basis{FromMemory, "usual pipe-to-tank grommet table"}
	if lv == OK {
		return lengths(id, key, Caution, h.Saw, g.Hole, b,
			"the saw, %s, agrees with the usual table%s, which is from memory: read the grommet's own label and set fittings.grommet before cutting",
			saw, unlike(saw, asks))
	}
	return lengths(id, key, Stop, h.Saw, g.Hole, b,
		"the saw is %s but the usual table, from memory and so not certain, says %s for a %s grommet: do not cut before reading the grommet's own label; set fittings.grommet to what it says, and that wins",
		saw, asks, h.Pipe.Size)
}
