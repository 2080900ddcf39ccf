package sheets

import (
	"cmp"
	"math"
	"slices"

	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
	"silowright/render/charts"
)

// levelScales are the reductions of the level figure, those of ISO 5455 and
// between.
var levelScales = []int{1, 2, 3, 4, 5, 10, 20, 50, 100}

// The level figure's rooms across and up, mm.
const (
	levelHigh    length = 74 // most of the section's height on paper
	levelLabels  length = 35 // words of the levels
	levelLeaders length = 8
	levelPitch   length = 8.2 // from one level's words to the next
	levelSection length = 46
	levelAxis    length = 15 // left of the field, for its scale
	levelRight   length = 13
	levelFoot    length = 2*4.3 + 1
	levelHead    length = 3*4.3 + 1
)

// levelFigure lays one out: heights lo to hi at a scale on paper.
type levelFigure struct {
	*LevelSection
	u      measure.Unit
	d      render.Drawing
	lo, hi length
	scale  int
	y0     length // place of lo
}

func (g *levelFigure) y(z length) length { return g.y0 + (z-g.lo)/length(g.scale) }

// soundLength reports whether a height or width can be drawn.
func soundLength(ls ...length) bool {
	for _, l := range ls {
		if !l.Finite() || l.Abs() > 5000 {
			return false
		}
	}
	return true
}

// ok reports whether the section's measures can be drawn.
func (s *LevelSection) ok() bool {
	if !soundLength(s.Bore, s.Wall, s.Rim, s.Outlet, s.Nipple, s.Stub, s.Mesh, s.Design.Level) || s.Bore <= 0 || s.Wall <= 0 || s.Outlet <= 0 ||
		s.Nipple < 0 || s.Stub < 0 || s.Rim <= s.Outlet {
		return false
	}
	if t := s.Slot; t != nil && (!soundLength(t.Sill, t.Top, t.Long) || t.Sill >= t.Top || t.Top > s.Rim) {
		return false
	}
	if p := s.Pipe; p != nil && (!soundLength(p.Outside, p.Wall, p.Gap, p.Rim, p.Screen, p.Surface) || p.Outside <= 0 || p.Wall <= 0 || p.Gap < 0 || p.Rim <= p.Screen || 2*p.Wall >= p.Outside) {
		return false
	}
	return true
}

// levelName is a height written beside the section.
type levelName struct {
	z    length
	name string
	to   length // how far in the line reaches: x on paper
}

// draw makes the figure as wide as w.
func (s *LevelSection) draw(w length, u measure.Unit) render.Drawing {
	g := &levelFigure{LevelSection: s, u: u}
	g.lo, g.hi = 0, max(s.Rim, s.Design.Level)
	if s.Pipe != nil {
		g.hi = max(g.hi, s.Pipe.Rim, s.Pipe.Surface)
		g.lo = min(g.lo, s.Pipe.Surface)
	}
	g.lo = min(g.lo, s.Design.Level)
	reach := g.hi - g.lo
	if s.Mesh < g.lo && g.lo-s.Mesh < reach/2 {
		g.lo = s.Mesh
	}
	g.lo, g.hi = g.lo-max(reach*0.16, s.Nipple*2), g.hi+reach*0.1
	g.scale = levelScales[len(levelScales)-1]
	for _, k := range levelScales {
		if (g.hi-g.lo)/length(k) <= levelHigh {
			g.scale = k
			break
		}
	}
	names := g.levels()
	tall := max((g.hi-g.lo)/length(g.scale), length(len(names))*levelPitch-levelFoot-levelHead+4)
	g.hi = g.lo + tall*length(g.scale)
	g.y0 = levelFoot
	g.d = render.Drawing{Title: "level and flow", Width: w, Height: levelFoot + tall + levelHead}
	g.section(names)
	g.curve(path.Box{Min: path.Pt(levelLabels+levelLeaders+levelSection+levelAxis, g.y0), Max: path.Pt(min(w-levelRight, 240), g.y0+tall)})
	return g.d
}

