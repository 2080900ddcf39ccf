// Package nursery joins a silo as solved by the geometry to the water that
// runs through it and the seed that lies in it. It is pure: no files, no
// clock, no state.
package nursery

import (
	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/stock"
	"silowright/nursery/flow"
)

// Stocking is what the grower puts into a silo and how it is run: all that
// its drawing does not tell.
type Stocking struct {
	Seed         flow.Bed  // on the drum silo's mesh; without mass none
	MeshFouled   float64   // fraction of the mesh's open area lost
	Hose         flow.Hose // on the outlet; without length it discharges freely
	WithPipeSilo bool      // a pipe silo hangs in it
	PipeSeed     flow.Bed  // on the pipe silo's screen
	ScreenFouled float64
}

// Entrance losses taken: the coupling's flat face inside the drum is a sharp
// entrance, the pipe silo's short pipe reaches in (flow.LossTable).
const (
	flatFace  = 0.5
	reachesIn = 0.8
)

// perCoupling is K of one coupling on the inlet, and of a bulkhead fitting and
// an adapter in it, which are one each to the water (flow.LossTable).
const perCoupling = 0.08

// OfSilo is a solved silo as water sees it, stocked as given. Plastic is taken
// as new; the mesh and its weight are left out of Solid and Body, which cancel
// within a few tens of grams. What cannot be reckoned with is refused by
// Silo.Check, not here.
func OfSilo(s *geometry.Silo, q Stocking) flow.Silo {
	d, st := s.Spec.Drum, s.Stations
	out := flow.Silo{
		Inlet:    inlet(s),
		BaseBore: d.Bore(), Plenum: s.Seat.Plenum,
		FootInside: d.FootInside(), FootOutside: d.FootOutside, FootHeight: d.FootHeight,
		Bore: d.Bore(), Outside: d.Outside, Rim: st.Rim,
		LatticeOpen: s.Lattice.OpenFoot,
		Mesh:        flow.Screen{Opening: s.Spec.Mesh.Opening, Open: s.Spec.Mesh.OpenFraction, Fouled: q.MeshFouled},
		MeshTop:     s.Ring.Foot, BedAcross: 2 * s.Ring.InnerRadius, Seed: q.Seed,
		Outlet: flow.Outlet{Bore: s.Outlet.Bore(), Length: s.Spec.Outlet.Nipple, Roughness: flow.PlasticRoughness,
			Entrance: flatFace, Hose: q.Hose},
		Invert: s.OutletInvert(),
		Slot: flow.Slot{Length: s.Slots[0].Length, Height: s.Slots[0].Height(),
			Corner: min(s.Slots[0].CornerR, s.Slots[0].Height()/2, s.Slots[0].Length/2)},
		Slots: len(s.Slots), Sill: st.Rim - s.Slots[0].Sill,
		Body:  s.Weights.Body + s.Weights.Ring,
		Solid: solid(s),
	}
	if s.Seat.Nests {
		out.SeatAcross, out.SeatHeight = s.Seat.TouchWidth, s.Seat.Enters-s.Seat.TouchDepth
	}
	if q.WithPipeSilo {
		out.Pipe = pipeSilo(s, q)
	}
	return out
}

// inlet is the way from the hose into the plenum: the stub, the nipple where
// the joint has one, and each coupling passed. A fitting narrower than the pipe
// is taken as that narrow all the way, which is on the safe side.
func inlet(s *geometry.Silo) flow.Pipe {
	in := s.Spec.Inlet
	p := flow.Pipe{Bore: s.Inlet.Bore(), Length: in.Stub, Roughness: flow.PlasticRoughness}
	m := s.Inlet.Makeup()
	if m.Nipple {
		p.Length += in.Nipple
	}
	p.K = float64(m.Passed) * perCoupling
	return p
}

// solid is the volume of lattice and ring, which stand in the water inside.
func solid(s *geometry.Silo) measure.Volume {
	foot := flow.Disc(s.Spec.Drum.FootInside()) - s.Lattice.OpenArea
	ring := measure.Volume(float64(s.Weights.Ring)/float64(stock.PEDensity)*1000) * measure.Litre
	return foot.Times(s.Spec.Drum.Wall) + ring
}

// pipeSilo is the pipe silo as it hangs, the two outlets on one level.
func pipeSilo(s *geometry.Silo, q Stocking) *flow.PipeSilo {
	p, spec := s.Pipe, s.Spec.Pipe
	return &flow.PipeSilo{
		Inside: p.Inside,
		Screen: flow.Screen{Opening: spec.Screen, Open: spec.ScreenOpen, Fouled: q.ScreenFouled},
		Bottom: s.Ring.Foot + p.Under,
		Seed:   q.PipeSeed,
		Out:    flow.Outlet{Bore: p.Hole.Bore(), Length: spec.PipeOutLength, Roughness: flow.PlasticRoughness, Entrance: reachesIn},
		Invert: s.Outlet.Height - p.Hole.Bore()/2,
		Rim:    s.Stations.Rim + p.RimAbove,
	}
}
