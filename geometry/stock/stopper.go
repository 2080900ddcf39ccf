package stock

import "silowright/geometry/measure"

// Stopper is a tapered rubber stopper. A length of zero is not known.
type Stopper struct {
	Number       string
	Top, Bottom  measure.Length // diameters
	Length       measure.Length
	SawMin       measure.Length // nominal hole saws that fall well between bottom and top
	SawMax       measure.Length
	Origin       Origin // of the diameters
	LengthOrigin Origin
	SawOrigin    Origin
}

var stopperRows = [...]struct {
	number         string
	top, bottom    measure.Length // mm
	sawMin, sawMax float64        // in
	standing       Standing
}{
	{"6", 32, 26, 1.125, 1.125, Two},
	{"7", 37, 30, 1.3125, 1.375, One},
	{"8", 41, 33, 1.4375, 1.5, Two},
	{"9", 45, 37, 1.625, 1.625, One},
	{"10", 50, 42, 1.8125, 1.8125, Two},
	{"11", 56, 48, 2.0625, 2.0625, One},
	{"12", 64, 54, 2.3125, 2.3125, One},
	{"13", 68, 58, 2.5, 2.5, One},
	{"14", 90, 75, 3.25, 3.25, One},
}

// Stoppers lists the stoppers by number. Lengths are about 25 mm up to No. 13
// (from memory); that of No. 14 is not known.
func Stoppers() []Stopper {
	const source = "size charts of tapered rubber stoppers"
	var out []Stopper
	for _, r := range stopperRows {
		s := Stopper{Number: r.number, Top: r.top, Bottom: r.bottom, Length: 25, SawMin: in(r.sawMin), SawMax: in(r.sawMax),
			Origin:       Origin{source, r.standing},
			LengthOrigin: Origin{srcPractice, Memory},
			SawOrigin:    Origin{"saws between bottom and top", Derived}}
		if s.Number == "14" {
			s.Length, s.LengthOrigin = 0, Origin{}
		}
		out = append(out, s)
	}
	return out
}

// StopperOf returns the stopper of that number: "11".
func StopperOf(number string) (Stopper, bool) {
	for _, s := range Stoppers() {
		if s.Number == number {
			return s, true
		}
	}
	return Stopper{}, false
}
