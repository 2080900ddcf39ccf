package pdf_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
	"silowright/render/outside"
)

// traced is one path of a page as mutool reads the file: every point it runs
// through, mm from the page's lower left.
type traced struct {
	width  float64 // of the pen, mm; 0 for a clip
	points []path.Point
}

var (
	blockRE  = regexp.MustCompile(`(?s)<(stroke_path|clip_path)([^>]*)>(.*?)</(?:stroke_path|clip_path)>`)
	penRE    = regexp.MustCompile(`linewidth="([0-9.e]+)"`)
	matrixRE = regexp.MustCompile(`transform="([-0-9.e]+) ([-0-9.e]+) ([-0-9.e]+) ([-0-9.e]+) ([-0-9.e]+) ([-0-9.e]+)"`)
	pointRE  = regexp.MustCompile(`<(?:moveto|lineto) x="([-0-9.e]+)" y="([-0-9.e]+)"|<curveto [^>]*x3="([-0-9.e]+)" y3="([-0-9.e]+)"`)
)

// tracedPages reads every page's paths; high is the pages' height, mm.
func tracedPages(t *testing.T, file string, high float64) [][]traced {
	t.Helper()
	num := func(s string) float64 {
		x, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	const mm = 25.4 / 72
	var out [][]traced
	for _, page := range strings.Split(string(outside.Run(t, "mutool", "trace", file)), "<page ")[1:] {
		var all []traced
		for _, b := range blockRE.FindAllStringSubmatch(page, -1) {
			var one traced
			if pen := penRE.FindStringSubmatch(b[2]); pen != nil {
				one.width = num(pen[1]) * mm
			} else if b[1] != "clip_path" {
				t.Fatalf("a line without a pen: %s", b[2])
			}
			m := matrixRE.FindStringSubmatch(b[2])
			if m == nil {
				t.Fatalf("no matrix in %s", b[2])
			}
			for _, p := range pointRE.FindAllStringSubmatch(b[3], -1) {
				x, y := num(p[1]+p[3]), num(p[2]+p[4])
				u := num(m[1])*x + num(m[3])*y + num(m[5])
				v := num(m[2])*x + num(m[4])*y + num(m[6])
				one.points = append(one.points, path.Pt(measure.Length(u*mm), measure.Length(high-v*mm)))
			}
			all = append(all, one)
		}
		out = append(out, all)
	}
	return out
}

func (p traced) box() path.Box {
	b := path.Box{Min: p.points[0], Max: p.points[0]}
	for _, q := range p.points {
		b.Min = path.Pt(min(b.Min.X, q.X), min(b.Min.Y, q.Y))
		b.Max = path.Pt(max(b.Max.X, q.X), max(b.Max.Y, q.Y))
	}
	return b
}

func apartBy(a, b path.Point) float64 { return math.Hypot(float64(a.X-b.X), float64(a.Y-b.Y)) }

// The lattice on letter and on A4, by mutool's numbers: on every sheet each
// point of each cut line stands where the sheet's part of the drawing puts it,
// the window clips to that part, and every match mark is at the same place of
// the drawing on just two sheets, all within 0.01 mm.
func TestLatticeSheetsByMutool(t *testing.T) {
	const tol = 0.01
	s := solved(t)
	d := render.FromTemplate(templateOf(t, s, "lattice"))
	for _, name := range []string{"letter", "A4"} {
		t.Run(name, func(t *testing.T) {
			g := laid(t, d, name)
			pages := tracedPages(t, outside.File(t, "tiles.pdf", tiled(t, g)), g.Sheet.Height.MM())
			if len(pages) != len(g.Tiles) || len(pages) < 4 {
				t.Fatalf("%d pages of %d sheets", len(pages), len(g.Tiles))
			}
			var cuts []path.Path
			for _, q := range d.Strokes {
				if q.Layer == render.Cut {
					cuts = append(cuts, q.Path.Beziers())
				}
			}
			marks := make([][]path.Point, len(pages))
			for i, page := range pages {
				tile := g.Tiles[i]
				home := func(p path.Point) path.Point {
					return path.Pt(p.X-g.At.X+tile.Part.Min.X, p.Y-g.At.Y+tile.Part.Min.Y)
				}
				next, clipped := 0, false
				for _, q := range page {
					b := q.box()
					switch r := float64(b.Max.X-b.Min.X) / 2; {
					case q.width == 0:
						clipped = clipped || apartBy(home(b.Min), tile.Part.Min) < tol && apartBy(home(b.Max), tile.Part.Max) < tol
					case math.Abs(q.width-0.5) < 0.001:
						if next == len(cuts) {
							t.Fatalf("sheet %s: more cut lines than %d", tile.Name(), next)
						}
						n := 0
						for _, seg := range cuts[next] {
							if seg.Kind == path.Close {
								continue
							}
							if n == len(q.points) || apartBy(home(q.points[n]), seg.To) > tol {
								t.Fatalf("sheet %s: point %d of cut line %d is off from %v", tile.Name(), n, next, seg.To)
							}
							n++
						}
						next++
					case math.Abs(q.width-0.25) < 0.001 && len(q.points) > 8 && math.Abs(r-2.5) < 0.1:
						marks[i] = append(marks[i], home(path.Pt((b.Min.X+b.Max.X)/2, (b.Min.Y+b.Max.Y)/2)))
					}
				}
				if next != len(cuts) || !clipped {
					t.Errorf("sheet %s: %d cut lines of %d, clipped to its window: %v", tile.Name(), next, len(cuts), clipped)
				}
			}
			for i := range marks {
				if len(marks[i]) < 6 { // three to each of two neighbours at least
					t.Errorf("sheet %s has %d match marks", g.Tiles[i].Name(), len(marks[i]))
				}
				for _, p := range marks[i] {
					on := 0
					for j := range marks {
						for _, q := range marks[j] {
							if apartBy(p, q) < tol {
								on++
							}
						}
					}
					if on != 2 {
						t.Errorf("the match mark at %v is on %d sheets", p, on)
					}
				}
			}
		})
	}
}

// laid spreads a drawing over sheets of a kind of paper, with the margin and
// the overlap of the shop pack.
func laid(t *testing.T, d render.Drawing, paper string) render.Tiling {
	t.Helper()
	p, err := render.PaperNamed(paper, measure.UnitMM)
	if err != nil {
		t.Fatal(err)
	}
	g, err := render.Lay(d, p, 6.35, 12.7)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// The lattice's sheets as poppler paints them, joined by their match marks: a
// reading of the cut lines every few millimetres lies within 0.1 mm, a pixel,
// of true. Readings keep away from corners and from whatever else is printed.
func TestLatticeJoinedByItsMatchMarks(t *testing.T) {
	s := solved(t)
	d := render.FromTemplate(templateOf(t, s, "lattice"))
	for _, name := range []string{"letter", "A4"} {
		t.Run(name, func(t *testing.T) {
			g := laid(t, d, name)
			sheets := pictures(t, outside.File(t, "tiles.pdf", tiled(t, g)))
			if len(sheets) != len(g.Tiles) {
				t.Fatalf("%d pictures of %d sheets", len(sheets), len(g.Tiles))
			}
			for i := range sheets {
				sheets[i].top = g.Sheet.Height.MM() * perMM
			}
			lie := join(t, g, sheets)
			readings, worst, seen := 0, 0.0, map[string]bool{}
			for _, at := range alongCuts(d) {
				for i, tile := range g.Tiles {
					if !inSight(g, tile, at.p) {
						continue
					}
					x, y := onSheet(g, tile, at.p)
					off, ok := sheets[i].middle(x, y, at.nx, at.ny, 1)
					if !ok {
						t.Fatalf("no line at %v on sheet %s", at.p, tile.Name())
					}
					// the sheet lies where its marks put it, not where it should
					x0, y0 := onSheet(g, g.Tiles[0], at.p)
					miss := off + (x+lie[i].x-x0)*at.nx + (y+lie[i].y-y0)*at.ny
					worst = math.Max(worst, math.Abs(miss))
					readings++
					seen[tile.Name()] = true
				}
			}
			if readings < 300 || len(seen) < len(g.Tiles)-1 {
				t.Errorf("only %d readings on %d of %d sheets", readings, len(seen), len(g.Tiles))
			}
			if worst > 0.1 {
				t.Errorf("off by %.3f mm at worst", worst)
			}
			t.Logf("%d readings, off by %.3f mm at worst", readings, worst)
		})
	}
}

// crossing is a place on a cut line and the direction square to it.
type crossing struct {
	p      path.Point
	nx, ny float64
}

// alongCuts lists places every few millimetres along the cut lines, 4 mm off
// their corners and clear of other lines and of words.
func alongCuts(d render.Drawing) []crossing {
	var out []crossing
	for i, s := range d.Strokes {
		if s.Layer != render.Cut {
			continue
		}
		others := render.Drawing{Width: d.Width, Height: d.Height}
		for j, o := range d.Strokes {
			if j != i && !sameCircle(d, o) {
				others.Strokes = append(others.Strokes, o)
			}
		}
		var from path.Point
		for _, seg := range s.Path.Beziers() {
			if long := apartBy(from, seg.To); seg.Kind != path.Move && seg.Kind != path.Close && long > 12 {
				for k := 4.0; k < long-4; k += 7 {
					if c, ok := on(from, seg, k/long); ok && clear(others, d.Texts, c.p) {
						out = append(out, c)
					}
				}
			}
			from = seg.To
		}
	}
	return out
}

// sameCircle reports whether a line is the lattice's own circle, which runs
// along the middle of the arcs to be cut.
func sameCircle(d render.Drawing, s render.Stroke) bool {
	b := s.Path.Bounds()
	return s.Layer == render.Mark && len(s.Path) > 2 && s.Path[1].Kind == path.Arc && b.Max.X-b.Min.X > d.Width/2
}

// on is the place at t along a line or a cubic from a.
func on(a path.Point, s path.Segment, t float64) (crossing, bool) {
	at := func(t float64) path.Point {
		if s.Kind == path.Line {
			return path.Pt(a.X+measure.Length(t)*(s.To.X-a.X), a.Y+measure.Length(t)*(s.To.Y-a.Y))
		}
		u := 1 - t
		k := [4]measure.Length{measure.Length(u * u * u), measure.Length(3 * u * u * t), measure.Length(3 * u * t * t), measure.Length(t * t * t)}
		return path.Pt(k[0]*a.X+k[1]*s.C1.X+k[2]*s.C2.X+k[3]*s.To.X, k[0]*a.Y+k[1]*s.C1.Y+k[2]*s.C2.Y+k[3]*s.To.Y)
	}
	p, q := at(t-1e-4), at(t+1e-4)
	long := apartBy(p, q)
	if long == 0 {
		return crossing{}, false
	}
	return crossing{at(t), -float64(q.Y-p.Y) / long, float64(q.X-p.X) / long}, true
}

// clear reports whether a word put at p, 3 mm square, would run into nothing.
func clear(lines render.Drawing, words []render.Text, p path.Point) bool {
	lines.Texts = append([]render.Text{{At: path.Pt(p.X, p.Y-1.1), Size: 3, Anchor: render.Middle, Words: "H"}}, words...)
	for _, o := range render.Overlaps(lines) {
		if strings.Contains(o, `"H"`) {
			return false
		}
	}
	return true
}

// inSight reports whether a tile shows p well inside its window and clear of
// its match marks.
func inSight(g render.Tiling, tile render.Tile, p path.Point) bool {
	const edge = 3
	if b := tile.Part; p.X < b.Min.X+edge || p.X > b.Max.X-edge || p.Y < b.Min.Y+edge || p.Y > b.Max.Y-edge {
		return false
	}
	for _, m := range g.Joins(tile) {
		if apartBy(m, p) < 8 {
			return false
		}
	}
	return true
}
