package views

import (
	"math"
	"slices"

	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
)

// solidUnder is the thickness on paper under which a cut part is blacked in
// instead of hatched (ISO 128-50).
const solidUnder length = 1.1

// section draws a cut part: hatched at the angle with its outline, or black
// when thick, its thickness on paper, is too little for hatching.
func (d *sheet) section(p path.Path, thick length, angle measure.Angle) {
	if thick < solidUnder {
		d.Shade(p, 1)
		if thick < 0.5 {
			d.PathOn(render.Outline, p)
		}
		return
	}
	d.hatch(p, angle, min(2.2, max(0.9, thick/3)))
	for _, chain := range p.Flatten(0.02) {
		d.broken(render.Outline, chain)
	}
}

// broken draws a chain, leaving out what lies in the boxes kept clear.
func (d *sheet) broken(l render.Layer, chain []path.Point) {
	for _, p := range without(chain, d.avoid) {
		d.PathOn(l, p)
	}
}

// hatch fills closed outlines with lines the pitch apart.
func (d *sheet) hatch(p path.Path, angle measure.Angle, pitch length) {
	turn, back := path.Rotate(-angle), path.Rotate(angle)
	chains := p.Transform(turn).Flatten(0.02)
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, c := range chains {
		for _, q := range c {
			lo, hi = math.Min(lo, float64(q.Y)), math.Max(hi, float64(q.Y))
		}
	}
	if !(hi-lo < 1e4) {
		return
	}
	for i := math.Ceil(lo / float64(pitch)); i*float64(pitch) < hi; i++ {
		y := length(i) * pitch
		var xs []float64
		for _, c := range chains {
			for j := range c {
				a, b := c[j], c[(j+1)%len(c)]
				if (a.Y <= y) != (b.Y <= y) {
					xs = append(xs, float64(a.X+(b.X-a.X)*(y-a.Y)/(b.Y-a.Y)))
				}
			}
		}
		slices.Sort(xs)
		for j := 0; j+1 < len(xs); j += 2 {
			d.broken(render.Thin, []path.Point{back.Apply(path.Pt(length(xs[j]), y)), back.Apply(path.Pt(length(xs[j+1]), y))})
		}
	}
}
