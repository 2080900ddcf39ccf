package charts

import (
	"cmp"
	"math"
	"slices"

	"silowright/geometry/path"
	"silowright/render"
)

// XY is a place on a chart, in the first units of its axes.
type XY struct{ X, Y float64 }

// Curve is a line through points, in order of X.
type Curve struct {
	Name   string // set beside the line; "" none
	Layer  render.Layer
	Points []XY
}

// Spot is a marked place with words beside it.
type Spot struct {
	At   XY
	Says string
	Drop bool // a dashed line down to the axis, and to the left one
}

// LevelLine is a named dashed line right across at one value.
type LevelLine struct {
	At   float64
	Name string
}

// Curves is a chart of one quantity against another, both from 0 up unless a
// frame says otherwise.
type Curves struct {
	Width, Height length // of the whole drawing, at least 60 × 45 mm
	Across, Up    Axis
	Top           float64 // the highest value shown; lines are cut there. 0: all is shown
	Lines         []Curve
	Spots         []Spot
	Levels        []LevelLine
	Frame         *Frame // nil: laid out in Width and Height
}

// Frame lays the field of a chart where another drawing wants it: the values
// Low to High up from the box's foot to its head.
type Frame struct {
	Box       path.Box
	Low, High float64
}

// Draw makes the drawing. Points that are not finite, below 0 or over 10¹⁵
// are left out (below 0 only across when there is a frame); words for which
// there is no room are left out too.
func (c Curves) Draw() render.Drawing {
	d := render.Drawing{Title: "curves", Width: max(c.Width, 60), Height: max(c.Height, 45)}
	c.DrawOn(&d)
	return d
}

// DrawOn draws the chart into d, which must be as large as Draw makes it or
// hold the frame with its words: 10 mm on each side.
func (c Curves) DrawOn(d *render.Drawing) {
	lines := make([]Curve, len(c.Lines))
	for i, l := range c.Lines {
		lines[i] = l
		lines[i].Points = c.sound(l.Points)
	}
	x, y := c.rulers(lines, d)
	box := path.Box{Min: path.Pt(x.from, y.from), Max: path.Pt(x.to, y.to)}
	d.Rect(render.Thin, box.Min, box.Max)
	x.across(d, box.Min.Y, -1)
	if c.Across.double() {
		x.inSecond(c.Across.Factor).across(d, box.Max.Y, 1)
	}
	y.up(d, box.Min.X, -1)
	if c.Up.double() {
		y.inSecond(c.Up.Factor).up(d, box.Max.X, 1)
	}
	c.titles(d, box)
	at := func(p XY) path.Point { return path.Pt(x.at(p.X), y.at(p.Y)) }
	for _, l := range lines {
		for _, chain := range cut(l.Points, y.lo, y.hi) {
			pts := make([]path.Point, len(chain))
			for i, p := range chain {
				pts[i] = at(p)
			}
			d.PathOn(l.Layer, path.Polyline(pts...))
		}
	}
	for _, l := range c.Levels {
		if l.At > y.lo && l.At < y.hi {
			d.Line(render.Hidden, path.Pt(box.Min.X, y.at(l.At)), path.Pt(box.Max.X, y.at(l.At)))
		}
	}
	var spots []Spot
	for _, s := range c.Spots {
		if len(c.sound([]XY{s.At})) == 1 && s.At.X <= x.hi*(1+1e-9) && s.At.Y <= y.hi+1e-9*math.Abs(y.hi) && s.At.Y >= y.lo {
			spots = append(spots, s)
		}
	}
	for _, s := range spots {
		q := at(s.At)
		if s.Drop {
			d.Line(render.Hidden, path.Pt(q.X, box.Min.Y), q)
			if c.Frame == nil {
				d.Line(render.Hidden, path.Pt(box.Min.X, q.Y), q)
			}
		}
		d.Shade(path.Circle(q, 0.9), 1)
		d.PathOn(render.Outline, path.Circle(q, 0.9))
	}
	in := path.Box{Min: path.Pt(box.Min.X+0.6, box.Min.Y+0.6), Max: path.Pt(box.Max.X-0.6, box.Max.Y-0.6)}
	for _, s := range spots {
		put(d, in, around(at(s.At), true, s.Says)...)
	}
	for _, l := range c.Levels {
		if !(l.At > y.lo && l.At < y.hi) {
			continue
		}
		var tries []render.Text
		for _, dy := range []length{0.9, -0.9 - letters} {
			for _, part := range []length{0.02, 0.98, 0.25, 0.5, 0.75} {
				a := render.Left
				if part > 0.5 {
					a = render.Right
				}
				tries = append(tries, render.Text{Layer: render.Notes, At: path.Pt(in.Min.X+(in.Max.X-in.Min.X)*part, y.at(l.At)+dy), Size: letters, Anchor: a, Words: l.Name})
			}
		}
		put(d, in, tries...)
	}
	for _, l := range lines {
		c.name(d, in, l, at, y)
	}
}

