package render

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"silowright/geometry/measure"
	"silowright/geometry/path"
)

// cutByEdges counts the places where a tiling's windows alone would cut a
// drawing's words, and the words that no window would show whole.
func cutByEdges(g Tiling, texts []Text) (cuts, lost int) {
	for _, x := range texts {
		whole := 0
		for _, tile := range g.Tiles {
			switch b := boxOf(x); {
			case holds(tile.Part, b):
				whole++
			case boxesMeet(corners(tile.Part), corners(b)):
				cuts++
			}
		}
		if whole == 0 {
			lost++
		}
	}
	return cuts, lost
}

// labelFaults holds the sheets of a tiling against the words of the drawing
// laid on them: nothing of them is in what the window clips, each that is set
// stands in the window with all its letters, and each of the drawing's is set
// on a sheet, in one line or in lines under one another.
func labelFaults(g Tiling, texts []Text) (out []string) {
	if n := len(g.Lines().Texts); n > 0 {
		out = append(out, fmt.Sprintf("%d words are clipped with the lines", n))
	}
	bare := g
	bare.words = nil
	said := make([]string, len(g.Tiles))
	for i, tile := range g.Tiles {
		own := len(TileSheet(bare, tile, TileWords{}).Texts)
		sheet := TileSheet(g, tile, TileWords{})
		window := path.Box{Min: g.At, Max: path.Pt(g.At.X+g.Window.X, g.At.Y+g.Window.Y)}
		for _, x := range sheet.Texts[:len(sheet.Texts)-own] {
			said[i] += x.Words + " "
			b := boxOf(x)
			window := path.Box{Min: path.Pt(window.Min.X-pageSlack, window.Min.Y-pageSlack), Max: path.Pt(window.Max.X+pageSlack, window.Max.Y+pageSlack)}
			if !holds(window, b) {
				out = append(out, fmt.Sprintf("sheet %s cuts %q, %v in %v", tile.Name(), x.Words, b, window))
			}
		}
	}
	for _, x := range texts {
		// a word broken in two has lost nothing but the line's end
		want := strings.ReplaceAll(x.Words, " ", "")
		if !slices.ContainsFunc(said, func(s string) bool { return strings.Contains(strings.ReplaceAll(s, " ", ""), want) }) {
			out = append(out, fmt.Sprintf("%q is whole on no sheet: %v", x.Words, said))
		}
	}
	return out
}

// lettered is a random drawing with random words in it, upright and turned.
func lettered(r *rand.Rand) Drawing {
	d := anyDrawing(r)
	words := strings.Fields("datum rim slot level line, below the outlet's centre, round: 18 1/2 in (469.9 mm) hole saw circumference")
	for range 30 {
		n, from := 1+r.IntN(7), r.IntN(len(words))
		x := Text{Layer: Notes, Size: []length{2.5, 3.5, 5}[r.IntN(3)], Anchor: Anchor(r.IntN(3)), Bold: r.IntN(4) == 0,
			At:    path.Pt(d.Width*length(r.Float64()), d.Height*length(r.Float64())),
			Words: strings.Join(words[from:min(from+n, len(words))], " ")}
		if r.IntN(3) == 0 {
			x.Turn = measure.Angle(r.IntN(8)) * 45 * measure.Degree
		}
		b := boxOf(x)
		clear := b.Min.X > 1 && b.Min.Y > 1 && b.Max.X < d.Width-1 && b.Max.Y < d.Height-1
		for _, o := range d.Texts {
			clear = clear && !boxesMeet(x.Corners(), o.Corners())
		}
		if clear {
			d.Texts = append(d.Texts, x)
		}
	}
	return d
}

// For any drawing with words in it, any paper, margin and overlap: no sheet
// shows a part of a word, and every word is whole on a sheet.
func TestNoWordIsCutByASheet(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	cuts, lost := 0, 0
	for i := range 400 {
		d, paper := lettered(r), anyPaper(r)
		g, err := Lay(d, paper, length(12*r.Float64()), minOverlap+length(21*r.Float64()))
		if err != nil {
			continue
		}
		for _, f := range labelFaults(g, d.Texts) {
			t.Errorf("%d: %.0f × %.0f mm on %s, overlap %.1f: %s", i, float64(d.Width), float64(d.Height), paper.Name, float64(g.Overlap), f)
		}
		c, l := cutByEdges(g, d.Texts)
		cuts, lost = cuts+c, lost+l
		if t.Failed() {
			return
		}
	}
	t.Logf("%d words would be cut by an edge, %d whole on no sheet", cuts, lost)
	if cuts < 300 || lost < 300 {
		t.Errorf("only %d words lay across an edge and %d on no sheet whole", cuts, lost)
	}
}

