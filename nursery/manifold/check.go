package manifold

import (
	"fmt"
	"math"
	"strconv"

	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/sea"
)

// What is taken; far outside anything a nursery has.
const (
	maxHead     = 1000.0 // m
	minFlow     = 1e-9   // m³/s
	maxFlow     = 100.0  // m³/s
	maxLaterals = 20_000
	maxK        = 1e9
)

func within(x, low, high float64) bool { return x >= low && x <= high }

// number writes x for a message.
func number(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return "out of range"
	}
	return strconv.FormatFloat(x, 'g', 6, 64)
}

func badHead(key string, l measure.Length) error {
	return fmt.Errorf("%s: %s, not a head over 0 to 1000 m; hint: give it in feet or metres of water", key, l.Both(measure.UnitMM))
}

func badFlow(key string, f measure.Flow) error {
	return fmt.Errorf("%s: %s, not a flow over 0 to 6,000,000 L/min; hint: give it in gpm or L/min", key, f.Both(measure.UnitMM))
}

func badDensity(d measure.Density) error {
	return fmt.Errorf("water.density: %s kg/m³, not from 500 to 2000; hint: sea water is near 1025", number(float64(d)))
}

// pointsSI checks the flows of points and gives both in SI.
func pointsSI(key string, points []Point) (x, y []float64, err error) {
	if len(points) < 2 || len(points) > 10000 {
		return nil, nil, fmt.Errorf("%s: %d given, from 2 to 10000 are needed; hint: flow and head, flow rising", key, len(points))
	}
	for i, p := range points {
		q, h := p.Flow.M3S(), p.Head.Metres()
		switch {
		case !within(q, 0, maxFlow):
			return nil, nil, badFlow(fmt.Sprintf("%s.%d.flow", key, i+1), p.Flow)
		case !within(h, -maxHead, maxHead):
			return nil, nil, badHead(fmt.Sprintf("%s.%d.head", key, i+1), p.Head)
		case i > 0 && q < x[i-1]+minFlow:
			return nil, nil, fmt.Errorf("%s.%d.flow: %s, not more than the point before; hint: give points with the flow rising",
				key, i+1, p.Flow.Both(measure.UnitMM))
		}
		x, y = append(x, q), append(y, h)
	}
	return x, y, nil
}

// check holds every input to its range.
func (s System) check() error {
	if err := checkWater(s.Water); err != nil {
		return err
	}
	if err := s.Suction.check(); err != nil {
		return err
	}
	if err := s.Pump.check(); err != nil {
		return err
	}
	if err := s.Main.Check("main"); err != nil {
		return err
	}
	n := len(s.Laterals)
	switch {
	case n < 1 || n > maxLaterals:
		return fmt.Errorf("laterals: %d given, from 1 to %d are solved; hint: one lateral for each silo", n, maxLaterals)
	case len(s.Segments) != n-1:
		return fmt.Errorf("segments: %d given for %d laterals, %d are needed; hint: one between each two tees", len(s.Segments), n, n-1)
	case s.Feed < 0 || s.Feed >= n:
		return fmt.Errorf("feed: %d, not from 0 to %d; hint: 0 feeds the manifold at its end", s.Feed, n-1)
	}
	for i, p := range s.Segments {
		if err := checkPipe(p, func() string { return fmt.Sprintf("segments.%d", i+1) }); err != nil {
			return err
		}
	}
	for i, l := range s.Laterals {
		if err := l.check(i); err != nil {
			return err
		}
	}
	return nil
}

func checkWater(w sea.Water) error {
	switch {
	case !within(float64(w.Density), 500, 2000):
		return badDensity(w.Density)
	case !within(float64(w.Viscosity), 1e-5, 1):
		return fmt.Errorf("water.viscosity: %s Pa·s, not from 0.00001 to 1; hint: sea water at 15 °C is near 0.00122", number(float64(w.Viscosity)))
	case !within(float64(w.Vapour), 0, 101325):
		return fmt.Errorf("water.vapour: %s, not from 0 to 101325 Pa; hint: near 1700 Pa at 15 °C", w.Vapour.Both(measure.UnitMM))
	}
	return nil
}

