package nursery

import (
	"fmt"
	"strings"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/stock"
	"silowright/nursery/flow"
	"silowright/nursery/manifold"
	"silowright/nursery/sea"
	"silowright/nursery/seed"
)

// Check refuses what cannot be reckoned with, in one line that begins with the
// job file's key.
func (f Farm) Check() error {
	for _, k := range Keys() {
		if err := k.check(k.Get(f)); err != nil {
			return err
		}
	}
	for _, check := range []func() error{f.checkBores, f.checkPump, f.checkPipes, f.checkPlan} {
		if err := check(); err != nil {
			return err
		}
	}
	return nil
}

func (f Farm) checkBores() error {
	h := f.Supply.Hose
	if h.Length > 0 && h.Bore < 5 {
		return fmt.Errorf("water.outlet_hose_bore: %s mm, not a hose's, allowed: 5 to 500 mm; hint: give the bore of the hose on the outlets", h.Bore.Metric())
	}
	for _, b := range []struct {
		key  string
		bore measure.Length
	}{{"lateral.valve_bore", f.Lateral.ValveBore}, {"lateral.hose_bore", f.Lateral.HoseBore}, {"lateral.barb_bore", f.Lateral.BarbBore}} {
		if b.bore != 0 && b.bore < 5 {
			return fmt.Errorf("%s: %s mm, not a bore, allowed: 5 to 500 mm, or 0 for the hose's; hint: give the inside diameter", b.key, b.bore.Metric())
		}
	}
	for _, b := range []struct {
		key  string
		size measure.Length
	}{{"bed.size", f.Bed.Size}, {"bed.pipe_size", f.Bed.PipeSize}} {
		if b.size != 0 && b.size < 0.1 {
			return fmt.Errorf("%s: %s, not a seed's, allowed: 0.1 to 100 mm, or 0 to go by the mesh; hint: the diameter of a ball as large as one seed", b.key, b.size.Both(measure.UnitMM))
		}
	}
	return nil
}

func (f Farm) checkPump() error {
	p := f.Pump
	if !p.Described() {
		if len(p.NPSH) > 0 {
			return fmt.Errorf("pump.npsh: %d points, without a pump, allowed: none; hint: give pump.curve as well", len(p.NPSH))
		}
		return nil
	}
	ways := 0
	for _, given := range []bool{len(p.Points) > 0, p.Duty.Flow != 0, p.Power != 0} {
		if given {
			ways++
		}
	}
	if ways > 1 {
		return fmt.Errorf("pump.curve: the pump is told in %d ways, allowed: one; hint: keep curve, or shut_off with duty_flow and duty_head, or power", ways)
	}
	if p.Duty.Flow != 0 && p.ShutOff == 0 {
		return fmt.Errorf("pump.shut_off: 0 m, needed with a duty point, allowed: over 0 to 500 m; hint: the head at no flow, the most its plate tells")
	}
	if !f.Supply.BelowKnown {
		return fmt.Errorf("water.below_ground: not given, needed with a pump, allowed: -100 to 100 m; hint: measure from the ground the silos stand on down to the water at its lowest")
	}
	w, err := f.water()
	if err != nil {
		return err
	}
	if _, err := f.curve(w); err != nil {
		return err
	}
	if len(p.NPSH) > 0 {
		trial := manifold.System{Water: w, Pump: manifold.Pump{NPSHRequired: p.NPSH}}
		if _, err := trial.NPSHAt(0); err != nil {
			return err
		}
	}
	return nil
}

func (f Farm) checkPipes() error {
	for _, r := range []struct {
		section string
		pipe    geometry.PipeRef
		length  measure.Length
	}{{"suction", f.Suction.Pipe, f.Suction.Length}, {"main", f.Main.Pipe, f.Main.Length}, {"manifold", f.Manifold.Pipe, 0}} {
		if r.pipe.Size == "" {
			if r.length > 0 {
				return fmt.Errorf("%s.pipe: not given, needed with a length, allowed: a nominal size; hint: as in pipe = \"3\"", r.section)
			}
			continue
		}
		if _, err := pipeOf(r.section, r.pipe); err != nil {
			return err
		}
	}
	return nil
}

