package geometry

import (
	"fmt"

	"silowright/geometry/measure"
)

// Solve works out every kind of drum silo of a job. It fails only where the
// measures cannot make a silo at all (no height left for the body, a hole as
// wide as the pipe it is in); whatever can be drawn is drawn, and its faults
// are findings.
func Solve(job Job) ([]Silo, error) {
	var out []Silo
	for _, spec := range job.Kinds {
		s, err := solveKind(spec)
		if err != nil {
			return nil, fmt.Errorf("drum %q: %w", spec.Drum.Label, err)
		}
		out = append(out, s)
	}
	return out, nil
}

func solveKind(spec Spec) (Silo, error) {
	d := spec.Drum
	if len(d.Hoops) == 0 {
		return Silo{}, fmt.Errorf("drum.hoops: none given; the drum is cut under its uppermost hoop; hint: measure both hoops")
	}
	s := Silo{Spec: spec, Build: d.Count, Stations: stations(spec)}
	if s.Stations.Rim <= d.FootHeight {
		return s, fmt.Errorf("drum.hoops: the uppermost hoop begins %s above the foot, which leaves no body once ring (%s) and kerfs are cut; hint: measure heights from the foot up",
			d.topHoop().From.Both(spec.Units), spec.Ring.Width.Both(spec.Units))
	}
	s.Lattice = lattice(spec)
	s.Ring = ring(spec)
	s.Disc = meshDisc(spec)
	s.Slots = slots(spec)
	s.Sealant = sealantBead(spec, s.Ring)
	s.Seat = seat(spec, s.Stations)

	var err error
	if s.Outlet, err = bodyOutlet(spec, s.Stations); err != nil {
		return s, fmt.Errorf("outlet.%w", err)
	}
	if s.Inlet, err = baseInlet(spec); err != nil {
		return s, fmt.Errorf("inlet.%w", err)
	}
	if s.Drain, err = baseDrain(spec); err != nil {
		return s, fmt.Errorf("drain.%w", err)
	}
	if s.Pipe, err = pipeSilo(spec, s.Stations, s.Outlet); err != nil {
		return s, err
	}
	s.Weights = weights(&s)
	s.Templates = templates(&s)
	s.Findings = checks(&s)
	if key, ok := s.firstNotFinite(); ok {
		return s, fmt.Errorf("%s: the measures given lead to a number that is not finite; hint: look for a size that is far out", key)
	}
	return s, nil
}

func bodyOutlet(s Spec, st Stations) (Hole, error) {
	o := s.Outlet
	h, err := SolveHole(HoleSpec{Name: "outlet", Part: "body", Pipe: o.Pipe, Saw: o.Saw,
		Oversize: s.Saw.Oversize, Joint: o.Joint, Radius: s.Drum.Outside / 2, Wall: s.Drum.Wall,
		Nipple: o.Nipple, Fittings: s.Fittings})
	h.Height, h.BelowRim, h.Round = st.Rim-o.BelowRim, o.BelowRim, o.Round
	return h, err
}

func baseInlet(s Spec) (Hole, error) {
	i := s.Inlet
	pipe := i.Stub
	if i.Joint.Makeup().Nipple {
		pipe = i.Nipple
	}
	h, err := SolveHole(HoleSpec{Name: "inlet", Part: "base", Pipe: i.Pipe, Saw: i.Saw,
		Oversize: s.Saw.Oversize, Joint: i.Joint, Radius: s.Drum.Outside / 2, Wall: s.Drum.Wall,
		Nipple: pipe, Fittings: s.Fittings})
	h.Height, h.Round = i.AboveGround, i.Round
	return h, err
}

func baseDrain(s Spec) (Hole, error) {
	d := s.Drain
	h, err := SolveHole(HoleSpec{Name: "drain", Part: "base", Saw: d.Saw, Oversize: s.Saw.Oversize,
		Joint: JointStopper, Radius: s.Drum.Outside / 2, Wall: s.Drum.Wall, Stopper: d.Stopper,
		Fittings: s.Fittings})
	h.Height, h.Round = d.AboveGround, d.Round
	return h, err
}

// firstNotFinite looks through the numbers that templates and reports print.
func (s *Silo) firstNotFinite() (string, bool) {
	for _, t := range s.Templates {
		for _, sh := range t.Shapes {
			if !sh.Path.Finite() {
				return t.ID, true
			}
		}
		if !t.Width.Finite() || !t.Height.Finite() {
			return t.ID, true
		}
	}
	for _, f := range s.Findings {
		if !measure.Length(f.Measured.Value).Finite() || !measure.Length(f.Limit.Value).Finite() {
			return f.ID, true
		}
	}
	return "", false
}
