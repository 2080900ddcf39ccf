package rolls_test

import (
	"math"
	"testing"

	"silowright/bom/rolls"
	"silowright/geometry/measure"
)

func disc(across float64) rolls.Piece {
	return rolls.Piece{Shape: rolls.Disc, Across: measure.Length(across)}
}

func square(side float64) rolls.Piece {
	return rolls.Piece{Shape: rolls.Square, Across: measure.Length(side)}
}

// Lengths of short runs, in the unit of the diameter and the width.
func TestShortestKnown(t *testing.T) {
	root3 := math.Sqrt(3)
	for _, c := range []struct {
		reason             string
		across, width, gap float64
		n                  int
		length, within     float64
		pattern            string
		best               bool
	}{
		{"one fills its own diameter", 570, 1000, 0, 1, 570, 1e-9, "one row", true},
		{"zigzag by Pythagoras: 570 + 3·√(570² − 430²), proven", 570, 1000, 0, 4, 570 + 3*math.Sqrt(570*570-430*430), 1e-9, "zigzag", true},
		{"the same, published to a tenth of a millimetre", 570, 1000, 0, 4, 1692.5, 0.05, "zigzag", true},
		{"the width is the disc: one row, proven", 570, 570, 0, 7, 3990, 1e-9, "one row", true},
		{"gap 10: 580 from centre to centre in a strip of 430", 570, 1000, 10, 4, 570 + 3*math.Sqrt(580*580-430*430), 1e-9, "zigzag", true},
		{"six columns of two at √3/2: 1 + 5·√3/2", 1, 2.5, 0, 12, 5.3301, 5e-5, "hexagonal columns", false},
		{"fifteen triples are 22.463; with hexagonal columns to begin with it is a little less", 1, 2.1404, 0, 45, 22.4243, 5e-5, "triples", false},
		{"columns of 4 and 3: 1 + 6·√3/2", 1, 4, 0, 25, 6.1962, 5e-5, "hexagonal columns", false},
		{"two hexagonal rows of ten: each centre is ½ or more along from the last, proven", 1, 1 + root3/2, 0, 20, 10.5, 1e-9, "hexagonal rows", true},
		{"three abreast", 1, 3, 0, 3, 1, 1e-12, "rows", true},
		{"four on a width of three: a zigzag across it, e = √(1 − (2/3)²), proven", 1, 3, 0, 4, 1 + math.Sqrt(1-4.0/9), 1e-9, "hexagonal columns", true},
	} {
		l, err := rolls.Shortest(disc(c.across), c.n, measure.Length(c.width), measure.Length(c.gap))
		if err != nil {
			t.Fatalf("%s: %v", c.reason, err)
		}
		if got := l.Length.MM(); math.Abs(got-c.length) > c.within || l.Pattern != c.pattern || l.Best != c.best {
			t.Errorf("%s: width %g, n %d: got %.6f %q best %v, want %.6f %q best %v",
				c.reason, c.width, c.n, got, l.Pattern, l.Best, c.length, c.pattern, c.best)
		}
		lies(t, l)
	}
}

// The runs that the others beat: triples of n = 12 on 2.5 are 5.8201 and two
// rows 6; two rows of 45 on 2.1404 are 23.
func TestShortestBeats(t *testing.T) {
	triples := func(n int, w float64) float64 {
		g := w - 1 - math.Sqrt(3)/2
		return 2 + (float64(n)/3-1)*(0.5+math.Sqrt(1-g*g))
	}
	if got := triples(12, 2.5); math.Abs(got-5.8201) > 5e-5 {
		t.Errorf("triples of 12 on 2.5: %.5f, want 5.8201", got)
	}
	for _, c := range []struct {
		n       int
		w, rows float64
	}{{12, 2.5, 6}, {45, 2.1404, 23}, {6, 2, 3}, {600, 2, 300}} {
		l, err := rolls.Shortest(disc(1), c.n, measure.Length(c.w), 0)
		if err != nil {
			t.Fatal(err)
		}
		if got := l.Length.MM(); got > triples(c.n, c.w)+1e-9 || got > c.rows+1e-9 {
			t.Errorf("n %d on %g: %.5f, triples give %.5f and rows %g", c.n, c.w, got, triples(c.n, c.w), c.rows)
		}
	}
}

