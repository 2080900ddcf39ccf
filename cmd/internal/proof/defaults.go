package proof

import (
	"math"
	"strings"

	"silowright/cmd/internal/job"
	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/stock"
	"silowright/nursery"
	"silowright/nursery/seed"
)

// defaults are the numbers that hold for a job that leaves their key out, and
// the weights of seed a plan starts with. A default that follows from the drum
// is that of the example drum.
func defaults() []Row {
	basis := map[string]geometry.Basis{}
	for _, k := range nursery.Keys() {
		basis[k.At()] = k.Basis
	}
	for _, k := range seed.Keys() {
		basis["seed."+k.Name] = k.Basis
	}
	metric, heldBy := map[string]string{}, defaultsOf()
	for _, f := range job.Fields(job.Template(measure.UnitMM)) {
		metric[f.Key] = fallback(f)
	}
	var out []Row
	for _, f := range job.Fields(job.Template(measure.UnitInch)) {
		value := fallback(f)
		if value == "" || strings.HasPrefix(f.Key, "drum[") {
			continue
		}
		if m := metric[f.Key]; m != value {
			value += "; in a metric job " + m
		}
		o := stock.Custom()
		if b := basis[f.Key]; b.Source != "" {
			o = stock.Seen(b.Source)
		}
		section, _, _ := strings.Cut(f.Key, ".")
		out = append(out, Row{Group: "Defaults of the job file", What: f.Key + ": " + strings.TrimPrefix(f.Means, f.Unit+": "), Value: value,
			Source: o.Source, Standing: shorter.Replace(string(o.Standing)), Test: "./cmd/internal/proof TestDefaults", of: heldBy[section]})
	}
	for s := range seed.Species(4) {
		var cells []string
		for _, p := range seed.DefaultWeights(s) {
			cells = append(cells, stock.Numbers(p.Shell.Length().MM())+" mm: "+stock.Numbers(round(p.Each.Milligrams()))+" mg")
		}
		source, standing := string(stock.Practice), practice
		if _, b, err := seed.Weight(s, 1); err == nil {
			source, standing = "1 mm: "+b.Source+"; the rest: "+source, "1 mm: "+seen+"; the rest: "+practice
		}
		out = append(out, Row{Group: "Defaults of the job file", What: "seed.weights of one " + s.String(), Value: strings.Join(cells, ", "),
			Source: source, Standing: standing, Test: "./cmd/internal/proof TestDefaults", of: []string{"nursery/seed.DefaultWeights"}})
	}
	return out
}

// defaultsOf says which functions hold the defaults of a section.
func defaultsOf() map[string][]string {
	out := map[string][]string{"rates": {"bom.DefaultRates"}, "work": {"bom/work.DefaultRates", "bom/work.Hour"}, "bench": {"cmd/internal/job.defaultBench"}, "seed": {"nursery/seed.Keys", "nursery/seed.lotKeys"}}
	for _, s := range []string{"lattice", "ring", "mesh", "handle", "outlet", "inlet", "drain", "screws", "sealant", "pipe_silo", "saw", "load"} {
		out[s] = []string{"geometry.DefaultSpec", "geometry.latticeAcross"}
	}
	for _, s := range []string{"water", "pump", "suction", "main", "manifold", "lateral", "bed", "failure"} {
		out[s] = []string{"nursery.DefaultFarm"}
	}
	return out
}

// fallback writes a default that is a number, a length in both units; empty
// for words and for nought, which is a thing left out.
func fallback(f job.Field) string {
	if !strings.ContainsAny(f.Fallback, "123456789") {
		return ""
	}
	l, err := measure.ParseLength(f.Fallback, measure.UnitMM)
	switch {
	case f.Kind == job.KindLength && err == nil && strings.HasSuffix(f.Fallback, "in"):
		return f.Fallback + " (" + stock.Numbers(round(l.MM())) + " mm)"
	case f.Kind == job.KindLength && err == nil:
		return f.Fallback + " (" + stock.Numbers(round(l.Inches())) + " in)"
	case f.Unit != "" && !strings.HasSuffix(f.Fallback, f.Unit):
		return f.Fallback + " " + f.Unit
	}
	return f.Fallback
}

// round takes the rounding of a change of units away.
func round(x float64) float64 { return math.Round(x*1e4) / 1e4 }