// levels are the heights to be written.
func (g *levelFigure) levels() []levelName {
	left := levelLabels + levelLeaders
	out := []levelName{{g.Rim, "rim", left}, {g.Design.Level, "water at design flow", left}, {g.Outlet, "outlet's crown", left}, {0, "outlet's invert", left}}
	if t := g.Slot; t != nil {
		out = append(out, levelName{t.Sill, "handle slot's sill", left})
	}
	if g.Mesh > g.lo {
		out = append(out, levelName{g.Mesh, "mesh", left})
	}
	if p := g.Pipe; p != nil {
		x := g.pipeLeft()
		out = append(out, levelName{p.Rim, "pipe silo's rim", x}, levelName{p.Surface, "water in the pipe silo", x + g.wide(p.Wall) + 2})
	}
	slices.SortStableFunc(out, func(a, b levelName) int { return cmp.Compare(b.z, a.z) })
	return out
}

// wide is a width on paper, of a wall no less than a pen's.
func (g *levelFigure) wide(l length) length { return max(l/length(g.scale), 0.6) }

// Places across the section on paper.
func (g *levelFigure) innerLeft() length { return levelLabels + levelLeaders + g.wide(g.Wall) }

func (g *levelFigure) innerRight() length {
	return levelLabels + levelLeaders + levelSection - min(max(g.Stub/length(g.scale), 3), 9) - g.wide(g.Wall)
}

// pipeRight is the pipe silo's outside towards the outlet, pipeLeft the other,
// nearer than to scale where the section's widths are broken.
func (g *levelFigure) pipeRight() length {
	return g.innerRight() - min(g.Pipe.Gap/length(g.scale), 6)
}

func (g *levelFigure) pipeLeft() length {
	return max(g.pipeRight()-g.Pipe.Outside/length(g.scale), g.innerLeft()+12)
}

func (g *levelFigure) fill(x1, z1, x2, z2 length, grey float64) {
	z1, z2 = max(z1, g.lo), min(z2, g.hi)
	if x2 > x1 && z2 > z1 {
		g.d.Shade(path.Rect(path.Box{Min: path.Pt(x1, g.y(z1)), Max: path.Pt(x2, g.y(z2))}), grey)
	}
}

// section draws walls, water and the written levels.
func (g *levelFigure) section(names []levelName) {
	l, r, t := g.innerLeft(), g.innerRight(), g.wide(g.Wall)
	const wet, solid = 0.12, 1
	g.fill(l, g.lo, r, g.Design.Level, wet)
	inner := r // where the nipple begins
	n := g.Nipple
	out := levelLabels + levelLeaders + levelSection
	level := g.Design.Level
	if p := g.Pipe; p != nil {
		a, b, tp := g.pipeLeft(), g.pipeRight(), g.wide(p.Wall)
		foot := max(g.lo, p.Screen)
		g.fill(a, foot, b, p.Rim, 0)
		g.fill(a, foot, b, p.Surface, wet)
		g.fill(a, foot, a+tp, p.Rim, solid)
		g.fill(b-tp, foot, b, min(-n, p.Rim), solid)
		g.fill(b-tp, max(g.Outlet+n, foot), b, p.Rim, solid)
		if p.Screen > g.lo {
			g.d.Line(render.Hidden, path.Pt(a, g.y(p.Screen)), path.Pt(b, g.y(p.Screen)))
		}
		if b-a < p.Outside/length(g.scale)-0.01 {
			g.broken((a+b)/2, foot, p.Rim)
		}
		if a-l > 8 {
			g.broken((l+a)/2, g.lo, g.Rim)
		}
		g.surface(a+tp, b-tp, p.Surface)
		g.surface(l, a, level)
		g.surface(b, r, level)
		inner, level = b-tp, p.Surface
	} else {
		g.broken((l+r)/2, g.lo, g.Rim)
		g.surface(l, r, level)
	}
	// the left wall, a handle slot turned into the plane, and the right one
	if s := g.Slot; s != nil {
		g.fill(l-t, g.lo, l, s.Sill, solid)
		g.fill(l-t, s.Top, l, g.Rim, solid)
		for _, z := range []length{s.Sill, s.Top} {
			g.d.Line(render.Thin, path.Pt(l-t, g.y(z)), path.Pt(l, g.y(z)))
		}
	} else {
		g.fill(l-t, g.lo, l, g.Rim, solid)
	}
	g.fill(r, g.lo, r+t, -n, solid)
	g.fill(r, g.Outlet+n, r+t, g.Rim, solid)
	g.fill(inner, 0, out, g.Outlet, 0)
	g.fill(inner, 0, out, min(g.Outlet, max(level, 0)), wet)
	if deep := min(g.Outlet, level); deep > 0 { // which way it leaves
		y := g.y(deep / 2)
		g.d.Line(render.Water, path.Pt(out-4, y), path.Pt(out+1.5, y))
		g.d.Shade(path.Polygon(path.Pt(out+3, y), path.Pt(out+1, y+0.6), path.Pt(out+1, y-0.6)), 1)
	}
	thick := max(n, 0.5*length(g.scale))
	g.fill(inner, -thick, out, 0, solid)
	g.fill(inner, g.Outlet, out, g.Outlet+thick, solid)
	if g.Mesh > g.lo && g.Pipe == nil {
		g.d.Line(render.Hidden, path.Pt(l, g.y(g.Mesh)), path.Pt(r, g.y(g.Mesh)))
	}
	for _, x := range [][2]length{{l - t - 1, r + t + 1}} { // where the drawing ends below
		g.d.Line(render.Thin, path.Pt(x[0], g.y(g.lo)), path.Pt(x[1], g.y(g.lo)))
	}
	g.words(names)
}