func (u Suction) check() error {
	if err := elevation("suction.source", u.Source); err != nil {
		return err
	}
	if err := elevation("suction.pump", u.Pump); err != nil {
		return err
	}
	if u.Pipe != (flow.Pipe{}) || u.Strainer != 0 || u.FootValve != 0 {
		if err := u.Pipe.Check("suction.pipe"); err != nil {
			return err
		}
	}
	for _, k := range []struct {
		key string
		k   float64
	}{{"suction.strainer", u.Strainer}, {"suction.foot_valve", u.FootValve}} {
		if err := coefficient(k.key, k.k); err != nil {
			return err
		}
	}
	switch {
	case !within(float64(u.Air), 0, 2e5):
		return fmt.Errorf("suction.air: %s, not from 0 to 200 kPa; hint: 101.3 kPa at the sea", u.Air.Both(measure.UnitMM))
	case u.Alpha != 0 && !within(u.Alpha, 1, 2):
		return fmt.Errorf("suction.alpha: %s, not from 1 to 2; hint: 1.05 for turbulent flow", number(u.Alpha))
	}
	return nil
}

func (p Pump) check() error {
	if !p.Curve.Known() {
		return fmt.Errorf("pump: no curve is given; hint: points off its curve, or power and efficiency for an estimate")
	}
	if len(p.Efficiency) > 10000 {
		return fmt.Errorf("pump.efficiency: %d points, at most 10000; hint: one every tenth of the flow", len(p.Efficiency))
	}
	last := -1.0
	for i, e := range p.Efficiency {
		q := e.Flow.M3S()
		switch {
		case !within(e.Efficiency, 0.01, 1):
			return fmt.Errorf("pump.efficiency.%d: %s, not a fraction from 0.01 to 1; hint: 0.65 is a fair pump", i+1, number(e.Efficiency))
		case !within(q, 0, maxFlow) || q < last+minFlow:
			return fmt.Errorf("pump.efficiency.%d.flow: %s, not more than the point before; hint: give points with the flow rising",
				i+1, e.Flow.Both(measure.UnitMM))
		}
		last = q
	}
	if p.Motor != 0 && !within(p.Motor, 0.01, 1) {
		return fmt.Errorf("pump.motor: %s, not a fraction from 0.01 to 1; hint: 0.85 is a fair motor", number(p.Motor))
	}
	if len(p.NPSHRequired) > 0 {
		return checkNPSH(p.NPSHRequired)
	}
	return nil
}

func checkNPSH(points []Point) error {
	if len(points) == 1 {
		return fmt.Errorf("pump.npsh: 1 point given, from 2 are needed; hint: leave it out if the maker gives none")
	}
	_, _, err := pointsSI("pump.npsh", points)
	return err
}

// checkPipe is flow.Pipe.Check with the key built only when it is needed.
func checkPipe(p flow.Pipe, key func() string) error {
	if p.Check("") == nil {
		return nil
	}
	return p.Check(key())
}

func coefficient(key string, k float64) error {
	if !within(k, 0, maxK) {
		return fmt.Errorf("%s: %s, not a loss coefficient from 0 to 1e9; hint: 0 for none", key, number(k))
	}
	return nil
}

func elevation(key string, l measure.Length) error {
	if !within(l.Metres(), -maxHead, maxHead) {
		return fmt.Errorf("%s: %s, not within 1000 m of the datum; hint: measure from the sea", key, l.Both(measure.UnitMM))
	}
	return nil
}

func (l Lateral) check(i int) error {
	key := func(what string) string { return fmt.Sprintf("laterals.%d.%s", i+1, what) }
	if err := checkPipe(l.Hose, func() string { return key("hose") }); err != nil {
		return err
	}
	switch {
	case !within(l.Rise.Metres(), -maxHead, maxHead):
		return elevation(key("rise"), l.Rise)
	case !within(l.Branch, 0, maxK):
		return coefficient(key("branch"), l.Branch)
	case !within(l.Valve.K, 0, maxK):
		return coefficient(key("valve.k"), l.Valve.K)
	case !within(l.Valve.Wide, 0, maxK):
		return coefficient(key("valve.wide"), l.Valve.Wide)
	case !within(l.Barb.K, 0, maxK):
		return coefficient(key("barb.k"), l.Barb.K)
	case !boreOrNone(l.Valve.Bore):
		return badBore(key("valve.bore"), l.Valve.Bore)
	case !boreOrNone(l.Barb.Bore):
		return badBore(key("barb.bore"), l.Barb.Bore)
	case l.Hose.Length == 0 && l.Hose.K+l.Branch+l.Valve.K+l.Barb.K == 0:
		return fmt.Errorf("%s: 0 mm and no loss anywhere on it; hint: give the hose's length or the valve's k", key("hose.length"))
	}
	return nil
}

func boreOrNone(l measure.Length) bool { return l == 0 || within(l.MM(), 1, 2000) }

func badBore(key string, l measure.Length) error {
	return fmt.Errorf("%s: %s, not from 1 mm to 2 m; hint: leave it out for the hose's", key, l.Both(measure.UnitMM))
}
