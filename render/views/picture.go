package views

import (
	"math"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
)

// The size of a step's picture.
const (
	pictureWidth  length = 60
	pictureHeight length = 46
)

// tilt is how far round edges open up, seen a little from above.
const tilt = 0.2

// picture is a small figure without words. What d.avoid holds is left clear,
// so that a tool stands in front of the part it works on.
type picture struct{ *sheet }

func newPicture(s geometry.Silo, title string) picture {
	d := &sheet{units: s.Spec.Units}
	d.Title, d.Width, d.Height = title, pictureWidth, pictureHeight
	d.area = path.Box{Min: path.Pt(1.5, 1.5), Max: path.Pt(pictureWidth-1.5, pictureHeight-1.5)}
	return picture{d}
}

// fitted places a model w wide (about its axis, shifted by dx) and h high, its
// lower edge at the origin, round edges' bellies counted.
func (p picture) fitted(left, right, h length) view {
	belly := max(left, right) * tilt
	w := left + right
	k := min(float64(boxW(p.area)/w), float64(boxH(p.area)/(h+2*belly)))
	k *= 0.96
	spare := boxW(p.area) - w*length(k)
	rest := boxH(p.area) - (h+2*belly)*length(k)
	return view{k, path.Pt(p.area.Min.X+spare/2+left*length(k), p.area.Min.Y+rest/2+belly*length(k))}
}

// whole is the picture as drawn, or made smaller where parts of sizes that do
// not go together, such as a pipe far wider than its hole, reach past its edge.
func (p picture) whole() render.Drawing {
	all := path.Box{Max: path.Pt(p.Width, p.Height)}
	for _, s := range p.Strokes {
		all = around(all, s.Path.Bounds())
	}
	for _, f := range p.Fills {
		all = around(all, f.Path.Bounds())
	}
	w, h := boxW(all), boxH(all)
	if w <= p.Width && h <= p.Height {
		return p.Drawing
	}
	k := 0.98 * min(float64(p.Width/w), float64(p.Height/h))
	out := render.Drawing{Title: p.Title, Description: p.Description, Width: p.Width, Height: p.Height}
	out.Place(p.Drawing, path.Pt(p.Width/2-midX(all)*length(k), p.Height/2-midY(all)*length(k)), k)
	return out
}

// around is the box that holds two.
func around(a, b path.Box) path.Box {
	return path.Box{Min: path.Pt(min(a.Min.X, b.Min.X), min(a.Min.Y, b.Min.Y)), Max: path.Pt(max(a.Max.X, b.Max.X), max(a.Max.Y, b.Max.Y))}
}

// line draws a path, leaving out what a tool hides.
func (p picture) line(l render.Layer, q path.Path) {
	if len(p.avoid) == 0 {
		p.PathOn(l, q)
		return
	}
	for _, chain := range q.Flatten(0.03) {
		p.broken(l, chain)
	}
}

// hoopLine is a level ring on a round part: its near half, or all of it.
func hoopLine(v view, r, z length, whole bool) path.Path {
	m := path.Scale(1, tilt).Then(path.Translate(0, z)).Then(v.to())
	if whole {
		return path.Circle(path.Point{}, r).Transform(m)
	}
	var q path.Path
	q.MoveTo(path.Pt(-r, 0))
	q.ArcTo(path.Point{}, measure.FullTurn/2)
	return q.Transform(m)
}

// solid draws a round part seen a little from above; thick shows its wall at
// an open upper edge, 0 is closed on top.
func (p picture) solid(v view, f profile, thick length) {
	n := len(f)
	for i := 0; i+1 < n; i++ {
		for _, s := range []length{1, -1} {
			p.line(render.Outline, path.Polyline(v.pt(s*f[i].X, f[i].Y), v.pt(s*f[i+1].X, f[i+1].Y)))
		}
	}
	p.line(render.Outline, hoopLine(v, f[0].X, f[0].Y, false))
	for _, q := range f[1 : n-1] {
		p.line(render.Thin, hoopLine(v, q.X, q.Y, false))
	}
	top := f[n-1]
	p.line(render.Outline, hoopLine(v, top.X, top.Y, true))
	if thick > 0 {
		p.line(render.Thin, hoopLine(v, top.X-thick, top.Y, true))
	}
}

