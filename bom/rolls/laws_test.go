package rolls_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"silowright/bom/rolls"
	"silowright/geometry/measure"
)

// A further disc never makes the run shorter, and a wider roll never longer.
func TestMonotone(t *testing.T) {
	for w := 1.0; w < 7; w += 0.0371 {
		last := 0.0
		for n := 1; n <= 90; n++ {
			l, err := rolls.Shortest(disc(1), n, measure.Length(w), 0)
			if err != nil {
				t.Fatal(err)
			}
			wider, err := rolls.Shortest(disc(1), n, measure.Length(w+0.0371), 0)
			if err != nil {
				t.Fatal(err)
			}
			if l.Length.MM() < last-1e-9 || wider.Length > l.Length+1e-9 {
				t.Fatalf("width %g: n %d takes %v (%s), n-1 takes %g, a wider roll %v (%s)", w, n, l.Length, l.Pattern, last, wider.Length, wider.Pattern)
			}
			last = l.Length.MM()
			if n%7 == 0 {
				lies(t, l)
			}
		}
	}
}

// Any piece, width, gap and count: the pieces lie clear of each other.
func TestLaid(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	seen := map[string]int{}
	for range 800 {
		p := disc(10 + 600*r.Float64())
		if r.IntN(5) == 0 {
			p.Shape = rolls.Square
		}
		gap := measure.Length(10 * r.Float64() * float64(r.IntN(2)))
		width := p.Across * measure.Length(1+6*r.Float64())
		l, err := rolls.Shortest(p, 1+r.IntN(300), width, gap)
		if err != nil {
			t.Fatal(err)
		}
		lies(t, l)
		seen[l.Pattern]++
		fit, err := rolls.Fit(p, width, l.Length, gap)
		if err != nil {
			t.Fatal(err)
		}
		lies(t, fit)
		if fit.Count < l.Count || fit.Length > l.Length+1e-6 {
			t.Errorf("Shortest lays %d on %v × %v, Fit %d over %v", l.Count, width, l.Length, fit.Count, fit.Length)
		}
	}
	for _, name := range []string{"one row", "rows", "zigzag", "hexagonal rows", "hexagonal columns", "shifted columns", "triples", "triangles"} {
		if seen[name] == 0 {
			t.Errorf("%q is never the shortest: %v", name, seen)
		}
	}
	t.Log(seen)
}

func TestRefused(t *testing.T) {
	nan, inf := measure.Length(math.NaN()), measure.Length(math.Inf(1))
	for _, c := range []struct {
		p          rolls.Piece
		n          int
		width, gap measure.Length
		want       string
	}{
		{disc(570), 4, 500, 0, "width: 500 mm is narrower than the disc of 570 mm, allowed: 570 mm and more"},
		{disc(0), 4, 500, 0, "piece: 0 mm"},
		{disc(math.NaN()), 4, 500, 0, "piece: NaN mm"},
		{disc(5), 4, nan, 0, "width: NaN mm"},
		{disc(5), 4, inf, 0, "width: +Inf mm"},
		{disc(5), 4, -1, 0, "width: -1 mm"},
		{disc(5), 4, 50, -1, "gap: -1 mm"},
		{disc(5), 4, 50, inf, "gap: +Inf mm"},
		{disc(5), 0, 50, 0, "count: 0"},
		{disc(5), 2_000_000_000, 50, 0, "count: 2000000000"},
		{disc(0.001), 4, 50, 0, "width: 50 mm is over 10000 times"},
		{rolls.Piece{Shape: 7, Across: 5}, 4, 50, 0, "shape: 7"},
	} {
		_, err := rolls.Shortest(c.p, c.n, c.width, c.gap)
		if err == nil || !strings.HasPrefix(err.Error(), c.want) || !strings.Contains(err.Error(), "hint: ") {
			t.Errorf("got %v, want %q…", err, c.want)
		}
	}
	if _, err := rolls.Fit(disc(5), 50, nan, 0); err == nil || !strings.HasPrefix(err.Error(), "length: NaN mm") {
		t.Errorf("Fit on a length that is no number: %v", err)
	}
}

func BenchmarkShortest20(b *testing.B)    { benchmarkShortest(b, 20) }
func BenchmarkShortest10000(b *testing.B) { benchmarkShortest(b, 10_000) }

func benchmarkShortest(b *testing.B, n int) {
	for _, w := range []struct {
		name  string
		width measure.Length
	}{{"zigzag", 1000}, {"triples", 1300}, {"wide", 2400}} {
		b.Run(w.name, func(b *testing.B) {
			for b.Loop() {
				if _, err := rolls.Shortest(disc(570), n, w.width, 0); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
