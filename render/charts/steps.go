// Package charts draws numbers against a count, in black and white, with the
// values written beside the lines. It works out nothing but places on paper.
package charts

import (
	"cmp"
	"math"
	"slices"
	"sort"
	"strconv"
	"strings"

	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
)

type length = measure.Length

// Point is one step of a chart: the value that holds for the count N.
type Point struct {
	N     int
	Value float64
	Says  string // the value written out; "" writes it plainly
}

// Steps is a chart of a value that changes in steps with a whole count, such
// as the cost of each against the number built: level over each count, from
// half a count before it to half a count after.
type Steps struct {
	Width, Height length // of the whole drawing, at least 60 × 30 mm
	Across        string // what is counted, below the axis
	Up            string // what is valued, with its unit, above the axis
	Mark          int    // a count to be marked with its value; 0 none
	MarkSays      string // what the marked count is: "this build"
	Points        []Point
}

// Letter height (ISO 3098) and the room round the field, in mm.
const (
	letters length = 2.5
	line    length = 4.3
	tick    length = 1.2
)

// largest is the greatest value drawn; what is larger or not finite is left out.
const largest = 1e15

// offScale is how many times the usual value a chart reaches before what is
// above it is cut off, so that the dear first pieces do not flatten the rest.
const offScale = 1.6

// Draw makes the drawing. Counts below 1, values below 0, over 10¹⁵ or not
// finite are left out; without any point left only the axes are drawn.
func (s Steps) Draw() render.Drawing {
	d := render.Drawing{Title: "steps", Width: max(s.Width, 60), Height: max(s.Height, 30)}
	pts := s.points()
	f := s.field(pts, &d)
	f.axes(s, &d)
	if len(pts) == 0 {
		return d
	}
	for _, p := range f.line(pts) {
		d.PathOn(render.Outline, p)
	}
	f.mark(s, pts, &d)
	return d
}

// points are the points drawn, by count; the last of equal counts holds.
func (s Steps) points() []Point {
	var out []Point
	for _, p := range s.Points {
		if p.N >= 1 && p.Value >= 0 && p.Value <= largest {
			out = append(out, p)
		}
	}
	slices.SortStableFunc(out, func(a, b Point) int { return cmp.Compare(a.N, b.N) })
	kept := out[:0]
	for _, p := range out {
		if n := len(kept); n > 0 && kept[n-1].N == p.N {
			kept[n-1] = p
			continue
		}
		kept = append(kept, p)
	}
	return kept
}

// field is the area of the chart: the counts lo to hi across, the values base
// to top up.
type field struct {
	box       path.Box
	lo, hi    float64
	base, top float64
	step      float64 // from one written value to the next
	counts    []int
	values    []float64
	cut       int    // the largest count that stands above the field, 0 none
	highest   string // the value of the first of these, written out
}

func (s Steps) field(pts []Point, d *render.Drawing) field {
	f := field{lo: 0.5, hi: 1.5, top: 1}
	if len(pts) > 0 {
		f.lo, f.hi = float64(pts[0].N)-0.5, float64(pts[len(pts)-1].N)+0.5
		f.base, f.top = reach(pts, s.Mark)
	}
	base, top := f.base, f.top
	low, high := 2*line+1, d.Height-2*line-1
	for f.step = nice((top - base) / 4); ; f.step = nice(1.01 * f.step) {
		f.base, f.top = f.step*math.Floor(base/f.step+1e-9), f.step*math.Ceil(top/f.step-1e-9)
		if n := (f.top - f.base) / f.step; n <= 1 || (high-low)/length(n) >= line {
			break
		}
	}
	wide := length(0)
	for i := math.Round(f.base / f.step); i*f.step <= f.top+f.step/2; i++ {
		f.values = append(f.values, i*f.step)
		wide = max(wide, render.TextWidth(plain(i*f.step, f.step), letters, false))
	}
	for _, p := range pts {
		if p.Value > f.top {
			f.cut = p.N
			if f.highest == "" {
				f.highest = strconv.Itoa(p.N) + " at " + p.says(f.step)
			}
		}
	}
	f.box = path.Box{Min: path.Pt(wide+tick+1.2, low), Max: path.Pt(d.Width-3, high)}
	f.counts = f.ticks()
	return f
}

func (p Point) says(step float64) string {
	if p.Says != "" {
		return p.Says
	}
	return plain(p.Value, step/100)
}

// reach is from where to where the values of the chart must go. It begins at 0
// unless everything stands in its upper half.
func reach(pts []Point, mark int) (base, top float64) {
	vs := make([]float64, len(pts))
	marked := 0.0
	for i, p := range pts {
		vs[i] = p.Value
		if p.N == mark {
			marked = p.Value
		}
	}
	slices.Sort(vs)
	usual, least, most := max(vs[len(vs)/2], marked), vs[0], vs[len(vs)-1]
	if usual > 0 && most > 1.2*offScale*usual {
		most = offScale * usual
	}
	switch {
	case !(most > 1e-6):
		return 0, 1
	case least < most/2:
		return 0, most
	case most-least < most/1e4: // level: a little room round it
		return least - most/100, most + most/100
	}
	return least, most
}

