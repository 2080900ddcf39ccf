package render

import (
	"fmt"

	"silowright/geometry/measure"
	"silowright/geometry/path"
)

// TileWords are what a template's sheets say of it.
type TileWords struct {
	Title    string  // of the template
	Part     string  // what it marks, and how many
	Up       string  // which way is up
	Job      string  // name and revision
	Stretch  Stretch // how the printer's error is corrected
	FromPage int     // page number of the first tile, for the reader; 0 leaves it out
}

// TileSheet draws all that is on a tile's sheet but the template itself: its
// window, match marks, rulers, label, neighbours, map and words.
func TileSheet(t Tiling, tile Tile, w TileWords) Drawing {
	d := Drawing{Title: w.Title + " " + tile.Name(), Width: t.Sheet.Width, Height: t.Sheet.Height}
	lo, hi := t.At, path.Pt(t.At.X+t.Window.X, t.At.Y+t.Window.Y)
	if len(t.Tiles)+t.Empty > 1 {
		d.Rect(Thin, lo, hi)
	}
	for _, p := range t.Joins(tile) {
		c := t.place(tile, p)
		r := min(2.5, t.Overlap/4)
		d.Circle(Mark, c, r)
		d.Line(Thin, path.Pt(c.X-2*r, c.Y), path.Pt(c.X+2*r, c.Y))
		d.Line(Thin, path.Pt(c.X, c.Y-2*r), path.Pt(c.X, c.Y+2*r))
	}
	neighbours(&d, t, tile)
	foot := lo.Y - 4
	bottomRuler(&d, lo.X, foot-3, length(w.Stretch.X()))
	sideRuler(&d, lo.X-3, lo.Y, length(w.Stretch.Y()))
	tileWords(&d, t, tile, w, lo.X, foot-10)
	return d
}

