package geometry

import (
	"fmt"
	"math"

	"silowright/geometry/stock"
)

// pipeSilo solves the pipe silo and how it hangs in the drum silo by its
// outlet, the two outlets on one level.
func pipeSilo(s Spec, st Stations, outlet Hole) (PipeSilo, error) {
	q := s.Pipe
	p, ok := stock.PipeOf(q.Pipe.Size, q.Pipe.Series)
	if !ok {
		return PipeSilo{}, fmt.Errorf("pipe_silo.pipe: %q is not in the tables; hint: see silowright tables", q.Pipe.String())
	}
	out := PipeSilo{Outside: p.Outside, Wall: p.Wall, Inside: p.Inside, Wrap: math.Pi * p.Outside}
	out.ScreenSquare = p.Outside + 2*q.Drape
	out.ClampOver = p.Outside + 2*q.ScreenThickness
	if c, ok := stock.ClampFor(out.ClampOver); ok {
		out.Clamp, out.ClampMin, out.ClampMax = c.Size, c.Min, c.Max
	}
	out.Resin = resinBead(p.Outside, q.Bead, s.Sealant.Waste)
	out.ScreenArea = out.Inside.Disc()

	hole, err := SolveHole(HoleSpec{Name: "pipe silo outlet", Part: "pipe silo", Pipe: q.PipeOut, Saw: q.Saw,
		Oversize: s.Saw.Oversize, Joint: q.Joint, Radius: p.Outside / 2, Wall: p.Wall,
		Nipple: q.PipeOutLength, Fittings: s.Fittings})
	if err != nil {
		return out, fmt.Errorf("pipe_silo.%w", err)
	}
	hole.Height = q.OutletAboveScreen
	hole.BelowRim = q.Length - q.OutletAboveScreen
	out.Hole = hole

	out.Under = outlet.Height - q.OutletAboveScreen - s.bedFloor()
	out.StandOff = standOff(s, p, outlet)
	out.Round = s.Drum.Bore() - p.Outside - out.StandOff
	out.RimAbove = outlet.Height + (q.Length - q.OutletAboveScreen) - st.Rim
	return out, nil
}

// resinBead is the fillet of a leg round the outside of the pipe's screened
// edge, a right-angled triangle turned about the pipe's axis: ½·leg² times the
// way of its middle, a third of the leg off the wall (Pappus and Guldin); with
// what is lost of it.
func resinBead(outside, leg length, waste float64) Bead {
	way := math.Pi * (outside + 2*leg/3)
	return Bead{Run: math.Pi * outside, Volume: leg.Times(leg).Times(way) * volume((1+waste)/2)}
}

// insidePipe is how far the short pipe reaches into the pipe silo past the
// grommet (common practice, no source).
const insidePipe length = 25.4

// standOff is the gap between the pipe silo's wall and the drum's on the
// outlet's side: what of the outlet stands inside and takes the reducing
// adapter, and what shows of the short pipe between adapter and wall.
func standOff(s Spec, p stock.Pipe, outlet Hole) length {
	var inAdapter length
	if t, ok := stock.SocketOf(s.Pipe.PipeOut.Size); ok && s.Pipe.PipeOut.inchPressure() {
		inAdapter = t.Depth
	}
	shows := maxLength(0, s.Pipe.PipeOutLength-p.Wall-insidePipe-inAdapter)
	return outlet.Inner + shows
}
