package sticks_test

import (
	"math/rand/v2"
	"testing"
	"time"

	"silowright/bom/sticks"
	"silowright/geometry/measure"
)

const inch = measure.Inch

// twenty are the pieces of a build of twenty silos, times n: nipples from 10 ft
// and 20 ft sticks, stubs and a stand from 10 ft (invented prices).
func twenty(n int) []sticks.Task {
	return []sticks.Task{
		{
			Pieces: []sticks.Piece{{2.5 * inch, 20 * n, "nipple"}},
			Stock:  []sticks.Stock{{120 * inch, 1245, -1, "10 ft"}, {240 * inch, 2199, -1, "20 ft"}},
			Kerf:   inch / 16,
		},
		{
			Pieces: []sticks.Piece{{2.375 * inch, 20 * n, "stub"}, {7 * inch, 20 * n, "tail"}, {4.5 * inch, 12 * n, "spacer"}},
			Stock:  []sticks.Stock{{120 * inch, 1245, -1, "10 ft"}},
			Kerf:   inch / 16,
		},
	}
}

// thirty are 30 different lengths, thousands of pieces, from three stock
// lengths, one of them on the rack.
func thirty() sticks.Task {
	r := rand.New(rand.NewPCG(30, 30))
	t := sticks.Task{Kerf: inch / 8, Trim: inch / 2}
	for range 30 {
		t.Pieces = append(t.Pieces, sticks.Piece{Length: inch * measure.Length(40+r.IntN(700)) / 16, Count: 50 + r.IntN(200)})
	}
	t.Stock = []sticks.Stock{{120 * inch, 1245, -1, "10 ft"}, {240 * inch, 2399, -1, "20 ft"}, {96 * inch, 0, 10, "rack"}}
	return t
}

func run(b *testing.B, tasks ...sticks.Task) {
	b.ReportAllocs()
	for b.Loop() {
		for _, t := range tasks {
			p, err := sticks.Solve(t)
			if err != nil {
				b.Fatal(err)
			}
			if !p.Proven {
				b.Logf("cost %d, bound %d", p.Cost, p.Bound)
			}
		}
	}
}

func BenchmarkDemo(b *testing.B)       { run(b, twenty(1)...) }
func Benchmark10000Silos(b *testing.B) { run(b, twenty(500)...) }
func Benchmark30Lengths(b *testing.B)  { run(b, thirty()) }

// The same small tasks, one after another, by this package and by GLPK and CBC,
// which are handed all patterns: the ratio of the times, in the same run.
func BenchmarkAgainstGLPK(b *testing.B) { against(b, glpk) }
func BenchmarkAgainstCBC(b *testing.B)  { against(b, cbc) }

func against(b *testing.B, other func(testing.TB, []byte) int64) {
	tasks := small(3, 20, 5)
	var programs [][]byte
	for _, t := range tasks {
		programs = append(programs, program(t))
	}
	var ours, theirs time.Duration
	for b.Loop() {
		for i, t := range tasks {
			start := time.Now()
			p := solve(b, t)
			ours += time.Since(start)
			start = time.Now()
			if want := other(b, programs[i]); want != p.Cost {
				b.Fatalf("cost %d, want %d", p.Cost, want)
			}
			theirs += time.Since(start)
		}
	}
	b.ReportMetric(float64(theirs)/float64(ours), "x-faster")
}
