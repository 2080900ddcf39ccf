package seed

import (
	"errors"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// Food is the water that seed clears of food beside the water it is given.
type Food struct {
	// Reckoned is false when neither a published relation nor the grower's own
	// number tells the clearance; all else is then zero.
	Reckoned bool `json:"reckoned"`
	// Cleared and Delivered are of the whole lot.
	Cleared   measure.Flow `json:"cleared_mm3_s"`
	Delivered measure.Flow `json:"delivered_mm3_s"`
	// Share is Cleared over Delivered; above 1 the seed could clear more than
	// it gets and goes hungry at any food in the water.
	Share float64 `json:"share"`
	// Basis of the clearance.
	Basis geometry.Basis `json:"basis"`
	// Outside says why a published relation was not used: no relation is held
	// for the kind, or the seed is outside its range. Nil when one was used.
	Outside *RangeError `json:"-"`
}

// FoodOf reckons the food check for count seed of mean shell l and live weight
// each, given the flow delivered. The published relation is used in its range;
// elsewhere clearance is the grower's own number, in litres an hour per gram
// of live weight (0: not reckoned). Clearance is that of seed feeding freely:
// cold, thick or bare water lowers it.
func FoodOf(s Species, count int, l Shell, each measure.Mass, own float64, delivered measure.Flow) Food {
	q, basis, err := Clearance(s, l)
	f := Food{Basis: basis}
	if err != nil {
		if !errors.As(err, &f.Outside) || !(own > 0) {
			return f
		}
		q, f.Basis = measure.Flow(own*each.Kg()*1000)*litrePerHour, practice()
	}
	f.Reckoned, f.Cleared, f.Delivered = true, q*measure.Flow(count), delivered
	if delivered > 0 {
		f.Share = float64(f.Cleared / delivered)
	}
	return f
}
