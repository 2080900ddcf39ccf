package sheets

import (
	"strconv"

	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
)

// scales are the reductions of ISO 5455 that layouts are drawn at.
var scales = []int{1, 2, 5, 10, 20, 50, 100, 200, 500, 1000}

// scaleFor is the largest scale at which w by h comes out no larger than the
// room; the smallest of all when none does.
func scaleFor(w, h, roomW, roomH length) int {
	for _, s := range scales {
		if w/length(s) <= roomW && h/length(s) <= roomH {
			return s
		}
	}
	return scales[len(scales)-1]
}

func scaleWords(s int) string { return "scale 1:" + strconv.Itoa(s) }

// arrowhead fills an arrow's head at its tip, pointing along (dx, dy), a unit
// step along an axis; places are counted from the top.
func (f *flow) arrowhead(x, y, dx, dy length) {
	const long, half length = 2, 0.45
	at := func(a, b length) path.Point { return path.Pt(x-dx*a+dy*b, f.h-(y-dy*a-dx*b)) }
	f.page().Fills = append(f.page().Fills, render.Fill{Path: path.Polygon(at(0, 0), at(long, half), at(long, -half)), Shade: 1})
}

// across dimensions a level distance at y, from what stands at from above it,
// with the words below the line.
func (f *flow) across(x1, x2, y, from length, words string) {
	f.line(x1, from+0.8, x1, y+1, render.Dimension)
	f.line(x2, from+0.8, x2, y+1, render.Dimension)
	f.line(x1, y, x2, y, render.Dimension)
	f.arrowhead(x1, y, -1, 0)
	f.arrowhead(x2, y, 1, 0)
	words = fit(f.safe(words), small, f.wide())
	half := width(words, small, false) / 2
	f.put(min(max((x1+x2)/2, marginL+half), f.w-marginR-half), y+1.4+small, words, small, false, render.Middle)
}

// down dimensions an upright distance at x, left of what stands at from, with
// the words turned, left of the line.
func (f *flow) down(y1, y2, x, from length, words string) {
	f.line(from-0.8, y1, x-1, y1, render.Dimension)
	f.line(from-0.8, y2, x-1, y2, render.Dimension)
	f.line(x, y1, x, y2, render.Dimension)
	f.arrowhead(x, y1, 0, -1)
	f.arrowhead(x, y2, 0, 1)
	words = f.safe(words)
	if words == "" {
		return
	}
	p := f.page()
	p.Texts = append(p.Texts, render.Text{Layer: render.Notes, At: path.Pt(x-1.2, f.h-(y1+y2)/2), Size: small,
		Anchor: render.Middle, Turn: 90 * measure.Degree, Words: words})
}

// dimLeft and dimFoot are the room a drawing leaves for its dimensions.
const (
	dimLeft length = 9
	dimFoot length = 10.5
)
