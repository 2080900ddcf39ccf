package geometry

import (
	"testing"

	"silowright/geometry/measure"
)

// A finding without a limit says none; one held against nought says nought, and
// one beside its limit says on which side of it.
func TestFindingTexts(t *testing.T) {
	energy := measure.Quantity{Value: 19474.42, Unit: "kWh"}
	for _, c := range []struct {
		measured, limit measure.Quantity
		want, held      string
	}{
		{energy, measure.Quantity{}, "19474 kWh", ""},
		{energy, energy, "19474 kWh", "19474 kWh"},
		{energy, measure.Quantity{Value: 19474, Unit: "kWh"}, "19474.4 kWh", "19474 kWh"},
		{measure.Length(27.7504).Quantity(), measure.Length(27.7876).Quantity(), "1 1/16 in (27.8 mm)", "1 1/8 in (27.8 mm)"},
		{measure.Length(27.0981).Quantity(), measure.Length(27.1001).Quantity(), "1.06685 in (27.0981 mm)", "1.06693 in (27.1001 mm)"},
		{measure.Speed(1501).Quantity(), measure.Speed(1500).Quantity(), "4.925 ft/s (1.501 m/s)", "4.921 ft/s (1.5 m/s)"},
		{measure.Quantity{Value: 89.999, Unit: "%"}, measure.Quantity{Value: 90, Unit: "%"}, "89.999%", "90%"},
		{measure.Length(50.8).Quantity(), (2 * measure.Inch * (1 + 1e-13)).Quantity(), "2 in (50.8 mm)", "2 in (50.8 mm)"},
		{measure.Count(2), measure.Count(0), "2", "0"},
		{measure.Inch.Quantity(), measure.Length(0).Quantity(), "1 in (25.4 mm)", "0 in (0 mm)"},
		{measure.Mass(1).Quantity(), measure.Mass(2.1e-7).Quantity(), "2.2 lb (1 kg)", "0.21 mg"},
		{measure.Mass(1).Quantity(), measure.Mass(1e-4).Quantity(), "2.2 lb (1 kg)", "0.004 oz (0.1 g)"},
	} {
		got, held := Finding{Measured: c.measured, Limit: c.limit}.Texts(measure.UnitInch)
		if got != c.want || held != c.held {
			t.Errorf("%v, limit %v: %q beside %q, want %q beside %q", c.measured, c.limit, got, held, c.want, c.held)
		}
	}
}

// A sentence that holds two lengths against each other tells one from the
// other, and what fits exactly is told once.
func TestSentencesTellLengthsApart(t *testing.T) {
	nipple := Hole{Name: "inlet", Fits: Fits{Coupling: CouplingFit{Fill: 27.7504, Depth: 27.7876, Nipple: 70, Grip: 12}}}
	grommet := func(saw length) Hole {
		return Hole{Name: "outlet", Saw: saw, Fits: Fits{Grommet: GrommetFit{Hole: 63.5, Known: true, Label: true}}}
	}
	for _, c := range []struct{ got, want string }{
		{nippleCheck(nipple, measure.UnitMM).Says, "the nipple fills 27.75 mm (1.093 in) of each socket, which is 27.79 mm (1.094 in) deep"},
		{grommetCheck(grommet(63.5), measure.UnitInch).Says, "the saw, 2 1/2 in (63.5 mm), is what the grommet's label asks for"},
		{grommetCheck(grommet(63.51), measure.UnitMM).Says, "the saw, 63.51 mm (2.5 in), is what the grommet's label asks for (63.5 mm (2.5 in))"},
		{grommetCheck(grommet(70), measure.UnitMM).Says, "the saw (70 mm (2 3/4 in)) is not what the grommet's label asks for (63.5 mm (2 1/2 in)): change the saw"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}
