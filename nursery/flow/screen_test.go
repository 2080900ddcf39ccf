package flow

import (
	"math"
	"strings"
	"testing"

	"silowright/geometry/measure"
)

// Woven wire, Idelchik, Handbook of Hydraulic Resistance, diagram 8-6 (from
// memory): K of the open fraction. From 0.85 up Blevins 1984 for round bars.
func TestScreenK(t *testing.T) {
	for _, c := range []struct {
		source     string
		open, want float64
		within     float64
	}{
		{"Idelchik", 0.50, 1.65, 0.005},
		{"Idelchik", 0.36, 3.99, 0.005},
		{"Idelchik", 0.30, 6.35, 0.005},
		{"Idelchik, 1.3·0.2 + 0.25²", 0.80, 0.3225, 1e-9},
		{"two fifths of the way from Idelchik's 0.2821856 to Blevins's 0.17748", 0.82, 0.2403034, 1e-6},
		{"four fifths of the way from Idelchik's 0.2442812 to Blevins's 0.15712", 0.84, 0.1745522, 1e-6},
		{"Blevins, 0.95·0.15 + 0.2·0.0225", 0.85, 0.147, 1e-9},
		{"Blevins, 0.95·0.10 + 0.2·0.01", 0.90, 0.097, 1e-9},
	} {
		if got := screenK(c.open); math.Abs(got-c.want) > c.within {
			t.Errorf("%s, α %g: K %.4f, want %.4f", c.source, c.open, got, c.want)
		}
	}
	for a := 0.002; a < 0.98; a += 0.001 {
		if !(screenK(a) > screenK(a+0.001)) {
			t.Errorf("K does not fall from α %g", a)
		}
	}
}

// armourCannon is the drop in Pa through one plain square weave by Armour and
// Cannon (AIChE Journal 14, 1968, from memory): f = 8.61/Re + 0.52 with
// Re = ρV/(μ·a²·D) and f = ΔP·ε²·D/(B·ρ·V²), D the opening, B = 2d the
// thickness, a the wire's surface over and ε the water's share of the volume.
func armourCannon(rho, mu, opening, d, v float64) float64 {
	n := 1 / (opening + d)
	run := 2 * n * math.Sqrt(1+n*n*d*d) // wire length per area
	b := 2 * d
	a := math.Pi * d * run / b
	e := 1 - math.Pi*d*d/4*run/b
	re := rho * v / (mu * a * a * opening)
	return (8.61/re + 0.52) * b * rho * v * v / (e * e * opening)
}

// At the slow flow of a silo the loss of a clean screen is within a factor of
// two and a half of another published relation, and it is small: millimetres at
// most.
func TestScreenSlow(t *testing.T) {
	w := water(1024, 1.1e-3)
	for _, c := range []struct{ opening, open float64 }{
		{0.273, 0.42}, {0.435, 0.47}, {0.808, 0.58}, {1.061, 0.565}, {1.566, 0.547},
	} {
		s := Screen{Opening: measure.Length(c.opening), Open: c.open}
		for _, v := range []float64{5, 10, 20, 40, 80} {
			h, _ := s.Loss(w, measure.Speed(v))
			got := float64(w.Pressure(h))
			want := armourCannon(1024, 1.1e-3, c.opening*1e-3, s.strand(), v*1e-3)
			if r := got / want; r < 0.4 || r > 2.5 {
				t.Errorf("%g mm at %g mm/s: %.3f Pa, Armour and Cannon %.3f", c.opening, v, got, want)
			}
			if h > 5 {
				t.Errorf("%g mm at %g mm/s: %v", c.opening, v, h)
			}
		}
	}
}

