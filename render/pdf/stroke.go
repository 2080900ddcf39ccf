package pdf

import (
	"strconv"

	"github.com/jung-kurt/gofpdf"

	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
)

// draw writes a drawing's marks into a page or a form. Raw PDF coordinates
// have their origin at the lower left, as drawings do.
func draw(f *gofpdf.Fpdf, d render.Drawing) {
	var buf []byte
	if len(d.Fills) > 0 {
		for _, fill := range d.Fills {
			buf = appendNum(buf, 1-fill.Shade)
			buf = append(buf, " g "...)
			buf = appendPath(buf, fill.Path)
			buf = append(buf, "f*\n"...)
		}
		buf = append(buf, "0 g\n"...)
	}
	buf = append(buf, "0 G 1 J 1 j\n"...)
	for _, l := range render.Layers() {
		first := true
		for _, s := range d.Strokes {
			if s.Layer != l || len(s.Path) == 0 {
				continue
			}
			if first {
				first = false
				buf = appendPen(buf, l.Pen())
			}
			buf = appendPath(buf, s.Path)
			buf = append(buf, "S\n"...)
		}
	}
	f.RawWriteStr(string(buf))
	for _, t := range d.Texts {
		words(f, t, d.Height)
	}
}

func appendPen(b []byte, p render.Pen) []byte {
	b = appendNum(b, float64(p.Width)*points)
	b = append(b, " w ["...)
	for i, x := range p.Dash {
		if i > 0 {
			b = append(b, ' ')
		}
		b = appendNum(b, x*points)
	}
	return append(b, "] 0 d\n"...)
}

func appendPath(b []byte, p path.Path) []byte {
	for _, s := range p.Beziers() {
		switch s.Kind {
		case path.Move:
			b = append(appendPoint(b, s.To), "m\n"...)
		case path.Line:
			b = append(appendPoint(b, s.To), "l\n"...)
		case path.Curve:
			b = append(appendPoint(appendPoint(appendPoint(b, s.C1), s.C2), s.To), "c\n"...)
		case path.Close:
			b = append(b, "h\n"...)
		}
	}
	return b
}

func appendPoint(b []byte, p path.Point) []byte {
	b = appendNum(b, float64(p.X)*points)
	b = append(b, ' ')
	b = appendNum(b, float64(p.Y)*points)
	return append(b, ' ')
}

// appendNum writes x to four decimals without trailing zeros.
func appendNum(b []byte, x float64) []byte {
	start := len(b)
	b = strconv.AppendFloat(b, x, 'f', 4, 64)
	for b[len(b)-1] == '0' {
		b = b[:len(b)-1]
	}
	if b[len(b)-1] == '.' {
		b = b[:len(b)-1]
	}
	if string(b[start:]) == "-0" {
		return append(b[:start], '0')
	}
	return b
}

// words sets one line. The library measures y from the top.
func words(f *gofpdf.Fpdf, t render.Text, height measure.Length) {
	if t.Words == "" {
		return
	}
	style := ""
	if t.Bold {
		style = "B"
	}
	f.SetFont(family, style, float64(t.Size)/render.CapRatio(t.Bold)*points)
	w := float64(render.TextWidth(t.Words, t.Size, t.Bold))
	x, y := float64(t.At.X), float64(height-t.At.Y)
	shift := 0.0
	switch t.Anchor {
	case render.Middle:
		shift = -w / 2
	case render.Right:
		shift = -w
	}
	if t.Turn == 0 {
		f.Text(x+shift, y, t.Words)
		return
	}
	f.TransformBegin()
	f.TransformRotate(t.Turn.Degrees(), x, y)
	f.Text(x+shift, y, t.Words)
	f.TransformEnd()
}
