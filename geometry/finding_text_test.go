package geometry

import (
	"testing"

	"silowright/geometry/measure"
)

// A finding without a limit says none; one held against nought says nought.
func TestLimitText(t *testing.T) {
	energy := measure.Quantity{Value: 19474.42, Unit: "kWh"}
	for _, c := range []struct {
		measured, limit measure.Quantity
		want            string
	}{
		{energy, measure.Quantity{}, ""},
		{energy, energy, "19474 kWh"},
		{measure.Count(2), measure.Count(0), "0"},
		{measure.Inch.Quantity(), measure.Length(0).Quantity(), "0 in (0 mm)"},
		{measure.Mass(1).Quantity(), measure.Mass(2.1e-7).Quantity(), "0.21 mg"},
		{measure.Mass(1).Quantity(), measure.Mass(1e-4).Quantity(), "0.004 oz (0.1 g)"},
	} {
		if got := (Finding{Measured: c.measured, Limit: c.limit}).LimitText(measure.UnitInch); got != c.want {
			t.Errorf("%v, limit %v: %q, want %q", c.measured, c.limit, got, c.want)
		}
	}
}
