package sticks

import (
	"math"
	"slices"
)

// search is branch and bound over whole sticks. The next stick holds the
// longest piece still wanted; it takes a pattern to which no piece can be added
// and in which none can be swapped for a longer one, and none that comes before
// the last stick's in the order of patterns. (Among best plans take the one
// whose sticks, sorted by pattern, come first: it keeps all three, for adding
// or swapping would put it before itself.) Branches end where a cut shows that
// the rest costs as much as the best plan.
type search struct {
	s     *solver
	in    *inst
	st    state
	left  int
	bars  []bar
	fixed int64 // cost so far
	gaps  int   // cases left out
	seen  map[string]seen
	key   []byte
}

// seen is a state that held no plan for so much, none of its sticks before last.
type seen struct {
	budget int64
	last   []int64
	st     int
}

const (
	mostBranches = 4000
	mostSeen     = 200000
)

// search looks for a plan cheaper than the best that begins with bars. It
// reports whether it saw every case.
func (s *solver) search(st state, bars []bar, steps int) bool {
	total := int64(0)
	for _, d := range st.d {
		total += d
	}
	if total > 3000 {
		return false
	}
	h := &search{s: s, in: s.in, st: st, left: steps, bars: bars, fixed: cost(s.in, bars), seen: map[string]seen{}}
	h.node(nil, -1)
	return h.gaps == 0
}

// rest is a cost that what is wanted takes at least, by all cuts.
func (h *search) rest() int64 {
	in, least := h.in, int64(0)
	for ci := range h.s.cuts {
		c := &h.s.cuts[ci]
		need := 0.0
		for i, d := range h.st.d {
			need += float64(float64(c.u[i]) * float64(d))
		}
		// Cheapest worth first; few stocks, so by repeated search.
		total, last := 0.0, -1.0
		lastj := -1
		for need > 0 {
			pick, rate := -1, math.Inf(1)
			for j := range in.st {
				if c.most[j] <= 0 || h.st.have[j] == 0 {
					continue
				}
				r := float64(in.st[j].price) / float64(c.most[j])
				if (r > last || r == last && j > lastj) && r < rate {
					pick, rate = j, r
				}
			}
			if pick < 0 {
				return math.MaxInt64
			}
			last, lastj = rate, pick
			worth := float64(c.most[pick]) * float64(h.st.have[pick])
			if h.st.have[pick] < 0 || worth >= need {
				total += float64(need * rate)
				break
			}
			need -= worth
			total += float64(worth * rate)
		}
		// The margin is far above the rounding of these sums.
		least = max(least, int64(math.Ceil(float64(total*(1-1e-9))-1e-6)))
	}
	return roundUp(least, h.s.unit)
}

type branch struct {
	st    int
	takes []int64
	loss  float64
}

func (h *search) node(last []int64, lastStick int) {
	s := h.s
	if h.st.done() {
		if s.cost < 0 || h.fixed < s.cost {
			s.offer(append([]bar(nil), h.bars...))
		}
		return
	}
	if h.left--; h.left < 0 {
		h.gaps++
		return
	}
	if rest := h.rest(); rest == math.MaxInt64 || s.cost >= 0 && rest >= s.cost-h.fixed {
		return
	}
	key := h.state()
	if e, ok := h.seen[key]; ok && s.cost-h.fixed <= e.budget && !before(last, lastStick, e.last, e.st) {
		return
	}
	gaps := h.gaps
	list := h.branches(last, lastStick)
	for _, b := range list {
		n := int64(1)
		h.saw(b, n)
		h.node(b.takes, b.st)
		h.unsaw(b, n)
		if s.proven() || h.left < 0 {
			h.gaps++ // what follows was not seen
			return
		}
	}
	if gaps == h.gaps && len(h.seen) < mostSeen {
		h.seen[key] = seen{s.cost - h.fixed, last, lastStick}
	}
}

