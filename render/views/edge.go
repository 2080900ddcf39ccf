package views

import (
	"silowright/geometry/path"
	"silowright/render"
)

// atEdge cuts off what reaches past the page, so that a silo of sizes that do
// not go together, such as a pipe silo wider than its drum, is drawn as far as
// the page goes, true to scale. What stands on the page is left as it is.
func (d *sheet) atEdge() {
	page := path.Box{Max: path.Pt(d.Width, d.Height)}
	inside := func(b path.Box) bool {
		return b.Min.X >= 0 && b.Min.Y >= 0 && b.Max.X <= d.Width && b.Max.Y <= d.Height
	}
	var strokes []render.Stroke
	for _, s := range d.Strokes {
		if inside(s.Path.Bounds()) {
			strokes = append(strokes, s)
			continue
		}
		for _, chain := range s.Path.Flatten(0.03) {
			for _, piece := range withinBox(chain, page) {
				strokes = append(strokes, render.Stroke{Layer: s.Layer, Path: path.Polyline(piece...)})
			}
		}
	}
	var fills []render.Fill
	for _, f := range d.Fills {
		if inside(f.Path.Bounds()) {
			fills = append(fills, f)
			continue
		}
		var left path.Path
		for _, chain := range f.Path.Flatten(0.03) {
			if ring := cutRingTo(chain, page); len(ring) > 2 {
				left = append(left, path.Polygon(ring...)...)
			}
		}
		if len(left) > 0 {
			fills = append(fills, render.Fill{Path: left, Shade: f.Shade})
		}
	}
	d.Strokes, d.Fills = strokes, fills
}

// withinBox is the parts of a chain of points that lie in a box.
func withinBox(chain []path.Point, b path.Box) (out [][]path.Point) {
	for i := 0; i+1 < len(chain); i++ {
		from, to, ok := segmentIn(chain[i], chain[i+1], b)
		if !ok {
			continue
		}
		if n := len(out); n > 0 && from == out[n-1][len(out[n-1])-1] {
			out[n-1] = append(out[n-1], to)
			continue
		}
		out = append(out, []path.Point{from, to})
	}
	return out
}

// segmentIn is the part of a segment that lies in a box.
func segmentIn(a, c path.Point, b path.Box) (from, to path.Point, ok bool) {
	t0, t1 := 0.0, 1.0
	for _, side := range [][2]length{{a.X - c.X, a.X - b.Min.X}, {c.X - a.X, b.Max.X - a.X}, {a.Y - c.Y, a.Y - b.Min.Y}, {c.Y - a.Y, b.Max.Y - a.Y}} {
		by, room := float64(side[0]), float64(side[1]) // by·t ≤ room
		switch {
		case by == 0 && room < 0:
			return a, c, false
		case by < 0:
			t0 = max(t0, room/by)
		case by > 0:
			t1 = min(t1, room/by)
		}
	}
	at := func(t float64) path.Point {
		switch t {
		case 0:
			return a
		case 1:
			return c
		}
		return path.Pt(a.X+(c.X-a.X)*length(t), a.Y+(c.Y-a.Y)*length(t))
	}
	return at(t0), at(t1), t0 < t1
}

// cutRingTo is a ring of points cut to a box, one side of it after another.
func cutRingTo(ring []path.Point, b path.Box) []path.Point {
	for _, in := range []func(path.Point) length{
		func(p path.Point) length { return p.X - b.Min.X }, func(p path.Point) length { return b.Max.X - p.X },
		func(p path.Point) length { return p.Y - b.Min.Y }, func(p path.Point) length { return b.Max.Y - p.Y },
	} {
		var out []path.Point
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			u, v := in(p), in(q)
			if u >= 0 {
				out = append(out, p)
			}
			if (u < 0) != (v < 0) {
				t := u / (u - v)
				out = append(out, path.Pt(p.X+(q.X-p.X)*t, p.Y+(q.Y-p.Y)*t))
			}
		}
		ring = out
	}
	return ring
}
