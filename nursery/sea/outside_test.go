package sea

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/unit/constant"

	"silowright/render/outside"
)

// Standard gravity as the gonum library has it.
func TestGravityOfGonum(t *testing.T) {
	if Gravity != float64(constant.StandardGravity) {
		t.Errorf("%v, gonum has %v", Gravity, float64(constant.StandardGravity))
	}
}

// 1 °C in kelvin, as LibreOffice converts it.
func TestKelvinByLibreOffice(t *testing.T) {
	if got := outside.Convert(t, "C", "K")[0]; math.Abs(got-1-iceKelvin) > 1e-9 {
		t.Errorf("0 °C is %v K, LibreOffice says %v", iceKelvin, got-1)
	}
}

// Sharqawy, Lienhard and Zubair 2010, equations 22 and 23, to the last digit
// printed: check values cannot tell it.
func TestSharqawyAsPrinted(t *testing.T) {
	got := append([]float64{thickLeast, thickSquare, thickShift, thickOff}, append(thickSalt[:], thickSquared[:]...)...)
	for i, want := range []float64{4.2844324477e-5, 1.5700386464e-1, 6.4992620050e1, 9.1296496657e1,
		1.5409136040, 1.9981117208e-2, -9.5203865864e-5, 7.9739318223, -7.5614568881e-2, 4.7237011074e-4} {
		if got[i] != want {
			t.Errorf("coefficient %d is %v, printed is %v", i+1, got[i], want)
		}
	}
}
