package charts

import (
	"math"

	"silowright/geometry/path"
	"silowright/render"
)

// Range is a row of a chart of ranges: a bar from one value to another.
type Range struct {
	Name     string // left of the field
	Says     string // right of it
	From, To float64
	Dark     bool // set darker, its name bold
}

// ValueMark is an upright dashed line with its name above.
type ValueMark struct {
	At   float64
	Name string
}

// Ranges draws ranges of one value as level bars one below the other, on a
// common scale: straight, or by ratio when the values reach over more than a
// dozenfold.
type Ranges struct {
	Width length // of the whole drawing, at least 120 mm; the height follows
	Value Axis
	Rows  []Range
	Marks []ValueMark
}

// rangePitch is the height of a row of ranges.
const rangePitch length = 5.2

// RowsIn is how many rows a drawing of a height holds, every mark's name on a
// line of its own; at least one.
func (r Ranges) RowsIn(height length) int {
	return max(1, int((height-r.rest(len(r.Marks)))/rangePitch))
}

// lines is how many lines the marks' names take.
func lines(names []markName) int {
	n := 0
	for _, x := range names {
		n = max(n, x.level+1)
	}
	return n
}

// rest is the height that is not rows, with so many lines of names.
func (r Ranges) rest(levels int) length {
	out := 2*line + 2.5 + length(levels)*line
	if r.Value.double() {
		out += line + 1
	}
	return out
}

// good reports whether a value can stand on the scale.
func good(v float64) bool { return v > 1e-9 && v <= largest }

// Draw makes the drawing. A row whose From is not above 0, not finite or over
// 10¹⁵ is named without a bar; a To that is not above From is left open.
func (r Ranges) Draw() render.Drawing {
	w := max(r.Width, 120)
	names := r.names(w)
	d := render.Drawing{Title: "ranges", Width: w, Height: r.rest(lines(names)) + rangePitch*length(len(r.Rows))}
	s := r.scale(w)
	foot := 2*line + 1.5
	head := foot + rangePitch*length(len(r.Rows)) + 1
	s.axis(&d, foot, -1, 1)
	d.Line(render.Outline, path.Pt(s.from, foot), path.Pt(s.to, foot))
	middle := (s.from + s.to) / 2
	d.Words(path.Pt(middle, 0.8), letters, render.Middle, fit(r.Value.Says, s.to-s.from))
	above := head
	if r.Value.double() {
		d.Line(render.Thin, path.Pt(s.from, head), path.Pt(s.to, head))
		s.axis(&d, head, 1, r.Value.Factor)
		d.Words(path.Pt(s.to+2, head+tick+0.8), letters, render.Left, fit(r.Value.Second, w-s.to-2))
		above += line + 1
	}
	for _, n := range names {
		y := above + 0.8 + line*length(n.level)
		d.Words(path.Pt(n.x, y), letters, n.anchor, n.words)
		d.Line(render.Hidden, path.Pt(n.at, foot), path.Pt(n.at, head))
	}
	for i, row := range r.Rows {
		y := head - 0.5 - rangePitch*length(i+1)
		base := y + (rangePitch-letters)/2
		name := fit(row.Name, (s.from-2)*0.93)
		if row.Dark {
			d.BoldWords(path.Pt(0, base), letters, render.Left, name)
		} else {
			d.Words(path.Pt(0, base), letters, render.Left, name)
		}
		d.Words(path.Pt(s.to+2, base), letters, render.Left, fit(row.Says, w-s.to-2))
		if !good(row.From) {
			continue
		}
		grey := 0.25
		if row.Dark {
			grey = 0.6
		}
		a, b := s.at(row.From), s.to
		if good(row.To) && row.To > row.From {
			b = s.at(row.To)
		}
		bar := path.Rect(path.Box{Min: path.Pt(a, y+0.9), Max: path.Pt(max(b, a+0.3), y+rangePitch-0.9)})
		d.Shade(bar, grey)
		d.PathOn(render.Thin, bar)
	}
	return d
}

// sizes is the scale of a chart of ranges.
type sizes struct {
	ruler
	ratio bool
}

func (s sizes) at(v float64) length {
	if s.ratio {
		return ruler{math.Log(s.lo), math.Log(s.hi), s.from, s.to}.at(math.Log(v))
	}
	return s.ruler.at(v)
}

func (r Ranges) scale(w length) sizes {
	lo, hi := math.Inf(1), 0.0
	take := func(v float64) {
		if good(v) {
			lo, hi = math.Min(lo, v), math.Max(hi, v)
		}
	}
	name, says := length(12), length(0)
	for _, row := range r.Rows {
		take(row.From)
		take(row.To)
		name = max(name, render.TextWidth(row.Name, letters, row.Dark))
		says = max(says, render.TextWidth(row.Says, letters, false))
	}
	for _, m := range r.Marks {
		take(m.At)
	}
	s := sizes{ruler: ruler{from: min(name*1.08+3, w*0.36), to: w - min(says+3, w*0.26) - 4}}
	if hi == 0 {
		lo, hi = 1, 10
	}
	if s.ratio = hi > 12*lo; s.ratio {
		s.lo, s.hi = lo/1.15, hi*1.15
	} else {
		s.hi = topOf(hi * 1.02)
	}
	return s
}

// axis writes the scale at y, out to one side, in the unit of the factor.
func (s sizes) axis(d *render.Drawing, y, out length, factor float64) {
	in := s.ruler.inSecond(factor)
	vs, step := in.ticks(in.tickPitch())
	if s.ratio {
		vs = nil
		for p := math.Pow(10, math.Floor(math.Log10(in.lo))); p <= in.hi; p *= 10 {
			for _, k := range []float64{1, 2, 5} {
				if v := k * p; v >= in.lo && v <= in.hi {
					vs = append(vs, v)
				}
			}
		}
	}
	free := length(0)
	for _, v := range vs {
		x := s.at(v / factor)
		if s.ratio {
			step = v
		}
		words := plain(v, step)
		half := render.TextWidth(words, letters, false) / 2
		d.Line(render.Thin, path.Pt(x, y), path.Pt(x, y+out*tick))
		if x-half < free || x+half > s.to+1 {
			continue
		}
		free = x + half + 1.5
		base := y + out*(tick+0.8)
		if out < 0 {
			base -= letters
		}
		d.Words(path.Pt(x, base), letters, render.Middle, words)
	}
}

// markName is where a mark's name stands: at which height of several.
type markName struct {
	at, x  length
	words  string
	anchor render.Anchor
	level  int
}

// names places the names of the marks so that none runs into another.
func (r Ranges) names(w length) []markName {
	s := r.scale(w)
	var out []markName
	var taken [][][2]length
	for _, m := range r.Marks {
		if !good(m.At) {
			continue
		}
		n := markName{at: s.at(m.At), words: fit(m.Name, w*0.5), anchor: render.Middle}
		half := render.TextWidth(n.words, letters, false) / 2
		n.x = min(max(n.at, half+0.5), w-half-0.5)
		for ; ; n.level++ {
			if n.level == len(taken) {
				taken = append(taken, nil)
			}
			free := true
			for _, t := range taken[n.level] {
				free = free && (n.x+half+2 < t[0] || n.x-half-2 > t[1])
			}
			if free {
				break
			}
		}
		taken[n.level] = append(taken[n.level], [2]length{n.x - half, n.x + half})
		out = append(out, n)
	}
	return out
}
