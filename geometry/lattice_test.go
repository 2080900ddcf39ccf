package geometry

import (
	"fmt"
	"math"
	"testing"

	"silowright/geometry/path"
)

// The closed form of an opening's area against a numeric integral in polar
// coordinates: along each ray the opening runs from where both bars are half
// a bar away to the circle. Tolerance 1e-7, the midpoint rule's own.
func TestLatticeAreaAgainstIntegral(t *testing.T) {
	for _, bars := range []int{2, 3, 4, 6} {
		for _, across := range []length{300, 21 * inch} {
			spec := exampleSpec()
			spec.Lattice = LatticeSpec{Across: across, Bars: bars, BarWidth: 1.5 * inch, Pilot: inch / 4, Edge: EdgeArc}
			l := lattice(spec)
			theta := math.Pi / float64(bars)
			r, h := float64(across)/2, 0.75*25.4
			const n = 2_000_000
			sum := 0.0
			for i := range n {
				a := (float64(i) + 0.5) * theta / n
				inner := math.Max(h/math.Sin(a), h/math.Sin(theta-a))
				if inner < r {
					sum += (r*r - inner*inner) / 2 * theta / n
				}
			}
			if got := float64(l.SharpArea); math.Abs(got/sum-1) > 1e-7 {
				t.Errorf("%d bars, %v across: closed form %.4f mm², integral %.4f mm²", bars, across, got, sum)
			}
		}
	}
}

// The template of common practice, no source: 21 in across, two 1 1/2 in bars,
// 1/4 in pilots. By hand: R 10.5, h 0.75, θ 90°, α = asin(0.75/10.5) = 4.0960°;
// side = 10.5·cos α − 0.75 = 9.7232; quarter less the bars:
// ½·10.5²·(π/2 − 2α) − 1.06066·10.5·sin(45° − α) = 71.416 in² an opening.
func TestLatticeOfCommonPractice(t *testing.T) {
	spec := exampleSpec()
	spec.Lattice = LatticeSpec{Across: 21 * inch, Bars: 2, BarWidth: 1.5 * inch, Pilot: inch / 4, Edge: EdgeArc}
	l := lattice(spec)
	alpha := math.Asin(0.75 / 10.5)
	want := 0.5*10.5*10.5*(math.Pi/2-2*alpha) - 0.75*math.Sqrt2*10.5*math.Sin(math.Pi/4-alpha)
	if got := l.SharpArea.SquareInches(); math.Abs(got-want) > 1e-9 || math.Abs(got-71.416) > 0.001 {
		t.Errorf("opening %.4f in², want %.4f", got, want)
	}
	near(t, "perimeter", l.Perimeter, length(2*(10.5*math.Cos(alpha)-0.75)+10.5*(math.Pi/2-2*alpha))*inch, 1e-6)
	if l.Openings != 4 {
		t.Errorf("openings %d, want 4", l.Openings)
	}
}

// Every pilot lies tangent inside both edges of its corner, and the opening as
// sawn is the sharp one less three corners, its outline joined end to end.
func TestLatticePilotsTangent(t *testing.T) {
	for _, edge := range []Edge{EdgeArc, EdgeStraight} {
		for bars := 2; bars <= 6; bars++ {
			t.Run(fmt.Sprintf("%s-%d", edge, bars), func(t *testing.T) {
				spec := exampleSpec()
				spec.Lattice = LatticeSpec{Across: 18 * inch, Bars: bars, BarWidth: 1.25 * inch, Pilot: 3 * inch / 8, Edge: edge}
				l := lattice(spec)
				theta := math.Pi / float64(bars)
				rho, h := spec.Lattice.Pilot/2, spec.Lattice.BarWidth/2
				fromBar := func(p path.Point, a float64) length {
					return length(math.Abs(float64(p.X)*math.Sin(a) - float64(p.Y)*math.Cos(a)))
				}
				near(t, "apex pilot, lower bar", fromBar(l.Pilots[0], 0), h+rho, 1e-9)
				near(t, "apex pilot, upper bar", fromBar(l.Pilots[0], theta), h+rho, 1e-9)
				near(t, "first outer pilot, lower bar", fromBar(l.Pilots[1], 0), h+rho, 1e-9)
				near(t, "second outer pilot, upper bar", fromBar(l.Pilots[2], theta), h+rho, 1e-9)
				for i := 1; i <= 2; i++ {
					if edge == EdgeArc {
						near(t, "outer pilot, circle", distance(path.Pt(0, 0), l.Pilots[i]), spec.Lattice.Across/2-rho, 1e-9)
						continue
					}
					a, b := l.Corners[1], l.Corners[2]
					d := ((b.X-a.X)*(l.Pilots[i].Y-a.Y) - (b.Y-a.Y)*(l.Pilots[i].X-a.X)) / distance(a, b)
					near(t, "outer pilot, chord", d.Abs(), rho, 1e-9)
				}
				if l.Area >= l.SharpArea || l.Area < l.SharpArea*0.98 {
					t.Errorf("as sawn %.1f mm², sharp %.1f mm²", l.Area, l.SharpArea)
				}
				near(t, "travel within perimeter", l.Travel/length(l.Openings), l.Perimeter, 6*spec.Lattice.Pilot*3)
				// three corners of angle γ lose ρ²(1/tan(γ/2) − (π−γ)/2) each
				// when both edges are straight
				if edge == EdgeStraight {
					lost := 0.0
					for _, g := range []float64{theta, (math.Pi - theta) / 2, (math.Pi - theta) / 2} {
						lost += float64(rho*rho) * (1/math.Tan(g/2) - (math.Pi-g)/2)
					}
					if got := float64(l.SharpArea - l.Area); math.Abs(got-lost) > 1e-6 {
						t.Errorf("corners lose %.6f mm², want %.6f", got, lost)
					}
				}
			})
		}
	}
}

func TestLatticeScales(t *testing.T) {
	one, two := exampleSpec(), exampleSpec()
	two.Lattice.Across *= 2
	two.Lattice.BarWidth *= 2
	two.Lattice.Pilot *= 2
	a, b := lattice(one), lattice(two)
	if math.Abs(float64(b.OpenArea/a.OpenArea)-4) > 1e-12 {
		t.Errorf("twice the lattice has %.6f times the open area, want 4", b.OpenArea/a.OpenArea)
	}
}