// The loss rises with speed and fouling, is odd, and its slope is its own.
func TestScreenMonotone(t *testing.T) {
	w := water(1024, 1.1e-3)
	for fouled := 0.0; fouled < 0.98; fouled += 0.02 {
		s := Screen{Opening: 1, Open: 0.9, Fouled: fouled}
		more := Screen{Opening: 1, Open: 0.9, Fouled: fouled + 0.01}
		last := measure.Length(0)
		for v := measure.Speed(0.01); v < 1000; v *= 1.3 {
			h, slope := s.Loss(w, v)
			if m, _ := more.Loss(w, v); h <= last || m <= h {
				t.Fatalf("%+v at %v: %v after %v, fouled more %v", s, v, h, last, m)
			}
			if back, _ := s.Loss(w, -v); back != -h {
				t.Fatalf("%+v backward: %v", s, back)
			}
			up, _ := s.Loss(w, v*1.0001)
			closeTo(t, "slope", slope, float64(up-h)/float64(v*0.0001), 1e-3)
			last = h
		}
	}
}

// Perforated plate, Idelchik, diagram 8-1: K over the open fraction as tabled
// (from memory), within 3 %.
func TestLatticeK(t *testing.T) {
	const area = 1e6 // mm²
	const table, byHand = 0.03, 1e-6
	for _, c := range []struct{ open, want, within float64 }{
		{0.3, 18.2, table}, {0.5, 4.00, table}, {0.6, 2.0, table}, {0.7, 0.97, table}, {0.8, 0.42, table}, {0.9, 0.13, table},
		{0.5, 3.9993960, byHand}, {0.8, 0.4163153, byHand},
	} {
		h, _ := latticeLoss(area, c.open, m3s(1)) // 1 m/s
		closeTo(t, "K", h.Metres()*2*gravity, c.want, c.within)
	}
	// plenum 0.5 × 0.2 m at 0.05 m³/s: 0.5 m/s, 1.1·0.25/2g = 14.02 mm
	h, _ := plenumLoss(500, 200, m3s(0.05))
	closeTo(t, "plenum, mm", h.MM(), 14.02, 1e-3)
}

func TestScreenCheck(t *testing.T) {
	if err := (Screen{Opening: 1, Open: 0.5, Fouled: 0.3}).Check("mesh"); err != nil {
		t.Error(err)
	}
	for key, s := range map[string]Screen{
		"mesh.opening":       {Open: 0.5},
		"mesh.open_fraction": {Opening: 1, Open: 1},
		"mesh.fouled":        {Opening: 1, Open: 0.5, Fouled: 1},
	} {
		if err := s.Check("mesh"); err == nil || !strings.HasPrefix(err.Error(), key+": ") {
			t.Errorf("%s: %v", key, err)
		}
	}
}

// root finds the roots of functions with known ones, and stays within its ends.
func TestRoot(t *testing.T) {
	for _, c := range []struct {
		f            func(float64) float64
		lo, hi, want float64
	}{
		{func(x float64) float64 { return x*x - 2 }, 0, 2, math.Sqrt2},
		{func(x float64) float64 { return math.Exp(x) - 1e-3 }, -50, 50, math.Log(1e-3)},
		{func(x float64) float64 { return math.Cbrt(x - 0.3) }, -1, 5, 0.3},
		{func(x float64) float64 { return x + 10 }, 0, 1, 0},
		{func(x float64) float64 { return x - 10 }, 0, 1, 1},
	} {
		if got := root(c.f, c.lo, c.hi); math.Abs(got-c.want) > 1e-14*math.Max(1, math.Abs(c.want)) {
			t.Errorf("root %.17g, want %.17g", got, c.want)
		}
		slope := func(x float64) (float64, float64) {
			return c.f(x), (c.f(x+1e-7) - c.f(x-1e-7)) / 2e-7
		}
		if got := newton(slope, c.lo, c.hi, c.hi, 1e-14); math.Abs(got-c.want) > 1e-10*math.Max(1, math.Abs(c.want)) {
			t.Errorf("newton %.17g, want %.17g", got, c.want)
		}
	}
}
