package charts

import (
	"silowright/geometry/path"
)

// finest is the narrowest step drawn on its own, mm: about a pen's width.
// Narrower ones are drawn by their lowest and highest value.
const finest length = 0.35

// line is the stepped line, broken where it is above the field.
func (f field) line(pts []Point) []path.Path {
	pts = f.thinned(pts)
	var out []path.Path
	var chain []path.Point
	end := func() {
		if len(chain) > 1 {
			out = append(out, path.Polyline(chain...))
		}
		chain = nil
	}
	add := func(q path.Point) {
		if n := len(chain); n > 0 && chain[n-1] == q {
			return
		}
		chain = append(chain, q)
	}
	for i, p := range pts {
		from, to := f.lo, f.hi
		if i > 0 {
			from = float64(pts[i-1].N+p.N) / 2
		}
		if i+1 < len(pts) {
			to = float64(p.N+pts[i+1].N) / 2
		}
		if p.Value > f.top {
			if len(chain) > 0 { // up to the field's edge
				add(f.at(from, f.top))
			}
			end()
			continue
		}
		if len(chain) == 0 && i > 0 { // down from the field's edge
			add(f.at(from, f.top))
		}
		add(f.at(from, p.Value))
		add(f.at(to, p.Value))
	}
	end()
	return out
}

// thinned keeps, of points closer than a pen's width, the first, the lowest,
// the highest and the last.
func (f field) thinned(pts []Point) []Point {
	columns := int((f.box.Max.X - f.box.Min.X) / finest)
	if len(pts) <= columns {
		return pts
	}
	column := func(p Point) int { return int((f.at(float64(p.N), f.base).X - f.box.Min.X) / finest) }
	var out []Point
	for i := 0; i < len(pts); {
		j, low, high := i, i, i
		for ; j < len(pts) && column(pts[j]) == column(pts[i]); j++ {
			if pts[j].Value < pts[low].Value {
				low = j
			}
			if pts[j].Value > pts[high].Value {
				high = j
			}
		}
		for k := i; k < j; k++ {
			if k == i || k == low || k == high || k == j-1 {
				out = append(out, pts[k])
			}
		}
		i = j
	}
	return out
}