// onWall is where a place round the wall, a from the front, is seen.
func onWall(v view, r, a, z length) path.Point {
	t := float64(a / r)
	return v.pt(r*length(math.Sin(t)), z-r*tilt*length(math.Cos(t)))
}

// wallShape draws an outline laid flat on the round wall at front-relative a.
func (p picture) wallShape(l render.Layer, v view, r, a, z length, o path.Path) path.Path {
	var all path.Path
	for _, chain := range o.Flatten(0.3) {
		for i, q := range chain {
			at := onWall(v, r, a+q.X, z+q.Y)
			if i == 0 {
				all.MoveTo(at)
			} else {
				all.LineTo(at)
			}
		}
	}
	p.line(l, all)
	return all
}

// arrowLine draws a bold arrow on paper.
func (p picture) arrowLine(from, to path.Point) {
	p.Line(render.Outline, from, to)
	p.arrowOf(from, to, 3, 0.9)
}

// tool places a tool drawn in paper millimetres, its working point at the
// origin and its body upwards, turned by a, and keeps its outline clear.
func (p picture) tool(at path.Point, a measure.Angle, half, tall length, parts ...path.Path) {
	m := path.Rotate(a).Then(path.Translate(at.X, at.Y))
	q := [4]path.Point{m.Apply(path.Pt(-half, 0)), m.Apply(path.Pt(half, 0)), m.Apply(path.Pt(half, tall)), m.Apply(path.Pt(-half, tall))}
	p.avoid = append(p.avoid, q)
	for _, o := range parts {
		p.PathOn(render.Outline, o.Transform(m))
	}
}

// jigsaw stands on the work with its blade through it.
func (p picture) jigsaw(at path.Point, a measure.Angle) {
	m := path.Rotate(a).Then(path.Translate(at.X, at.Y))
	p.PathOn(render.Outline, path.Polyline(path.Pt(-0.6, 0), path.Pt(-0.6, -4), path.Pt(0.4, -3.4), path.Pt(0.6, 0)).Transform(m))
	var body path.Path
	body.MoveTo(path.Pt(-2, 1))
	for _, q := range []path.Point{path.Pt(-2, 6), path.Pt(-1, 8), path.Pt(9, 8), path.Pt(10, 6.5), path.Pt(9, 5.4), path.Pt(3, 5.4), path.Pt(3, 3.6), path.Pt(8, 3.6), path.Pt(8, 1)} {
		body.LineTo(q)
	}
	body.ClosePath()
	q := [4]path.Point{m.Apply(path.Pt(-3.4, 0)), m.Apply(path.Pt(10.4, 0)), m.Apply(path.Pt(10.4, 8.4)), m.Apply(path.Pt(-3.4, 8.4))}
	p.avoid = append(p.avoid, q)
	p.PathOn(render.Outline, box(-3.2, 0, 8.6, 1).Transform(m))
	p.PathOn(render.Outline, body.Transform(m))
}

// holeSaw points a hole saw in a drill at a place.
func (p picture) holeSaw(at path.Point, a measure.Angle, across length) {
	r := max(1.5, across/2)
	var teeth path.Path
	teeth.MoveTo(path.Pt(-r, 0.9))
	n := 6
	for i := range n {
		x := -r + 2*r*length(i)/length(n)
		teeth.LineTo(path.Pt(x+r/length(n), 0))
		teeth.LineTo(path.Pt(x+2*r/length(n), 0.9))
	}
	drill := path.Polygon(path.Pt(-1.8, 9), path.Pt(1.8, 9), path.Pt(1.8, 17), path.Pt(8, 18.5), path.Pt(7.4, 21), path.Pt(-1.8, 20))
	p.tool(at, a, r, 5, teeth, path.Polyline(path.Pt(-r, 0.9), path.Pt(-r, 5), path.Pt(r, 5), path.Pt(r, 0.9)),
		box(-0.8, 5, 0.8, 7), box(-1.3, 7, 1.3, 9), drill)
	m := path.Rotate(a).Then(path.Translate(at.X, at.Y))
	p.avoid = append(p.avoid, [4]path.Point{m.Apply(path.Pt(-2, 5)), m.Apply(path.Pt(2, 5)), m.Apply(path.Pt(2, 21)), m.Apply(path.Pt(-2, 21))})
}
