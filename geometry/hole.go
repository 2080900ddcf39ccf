package geometry

import (
	"fmt"
	"math"

	"silowright/geometry/path"
	"silowright/geometry/stock"
)

// HoleSpec is what a hole through a curved wall is to be: enough to answer
// whether the saw is right for the pipe and what the joint needs.
type HoleSpec struct {
	Name     string // "outlet", "inlet", "drain", "pipe silo outlet"
	Part     string
	Pipe     PipeRef
	Saw      length // nominal
	Oversize length
	Joint    Joint
	Radius   length // outside radius of the wall
	Wall     length
	Nipple   length // couplings only
	Stopper  string // stopper only
	Fittings Fittings
}

// SolveHole works out one hole. It fails when the pipe is not in the tables,
// when a stopper's number is unknown, or when the hole is as wide as the wall
// is round.
func SolveHole(q HoleSpec) (Hole, error) {
	h := Hole{Name: q.Name, Part: q.Part, Radius: q.Radius, Wall: q.Wall, Saw: q.Saw,
		Diameter: q.Saw + q.Oversize, Joint: q.Joint, Pipe: q.Pipe}
	if !h.Diameter.Finite() || h.Diameter <= 0 {
		return h, fmt.Errorf("saw: %v mm is not a size a hole can have", float64(q.Saw))
	}
	if q.Radius <= q.Wall || h.Diameter >= 2*(q.Radius-q.Wall) {
		return h, fmt.Errorf("saw: a hole of %s does not fit a wall %s across; hint: a smaller saw",
			h.Diameter.Both(0), (2 * q.Radius).Both(0))
	}
	h.Arc = ArcOf(q.Radius, h.Diameter)
	if q.Joint == JointStopper {
		return h, h.fitStopper(q)
	}
	p, ok := stock.PipeOf(q.Pipe.Size, q.Pipe.Series)
	if !ok {
		return h, fmt.Errorf("pipe: %q is not in the tables; hint: see silowright tables", q.Pipe.String())
	}
	h.PipeOutside, h.PipeInside, h.PipeTolerance = p.Outside, p.Inside, p.Tolerance
	h.Clearance = h.Diameter - p.Outside
	switch q.Joint {
	case JointGrommet:
		h.fitGrommet(q)
	case JointCouplings:
		h.fitCouplings(q, p)
	default:
		return h, fmt.Errorf("joint: %q is not known; hint: couplings, grommet or stopper", q.Joint)
	}
	return h, nil
}

// fitCouplings works out how two couplings sandwich the wall.
func (h *Hole) fitCouplings(q HoleSpec, p stock.Pipe) {
	c := CouplingFit{Nipple: q.Nipple}
	if t, ok := stock.CouplingOf(q.Pipe.Size); ok && q.Pipe.inchPressure() {
		c.Outside, c.Depth = t.Outside, t.Depth
		c.Standing = string(t.Origin.Standing)
	} else if t, ok := stock.SewerSocketOf(q.Pipe.Size); ok && q.Pipe.inchSewer() {
		c.Outside, c.Depth = t.Bottom+2*p.Wall, t.Depth
		c.Standing = string(stock.Derived)
	} else {
		// Metric solvent sockets are half the pipe's outside + 6 mm deep (ISO
		// 727-1, from memory); the outside is bounded as for inch couplings:
		// pipe + 2 × wall.
		c.Outside, c.Depth = p.Outside+2*p.Wall, p.Outside/2+6
		c.Standing = string(stock.Memory)
	}
	if m, ok := q.Fittings.Couplings[q.Pipe.Size]; ok {
		if m.Outside > 0 {
			c.Outside, c.Measured = m.Outside, true
		}
		if m.Depth > 0 {
			c.Depth = m.Depth
		} else if m.Length > 0 {
			c.Depth = minLength(c.Depth, m.Length/2)
		}
	}
	c.HoleGap = Sagitta(q.Radius, h.Diameter)
	c.FaceGap = Sagitta(q.Radius, c.Outside)
	c.Cover = (c.Outside - h.Diameter) / 2
	c.WorstCover = c.Cover - maxLength(0, h.Clearance)/2
	// Outside, the flat face stands on the wall's crown line; inside, its two
	// sides touch the hollow wall.
	c.Grip = q.Wall + Sagitta(q.Radius-q.Wall, c.Outside)
	c.Fill = (q.Nipple - c.Grip) / 2
	h.Footprint = c.Outside
	h.Coupling = c
}

