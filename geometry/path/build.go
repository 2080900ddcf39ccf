package path

import (
	"math"

	"silowright/geometry/measure"
)

// MoveTo lifts the pen to p.
func (q *Path) MoveTo(p Point) { *q = append(*q, Segment{Kind: Move, To: p}) }

// LineTo draws straight to p.
func (q *Path) LineTo(p Point) { *q = append(*q, Segment{Kind: Line, To: p}) }

// ArcTo draws from the last point along the circle about centre by sweep,
// counter-clockwise positive.
func (q *Path) ArcTo(centre Point, sweep measure.Angle) {
	from := q.end()
	s, c := measure.Length(sweep.Sin()), measure.Length(sweep.Cos())
	dx, dy := from.X-centre.X, from.Y-centre.Y
	to := Pt(centre.X+dx*c-dy*s, centre.Y+dx*s+dy*c)
	*q = append(*q, Segment{Kind: Arc, To: to, Centre: centre, Sweep: sweep})
}

// CurveTo draws a cubic Bézier with controls c1 and c2 to p.
func (q *Path) CurveTo(c1, c2, p Point) {
	*q = append(*q, Segment{Kind: Curve, To: p, C1: c1, C2: c2})
}

// ClosePath draws straight back to the last Move.
func (q *Path) ClosePath() { *q = append(*q, Segment{Kind: Close, To: q.start()}) }

// end is where the pen is; the origin when the path is empty.
func (q Path) end() Point {
	if len(q) == 0 {
		return Point{}
	}
	return q[len(q)-1].To
}

// start is the last Move's point.
func (q Path) start() Point {
	for i := len(q) - 1; i >= 0; i-- {
		if q[i].Kind == Move {
			return q[i].To
		}
	}
	return Point{}
}

// Circle is a full circle about c, counter-clockwise from its right.
func Circle(c Point, r measure.Length) Path {
	var p Path
	p.MoveTo(Pt(c.X+r, c.Y))
	p.ArcTo(c, math.Pi)
	p.ArcTo(c, math.Pi)
	p.ClosePath()
	return p
}

// Rect is the outline of a box, counter-clockwise from its lower left.
func Rect(b Box) Path {
	return Polygon(b.Min, Pt(b.Max.X, b.Min.Y), b.Max, Pt(b.Min.X, b.Max.Y))
}

// Polyline joins the points by straight lines.
func Polyline(pts ...Point) Path {
	var p Path
	for i, at := range pts {
		if i == 0 {
			p.MoveTo(at)
		} else {
			p.LineTo(at)
		}
	}
	return p
}

// Polygon is a closed Polyline; it is empty for no points.
func Polygon(pts ...Point) Path {
	p := Polyline(pts...)
	if len(p) > 0 {
		p.ClosePath()
	}
	return p
}
