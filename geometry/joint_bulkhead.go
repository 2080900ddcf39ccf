package geometry

import (
	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

// bulkheadJoint is a threaded bulkhead fitting: a flanged, threaded body
// pushed through the wall from inside, its gasket under the flange, drawn
// tight by a locknut outside. Flange and gasket on the wet side are common
// practice, no source. The pipe is cemented into the socket of its outer end,
// or where its ends are threaded into that of a male adapter screwed in there.
func bulkheadJoint() joint {
	return joint{
		name: JointBulkhead,
		fit:  func(h *Hole, q HoleSpec) error { h.fitBulkhead(q); return nil },
		checks: func(h Hole, u measure.Unit) []Finding {
			out := []Finding{bulkheadSawCheck(h, u), bulkheadCoverCheck(h, u), bulkheadCurveCheck(h, u), bulkheadGripCheck(h, u)}
			if h.Bulkhead.Pipe > 0 {
				out = append(out, bulkheadPipeCheck(h, u))
			}
			return out
		},
		suits: func(h Hole, saw, d length) bool {
			b := h.Bulkhead
			return b.Known() && b.offBy(saw) == 0 && d > b.Thread && min(b.Flange, b.flats()) > d
		},
		makeup: Makeup{By: "a bulkhead fitting", Means: "threaded, gasket inside and locknut outside", Part: "bulkhead-fitting",
			Item: "threaded bulkhead fitting with gasket and locknut, sockets for %s pipe", Parts: 1, Piped: true, Sockets: 1, Fitted: true, Passed: 1},
		makes: func(h Hole, m *Makeup) {
			if h.Bulkhead.Ends == EndThread {
				m.Part, m.Item = "bulkhead-fitting-threaded", "threaded bulkhead fitting with gasket and locknut, female pipe threads for %s pipe"
				m.Adapters, m.Passed = 1, m.Passed+1
			}
		},
	}
}

// End is what an end of a fitting takes a pipe by.
type End string

// The ends a bulkhead fitting may have; it is taken with sockets where the job
// does not say.
const (
	EndSocket End = "socket" // the pipe is cemented in
	EndThread End = "thread" // female pipe thread: a male adapter is screwed in, the pipe cemented into that
)

// BulkheadEnds lists the ends that a bulkhead fitting may have.
func BulkheadEnds() []End { return []End{EndSocket, EndThread} }

// BulkheadMeasure is a bulkhead fitting as measured; a zero field was not
// measured. No standard gives these dimensions.
type BulkheadMeasure struct {
	Hole   length // that its maker asks for
	Thread length // outside diameter of the threaded body
	Flange length // across the flange, the gasket's outside
	Nut    length // across the locknut's corners
	Gasket length // thickness, not squeezed
	Grip   length // flange to locknut with the nut screwed back to the thread's end
	Head   length // from the gasket's face to the inner end
	Length length // over all
	Bore   length // narrowest inside
	Ends   End    // empty: sockets
}

// BulkheadFit is how a bulkhead fitting sits in the wall.
type BulkheadFit struct {
	BulkheadMeasure
	HoleMost length // largest hole asked for; Hole is the least
	Label    bool   // the job states the hole
	Source   string // of the hole when it does not
	Measured bool   // flange, locknut, gasket and grip are the job's
	Depth    length // of pipe in one socket, the fitting's or the adapter's
	Sure     string // standing of the depth
	Pipe     length // the pipe cemented into the outer end; zero when it is not known
	Gap      length // under the flat flange's edge where the hollow wall falls away from it
	Stack    length // what flange and locknut close on: wall, gasket and gap
	Cover    length // flange and locknut past the hole's edge, the body to one side
	Outer    length // from the wall's outside to the outer end
	Adapter  length // how far a male adapter stands past the end it is screwed into; zero with sockets
	Across   length // of that adapter
}

// Known reports whether a label or a table gives the hole.
func (b BulkheadFit) Known() bool { return b.Hole > 0 }

// hexFlats is what a hexagon measures across its flats over its corners, √3/2.
const hexFlats = 0.8660254037844386

// flats is what the locknut covers all round: a hexagon's corners reach further
// than its flats. A nut of eight sides covers more.
func (b BulkheadFit) flats() length { return b.Nut * hexFlats }

// offBy is how far a saw is from the holes asked for, past the slack a saw is
// given; negative when it is too small.
func (b BulkheadFit) offBy(saw length) length {
	switch {
	case below(saw, b.Hole-grommetSlack):
		return saw - b.Hole
	case below(b.HoleMost+grommetSlack, saw):
		return saw - b.HoleMost
	}
	return 0
}

// The proportions of a fitting that was not measured, from memory: no standard
// gives them.
const (
	threadUnder    = measure.Inch / 16 // thread under the hole
	flangeWide     = 1.5               // flange and locknut over the hole
	gasketThick    = measure.Inch / 8
	gripLong       = measure.Inch * 3 / 4
	headLong       = measure.Inch * 3 / 4
	betweenSockets = measure.Inch / 8 // and the least that stands outside
	nutOutside     = measure.Inch / 2
	adapterNeck    = measure.Inch / 4 // of a male adapter, between thread and socket
)

// What its checks hold it to (common practice, no source): flange and locknut
// past the hole's edge, thread to spare, and how many gaskets of gap under the
// flange squeezing takes up and the locknut draws flat.
const (
	flangeCovers = measure.Inch / 8
	gripSpare    = measure.Inch / 16
	gasketTakes  = 0.5
	gasketDrawn  = 2
)

// fitBulkhead works out how the fitting sits. What was not measured is taken
// from memory: thread 1/16 in under the hole, flange and locknut half as wide
// again, gasket 1/8 in, grip 3/4 in, head 3/4 in, two sockets long.
func (h *Hole) fitBulkhead(q HoleSpec) {
	b := BulkheadFit{BulkheadMeasure: q.Fittings.Bulkheads[q.Pipe.Size]}
	b.Measured = b.Flange > 0 && b.Nut > 0 && b.Gasket > 0 && b.Grip > 0
	b.HoleMost, b.Label = b.Hole, b.Hole > 0
	if t, ok := stock.BulkheadHole(q.Pipe.Size); ok && !b.Label && q.Pipe.inchPressure() {
		b.Hole, b.HoleMost, b.Source = t.Min, t.Max, t.Origin.Source
	}
	depth, sure := socketDepth(q.Pipe, h.PipeOutside)
	b.Depth, b.Sure, b.Pipe = depth, string(sure), q.Nipple
	wide := h.Diameter
	if b.Known() {
		wide = b.Hole
	}
	for _, v := range []struct {
		to     *length
		memory length
	}{
		{&b.Thread, wide - threadUnder}, {&b.Flange, wide * flangeWide}, {&b.Nut, wide * flangeWide},
		{&b.Gasket, gasketThick}, {&b.Grip, gripLong}, {&b.Head, headLong},
	} {
		if *v.to <= 0 {
			*v.to = v.memory
		}
	}
	b.Gap = Sagitta(q.Radius-q.Wall, b.Flange)
	b.Stack = q.Wall + b.Gasket + b.Gap
	if least := b.Head + b.Stack + nutOutside; b.Length <= 0 {
		b.Length = maxLength(2*b.Depth+betweenSockets, least)
	}
	b.Outer = maxLength(b.Length-b.Head-b.Stack, betweenSockets)
	b.Cover = (minLength(b.Flange, b.flats())-h.Diameter)/2 - maxLength(0, h.Diameter-b.Thread)/2
	if b.Ends == EndThread {
		b.Adapter = adapterNeck + b.Depth
		b.Across, _ = socketOutside(q.Pipe, h)
	}
	h.Throat, h.Inner = b.Bore, b.Head+b.Adapter
	h.Footprint = maxLength(h.Diameter, maxLength(b.Flange, b.Nut))
	h.Bulkhead = b
}

// basis is what the fitting's own measures rest on.
func (b BulkheadFit) basis() Basis {
	if b.Measured {
		return Basis{JobSetting, "fittings.bulkhead"}
	}
	return Basis{FromMemory, "usual proportions of bulkhead fittings; set fittings.bulkhead"}
}

// bulkheadSawCheck holds the saw against the hole that the fitting's maker or
// the size charts ask for, and the hole against the threaded body.
func bulkheadSawCheck(h Hole, u measure.Unit) Finding {
	b := h.Bulkhead
	id, key := h.id("saw-bulkhead"), h.Key()+".saw"
	if !b.Known() {
		return lengths(id, key, Caution, h.Saw, 0, Basis{Kind: FromMemory},
			"no table gives the hole for a %s bulkhead fitting: measure its thread and set fittings.bulkhead before cutting", h.Pipe.Size)
	}
	basis := Basis{JobSetting, "fittings.bulkhead, as its maker asks"}
	if !b.Label {
		basis = Basis{Published, b.Source}
	}
	limit := b.Hole
	if b.offBy(h.Saw) > 0 {
		limit = b.HoleMost
	}
	saw, asks := apart(h.Saw, limit, u)
	switch {
	case b.offBy(h.Saw) != 0:
		return lengths(id, key, Stop, h.Saw, limit, basis,
			"the saw is %s and a %s bulkhead fitting asks for a hole of %s: change the saw, or measure the fitting and set fittings.bulkhead",
			saw, h.Pipe.Size, asks)
	case !below(b.Thread, h.Diameter):
		hole, thread := apart(h.Diameter, b.Thread, u)
		return lengths(id, key, Stop, h.Diameter, b.Thread, b.basis(),
			"the hole comes out %s and the fitting's thread is %s outside: it does not go through; use a larger saw", hole, thread)
	case !below(h.PipeOutside, b.Thread):
		thread, pipe := apart(b.Thread, h.PipeOutside, u)
		return lengths(id, key, Stop, b.Thread, h.PipeOutside, b.basis(),
			"the fitting's thread is %s outside and the pipe %s: such a fitting does not take that pipe; measure it again", thread, pipe)
	case !b.Label:
		return lengths(id, key, Caution, h.Saw, limit, basis,
			"the saw, %s, agrees with size charts%s, but no standard holds makers to them: measure the fitting and set fittings.bulkhead before cutting",
			saw, unlike(saw, asks))
	}
	return lengths(id, key, OK, h.Saw, limit, basis, "the saw, %s, is what the fitting asks for%s", saw, unlike(saw, asks))
}

// bulkheadCoverCheck holds flange and locknut against the hole that both must
// cover, the body pushed to one side.
func bulkheadCoverCheck(h Hole, u measure.Unit) Finding {
	b := h.Bulkhead
	lv := atLeast(b.Cover, 1e-6, flangeCovers)
	return lengths(h.id("bulkhead-cover"), h.Key()+".saw", lv, b.Cover, flangeCovers, b.basis(),
		say(lv, "flange and locknut reach %s past the hole's edge, the body to one side",
			"flange and locknut reach only %s past the hole's edge, the body to one side: keep it centred, or use a smaller saw",
			"flange or locknut falls short of the hole's edge by %s, the body to one side: the gasket does not seal; use a smaller saw"),
		b.Cover.Abs().Both(u))
}

// bulkheadCurveCheck holds the gap that a round wall leaves under a flat
// flange against its gasket. Half the gasket is taken up by squeezing it; up to
// twice its thickness a drum's wall is drawn flat by the locknut; past that it
// is not counted on (common practice, no source).
func bulkheadCurveCheck(h Hole, u measure.Unit) Finding {
	b := h.Bulkhead
	lv := OK
	switch {
	case below(gasketDrawn*b.Gasket, b.Gap):
		lv = Stop
	case below(gasketTakes*b.Gasket, b.Gap):
		lv = Caution
	}
	limit := gasketTakes * b.Gasket
	if lv == Stop {
		limit = gasketDrawn * b.Gasket
	}
	return lengths(h.id("bulkhead-curve"), h.Key()+".joint", lv, b.Gap, limit, practice,
		say(lv, "the round wall falls away %s under the flange, %s across: the gasket, %s thick, takes it up",
			"the round wall falls away %s under the flange, %s across, and the gasket is %s thick: the locknut must draw the wall flat; tighten by hand and a quarter turn, and look for drips at the leak test",
			"the round wall falls away %s under the flange, %s across, and the gasket is only %s thick: it does not seal on this curve; take smaller pipe, a thicker gasket or another joint"),
		b.Gap.Both(u), b.Flange.Both(u), b.Gasket.Both(u))
}

// bulkheadGripCheck holds what lies between flange and locknut against the
// length of thread.
func bulkheadGripCheck(h Hole, u measure.Unit) Finding {
	b := h.Bulkhead
	spare := b.Grip - b.Stack
	stack, grip := apart(b.Stack, b.Grip, u)
	lv := atLeast(spare, 0, gripSpare)
	return lengths(h.id("bulkhead-grip"), h.Key()+".joint", lv, b.Stack, b.Grip, b.basis(),
		say(lv, "wall, gasket and curve are %s and the fitting closes on %s: the locknut has its whole thread",
			"wall, gasket and curve are %s and the fitting closes on %s: the locknut has hardly its whole thread; measure yours",
			"wall, gasket and curve are %s and the fitting closes on %s only: the locknut does not reach its thread; take a longer fitting or another joint"),
		stack, grip)
}

// bulkheadPipeCheck holds the pipe against the socket it is cemented into, by
// the limits of a nipple in its couplings.
func bulkheadPipeCheck(h Hole, u measure.Unit) Finding {
	b := h.Bulkhead
	basis := Basis{Published, "ASTM D2466 or F789, least socket depth"}
	if b.Sure == string(stock.Memory) {
		basis = Basis{FromMemory, "ISO 727-1, socket depth"}
	}
	lv := atLeast(b.Pipe, fillBad*b.Depth, fillGood*b.Depth)
	pipe, deep := apart(b.Pipe, b.Depth, u)
	socket := "the fitting's outer socket"
	if b.Ends == EndThread {
		socket = "the socket of the adapter in the fitting's outer thread"
	}
	return lengths(h.id("bulkhead-pipe"), h.pipeKey(), lv, b.Pipe, b.Depth, basis,
		say(lv, "the pipe, %s long, fills %s, which is %s deep",
			"the pipe is %s long and %s %s deep: it holds less than a full joint; make it longer",
			"the pipe is only %s long and %s %s deep: too little to hold; make it longer"),
		pipe, socket, deep)
}
