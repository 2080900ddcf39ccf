package rolls

// deepest is the extent up to which patterns are tried across the roll as
// well: a longer run is as well along it.
const deepest = 8

// crosswise looks for a run shorter than the extent whose pattern lies across
// the roll: the narrowest strip, as long as the roll is wide, that takes n.
// A wider strip never takes fewer, so it is found by halving.
func crosswise(n int, w, extent float64) (pattern, float64, bool) {
	takes := func(e float64) (pattern, bool) {
		run, across := least(patterns(Disc, e), n)
		return run, across <= w+slack
	}
	high := extent * (1 - 1e-6)
	if high > deepest || high <= 0 {
		return nil, 0, false
	}
	run, ok := takes(high)
	if !ok {
		return nil, 0, false
	}
	for low := bound(Disc, n, w) * (1 - 1e-9); high-low > 1e-12; {
		mid := (low + high) / 2
		if mid <= low || mid >= high {
			break
		}
		if r, ok := takes(mid); ok {
			run, high = r, mid
		} else {
			low = mid
		}
	}
	return run, high, true
}
