package sea

import (
	"math"
	"strings"
	"testing"

	"silowright/geometry/measure"
)

// Published values, each with its source and tolerance.
func TestPublished(t *testing.T) {
	const (
		eos80    = "UNESCO Technical Papers in Marine Science 44 (1983), p. 19, check values at p = 0"
		eosForm  = "UNESCO Technical Papers in Marine Science 44 (1983), algorithm 2, worked by hand"
		sharqawy = "Sharqawy, Lienhard and Zubair 2010, equations 22 and 23, worked by hand"
		ittc     = "ITTC Recommended Procedure 7.5-02-01-03 (2011), sea water at 15 °C"
		iapws    = "IAPWS-IF97, table 35, 0.353658941e-2 MPa at 300 K (from memory)"
	)
	rho := func(w Water) float64 { return float64(w.Density) }
	mu := func(w Water) float64 { return float64(w.Viscosity) * 1000 }
	pv := func(w Water) float64 { return float64(w.Vapour) }
	for _, c := range []struct {
		source  string
		s       float64
		t       measure.Temperature
		of      func(Water) float64
		want    float64
		within  float64 // absolute
		because string
	}{
		{eos80, 0, 5, rho, 999.96675, 5e-6, "all printed digits"},
		{eos80, 0, 25, rho, 997.04796, 5e-6, "all printed digits"},
		{eos80, 35, 5, rho, 1027.67547, 5e-6, "all printed digits"},
		{eos80, 35, 25, rho, 1023.34306, 5e-6, "all printed digits"},
		{eosForm, 35, 15, rho, 1025.97275, 5e-6, "all digits worked"},
		{eosForm, 30, 20, rho, 1020.95388, 5e-6, "all digits worked"},
		{eosForm, 28, 25, rho, 1018.06283, 5e-6, "all digits worked"},
		{sharqawy, 0, 5, mu, 1.5181, 5e-5, "all digits worked"},
		{sharqawy, 35, 5, mu, 1.6193, 5e-5, "all digits worked"},
		{sharqawy, 0, 15, mu, 1.1377, 5e-5, "all digits worked"},
		{sharqawy, 35, 15, mu, 1.2198, 5e-5, "all digits worked"},
		{sharqawy, 0, 25, mu, 0.8901, 5e-5, "all digits worked"},
		{sharqawy, 35, 25, mu, 0.9588, 5e-5, "all digits worked"},
		{ittc, 35.16504, 15, rho, 1026.0210, 0.1, "another equation of state, its salt absolute: 0.01 %"},
		{ittc, 35.16504, 15, mu, 1.220, 1e-3, "as printed"},
		{ittc, 35.16504, 15, pv, 1670.9, 0.5, "0.03 %"},
		{iapws, 0, 26.85, pv, 3536.58941, 1, "another correlation: 0.03 %"},
	} {
		w, err := At(c.s, c.t)
		if err != nil {
			t.Fatalf("S %g, %g °C: %v", c.s, c.t, err)
		}
		if got := c.of(w); math.Abs(got-c.want) > c.within {
			t.Errorf("S %g, %g °C: %.6f, want %.6f ± %g (%s); %s", c.s, float64(c.t), got, c.want, c.within, c.because, c.source)
		}
	}
}

// Over the whole range salt makes water heavier, thicker and slower to boil,
// and warmth makes it thinner and quicker to boil; salt water (S over 24.7,
// where the heaviest water is at its freezing point) also gets lighter.
func TestMonotone(t *testing.T) {
	for s := 0.0; s <= 42; s += 0.5 {
		for c := 0.0; c <= 40; c += 0.5 {
			w := mustAt(t, s, c)
			if s < 42 {
				m := mustAt(t, s+0.5, c)
				if !(m.Density > w.Density && m.Viscosity > w.Viscosity && m.Vapour < w.Vapour) {
					t.Errorf("more salt at S %g, %g °C: %+v then %+v", s, c, w, m)
				}
			}
			if c < 40 {
				m := mustAt(t, s, c+0.5)
				if !(m.Viscosity < w.Viscosity && m.Vapour > w.Vapour) || s > 25 && !(m.Density < w.Density) {
					t.Errorf("warmer at S %g, %g °C: %+v then %+v", s, c, w, m)
				}
			}
		}
	}
}

func TestRefused(t *testing.T) {
	for _, c := range []struct {
		s, t float64
		key  string
	}{
		{-0.1, 15, "salinity: -0.1 g/kg"}, {42.01, 15, "salinity: 42.01 g/kg"},
		{math.NaN(), 15, "salinity: NaN"}, {math.Inf(1), 15, "salinity: +Inf"},
		{35, -0.5, "temperature: -0.5 °C"}, {35, 59, "temperature: 59 °C"}, {35, math.NaN(), "temperature: NaN"},
	} {
		w, err := At(c.s, measure.Temperature(c.t))
		if err == nil || w != (Water{}) || !strings.HasPrefix(err.Error(), c.key) || !strings.Contains(err.Error(), "hint: ") {
			t.Errorf("S %g, %g °C: %+v, %v", c.s, c.t, w, err)
		}
	}
}

// Ten metres of sea water of 1025 kg/m³ under standard gravity: 100.518 kPa.
func TestHead(t *testing.T) {
	w := Water{Density: 1025}
	p := w.Pressure(10 * measure.Metre)
	if math.Abs(float64(p)-100518.1625) > 1e-6 {
		t.Errorf("10 m: %v Pa", p)
	}
	if h := w.Head(p); math.Abs(h.MM()-10000) > 1e-9 {
		t.Errorf("back: %v mm", h)
	}
	if h := (Water{}).Head(p); h != 0 {
		t.Errorf("no water: %v", h)
	}
}

func mustAt(t *testing.T, s, c float64) Water {
	t.Helper()
	w, err := At(s, measure.Temperature(c))
	if err != nil {
		t.Fatal(err)
	}
	return w
}
