package stock

import (
	"time"

	"silowright/geometry/measure"
)

// Cartridge is a tube of sealant or resin.
type Cartridge struct {
	Label  string // as it is sold: "10.1 fl oz"
	Volume measure.Volume
	Origin Origin
}

// Cartridges lists the cartridges sold, smallest first.
func Cartridges() []Cartridge {
	sold := Origin{srcPractice, Memory}
	return []Cartridge{
		{"10.1 fl oz", 10.1 * measure.USFluidOunce, Origin{"NIST Handbook 44 (231 in³ a gallon)", Derived}},
		{"300 mL", 300 * measure.Millilitre, sold},
		{"10.3 fl oz", 10.3 * measure.USFluidOunce, sold},
		{"310 mL", 310 * measure.Millilitre, sold},
		{"29 fl oz", 29 * measure.USFluidOunce, sold},
	}
}

// CementTime is how long a joint of PVC cement sets (until it may be moved)
// and cures (until it may carry water), for a range of pipe sizes at a range
// of temperatures. Above 60 % relative humidity allow half as long again
// (CementHumidFactor).
type CementTime struct {
	From, To     string // pipe sizes, both counted in
	ColdF, WarmF int    // degrees Fahrenheit
	Set, Cure    time.Duration
	Origin       Origin
}

// CementHumidFactor multiplies the times of CementTimes above 60 % relative
// humidity; same source.
const CementHumidFactor = 1.5

// CementTimes lists the times, warm weather first. The maker's can wins.
func CementTimes() []CementTime {
	o := Origin{"manual of a PVC pipe maker", One}
	const minute, hour = time.Minute, time.Hour
	return []CementTime{
		{"1/2", "1 1/4", 60, 100, 15 * minute, 1 * hour, o},
		{"1 1/2", "3", 60, 100, 30 * minute, 2 * hour, o},
		{"4", "8", 60, 100, 1 * hour, 6 * hour, o},
		{"1/2", "1 1/4", 40, 60, 1 * hour, 2 * hour, o},
		{"1 1/2", "3", 40, 60, 2 * hour, 4 * hour, o},
		{"4", "8", 40, 60, 4 * hour, 12 * hour, o},
	}
}
