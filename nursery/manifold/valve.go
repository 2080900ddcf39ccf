package manifold

import (
	"fmt"
	"math"

	"silowright/geometry/measure"
)

// Valve is the valve of one lateral.
type Valve struct {
	Shut bool
	// K is its loss as it is set, on the speed through Bore.
	K float64
	// Wide is its K wide open; 0 stands for the ball valve's 0.05.
	Wide float64
	// Bore is that of its body; 0 is the hose's.
	Bore measure.Length
}

// The K of a ball valve by how far it is closed: wide open, by one third and
// by two thirds (published in two engineering tables of loss coefficients).
// Valves differ, so a setting read off it is where to begin, not where to end.
const (
	ballOpen      = 0.05
	ballThird     = 5.5
	ballTwoThirds = 200.0
)

// wide is the least K the valve can have.
func (v Valve) wide() float64 {
	if v.Wide > 0 {
		return v.Wide
	}
	return ballOpen
}

// BallValve is a ball valve that is open by the given fraction of its travel,
// 1 wide open. Between the table's rows log K goes straight; closed by more
// than two thirds it goes on at the last slope, which is a guess; 0 is shut.
func BallValve(open float64) (Valve, error) {
	if !(open >= 0 && open <= 1) {
		return Valve{}, fmt.Errorf("valve.open: %s, not a fraction of the travel, 0 to 1; hint: 1 is wide open", number(open))
	}
	if open == 0 {
		return Valve{Shut: true}, nil
	}
	closed := 3 * (1 - open)
	if closed <= 1 {
		return Valve{K: ballOpen * math.Pow(ballThird/ballOpen, closed)}, nil
	}
	return Valve{K: ballThird * math.Pow(ballTwoThirds/ballThird, closed-1)}, nil
}

// BallOpening is the fraction of its travel at which a ball valve has the loss
// k, the inverse of BallValve; ok is false for k outside the table's rows, 0.05
// to 200, where the opening is a guess held between 0 and 1.
func BallOpening(k float64) (open float64, ok bool) {
	switch {
	case math.IsNaN(k) || k <= ballOpen:
		return 1, k == ballOpen
	case k <= ballThird:
		return 1 - math.Log(k/ballOpen)/math.Log(ballThird/ballOpen)/3, true
	}
	open = 1 - (1+math.Log(k/ballThird)/math.Log(ballTwoThirds/ballThird))/3
	return math.Max(open, 0), k <= ballTwoThirds
}
