package render

import (
	"cmp"
	"math"
	"slices"

	"silowright/geometry/measure"
	"silowright/geometry/path"
)

// seeker looks for places for words on the sheets of a tiling.
type seeker struct {
	t     Tiling
	lines []edge
	marks [][4]path.Point
}

// edge is a straight piece of a line of the drawing.
type edge struct {
	a, b path.Point
	box  path.Box
	cut  bool // or a hole to drill: words do not change over to its other side
}

func (t Tiling) seeker() *seeker {
	s := &seeker{t: t, marks: t.markRooms()}
	for i, q := range t.whole.Strokes {
		for _, chain := range t.traces[i].chains {
			for i := 1; i < len(chain); i++ {
				a, b := chain[i-1], chain[i]
				box := path.Box{Min: path.Pt(min(a.X, b.X), min(a.Y, b.Y)), Max: path.Pt(max(a.X, b.X), max(a.Y, b.Y))}
				s.lines = append(s.lines, edge{a, b, box, q.Layer == Cut || q.Layer == Drill})
			}
		}
	}
	return s
}

// care is what a place for words is to keep clear of.
type care struct {
	marks, lines, cuts bool // under the words
	pass, cross        bool // on the way there: any line, a cut line
}

// cares are tried in turn: at first all is kept clear of.
var cares = []care{
	{marks: true, lines: true, cuts: true, pass: true, cross: true},
	{marks: true, lines: true, cuts: true, cross: true},
	{lines: true, cuts: true, cross: true},
	{cuts: true, cross: true},
	{},
}

// settled is a block at the nearest place where a sheet shows all of it, broken
// into shorter lines where it must be, and smaller where even that is too much.
func (s *seeker) settled(block, others []Text) []Text {
	for {
		var tries []try
		for _, share := range []length{1, 0.6, 0.35} {
			lines := broken(block, share*s.room(block[0]))
			if n := len(tries); n == 0 || len(lines) > len(tries[n-1].lines) {
				tries = append(tries, try{lines, s.ways(lines)})
			}
		}
		for _, c := range cares {
			for _, x := range tries {
				if by, ok := s.place(x, others, c); ok {
					return shifted(x.lines, by)
				}
			}
		}
		block = slices.Clone(block)
		for i, x := range block {
			up := path.Pt((block[0].At.X-x.At.X)/5, (block[0].At.Y-x.At.Y)/5)
			block[i].At, block[i].Size = path.Pt(x.At.X+up.X, x.At.Y+up.Y), x.Size*4/5
		}
	}
}

// try is a block broken in one way, and how far it may be moved, nearest first.
type try struct {
	lines []Text
	ways  []path.Point
}

// room is the length a line of words may have on a sheet.
func (s *seeker) room(x Text) length {
	in := inner(s.t.Tiles[0], movedRim)
	w, h := in.Max.X-in.Min.X, in.Max.Y-in.Min.Y
	switch sin, cos := math.Sincos(float64(x.Turn)); {
	case math.Abs(sin) < 1e-9:
		return w
	case math.Abs(cos) < 1e-9:
		return h
	}
	return min(w, h)
}

func shifted(block []Text, by path.Point) []Text {
	out := slices.Clone(block)
	for i, x := range out {
		out[i].At = path.Pt(x.At.X+by.X, x.At.Y+by.Y)
	}
	return out
}

// How places are looked for: this far apart, on so many of the nearest sheets,
// so far from the nearest place on each. A line of words keeps its height where
// it can: a step up or down counts as so many aside.
const (
	placeStep   length = 2.5
	placeSheets        = 4
	placeReach  length = 80
	upOrDown    length = 3
	labelAround length = 0.8 // kept free round words
)

