package sweep

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// offPage is how far the middle of a line may pass the page's edge: rounding.
// Half the line's own width may stand out besides.
const offPage = 0.06 // mm

var (
	pathWord = regexp.MustCompile(`[A-Za-z]|-?[0-9.]+(?:e-?[0-9]+)?`)
	turnRE   = regexp.MustCompile(`^rotate\((-?[0-9.]+) (-?[0-9.]+) (-?[0-9.]+)\)$`)
)

// point is a place on a page, mm.
type point struct{ x, y float64 }

// svgFaults reads an SVG file as SVG 1.1 says and returns what is wrong with
// it: text that is not well-formed, an element or command that this program
// does not write, marks off the page.
func svgFaults(data []byte) []string {
	var out []string
	bad := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	d := xml.NewDecoder(bytes.NewReader(data))
	var w, h float64
	marks := 0
	within := func(what string, p point) {
		if marks++; !(p.x >= -offPage && p.y >= -offPage && p.x <= w+offPage && p.y <= h+offPage) {
			bad("%s at (%.3f, %.3f) is off the page of %.3f × %.3f", what, p.x, p.y, w, h)
		}
	}
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return append(out, err.Error())
		}
		e, ok := tok.(xml.StartElement)
		if !ok {
			continue
		}
		at := map[string]string{}
		for _, a := range e.Attr {
			at[a.Name.Local] = a.Value
		}
		num := func(name string) float64 {
			x, err := strconv.ParseFloat(strings.TrimSuffix(at[name], "mm"), 64)
			if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
				bad("<%s %s=%q> is no number", e.Name.Local, name, at[name])
			}
			return x
		}
		switch e.Name.Local {
		case "svg":
			w, h = num("width"), num("height")
			if at["viewBox"] != fmt.Sprintf("0 0 %s %s", strings.TrimSuffix(at["width"], "mm"), strings.TrimSuffix(at["height"], "mm")) {
				var v [4]float64
				for i, s := range strings.Fields(at["viewBox"]) {
					v[i%4], _ = strconv.ParseFloat(s, 64)
				}
				if math.Abs(v[0])+math.Abs(v[1])+math.Abs(v[2]-w)+math.Abs(v[3]-h) > 1e-3 {
					bad("a user unit is not a millimetre: width %s, height %s, viewBox %s", at["width"], at["height"], at["viewBox"])
				}
			}
		case "title", "desc", "g":
			if at["transform"] != "" {
				bad("<g> is moved")
			}
		case "path":
			pts, err := outline(at["d"])
			if err != nil {
				bad("path: %v", err)
			}
			for _, p := range pts {
				within("a line", p)
			}
		case "text":
			for _, p := range wordsBox(num("x"), num("y"), num("textLength"), num("font-size"), at["text-anchor"], at["transform"]) {
				within("a word", p)
			}
		default:
			bad("<%s> is not written here", e.Name.Local)
		}
	}
	if marks == 0 {
		bad("the page is empty")
	}
	return out
}

// wordsBox is the box round words from their base line to their capitals' tops,
// which are 0.7 of the font's size.
func wordsBox(x, y, length, size float64, anchor, turned string) []point {
	switch anchor {
	case "middle":
		x -= length / 2
	case "end":
		x -= length
	}
	box := []point{{x, y}, {x + length, y}, {x, y - 0.7*size}, {x + length, y - 0.7*size}}
	if turned == "" {
		return box
	}
	m := turnRE.FindStringSubmatch(turned)
	if m == nil {
		return []point{{math.NaN(), 0}}
	}
	var v [3]float64
	for i := range v {
		v[i], _ = strconv.ParseFloat(m[i+1], 64)
	}
	sin, cos := math.Sincos(v[0] * math.Pi / 180)
	for i, p := range box {
		dx, dy := p.x-v[1], p.y-v[2]
		box[i] = point{v[1] + dx*cos - dy*sin, v[2] + dx*sin + dy*cos}
	}
	return box
}

// outline is points along a path: the ends of its lines, the control points of
// its curves, which bound them, and arcs in steps.
func outline(d string) ([]point, error) {
	list := pathWord.FindAllString(d, -1)
	if strings.Join(list, "") != strings.NewReplacer(" ", "", ",", "").Replace(d) {
		return nil, fmt.Errorf("%.60q holds what is no path", d)
	}
	var out []point
	var at point
	for len(list) > 0 {
		cmd := list[0]
		need, ok := map[string]int{"M": 2, "L": 2, "C": 6, "A": 7, "Z": 0}[cmd]
		if !ok || len(list) < 1+need || len(out) == 0 && cmd != "M" {
			return out, fmt.Errorf("%q in %.60q", cmd, d)
		}
		v := make([]float64, need)
		for i := range v {
			var err error
			if v[i], err = strconv.ParseFloat(list[1+i], 64); err != nil {
				return out, err
			}
		}
		list = list[1+need:]
		switch cmd {
		case "A":
			out = append(out, arc(at, v)...)
		case "C":
			out = append(out, point{v[0], v[1]}, point{v[2], v[3]})
		}
		if need > 0 {
			at = point{v[need-2], v[need-1]}
			out = append(out, at)
		}
	}
	return out, nil
}

// arc is points along a circular arc by its end points (SVG 1.1, F.6.5).
func arc(from point, v []float64) []point {
	r, to := v[0], point{v[5], v[6]}
	hx, hy := (from.x-to.x)/2, (from.y-to.y)/2
	half := math.Hypot(hx, hy)
	if half == 0 || r == 0 {
		return nil
	}
	r = math.Max(r, half) // F.6.6: scaled up until there is a circle
	k := math.Sqrt(math.Max(0, r*r-half*half)) / half
	if (v[3] != 0) == (v[4] != 0) {
		k = -k
	}
	c := point{k*hy + (from.x+to.x)/2, -k*hx + (from.y+to.y)/2}
	a, b := math.Atan2(from.y-c.y, from.x-c.x), math.Atan2(to.y-c.y, to.x-c.x)
	switch {
	case v[4] != 0 && b < a:
		b += 2 * math.Pi
	case v[4] == 0 && b > a:
		b -= 2 * math.Pi
	}
	var out []point
	for i := 1; i < 12; i++ {
		sin, cos := math.Sincos(a + (b-a)*float64(i)/12)
		out = append(out, point{c.x + r*cos, c.y + r*sin})
	}
	return out
}
