package flow

import "math"

// root finds where the rising function f crosses nought between lo and hi, by
// Chandrupatla's method (1997): inverse quadratic steps where they are safe,
// halving where they are not. When f does not change sign the nearer end is
// returned. It ends when the bracket is a few last digits wide.
func root(f func(float64) float64, lo, hi float64) float64 {
	b, a := lo, hi // b is the newer
	fb, fa := f(b), f(a)
	switch {
	case fb >= 0:
		return lo
	case fa <= 0:
		return hi
	}
	c, fc := a, fa
	t := 0.5
	for range 200 {
		x := a + t*(b-a)
		fx := f(x)
		if (fx > 0) == (fa > 0) {
			c, fc = a, fa
		} else {
			c, fc = b, fb
			b, fb = a, fa
		}
		a, fa = x, fx
		best := a
		if math.Abs(fb) < math.Abs(fa) {
			best = b
		}
		tol := 4e-16*math.Abs(best) + 1e-300
		limit := tol / math.Abs(b-a)
		if limit > 0.5 || fa == 0 {
			return best
		}
		xi := (a - b) / (c - b)
		phi := (fa - fb) / (fc - fb)
		if phi*phi < xi && (1-phi)*(1-phi) < 1-xi {
			t = fa/(fb-fa)*fc/(fb-fc) + (c-a)/(b-a)*fa/(fc-fa)*fb/(fc-fb)
		} else {
			t = 0.5
		}
		t = math.Min(1-limit, math.Max(limit, t))
	}
	return a
}

// newton finds the same with the slope of f known, from a first guess: Newton's
// steps, and a halving of the bracket where one would leave it or the last did
// not halve the value. It ends when a step is under tol of x.
func newton(f func(x float64) (y, slope float64), lo, hi, x, tol float64) float64 {
	if !(x > lo && x < hi) {
		x = lo + (hi-lo)/2
	}
	last := math.Inf(1)
	for range 200 {
		y, slope := f(x)
		switch {
		case y > 0:
			hi = x
		case y < 0:
			lo = x
		default:
			return x
		}
		next := x - y/slope
		if !(next > lo && next < hi) || math.Abs(y) > 0.5*last {
			next = lo + (hi-lo)/2
			last = math.Inf(1)
		} else {
			last = math.Abs(y)
		}
		step := math.Abs(next - x)
		x = next
		if step <= tol*math.Abs(x) {
			break
		}
	}
	return x
}