// ways are the moves that put a block whole on a sheet, the shortest first.
func (s *seeker) ways(block []Text) []path.Point {
	box := boxOf(block...)
	cost := func(by path.Point) length {
		a := block[0].along(by)
		return a.X.Abs() + upOrDown*a.Y.Abs()
	}
	var rooms []path.Box // how far the block may be moved on each sheet
	for _, tile := range s.t.Tiles {
		in := inner(tile, movedRim)
		r := path.Box{Min: path.Pt(in.Min.X-box.Min.X, in.Min.Y-box.Min.Y), Max: path.Pt(in.Max.X-box.Max.X, in.Max.Y-box.Max.Y)}
		if r.Min.X <= r.Max.X && r.Min.Y <= r.Max.Y {
			rooms = append(rooms, r)
		}
	}
	least := func(r path.Box) path.Point {
		return path.Pt(min(max(0, r.Min.X), r.Max.X), min(max(0, r.Min.Y), r.Max.Y))
	}
	slices.SortStableFunc(rooms, func(a, b path.Box) int { return cmp.Compare(cost(least(a)), cost(least(b))) })
	var ways []path.Point
	for _, r := range rooms[:min(len(rooms), placeSheets)] {
		from := least(r)
		for _, x := range steps(from.X, r.Min.X, r.Max.X) {
			for _, y := range steps(from.Y, r.Min.Y, r.Max.Y) {
				ways = append(ways, path.Pt(x, y))
			}
		}
	}
	slices.SortStableFunc(ways, func(a, b path.Point) int { return cmp.Compare(cost(a), cost(b)) })
	return ways
}

// place is how far a block is to be moved.
func (s *seeker) place(x try, others []Text, c care) (path.Point, bool) {
	box := boxOf(x.lines...)
	centre := path.Pt((box.Min.X+box.Max.X)/2, (box.Min.Y+box.Max.Y)/2)
	for _, by := range x.ways {
		if s.free(shifted(x.lines, by), others, c) && s.open(centre, by, c) {
			return by, true
		}
	}
	return path.Point{}, false
}

// steps are places from at on both ways, within lo and hi.
func steps(at, lo, hi length) []length {
	out := []length{at}
	for x := at - placeStep; x >= max(lo, at-placeReach); x -= placeStep {
		out = append(out, x)
	}
	for x := at + placeStep; x <= min(hi, at+placeReach); x += placeStep {
		out = append(out, x)
	}
	return out
}

// free reports whether nothing to keep clear of lies under words.
func (s *seeker) free(block, others []Text, c care) bool {
	if c == (care{}) {
		return true
	}
	for _, x := range block {
		q := around(x)
		for _, o := range others {
			if boxesMeet(q, o.Corners()) {
				return false
			}
		}
		for _, m := range s.marks {
			if c.marks && boxesMeet(q, m) {
				return false
			}
		}
		if s.runs(q, c.lines, c.cuts) {
			return false
		}
	}
	return true
}

// around are the corners of the box round words and what is kept free.
func around(x Text) [4]path.Point {
	q := x.Corners()
	ex := path.Rotate(x.Turn).Apply(path.Pt(labelAround, labelAround))
	ey := path.Rotate(x.Turn).Apply(path.Pt(-labelAround, labelAround))
	return [4]path.Point{
		path.Pt(q[0].X-ex.X, q[0].Y-ex.Y), path.Pt(q[1].X-ey.X, q[1].Y-ey.Y),
		path.Pt(q[2].X+ex.X, q[2].Y+ex.Y), path.Pt(q[3].X+ey.X, q[3].Y+ey.Y),
	}
}

// open reports whether the straight way from p is not barred.
func (s *seeker) open(p, by path.Point, c care) bool {
	long := length(math.Hypot(float64(by.X), float64(by.Y)))
	if long == 0 || !c.cross {
		return true
	}
	turn := measure.Angle(math.Atan2(float64(by.Y), float64(by.X)))
	m := path.Rotate(turn).Then(path.Translate(p.X, p.Y))
	const w length = 0.01 // half of what is taken for the way's width
	q := [4]path.Point{m.Apply(path.Pt(0, -w)), m.Apply(path.Pt(long, -w)), m.Apply(path.Pt(long, w)), m.Apply(path.Pt(0, w))}
	return !s.runs(q, c.pass, true)
}

// runs reports whether a line, or a cut line, runs through a box.
func (s *seeker) runs(q [4]path.Point, lines, cuts bool) bool {
	for _, e := range s.lines {
		if !(lines || cuts && e.cut) {
			continue
		}
		if !apart(e.box, q) && segmentMeets(e.a, e.b, q) {
			return true
		}
	}
	return false
}
