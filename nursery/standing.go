package nursery

import (
	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/manifold"
)

// failure is what a power failure does to every silo.
func (f Farm) failure(s *Study, rooms []room, of []int) (*manifold.Failure, error) {
	st := manifold.Standing{
		Source: f.source(), Pump: f.pumpAt(),
		Main:     manifold.Peak{Height: max(f.pumpAt(), f.Manifold.Height), Vented: f.Failure.AirBreak},
		Manifold: manifold.Peak{Height: f.Manifold.Height},
		Check:    f.Failure.CheckValve || f.Suction.Length > 0 && f.Suction.FootValve != NoFootValve,
		Silos:    make([]manifold.StandingSilo, len(of)),
	}
	if f.Main.Highest != 0 {
		st.Main.Height = max(st.Main.Height, f.Main.Highest)
	}
	for i, k := range of {
		r, o := rooms[k], s.Silos[i]
		in := r.kind.Inlet.Height - r.silo.Inlet.Bore/2
		hose := max(f.Manifold.Height, r.kind.Inlet.Height)
		if f.Lateral.HoseTop != 0 {
			hose = max(hose, f.Lateral.HoseTop)
		}
		foot, top := seedStands(s, r)
		st.Silos[i] = manifold.StandingSilo{
			Level: r.raised + r.silo.Invert + o.Level, Outlet: r.raised + r.silo.Invert, Inlet: in,
			Hose: manifold.Peak{Height: hose, Vented: f.Failure.HoseAirBreak}, SeedFoot: foot, SeedTop: top,
		}
	}
	out, err := manifold.PowerFailure(st)
	if err != nil {
		return nil, err
	}
	return &out, nil
}

// seedStands is where seed lies once the water is still, above the ground: the
// highest mesh and the highest bed of the silo, for they fall dry first.
func seedStands(s *Study, r room) (foot, top measure.Length) {
	foot = r.raised + r.silo.MeshTop
	top = foot + r.silo.Seed.At(s.Water, flow.Disc(r.silo.BedAcross), 0).Poured
	if p := r.silo.Pipe; p != nil && p.Seed.Mass > 0 {
		foot = max(foot, r.raised+p.Bottom)
		top = max(top, r.raised+p.Bottom+p.Seed.At(s.Water, flow.Disc(p.Inside), 0).Poured)
	}
	return foot, max(foot, top)
}
