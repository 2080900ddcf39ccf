package flow

import (
	"math"
	"strings"
	"testing"

	"silowright/geometry/measure"
	"silowright/nursery/sea"
)

// water is a water by density and dynamic viscosity, as textbooks give it.
func water(rho, mu float64) sea.Water {
	return sea.Water{Density: measure.Density(rho), Viscosity: measure.Viscosity(mu)}
}

func metres(x float64) measure.Length { return measure.Length(x) * measure.Metre }

func m3s(x float64) measure.Flow { return measure.Flow(x) * measure.CubicMetrePerSec }

// closeTo fails unless got is within rel of want.
func closeTo(t testing.TB, what string, got, want, rel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Abs(want)) {
		t.Errorf("%s: got %.6g, want %.6g within %g %%", what, got, want, rel*100)
	}
}

// Çengel and Cimbala, Fluid Mechanics, example 8-3: water at 60 °F through 200
// ft of 2 in stainless pipe at 0.2 ft³/s.
func TestPipeExample83(t *testing.T) {
	const ft, lb = 0.3048, 0.45359237
	w := water(62.36*lb/(ft*ft*ft), 7.536e-4*lb/ft)
	p := Pipe{Bore: 2 * measure.Inch, Length: 200 * measure.Foot, Roughness: 2 * measure.Inch * 4.2e-5}
	q := m3s(0.2 * ft * ft * ft)
	h, _ := PipeLoss(w, p, q)
	closeTo(t, "velocity, ft/s", q.Through(Disc(p.Bore)).MS()/ft, 9.167, 1e-4)
	closeTo(t, "Re", q.Through(Disc(p.Bore)).MS()*p.Bore.Metres()/w.Kinematic(), 126432, 1e-4)
	closeTo(t, "head, ft (worked with g = 32.2 ft/s²)", float64(h/measure.Foot), 27.24, 1e-3)
	closeTo(t, "pressure drop, psi", float64(w.Pressure(h))*1e-6/float64(measure.PSI), 11.80, 1e-3)
}

// Example 8-8: 89 m of 50 mm cast iron, its fittings, outlet 4 m up: the
// source must stand at 31.82 m (its velocity head is in the exit's 1.06).
func TestPipeExample88(t *testing.T) {
	w := water(999.7, 1.307e-3)
	p := Pipe{Bore: 50, Length: metres(89), Roughness: 0.26, K: 0.5 + 2*0.3 + 0.2 + 1.06}
	q := m3s(0.006)
	h, _ := PipeLoss(w, p, q)
	closeTo(t, "velocity, m/s", q.Through(Disc(p.Bore)).MS(), 3.0558, 1e-4)
	closeTo(t, "source, m", 4+h.Metres(), 31.82, 5e-4)
}

// Example 8-7: two pipes of 36 m side by side between reservoirs 8 m apart, a
// pump of 8 kW at 70 %: both lose the same head, and the pump gives it.
func TestPipeExample87(t *testing.T) {
	w := water(998, 1.002e-3)
	h1, _ := PipeLoss(w, Pipe{Bore: 40, Length: metres(36), Roughness: 0.045}, m3s(0.00415))
	h2, _ := PipeLoss(w, Pipe{Bore: 80, Length: metres(36), Roughness: 0.045}, m3s(0.02586))
	closeTo(t, "loss in 40 mm, m", h1.Metres(), 19.06-8, 5e-3)
	closeTo(t, "loss in 80 mm, m", h2.Metres(), 19.06-8, 5e-3)
	closeTo(t, "pump head, m", 0.7*8000/(w.Weight()*0.03001), 19.06, 5e-3)
}

// hazenWilliams is the head in metres per metre by Hazen and Williams in SI,
// 10.67·Q^1.852/(C^1.852·d^4.8704), for water near 15 °C (from memory).
func hazenWilliams(c, d, q float64) float64 {
	return 10.67 * math.Pow(q/c, 1.852) / math.Pow(d, 4.8704)
}

// Illinois Administrative Code, title 77, part 906, appendix A, exhibit I:
// friction in feet per 100 ft of Schedule 40 plastic pipe, C = 150. Hazen and
// Williams agree within 4 % and the last digit printed with bores of 1.610,
// 2.067, 3.068 and 4.026 in; Colebrook's equation for fresh water at 15 °C and
// plastic pipe within 12 % and a digit and a half: C = 150 is a little low
// below 2 ft/s. (50 gpm in 4 in is left out: 0.16 as printed looks high.)
func TestIllinoisTable(t *testing.T) {
	w, err := sea.At(0, 15)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		bore, gpm, want float64
	}{
		{1.610, 10, 0.70}, {1.610, 20, 2.46}, {1.610, 30, 5.22},
		{2.067, 10, 0.21}, {2.067, 20, 0.74}, {2.067, 30, 1.54}, {2.067, 40, 2.62}, {2.067, 50, 3.98},
		{3.068, 20, 0.12}, {3.068, 30, 0.23}, {3.068, 40, 0.39}, {3.068, 50, 0.58}, {3.068, 60, 0.81}, {3.068, 80, 1.38}, {3.068, 100, 2.09},
		{4.026, 40, 0.09}, {4.026, 60, 0.21}, {4.026, 80, 0.37}, {4.026, 100, 0.55}, {4.026, 150, 1.17},
	} {
		q := measure.Flow(c.gpm) * measure.GallonPerMinute
		bore := measure.Length(c.bore) * measure.Inch
		hw := 100 * hazenWilliams(150, bore.Metres(), q.M3S())
		if math.Abs(hw-c.want) > 0.04*c.want+0.01 {
			t.Errorf("%g in, %g gpm: Hazen and Williams %.3f ft, want %.2f", c.bore, c.gpm, hw, c.want)
		}
		h, _ := PipeLoss(w, Pipe{Bore: bore, Length: 100 * measure.Foot, Roughness: PlasticRoughness}, q)
		if got := float64(h / measure.Foot); math.Abs(got-c.want) > 0.12*c.want+0.015 {
			t.Errorf("%g in, %g gpm: Colebrook %.3f ft, want %.2f", c.bore, c.gpm, got, c.want)
		}
	}
}

