package seed

import "math"

// studentT returns the t that a Student t variable with df degrees of freedom
// (≥ 1) stays within on both sides with probability conf (0 < conf < 1). From
// P(|T| ≤ t) = 1 − I_x(df/2, 1/2), x = df/(df + t²): Abramowitz & Stegun,
// Handbook of Mathematical Functions, 26.7.1.
func studentT(df int, conf float64) float64 {
	n := float64(df)
	inside := func(t float64) float64 { return 1 - betaShare(n/2, 0.5, n/(n+t*t)) }
	return invert(inside, conf)
}

// poissonMean returns the exact two-sided limits of the mean of a Poisson
// variable of which k was counted (Garwood 1936): half the chi-square
// quantiles with 2k and 2k + 2 degrees of freedom. The least is 0 for k = 0.
func poissonMean(k int, conf float64) (least, most float64) {
	tail := (1 - conf) / 2
	if k > 0 {
		least = invert(func(x float64) float64 { return gammaShare(float64(k), x) }, tail)
	}
	return least, invert(func(x float64) float64 { return gammaShare(float64(k)+1, x) }, 1-tail)
}

// invert returns the x ≥ 0 at which the rising f reaches p, by halving.
func invert(f func(float64) float64, p float64) float64 {
	low, high := 0.0, 1.0
	for range 60 {
		if f(high) >= p {
			break
		}
		low, high = high, high*2
	}
	for range 200 {
		mid := low + (high-low)/2
		if mid <= low || mid >= high {
			break
		}
		if f(mid) < p {
			low = mid
		} else {
			high = mid
		}
	}
	return low + (high-low)/2
}

const (
	// tiny keeps Lentz's continued fractions off a division by zero.
	tiny = 1e-300
	// roundOff ends a series or fraction.
	roundOff = 1e-16
)

// betaShare is the regularized incomplete beta function I_x(a, b), by its
// continued fraction (Abramowitz & Stegun 26.5.8) with Lentz's method.
func betaShare(a, b, x float64) float64 {
	switch {
	case x <= 0:
		return 0
	case x >= 1:
		return 1
	case x > (a+1)/(a+b+2):
		return 1 - betaShare(b, a, 1-x)
	}
	la, _ := math.Lgamma(a)
	lb, _ := math.Lgamma(b)
	lab, _ := math.Lgamma(a + b)
	front := math.Exp(lab-la-lb+a*math.Log(x)+b*math.Log1p(-x)) / a
	term := func(i int) float64 {
		m := float64(i / 2)
		if i%2 == 0 {
			return m * (b - m) * x / ((a + 2*m - 1) * (a + 2*m))
		}
		return -(a + m) * (a + b + m) * x / ((a + 2*m) * (a + 2*m + 1))
	}
	return front / lentz(1, func(i int) (num, den float64) { return term(i), 1 })
}

// gammaShare is the regularized lower incomplete gamma function P(a, x), by its
// series below a + 1 and by its continued fraction above it (Abramowitz &
// Stegun 6.5.29, 6.5.31).
func gammaShare(a, x float64) float64 {
	if x <= 0 {
		return 0
	}
	lg, _ := math.Lgamma(a)
	front := math.Exp(a*math.Log(x) - x - lg)
	if x < a+1 {
		sum, term := 1/a, 1/a
		for n := 1; n < maxTerms; n++ {
			term *= x / (a + float64(n))
			sum += term
			if term < sum*roundOff {
				break
			}
		}
		return front * sum
	}
	return 1 - front/lentz(x+1-a, func(i int) (num, den float64) {
		n := float64(i)
		return -n * (n - a), x + 2*n + 1 - a
	})
}

// maxTerms bounds a series: about the square root of the largest count, many
// times over.
const maxTerms = 100000

// lentz is the value of b0 + a1/(b1 + a2/(b2 + …)).
func lentz(b0 float64, part func(i int) (num, den float64)) float64 {
	f := b0
	if f == 0 {
		f = tiny
	}
	c, d := f, 0.0
	for i := 1; i < maxTerms; i++ {
		num, den := part(i)
		if d = den + num*d; d == 0 {
			d = tiny
		}
		if c = den + num/c; c == 0 {
			c = tiny
		}
		d = 1 / d
		step := c * d
		f *= step
		if math.Abs(step-1) < roundOff*4 {
			break
		}
	}
	return f
}
