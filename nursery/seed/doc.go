// Package seed reckons what a nursery's seed needs: what mesh holds it, how
// many there are by a counted sample, how many pipe and drum silos and how much
// water it takes week by week, and what share of that water it clears of food.
//
// A published relation is used inside the range its source covers and nowhere
// else: outside it the function returns a *RangeError. Every other number is
// the grower's own, with an editable default marked common practice, no source.
//
// The package is pure: no files, no clock, no state. Lengths of shells and
// openings of sieves are two types, Shell and Sieve; only the grower's own
// ratio turns one into the other.
package seed
