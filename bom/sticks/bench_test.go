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

// The same tasks, one after another, by this package and by GLPK and CBC, which
// are handed all patterns: the ratio of the times in the same run, less what
// the programs take for one variable (their start, and reading a file).
func BenchmarkAgainst(b *testing.B) {
	// The demo's second row in sixteenths of an inch.
	demo := []sticks.Task{{
		Pieces: []sticks.Piece{{38, 20, "stub"}, {112, 20, "tail"}, {72, 12, "spacer"}},
		Stock:  []sticks.Stock{{1920, 1245, -1, "10 ft"}},
		Kerf:   1,
	}}
	for _, c := range []struct {
		name  string
		tasks []sticks.Task
		other func(testing.TB, []byte) int64
	}{
		{"demo/GLPK", demo, glpk},
		{"demo/CBC", demo, cbc},
		{"random/GLPK", small(3, 20, 5), glpk},
		{"random/CBC", small(3, 20, 12), cbc},
	} {
		b.Run(c.name, func(b *testing.B) {
			nothing := program(sticks.Task{Pieces: pieces(1, 1), Stock: []sticks.Stock{{1, 1, -1, ""}}})
			var programs [][]byte
			for _, t := range c.tasks {
				programs = append(programs, program(t))
			}
			var ours, theirs, start time.Duration
			lap := func(f func() int64) (int64, time.Duration) {
				begin := time.Now()
				cost := f()
				return cost, time.Since(begin)
			}
			for b.Loop() {
				for i, t := range c.tasks {
					cost, d := lap(func() int64 { return solve(b, t).Cost })
					ours += d
					want, d := lap(func() int64 { return c.other(b, programs[i]) })
					theirs += d
					if cost != want {
						b.Fatalf("cost %d, want %d", cost, want)
					}
					_, d = lap(func() int64 { return c.other(b, nothing) })
					start += d
				}
			}
			b.ReportMetric(float64(theirs-start)/float64(ours), "x-faster")
			b.ReportMetric(0, "ns/op")
		})
	}
}
