package views

import (
	"strings"

	"silowright/geometry/measure"
	"silowright/geometry/path"
)

// scale is one of ISO 5455's scales.
type scale struct {
	name string
	k    float64
}

// scales are the recommended scales of ISO 5455 from 2:1 down, without those
// that need a larger sheet.
var scales = []scale{{"2:1", 2}, {"1:1", 1}, {"1:2", 0.5}, {"1:5", 0.2}, {"1:10", 0.1}, {"1:20", 0.05}, {"1:50", 0.02}, {"1:100", 0.01}}

// noScale names what is drawn to no scale.
const noScale = "not to scale"

// fit is the largest scale, most at most, at which a thing w by h goes into a
// room; a thing too large for all of them is drawn without a scale.
func fit(w, h, roomW, roomH length, most float64) scale {
	for _, s := range scales {
		if s.k <= most && w*length(s.k) <= roomW && h*length(s.k) <= roomH {
			return s
		}
	}
	return scale{noScale, max(1e-6, min(float64(roomW/w), float64(roomH/h)))}
}

// view places a model on the sheet: model millimetres times k, its origin at at.
type view struct {
	k  float64
	at path.Point
}

func (v view) pt(x, y length) path.Point {
	return path.Pt(v.at.X+x*length(v.k), v.at.Y+y*length(v.k))
}
func (v view) x(x length) length { return v.at.X + x*length(v.k) }
func (v view) y(y length) length { return v.at.Y + y*length(v.k) }
func (v view) to() path.Affine {
	return path.Scale(v.k, v.k).Then(path.Translate(v.at.X, v.at.Y))
}

// poly places a chain of model points.
func (v view) poly(pts ...path.Point) []path.Point {
	out := make([]path.Point, len(pts))
	for i, p := range pts {
		out[i] = v.pt(p.X, p.Y)
	}
	return out
}

// dual writes a length in both units, with "in" but without "mm".
func dual(l length, u measure.Unit) string {
	return strings.Replace(l.Both(u), " mm", "", 1)
}

// rows divides a box into an upper part, the fraction f of its height, and a
// lower.
func rows(b path.Box, f float64, gap length) (upper, lower path.Box) {
	upper, lower = b, b
	y := b.Max.Y - (b.Max.Y-b.Min.Y)*length(f)
	upper.Min.Y, lower.Max.Y = y+gap/2, y-gap/2
	return upper, lower
}

// columns divides a box into a left part, the fraction f of its width, and a
// right.
func columns(b path.Box, f float64, gap length) (left, right path.Box) {
	left, right = b, b
	x := b.Min.X + (b.Max.X-b.Min.X)*length(f)
	left.Max.X, right.Min.X = x-gap/2, x+gap/2
	return left, right
}

func boxW(b path.Box) length { return b.Max.X - b.Min.X }
func boxH(b path.Box) length { return b.Max.Y - b.Min.Y }
func midX(b path.Box) length { return (b.Max.X + b.Min.X) / 2 }
func midY(b path.Box) length { return (b.Max.Y + b.Min.Y) / 2 }

// inner takes room off a box's sides.
func inner(b path.Box, left, right, top, bottom length) path.Box {
	return path.Box{Min: path.Pt(b.Min.X+left, b.Min.Y+bottom), Max: path.Pt(b.Max.X-right, b.Max.Y-top)}
}

// heading writes a view's name and scale on top of its box and returns what is
// left below.
func (d *sheet) heading(b path.Box, name string, sc scale) path.Box {
	words := name
	if sc.name != "" && d.less == 1 {
		words += "   " + sc.name
	}
	d.fitWords(path.Pt(b.Min.X, b.Max.Y-small), boxW(b), small, true, words)
	b.Max.Y -= small + 2.5
	return b
}
