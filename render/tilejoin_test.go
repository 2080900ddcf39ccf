package render

import (
	"testing"

	"silowright/geometry/path"
)

// inTheWay counts a drawing's lines and words that run into a match mark.
func inTheWay(d Drawing, p path.Point, r length) int {
	n := 0
	box := path.Box{Min: path.Pt(p.X-2*r, p.Y-2*r), Max: path.Pt(p.X+2*r, p.Y+2*r)}
	for _, s := range d.Strokes {
		if crosses(s.Path, corners(box)) {
			n++
		}
	}
	for _, t := range d.Texts {
		if boxesMeet(t.Corners(), corners(box)) {
			n++
		}
	}
	return n
}

// A hole just where each match mark would stand, and words at another: the
// marks stand beside them, at the same place on both sheets.
func TestMatchMarksStandClear(t *testing.T) {
	plain := Drawing{Title: "plate", Width: 330, Height: 240}
	plain.Rect(Cut, path.Pt(0, 0), path.Pt(330, 240))
	g, err := Lay(plain, papers[3], 6, 12)
	if err != nil || len(g.Tiles) != 2 {
		t.Fatalf("%d sheets, %v", len(g.Tiles), err)
	}
	d := plain
	for i, p := range g.Joins(g.Tiles[0]) {
		if i == 1 {
			d.Words(p, 2.5, Middle, "cut")
			continue
		}
		d.Circle(Drill, p, 4)
	}
	g, err = Lay(d, papers[3], 6, 12)
	if err != nil {
		t.Fatal(err)
	}
	for _, tile := range g.Tiles {
		for _, p := range g.Joins(tile) {
			if n := inTheWay(d, p, g.markRadius()); n > 0 {
				t.Errorf("sheet %s: %d lines or words run into the mark at %v", tile.Name(), n, p)
			}
		}
	}
}

// A mark line along the whole of a join leaves no place free: the marks stand on
// it, beside the hole that it goes through and beside its crossing with another.
func TestMatchMarksStandOffCutLines(t *testing.T) {
	d := Drawing{Title: "plate", Width: 330, Height: 240}
	d.Rect(Cut, path.Pt(0, 0), path.Pt(330, 240))
	d.Line(Mark, path.Pt(165, 0), path.Pt(165, 240))
	d.Circle(Cut, path.Pt(165, 120), 4)
	d.Line(Mark, path.Pt(0, 48), path.Pt(330, 48)) // where the lowest mark would be
	g, err := Lay(d, papers[3], 6, 12)
	if err != nil || len(g.Tiles) != 2 {
		t.Fatalf("%d sheets, %v", len(g.Tiles), err)
	}
	marks := g.Joins(g.Tiles[0])
	if len(marks) != 3 {
		t.Fatalf("%d marks", len(marks))
	}
	hole := Drawing{Strokes: d.Strokes[2:3]}
	for _, p := range marks {
		if inTheWay(d, p, g.markRadius()) != 1 || inTheWay(hole, p, g.markRadius()) != 0 {
			t.Errorf("the mark at %v stands on the hole's edge", p)
		}
	}
}

// On the templates themselves no match mark runs into words.
func TestMatchMarksLeaveTemplatesReadable(t *testing.T) {
	marks := 0
	for _, s := range silos(t) {
		for _, tp := range s.Templates {
			d := FromTemplate(tp)
			g, err := Lay(d, papers[0], 6.35, 12.7)
			if err != nil {
				t.Fatal(err)
			}
			words := Drawing{Texts: g.words}
			for _, tile := range g.Tiles {
				for _, p := range g.Joins(tile) {
					marks++
					if inTheWay(words, p, g.markRadius()) > 0 {
						t.Errorf("%s, %s, sheet %s: words under the mark at %v", tp.Drum, tp.Title, tile.Name(), p)
					}
				}
			}
		}
	}
	if marks < 200 {
		t.Errorf("only %d marks seen", marks)
	}
}
