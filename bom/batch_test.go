package bom

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"silowright/geometry"
)

func kindsOf(builds ...int) []geometry.Silo {
	var out []geometry.Silo
	for _, n := range builds {
		out = append(out, geometry.Silo{Build: n})
	}
	return out
}

func drumsOf(batches []Batch) []int {
	var out []int
	for _, b := range batches {
		out = append(out, b.Drum)
	}
	return out
}

func TestBatches(t *testing.T) {
	for _, c := range []struct {
		reason string
		builds []int
		n      int
		want   []int
	}{
		{"the job's own counts", []int{7, 5}, 12, []int{7, 5}},
		{"none", []int{7, 5}, 0, []int{0, 0}},
		{"one, of the larger lot", []int{5, 7}, 1, []int{0, 1}},
		{"half of them", []int{8, 4}, 6, []int{4, 2}},
		{"never more of a kind than there are", []int{19, 1}, 20, []int{19, 1}},
		{"past the drums there are, in proportion", []int{2, 1}, 30, []int{20, 10}},
		{"a kind without drums gets none", []int{4, 0}, 9, []int{9, 0}},
		{"nothing counted", []int{0, 0}, 3, []int{2, 1}},
	} {
		if got := drumsOf(Batches(kindsOf(c.builds...), c.n, 0)); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.reason, got, c.want)
		}
	}
	if got := Batches(nil, 5, 5); len(got) != 0 {
		t.Errorf("no kinds: %v", got)
	}
}

// Whatever the lots: the counts add up, one more silo takes none away, no kind
// is off its proportion by two or more while drums last, and with as many drum
// as pipe silos each pipe silo has its drum silo.
func TestBatchesAtRandom(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 300 {
		builds := make([]int, 1+r.IntN(5))
		all := 0
		for i := range builds {
			builds[i] = r.IntN(12)
			all += builds[i]
		}
		kinds := kindsOf(builds...)
		before := make([]int, len(builds))
		for n := 0; n <= all+3; n++ {
			b := Batches(kinds, n, n/2)
			sum, pipes := 0, 0
			for i := range b {
				sum, pipes = sum+b[i].Drum, pipes+b[i].Pipe
				if b[i].Drum < before[i] {
					t.Fatalf("%v: silo %d takes one of kind %d away", builds, n, i)
				}
				if b[i].Pipe > b[i].Drum {
					t.Fatalf("%v: %d pipe silos for %d drum silos of kind %d", builds, b[i].Pipe, b[i].Drum, i)
				}
				if n <= all && all > 0 {
					if b[i].Drum > builds[i] {
						t.Fatalf("%v: %d of %d drums of kind %d", builds, b[i].Drum, builds[i], i)
					}
					if part := float64(n) * float64(builds[i]) / float64(all); math.Abs(part-float64(b[i].Drum)) >= 2 {
						t.Fatalf("%v, %d silos: %d of kind %d, in proportion %.2f", builds, n, b[i].Drum, i, part)
					}
				}
				before[i] = b[i].Drum
			}
			if sum != n || pipes != n/2 {
				t.Fatalf("%v: %d drum and %d pipe silos of %d and %d", builds, sum, pipes, n, n/2)
			}
		}
	}
}
