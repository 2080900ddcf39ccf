package render

import (
	"fmt"

	"silowright/geometry/measure"
	"silowright/geometry/path"
)

// TileWords are what a template's sheets say of it.
type TileWords struct {
	Title   string  // of the template
	Part    string  // what it marks, and how many
	Up      string  // which way is up
	Job     string  // name and revision
	Stretch Stretch // how the printer's error is corrected
}

// TileSheet draws all that is on a tile's sheet but the template's lines: its
// window, the template's words that are whole in it, match marks, rulers, label,
// neighbours, map and words.
func TileSheet(t Tiling, tile Tile, w TileWords) Drawing {
	d := Drawing{Title: w.Title + " " + tile.Name(), Width: t.Sheet.Width, Height: t.Sheet.Height}
	lo, hi := t.At, path.Pt(t.At.X+t.Window.X, t.At.Y+t.Window.Y)
	if len(t.Tiles)+t.Empty > 1 {
		d.Rect(Thin, lo, hi)
	}
	t.labels(&d, tile)
	for _, p := range t.Joins(tile) {
		c := t.place(tile, p)
		r := t.markRadius()
		d.Circle(Thin, c, r)
		d.Line(Thin, path.Pt(c.X-2*r, c.Y), path.Pt(c.X+2*r, c.Y))
		d.Line(Thin, path.Pt(c.X, c.Y-2*r), path.Pt(c.X, c.Y+2*r))
	}
	neighbours(&d, t, tile)
	// words start left of a window too narrow for them
	left := min(lo.X, max(t.Margin, t.Sheet.Width-t.Margin-wordsRoom))
	bottomRuler(&d, left, lo.Y-7, length(w.Stretch.across()))
	sideRuler(&d, lo.X-3, lo.Y, hi.Y-lo.Y-arrowRoom, length(w.Stretch.up()))
	tileWords(&d, t, tile, w, left, lo.Y-14)
	return d
}

// neighbours names the sheet beyond each join beside an arrow towards it: those
// left and above in the strip beside the window, those right and below in the
// strip under it, for the other two sides are the printer's margin.
func neighbours(d *Drawing, t Tiling, tile Tile) {
	lo, hi := t.At, path.Pt(t.At.X+t.Window.X, t.At.Y+t.Window.Y)
	arrow := func(at path.Point, dx, dy length) {
		tip := path.Pt(at.X+3*dx, at.Y+3*dy)
		d.Line(Thin, at, tip)
		d.PathOn(Thin, path.Polyline(path.Pt(tip.X-1.2*dx-0.8*dy, tip.Y-1.2*dy-0.8*dx), tip,
			path.Pt(tip.X-1.2*dx+0.8*dy, tip.Y-1.2*dy+0.8*dx)))
	}
	name := func(col, row int) string { return Tile{Col: col, Row: row}.Name() }
	if t.has(tile.Col, tile.Row-1) {
		arrow(path.Pt(lo.X-2, hi.Y-3.5), 0, 1)
		d.TurnedWords(path.Pt(lo.X-4.5, hi.Y-0.3), 2.5, Right, 90*measure.Degree, name(tile.Col, tile.Row-1))
	}
	if t.has(tile.Col-1, tile.Row) {
		arrow(path.Pt(lo.X-0.5, hi.Y-9.5), -1, 0)
		d.TurnedWords(path.Pt(lo.X-4.5, hi.Y-8), 2.5, Right, 90*measure.Degree, name(tile.Col-1, tile.Row))
	}
	if t.has(tile.Col+1, tile.Row) {
		arrow(path.Pt(hi.X-3.5, lo.Y-2.2), 1, 0)
		d.Words(path.Pt(hi.X-4.5, lo.Y-3.4), 2.5, Right, name(tile.Col+1, tile.Row))
	}
	if t.has(tile.Col, tile.Row+1) {
		arrow(path.Pt(hi.X-13.5, lo.Y-0.8), 0, -1)
		d.Words(path.Pt(hi.X-15, lo.Y-3.4), 2.5, Right, name(tile.Col, tile.Row+1))
	}
}

