package manifold

import "math"

// The Reynolds numbers between which neither law of friction holds. The flow
// there jumps from one to the other; so that the answer does not jump with it,
// the two are blended over the gap, which keeps the loss rising with the flow
// (common practice, no source).
const (
	laminarTo     = 2000.0
	turbulentFrom = 4000.0
)

// friction is the Darcy factor of a round pipe at Reynolds number re and
// relative roughness rel (at most 0.05, the end of Colebrook's range), and its
// slope by re: 64/Re for laminar flow, the exact root of Colebrook's equation
// for turbulent (Çengel & Cimbala, equations 8-23 and 8-50), a smooth blend
// between. re must be over 0.
func friction(re, rel float64) (f, slope float64) {
	if re <= laminarTo {
		return 64 / re, -64 / (re * re)
	}
	f, slope = colebrook(re, rel)
	if re >= turbulentFrom {
		return f, slope
	}
	t := (re - laminarTo) / (turbulentFrom - laminarTo)
	w, dw := t*t*(3-2*t), 6*t*(1-t)/(turbulentFrom-laminarTo)
	lam := 64 / re
	return lam + w*(f-lam), dw*(f-lam) + w*slope - (1-w)*lam/re
}

// colebrook solves x = −2 log10(rel/3.7 + 2.51 x/re), x = 1/√f, by Newton's
// method from Haaland's explicit estimate; the equation is so nearly straight
// in x that three steps reach the last digit.
func colebrook(re, rel float64) (f, slope float64) {
	const two = 2 / math.Ln10
	a, b := rel/3.7, 2.51/re
	x := -1.8 * math.Log10(math.Pow(a, 1.11)+6.9/re)
	var u float64
	for range 8 {
		u = a + b*x
		dx := (x + two*math.Log(u)) / (1 + two*b/u)
		x -= dx
		if math.Abs(dx) <= 1e-14*x {
			break
		}
	}
	u = a + b*x
	dx := two * x * b / (re * u) / (1 + two*b/u)
	f = 1 / (x * x)
	return f, -2 * f / x * dx
}
