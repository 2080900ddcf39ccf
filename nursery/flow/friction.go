package flow

import "math"

// Reynolds numbers between which the flow in a pipe turns from laminar to
// turbulent.
const (
	laminarEnd     = 2000.0
	turbulentStart = 4000.0
)

// The factors of Colebrook's equation (1939), and Hagen and Poiseuille's.
const (
	colebrookRough  = 3.7
	colebrookSmooth = 2.51
	laminarFactor   = 64
)

// Friction returns the Darcy friction factor f of a round pipe running full,
// and df/dRe, for the Reynolds number re (on the bore) and the roughness over
// the bore.
//
// Up to Re 2000 it is Hagen and Poiseuille's 64/Re; from Re 4000 the equation
// of Colebrook (1939), 1/√f = −2·log₁₀(rough/3.7 + 2.51/(Re·√f)), solved to
// the last digits. Between, where no flow is steady, ln f is the cubic in ln Re
// that meets both with their slopes (this program's choice): f and df/dRe are
// continuous, and f·Re², so the head lost, rises with Re all the way, since
// the slope of ln f never goes below −1.
//
// Colebrook's equation is charted for roughness up to 0.05 of the bore and Re
// up to 1e8 (Moody 1944). Outside, re is taken as no less than 1e-9 and no
// more than 1e12, roughness as no less than 0 and no more than 1; f is finite
// for every input but NaN. The sign of re does not matter to f.
func Friction(re, rough float64) (f, dfdRe float64) {
	sign := 1.0
	if re < 0 {
		re, sign = -re, -1
	}
	re = math.Min(math.Max(re, 1e-9), 1e12)
	rough = math.Min(math.Max(rough, 0), 1)
	switch {
	case re <= laminarEnd:
		f = laminarFactor / re
		dfdRe = -f / re
	case re >= turbulentStart:
		f, dfdRe = colebrook(re, rough)
	default:
		f, dfdRe = transition(re, rough)
	}
	return f, sign * dfdRe
}

// colebrook solves for x = 1/√f: x + k·ln(a + b·x) = 0 with k = 2/ln 10,
// a = rough/3.7, b = 2.51/Re. The left side is concave and rises, so Newton's
// steps, from the second on, climb to the root without passing it.
func colebrook(re, rough float64) (f, dfdRe float64) {
	const k = 2 / math.Ln10
	a, b := rough/colebrookRough, colebrookSmooth/re
	// One step of the fixed point from x = 7, f = 0.02, comes within 6 % of the
	// root; a Newton step of 1e-8 leaves an error under 1e-16.
	x := math.Max(0.5, -k*math.Log(a+b*7))
	for range 20 {
		u := a + b*x
		step := (x + k*math.Log(u)) / (1 + k*b/u)
		x -= step
		if math.Abs(step) <= 1e-8*x {
			break
		}
	}
	u := a + b*x
	dx := k * b * x / (re * u) / (1 + k*b/u)
	return 1 / (x * x), -2 * dx / (x * x * x)
}

// transition is the cubic in logarithms between laminarEnd and turbulentStart.
func transition(re, rough float64) (f, dfdRe float64) {
	const y0 = -3.4420193761824103 // ln(64/2000)
	top, dtop := colebrook(turbulentStart, rough)
	span := math.Log(turbulentStart / laminarEnd)
	t := math.Log(re/laminarEnd) / span
	rise := math.Log(top) - y0
	m0, m1 := -span, span*dtop*turbulentStart/top // slopes in t at both ends
	// y = y0 + m0·t + c2·t² + c3·t³
	c2 := 3*rise - 2*m0 - m1
	c3 := m0 + m1 - 2*rise
	f = math.Exp(y0 + t*(m0+t*(c2+t*c3)))
	slope := (m0 + t*(2*c2+t*3*c3)) / span // d ln f / d ln Re
	return f, slope * f / re
}
