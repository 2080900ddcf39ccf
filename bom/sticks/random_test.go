package sticks_test

import (
	"fmt"
	"math"
	"math/rand/v2"

	"silowright/bom/sticks"
	"silowright/geometry/measure"
)

// shape bounds a random task.
type shape struct {
	kinds, count, stocks int
	limited              bool // sticks on the rack and limited numbers on sale
}

// random is a task with lengths in whole millimetres. Its last stock is on sale
// in any number and gives every piece.
func random(r *rand.Rand, s shape) sticks.Task {
	long := 200 + r.IntN(800)
	t := sticks.Task{Kerf: measure.Length(r.IntN(4)), Trim: measure.Length(r.IntN(2) * r.IntN(12))}
	if r.IntN(3) == 0 {
		t.Hold = measure.Length(r.IntN(long / 5))
	}
	for range max(1+r.IntN(s.kinds), 1+r.IntN(s.kinds)) {
		l := 10 + r.IntN(long*6/10)
		if r.IntN(2) == 0 {
			l = long/8 + r.IntN(long/2)
		}
		t.Pieces = append(t.Pieces, sticks.Piece{Length: measure.Length(l), Count: 1 + r.IntN(s.count)})
	}
	n := 1 + r.IntN(s.stocks)
	for j := range n {
		l := long
		if j < n-1 {
			l = long*3/10 + r.IntN(long)
		}
		st := sticks.Stock{Length: measure.Length(l), Have: -1, Price: int64(l) * int64(80+r.IntN(60)) / 100}
		if j < n-1 && s.limited {
			switch r.IntN(3) {
			case 0:
				st.Price, st.Have = 0, 1+r.IntN(3)
			case 1:
				st.Have = 1 + r.IntN(4)
			}
		}
		if n == 1 && r.IntN(2) == 0 {
			st.Price = 1
		}
		t.Stock = append(t.Stock, st)
	}
	// The last stock must give each piece alone.
	last := &t.Stock[n-1]
	for _, p := range t.Pieces {
		need := p.Length + t.Trim
		if p.Length < t.Hold {
			need += t.Kerf + t.Hold
		}
		last.Length = max(last.Length, need)
	}
	return t
}

// ways lists all the ways to saw one stick of the stock, by the rule in the
// words of the trade: after the trim, pieces and kerfs one after the other, the
// last cut left out where the stick ends there or within the kerf.
func ways(t sticks.Task, stock int) (all [][]int) {
	usable := int(t.Stock[stock].Length - t.Trim)
	takes := make([]int, len(t.Pieces))
	var next func(i, left, longest int)
	next = func(i, left, longest int) {
		if i == len(takes) {
			if left != usable && (longest >= int(t.Hold) || left >= int(t.Hold)) {
				all = append(all, append([]int(nil), takes...))
			}
			return
		}
		l := int(t.Pieces[i].Length)
		for n := 0; n <= t.Pieces[i].Count; n++ {
			takes[i] = n
			next(i+1, left, longest)
			if left < l {
				break
			}
			longest = max(longest, l)
			left = max(0, left-l-int(t.Kerf))
			if left == 0 && n+1 < t.Pieces[i].Count {
				// nothing more fits: take this one and stop
				takes[i] = n + 1
				next(i+1, 0, longest)
				break
			}
		}
		takes[i] = 0
	}
	next(0, usable, 0)
	return all
}

// least is the cost of the best plan by trying everything, or MaxInt64.
func least(t sticks.Task) int64 {
	var lists [][][]int
	for j := range t.Stock {
		lists = append(lists, ways(t, j))
	}
	memo := map[string]int64{}
	var best func(d, have []int) int64
	best = func(d, have []int) int64 {
		first := -1
		for i, n := range d {
			if n > 0 {
				first = i
				break
			}
		}
		if first < 0 {
			return 0
		}
		key := fmt.Sprint(d, have)
		if v, ok := memo[key]; ok {
			return v
		}
		v := int64(math.MaxInt64)
		for j, list := range lists {
			if have[j] == 0 {
				continue
			}
		way:
			for _, w := range list {
				if w[first] == 0 {
					continue
				}
				for i, n := range w {
					if n > d[i] {
						continue way
					}
				}
				for i, n := range w {
					d[i] -= n
				}
				have[j]--
				if rest := best(d, have); rest < math.MaxInt64 {
					v = min(v, rest+t.Stock[j].Price)
				}
				have[j]++
				for i, n := range w {
					d[i] += n
				}
			}
		}
		memo[key] = v
		return v
	}
	var d, have []int
	pieces := 0
	for _, p := range t.Pieces {
		d = append(d, p.Count)
		pieces += p.Count
	}
	for _, s := range t.Stock {
		h := s.Have
		if h < 0 || h > pieces {
			h = pieces
		}
		have = append(have, h)
	}
	return best(d, have)
}