// nice is the least of 1, 2 and 5 times a power of ten that is no less than x.
func nice(x float64) float64 {
	p := math.Pow(10, math.Floor(math.Log10(x)))
	for _, k := range []float64{1, 2, 5} {
		if k*p >= x*(1-1e-9) {
			return k * p
		}
	}
	return 10 * p
}

// plain writes a value with thousands apart, as fine as its step.
func plain(v, step float64) string {
	places := 0
	if step < 1 {
		places = min(6, int(math.Ceil(-math.Log10(step)-1e-9)))
	}
	s := strconv.FormatFloat(v, 'f', places, 64)
	whole, rest := s, ""
	if places > 0 {
		whole, rest = s[:len(s)-places-1], s[len(s)-places-1:]
	}
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + "," + whole[i:]
	}
	return whole + rest
}

// at is the place of a count and a value.
func (f field) at(n, v float64) path.Point {
	return path.Pt(
		f.box.Min.X+(f.box.Max.X-f.box.Min.X)*length((n-f.lo)/(f.hi-f.lo)),
		f.box.Min.Y+(f.box.Max.Y-f.box.Min.Y)*length((v-f.base)/(f.top-f.base)))
}

// ticks are the counts written below the axis, as many as have room.
func (f field) ticks() []int {
	last := int(f.hi)
	room := render.TextWidth(plain(float64(last), 1), letters, false) + 4
	most := max(2, float64((f.box.Max.X-f.box.Min.X)/room))
	step := max(1, int(math.Round(nice((f.hi-f.lo)/min(most, 12)))))
	first := int(math.Ceil(f.lo))
	out := []int{first}
	for n := (first/step + 1) * step; n <= last; n += step {
		if n-first < step/2 {
			continue
		}
		out = append(out, n)
	}
	return out
}

// axes draws the field's frame, the lines of equal value and the words.
func (f field) axes(s Steps, d *render.Drawing) {
	b := f.box
	for _, v := range f.values {
		y := f.at(f.lo, v).Y
		d.Line(render.Thin, path.Pt(b.Min.X-tick, y), path.Pt(b.Max.X, y))
		d.Words(path.Pt(b.Min.X-tick-0.8, y-letters/2), letters, render.Right, plain(v, f.step))
	}
	d.Line(render.Outline, path.Pt(b.Min.X, b.Max.Y), b.Min)
	d.Line(render.Outline, b.Min, path.Pt(b.Max.X, b.Min.Y))
	free := length(0)
	for _, n := range f.counts {
		x, words := f.at(float64(n), f.base).X, plain(float64(n), 1)
		half := render.TextWidth(words, letters, false) / 2
		if x-half < free || x+half > d.Width {
			continue
		}
		free = x + half + 1.5
		d.Line(render.Thin, path.Pt(x, b.Min.Y), path.Pt(x, b.Min.Y-tick))
		d.Words(path.Pt(x, b.Min.Y-tick-0.8-letters), letters, render.Middle, words)
	}
	d.Words(path.Pt(b.Max.X, 0.8), letters, render.Right, fit(s.Across, b.Max.X))
	var notes []string
	if f.base > 0 {
		notes = append(notes, "from "+plain(f.base, f.step)+" up")
	}
	if f.cut > 0 {
		notes = append(notes, "off the scale up to "+strconv.Itoa(f.cut)+", "+f.highest)
	}
	up := s.Up
	if len(notes) > 0 {
		up += " (" + strings.Join(notes, "; ") + ")"
	}
	d.Words(path.Pt(0, d.Height-letters-0.4), letters, render.Left, fit(up, d.Width))
}

// mark draws a dashed line at the marked count and writes its value above.
func (f field) mark(s Steps, pts []Point, d *render.Drawing) {
	at := slices.IndexFunc(pts, func(p Point) bool { return p.N == s.Mark })
	if at < 0 {
		return
	}
	p := pts[at]
	q := f.at(float64(p.N), p.Value)
	d.Line(render.Hidden, path.Pt(q.X, f.box.Min.Y), path.Pt(q.X, f.box.Max.Y+1.2))
	d.PathOn(render.Outline, path.Circle(q, 1.1))
	words := strconv.Itoa(p.N) + ", " + p.says(f.step)
	if s.MarkSays != "" {
		words = s.MarkSays + ": " + words
	}
	words = fit(words, d.Width)
	half := render.TextWidth(words, letters, false) / 2
	x := min(max(q.X, half), d.Width-half)
	d.Words(path.Pt(x, f.box.Max.Y+2.2), letters, render.Middle, words)
}

// fit shortens words that are wider than room and marks that with "…".
func fit(words string, room length) string {
	if render.TextWidth(words, letters, false) <= room {
		return words
	}
	r := []rune(words)
	short := func(n int) string { return string(r[:n]) + "…" }
	n := sort.Search(len(r), func(n int) bool { return render.TextWidth(short(n), letters, false) > room }) - 1
	if n < 1 {
		return ""
	}
	return short(n)
}
