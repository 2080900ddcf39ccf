package work

import (
	"fmt"
	"math"

	"silowright/geometry/measure"
)

// Minutes is an amount of work, or a time by the clock, in minutes.
type Minutes float64

// Hour is 60 minutes.
const Hour Minutes = 60

// Hours is m in hours.
func (m Minutes) Hours() float64 { return float64(m / Hour) }

// Text writes m in whole minutes, from an hour on in hours and minutes:
// "45 min", "2 h", "7 h 05 min". Half a minute is rounded away from zero, and
// less than half is written in parts of one: "0.25 min".
func (m Minutes) Text() string {
	if m < 0 {
		return "-" + (-m).Text()
	}
	whole := math.Round(float64(m))
	h, rest := math.Floor(whole/60), math.Mod(whole, 60)
	switch {
	case whole == 0:
		return measure.Number(float64(m), 0) + " min"
	case h == 0:
		return fmt.Sprintf("%.0f min", rest)
	case rest == 0:
		return fmt.Sprintf("%.0f h", h)
	}
	return fmt.Sprintf("%.0f h %02.0f min", h, rest)
}
