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
