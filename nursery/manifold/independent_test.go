package manifold

import (
	"math"
	"math/rand"
	"testing"

	"gonum.org/v1/gonum/diff/fd"
	"gonum.org/v1/gonum/mat"

	"silowright/geometry/measure"
	"silowright/nursery/flow"
)

// The whole nonlinear system written out plainly, every flow and every tee's
// head an unknown of its own, and solved by a general method of the gonum
// library: Newton's with a Jacobian by differences and a dense LU
// factorisation, steps halved while the misfit does not fall. It shares with
// Solve the loss of a pipe alone, through flow.PipeLoss.
func TestIndependentSolver(t *testing.T) {
	r := rand.New(rand.NewSource(8))
	done := 0
	for range 120 {
		s := random(r, 1+r.Intn(12), false)
		head, most := 5+10*r.Float64(), 0.002*float64(len(s.Laterals)+2)
		curve, err := CurveByDuty(headOf(head), Point{flowOf(most), headOf(head * 0.6)})
		if err != nil {
			t.Fatal(err)
		}
		s.Pump.Curve = curve
		got := solved(t, s)
		if got.Least >= 0 && got.Laterals[got.Least].Starved {
			continue // the plain system lets a starved silo run backwards
		}
		want, ok := plain(s, func(q float64) float64 { return head - 0.4*head*q*q/(most*most) })
		if !ok {
			continue
		}
		done++
		for i, q := range want {
			if f := got.Laterals[i].Flow.M3S(); math.Abs(f-q) > 1e-6*got.Total.M3S()/float64(len(want)) {
				t.Fatalf("silo %d of %d: %.9g m³/s, the other solver has %.9g", i+1, len(want), f, q)
			}
		}
	}
	if done < 60 {
		t.Errorf("only %d systems compared", done)
	}
}

// plain solves s and returns the laterals' flows; ok is false when the method
// does not settle from its start.
func plain(s System, pump func(q float64) float64) (flows []float64, ok bool) {
	n := len(s.Laterals)
	lose := func(p flow.Pipe, q float64) float64 {
		h, _ := flow.PipeLoss(s.Water, p, flowOf(q))
		return h.Metres()
	}
	minor := func(k float64, bore measure.Length, q float64) float64 {
		v := q / (math.Pi / 4 * bore.Metres() * bore.Metres())
		return k * v * math.Abs(v) / (2 * 9.80665)
	}
	// Unknowns: n lateral flows and n−1 segment flows in L/s, positive from the
	// first tee to the last, then n heads in m.
	misfit := func(y, x []float64) {
		q, seg, h := x[:n], x[n:2*n-1], x[2*n-1:]
		total := 0.0
		for _, v := range q {
			total += v * 1e-3
		}
		suction := s.Suction.Pipe
		suction.K += s.Suction.Strainer + s.Suction.FootValve
		for i, l := range s.Laterals {
			// mass at the tee
			y[i] = -q[i]
			if i > 0 {
				y[i] += seg[i-1]
			}
			if i < n-1 {
				y[i] -= seg[i]
				y[n+i] = h[i] - h[i+1] - lose(s.Segments[i], seg[i]*1e-3)
			}
			// energy to the silo
			p := l.Silo.(polynomial)
			u := q[i] * 1e-3 / p.at.M3S()
			ask := l.Rise.Metres() + p.static.Metres() + p.linear.Metres()*u + p.square.Metres()*u*u
			y[2*n-1+i] = h[i] - ask - lose(l.Hose, q[i]*1e-3) - minor(l.Branch+l.Valve.K, l.Hose.Bore, q[i]*1e-3) -
				minor(l.Barb.K, l.Barb.Bore, q[i]*1e-3)
		}
		// At the fed tee the mass is closed by the total; energy from the
		// source stands in its place.
		y[s.Feed] = s.Suction.Source.Metres() + pump(total) - lose(suction, total) - lose(s.Main, total) - h[s.Feed]
	}
	m := 3*n - 1
	x, y, try := make([]float64, m), make([]float64, m), make([]float64, m)
	for i := range n {
		x[i] = 0.3
	}
	for i := range n - 1 {
		x[n+i] = 0.3 * float64(n-1-i)
		if i < s.Feed {
			x[n+i] = -0.3 * float64(i+1)
		}
	}
	for i := range n {
		x[2*n-1+i] = pump(0) / 2
	}
	norm := func(v []float64) float64 { return mat.Norm(mat.NewVecDense(len(v), v), 2) }
	jac := mat.NewDense(m, m, nil)
	misfit(y, x)
	for range 200 {
		before := norm(y)
		if before < 1e-11 {
			return scaled(x[:n]), true
		}
		fd.Jacobian(jac, misfit, x, &fd.JacobianSettings{Formula: fd.Central})
		var step mat.VecDense
		if step.SolveVec(jac, mat.NewVecDense(m, y)) != nil {
			return nil, false
		}
		k := 1.0
		for ; k > 1e-6; k /= 2 {
			for i := range x {
				try[i] = x[i] - k*step.AtVec(i)
			}
			misfit(y, try)
			if norm(y) < before {
				break
			}
		}
		if k <= 1e-6 {
			return scaled(x[:n]), before < 1e-9
		}
		copy(x, try)
	}
	return nil, false
}

func scaled(q []float64) []float64 {
	m := make([]float64, len(q))
	for i, v := range q {
		m[i] = v * 1e-3
	}
	return m
}
