package sheets

import (
	"math"

	"silowright/geometry"
	"silowright/geometry/path"
	"silowright/render"
)

// mark is a small drawn sign in front of words; no meaning hangs on it alone.
type mark int

const (
	noMark    mark = iota
	tickBox        // an open square to tick by hand
	tickedBox      // the same with its tick in it
	okMark         // a ring
	careMark       // a triangle with a stroke in it
	stopMark       // a black octagon with a white bar
)

// markWide is the room a sign takes before the words.
const markWide length = 5.4

func levelMark(l geometry.Level) mark {
	switch l {
	case geometry.Stop:
		return stopMark
	case geometry.Caution:
		return careMark
	}
	return okMark
}

func levelWord(l geometry.Level) string {
	switch l {
	case geometry.Stop:
		return "STOP"
	case geometry.Caution:
		return "Caution"
	}
	return "ok"
}

// sign draws m with its left edge at x, its foot on the base line y.
func (f *flow) sign(m mark, x, y length) {
	p := f.page()
	at := func(dx, dy length) path.Point { return path.Pt(x+dx, f.h-y+dy) }
	shape := func(pts ...path.Point) path.Path {
		var s path.Path
		for i, q := range pts {
			if i == 0 {
				s.MoveTo(q)
			} else {
				s.LineTo(q)
			}
		}
		s.ClosePath()
		return s
	}
	switch m {
	case tickBox:
		p.Strokes = append(p.Strokes, render.Stroke{Layer: render.Outline,
			Path: shape(at(0, -0.7), at(4, -0.7), at(4, 3.3), at(0, 3.3))})
	case tickedBox:
		f.sign(tickBox, x, y)
		p.Strokes = append(p.Strokes, render.Stroke{Layer: render.Outline, Path: path.Polyline(at(0.8, 1.4), at(1.7, 0.3), at(3.3, 2.6))})
	case okMark:
		p.Strokes = append(p.Strokes, render.Stroke{Layer: render.Thin, Path: path.Circle(at(1.9, 1.2), 1.3)})
	case careMark:
		p.Strokes = append(p.Strokes,
			render.Stroke{Layer: render.Outline, Path: shape(at(0, -0.5), at(3.8, -0.5), at(1.9, 3.1))})
		p.Fills = append(p.Fills,
			render.Fill{Path: shape(at(1.65, 0.75), at(2.15, 0.75), at(2.15, 2), at(1.65, 2)), Shade: 1},
			render.Fill{Path: shape(at(1.65, 0), at(2.15, 0), at(2.15, 0.45), at(1.65, 0.45)), Shade: 1})
	case stopMark:
		var pts []path.Point
		for i := range 8 {
			a := (float64(i) + 0.5) * math.Pi / 4
			pts = append(pts, at(1.9+2.1*length(math.Cos(a)), 1.25+2.1*length(math.Sin(a))))
		}
		p.Fills = append(p.Fills, render.Fill{Path: shape(pts...), Shade: 1},
			render.Fill{Path: shape(at(0.7, 0.85), at(3.1, 0.85), at(3.1, 1.65), at(0.7, 1.65)), Shade: 0})
	}
}
