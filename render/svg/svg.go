// Package svg writes a drawing as an SVG file at true size: one user unit is
// one millimetre, width and height are given in mm, lines stand in one group a
// layer with a plain id. Words stay words; there are no scripts, styles sheets
// or links, so a laser or router shop can read it.
package svg

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	svgo "github.com/ajstarks/svgo/float"

	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
)

// decimals is how finely coordinates are written: a ten-thousandth of a mm.
const decimals = 4

// Write writes d. It fails on a drawing that render.Check refuses.
func Write(w io.Writer, d render.Drawing) error {
	if err := render.Check(d); err != nil {
		return err
	}
	buf := bufio.NewWriter(w)
	c := svgo.New(buf)
	c.Decimals = decimals
	width, height := settled(float64(d.Width)), settled(float64(d.Height))
	c.StartviewUnit(width, height, "mm", 0, 0, width, height)
	c.Title(d.Title)
	if d.Description != "" {
		c.Desc(d.Description)
	}
	h := float64(d.Height)
	if len(d.Fills) > 0 {
		c.Group(`id="fill"`, `stroke="none"`)
		for _, f := range d.Fills {
			grey := strconv.Itoa(int(math.Round(255 * (1 - f.Shade))))
			c.Path(data(f.Path, h), `fill="rgb(`+grey+","+grey+","+grey+`)"`, `fill-rule="evenodd"`)
		}
		c.Gend()
	}
	for _, l := range render.Layers() {
		group(c, d, l, h)
	}
	c.End()
	return buf.Flush()
}

// group writes one layer, if it holds anything.
func group(c *svgo.SVG, d render.Drawing, l render.Layer, h float64) {
	open := false
	begin := func() {
		if open {
			return
		}
		open = true
		pen := l.Pen()
		attrs := []string{`id="` + l.Group() + `"`, `fill="none"`, `stroke="black"`,
			`stroke-width="` + num(float64(pen.Width)) + `"`, `stroke-linecap="round"`, `stroke-linejoin="round"`}
		if pen.Dash != nil {
			var on []string
			for _, x := range pen.Dash {
				on = append(on, num(x))
			}
			attrs = append(attrs, `stroke-dasharray="`+strings.Join(on, " ")+`"`)
		}
		c.Group(attrs...)
	}
	for _, s := range d.Strokes {
		if s.Layer == l && len(s.Path) > 0 {
			begin()
			c.Path(data(s.Path, h))
		}
	}
	for _, t := range d.Texts {
		if t.Layer == l && t.Words != "" {
			begin()
			words(c, t, h)
		}
	}
	if open {
		c.Gend()
	}
}

func words(c *svgo.SVG, t render.Text, h float64) {
	anchor := map[render.Anchor]string{render.Left: "start", render.Middle: "middle", render.Right: "end"}[t.Anchor]
	attrs := []string{
		`font-family="sans-serif"`, `fill="black"`, `stroke="none"`,
		`font-size="` + num(float64(t.Size)/render.CapRatio(t.Bold)) + `"`,
		`text-anchor="` + anchor + `"`,
		`textLength="` + num(float64(render.TextWidth(t.Words, t.Size, t.Bold))) + `"`,
		`lengthAdjust="spacingAndGlyphs"`,
	}
	if t.Bold {
		attrs = append(attrs, `font-weight="bold"`)
	}
	x, y := float64(t.At.X), h-float64(t.At.Y)
	if t.Turn != 0 {
		attrs = append(attrs, fmt.Sprintf(`transform="rotate(%s %s %s)"`, num(-t.Turn.Degrees()), num(x), num(y)))
	}
	c.Text(settled(x), settled(y), t.Words, attrs...)
}

// data writes a path's d attribute with y turned over; arcs stay arcs, in
// pieces of at most a third of a turn.
func data(p path.Path, h float64) string {
	var b strings.Builder
	at := func(q path.Point) string { return num(float64(q.X)) + " " + num(h-float64(q.Y)) }
	var from path.Point
	for _, s := range p {
		switch s.Kind {
		case path.Move:
			b.WriteString("M" + at(s.To))
		case path.Line:
			b.WriteString("L" + at(s.To))
		case path.Curve:
			b.WriteString("C" + at(s.C1) + " " + at(s.C2) + " " + at(s.To))
		case path.Close:
			b.WriteString("Z")
		case path.Arc:
			r := num(math.Hypot(float64(from.X-s.Centre.X), float64(from.Y-s.Centre.Y)))
			n := int(math.Max(1, math.Ceil(math.Abs(float64(s.Sweep))/(2*math.Pi/3)-1e-9)))
			sweep := "0" // y is turned over: counter-clockwise here is sweep 0
			if s.Sweep < 0 {
				sweep = "1"
			}
			var piece path.Path
			piece.MoveTo(from)
			for range n {
				piece.ArcTo(s.Centre, s.Sweep/measure.Angle(n))
			}
			piece[len(piece)-1].To = s.To
			for _, q := range piece[1:] {
				b.WriteString("A" + r + " " + r + " 0 0 " + sweep + " " + at(q.To))
			}
		}
		from = s.To
	}
	return b.String()
}

// num writes a number without trailing zeros.
func num(x float64) string {
	p := math.Pow(10, decimals)
	x = math.Round(settled(x)*p) / p
	if x == 0 {
		x = 0
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// settled is x to a picometre. Multiples of 1/32 in lie half-way between two
// numbers that can be written, and the last bit of a sum, which processors
// round in their own ways, must not tell which it becomes.
func settled(x float64) float64 { return math.Round(x*1e9) / 1e9 }
