package charts

import (
	"math"
	"strconv"

	"silowright/geometry/path"
	"silowright/render"
)

// Week is one week of a season.
type Week struct {
	N          int // its number
	Drum, Pipe int // silos
	Flow       float64
	Peak       bool
}

// Weeks draws a season in two fields over the same weeks: the drum silos (a
// heavy stepped line) and pipe silos (grey) above, the flow below.
type Weeks struct {
	Width, Height length // of the whole drawing, at least 80 × 60 mm
	Flow          Axis
	Weeks         []Week // in order of N
	Drums         int    // silos there are: a dashed level; 0 none
	DrumsSay      string
	PeakSays      string // beside the first marked week
}

// Draw makes the drawing. Weeks out of order, of no number or with a flow that
// is not finite, and counts below 0, are left out.
func (w Weeks) Draw() render.Drawing {
	d := render.Drawing{Title: "weeks", Width: max(w.Width, 80), Height: max(w.Height, 60)}
	ws := w.sound()
	first, last := 1, 1
	silos, flow := float64(max(w.Drums, 0)), 0.0
	if len(ws) > 0 {
		first, last = ws[0].N, ws[len(ws)-1].N
	}
	for _, x := range ws {
		silos, flow = math.Max(silos, float64(max(x.Drum, x.Pipe))), math.Max(flow, x.Flow)
	}
	foot, head := 2*line+1, d.Height-line-0.5
	split := foot + (head-foot)*0.4
	s := ruler{hi: math.Max(1, topOf(silos*1.05)), from: split + line + 2, to: head - line - 1.5}
	q := ruler{hi: topOf(flow * 1.05), from: foot, to: split - 1.5}
	left := max(s.upWide(), q.upWide()) + 0.5
	right := d.Width - 3
	if w.Flow.double() {
		right = d.Width - q.inSecond(w.Flow.Factor).upWide() - 0.5
	}
	x := ruler{lo: float64(first) - 0.5, hi: float64(last) + 0.5, from: left, to: right}
	w.field(&d, s, left, right)
	w.field(&d, q, left, right)
	d.Words(path.Pt(0, s.to+2.4), letters, render.Left, fit("Silos", d.Width*0.3))
	d.Words(path.Pt(0, q.to+2.4), letters, render.Left, fit(w.Flow.Says, d.Width*0.3))
	if w.Flow.double() {
		q.inSecond(w.Flow.Factor).up(&d, right, 1)
		d.Words(path.Pt(d.Width, q.to+2.4), letters, render.Right, fit(w.Flow.Second, d.Width*0.3))
	}
	w.numbers(&d, x, foot, first, last)
	w.key(&d, head)
	for _, k := range ws {
		a, b := x.at(float64(k.N)-0.5), x.at(float64(k.N)+0.5)
		fill := func(r ruler, v, grey float64) {
			if v > 0 {
				d.Shade(path.Rect(path.Box{Min: path.Pt(a, r.from), Max: path.Pt(b, r.at(v))}), grey)
			}
		}
		fill(s, float64(k.Pipe), 0.3)
		if k.Peak {
			fill(q, k.Flow, 0.55)
		} else {
			fill(q, k.Flow, 0.2)
		}
	}
	for _, c := range steps(ws, x, s, func(k Week) float64 { return float64(k.Drum) }) {
		d.PathOn(render.Outline, c)
	}
	for _, c := range steps(ws, x, q, func(k Week) float64 { return k.Flow }) {
		d.PathOn(render.Outline, c)
	}
	if w.Drums > 0 {
		d.Line(render.Hidden, path.Pt(left, s.at(float64(w.Drums))), path.Pt(right, s.at(float64(w.Drums))))
	}
	return d
}

func (w Weeks) sound() []Week {
	var out []Week
	for _, x := range w.Weeks {
		if x.N < 1 || x.N > 1e6 || !(x.Flow >= 0 && x.Flow <= largest) || x.Drum < 0 || x.Pipe < 0 || len(out) > 0 && x.N <= out[len(out)-1].N {
			continue
		}
		out = append(out, x)
	}
	return out
}

// field is the frame of one of the two, with its scale.
func (w Weeks) field(d *render.Drawing, r ruler, left, right length) {
	d.Line(render.Thin, path.Pt(left, r.from), path.Pt(right, r.from))
	d.Line(render.Thin, path.Pt(left, r.from), path.Pt(left, r.to))
	d.Line(render.Thin, path.Pt(right, r.from), path.Pt(right, r.to))
	r.up(d, left, -1)
}

// numbers writes the weeks below.
func (w Weeks) numbers(d *render.Drawing, x ruler, foot length, first, last int) {
	room := render.TextWidth(strconv.Itoa(last), letters, false) + 3
	most := math.Max(1, float64((x.to-x.from)/room))
	step := max(1, int(math.Round(nice(float64(last-first+1)/most))))
	for n := (first + step - 1) / step * step; n <= last; n += step {
		at := x.at(float64(n))
		half := render.TextWidth(strconv.Itoa(n), letters, false) / 2
		if at+half > d.Width {
			break
		}
		d.Line(render.Thin, path.Pt(at, foot), path.Pt(at, foot-tick))
		d.Words(path.Pt(at, foot-tick-0.8-letters), letters, render.Middle, strconv.Itoa(n))
	}
	d.Words(path.Pt((x.from+x.to)/2, 0.8), letters, render.Middle, "week of the season")
}

// key says above the fields what is what.
func (w Weeks) key(d *render.Drawing, head length) {
	y := head + 1.4
	at := length(0)
	say := func(sign func(x length), words string) {
		words = fit(words, d.Width-at-8)
		if words == "" {
			return
		}
		sign(at)
		d.Words(path.Pt(at+8, y), letters, render.Left, words)
		at += 8 + render.TextWidth(words, letters, false) + 5
	}
	bar := func(l render.Layer) func(length) {
		return func(x length) { d.Line(l, path.Pt(x, y+letters/2), path.Pt(x+6.5, y+letters/2)) }
	}
	grey := func(g float64) func(length) {
		return func(x length) {
			d.Shade(path.Rect(path.Box{Min: path.Pt(x, y), Max: path.Pt(x+6.5, y+letters)}), g)
		}
	}
	say(bar(render.Outline), "drum silos")
	say(grey(0.3), "pipe silos")
	if w.Drums > 0 {
		say(bar(render.Hidden), w.DrumsSay)
	}
	for _, k := range w.sound() {
		if k.Peak {
			say(grey(0.55), w.PeakSays)
			break
		}
	}
}

// steps is the stepped line of a value, broken where a week is missing.
func steps(ws []Week, x, y ruler, of func(Week) float64) []path.Path {
	var out []path.Path
	var chain []path.Point
	for i, k := range ws {
		if i > 0 && ws[i-1].N != k.N-1 {
			out, chain = append(out, path.Polyline(chain...)), nil
		}
		chain = append(chain, path.Pt(x.at(float64(k.N)-0.5), y.at(of(k))), path.Pt(x.at(float64(k.N)+0.5), y.at(of(k))))
	}
	if len(chain) > 0 {
		out = append(out, path.Polyline(chain...))
	}
	return out
}
