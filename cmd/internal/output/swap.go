package output

import (
	"errors"
	"fmt"
	"os"
)

// errHeld says that a marker belongs to a process that lives.
var errHeld = errors.New("another run writes there")

// The moments at which a process may be killed, and what stands at the target
// then. W is the work directory beside it.
//
//	W made, its marker not yet or half      old set (or none); the next run takes W away
//	W/new half built                        old set (or none); likewise
//	W/new built and on the disk             old set (or none); likewise
//	names exchanged, old set in W/new       new set; the next run takes the old one away
//	old set half taken away                 new set; likewise
//	all but W's marker taken away           new set; likewise
//
// Where the system or the disk exchanges no two names in one step, the
// exchange is two renames, and there is one moment more:
//
//	old set in W/old, new one in W/new      none; the next run beside it puts the old set back first
//
// The next run is the next that writes a set or a file into the same
// directory, whatever its name.

// mover is how names are moved.
type mover struct {
	rename   func(from, to string) error
	exchange func(a, b string) error // each takes the other's place, in one step
}

// system moves names as the system can.
var system = mover{os.Rename, exchange}

// swap moves what is built to target. With old, what stands there goes into
// the work directory, to the path returned; when that fails it stays or comes
// back.
func (m mover) swap(target string, w *workspace, old bool) (went string, err error) {
	if !old {
		return "", m.rename(w.fresh(), target)
	}
	if m.exchange(w.fresh(), target) == nil {
		return w.fresh(), nil
	}
	// it changed nothing: not every system and disk has it
	if err := m.rename(target, w.aside()); err != nil {
		return "", err
	}
	if err := m.rename(w.fresh(), target); err != nil {
		return "", errors.Join(err, m.rename(w.aside(), target))
	}
	return w.aside(), nil
}

// swapBack undoes a swap. Where it cannot, the earlier set stays in the work
// directory, which is then left alone.
func (m mover) swapBack(target string, w *workspace, went string) error {
	var err error
	if went == w.fresh() {
		err = m.exchange(went, target)
	} else if err = m.rename(target, w.fresh()); err == nil {
		if err = m.rename(went, target); err != nil {
			err = errors.Join(err, m.rename(w.fresh(), target))
		}
	}
	if err != nil {
		w.left = true
		return fmt.Errorf("the earlier set lies in %s now: %w", went, reason(err))
	}
	return nil
}
