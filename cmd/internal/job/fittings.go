package job

import (
	"fmt"
	"maps"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// fittings reads [fittings.coupling."2"], [fittings.grommet."2"] and
// [fittings.stopper."11"]: measures the builder took, which win over tables.
func (r *reader) fittings(t table) geometry.Fittings {
	out := geometry.Fittings{
		Couplings: map[string]geometry.CouplingMeasure{},
		Grommets:  map[string]geometry.GrommetMeasure{},
		Stoppers:  map[string]geometry.StopperMeasure{},
	}
	in, ok := r.table(t, "fittings")
	if !ok {
		return out
	}
	r.unknown(in, []string{"coupling", "grommet", "stopper"}, "fittings")
	r.bySize(in, "coupling", r.pipeSize, func(size string, f table) {
		var m geometry.CouplingMeasure
		r.measures(f, "fittings.coupling", []fitting{
			{"outside", 10 * mm, 500 * mm, &m.Outside}, {"length", 10 * mm, 500 * mm, &m.Length}, {"depth", 3 * mm, 250 * mm, &m.Depth}})
		out.Couplings[size] = m
	})
	r.bySize(in, "grommet", r.pipeSize, func(size string, f table) {
		var m geometry.GrommetMeasure
		r.measures(f, "fittings.grommet", []fitting{{"hole", 10 * mm, 400 * mm, &m.Hole}})
		out.Grommets[size] = m
	})
	r.bySize(in, "stopper", r.anyNumber, func(number string, f table) {
		var m geometry.StopperMeasure
		r.measures(f, "fittings.stopper", []fitting{
			{"top", 5 * mm, 400 * mm, &m.Top}, {"bottom", 4 * mm, 400 * mm, &m.Bottom}, {"length", 5 * mm, 200 * mm, &m.Length}})
		if m.Top > 0 && m.Bottom >= m.Top {
			r.fail(f.at("bottom"), m.Bottom.In(r.units), "is not narrower than the top", "less than "+m.Top.Both(r.units), "top is the wide end")
		}
		out.Stoppers[number] = m
		r.stoppers[number] = m
	})
	return out
}

// fitting is one measure of a fitting.
type fitting struct {
	key       string
	low, high measure.Length
	to        *measure.Length
}

// bySize walks the sections of in.kind, each named for a size.
func (r *reader) bySize(in table, kind string, size func(path string, v any) (string, bool), read func(string, table)) {
	t, ok := r.table(in, kind)
	if !ok {
		return
	}
	seen := map[string]bool{}
	for _, key := range t.keys() {
		f, ok := r.table(t, key)
		if !ok {
			continue
		}
		name, ok := size(f.path, key)
		if !ok {
			continue
		}
		if seen[name] {
			r.fail(f.path, show(key), "is the same size as another here", "", "keep one of them")
			continue
		}
		seen[name] = true
		read(name, f)
	}
}

func (r *reader) measures(t table, section string, list []fitting) {
	var known []string
	given := 0
	for _, m := range list {
		known = append(known, m.key)
		if v, ok := t.items[m.key]; ok {
			given++
			*m.to, _ = r.length(t.at(m.key), v, m.low, m.high)
		}
	}
	r.unknown(t, known, section)
	if given == 0 && len(t.items) == 0 {
		r.fail(t.path, "", "is empty", "", fmt.Sprintf("give at least one of %q", known))
	}
}

// merge lays over on top of base; it shares no map with either.
func merge(base, over geometry.Fittings) geometry.Fittings {
	return geometry.Fittings{
		Couplings: laid(base.Couplings, over.Couplings),
		Grommets:  laid(base.Grommets, over.Grommets),
		Stoppers:  laid(base.Stoppers, over.Stoppers),
	}
}

func laid[T any](base, over map[string]T) map[string]T {
	out := map[string]T{}
	maps.Copy(out, base)
	maps.Copy(out, over)
	return out
}
