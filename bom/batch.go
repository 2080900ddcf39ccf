package bom

import "silowright/geometry"

// Batch is how many of one kind of drum silo are built, and how many pipe
// silos go with them.
type Batch struct {
	Silo geometry.Silo
	Drum int
	Pipe int
}

// Batches shares out a build of so many drum and pipe silos over the kinds
// solved, one batch a kind in the same order. Drums are taken one at a time
// from the kind that is furthest behind its part of the job's own counts, and
// from no kind more than there are while another has any left. A further silo
// so never takes a drum of one kind away for one of another. Pipe silos are
// taken in the same order, and so there is a drum silo of the right kind for
// each as long as there are as many drum silos as pipe silos. Kinds of which
// the job counts none count as one each when all do.
func Batches(silos []geometry.Silo, drums, pipes int) []Batch {
	out := make([]Batch, len(silos))
	for i, s := range silos {
		out[i].Silo = s
	}
	for i, n := range deal(silos, drums) {
		out[i].Drum = n
	}
	for i, n := range deal(silos, pipes) {
		out[i].Pipe = n
	}
	return out
}

// deal takes n silos one by one: each from the kind with the largest
// Build/(2·taken + 1), the divisor rule of odd numbers, the first on a tie.
func deal(silos []geometry.Silo, n int) []int {
	weight := make([]int, len(silos))
	total := 0
	for i, s := range silos {
		weight[i] = max(0, s.Build)
		total += weight[i]
	}
	capped := total > 0
	if !capped {
		for i := range weight {
			weight[i] = 1
		}
	}
	taken := make([]int, len(silos))
	for k := 0; k < n && len(silos) > 0; k++ {
		best := -1
		for i, w := range weight {
			if w == 0 || capped && k < total && taken[i] >= w {
				continue
			}
			if best < 0 || w*(2*taken[best]+1) > weight[best]*(2*taken[i]+1) {
				best = i
			}
		}
		taken[best]++
	}
	return taken
}