// broken leaves a white strip between two zigzag lines: the width is cut.
func (g *levelFigure) broken(x, z1, z2 length) {
	const half length = 0.8
	y1, y2 := g.y(max(z1, g.lo)), g.y(min(z2, g.hi))
	if y2-y1 < 3 {
		return
	}
	g.d.Shade(path.Rect(path.Box{Min: path.Pt(x-half, y1), Max: path.Pt(x+half, y2)}), 0)
	m := (y1 + y2) / 2
	for _, dx := range []length{-half, half} {
		g.d.PathOn(render.Thin, path.Polyline(path.Pt(x+dx, y1), path.Pt(x+dx, m-1.5), path.Pt(x+dx-1, m-0.5), path.Pt(x+dx+1, m+0.5), path.Pt(x+dx, m+1.5), path.Pt(x+dx, y2)))
	}
}

// surface draws the water's surface with its sign where there is room.
func (g *levelFigure) surface(x1, x2, z length) {
	y := g.y(z)
	g.d.Line(render.Water, path.Pt(x1, y), path.Pt(x2, y))
	if x2-x1 < 5 {
		return
	}
	at := x1 + 2.6
	g.d.PathOn(render.Water, path.Polygon(path.Pt(at, y+0.3), path.Pt(at-1.3, y+2.5), path.Pt(at+1.3, y+2.5)))
	for i := range 2 {
		half, low := 1.2-0.5*length(i), 0.8*length(i+1)
		g.d.Line(render.Water, path.Pt(at-half, y-low), path.Pt(at+half, y-low))
	}
}

// words writes the levels at the left, spread so that none runs into another,
// each with a line to its height.
func (g *levelFigure) words(names []levelName) {
	ys := make([]length, len(names))
	for i, n := range names {
		ys[i] = g.y(n.z)
	}
	top := g.d.Height - 4.3 - levelPitch/2
	spread(ys, levelPitch, levelPitch/2, top)
	for i, n := range names {
		y, z := ys[i], g.y(n.z)
		g.d.Words(path.Pt(levelLabels-1.5, y+0.7), small, render.Right, fit(n.name, small, levelLabels-1.5))
		g.d.Words(path.Pt(levelLabels-1.5, y-small-0.7), small, render.Right, n.z.Both(g.u))
		g.d.PathOn(render.Dimension, path.Polyline(path.Pt(levelLabels-0.8, y), path.Pt(levelLabels+1, y),
			path.Pt(levelLabels+levelLeaders-2, z), path.Pt(n.to, z)))
	}
	g.d.Words(path.Pt(0, g.d.Height-small-0.4), small, render.Left, fit("Above the outlet's invert; "+scaleWords(g.scale)+", widths broken", small, levelLabels+levelLeaders+levelSection))
}