// The loss is odd and rises with the flow, its slope is its own.
func TestPipeLossMonotone(t *testing.T) {
	w := water(1025, 1.2e-3)
	for _, p := range []Pipe{
		{Bore: 50, Length: metres(10), Roughness: PlasticRoughness},
		{Bore: 50, Length: metres(0.2), Roughness: 1, K: 5},
		{Bore: 100, K: 1.5},
	} {
		last := measure.Length(-1)
		for q := measure.Flow(0); q < 2e7; q = q*1.02 + 10 {
			h, slope := PipeLoss(w, p, q)
			back, slopeBack := PipeLoss(w, p, -q)
			if back != -h || slopeBack != slope {
				t.Fatalf("%+v at %g: %g, backward %g", p, float64(q), h, back)
			}
			if h <= last || slope < 0 {
				t.Fatalf("%+v at %g: loss %g after %g, slope %g", p, float64(q), h, last, slope)
			}
			last = h
			d := q*1e-5 + 1e-3
			up, _ := PipeLoss(w, p, q+d)
			dn, _ := PipeLoss(w, p, q-d)
			if by := float64(up-dn) / float64(2*d); math.Abs(by-slope) > 1e-4*by+1e-13 {
				t.Fatalf("%+v at %g: slope %g, by difference %g", p, float64(q), slope, by)
			}
		}
	}
}

func TestPipeCheck(t *testing.T) {
	good := Pipe{Bore: 50, Length: 1000, Roughness: 0.0015, K: 1}
	if err := good.Check("main"); err != nil {
		t.Error(err)
	}
	nan := measure.Length(math.NaN())
	for key, p := range map[string]Pipe{
		"main.bore":      {Bore: 0, Length: 1, K: 1},
		"main.length":    {Bore: 50, Length: -1},
		"main.roughness": {Bore: 50, Length: 1, Roughness: 3},
		"main.k":         {Bore: 50, Length: 1, K: math.Inf(1)},
	} {
		if err := p.Check("main"); err == nil || !strings.HasPrefix(err.Error(), key+": ") {
			t.Errorf("%s: %v", key, err)
		}
	}
	for _, p := range []Pipe{{Bore: nan}, {Bore: 50, Length: nan}, {Bore: 50, Roughness: nan}, {Bore: 50, K: math.NaN()}} {
		if p.Check("main") == nil {
			t.Errorf("%+v passes", p)
		}
	}
}

// A step wide enough is a free exit, K 1; narrow from a tank, a sharp
// entrance, K 0.5 (Çengel and Cimbala, table 8-4); a step of none costs none.
func TestSteps(t *testing.T) {
	closeTo(t, "into a tank", Widening(50, 1e6), 1, 1e-6)
	closeTo(t, "out of a tank", Narrowing(1e6, 50), 0.5, 1e-6)
	// d/D 0.5: (1 − 1/4)² = 0.5625 and 0.5·(1 − 1/4) = 0.375
	closeTo(t, "widening to twice the bore", Widening(25, 50), 0.5625, 1e-12)
	closeTo(t, "narrowing to half the bore", Narrowing(50, 25), 0.375, 1e-12)
	// hose 50, barb 40: area ratio 0.64, (0.18 + 0.1296)/0.4096 = 0.7559
	closeTo(t, "barb", Barb(50, 40), 0.7558594, 1e-6)
	for _, k := range []float64{Widening(50, 50), Widening(50, 40), Narrowing(50, 50), Narrowing(40, 50), Barb(50, 50), Barb(50, 0)} {
		if k != 0 {
			t.Errorf("no step: K %g", k)
		}
	}
}

func TestFittings(t *testing.T) {
	seen := map[string]bool{}
	for _, f := range fittings {
		if seen[f.name] || f.origin.Source == "" || f.origin.Standing == "" || !(f.low <= f.k && f.k <= f.high && f.low > 0) {
			t.Errorf("%+v", f)
		}
		seen[f.name] = true
	}
	table := LossTable()
	if len(table.Rows) != len(fittings) || len(table.Rows[0]) != len(table.Columns) || table.Rows[1][1] != "0.5" {
		t.Errorf("%+v", table)
	}
}
