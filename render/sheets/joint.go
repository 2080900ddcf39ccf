package sheets

import (
	"fmt"
	"slices"
	"strings"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// jointText is what the pages say of one joint.
type jointText struct {
	schedule func(u measure.Unit) string // what closes the hole and the number that makes it fit
	fit      func(u measure.Unit) string // how it is put together
	hand     []string                    // tools of its step
	tool     [2]string                   // a tool of its own: name, what for
	cautions []caution
}

// textOf is what the pages say of a hole's joint.
func textOf(h geometry.Hole) jointText {
	switch h.Joint {
	case geometry.JointCouplings:
		return couplingsText(h)
	case geometry.JointGrommet:
		return grommetText(h)
	case geometry.JointBulkhead:
		return bulkheadText(h)
	}
	return stopperText(h)
}

func couplingsText(h geometry.Hole) jointText {
	c := h.Coupling
	return jointText{
		schedule: func(u measure.Unit) string {
			return fmt.Sprintf("two couplings on a nipple %s long; each fills %s of a socket %s deep; coupling covers the hole by %s all round",
				c.Nipple.Both(u), c.Fill.Both(u), c.Depth.Both(u), c.Cover.Both(u))
		},
		fit: func(u measure.Unit) string {
			return fmt.Sprintf("%s: nipple of %s pipe, %s long, through the hole. Sealant under both coupling faces (the gap on the curve is %s at the edge). Prime and cement, push a coupling on from each side until both press the wall; keep the pipe centred and hold it for half a minute.",
				upper(h.Name), pipeName(h.Pipe), c.Nipple.Both(u), c.FaceGap.Both(u))
		},
		hand:     []string{"file", "sealant gun", "primer", "cement", "applicator"},
		cautions: []caution{cautionCement},
	}
}

func grommetText(h geometry.Hole) jointText {
	g := h.Grommet
	return jointText{
		schedule: func(u measure.Unit) string {
			switch {
			case g.Label:
				return "rubber pipe-to-tank grommet; its label asks for a hole of " + g.Hole.Both(u)
			case g.Known:
				return "rubber pipe-to-tank grommet; the table (" + g.Standing + ") asks for a hole of " + g.Hole.Both(u) + ": read the label of yours"
			}
			return "rubber pipe-to-tank grommet; read the hole it asks for on its label"
		},
		fit: func(measure.Unit) string {
			return fmt.Sprintf("%s: seat the grommet in the hole, wet it with soapy water, push the %s pipe through with a bevelled end.", upper(h.Name), pipeName(h.Pipe))
		},
		hand: []string{"file", "soapy water"},
	}
}

var cautionLocknut = caution{"Do not overtighten: a locknut drawn past a quarter turn after hand-tight splits, or squeezes the gasket out, and then it leaks. Turn the nut, never the body, or the gasket twists.",
	"common practice, no source"}

var cautionThread = caution{"A tapered plastic thread splits the fitting round it: tape only, no compound that is not made for the plastic; hand-tight and one turn, never more than two. Hold the fitting's body, or its gasket twists.",
	"common practice, no source"}

func bulkheadText(h geometry.Hole) jointText {
	b := h.Bulkhead
	out := jointText{
		schedule: func(u measure.Unit) string {
			hole := "measure the hole it asks for"
			switch {
			case b.Label:
				hole = "its maker asks for a hole of " + b.Hole.Both(u)
			case b.Known():
				hole = "size charts ask for a hole of " + b.Hole.Both(u) + ": measure yours"
			}
			out := fmt.Sprintf("threaded bulkhead fitting; %s; flange %s across; it closes on %s of %s", hole, b.Flange.Both(u), b.Stack.Both(u), b.Grip.Both(u))
			if b.Ends == geometry.EndThread {
				out += "; a male adapter in its outer thread takes the pipe"
			}
			return out
		},
		fit: func(u measure.Unit) string {
			return fmt.Sprintf("%s: scrape the burr off and wipe the wall clean where the gasket lies. Gasket on the body under its flange, no sealant; push it through from inside, the wet side, and run the locknut on outside by hand. Hold the body still, give the nut a quarter turn with the wrench and stop when the gasket bulges evenly. %s",
				upper(h.Name), bulkheadPipe(h, u))
		},
		hand:     []string{"file", "scraper", "wrench", "primer", "cement", "applicator"},
		tool:     [2]string{"Strap wrench or large pliers for the locknut", "bulkhead fittings: a quarter turn past hand-tight"},
		cautions: []caution{cautionLocknut, cautionCement},
	}
	if b.Ends == geometry.EndThread {
		out.hand = append(out.hand, "thread tape")
		out.cautions = append([]caution{cautionThread}, out.cautions...)
	}
	return out
}

// bulkheadPipe says how the pipe is cemented into a bulkhead fitting.
func bulkheadPipe(h geometry.Hole, u measure.Unit) string {
	b := h.Bulkhead
	if b.Ends == geometry.EndThread {
		return fmt.Sprintf("Wind thread tape three times round the male adapter's thread, the way it screws in; turn it into the outer end by hand, then one turn with the wrench, the body held still. Prime the pipe (%s) and the adapter's socket and cement the pipe in, %s deep.",
			pipeName(h.Pipe), b.Depth.Both(u))
	}
	return fmt.Sprintf("Prime the pipe (%s) and the outer socket and cement the pipe in, %s deep.", pipeName(h.Pipe), b.Depth.Both(u))
}

func stopperText(h geometry.Hole) jointText {
	t := h.Stopper
	return jointText{
		schedule: func(u measure.Unit) string {
			switch {
			case t.SeatDepth <= 0:
				return "tapered stopper No. " + t.Number + ", too large for the hole: it does not go in"
			case t.SeatDepth >= t.Length:
				return "tapered stopper No. " + t.Number + ", too small for the hole: it goes right through"
			}
			return fmt.Sprintf("tapered stopper No. %s, goes in %s of %s", t.Number, t.SeatDepth.Both(u), t.Length.Both(u))
		},
		fit: func(u measure.Unit) string {
			if t.SeatDepth <= 0 || t.SeatDepth >= t.Length {
				return "Stopper No. " + t.Number + " does not close the drain: see the findings, and take another stopper or saw."
			}
			return fmt.Sprintf("Push stopper No. %s into the drain from outside, about %s deep. It must come out by hand and stay in under water.", t.Number, t.SeatDepth.Both(u))
		},
	}
}

func outletOf(s geometry.Silo) geometry.Hole   { return s.Outlet }
func inletOf(s geometry.Silo) geometry.Hole    { return s.Inlet }
func sideHoleOf(s geometry.Silo) geometry.Hole { return s.Pipe.Hole }

// cemented reports whether a hole's joint takes cement.
func cemented(h geometry.Hole) bool { return h.Makeup().Sockets > 0 }

// jointCautions are the cautions of a hole's joint, of every kind's once.
func jointCautions(p *Pack, of func(geometry.Silo) geometry.Hole) []caution {
	var out []caution
	for _, s := range p.Silos {
		for _, c := range textOf(of(s)).cautions {
			if !slices.Contains(out, c) {
				out = append(out, c)
			}
		}
	}
	return out
}

// innerAdapter reports whether a pipe silo hangs from an adapter screwed into the
// inner end of a drum silo's outlet.
func innerAdapter(p *Pack) bool {
	return slices.ContainsFunc(p.Silos, func(s geometry.Silo) bool { return s.Outlet.Makeup().Adapters > 0 })
}

// hangCautions are those of the step that fits the pipe silo's outlet.
func hangCautions(p *Pack) []caution {
	out := jointCautions(p, sideHoleOf)
	if innerAdapter(p) && !slices.Contains(out, cautionThread) {
		out = append(out, cautionThread)
	}
	return out
}

// hangTool names the tools of that step.
func hangTool(p *Pack) string {
	out := jointTool(p, sideHoleOf)
	if innerAdapter(p) && !strings.Contains(out, "thread tape") {
		out += ", wrench, thread tape"
	}
	return out
}

// jointTool names the tools of a hole's joint, of every kind's once.
func jointTool(p *Pack, of func(geometry.Silo) geometry.Hole) string {
	var out []string
	for _, s := range p.Silos {
		for _, t := range textOf(of(s)).hand {
			if !slices.Contains(out, t) {
				out = append(out, t)
			}
		}
	}
	return strings.Join(out, ", ")
}
