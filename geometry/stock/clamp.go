package stock

import (
	"strconv"

	"silowright/geometry/measure"
)

// Clamp is a worm-drive band clamp, with the diameters it closes on.
type Clamp struct {
	Size     string // "128"
	Min, Max measure.Length
	Origin   Origin
}

// Clamps lists the larger worm-drive band clamps, smallest first. SAE J1508
// numbers them so that the largest diameter is size/16 + 1/2 in, and the
// smallest is 1 15/16 in less; both rules are from memory. Clamps may be
// joined in series for more.
func Clamps() []Clamp {
	var out []Clamp
	for _, n := range []int{64, 72, 96, 104, 128, 152, 188} {
		most := in(float64(n)/16 + 1./2)
		out = append(out, Clamp{strconv.Itoa(n), most - in(1+15./16), most, Origin{srcJ1508, Memory}})
	}
	return out
}

// ClampFor returns the clamp that closes on that diameter with the diameter
// nearest the middle of its range; false when none closes on it.
func ClampFor(diameter measure.Length) (Clamp, bool) {
	var best Clamp
	found := false
	off := func(c Clamp) measure.Length { return (diameter - (c.Min+c.Max)/2).Abs() }
	for _, c := range Clamps() {
		if diameter >= c.Min && diameter <= c.Max && (!found || off(c) < off(best)) {
			best, found = c, true
		}
	}
	return best, found
}
