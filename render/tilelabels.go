package render

import (
	"slices"

	"silowright/geometry/path"
)

// A drawing's lines are cut at the edge of a sheet, its words never: a word is
// set on each sheet that shows it whole and on no other. What would be whole on
// none is moved to the nearest place where it is, its block of lines with it.

// What is kept free between words and the edge of a window, where they stand by
// themselves and where they are moved to.
const (
	labelRim length = 1
	movedRim length = 2.5
)

// Lines is the drawing as the sheets show it, without its words, which
// TileSheet sets.
func (t Tiling) Lines() Drawing {
	d := t.whole
	d.Texts = nil
	return d
}

// labels sets the drawing's words on a tile's sheet.
func (t Tiling) labels(d *Drawing, tile Tile) {
	for _, x := range t.words {
		if t.shows(tile, x) {
			x.At = t.place(tile, x.At)
			d.Texts = append(d.Texts, x)
		}
	}
}

// inner is a window without its rim, which leaves half of a narrow one.
func inner(tile Tile, rim length) path.Box {
	b := tile.Part
	x, y := min(rim, (b.Max.X-b.Min.X)/4), min(rim, (b.Max.Y-b.Min.Y)/4)
	return path.Box{Min: path.Pt(b.Min.X+x, b.Min.Y+y), Max: path.Pt(b.Max.X-x, b.Max.Y-y)}
}

// shows reports whether a tile shows words whole.
func (t Tiling) shows(tile Tile, x Text) bool {
	rim := labelRim
	if t.Cols*t.Rows == 1 {
		rim = -pageSlack // the drawing's own edge, and no line along it
	}
	return holds(inner(tile, rim), boxOf(x))
}

// holds reports whether a box lies within another, but for rounding.
func holds(b, in path.Box) bool {
	const slack = 1e-6
	return in.Min.X >= b.Min.X-slack && in.Min.Y >= b.Min.Y-slack && in.Max.X <= b.Max.X+slack && in.Max.Y <= b.Max.Y+slack
}

// boxOf is the upright box round words.
func boxOf(texts ...Text) path.Box {
	var b path.Box
	for i, x := range texts {
		for j, p := range x.Corners() {
			if i+j == 0 {
				b = path.Box{Min: p, Max: p}
			}
			b.Min = path.Pt(min(b.Min.X, p.X), min(b.Min.Y, p.Y))
			b.Max = path.Pt(max(b.Max.X, p.X), max(b.Max.Y, p.Y))
		}
	}
	return b
}

// settle finds every word a place: its own where a sheet shows it whole and the
// match marks leave it free.
func (t *Tiling) settle() {
	if t.Cols*t.Rows == 1 || len(t.whole.Texts) == 0 {
		t.words = t.whole.Texts
		return
	}
	kept, lost := parted(blocks(t.whole.Texts), t.readable)
	for more := lost; ; {
		t.words = slices.Concat(kept...)
		marks := t.markRooms()
		kept, more = parted(kept, func(b []Text) bool { return !marked(b, marks) })
		if len(more) == 0 {
			break
		}
		lost = append(lost, more...)
	}
	if len(lost) == 0 {
		return
	}
	s := t.seeker()
	for _, block := range lost {
		t.words = append(t.words, s.settled(block, t.words)...)
	}
}

// parted are the blocks that are well and those that are not.
func parted(blocks [][]Text, well func([]Text) bool) (yes, no [][]Text) {
	for _, b := range blocks {
		if well(b) {
			yes = append(yes, b)
		} else {
			no = append(no, b)
		}
	}
	return yes, no
}

// marked reports whether a match mark runs into a block.
func marked(block []Text, marks [][4]path.Point) bool {
	for _, x := range block {
		q := x.Corners()
		if slices.ContainsFunc(marks, func(m [4]path.Point) bool { return boxesMeet(q, m) }) {
			return true
		}
	}
	return false
}

// readable reports whether each line of words is whole on a sheet.
func (t Tiling) readable(block []Text) bool {
	for _, x := range block {
		if !slices.ContainsFunc(t.Tiles, func(tile Tile) bool { return t.shows(tile, x) }) {
			return false
		}
	}
	return true
}

// along turns a point into its place along a line of words and above it.
func (t Text) along(p path.Point) path.Point { return path.Rotate(-t.Turn).Apply(p) }

// blocks are the lines of words that stand under one another and are read as
// one, from the top.
func blocks(texts []Text) [][]Text {
	var out [][]Text
	for _, x := range texts {
		of := slices.IndexFunc(out, func(b []Text) bool {
			above := b[len(b)-1]
			a, at := x.along(above.At), x.along(x.At)
			down := a.Y - at.Y
			return x.Turn == above.Turn && x.Anchor == above.Anchor && (a.X-at.X).Abs() < 0.01 && down > 0 && down <= 2.5*max(x.Size, above.Size)
		})
		if of < 0 {
			out = append(out, []Text{x})
		} else {
			out[of] = append(out[of], x)
		}
	}
	return out
}

// broken is a block with its lines broken to room.
func broken(block []Text, room length) []Text {
	var out []Text
	fallen := length(0)
	for _, x := range block {
		lines := []string{x.Words}
		if TextWidth(x.Words, x.Size, x.Bold) > room {
			lines = Wrap(x.Words, x.Size, x.Bold, room)
		}
		for i, words := range lines {
			if i > 0 {
				fallen += 1.5 * x.Size
			}
			y := x
			y.Words = words
			down := path.Rotate(x.Turn).Apply(path.Pt(0, -fallen))
			y.At = path.Pt(x.At.X+down.X, x.At.Y+down.Y)
			out = append(out, y)
		}
	}
	return out
}