// name sets a line's name beside it, towards its end.
func (c Curves) name(d *render.Drawing, in path.Box, l Curve, at func(XY) path.Point, y ruler) {
	chains := cut(l.Points, y.lo, y.hi)
	if len(chains) == 0 || l.Name == "" {
		return
	}
	chain := chains[len(chains)-1]
	var tries []render.Text
	for _, part := range []float64{0.85, 0.7, 0.5, 0.3, 0.15, 1, 0} {
		i := int(part * float64(len(chain)-1))
		tries = append(tries, around(at(chain[i]), false, l.Name)...)
	}
	put(d, in, tries...)
}

// sound are the points that can be drawn, by X.
func (c Curves) sound(pts []XY) []XY {
	var out []XY
	for _, p := range pts {
		if p.X >= 0 && p.X <= largest && math.Abs(p.Y) <= largest && (p.Y >= 0 || c.Frame != nil) {
			out = append(out, p)
		}
	}
	slices.SortStableFunc(out, func(a, b XY) int { return cmp.Compare(a.X, b.X) })
	return out
}

// spotted are the points of lines and the spots.
func (c Curves) spotted(lines []Curve) []XY {
	var out []XY
	for _, l := range lines {
		out = append(out, l.Points...)
	}
	for _, s := range c.Spots {
		out = append(out, c.sound([]XY{s.At})...)
	}
	return out
}

// rulers lay the field out.
func (c Curves) rulers(lines []Curve, d *render.Drawing) (x, y ruler) {
	right, top := 0.0, 0.0
	for _, p := range c.spotted(lines) {
		if !(c.Top > 0 && p.Y > c.Top) {
			top = math.Max(top, p.Y)
		}
	}
	y = ruler{hi: topOf(top * 1.05), from: 2*line + 1, to: d.Height - line - 2}
	if c.Across.double() {
		y.to -= line
	}
	if f := c.Frame; f != nil {
		y = ruler{lo: f.Low, hi: f.High, from: f.Box.Min.Y, to: f.Box.Max.Y}
	}
	for _, l := range lines {
		for _, chain := range cut(l.Points, y.lo, y.hi) {
			right = math.Max(right, chain[len(chain)-1].X)
		}
	}
	for _, p := range c.spotted(nil) {
		if p.Y >= y.lo && p.Y <= y.hi {
			right = math.Max(right, p.X)
		}
	}
	x = ruler{hi: topOf(right * 1.02)}
	if f := c.Frame; f != nil {
		x.from, x.to = f.Box.Min.X, f.Box.Max.X
		return x, y
	}
	x.from, x.to = y.upWide()+0.5, d.Width-3
	if c.Up.double() {
		x.to = d.Width - y.inSecond(c.Up.Factor).upWide() - 0.5
	}
	return x, y
}

// titles say what the axes are of: upright ones above their ends, level ones
// in the middle below and above.
func (c Curves) titles(d *render.Drawing, box path.Box) {
	third := (box.Max.X - box.Min.X) * 0.45
	below := box.Min.Y - tick - 0.8 - letters - line
	above := box.Max.Y + 2.4
	d.Words(path.Pt((box.Min.X+box.Max.X)/2, below), letters, render.Middle, fit(c.Across.Says, (box.Max.X-box.Min.X)*0.96))
	if c.Across.double() {
		above += line
		d.Words(path.Pt((box.Min.X+box.Max.X)/2, above), letters, render.Middle, fit(c.Across.Second, third*0.8))
	}
	left := min(box.Min.X, 12)
	d.Words(path.Pt(box.Min.X-left, above), letters, render.Left, fit(c.Up.Says, third*0.5+left))
	if c.Up.double() {
		right := min(d.Width-box.Max.X, 12)
		d.Words(path.Pt(box.Max.X+right, above), letters, render.Right, fit(c.Up.Second, third*0.5+right))
	}
}

// cut parts a line where it leaves the values lo to hi.
func cut(pts []XY, lo, hi float64) [][]XY {
	var out [][]XY
	var chain []XY
	end := func() {
		if len(chain) > 1 {
			out = append(out, chain)
		}
		chain = nil
	}
	for i := 1; i < len(pts); i++ {
		a, b, whole, ok := within(pts[i-1], pts[i], lo, hi)
		if !ok {
			end()
			continue
		}
		if len(chain) == 0 {
			chain = append(chain, a)
		}
		chain = append(chain, b)
		if !whole {
			end()
		}
	}
	end()
	return out
}

// within is the part of a straight piece between the values lo and hi; whole
// reports that its end is.
func within(a, b XY, lo, hi float64) (from, to XY, whole, ok bool) {
	t0, t1 := 0.0, 1.0
	if d := b.Y - a.Y; d == 0 {
		if a.Y < lo || a.Y > hi {
			return a, b, false, false
		}
	} else {
		u, v := (lo-a.Y)/d, (hi-a.Y)/d
		t0, t1 = math.Max(t0, math.Min(u, v)), math.Min(t1, math.Max(u, v))
	}
	if t0 >= t1 {
		return a, b, false, false
	}
	at := func(t float64) XY {
		switch t { // exact at the ends
		case 0:
			return a
		case 1:
			return b
		}
		return XY{a.X + t*(b.X-a.X), a.Y + t*(b.Y-a.Y)}
	}
	return at(t0), at(t1), t1 == 1, true
}