func (h *search) saw(b branch, n int64) {
	for i, a := range b.takes {
		h.st.d[i] -= a * n
	}
	if h.st.have[b.st] >= 0 {
		h.st.have[b.st] -= n
	}
	h.fixed += n * h.in.st[b.st].price
	h.bars = append(h.bars, bar{b.st, n, b.takes})
}

func (h *search) unsaw(b branch, n int64) {
	for i, a := range b.takes {
		h.st.d[i] += a * n
	}
	if h.st.have[b.st] >= 0 {
		h.st.have[b.st] += n
	}
	h.fixed -= n * h.in.st[b.st].price
	h.bars = h.bars[:len(h.bars)-1]
}

// state writes what is wanted and there as a map's key.
func (h *search) state() string {
	h.key = h.key[:0]
	for _, list := range [2][]int64{h.st.d, h.st.have} {
		for _, v := range list {
			h.key = append(h.key, byte(v), byte(v>>8), byte(v>>16), byte(v>>24), byte(v>>32), byte(v>>40))
		}
	}
	return string(h.key)
}

// before reports whether pattern a of stock i comes before b of j in the order
// of sticks: more of the longest piece first, then by stock. No pattern (nil)
// comes before all.
func before(a []int64, i int, b []int64, j int) bool {
	if b == nil {
		return false
	}
	if a == nil {
		return true
	}
	if c := slices.Compare(a, b); c != 0 {
		return c > 0
	}
	return i < j
}

// branches lists the patterns that the next stick may have, best first.
func (h *search) branches(last []int64, lastStick int) []branch {
	var out []branch
	in := h.in
	first := 0
	for h.st.d[first] == 0 {
		first++
	}
	takes := make([]int64, len(in.w))
	for j := range in.st {
		if h.st.have[j] == 0 {
			continue
		}
		h.patterns(j, first, first, 0, false, takes, func() {
			if before(takes, j, last, lastStick) {
				return
			}
			c := &h.s.cuts[0]
			worth := int64(0)
			for i, a := range takes {
				worth += a * c.u[i]
			}
			loss := float64(c.most[j]-worth) / float64(max(1, c.most[j])) * float64(max(1, in.st[j].price))
			out = append(out, branch{j, slices.Clone(takes), loss})
		}, &out)
	}
	slices.SortStableFunc(out, func(a, b branch) int {
		switch {
		case a.loss < b.loss:
			return -1
		case a.loss > b.loss:
			return 1
		}
		return slices.Compare(b.takes, a.takes)
	})
	return out
}

// patterns calls yield for each pattern of stock j with a piece first.
func (h *search) patterns(j, first, i int, used int64, long bool, takes []int64, yield func(), out *[]branch) {
	in := h.in
	if h.left--; h.left < 0 || len(*out) >= mostBranches {
		h.gaps++
		return
	}
	s := &in.st[j]
	if i == len(in.w) {
		h.left -= i
		if s.allowed(used, long) && h.tight(j, used, long, takes) {
			yield()
		}
		return
	}
	most := int64(0)
	if s.room > used {
		most = min(h.st.d[i], (s.room-used)/in.w[i])
	}
	least := int64(0)
	if i == first {
		least = 1
	}
	for a := most; a >= least; a-- {
		takes[i] = a
		h.patterns(j, first, i+1, used+a*in.w[i], long || a > 0 && in.long[i], takes, yield, out)
	}
	takes[i] = 0
}

// tight reports whether no piece still wanted can be added to the pattern and
// none in it be swapped for a longer one.
func (h *search) tight(j int, used int64, long bool, takes []int64) bool {
	in, s := h.in, &h.in.st[j]
	for a, w := range in.w {
		if h.st.d[a] == takes[a] {
			continue
		}
		if s.allowed(used+w, long || in.long[a]) {
			return false
		}
		for b := a + 1; b < len(in.w); b++ {
			if takes[b] > 0 && in.long[a] == in.long[b] && s.allowed(used+w-in.w[b], long) {
				return false
			}
		}
	}
	return true
}