func (f Farm) checkPlan() error {
	if f.Plan == nil {
		return nil
	}
	p := *f.Plan
	// What the silos will fill in stands in for itself.
	if p.DrumHouse.Area == 0 {
		p.DrumHouse.Area = 2e5
	}
	if p.PipeHouse.Area == 0 {
		p.PipeHouse.Area = 2e4
	}
	if len(p.Meshes) == 0 {
		p.Meshes = []seed.Mesh{{In: seed.Pipe, Opening: 0.1}, {In: seed.Drum, Opening: 1}}
	}
	return p.Check()
}

// water is the water pumped.
func (f Farm) water() (sea.Water, error) {
	w, err := sea.At(f.Supply.Salinity, f.Supply.Temperature)
	if err != nil {
		return w, fmt.Errorf("water.%w", err)
	}
	return w, nil
}

// guessShutOff is the head at no flow taken for a pump of which only the power
// is told: 20 m (common practice, no source).
const guessShutOff = 20 * metre

// curve is the pump's curve.
func (f Farm) curve(w sea.Water) (manifold.Curve, error) {
	p := f.Pump
	var c manifold.Curve
	var err error
	switch {
	case len(p.Points) > 0:
		c, err = manifold.CurveByPoints(p.Points)
	case p.Duty.Flow != 0:
		c, err = manifold.CurveByDuty(p.ShutOff, p.Duty)
	default:
		top := p.ShutOff
		if top == 0 {
			top = guessShutOff
		}
		c, err = manifold.Estimate(p.Power, p.Efficiency, w.Density, top)
	}
	if err != nil {
		return c, inKeys(err)
	}
	return c, nil
}

// inKeys turns the manifold's names for the pump's inputs into the job file's.
func inKeys(err error) error {
	s := err.Error()
	for _, r := range [][2]string{{"pump.points", "pump.curve"}, {"pump.duty.flow", "pump.duty_flow"}, {"pump.duty.head", "pump.duty_head"}} {
		if strings.HasPrefix(s, r[0]) {
			return fmt.Errorf("%s%s", r[1], strings.TrimPrefix(s, r[0]))
		}
	}
	return err
}

// seriesOf is the series of a pipe of which only the size is told.
func seriesOf(r geometry.PipeRef) string {
	if r.Series != "" {
		return r.Series
	}
	for _, series := range []string{stock.Schedule40, stock.PN10} {
		if _, ok := stock.PipeOf(r.Size, series); ok {
			return series
		}
	}
	return stock.Schedule40
}

// Named is a pipe of which only the size may be told, with its series: "4 sch40".
func Named(r geometry.PipeRef) string {
	r.Series = seriesOf(r)
	return r.String()
}

// pipeOf is a pipe of the tables, as water sees it.
func pipeOf(section string, r geometry.PipeRef) (flow.Pipe, error) {
	series := seriesOf(r)
	p, ok := stock.PipeOf(r.Size, series)
	if !ok || p.Inside <= 0 {
		return flow.Pipe{}, fmt.Errorf("%s.pipe: %.20q, does not come in %.20s with a known bore, allowed: %s; hint: change pipe or series",
			section, r.Size, series, strings.Join(bored(series), ", "))
	}
	return flow.Pipe{Bore: p.Inside, Roughness: flow.PlasticRoughness}, nil
}

// bored lists the sizes of a series whose bore is known, smallest first.
func bored(series string) []string {
	var out []string
	for _, size := range stock.PipeSizes(series) {
		if p, ok := stock.PipeOf(size, series); ok && p.Inside > 0 {
			out = append(out, size)
		}
	}
	return out
}
