package build

import (
	"runtime"
	"slices"
	"sync"

	"silowright/bom/money"
)

// Point is what one size of build costs.
type Point struct {
	Drums    int         `json:"drum_silos"`
	Pipes    int         `json:"pipe_silos"`
	Total    money.Money `json:"total"`
	PerDrum  money.Money `json:"per_drum_silo"`
	PerPipe  money.Money `json:"per_pipe_silo"`
	NextDrum money.Money `json:"next_drum_silo"` // what one drum silo more would add; not worked out for the curve
	NextPipe money.Money `json:"next_pipe_silo"`
	Own      bool        `json:"own"` // the counts asked for
}

// named are the sizes of build that a builder asks after.
var named = []int{5, 10, 20, 50}

// Points are the costs at 5, 10, 20 and 50 silos and at the build's own count,
// smallest first, each with what one silo more would add. Pipe silos go with
// the drum silos in the build's own proportion, to the nearest whole one;
// without drum silos pipe silos alone are counted.
func (s Site) Points(drums, pipes int) ([]Point, error) {
	counts := append([]int{}, named...)
	if own := size(drums, pipes); own > 0 {
		counts = append(counts, own)
	}
	slices.Sort(counts)
	return s.along(slices.Compact(counts), drums, pipes, func(at *Point) (err error) {
		if at.NextDrum, err = s.next(*at, at.Drums+1, at.Pipes); err == nil {
			at.NextPipe, err = s.next(*at, at.Drums, at.Pipes+1)
		}
		return err
	})
}

// along works out a point for each size, several at a time; more is asked of
// each. Points do not depend on one another, so that the order they are worked
// out in does not show.
func (s Site) along(sizes []int, drums, pipes int, more func(*Point) error) ([]Point, error) {
	out, errs := make([]Point, len(sizes)), make([]error, len(sizes))
	var wait sync.WaitGroup
	next := make(chan int)
	for range min(len(sizes), runtime.GOMAXPROCS(0)) {
		wait.Go(func() {
			for i := range next {
				d, p := sized(sizes[i], drums, pipes)
				if out[i], errs[i] = s.point(d, p); errs[i] == nil && more != nil {
					errs[i] = more(&out[i])
				}
				out[i].Own = d == drums && p == pipes
			}
		})
	}
	for i := range sizes {
		next <- i
	}
	close(next)
	wait.Wait()
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	return out, nil
}

// most is how many places the curve is worked out at.
const most = 24

// Curve is the cost from 1 silo to the build's own count, or to 50 when that is
// more: at every count when they are few, else at 24 of them, smaller ones
// closer together, with the build's own among them.
func (s Site) Curve(drums, pipes int) ([]Point, error) {
	own := size(drums, pipes)
	return s.along(counts(max(own, named[len(named)-1]), own), drums, pipes, nil)
}

// size is what a build is counted by: its drum silos, or its pipe silos when
// it has no others.
func size(drums, pipes int) int {
	if drums > 0 {
		return drums
	}
	return pipes
}

// counts are the sizes the curve is worked out at, ascending.
func counts(end, own int) []int {
	out := []int{}
	for n := 1; n <= end; {
		out = append(out, n)
		// A third of the places go one by one; then each step is what spreads the
		// rest evenly over what is left.
		step := 1
		if left := most - len(out); n >= most/3 {
			step = max(1, (end-n+max(1, left)-1)/max(1, left))
		}
		n += step
	}
	for _, n := range append([]int{own, end}, named...) {
		if n >= 1 && n <= end {
			out = append(out, n)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// sized is a build of n silos with pipe silos in proportion.
func sized(n, drums, pipes int) (d, p int) {
	if drums <= 0 {
		return 0, n
	}
	return n, (2*n*pipes + drums) / (2 * drums)
}

func (s Site) point(d, p int) (Point, error) {
	c, err := s.Cost(d, p)
	return Point{Drums: d, Pipes: p, Total: c.Total, PerDrum: c.PerDrum, PerPipe: c.PerPipe}, err
}

// next is what a build of other counts costs more than a point.
func (s Site) next(at Point, d, p int) (money.Money, error) {
	c, err := s.Cost(d, p)
	if err != nil {
		return money.Money{}, err
	}
	return c.Total.Plus(money.Money{Minor: -at.Total.Minor, Currency: at.Total.Currency})
}
