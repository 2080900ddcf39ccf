package sticks

import "slices"

// knapsack finds the pattern of most worth from one stick, by branch and bound
// over the pieces in the order of worth for length, in whole numbers. Bounds
// are floating point with a margin above any rounding error, so that no
// pattern is lost.
type knapsack struct {
	order []int
	w, u  []int64
	b     []int64
	ratio []float64
	least []int64 // the least a piece from here on takes
	later []bool  // whether a long piece comes from here on
	long  []bool
	take  []int64
	best  []int64 // by index of the instance

	room, lack int64 // lack: how much less there is room for without a long piece
	value      int64
	upper      float64
	tol        float64 // branches that may gain no more are left, and counted in upper
	found      bool
	nodes      int // to go
	spent      int // work done for this task so far, in nodes
}

// Limits of work, so that every task ends, and always with the same plan: nodes
// of one knapsack, fewer once a task has had its share, and of all together.
const (
	knapsackNodes = 2_000_000
	tiredNodes    = 20_000
	share         = 20_000_000
	mostWork      = 100_000_000
	margin        = 1 + 1e-12
)

// tired reports whether the task has had all the work it may have.
func (k *knapsack) tired() bool { return k.spent > mostWork }

func newKnapsack(n int) *knapsack {
	a := make([]int64, 6*n)
	f := make([]bool, 2*n+2)
	return &knapsack{
		order: make([]int, 0, n), ratio: make([]float64, n+1),
		w: a[:0:n], u: a[n : n : 2*n], b: a[2*n : 2*n : 3*n], take: a[3*n : 4*n], best: a[4*n : 5*n],
		least: make([]int64, n+1), later: f[: n+1 : n+1], long: f[n+1 : n+1],
	}
}

// load takes worths u for the pieces of in.
func (k *knapsack) load(in *inst, u []int64) {
	k.order = k.order[:0]
	for i := range in.w {
		if u[i] > 0 && in.d[i] > 0 {
			k.order = append(k.order, i)
			k.ratio[i] = float64(u[i]) / float64(in.w[i])
		}
	}
	ratio := k.ratio
	if len(k.order) <= 12 {
		for i := 1; i < len(k.order); i++ {
			for j := i; j > 0 && ratio[k.order[j]] > ratio[k.order[j-1]]; j-- {
				k.order[j], k.order[j-1] = k.order[j-1], k.order[j]
			}
		}
	} else {
		slices.SortStableFunc(k.order, func(a, b int) int {
			switch {
			case ratio[a] > ratio[b]:
				return -1
			case ratio[a] < ratio[b]:
				return 1
			}
			return 0
		})
	}
	k.w, k.u, k.b, k.long = k.w[:0], k.u[:0], k.b[:0], k.long[:0]
	for _, i := range k.order {
		k.w, k.u, k.b, k.long = append(k.w, in.w[i]), append(k.u, u[i]), append(k.b, in.d[i]), append(k.long, in.long[i])
	}
	n := len(k.order)
	for i := range n {
		k.ratio[i] = float64(k.u[i]) / float64(k.w[i]) * margin
	}
	if n == 0 {
		k.ratio[0] = 0
	}
	k.least[n], k.later[n] = 1<<62, false
	for i := n - 1; i >= 0; i-- {
		k.least[i] = min(k.least[i+1], k.w[i])
		k.later[i] = k.later[i+1] || k.long[i]
	}
}

// solve finds the pattern of most worth from the stick if that is above floor.
// k.value is its worth, or floor; k.upper a worth that no pattern exceeds.
func (k *knapsack) solve(s *stick, floor int64) bool {
	k.room, k.lack = s.room, s.room-s.short
	k.value, k.upper, k.found, k.nodes = floor, 0, false, knapsackNodes
	if k.spent > share {
		k.nodes = tiredNodes
	}
	had := k.nodes
	clear(k.take)
	// Whole numbers so small that the margin is below a thousandth differ by 1.
	k.tol = 0.999
	if top := float64(s.room) * k.ratio[0]; top > 1<<29 {
		k.tol = top * 0x1p-38
	}
	k.dive(0, s.room, 0, false)
	k.spent += had - k.nodes
	k.upper = max(k.upper, float64(k.value))
	return k.found
}

func (k *knapsack) dive(i int, rest, v int64, long bool) {
	if v > k.value && (long || k.room-rest <= k.room-k.lack) {
		k.value, k.found = v, true
		clear(k.best)
		for j := range i {
			k.best[k.order[j]] = k.take[j]
		}
	}
	n := len(k.order)
	free := rest
	if !long && i < n && !k.later[i] {
		free -= k.lack
	}
	if i == n || free < k.least[i] {
		return
	}
	for k.w[i] > free {
		k.take[i] = 0
		i++
	}
	bound := float64(v) + float64(float64(free)*k.ratio[i])
	if k.poor(bound) {
		return
	}
	for a := min(k.b[i], free/k.w[i]); a >= 0; a-- {
		if k.nodes--; k.nodes < 0 {
			k.upper = max(k.upper, bound+1)
			break
		}
		r, x := rest-a*k.w[i], v+a*k.u[i]
		if i+1 < n {
			if k.poor(float64(x) + float64(float64(r)*k.ratio[i+1])) {
				break
			}
		} else if x <= k.value {
			break
		}
		k.take[i] = a
		k.dive(i+1, r, x, long || a > 0 && k.long[i])
	}
	k.take[i] = 0
}

// poor reports whether a bound on worth is too little above the best to follow.
func (k *knapsack) poor(bound float64) bool {
	if bound >= float64(k.value)+k.tol {
		return false
	}
	if k.tol > 1 {
		k.upper = max(k.upper, bound+1)
	}
	return true
}
