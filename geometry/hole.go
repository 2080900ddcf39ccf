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
	Nipple   length // the pipe that goes through the wall or into the joint from outside; zero when it is not known
	Stopper  string // stopper only
	Fittings Fittings
}

// Hole is a round hole through a curved wall, with what goes through it.
type Hole struct {
	Name          string // "outlet", "inlet", "drain", "pipe silo outlet"
	Part          string // "body", "base", "pipe silo"
	Height        length // centre above the part's standing face (foot, ground, screened end)
	BelowRim      length // centre below the rim; zero for the base
	Round         length // datum to the centre
	Radius        length // outside radius of the wall
	Wall          length
	Saw           length // nominal
	Diameter      length // as the saw leaves it
	Arc           length // width of the outline laid flat: 2R·asin(d/2R)
	Pipe          PipeRef
	PipeOutside   length
	PipeInside    length
	PipeWall      length // least
	PipeTolerance length
	Clearance     length // hole less pipe
	Joint         Joint
	Footprint     length // diameter of wall taken up: coupling, flange or stopper
	Inner         length // how far it stands into the drum, for what is pushed on it there
	Throat        length // narrowest bore of the joint's fitting where it is narrower than the pipe; else zero
	Fits                 // how the joint sits
}

// Bore is the narrowest width the water passes in pipe and joint.
func (h Hole) Bore() length {
	if h.Throat > 0 && h.Throat < h.PipeInside {
		return h.Throat
	}
	return h.PipeInside
}

// SolveHole works out one hole. It fails when the pipe is not in the tables,
// when a joint or a stopper's number is unknown, or when the hole is as wide as the wall
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
	j, ok := q.Joint.row()
	if !ok {
		return h, fmt.Errorf("joint: %q is not known; hint: %s", q.Joint, JointNames())
	}
	if j.makeup.Piped {
		p, ok := stock.PipeOf(q.Pipe.Size, q.Pipe.Series)
		if !ok {
			return h, fmt.Errorf("pipe: %q is not in the tables; hint: see silowright tables", q.Pipe.String())
		}
		h.PipeOutside, h.PipeInside, h.PipeTolerance, h.PipeWall = p.Outside, p.Inside, p.Tolerance, p.Wall
		h.Clearance = h.Diameter - p.Outside
	}
	return h, j.fit(&h, q)
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