// spread moves places, the highest first, apart to a pitch and between low and
// high where they have room.
func spread(ys []length, pitch, low, high length) {
	for i := range ys {
		ys[i] = min(ys[i], high)
		if i > 0 {
			ys[i] = min(ys[i], ys[i-1]-pitch)
		}
	}
	for i := len(ys) - 1; i >= 0; i-- {
		ys[i] = max(ys[i], low+pitch*length(len(ys)-1-i))
	}
}

// flowAxis is the axis of flow, the shop's unit first.
func flowAxis(u measure.Unit) charts.Axis {
	k := float64(measure.GallonPerMinute / measure.LitrePerMinute)
	if u == measure.UnitMM {
		return charts.Axis{Says: "Flow, L/min", Second: "Flow, gpm", Factor: 1 / k}
	}
	return charts.Axis{Says: "Flow, gpm", Second: "Flow, L/min", Factor: k}
}

// inFlow is a flow as a number in the shop's unit.
func inFlow(q measure.Flow, u measure.Unit) float64 {
	if u == measure.UnitMM {
		return q.LMin()
	}
	return q.GPM()
}

// curve draws level against flow in the box, on the section's heights.
func (g *levelFigure) curve(box path.Box) {
	unit, up := measure.Inch, charts.Axis{Says: "Level, in", Second: "mm", Factor: float64(measure.Inch)}
	if g.u == measure.UnitMM {
		unit, up = 1, charts.Axis{Says: "Level, mm", Second: "in", Factor: float64(1 / measure.Inch)}
	}
	xy := func(p LevelAt) charts.XY { return charts.XY{X: inFlow(p.Flow, g.u), Y: float64(p.Level / unit)} }
	c := charts.Curves{Across: flowAxis(g.u), Up: up, Frame: &charts.Frame{Box: box, Low: float64(g.lo / unit), High: float64(g.hi / unit)}}
	var pts []charts.XY
	for _, p := range g.Curve {
		pts = append(pts, xy(p))
	}
	c.Lines = []charts.Curve{{Layer: render.Outline, Points: pts}}
	c.Levels = append(c.Levels, charts.LevelLine{At: float64(g.Rim / unit), Name: "rim"})
	if g.Slot != nil {
		c.Levels = append(c.Levels, charts.LevelLine{At: float64(g.Slot.Sill / unit), Name: "sill"})
	}
	for i, m := range g.marks() {
		c.Spots = append(c.Spots, charts.Spot{At: xy(m.At), Says: markLetter(i), Drop: true})
	}
	c.DrawOn(&g.d)
}

// marks are the places marked on the curve, the design flow first.
func (s *LevelSection) marks() []LevelMark {
	out := []LevelMark{{At: s.Design, Name: "design flow", Says: s.Says}}
	for _, m := range s.Marks {
		if soundLength(m.At.Level) && !math.IsNaN(float64(m.At.Flow)) {
			out = append(out, m)
		}
	}
	slices.SortStableFunc(out[1:], func(a, b LevelMark) int { return cmp.Compare(a.At.Flow, b.At.Flow) })
	return out[:min(len(out), 8)]
}

func markLetter(i int) string { return string(rune('A' + i)) }

// levelAndFlow sets the figure with its key below.
func (f *flow) levelAndFlow(s *LevelSection, none string) {
	if s == nil || !s.ok() {
		if s != nil {
			none = "The drawing of level and flow is left out: its measures cannot be drawn."
		}
		f.para(orElse(none, "No level of the water was worked out for this pack."))
		return
	}
	d := s.draw(f.wide(), f.units)
	title := "Level and flow"
	if s.Drum != "" {
		title += ", drum kind " + s.Drum
	}
	f.headingOver(title, d.Height+12)
	f.need(d.Height)
	f.place(d, marginL, f.y, 1)
	f.y += d.Height + 1.5
	for i, m := range s.marks() {
		words := upper(m.Name)
		if m.Says != "" {
			words += ", " + m.Says
		}
		f.need(lead(small))
		f.put(marginL, f.y+small, markLetter(i), small, true, render.Left)
		f.paraAt(4, words+": level "+m.At.Level.Both(f.units)+".", false)
		f.y -= 0.6
	}
	f.y += 1.5
}
