package render

import (
	"math"

	"silowright/geometry/path"
)

// Joins are the places, in the drawing, of the match marks on a tile: three
// along the middle of every overlap with a neighbour that is printed. The
// neighbour has its marks at the same places.
func (t Tiling) Joins(tile Tile) []path.Point {
	var out []path.Point
	b := tile.Part
	half := t.Overlap / 2
	upright := func(x length) {
		for _, k := range marksAt {
			out = append(out, t.clear(path.Pt(x, b.Min.Y+k*t.Window.Y), path.Pt(0, t.Window.Y)))
		}
	}
	level := func(y length) {
		for _, k := range marksAt {
			out = append(out, t.clear(path.Pt(b.Min.X+k*t.Window.X, y), path.Pt(t.Window.X, 0)))
		}
	}
	if t.has(tile.Col-1, tile.Row) {
		upright(b.Min.X + half)
	}
	if t.has(tile.Col+1, tile.Row) {
		upright(b.Max.X - half)
	}
	if t.has(tile.Col, tile.Row-1) {
		level(b.Max.Y - half)
	}
	if t.has(tile.Col, tile.Row+1) {
		level(b.Min.Y + half)
	}
	return out
}

// marksAt is where match marks stand along a join, and markShift by how much
// of the join one is moved at a time to stand clear.
var marksAt = [3]length{0.2, 0.5, 0.8}

const (
	markShift length = 0.02
	maxShifts int    = 6
)

// minOverlap is the least overlap of sheets, to hold a match mark.
const minOverlap length = 4

// markRadius is the radius of a match mark's ring. Its cross is twice as large
// and just inside the window.
func (t Tiling) markRadius() length {
	return min(2.5, t.Overlap/4, marksAt[0]/2*min(t.Window.X, t.Window.Y))
}

// clear moves a match mark from p along the join until it stands clear of the
// drawing's lines and words, so that it is not taken for a part of them. Where
// no place is free of lines one free of cut lines and words has to do, or of
// words alone.
func (t Tiling) clear(p, along path.Point) path.Point {
	best, least := p, math.MaxInt
	long := 2 * t.markRadius() / (along.X + along.Y) // of the mark, in lengths of the join
	for i := range 2*maxShifts + 1 {
		k := length((i+1)/2) * markShift
		if i%2 == 1 {
			k = -k
		}
		if k.Abs() > marksAt[0]-long {
			break // over the end of the join
		}
		at := path.Pt(p.X+k*along.X, p.Y+k*along.Y)
		if n := t.clutter(at); n < least {
			best, least = at, n
		}
	}
	return best
}

// How much each thing in a match mark's way counts: any words outweigh all cut
// lines, a cut line outweighs all others.
const (
	onLine = 1
	onCut  = 1000
	onWord = 1000 * onCut
)

// clutter is how much stands in the way of a match mark at p, 0 where it is free.
func (t Tiling) clutter(p path.Point) int {
	q := t.markRoom(p)
	sum := 0
	for _, x := range t.words {
		if boxesMeet(x.Corners(), q) {
			sum += onWord
		}
	}
	for i, x := range t.traces {
		if !x.meets(q) {
			continue
		}
		if l := t.whole.Strokes[i].Layer; l == Cut || l == Drill {
			sum += onCut
		} else {
			sum += onLine
		}
	}
	return sum
}

// markRoom is the room of a match mark at p.
func (t Tiling) markRoom(p path.Point) [4]path.Point {
	r := 2*t.markRadius() + 0.5
	return corners(path.Box{Min: path.Pt(p.X-r, p.Y-r), Max: path.Pt(p.X+r, p.Y+r)})
}

// markRooms are the rooms of all match marks.
func (t Tiling) markRooms() [][4]path.Point {
	var out [][4]path.Point
	for _, tile := range t.Tiles {
		for _, p := range t.Joins(tile) {
			out = append(out, t.markRoom(p))
		}
	}
	return out
}
