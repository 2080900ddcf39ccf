package flow

import (
	"math"
	"testing"

	"silowright/geometry/measure"
)

// Slow flow by Hagen and Poiseuille (any textbook): a pressure of 32·μ·L·V/D²,
// so 1 mPa·s through 1 m of 10 mm at 0.1 m/s, Re 1000, takes 32 Pa.
func TestSlowFlow(t *testing.T) {
	w := water(1000, 1e-3)
	h, _ := PipeLoss(w, Pipe{Bore: 10, Length: 1000}, m3s(0.1*math.Pi/4*1e-4))
	closeTo(t, "drop, Pa", float64(w.Pressure(h)), 32, 1e-9)
	f, _ := Friction(1000, 0)
	closeTo(t, "f at Re 1000", f, 0.064, 1e-12)
}

// Roughness of drawn tubing and plastic, of smoothed rubber: Çengel and
// Cimbala, Fluid Mechanics, table 8-2 (from memory): 0.0015 and 0.01 mm.
func TestRoughness(t *testing.T) {
	if PlasticRoughness != 0.0015 || HoseRoughness != 0.01 {
		t.Errorf("%v and %v mm", PlasticRoughness, HoseRoughness)
	}
	// At Re 1e6 in 50 mm plastic pipe is as good as smooth, f 0.0119 by Haaland;
	// rubber is not, 0.0145.
	for rough, want := range map[measure.Length]float64{PlasticRoughness: haaland(1e6, 0.0015/50), HoseRoughness: haaland(1e6, 0.01/50)} {
		f, _ := Friction(1e6, float64(rough)/50)
		closeTo(t, "f", f, want, 0.02)
	}
}

// A square mitre bend takes 1.1 velocity heads (Çengel and Cimbala, Fluid
// Mechanics, table 8-4, from memory): at 2 m/s, 224.3 mm.
func TestTurns(t *testing.T) {
	h, _ := plenumLoss(500, 200, m3s(0.2))
	closeTo(t, "mitre, mm", h.MM(), 1.1*4/(2*9.80665)*1000, 1e-9)
}

// Fine strands at slow flow: 22/Re (Idelchik, diagram 8-6, from memory). A
// weave of 0.25 open with openings of 0.1 mm has strands of 0.1 mm; at 1 mm/s
// through the whole water of 1 mm²/s runs at 4 mm/s in the openings, Re 0.4 on
// the strand: 55 velocity heads of that speed, and by the weave itself 9.975 of
// the one before it.
func TestFineStrand(t *testing.T) {
	h, _ := Screen{Opening: 0.1, Open: 0.25}.Loss(water(1000, 1e-3), 1)
	v := 1e-3 * 1e-3 / (2 * gravity)
	closeTo(t, "mm", h.MM(), (22*1e-6/(0.25*0.1e-3)*1e-3/(2*gravity)+(1.3*0.75+9)*v)*1000, 1e-9)
}

// A bed counts as washed out once all but a thousandth of it is water (this
// program's choice).
func TestThinnestBed(t *testing.T) {
	w := water(1000, 1e-3)
	still := grit.At(w, 1e6, 1)
	// ε = ε₀^(1 − way): the speeds at which it is 0.9985 and 0.9995
	at := func(e float64) measure.Speed {
		way := 1 - math.Log(e)/math.Log(grit.Voidage)
		return still.Fluidises * measure.Speed(math.Pow(float64(still.Sinks/still.Fluidises), way))
	}
	if s := grit.At(w, 1e6, at(0.9985)); s.State != Fluidised {
		t.Errorf("0.9985 water: %v", s.State)
	}
	if s := grit.At(w, 1e6, at(0.9995)); s.State != WashingOut {
		t.Errorf("0.9995 water: %v", s.State)
	}
}

// K of fittings as two engineering tables of loss coefficients print it; the
// 45° elbow, the coupling and the valves that hold water back are from memory
// (Çengel and Cimbala, Fluid Mechanics, table 8-4, and handbooks of pipe).
func TestFittingsAsPublished(t *testing.T) {
	want := map[string][3]float64{ // K, least, most
		"entrance, pipe reaching in": {0.8, 0.8, 1.0}, "entrance, sharp": {0.5, 0.5, 0.5}, "entrance, rounded": {0.04, 0.03, 0.12}, "exit": {1.0, 1.0, 1.05},
		"elbow 90°, socket or thread": {0.9, 0.9, 1.5}, "elbow 90°, flanged": {0.3, 0.3, 0.3}, "elbow 45°, socket or thread": {0.4, 0.4, 0.4},
		"tee, straight through": {0.9, 0.2, 0.9}, "tee, branch": {2.0, 1.0, 2.0}, "coupling or union": {0.08, 0.04, 0.08},
		"ball valve, open": {0.05, 0.05, 0.05}, "ball valve, one third closed": {5.5, 5.5, 5.5}, "ball valve, two thirds closed": {200, 200, 210},
		"swing check valve": {2.0, 2.0, 2.5}, "foot valve, hinged, with strainer": {1.4, 1.1, 2.0}, "foot valve, poppet, with strainer": {7.5, 6.5, 9.0},
	}
	for _, f := range fittings {
		if w, ok := want[f.name]; !ok || [3]float64{f.k, f.low, f.high} != w {
			t.Errorf("%s: K %v, %v to %v, want %v", f.name, f.k, f.low, f.high, w)
		}
	}
	if len(fittings) != len(want) {
		t.Errorf("%d fittings, want %d", len(fittings), len(want))
	}
	// The foot valves: 75 and 420 times the fully turbulent friction factor of
	// steel pipe, 0.019 for 2 in to 0.017 for 4 in.
	for name, times := range map[string]float64{"foot valve, hinged, with strainer": 75, "foot valve, poppet, with strainer": 420} {
		for _, f := range fittings {
			if f.name == name && !(f.k >= times*0.017 && f.k <= times*0.019) {
				t.Errorf("%s: K %v is not %v × 0.017 to 0.019", name, f.k, times)
			}
		}
	}
}
