package nursery

import (
	"fmt"

	"silowright/geometry"
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
	type stands struct{ foot, top measure.Length }
	seeds := make([]stands, len(rooms))
	for k, r := range rooms {
		seeds[k].foot, seeds[k].top = seedStands(s, r)
	}
	for i, k := range of {
		r, o := rooms[k], s.Silos[i]
		in := r.kind.Inlet.Height - r.silo.Inlet.Bore/2
		hose := max(f.Manifold.Height, r.kind.Inlet.Height)
		if f.Lateral.HoseTop != 0 {
			hose = max(hose, f.Lateral.HoseTop)
		}
		st.Silos[i] = manifold.StandingSilo{
			Name:  fmt.Sprintf("silo %d", o.Place),
			Level: r.raised + r.silo.Invert + o.Level, Outlet: r.raised + r.silo.Invert, Inlet: in,
			Hose: manifold.Peak{Height: hose, Vented: f.Failure.HoseAirBreak}, SeedFoot: seeds[k].foot, SeedTop: seeds[k].top,
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

// failureFindings say what a power failure does to the worst silo.
func (s Study) failureFindings(u measure.Unit) (out []geometry.Finding) {
	fail := s.Failure
	if fail == nil {
		return nil
	}
	worst := 0
	for i, o := range fail.Silos {
		w := fail.Silos[worst]
		if o.Bare && !w.Bare || o.Part && !w.Bare && !w.Part {
			worst = i
		}
	}
	dry := geometry.Finding{ID: "failure.drains", Key: "failure.check_valve", Measured: measure.Count(fail.Dry), Limit: measure.Count(0), Basis: standsBasis}
	dry.Says = fmt.Sprintf("when the power fails no seed is left dry; silo %d: water %s at %s above the ground; how long seed lives in still water is not worked out", worst+1, standing(fail.Silos[worst]), fail.Silos[worst].Level.Both(u))
	if fail.Dry > 0 {
		dry.Level = geometry.Caution
		dry.Says = fmt.Sprintf("when the power fails seed is left dry in %d of %d silos; silo %d: water %s, to %s above the ground: fit a check valve that holds, or an air break above the seed", fail.Dry, len(fail.Silos), worst+1, standing(fail.Silos[worst]), fail.Silos[worst].Level.Both(u))
	}
	siphon := geometry.Finding{ID: "failure.siphon", Key: "failure.air_break", Measured: measure.Count(fail.Siphons), Limit: measure.Count(0), Basis: standsBasis,
		Says: "when the power fails no siphon draws a silo down"}
	if fail.Siphons > 0 {
		siphon.Level = geometry.Caution
		siphon.Says = fmt.Sprintf("when the power fails a siphon draws down %d of %d silos: fit an air break on the highest point, or a check valve", fail.Siphons, len(fail.Silos))
	}
	prime := geometry.Finding{ID: "failure.prime", Key: "suction.foot_valve", Measured: s.Farm.Suction.Lift.Head(), Limit: measure.Length(0).Head(), Basis: standsBasis,
		Says: "when the power fails the pump keeps its water"}
	if !fail.Prime {
		prime.Level = geometry.Caution
		prime.Says = "when the power fails the pump loses its water and does not start again by itself: fit a foot valve or a check valve that holds, or flood it"
	}
	out = append(out, dry, siphon)
	if s.Given.Pump {
		out = append(out, prime)
	}
	return out
}

func standing(f manifold.SiloFailure) string {
	if f.Way == manifold.Stays {
		return string(f.Way)
	}
	return "runs " + string(f.Way)
}
