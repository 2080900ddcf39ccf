package geometry

import (
	"fmt"
	"strings"

	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

// Key is the job-file section of a hole.
func (h Hole) Key() string {
	if h.Name == "pipe silo outlet" {
		return "pipe_silo"
	}
	return h.Name
}

func (h Hole) id(check string) string { return strings.ReplaceAll(h.Key(), "_", "-") + "." + check }

// HoleChecks are the checks of one hole by itself: saw against pipe, and what
// its joint needs. Sentences are written for a reader who works in u.
func HoleChecks(h Hole, u measure.Unit) []Finding {
	switch h.Joint {
	case JointStopper:
		return []Finding{stopperCheck(h, u)}
	case JointGrommet:
		return []Finding{grommetCheck(h, u)}
	}
	return []Finding{sawPipeCheck(h, u), coverCheck(h, u), nippleCheck(h, u)}
}

// tight is the least a saw's nominal size should be over the pipe's largest
// outside: what the hole comes out larger is not counted on.
const tight = measure.Inch / 64

// sawPipeCheck holds the hole against the pipe that goes through it. A
// clearance under tight is a tight fit; more than that of the largest clearance
// hole quoted for the pipe is loose.
func sawPipeCheck(h Hole, u measure.Unit) Finding {
	loose, b := h.looseFrom()
	least := h.Saw - h.PipeOutside - h.PipeTolerance
	id, key := h.id("saw-pipe"), h.Key()+".saw"
	switch {
	case h.Clearance <= 0:
		return lengths(id, key, Stop, h.Clearance, tight, worked,
			"the hole comes out %s and the pipe is %s outside: it does not go through; use %s",
			h.Diameter.Both(u), h.PipeOutside.Both(u), sawAdvice(h, u))
	case least < tight:
		return lengths(id, key, Caution, least, tight, practice,
			"the pipe passes only because the hole comes out larger than the saw (%s to spare): a tight fit; sand the hole or use %s",
			h.Clearance.Both(u), sawAdvice(h, u))
	case h.Clearance > loose+tight:
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
	return h.PipeOutside * 15 / 100, practice
}

// sawAdvice names the smallest saw of the series that would do.
func sawAdvice(h Hole, u measure.Unit) string {
	for _, s := range SawsFor(h) {
		return "the " + s.Name(u) + " saw"
	}
	return "another pipe: no saw of the series does"
}

// SawsFor lists the saws of the series that suit the hole's joint, smallest
// first: for couplings those that pass the pipe neither tight nor loose and
// are covered, for a grommet those within 1/32 in of what it wants, for a
// stopper those it seats in well.
func SawsFor(h Hole) []stock.HoleSaw {
	oversize := h.Diameter - h.Saw
	var out []stock.HoleSaw
	for _, s := range stock.HoleSaws() {
		d := s.Diameter + oversize
		ok := false
		switch h.Joint {
		case JointStopper:
			f := (d - h.Stopper.Bottom) / (h.Stopper.Top - h.Stopper.Bottom)
			ok = f >= seatShallow && f <= seatDeep
		case JointGrommet:
			ok = h.Grommet.Known && (s.Diameter-h.Grommet.Hole).Abs() <= grommetSlack
		default:
			clear := d - h.PipeOutside
			loose, _ := h.looseFrom()
			ok = s.Diameter-h.PipeOutside-h.PipeTolerance >= tight && clear <= loose+tight &&
				h.Coupling.Outside > d
		}
		if ok {
			out = append(out, s)
		}
	}
	return out
}

// coverCheck holds the coupling's face against the hole it must cover, with
// the pipe pushed to one side.
func coverCheck(h Hole, u measure.Unit) Finding {
	const good = measure.Inch / 8
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
	if c.WorstCover < good {
		lv = Caution
	}
	if c.Cover <= 0 {
		lv = Stop
	}
	return lengths(h.id("saw-cover"), h.Key()+".saw", lv, c.WorstCover, good, b,
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
	key := h.Key() + ".nipple"
	if h.Name == "pipe silo outlet" {
		key = "pipe_silo.pipe_out_length"
	}
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
	switch {
	case c.Fill > c.Depth:
		return lengths(h.id("nipple-sockets"), key, Stop, c.Nipple, full, b,
			"the nipple is %s longer than wall and both sockets: the couplings cannot close on the wall; cut it to %s at most",
			(c.Nipple - full).Both(u), full.Both(u))
	case c.Fill < fillBad*c.Depth:
		return lengths(h.id("nipple-sockets"), key, Stop, c.Fill, c.Depth, b,
			"the nipple reaches only %s into each socket, which is %s deep: too little to hold; make it %s long",
			maxLength(0, c.Fill).Both(u), c.Depth.Both(u), full.Both(u))
	case c.Fill < fillGood*c.Depth:
		return lengths(h.id("nipple-sockets"), key, Caution, c.Fill, c.Depth, b,
			"the nipple fills %s of each socket, which is %s deep: it holds less than a full joint; %s would fill both",
			c.Fill.Both(u), c.Depth.Both(u), full.Both(u))
	}
	return lengths(h.id("nipple-sockets"), key, OK, c.Fill, c.Depth, b,
		"the nipple fills %s of each socket, which is %s deep", c.Fill.Both(u), c.Depth.Both(u))
}

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
	if off.Abs() > grommetSlack {
		lv = Stop
	}
	if g.Label {
		return lengths(id, key, lv, h.Saw, g.Hole, Basis{JobSetting, "fittings.grommet, read from its label"},
			say(lv, "the saw (%s) is what the grommet's label asks for (%s)", "",
				"the saw (%s) is not what the grommet's label asks for (%s): change the saw"),
			h.Saw.Both(u), g.Hole.Both(u))
	}
	b := Basis{FromMemory, "usual pipe-to-tank grommet table"}
	if lv == OK {
		return lengths(id, key, Caution, h.Saw, g.Hole, b,
			"the saw (%s) agrees with the usual table (%s), which is from memory: read the grommet's own label and set fittings.grommet before cutting",
			h.Saw.Both(u), g.Hole.Both(u))
	}
	return lengths(id, key, Stop, h.Saw, g.Hole, b,
		"the saw is %s but the usual table, from memory and so not certain, says %s for a %s grommet: do not cut before reading the grommet's own label; set fittings.grommet to what it says, and that wins",
		h.Saw.Both(u), g.Hole.Both(u), h.Pipe.Size)
}

// How much of a stopper's taper may go in: less and it falls out, more and it
// goes through (common practice, no source).
const (
	seatShallow = 0.15
	seatDeep    = 0.85
)

func stopperCheck(h Hole, u measure.Unit) Finding {
	f := h.Stopper
	lv := OK
	if f.SeatFraction < seatShallow || f.SeatFraction > seatDeep {
		lv = Caution
	}
	if f.SeatFraction <= 0 || f.SeatFraction >= 1 {
		lv = Stop
	}
	limit := f.Bottom
	if f.SeatFraction > 0.5 {
		limit = f.Top
	}
	b := Basis{Kind: JobSetting, Source: "fittings.stopper"}
	if !f.Measured {
		b = Basis{Kind: Published, Source: "table of tapered rubber stoppers, " + f.Standing}
	}
	advice := "try another stopper"
	if saws := SawsFor(h); len(saws) > 0 {
		advice = "the " + saws[0].Name(u) + " saw would do"
	}
	id, key := h.id("saw-stopper"), h.Key()+".saw"
	switch {
	case f.SeatFraction <= 0:
		return lengths(id, key, lv, h.Diameter, f.Bottom, b, "a No. %s stopper is %s across its small end and does not enter the %s hole: %s",
			f.Number, f.Bottom.Both(u), h.Diameter.Both(u), advice)
	case f.SeatFraction >= 1:
		return lengths(id, key, lv, h.Diameter, f.Top, b, "a No. %s stopper is %s across its large end and falls through the %s hole: %s",
			f.Number, f.Top.Both(u), h.Diameter.Both(u), advice)
	}
	says := fmt.Sprintf("a No. %s stopper, %s to %s across, goes %s (%.0f %% of its length) into the %s hole",
		f.Number, f.Bottom.Both(u), f.Top.Both(u), f.SeatDepth.Both(u), 100*f.SeatFraction, h.Diameter.Both(u))
	if lv == Caution {
		says += ": a poor seat; " + advice
	}
	return lengths(id, key, lv, h.Diameter, limit, b, "%s", says)
}
