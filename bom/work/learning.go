package work

import "math"

// factor is the unit-time form of the learning curve, T(n)/T(1) = n^b with
// b = ln r / ln 2: each doubling of the count takes r times as long a unit
// (operations textbooks; the form of J. R. Crawford). n counts from 1; below
// that the factor is 0. r is from above 0 to 1; what is outside gives 1, no
// learning.
func factor(n int, r float64) float64 {
	if n < 1 {
		return 0
	}
	return math.Pow(float64(n), exponent(r))
}

// direct is how many terms Sum adds up one by one.
const direct = 32

// Sum is Σ Factor(k, r) for k from 1 to n: how many times the first unit's time
// n units take together. Past the first terms it is the Euler–Maclaurin formula
// (NIST Digital Library of Mathematical Functions, 2.10.1) to the fifth
// derivative, which for r from 0.5 to 1 is within 1e-14 of the sum; so the work
// does not grow with n. Below 1 the sum is 0.
func Sum(n int, r float64) float64 {
	if n < 1 {
		return 0
	}
	b := exponent(r)
	sum := 0.0
	for k := 1; k <= n && k < direct; k++ {
		sum += math.Pow(float64(k), b)
	}
	if n < direct {
		return sum
	}
	return sum + powerSum(direct, float64(n), b)
}

func exponent(r float64) float64 {
	if !(r > 0 && r < 1) {
		return 0
	}
	return math.Log2(r)
}

// powerSum is Σ x^b for whole x from m to n: the integral, half of both ends,
// and B₂/2! f′ + B₄/4! f‴ + B₆/6! f⁗′ between them.
func powerSum(m, n, b float64) float64 {
	ratio := math.Log(n / m)
	integral := m * math.Pow(m, b) * ratio
	if c := b + 1; c != 0 {
		integral = math.Pow(m, c) * math.Expm1(c*ratio) / c
	}
	sum := integral + (math.Pow(m, b)+math.Pow(n, b))/2
	slope := b // falling product of b
	for i, weight := range []float64{1.0 / 12, -1.0 / 720, 1.0 / 30240} {
		p := float64(2*i + 1)
		sum += weight * slope * (math.Pow(n, b-p) - math.Pow(m, b-p))
		slope *= (b - p) * (b - p - 1)
	}
	return sum
}
