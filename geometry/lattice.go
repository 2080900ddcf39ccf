package geometry

import (
	"math"

	"silowright/geometry/measure"
	"silowright/geometry/path"
)

// lattice solves the foot's pattern. With n bars of width b crossing at the
// centre of a circle of radius R, each of the 2n openings spans θ = π/n. Its
// sides lie h = b/2 from the bars' middle lines, so they meet at
// a = h/sin(θ/2) from the centre and reach the circle α = asin(h/R) past the
// middle lines:
//
//	side  = R·cos α − h/tan(θ/2)
//	arc   edge: area = ½R²(θ − 2α) − a·R·sin(θ/2 − α)
//	chord edge: the triangle of the three corners
//
// It is valid for n ≥ 2 and a < R·cos(θ/2 − α), which job files are held to.
func lattice(s Spec) Lattice {
	l := s.Lattice
	n := l.Bars
	r, h := l.Across/2, l.BarWidth/2
	theta := measure.Angle(math.Pi / float64(n))
	half := theta / 2
	alpha := asinRatio(h, r)
	apex := h / length(half.Sin())
	side := r*length(alpha.Cos()) - h/length(half.Tan())

	var out Lattice
	out.Openings = 2 * n
	out.BarLength = 2 * r * length(alpha.Cos())
	out.Ledge = s.Drum.FootInside()/2 - r
	out.Corners = [3]path.Point{polar(apex, half), polar(r, alpha), polar(r, theta-alpha)}

	span := theta - 2*alpha
	triangle := 0.5 * float64(side*side) * math.Sin(float64(theta))
	switch l.Edge {
	case EdgeStraight:
		out.SharpArea = area(triangle)
		out.Perimeter = 2*side + 2*r*length((span/2).Sin())
	default:
		out.SharpArea = area(0.5*float64(r*r)*float64(span) - float64(apex*r)*(half-alpha).Sin())
		out.Perimeter = 2*side + r*length(span)
	}

	o := opening{spec: l, theta: theta, corners: out.Corners}
	out.Pilots = o.pilots()
	sawn, travel := o.sawn(out.Pilots)
	sharp := o.sharp()
	out.Area = area(math.Abs(float64(sawn.Area())))
	out.Travel = travel * length(out.Openings)
	for i := range out.Openings {
		turn := path.Rotate(measure.Angle(i) * theta)
		out.Outlines = append(out.Outlines, sawn.Transform(turn))
		out.Sharp = append(out.Sharp, sharp.Transform(turn))
		for _, p := range out.Pilots {
			out.AllPilots = append(out.AllPilots, turn.Apply(p))
		}
	}
	out.OpenArea = out.Area * area(out.Openings)
	out.OpenFoot = float64(out.OpenArea / s.Drum.FootInside().Disc())
	return out
}

// opening is one opening of the lattice between the bars at 0 and θ.
type opening struct {
	spec    LatticeSpec
	theta   measure.Angle
	corners [3]path.Point
}

// pilots returns the centres of the corner holes, each lying tangent inside
// both edges that meet at its corner.
func (o opening) pilots() [3]path.Point {
	rho := o.spec.Pilot / 2
	h := o.spec.BarWidth / 2
	r := o.spec.Across / 2
	half := o.theta / 2
	first := polar((h+rho)/length(half.Sin()), half)
	var outer path.Point
	if o.spec.Edge == EdgeStraight {
		// distance h+rho from the bar's middle line and rho inside the chord,
		// whose distance from the centre along the bisector is m
		m := r * length((half - asinRatio(h, r)).Cos())
		y := h + rho
		x := (m - rho - y*length(half.Sin())) / length(half.Cos())
		outer = path.Pt(x, y)
	} else {
		y := h + rho
		outer = path.Pt(length(math.Sqrt(float64((r-rho)*(r-rho)-y*y))), y)
	}
	mirror := path.Pt(
		outer.X*length(o.theta.Cos())+outer.Y*length(o.theta.Sin()),
		outer.X*length(o.theta.Sin())-outer.Y*length(o.theta.Cos()))
	return [3]path.Point{first, outer, mirror}
}

// sharp is the opening with sharp corners, counter-clockwise.
func (o opening) sharp() path.Path {
	var p path.Path
	p.MoveTo(o.corners[0])
	p.LineTo(o.corners[1])
	if o.spec.Edge == EdgeStraight {
		p.LineTo(o.corners[2])
	} else {
		p.ArcTo(path.Point{}, o.theta-2*asinRatio(o.spec.BarWidth/2, o.spec.Across/2))
	}
	p.ClosePath()
	return p
}

// sawn is the opening as the jigsaw leaves it, its corners at the pilots'
// radius, counter-clockwise; with it the length the jigsaw travels from pilot
// to pilot.
func (o opening) sawn(pilots [3]path.Point) (path.Path, length) {
	rho := o.spec.Pilot / 2
	half := o.theta / 2
	right := -math.Pi / 2 // a side's outward normal, from its direction
	lower := measure.Angle(right)
	upper := o.theta + measure.Angle(math.Pi/2)
	outward1, outward2 := half, half
	if o.spec.Edge != EdgeStraight {
		outward1 = direction(pilots[1])
		outward2 = direction(pilots[2])
	}
	at := func(c path.Point, a measure.Angle) path.Point {
		q := polar(rho, a)
		return path.Pt(c.X+q.X, c.Y+q.Y)
	}
	var p path.Path
	start := at(pilots[0], lower)
	p.MoveTo(start)
	edge1 := at(pilots[1], lower)
	p.LineTo(edge1)
	p.ArcTo(pilots[1], outward1-lower)
	from, to := at(pilots[1], outward1), at(pilots[2], outward2)
	travel := distance(start, edge1)
	if o.spec.Edge == EdgeStraight {
		p.LineTo(to)
		travel += distance(from, to)
	} else {
		p.ArcTo(path.Point{}, outward2-outward1)
		travel += o.spec.Across / 2 * length(outward2-outward1)
	}
	p.ArcTo(pilots[2], upper-outward2)
	last := at(pilots[0], upper)
	travel += distance(at(pilots[2], upper), last)
	p.LineTo(last)
	p.ArcTo(pilots[0], lower+2*math.Pi-upper)
	p.ClosePath()
	return p, travel
}

func polar(r length, a measure.Angle) path.Point {
	return path.Pt(r*length(a.Cos()), r*length(a.Sin()))
}

func direction(p path.Point) measure.Angle {
	return measure.Angle(math.Atan2(float64(p.Y), float64(p.X)))
}

func distance(a, b path.Point) length {
	return length(math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y)))
}

func asinRatio(a, b length) measure.Angle {
	return measure.Angle(math.Asin(math.Max(-1, math.Min(1, float64(a/b)))))
}