// The same for the templates themselves, with a corrected printer too. Besides,
// their words run into no line, no match mark and no other words, and "cut out"
// stays in the opening that it names.
func TestNoWordOfATemplateIsCut(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 2))
	all := silos(t)
	cuts, lost, moved := 0, 0, 0
	for range 60 {
		paper := anyPaper(r)
		margin, overlap := length(4+8*r.Float64()), minOverlap+length(16*r.Float64())
		k, err := PrintedAs([]string{"100x100", "99.4x100.3", "110x90"}[r.IntN(3)])
		if err != nil {
			t.Fatal(err)
		}
		for _, tp := range all[r.IntN(len(all))].Templates {
			d := FromTemplate(tp)
			g, err := OnPaper(d, paper, margin, overlap, k)
			if err != nil {
				continue
			}
			name := fmt.Sprintf("%s %s on %s %.0f × %.0f, margin %.1f, overlap %.1f, %v", tp.Drum, tp.Title, paper.Name,
				float64(g.Sheet.Width), float64(g.Sheet.Height), float64(margin), float64(overlap), k)
			for _, f := range labelFaults(g, d.Texts) {
				t.Errorf("%s: %s", name, f)
			}
			for _, tile := range g.Tiles {
				for _, o := range Overlaps(TileSheet(g, tile, TileWords{Title: tp.Title})) {
					t.Errorf("%s, sheet %s: %s", name, tile.Name(), o)
				}
			}
			on := g.Lines()
			on.Texts = g.words
			for _, o := range Overlaps(on) {
				t.Errorf("%s: %s", name, o)
			}
			for _, x := range g.words {
				if x.Words == "cut out" && !inAnOpening(on, x.At) {
					t.Errorf("%s: %q stands outside what is cut out", name, x.Words)
				}
			}
			c, l := cutByEdges(g, g.whole.Texts)
			cuts, lost = cuts+c, lost+l
			if l > 0 {
				moved++
			}
		}
		if t.Failed() {
			return
		}
	}
	t.Logf("%d words would be cut by an edge, %d whole on no sheet, of %d templates", cuts, lost, moved)
	if cuts < 200 || lost < 50 {
		t.Errorf("only %d words lay across an edge and %d on no sheet whole", cuts, lost)
	}
}

// inAnOpening reports whether a cut line goes round p.
func inAnOpening(d Drawing, p path.Point) bool {
	for _, s := range d.Strokes {
		if s.Layer != Cut {
			continue
		}
		crossed := 0
		for _, chain := range s.Path.Flatten(0.05) {
			for i := 1; i < len(chain); i++ {
				if a, b := chain[i-1], chain[i]; (a.Y > p.Y) != (b.Y > p.Y) && a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) > p.X {
					crossed++
				}
			}
		}
		if crossed%2 == 1 {
			return true
		}
	}
	return false
}

// Words across a join of two sheets go to the nearest place that shows them
// whole, over a mark line if they must, but never over a cut line; lines under one another go together, and stay so.
func TestWordsStayOnTheirSideOfACut(t *testing.T) {
	plain := Drawing{Title: "plate", Width: 330, Height: 150}
	plain.Rect(Cut, path.Pt(0, 0), path.Pt(330, 150))
	for _, c := range []struct {
		reason        string
		cutAt, markAt length // of upright lines, 0 for none
		left          bool   // where the words end up
	}{
		{"nothing in the way", 0, 0, true},
		{"a cut line left, a mark line right", 149, 184, false},
		{"a mark line left, a cut line right", 179, 144, true},
	} {
		d := plain
		if c.cutAt > 0 {
			d.Line(Cut, path.Pt(c.cutAt, 0), path.Pt(c.cutAt, 150))
			d.Line(Mark, path.Pt(c.markAt, 0), path.Pt(c.markAt, 150))
		}
		d.Words(path.Pt(164, 60), 3.5, Middle, "cut out, 12 in")
		d.Words(path.Pt(164, 53), 2.5, Middle, "circle")
		g, err := Lay(d, papers[3], 6, 12)
		if err != nil || len(g.Tiles) != 2 {
			t.Fatalf("%d sheets, %v", len(g.Tiles), err)
		}
		first, second := g.words[0], g.words[1]
		if first.Words != "cut out, 12 in" || first.At.X-second.At.X != 0 || first.At.Y-second.At.Y != 7 {
			t.Errorf("%s: the lines stand at %v and %v", c.reason, first.At, second.At)
		}
		if left := first.At.X < 164; left != c.left {
			t.Errorf("%s: they stand at %v, left of the join %v, want %v", c.reason, first.At, left, c.left)
		}
		if c.cutAt > 0 && (first.At.X < c.cutAt) != (164 < c.cutAt) {
			t.Errorf("%s: they have gone over the cut line to %v", c.reason, first.At)
		}
	}
}

// On a strip no higher than a word, whichever way the word stands, the words
// still come whole on a sheet, smaller.
func TestWordsOfANarrowStrip(t *testing.T) {
	for _, height := range []length{0.5, 2, 4, 9} {
		for _, turn := range []measure.Angle{0, 45 * measure.Degree, 90 * measure.Degree} {
			d := Drawing{Title: "strip", Width: 900, Height: height,
				Strokes: []Stroke{{Layer: Cut, Path: path.Rect(path.Box{Max: path.Pt(900, height)})}},
				Texts:   []Text{{Layer: Notes, Size: height / 2, At: path.Pt(190, height/4), Anchor: Middle, Turn: turn, Words: "screwed to the wall"}}}
			if turn != 0 {
				d.Texts[0].Size, d.Texts[0].At.Y = height/25, height/2
			}
			letter, err := PaperNamed("letter", measure.UnitInch)
			if err != nil {
				t.Fatal(err)
			}
			g, err := Lay(d, letter, 6, 10)
			if err != nil {
				t.Fatal(err)
			}
			for _, fault := range labelFaults(g, d.Texts) {
				t.Errorf("%v high, turned %v: %s", height, turn, fault)
			}
		}
	}
}
