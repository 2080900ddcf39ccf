package geometry

import (
	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

// couplingsJoint is two couplings on a nipple that close on the wall.
func couplingsJoint() joint {
	return joint{
		name: JointCouplings,
		fit:  func(h *Hole, q HoleSpec) error { h.fitCouplings(q); return nil },
		checks: func(h Hole, u measure.Unit) []Finding {
			return []Finding{sawPipeCheck(h, u), coverCheck(h, u), nippleCheck(h, u)}
		},
		suits: func(h Hole, saw, d length) bool {
			loose, _ := h.looseFrom()
			return saw-h.PipeOutside-h.PipeTolerance >= tight && d-h.PipeOutside <= loose+tight && h.Coupling.Outside > d
		},
		makeup: Makeup{By: "couplings", Means: "one on each side of the wall", Part: "coupling", Item: "coupling for %s pipe",
			Parts: 2, Piped: true, Nipple: true, Sockets: 2, Faces: 2, Passed: 2},
	}
}

// CouplingMeasure is a coupling as measured; a zero field was not measured.
type CouplingMeasure struct{ Outside, Length, Depth length }

// CouplingFit is how two couplings sandwich the wall.
type CouplingFit struct {
	Outside, Depth length
	HoleGap        length // under a flat face at the hole's edge: R − √(R² − (d/2)²)
	FaceGap        length // the same at the coupling's own edge
	Cover          length // coupling past the hole, centred
	WorstCover     length // the same with the pipe pushed to one side
	Nipple         length
	Grip           length // between the two faces: wall, and the hollow under the inner one
	Fill           length // nipple inside each socket
	Measured       bool   // the job measured the coupling's outside
	Standing       string // of the outside and the depth when it did not
}

// fitCouplings works out how two couplings sandwich the wall.
func (h *Hole) fitCouplings(q HoleSpec) {
	c := CouplingFit{Nipple: q.Nipple}
	var sure stock.Standing
	c.Depth, sure = socketDepth(q.Pipe, h.PipeOutside)
	if outside, of := socketOutside(q.Pipe, h); of != "" {
		c.Outside, sure = outside, of
	} else {
		c.Outside = outside
	}
	c.Standing = string(sure)
	if m, ok := q.Fittings.Couplings[q.Pipe.Size]; ok {
		if m.Outside > 0 {
			c.Outside, c.Measured = m.Outside, true
		}
		if m.Depth > 0 {
			c.Depth = m.Depth
		} else if m.Length > 0 {
			c.Depth = minLength(c.Depth, m.Length/2)
		}
	}
	c.HoleGap = Sagitta(q.Radius, h.Diameter)
	c.FaceGap = Sagitta(q.Radius, c.Outside)
	c.Cover = (c.Outside - h.Diameter) / 2
	c.WorstCover = c.Cover - maxLength(0, h.Clearance)/2
	// Outside, the flat face stands on the wall's crown line; inside, its two
	// sides touch the hollow wall.
	c.Grip = q.Wall + Sagitta(q.Radius-q.Wall, c.Outside)
	c.Fill = (q.Nipple - c.Grip) / 2
	h.Footprint = c.Outside
	h.Inner = 2 * c.Depth
	h.Coupling = c
}

// socketOutside is the least outside of a socket for the hole's pipe, and the
// standing of a table that gives it.
func socketOutside(p PipeRef, h *Hole) (length, stock.Standing) {
	if t, ok := stock.CouplingOf(p.Size); ok && p.inchPressure() {
		return t.Outside, t.Origin.Standing
	}
	if t, ok := stock.SewerSocketOf(p.Size); ok && p.inchSewer() {
		return t.Bottom + 2*h.PipeWall, ""
	}
	return h.PipeOutside + 2*h.PipeWall, "" // bounded as for inch couplings: pipe + 2 × wall
}

// metricSocket is how much deeper than half the pipe's outside a metric
// solvent socket is (ISO 727-1, from memory).
const metricSocket length = 6

// socketDepth is how deep the pipe goes into a socket for solvent cement.
func socketDepth(p PipeRef, outside length) (length, stock.Standing) {
	if t, ok := stock.CouplingOf(p.Size); ok && p.inchPressure() {
		return t.Depth, t.Origin.Standing
	}
	if t, ok := stock.SewerSocketOf(p.Size); ok && p.inchSewer() {
		return t.Depth, stock.Derived
	}
	return outside/2 + metricSocket, stock.Memory
}

// tight is the least a saw's nominal size should be over the pipe's largest
// outside: what the hole comes out larger is not counted on.
const tight = measure.Inch / 64

// Common practice, no source: loosePercent of the outside is the clearance past
// which pipe is loose where no clearance hole is quoted, coverGood what a
// coupling should reach past the edge of its hole.
const (
	loosePercent = 15
	coverGood    = measure.Inch / 8
)

// sawPipeCheck holds the hole against the pipe that goes through it. A
// clearance under tight is a tight fit; more than that of the largest clearance
// hole quoted for the pipe is loose.
func sawPipeCheck(h Hole, u measure.Unit) Finding {
	loose, b := h.looseFrom()
	least := h.Saw - h.PipeOutside - h.PipeTolerance
	id, key := h.id("saw-pipe"), h.Key()+".saw"
	switch {
	case !below(0, h.Clearance):
		hole, pipe := apart(h.Diameter, h.PipeOutside, u)
		return lengths(id, key, Stop, h.Clearance, tight, worked,
			"the hole comes out %s and the pipe is %s outside: it does not go through; use %s", hole, pipe, sawAdvice(h, u))
	case below(least, tight):
		return lengths(id, key, Caution, least, tight, practice,
			"the pipe passes only because the hole comes out larger than the saw (%s to spare): a tight fit; sand the hole or use %s",
			h.Clearance.Both(u), sawAdvice(h, u))
	case below(loose+tight, h.Clearance):
		return lengths(id, key, Caution, h.Clearance, loose, b,
			"the hole is %s larger than the pipe: loose, and the couplings must cover it; use %s",
			h.Clearance.Both(u), sawAdvice(h, u))
	}
	return lengths(id, key, OK, h.Clearance, tight, worked,
		"the pipe passes with %s to spare", h.Clearance.Both(u))
}

// looseFrom is the clearance past which a pipe is loose in its hole: the
// largest clearance hole quoted for inch pressure pipe, 15 % of the outside
// for other pipe.
func (h Hole) looseFrom() (length, Basis) {
	if t, ok := stock.ClearanceHole(h.Pipe.Size); ok && h.Pipe.inchPressure() {
		return t.Max - h.PipeOutside, Basis{Published, t.Origin.Source}
	}
	return h.PipeOutside * loosePercent / 100, practice
}

// coverCheck holds the coupling's face against the hole it must cover, with
// the pipe pushed to one side.
func coverCheck(h Hole, u measure.Unit) Finding {
	c := h.Coupling
	b := Basis{JobSetting, "fittings.coupling"}
	note := ""
	if !c.Measured {
		b = Basis{FromMemory, "least outside a coupling can have: socket bottom + 2 × pipe wall"}
		if c.Standing == string(stock.Derived) {
			b = Basis{Worked, "least outside a coupling can have: socket bottom (ASTM D2466, sewer F789) + 2 × pipe wall"}
		}
		note = "; couplings vary: measure yours and set fittings.coupling"
	}
	lv := OK
	if below(c.WorstCover, coverGood) {
		lv = Caution
	}
	if !below(0, c.Cover) {
		lv = Stop
	}
	return lengths(h.id("saw-cover"), h.Key()+".saw", lv, c.WorstCover, coverGood, b,
		say(lv, "a coupling %s outside covers the hole: it %s with the pipe to one side, %s when centred; its flat face leaves %s at its edge for sealant%s",
			"a coupling %s outside covers the hole barely: it %s with the pipe to one side, %s when centred: keep the pipe centred and bed the faces, %s off at the edge, in sealant%s",
			"a coupling %s outside does not cover the hole: it %s with the pipe to one side, %s when centred (gap at the edge %s): use a smaller saw or larger couplings%s"),
		c.Outside.Both(u), reaches(c.WorstCover, u), reaches(c.Cover, u), c.FaceGap.Both(u), note)
}

// reaches words how far a face reaches past a hole's edge, or falls short.
func reaches(l length, u measure.Unit) string {
	if l < 0 {
		return "falls short of the edge by " + (-l).Both(u)
	}
	return "reaches " + l.Both(u) + " past the edge"
}

// How much of a socket a nipple should fill: less than nine tenths is a
// caution, less than half a stop (common practice, no source).
const (
	fillGood = 0.9
	fillBad  = 0.5
)

// nippleCheck says how much of each socket the nipple fills, wall and face
// gaps counted, and whether the couplings can close on the wall.
func nippleCheck(h Hole, u measure.Unit) Finding {
	c := h.Coupling
	key := h.pipeKey()
	b := Basis{Published, "ASTM D2466, least socket depth"}
	if h.Pipe.inchSewer() {
		b = Basis{Published, "ASTM F789, sewer socket depth"}
	}
	if c.Measured {
		b = Basis{JobSetting, "fittings.coupling"}
	} else if c.Standing == string(stock.Memory) {
		b = Basis{FromMemory, "ISO 727-1, socket depth"}
	}
	full := c.Grip + 2*c.Depth
	fills, deep := apart(c.Fill, c.Depth, u)
	switch {
	case below(c.Depth, c.Fill):
		return lengths(h.id("nipple-sockets"), key, Stop, c.Nipple, full, b,
			"the nipple is %s longer than wall and both sockets: the couplings cannot close on the wall; cut it to %s at most",
			(c.Nipple - full).Both(u), full.Both(u))
	case below(c.Fill, fillBad*c.Depth):
		return lengths(h.id("nipple-sockets"), key, Stop, c.Fill, c.Depth, b,
			"the nipple reaches only %s into each socket, which is %s deep: too little to hold; make it %s long",
			maxLength(0, c.Fill).Both(u), c.Depth.Both(u), full.Both(u))
	case below(c.Fill, fillGood*c.Depth):
		return lengths(h.id("nipple-sockets"), key, Caution, c.Fill, c.Depth, b,
			"the nipple fills %s of each socket, which is %s deep: it holds less than a full joint; %s would fill both",
			fills, deep, full.Both(u))
	}
	return lengths(h.id("nipple-sockets"), key, OK, c.Fill, c.Depth, b,
		"the nipple fills %s of each socket, which is %s deep", fills, deep)
}
