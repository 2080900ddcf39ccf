package render

import (
	"fmt"
	"math"
	"slices"

	"silowright/geometry/measure"
	"silowright/geometry/path"
)

// Tiling is how a drawing is spread over sheets of paper that overlap.
type Tiling struct {
	Sheet      Paper // as it lies
	Cols, Rows int
	Margin     length     // kept free on every side
	Overlap    length     // of neighbouring windows
	Window     path.Point // width and height of the part one sheet shows
	At         path.Point // where that part's lower left corner stands on the sheet
	Tiles      []Tile     // row by row from the top, empty ones left out
	Empty      int        // how many were left out
	Turned     bool       // the drawing lies on its left side

	whole  Drawing // what is laid
	traces []trace // of its strokes
	words  []Text  // its words, each where a sheet shows it whole
}

// Tile is one sheet of a Tiling.
type Tile struct {
	Col, Row int // from the left and from the top, from 0
	Part     path.Box
}

// Name is the tile's label: a letter for the column, a number for the row.
func (t Tile) Name() string { return fmt.Sprintf("%c%d", 'A'+rune(t.Col%26), t.Row+1) }

// Strips kept free on every sheet, inside the margin: words below, a ruler on
// the left.
const (
	footStrip   length = 28.5
	narrowStrip length = 38 // the same, where lines of words are short
	sideStrip   length = 9
)

// foot is the strip below a window on a sheet this wide.
func foot(width length) length {
	if width < 190 {
		return narrowStrip
	}
	return footStrip
}

// sheetSlack keeps a rounding error from adding an empty sheet.
const sheetSlack length = 0.05

// OnPaper stretches d for the printer and spreads it over sheets of paper as
// Lay does. On a roll it lays d on its side where that needs fewer sheets, or
// as many shorter ones.
func OnPaper(d Drawing, paper Paper, margin, overlap length, k Stretch) (Tiling, error) {
	t, err := Lay(d.stretched(k.across(), k.up()), paper, margin, overlap)
	if !paper.Roll {
		return t, err
	}
	s, errSide := Lay(d.QuarterTurn().stretched(k.across(), k.up()), paper, margin, overlap)
	if errSide != nil || err == nil && (len(t.Tiles) < len(s.Tiles) || len(t.Tiles) == len(s.Tiles) && t.Sheet.Height <= s.Sheet.Height) {
		return t, err
	}
	s.Turned = true
	return s, nil
}

// Lay spreads d over sheets of paper, whichever way round needs fewer. margin
// is what the printer cannot reach on each side. It fails when nothing is left
// to print on or the sheets are past counting by letters.
func Lay(d Drawing, paper Paper, margin, overlap length) (Tiling, error) {
	if err := Check(d); err != nil {
		return Tiling{}, err
	}
	t, err := laid(d, paper, margin, overlap)
	if err == nil {
		t.settle()
	}
	return t, err
}

// laid spreads the lines of d.
func laid(d Drawing, paper Paper, margin, overlap length) (Tiling, error) {
	if paper.Roll {
		paper.Height = min(maxPaper, d.Height+2*margin+foot(paper.Width))
		return layOn(d, paper, margin, overlap)
	}
	up, errUp := layOn(d, paper, margin, overlap)
	side, errSide := layOn(d, paper.turned(), margin, overlap)
	switch {
	case errUp != nil && errSide != nil:
		return Tiling{}, errUp
	case errUp != nil:
		return side, nil
	case errSide != nil || len(up.Tiles) <= len(side.Tiles):
		return up, nil
	}
	return side, nil
}

func layOn(d Drawing, paper Paper, margin, overlap length) (Tiling, error) {
	t := Tiling{Sheet: paper, Margin: margin, Overlap: overlap, whole: d}
	for _, s := range d.Strokes {
		t.traces = append(t.traces, traced(s.Path))
	}
	w := paper.Width - 2*margin - sideStrip
	h := paper.Height - 2*margin - foot(paper.Width)
	if !(overlap >= minOverlap) {
		return t, fmt.Errorf("paper %s: sheets that overlap by %s cannot be lined up, allowed from %s; hint: leave the overlap as it is",
			paper.Name, overlap.Both(measure.UnitMM), minOverlap.Both(measure.UnitMM))
	}
	if !(margin >= 0) || w <= 2*overlap || (h <= 2*overlap || h < 40) && !paper.Roll || w < 40 {
		return t, fmt.Errorf("paper %s: margin %s and overlap %s leave nothing to print on; hint: smaller ones, or larger paper",
			paper.Name, margin.Both(measure.UnitMM), overlap.Both(measure.UnitMM))
	}
	count := func(total, window length) int {
		if total <= window+sheetSlack {
			return 1
		}
		return int(math.Ceil(float64((total - overlap - sheetSlack) / (window - overlap))))
	}
	t.Cols, t.Rows = count(d.Width, w), count(d.Height, h)
	if t.Cols > 26 || t.Rows > 99 {
		return t, fmt.Errorf("paper %s: %d × %d sheets are too many; hint: larger paper", paper.Name, t.Cols, t.Rows)
	}
	// Where one sheet holds it, the window is the drawing's own size; else the
	// windows share what is left over so that the sheets are alike.
	share := func(total length, n int) length { return (total + length(n-1)*overlap) / length(n) }
	t.Window = path.Pt(share(d.Width, t.Cols), share(d.Height, t.Rows))
	t.At = path.Pt(margin+sideStrip+(w-t.Window.X)/2, margin+foot(paper.Width)+(h-t.Window.Y)/2)
	for row := range t.Rows {
		for col := range t.Cols {
			x := length(col) * (t.Window.X - overlap)
			y := d.Height - t.Window.Y - length(row)*(t.Window.Y-overlap)
			tile := Tile{col, row, path.Box{Min: path.Pt(x, y), Max: path.Pt(x+t.Window.X, y+t.Window.Y)}}
			if t.anyStroke(tile.Part) {
				t.Tiles = append(t.Tiles, tile)
			} else {
				t.Empty++
			}
		}
	}
	return t, nil
}

// anyStroke reports whether a line of the drawing runs through the box or
// along its edge.
func (t Tiling) anyStroke(b path.Box) bool {
	b.Min = path.Pt(b.Min.X-sheetSlack, b.Min.Y-sheetSlack)
	b.Max = path.Pt(b.Max.X+sheetSlack, b.Max.Y+sheetSlack)
	q := corners(b)
	return slices.ContainsFunc(t.traces, func(x trace) bool { return x.meets(q) })
}

// corners are a box's corners, counter-clockwise.
func corners(b path.Box) [4]path.Point {
	return [4]path.Point{b.Min, path.Pt(b.Max.X, b.Min.Y), b.Max, path.Pt(b.Min.X, b.Max.Y)}
}

// has reports whether the tiling prints a tile.
func (t Tiling) has(col, row int) bool {
	for _, x := range t.Tiles {
		if x.Col == col && x.Row == row {
			return true
		}
	}
	return false
}

// place moves a point of the drawing to the tile's sheet.
func (t Tiling) place(tile Tile, p path.Point) path.Point {
	return path.Pt(p.X-tile.Part.Min.X+t.At.X, p.Y-tile.Part.Min.Y+t.At.Y)
}
