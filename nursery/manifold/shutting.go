package manifold

import (
	"fmt"

	"silowright/geometry/measure"
)

// Shutting is what the others get when one valve is shut.
type Shutting struct {
	// Lateral is the index of the one that is shut.
	Lateral       int
	Before, After Result
	// Gain is the greatest gain of another silo, MostGain its index, −1 for
	// none; Ratio is its flow after over before, 0 when it had none.
	Gain     measure.Flow
	MostGain int
	Ratio    float64
}

// Shut solves the system as it is and with lateral i shut. No other silo loses
// by it: a shut valve raises the head at every tee. An error names the input.
func Shut(s System, i int) (Shutting, error) {
	if i < 0 || i >= len(s.Laterals) {
		return Shutting{}, fmt.Errorf("lateral: %d, not from 0 to %d; hint: count from 0", i, len(s.Laterals)-1)
	}
	sh := Shutting{Lateral: i, MostGain: -1}
	var err error
	if sh.Before, err = Solve(s); err != nil {
		return Shutting{}, err
	}
	s.Laterals = append([]Lateral(nil), s.Laterals...)
	s.Laterals[i].Valve.Shut = true
	if sh.After, err = Solve(s); err != nil {
		return Shutting{}, err
	}
	for k, f := range sh.After.Laterals {
		gain := f.Flow - sh.Before.Laterals[k].Flow
		if k != i && !f.Shut && (sh.MostGain < 0 || gain > sh.Gain) {
			sh.Gain, sh.MostGain, sh.Ratio = gain, k, 0
			if was := sh.Before.Laterals[k].Flow; was > 0 {
				sh.Ratio = float64(f.Flow / was)
			}
		}
	}
	return sh, nil
}
