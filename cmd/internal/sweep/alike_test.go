package sweep

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"

	"silowright/cmd/internal/job"
	"silowright/cmd/internal/plan"
	"silowright/geometry"
	"silowright/geometry/measure"
)

// powers are by how much a quantity grows when every length is k times as
// long.
var powers = map[reflect.Type]float64{
	reflect.TypeFor[measure.Length](): 1, reflect.TypeFor[measure.Area](): 2,
	reflect.TypeFor[measure.Volume](): 3, reflect.TypeFor[measure.Mass](): 3,
}

// likeness compares two results number by number.
type likeness struct {
	k    float64 // how much longer the lengths of the second are
	tol  float64 // of a number, beside its own size over 10^9
	skip func(path string) bool
	out  []string
}

func (l *likeness) bad(path string, a, b any) {
	if len(l.out) < 8 {
		l.out = append(l.out, fmt.Sprintf("%s: %v and %v", path, a, b))
	}
}

func (l *likeness) compare(path string, a, b reflect.Value) {
	if l.skip != nil && l.skip(path) {
		return
	}
	switch a.Kind() {
	case reflect.Float64:
		x, y := a.Float()*math.Pow(l.k, powers[a.Type()]), b.Float()
		if !(math.Abs(x-y) <= l.tol+1e-9*math.Max(math.Abs(x), math.Abs(y))) {
			l.bad(path, x, y)
		}
	case reflect.Struct:
		for i := range a.NumField() {
			l.compare(path+"."+a.Type().Field(i).Name, a.Field(i), b.Field(i))
		}
	case reflect.Slice, reflect.Array:
		if a.Len() != b.Len() {
			l.bad(path, fmt.Sprint(a.Len(), " of them"), b.Len())
			return
		}
		for i := range a.Len() {
			l.compare(fmt.Sprintf("%s[%d]", path, i), a.Index(i), b.Index(i))
		}
	case reflect.Map: // of what the job gives
	default:
		if x, y := fmt.Sprint(a), fmt.Sprint(b); x != y {
			l.bad(path, x, y)
		}
	}
}

// spelt gives every key that the job leaves to its units a value: what holds
// for a job in mm.
func spelt(d *doc) *doc {
	out := d.copied()
	for _, f := range job.Fields([]byte(d.text(measure.UnitMM))) {
		if strings.Contains(f.Section, "[") || f.Fallback == "" || f.Value != "" {
			continue
		}
		b := out.blocks[0]
		if f.Section != "" {
			if !out.holds("["+f.Section+"]") && !slices.Contains(siloSections, f.Section) && f.Section != "bench" && f.Section != "rates" {
				continue
			}
			b = out.section("[" + f.Section + "]")
		}
		switch {
		case f.Name == "units" || b.has(f.Name):
		case f.Kind == job.KindLength && f.Unit == "mm":
			b.put(f.Name, value{mm: usual(f), style: asBareMM})
		case f.Kind == job.KindLength:
			b.put(f.Name, value{mm: usual(f), style: asMM})
		case f.Kind == job.KindCount || f.Kind == job.KindNumber || f.Kind == job.KindYes:
			b.put(f.Name, words("%s", f.Fallback))
		default:
			b.put(f.Name, words("%s", quote(f.Fallback)))
		}
	}
	return out
}

