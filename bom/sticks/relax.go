package sticks

import "math"

// column is one way to saw one stick.
type column struct {
	st    int     // index into inst.st
	takes []int64 // by index of the instance
}

// relax is the linear relaxation of an instance: the least cost if patterns
// could be used in part. Revised simplex with the inverse of the basis held in
// full; patterns are generated as they are wanted.
type relax struct {
	in    *inst
	rows  int   // one a piece, then one a limited stock
	limit []int // row of a limited stock, or −1
	inv   []float64
	x     []float64
	basis []int // a column, or −1−row for what is over in a row
	cols  []column
	y, e  []float64
	u     []int64 // worth of each piece, whole
	most  []int64 // no pattern of the stock is worth more
	ks    *knapsack
	scale float64
}

const tiny = 1e-9

func newRelax(in *inst, ks *knapsack) *relax {
	m := len(in.w)
	r := &relax{in: in, rows: m, ks: ks}
	ints := make([]int64, m+len(in.st))
	r.u, r.most = ints[:m], ints[m:]
	idx := make([]int, 0, 2*len(in.st)+m)
	for j := range in.st {
		row := -1
		if in.st[j].have >= 0 {
			row = r.rows
			r.rows++
		}
		idx = append(idx, row)
	}
	r.limit = idx
	n := r.rows
	f := make([]float64, n*n+3*n)
	r.inv, r.x, r.y, r.e = f[:n*n], f[n*n:n*n+n], f[n*n+n:n*n+2*n], f[n*n+2*n:]
	r.basis = make([]int, n)
	r.cols = make([]column, 0, 3*m+4)
	r.start()
	return r
}

// start makes each piece from sticks of its own, the cheapest for it.
func (r *relax) start() {
	in := r.in
	m := len(in.w)
	all := make([]int64, m*m)
	for i := range m {
		best, fit, cost := -1, int64(0), math.Inf(1)
		for j := range in.st {
			s := &in.st[j]
			room := s.short
			if in.long[i] {
				room = s.room
			}
			if a := min(room/in.w[i], in.d[i]); s.have < 0 && room >= in.w[i] {
				if c := float64(s.price) / float64(a); c < cost {
					best, fit, cost = j, a, c
				}
			}
		}
		takes := all[i*m : i*m+m]
		takes[i] = fit
		r.basis[i] = len(r.cols)
		r.cols = append(r.cols, column{best, takes})
		r.inv[i*r.rows+i] = 1 / float64(fit)
		r.x[i] = float64(in.d[i]) / float64(fit)
	}
	for j, row := range r.limit {
		if row >= 0 {
			r.basis[row] = -1 - row
			r.inv[row*r.rows+row] = 1
			r.x[row] = float64(in.st[j].have)
		}
	}
}

// prices sets y, the worth of one more in each row, of the present basis.
func (r *relax) prices() {
	clear(r.y)
	n := r.rows
	for k, b := range r.basis {
		if b < 0 {
			continue
		}
		if c := float64(r.in.st[r.cols[b].st].price); c != 0 {
			for i, v := range r.inv[k*n : k*n+n] {
				r.y[i] += float64(c * v)
			}
		}
	}
}

// enter brings a column into the basis, or what is over in a row (id −1−row).
// It reports whether it could.
func (r *relax) enter(id int) bool {
	n, m := r.rows, len(r.in.w)
	e := r.e
	if id >= 0 {
		c := &r.cols[id]
		lim := r.limit[c.st]
		for k := range n {
			row := r.inv[k*n : k*n+n]
			s := 0.0
			for i, a := range c.takes {
				if a != 0 {
					s += float64(float64(a) * row[i])
				}
			}
			if lim >= 0 {
				s += row[lim]
			}
			e[k] = s
		}
	} else {
		i := -1 - id
		sign := 1.0
		if i < m {
			sign = -1
		}
		for k := range n {
			e[k] = sign * r.inv[k*n+i]
		}
	}
	out, step := -1, math.Inf(1)
	for k, v := range e {
		if v > tiny {
			q := r.x[k] / v
			if q < step-1e-12 || q < step+1e-12 && out >= 0 && v > e[out] {
				out, step = k, q
			}
		}
	}
	if out < 0 {
		return false
	}
	step = max(step, 0)
	for k, v := range e {
		if k != out && v != 0 {
			r.x[k] -= float64(step * v)
			if r.x[k] < 0 {
				r.x[k] = 0
			}
		}
	}
	r.x[out] = step
	p := 1 / e[out]
	pivot := r.inv[out*n : out*n+n]
	for i := range pivot {
		pivot[i] *= p
	}
	for k, v := range e {
		if k != out && v != 0 {
			row := r.inv[k*n : k*n+n]
			for i, q := range pivot {
				row[i] -= float64(v * q)
			}
		}
	}
	r.basis[out] = id
	return true
}

// solve runs to the optimum, or to a limit of steps, and leaves whole worths u
// and most, from which the bound is certain however the simplex erred.
func (r *relax) solve() {
	m := len(r.in.w)
	for range 300 + 60*r.rows {
		if r.ks.spent += r.rows * r.rows / 8; r.ks.tired() {
			break
		}
		r.prices()
		id, worst := 0, -1e-9
		size := 1.0
		for i := range m {
			size = max(size, math.Abs(r.y[i]))
		}
		for i, v := range r.y {
			if i >= m {
				v = -v
			}
			if v < worst*size {
				worst, id = v/size, -1-i
			}
		}
		if id < 0 && r.enter(id) {
			continue
		}
		if !r.column() {
			return
		}
	}
	r.column()
}

// column sets u and most from y, and brings in the pattern that is worth most
// above its price. It reports whether there was one.
func (r *relax) column() bool {
	in, m := r.in, len(r.in.w)
	top := 0.0
	for j := range in.st {
		for i := range m {
			top = max(top, r.y[i]*float64(in.st[j].room)/float64(in.w[i]))
		}
	}
	r.scale = 1
	if top > 0 {
		r.scale = float64(int64(1)<<50) / top
	}
	for i := range m {
		r.u[i] = int64(max(0, r.y[i]) * r.scale)
	}
	r.ks.load(in, r.u)
	best, over := -1, 0.0
	for j := range in.st {
		s := &in.st[j]
		price := float64(s.price)
		if row := r.limit[j]; row >= 0 {
			price += max(0, -r.y[row])
		}
		floor := int64(price*r.scale) + 1<<14
		if r.ks.solve(s, floor) {
			if gain := float64(r.ks.value-floor) / r.scale; gain > over || best < 0 {
				if best < 0 {
					takes := make([]int64, m)
					r.cols = append(r.cols, column{j, takes})
				}
				best, over = j, gain
				c := &r.cols[len(r.cols)-1]
				c.st = j
				copy(c.takes, r.ks.best)
			}
		}
		r.most[j] = int64(math.Ceil(r.ks.upper))
	}
	if best < 0 {
		return false
	}
	for _, b := range r.basis {
		if b >= 0 && r.cols[b].st == best && same(r.cols[b].takes, r.cols[len(r.cols)-1].takes) {
			return false
		}
	}
	return r.enter(len(r.cols) - 1)
}

func same(a, b []int64) bool {
	for i, v := range a {
		if v != b[i] {
			return false
		}
	}
	return true
}