// neighbours draws an arrow across each join, named for the sheet beyond.
func neighbours(d *Drawing, t Tiling, tile Tile) {
	lo, hi := t.At, path.Pt(t.At.X+t.Window.X, t.At.Y+t.Window.Y)
	arrow := func(at path.Point, dx, dy length) {
		tip := path.Pt(at.X+3*dx, at.Y+3*dy)
		d.Line(Thin, at, tip)
		d.PathOn(Thin, path.Polyline(path.Pt(tip.X-1.2*dx-0.8*dy, tip.Y-1.2*dy-0.8*dx), tip,
			path.Pt(tip.X-1.2*dx+0.8*dy, tip.Y-1.2*dy+0.8*dx)))
	}
	name := func(col, row int) string { return Tile{Col: col, Row: row}.Name() }
	if t.has(tile.Col, tile.Row-1) && t.Sheet.Height-hi.Y > 4 {
		x := hi.X - 14
		arrow(path.Pt(x, hi.Y+0.4), 0, 1)
		d.Words(path.Pt(x+2, hi.Y+0.8), 2.5, Left, name(tile.Col, tile.Row-1))
	}
	if t.has(tile.Col, tile.Row+1) {
		x := hi.X - 14
		arrow(path.Pt(x, lo.Y-0.4), 0, -1)
		d.Words(path.Pt(x+2, lo.Y-3.4), 2.5, Left, name(tile.Col, tile.Row+1))
	}
	if t.has(tile.Col-1, tile.Row) {
		y := hi.Y - 12
		arrow(path.Pt(lo.X-0.4, y), -1, 0)
		d.TurnedWords(path.Pt(lo.X-0.8, y+2), 2.5, Left, 90*measure.Degree, name(tile.Col-1, tile.Row))
	}
	if t.has(tile.Col+1, tile.Row) && t.Sheet.Width-hi.X > 4 {
		y := hi.Y - 12
		arrow(path.Pt(hi.X+0.4, y), 1, 0)
		d.TurnedWords(path.Pt(hi.X+3.2, y+2), 2.5, Left, 90*measure.Degree, name(tile.Col+1, tile.Row))
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

// sideRuler is 50 mm up the sheet's side, once printed.
func sideRuler(d *Drawing, x, y, k length) {
	d.Line(Thin, path.Pt(x, y), path.Pt(x, y+50*k))
	for i := range 11 {
		at := y + length(i)*5*k
		d.Line(Thin, path.Pt(x, at), path.Pt(x-tickHeight(i), at))
	}
	d.TurnedWords(path.Pt(x-3, y+25), 2.5, Middle, 90*measure.Degree, "50 mm")
}

// tickHeight is longer at the ends of ten marks.
func tickHeight(i int) length {
	if i%10 == 0 {
		return 2.2
	}
	return 1.2
}

// tileWords sets the words under the window and the map of the sheets.
func tileWords(d *Drawing, t Tiling, tile Tile, w TileWords, x, y length) {
	right := t.At.X + t.Window.X
	if right < x+150 { // a narrow window on a wide sheet leaves room beside it
		right = min(t.Sheet.Width-8, x+150)
	}
	mapW := length(0)
	if n := len(t.Tiles) + t.Empty; n > 1 {
		mapW = sheetMap(d, t, tile, right, y+3)
	}
	room := right - x - mapW - 3
	line := func(size length, bold bool, words string) {
		l := Wrap(words, size, bold, room)[0]
		if bold {
			d.BoldWords(path.Pt(x, y), size, Left, l)
		} else {
			d.Words(path.Pt(x, y), size, Left, l)
		}
		y -= size + 1.6
	}
	head := w.Title
	if len(t.Tiles)+t.Empty > 1 {
		head = fmt.Sprintf("%s, sheet %s of %d", w.Title, tile.Name(), len(t.Tiles))
	}
	line(3.5, true, head)
	line(2.5, false, w.Part+"; "+w.Up)
	note := "actual size, 100 %"
	if !w.Stretch.None() {
		note = w.Stretch.String()
	}
	line(2.5, false, note+"; check a ruler before marking; "+w.Job)
}

// sheetMap draws the sheets as a small grid, this one dark, empty ones
// crossed, its right end at right. It returns the width it takes.
func sheetMap(d *Drawing, t Tiling, tile Tile, right, top length) length {
	cell := min(4.5, 15/length(t.Rows))
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

// TestSquare is the page to measure before anything is marked: a square of 100
// mm and one of 4 in, with both axes named.
func TestSquare(p Paper, job string, k Stretch) Drawing {
	d := Drawing{Title: "Check squares", Width: p.Width, Height: p.Height}
	left, top := length(20), p.Height-22
	d.BoldWords(path.Pt(left, top), 5, Left, "Measure these before marking anything")
	y := top - 9
	for _, words := range []string{
		"Print at actual size, 100 %; switch off fit to page and shrink to fit.",
		"Then measure both squares along both axes with a steel rule. When a side is off, pack again",
		"with --printed-as and what the 100 mm square measures, such as --printed-as 99.4x100.3:",
		"across first, then up. Every template is then drawn the other way by as much.",
		job,
		k.String(),
	} {
		if words == "" {
			continue
		}
		for _, l := range Wrap(words, 2.5, false, p.Width-left-12) {
			d.Words(path.Pt(left, y), 2.5, Left, l)
			y -= 4.5
		}
	}
	square := func(x, top, side length, name string) length {
		w, h := side*length(k.X()), side*length(k.Y())
		d.Rect(Outline, path.Pt(x, top-h), path.Pt(x+w, top))
		d.Words(path.Pt(x+w/2, top-h+3), 3.5, Middle, "across: "+name)
		d.TurnedWords(path.Pt(x+w-3, top-h/2), 3.5, Middle, 90*measure.Degree, "up: "+name)
		return h
	}
	y -= 4
	h := square(left, y, checkSquare, "100 mm")
	const inches = 4 * measure.Inch
	if p.Width > 2*left+1.1*(checkSquare+inches)+10 {
		square(left+1.1*checkSquare+4, y, inches, "4 in")
	} else if y-h-6-1.1*inches > 8 {
		square(left, y-h-6, inches, "4 in")
	}
	return d
}
