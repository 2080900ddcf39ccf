package charts

import (
	"math"
	"slices"

	"silowright/geometry/path"
	"silowright/render"
)

// Bar is one upright bar: the name below it and how tall it stands.
type Bar struct {
	Name  string
	Value float64
	Mark  bool // named below even where names are thinned, and set darker
}

// Bars is a chart of a bar for each of a number of like things, from 0 up, with
// a dashed line at a level such as their mean.
type Bars struct {
	Width, Height length // of the whole drawing, at least 60 × 35 mm
	Across        string // what stands side by side
	Up            Axis
	Bars          []Bar
	Line          float64 // value of the level line; 0 none
	LineSays      string
}

// Draw makes the drawing. A value that is not finite, below 0 or over 10¹⁵
// stands as an empty place.
func (b Bars) Draw() render.Drawing {
	d := render.Drawing{Title: "bars", Width: max(b.Width, 60), Height: max(b.Height, 35)}
	top := 0.0
	level := b.Line > 0 && b.Line <= largest
	if level {
		top = b.Line
	}
	for _, x := range b.Bars {
		if x.Value >= 0 && x.Value <= largest {
			top = math.Max(top, x.Value)
		}
	}
	y := ruler{hi: topOf(top * 1.02), from: 2*line + 1, to: d.Height - 2*line - 0.5}
	left, right := y.upWide()+0.5, d.Width-3
	if b.Up.double() {
		right = d.Width - y.inSecond(b.Up.Factor).upWide() - 0.5
	}
	d.Line(render.Outline, path.Pt(left, y.from), path.Pt(right, y.from))
	y.up(&d, left, -1)
	d.Line(render.Thin, path.Pt(left, y.from), path.Pt(left, y.to))
	title := d.Height - letters - 0.4
	d.Words(path.Pt(0, title), letters, render.Left, fit(b.Up.Says, d.Width*0.3))
	if b.Up.double() {
		y.inSecond(b.Up.Factor).up(&d, right, 1)
		d.Line(render.Thin, path.Pt(right, y.from), path.Pt(right, y.to))
		d.Words(path.Pt(d.Width, title), letters, render.Right, fit(b.Up.Second, d.Width*0.3))
	}
	d.Words(path.Pt((left+right)/2, 0.8), letters, render.Middle, fit(b.Across, (right-left)*0.96))
	b.bars(&d, y, left, right)
	if level {
		at := y.at(b.Line)
		d.Line(render.Hidden, path.Pt(left, at), path.Pt(right, at))
		d.Words(path.Pt(d.Width/2, title), letters, render.Middle, fit(b.LineSays, d.Width*0.36))
	}
	return d
}

// bars fills the bars and names them: the marked first, then as many of the
// others as have room.
func (b Bars) bars(d *render.Drawing, y ruler, left, right length) {
	n := len(b.Bars)
	if n == 0 {
		return
	}
	pitch := (right - left) / length(n)
	middle := func(i int) length { return left + pitch*(length(i)+0.5) }
	half := min(pitch*0.36, 5)
	var taken [][2]length
	name := func(i int) {
		w := render.TextWidth(b.Bars[i].Name, letters, false)/2 + 0.9
		x := middle(i)
		if b.Bars[i].Name == "" || x-w < 0 || x+w > d.Width {
			return
		}
		for _, t := range taken {
			if x-w < t[1] && t[0] < x+w {
				return
			}
		}
		taken = append(taken, [2]length{x - w, x + w})
		d.Words(path.Pt(x, y.from-2.2-letters), letters, render.Middle, b.Bars[i].Name)
	}
	for i, x := range b.Bars {
		if x.Value > 0 && x.Value <= largest {
			shade := 0.35
			if x.Mark {
				shade = 0.65
			}
			at := path.Box{Min: path.Pt(middle(i)-half, y.from), Max: path.Pt(middle(i)+half, y.at(x.Value))}
			d.Shade(path.Rect(at), shade)
		}
		if x.Mark {
			name(i)
		}
	}
	most := max(1, int((right-left)/9))
	step := max(1, int(math.Round(nice(float64(n)/float64(most)))))
	order := []int{0, n - 1}
	for i := step - 1; i < n; i += step {
		order = append(order, i)
	}
	for _, i := range slices.Compact(order) {
		name(i)
	}
}