// bottomRuler is 50 mm and 2 in along the sheet's foot, once printed.
func bottomRuler(d *Drawing, x, y, k length) {
	d.Line(Thin, path.Pt(x, y), path.Pt(x+2*k*measure.Inch, y))
	for i := range 11 {
		at := x + length(i)*5*k
		d.Line(Thin, path.Pt(at, y), path.Pt(at, y+tickHeight(i)))
	}
	for i := range 3 {
		at := x + length(i)*k*measure.Inch
		d.Line(Thin, path.Pt(at, y), path.Pt(at, y-2))
	}
	d.Words(path.Pt(x+57*k, y-1.2), 2.5, Left, "above 50 mm, below 2 in")
}

// arrowRoom is the height kept free beside a window for the arrow to the left.
const arrowRoom length = 18

// sideRuler is 50 mm up the sheet's side, once printed; 20 or 10 where room is
// short, and none where even that is too long.
func sideRuler(d *Drawing, x, y, room, k length) {
	for _, long := range []length{50, 20, 10} {
		if long*k > room {
			continue
		}
		d.Line(Thin, path.Pt(x, y), path.Pt(x, y+long*k))
		for i := range 11 {
			at := y + length(i)*long/10*k
			d.Line(Thin, path.Pt(x, at), path.Pt(x-tickHeight(i), at))
		}
		d.TurnedWords(path.Pt(x-3, y+long*k/2), 2.5, Middle, 90*measure.Degree, long.Metric()+" mm")
		return
	}
}

// tickHeight is longer at the ends of ten marks.
func tickHeight(i int) length {
	if i%10 == 0 {
		return 2.2
	}
	return 1.2
}

// wordsRoom is the length a line of words under a window may want.
const wordsRoom length = 150

// tileWords sets the words under the window and the map of the sheets: what it
// is and at what size to print it first, for the last lines may want room.
func tileWords(d *Drawing, t Tiling, tile Tile, w TileWords, x, y length) {
	// a narrow window on a wide sheet leaves room beside it
	right := max(t.At.X+t.Window.X, min(t.Sheet.Width-t.Margin, x+wordsRoom))
	mapW := length(0)
	if n := len(t.Tiles) + t.Empty; n > 1 {
		mapW = sheetMap(d, t, tile, right, y+3)
	}
	lines := func(size length, bold bool, words string) {
		for _, l := range Wrap(words, size, bold, right-x-mapW-3) {
			if y < t.Margin+0.3*size {
				return
			}
			d.Texts = append(d.Texts, Text{Layer: Notes, At: path.Pt(x, y), Size: size, Bold: bold, Words: l})
			y -= size + 1.6
		}
	}
	head, joins := w.Title, ""
	if len(t.Tiles)+t.Empty > 1 {
		joins = "; lay each crossed ring on that of the next sheet"
		head = fmt.Sprintf("%s, sheet %s of %d", w.Title, tile.Name(), len(t.Tiles))
	}
	lines(3.5, true, head)
	note := "print at actual size, 100 %"
	if !w.Stretch.none() {
		note = w.Stretch.String()
	}
	up := w.Up
	if t.Turned {
		up += " (the pattern lies on its left side; its own words stand upright)"
	}
	lines(2.5, false, note+"; check a ruler before marking; "+w.Part+"; "+up+joins+"; "+w.Job)
}

// sheetMap draws the sheets as a small grid, this one dark, empty ones
// crossed, its right end at right. It returns the width it takes.
func sheetMap(d *Drawing, t Tiling, tile Tile, right, top length) length {
	cell := min(4.5, 15/length(t.Rows), 30/length(t.Cols))
	w := cell * length(t.Cols)
	for row := range t.Rows {
		for col := range t.Cols {
			a := path.Pt(right-w+length(col)*cell, top-length(row+1)*cell)
			b := path.Pt(a.X+cell, a.Y+cell)
			box := path.Rect(path.Box{Min: a, Max: b})
			if col == tile.Col && row == tile.Row {
				d.Shade(box, 0.7)
			}
			d.PathOn(Thin, box)
			if !t.has(col, row) {
				d.Line(Thin, a, b)
			}
		}
	}
	return w
}