// fitGrommet works out what hole the grommet wants: the builder's reading of
// its label, or the table.
func (h *Hole) fitGrommet(q HoleSpec) {
	if g, ok := q.Fittings.Grommets[q.Pipe.Size]; ok && g.Hole > 0 {
		h.Grommet = GrommetFit{Hole: g.Hole, Known: true, Label: true}
	} else if t, ok := stock.GrommetHole(q.Pipe.Size); ok && q.Pipe.inchPressure() {
		h.Grommet = GrommetFit{Hole: t.Max, Known: true, Standing: string(t.Origin.Standing)}
	}
	// The grommet's flange stands about 1/4 in past the hole (common practice,
	// no source).
	h.Footprint = maxLength(h.Diameter, h.Grommet.Hole) + 12.7
}

// fitStopper works out how deep a tapered stopper goes into the hole.
func (h *Hole) fitStopper(q HoleSpec) error {
	f := StopperFit{Number: q.Stopper}
	if t, ok := stock.StopperOf(q.Stopper); ok {
		f.Top, f.Bottom, f.Length = t.Top, t.Bottom, t.Length
		f.Standing = string(t.Origin.Standing)
	}
	if m, ok := q.Fittings.Stoppers[q.Stopper]; ok {
		f.Measured = true
		for _, v := range []struct {
			to   *length
			from length
		}{{&f.Top, m.Top}, {&f.Bottom, m.Bottom}, {&f.Length, m.Length}} {
			if v.from > 0 {
				*v.to = v.from
			}
		}
	}
	if f.Top <= f.Bottom || f.Bottom <= 0 || f.Length <= 0 {
		return fmt.Errorf("stopper: no usable measures for number %q; hint: give top, bottom and length under fittings.stopper", q.Stopper)
	}
	f.SeatFraction = float64((h.Diameter - f.Bottom) / (f.Top - f.Bottom))
	f.SeatDepth = f.Length * length(f.SeatFraction)
	h.Stopper = f
	h.Footprint = maxLength(h.Diameter, f.Top)
	return nil
}

// Outline is the saw's cut on the wall's outside, laid flat, centred on the
// origin: x = R·asin(r·cos t / R) round the wall, y = r·sin t up. It is drawn
// by cubics that match place and direction every 7.5°, within a micrometre.
func (h Hole) Outline() path.Path {
	const steps = 48
	r, big := h.Diameter/2, h.Radius
	at := func(i int) (p, d path.Point) {
		t := 2 * math.Pi * float64(i) / steps
		k := float64(r/big) * math.Cos(t)
		p = path.Pt(big*length(math.Asin(k)), r*length(math.Sin(t)))
		d = path.Pt(-r*length(math.Sin(t)/math.Sqrt(1-k*k)), r*length(math.Cos(t)))
		return p, d
	}
	third := length(2 * math.Pi / steps / 3)
	var p path.Path
	from, df := at(0)
	p.MoveTo(from)
	for i := 1; i <= steps; i++ {
		to, dt := at(i % steps)
		p.CurveTo(path.Pt(from.X+df.X*third, from.Y+df.Y*third),
			path.Pt(to.X-dt.X*third, to.Y-dt.Y*third), to)
		from, df = to, dt
	}
	p.ClosePath()
	return p
}

// past is how far a hole whose centre lies so far within an edge reaches past
// it, with a little room for the line; 0 when it does not.
func (h Hole) past(within length) length {
	if over := h.Diameter/2 - within; over > 0 {
		return over + slack
	}
	return 0
}