// unitFaults works a job out in millimetres and in inches. The two are to be
// refused alike or have the same findings and the same silos, to a ten-millionth
// of a millimetre; only words and what is bought may differ.
func unitFaults(d *doc, list string) (out []string, taken bool) {
	d = spelt(d)
	var plans [2]*plan.Plan
	var errs [2]error
	for i, u := range []measure.Unit{measure.UnitMM, measure.UnitInch} {
		plans[i], errs[i] = plan.Text("job.toml", []byte(d.text(u)), []byte(list))
	}
	if errs[0] != nil || errs[1] != nil {
		if errs[0] == nil || errs[1] == nil || keyOf(errs[0]) != keyOf(errs[1]) {
			out = append(out, fmt.Sprintf("in mm: %v\nin inches: %v", errs[0], errs[1]))
		}
		return out, false
	}
	a, b := plans[0], plans[1]
	if len(a.Findings) != len(b.Findings) {
		out = append(out, fmt.Sprintf("%d findings in mm, %d in inches", len(a.Findings), len(b.Findings)))
	}
	for i := range min(len(a.Findings), len(b.Findings)) {
		f, g := a.Findings[i], b.Findings[i]
		if f.ID != g.ID || f.Level != g.Level || f.Key != g.Key || f.Drum != g.Drum || !close2(f.Measured, g.Measured) || !close2(f.Limit, g.Limit) {
			out = append(out, fmt.Sprintf("finding in mm: %s %v %s %v %v\nin inches: %s %v %s %v %v\n%s\n%s", f.ID, f.Level, f.Key, f.Measured, f.Limit, g.ID, g.Level, g.Key, g.Measured, g.Limit, f.Says, g.Says))
		}
	}
	l := likeness{k: 1, tol: 1e-7, skip: func(path string) bool {
		for _, end := range []string{".Spec", ".Findings", ".Labels", ".Standing"} {
			if strings.HasSuffix(path, end) {
				return true
			}
		}
		return false
	}}
	l.compare("silos", reflect.ValueOf(a.Silos), reflect.ValueOf(b.Silos))
	return append(out, l.out...), true
}

func close2(a, b measure.Quantity) bool {
	return a.Unit == b.Unit && math.Abs(a.Value-b.Value) <= 1e-6+1e-6*math.Max(math.Abs(a.Value), math.Abs(b.Value))
}

// lawFaults solves a kind and the same with every length twice as long. Lengths
// are to double, areas to be four times as large, volumes and masses eight
// times, counts and angles the same. Couplings, grommets, stoppers, pipes and
// the pipe silo come out of tables in sizes of their own and obey no such law;
// seed is told by its mass, so what is lifted and stressed by it does neither;
// the outermost screws stand at a fixed distance from the ring's ends, and the
// seat's shifts are those for a sixteenth of an inch.
func lawFaults(s geometry.Silo) []string {
	twice := s.Spec
	twice.Drum.Hoops = append([]geometry.Hoop(nil), s.Spec.Drum.Hoops...)
	double(reflect.ValueOf(&twice).Elem())
	twice.Pipe = s.Spec.Pipe
	got, err := geometry.Solve(geometry.Job{Kinds: []geometry.Spec{twice}})
	if err != nil {
		return []string{"twice as large: " + err.Error()}
	}
	l := likeness{k: 2, tol: 1e-9, skip: lawless}
	l.compare("silo", reflect.ValueOf(s), reflect.ValueOf(got[0]))
	return l.out
}

// lawless are the parts of a silo that no law of scale holds for; of a hole it
// does for where it is, the wall and the saw.
func lawless(path string) bool {
	for _, hole := range []string{"silo.Outlet.", "silo.Inlet.", "silo.Drain."} {
		if of, ok := strings.CutPrefix(path, hole); ok {
			return !slices.Contains([]string{"Height", "BelowRim", "Round", "Radius", "Wall", "Saw", "Diameter", "Arc"}, of)
		}
	}
	return slices.Contains([]string{"silo.Spec", "silo.Findings", "silo.Templates", "silo.Pipe",
		"silo.Ring.JointEdge", "silo.Ring.Step", "silo.Ring.Chord", "silo.Ring.Screws",
		"silo.Seat.ShiftCircUp", "silo.Seat.ShiftCircDn", "silo.Seat.ShiftWallUp", "silo.Seat.ShiftWallDn",
		"silo.Weights.Pipe", "silo.Weights.Lift", "silo.Weights.Sag", "silo.Weights.BarStress", "silo.Weights.HandleStress", "silo.Weights.SeedBay"}, path)
}

// double makes every length of a struct twice as long.
func double(v reflect.Value) {
	switch {
	case v.Type() == reflect.TypeFor[measure.Length]():
		v.SetFloat(2 * v.Float())
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			double(v.Field(i))
		}
	case v.Kind() == reflect.Slice:
		for i := range v.Len() {
			double(v.Index(i))
		}
	}
}