// Discs a unit length in long runs. Up to 1 + √3 the pattern of two rows is
// proven the densest (Füredi 1991, from memory), so the figure is met from
// both sides; above, the figures are only the best of a search, to be met or
// passed, and Groemer's inequality is the ceiling.
func TestLongRuns(t *testing.T) {
	const n = 1_000_000
	for _, c := range []struct {
		w, density float64
		proven     bool
	}{
		{1.9, 2.0008, true}, {2.0, 2.0121, true}, {2.2, 2.0796, true}, {2.4142, 2.2449, true},
		{2.5, 2.3560, true}, {2.6, 2.5441, true}, {1 + math.Sqrt(3), 3, true},
		{3.0, 3.0365, false}, {3.4, 3.3333, false}, {1 + 1.5*math.Sqrt(3), 4, true}, {4.0, 4.0642, false},
	} {
		l, err := rolls.Shortest(disc(1), n, measure.Length(c.w), 0)
		if err != nil {
			t.Fatal(err)
		}
		got := n / l.Length.MM()
		if got < c.density-1e-4 || c.proven && got > c.density+1e-4 || got > 1+2*(c.w-1)/math.Sqrt(3) {
			t.Errorf("width %g: %.4f discs a length, known %.4f (%s)", c.w, got, c.density, l.Pattern)
		}
		t.Logf("width %.4f: %.4f discs a length, %s; known %.4f, ceiling %.4f", c.w, got, l.Pattern, c.density, 1+2*(c.w-1)/math.Sqrt(3))
	}
}

// Squares lie in rows: count by the shop's arithmetic.
func TestSquares(t *testing.T) {
	for _, c := range []struct {
		side, width, gap float64
		n                int
		length           float64
	}{
		{300, 1000, 0, 9, 900}, {300, 1000, 0, 10, 1200}, {300, 900, 0, 3, 300},
		{300, 900, 1, 3, 601}, {250, 1000, 0, 1, 250}, {100.1, 1001, 0, 100, 1001}, {300, 910, 5, 7, 910},
	} {
		l, err := rolls.Shortest(square(c.side), c.n, measure.Length(c.width), measure.Length(c.gap))
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(l.Length.MM()-c.length) > 1e-9 || !l.Best || l.Bound != l.Length {
			t.Errorf("%d squares of %g on %g, gap %g: %v best %v, want %v", c.n, c.side, c.width, c.gap, l.Length, l.Best, c.length)
		}
		lies(t, l)
	}
}

// lies checks the centres of a layout without its pattern: as many as counted,
// within the roll, none closer than a piece and the gap, through a grid whose
// cells are one such distance wide, so that only the neighbouring cells count.
func lies(t *testing.T, l rolls.Layout) {
	t.Helper()
	places := l.Places()
	if len(places) != l.Count {
		t.Errorf("%s: %d places for a count of %d", l.Pattern, len(places), l.Count)
	}
	d, unit := l.Piece.Across.MM(), (l.Piece.Across + l.Gap).MM()
	slack := 1e-9 * unit * math.Max(1, l.Length.MM()/unit/100)
	type cell struct{ x, y int }
	grid := map[cell][]rolls.Place{}
	far := 0.0
	for i, p := range places {
		x, y := p.X.MM(), p.Y.MM()
		far = math.Max(far, x+d/2)
		if !(x >= d/2-slack && x <= l.Length.MM()-d/2+slack && y >= d/2-slack && y <= l.Width.MM()-d/2+slack) {
			t.Errorf("%s, n %d, width %v: piece %d at %g, %g is off the roll", l.Pattern, l.Count, l.Width, i, x, y)
			return
		}
		c := cell{int(math.Floor(x / unit)), int(math.Floor(y / unit))}
		for dx := -1; dx <= 1; dx++ {
			for dy := -1; dy <= 1; dy++ {
				for _, q := range grid[cell{c.x + dx, c.y + dy}] {
					away := math.Hypot(x-q.X.MM(), y-q.Y.MM())
					if l.Piece.Shape == rolls.Square {
						away = math.Max(math.Abs(x-q.X.MM()), math.Abs(y-q.Y.MM()))
					}
					if away < unit-slack {
						t.Errorf("%s, n %d, width %v: piece %d at %g, %g is %g from one at %g, %g, least %g",
							l.Pattern, l.Count, l.Width, i, x, y, away, q.X.MM(), q.Y.MM(), unit)
						return
					}
				}
			}
		}
		grid[c] = append(grid[c], p)
	}
	if len(places) > 0 && math.Abs(far-l.Length.MM()) > slack {
		t.Errorf("%s, n %d, width %v: the last piece ends at %g, the layout at %v", l.Pattern, l.Count, l.Width, far, l.Length)
	}
	if l.Bound > l.Length {
		t.Errorf("%s, n %d: bound %v over length %v", l.Pattern, l.Count, l.Bound, l.Length)
	}
}
