package geometry

import (
	"fmt"
	"math"
)

// MarkedPoint is one place to set out on a part without a template. Height is
// taped up the wall, Round along the wall's outside from the datum line to the
// right, Chord is what dividers span from the datum at the same height. On a
// flat strip (the ring) Round is the distance along it from its end, Height
// the distance up from its lower edge, and Chord the same as Round.
type MarkedPoint struct {
	Part     string // "drum", "body", "base", "pipe silo", "ring strip"
	What     string
	Height   length // above the part's standing face: foot, ground, screened end
	BelowRim length // below the edge to tape from; zero when the part has none
	Round    length
	Chord    length // 2R·sin(Round/2R); past half way round it falls to the left of the datum
	Radius   length // outside radius of the wall; zero on a flat strip
	AllRound bool   // a level line all the way round: only Height counts
}

// Leftwards is the distance round the wall from the datum to the left: the
// shorter way for a point past half way round.
func (m MarkedPoint) Leftwards() length {
	return 2*math.Pi*m.Radius - m.Round
}

// Marks lists every point a builder sets out on one drum silo and its pipe
// silo with tape or dividers, part by part in the order of work.
func Marks(s Silo) []MarkedPoint {
	d, st := s.Spec.Drum, s.Stations
	r := d.Outside / 2
	var out []MarkedPoint
	ringLine := func(what string, h length) {
		out = append(out, MarkedPoint{Part: "drum", What: what, Height: h, BelowRim: d.Height - h,
			Radius: r, AllRound: true})
	}
	ringLine("first cut: base off, right under the hoop", st.BaseCut)
	ringLine("ring strip, upper edge", st.RingTop)
	ringLine("second cut: ring strip, lower edge", st.RingBottom)
	ringLine("rim of the body", st.Rim)

	on := func(part, what string, height, below, round, radius length) {
		full := 2 * math.Pi * radius
		m := MarkedPoint{Part: part, What: what, Height: height, BelowRim: below, Radius: radius}
		if full > 0 {
			m.Round = length(math.Mod(float64(round), float64(full)))
			if m.Round < 0 {
				m.Round += full
			}
			if full-m.Round < 1e-6 { // a whole turn but for the last bit
				m.Round = 0
			}
			m.Chord = ChordOf(radius, m.Round)
		}
		out = append(out, m)
	}
	on("body", "outlet, centre", s.Outlet.Height, s.Outlet.BelowRim, s.Outlet.Round, r)
	for i, sl := range s.Slots {
		name := fmt.Sprintf("handle slot %d", i+1)
		mid := (sl.Top + sl.Sill) / 2
		in := sl.Length/2 - sl.CornerR
		on("body", name+", middle", st.Rim-mid, mid, sl.Round, r)
		on("body", name+", left end hole", st.Rim-mid, mid, sl.Round-in, r)
		on("body", name+", right end hole", st.Rim-mid, mid, sl.Round+in, r)
		on("body", name+", upper edge", st.Rim-sl.Top, sl.Top, sl.Round, r)
		on("body", name+", lower edge (sill)", st.Rim-sl.Sill, sl.Sill, sl.Round, r)
	}
	mouth := st.BaseHeight
	on("base", "inlet, centre", s.Inlet.Height, mouth-s.Inlet.Height, s.Inlet.Round, r)
	on("base", "drain, centre", s.Drain.Height, mouth-s.Drain.Height, s.Drain.Round, r)

	p := s.Pipe
	on("pipe silo", "side hole, centre", p.Hole.Height, p.Hole.BelowRim, p.Hole.Round, p.Outside/2)

	out = append(out, ringMarks(s)...)
	return out
}

// ringMarks are the screw holes on the ring's strip once it is trimmed, from
// one end. The distances are along the strip's neutral line laid flat; the
// inner face the screws are stepped on is shorter by the ratio of the radii.
func ringMarks(s Silo) []MarkedPoint {
	g := s.Ring
	w := s.Spec.Ring.Width
	out := []MarkedPoint{{Part: "ring strip", What: "cut to length", Round: g.Length, Chord: g.Length}}
	inner := 2 * math.Pi * g.InnerRadius
	if inner <= 0 {
		return out
	}
	stretch := g.Length / inner
	for i := range g.Screws {
		at := (g.JointEdge + length(i)*g.Step) * stretch
		out = append(out, MarkedPoint{Part: "ring strip", What: fmt.Sprintf("screw %d", i+1),
			Height: w / 2, BelowRim: w / 2, Round: at, Chord: at})
	}
	return out
}

// LatticeSetting is the lattice set out on the foot by compass and
// straightedge.
type LatticeSetting struct {
	Circle     length // radius of the outer circle
	Rays       int    // half bars from the centre: twice the number of bars
	RayChord   length // dividers between neighbouring rays on the circle: 2R·sin(π/2n)
	HalfBar    length // either side of a bar's middle line
	PilotLine  length // half bar and half a pilot: the line the corner holes stand on
	ApexPilot  length // centre of the foot to the inner corner holes
	OuterPilot length // centre of the foot to the outer corner holes
	PilotSpan  length // between the two outer corner holes of one opening, for checking
	Openings   int
}

// LatticeMarks works out the compass and straightedge setting of the lattice.
func LatticeMarks(s Silo) LatticeSetting {
	l := s.Spec.Lattice
	origin := s.Lattice.Pilots[0]
	origin.X, origin.Y = 0, 0
	out := LatticeSetting{Circle: l.Across / 2, Rays: 2 * l.Bars, HalfBar: l.BarWidth / 2,
		PilotLine: l.BarWidth/2 + l.Pilot/2, Openings: s.Lattice.Openings}
	if out.Rays > 0 {
		out.RayChord = l.Across * length(math.Sin(math.Pi/float64(out.Rays)))
	}
	p := s.Lattice.Pilots
	out.ApexPilot = distance(origin, p[0])
	out.OuterPilot = distance(origin, p[1])
	out.PilotSpan = distance(p[1], p[2])
	return out
}
