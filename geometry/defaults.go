package geometry

import (
	"math"

	"silowright/geometry/measure"
)

// DefaultSpec is what a job that gives only its drum is taken to want. Every
// value is common practice, no source, and is printed as a default; a few are
// worked out from the drum. Inch jobs get inch pipe, metric jobs metric pipe.
func DefaultSpec(d Drum, u measure.Unit) Spec {
	in := func(x float64) length { return length(x) * measure.Inch }
	pick := func(inch float64, mm length) length {
		if u == measure.UnitMM {
			return mm
		}
		return in(inch)
	}
	series := func(inch, metric PipeRef) PipeRef {
		if u == measure.UnitMM {
			return metric
		}
		return inch
	}
	quarter := d.Circumference() / 4
	s := Spec{Drum: d, Units: u}
	s.Saw = SawSpec{Kerf: pick(1.0/16, 1.5), Oversize: pick(1.0/32, 0.8)}
	s.Lattice = LatticeSpec{Across: latticeAcross(d, u), Bars: 2, BarWidth: pick(1.5, 40), Pilot: pick(0.25, 6), Edge: EdgeArc}
	s.Ring = RingSpec{Width: pick(1, 25)}
	s.Mesh = MeshSpec{Opening: pick(1.0/16, 1.6), Thickness: pick(1.0/32, 0.8), Trim: pick(0.5, 12), OpenFraction: 0.45, Overlap: pick(0.375, 10)}
	s.Handle = HandleSpec{BelowRim: pick(2, 50), Height: pick(2, 50), Length: pick(4.5, 115), Round: quarter}
	s.Outlet = OutletSpec{BelowRim: pick(6, 150), Pipe: series(PipeRef{"2", "sch40"}, PipeRef{"63", "pn10"}),
		Saw: pick(2.5, 65), Joint: JointCouplings}
	s.Inlet = InletSpec{AboveGround: pick(4, 100), Pipe: series(PipeRef{"1 1/2", "sch40"}, PipeRef{"50", "pn10"}),
		Saw: pick(2, 52), Joint: JointCouplings, Stub: pick(6, 150)}
	s.Outlet.Nipple = fullNipple(s, s.Outlet.Pipe, s.Outlet.Saw, u)
	s.Inlet.Nipple = fullNipple(s, s.Inlet.Pipe, s.Inlet.Saw, u)
	s.Drain = DrainSpec{AboveGround: pick(4, 100), Saw: pick(2, 52), Stopper: "11", Round: 2 * quarter}
	s.Screws = ScrewSpec{Size: "6", Length: in(0.75), Spacing: pick(3, 75)}
	if u == measure.UnitMM {
		s.Screws.Size, s.Screws.Length = "ST3.5", 19
	}
	s.Sealant = SealantSpec{Bead: pick(0.25, 6), Cartridge: 10.1 * measure.USFluidOunce, Waste: 0.15}
	if u == measure.UnitMM {
		s.Sealant.Cartridge = 300 * measure.Millilitre
	}
	s.Pipe = PipeSiloSpec{
		Pipe:   series(PipeRef{"8", "sdr35"}, PipeRef{"200", "en1401-sn4"}),
		Length: pick(14, 350), Screen: 0.273, ScreenThickness: 0.3, ScreenOpen: 0.42,
		Drape: pick(3, 75), OutletAboveScreen: pick(9, 230),
		Saw: pick(2.5, 65), Joint: JointGrommet,
		PipeOut:       series(PipeRef{"1 1/2", "sch40"}, PipeRef{"50", "pn10"}),
		PipeOutLength: pick(4, 100), Bead: pick(0.25, 6),
	}
	s.Load = LoadSpec{Seed: 5, Time: "12 h"}
	return s
}

// latticeAcross leaves a ledge of 3/4 in (20 mm) all round for the mesh to lie
// on, rounded down to a quarter inch (5 mm).
func latticeAcross(d Drum, u measure.Unit) length {
	ledge, step := 0.75*measure.Inch, 0.25*measure.Inch
	if u == measure.UnitMM {
		ledge, step = 20, 5
	}
	return step * length(math.Floor(float64((d.FootInside()-2*ledge)/step)+1e-9))
}

// fullNipple is LongestNipple for a hole in the drum's plain wall, rounded
// down to 1/16 in (1 mm).
func fullNipple(s Spec, p PipeRef, saw length, u measure.Unit) length {
	step := measure.Inch / 16
	if u == measure.UnitMM {
		step = 1
	}
	full := LongestNipple(HoleSpec{Pipe: p, Saw: saw, Oversize: s.Saw.Oversize, Joint: JointCouplings,
		Radius: s.Drum.Outside / 2, Wall: s.Drum.Wall})
	return step * length(math.Floor(float64(full/step)+1e-9))
}

// LongestNipple is the longest pipe through the wall that lets both couplings
// close on it: wall, face gaps and both sockets; zero when the hole cannot be
// made at all.
func LongestNipple(q HoleSpec) length {
	h, err := SolveHole(q)
	if err != nil {
		return 0
	}
	return h.Coupling.Grip + 2*h.Coupling.Depth
}
