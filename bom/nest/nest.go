// Package nest lays rectangles on sheets of one size, in rows, each part
// turned a quarter where that saves height. It is quick and certain, not
// proven best.
package nest

import (
	"cmp"
	"fmt"
	"slices"

	"silowright/geometry/measure"
)

// Part is a rectangle to lay.
type Part struct{ Width, Height measure.Length }

// Place is where one part lies: lower left corner on its sheet, sheets counted
// from 0, turned by a quarter when Turned.
type Place struct {
	Sheet  int
	X, Y   measure.Length
	Turned bool
}

// Rows lays parts on sheets of width × height with gap between neighbours and
// to the edges: tallest first, each into the first row it fits, else into a new
// row, else onto a new sheet. Places come in the order of parts. It fails on a
// part that no sheet holds either way round.
func Rows(parts []Part, width, height, gap measure.Length) ([]Place, int, error) {
	order := make([]int, len(parts))
	lie := make([]Place, len(parts))
	for i, p := range parts {
		order[i] = i
		upright := fits(p.Width, p.Height, width, height, gap)
		flat := fits(p.Height, p.Width, width, height, gap)
		if !upright && !flat {
			return nil, 0, fmt.Errorf("a part of %s × %s mm does not fit a sheet of %s × %s mm; hint: a larger sheet",
				p.Width.Metric(), p.Height.Metric(), width.Metric(), height.Metric())
		}
		lie[i].Turned = !upright || flat && p.Height > p.Width
	}
	tall := func(i int) measure.Length { _, h := size(parts[i], lie[i]); return h }
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(tall(b), tall(a)) })
	var rows []row
	sheets := 0
	for _, i := range order {
		w, h := size(parts[i], lie[i])
		r := slices.IndexFunc(rows, func(r row) bool { return r.x+w+gap <= width+slack && h <= r.h+slack })
		if r < 0 {
			y := gap
			sheet := sheets - 1
			if n := len(rows); n > 0 {
				y = rows[n-1].y + rows[n-1].h + gap
			}
			if sheets == 0 || y+h+gap > height+slack {
				sheets++
				sheet, y = sheets-1, gap
			}
			rows = append(rows, row{sheet: sheet, x: gap, y: y, h: h})
			r = len(rows) - 1
		}
		lie[i].Sheet, lie[i].X, lie[i].Y = rows[r].sheet, rows[r].x, rows[r].y
		rows[r].x += w + gap
	}
	return lie, sheets, nil
}

// slack keeps a rounding error from opening a new row.
const slack measure.Length = 1e-6

type row struct {
	sheet   int
	x, y, h measure.Length
}

func fits(w, h, width, height, gap measure.Length) bool {
	return w+2*gap <= width+slack && h+2*gap <= height+slack
}

func size(p Part, l Place) (w, h measure.Length) {
	if l.Turned {
		return p.Height, p.Width
	}
	return p.Width, p.Height
}
