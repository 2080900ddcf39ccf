package job

import (
	"fmt"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// fittingKind is a kind of part that the builder may measure.
type fittingKind struct {
	name     string
	numbered bool // named by a number; else by the size of its pipe
	measures []fittingMeasure
	// put stores what was measured; what was not is zero.
	put func(f *geometry.Fittings, name string, m map[string]measure.Length)
}

// fittingMeasure is one measure of a fitting, and the range it may lie in.
type fittingMeasure struct {
	key, means string
	low, high  measure.Length
	example    measure.Length // invented, for the file to begin with
}

// fittingKinds lists the parts that may be measured, in the order of the file
// to begin with.
func fittingKinds() []fittingKind {
	return []fittingKind{
		{"coupling", false, []fittingMeasure{
			{"outside", "outside diameter of the coupling", 10 * mm, 500 * mm, 73 * mm},
			{"length", "its length", 10 * mm, 500 * mm, 65 * mm},
			{"depth", "depth of one socket, mouth to stop", 3 * mm, 250 * mm, 31 * mm},
		}, func(f *geometry.Fittings, size string, m map[string]measure.Length) {
			f.Couplings[size] = geometry.CouplingMeasure{Outside: m["outside"], Length: m["length"], Depth: m["depth"]}
		}},
		{"grommet", false, []fittingMeasure{
			{"hole", "the hole its label asks for", 10 * mm, 400 * mm, 76 * mm},
		}, func(f *geometry.Fittings, size string, m map[string]measure.Length) {
			f.Grommets[size] = geometry.GrommetMeasure{Hole: m["hole"]}
		}},
		{"bulkhead", false, []fittingMeasure{
			{"hole", "the hole its maker asks for", 10 * mm, 400 * mm, 76 * mm},
			{"thread", "outside diameter of its threaded body", 8 * mm, 400 * mm, 74 * mm},
			{"flange", "across its flange", 12 * mm, 600 * mm, 102 * mm},
			{"nut", "across the corners of its locknut", 12 * mm, 600 * mm, 100 * mm},
			{"gasket", "thickness of its gasket, not squeezed", 0.5 * mm, 30 * mm, 5 * mm},
			{"grip", "flange to locknut, the nut screwed back to the thread's end", 2 * mm, 300 * mm, 25 * mm},
			{"head", "from the gasket's face to the inner end", 2 * mm, 300 * mm, 22 * mm},
			{"length", "over all", 10 * mm, 600 * mm, 80 * mm},
			{"bore", "narrowest inside", 3 * mm, 400 * mm, 50 * mm},
		}, func(f *geometry.Fittings, size string, m map[string]measure.Length) {
			f.Bulkheads[size] = geometry.BulkheadMeasure{Hole: m["hole"], Thread: m["thread"], Flange: m["flange"], Nut: m["nut"],
				Gasket: m["gasket"], Grip: m["grip"], Head: m["head"], Length: m["length"], Bore: m["bore"]}
		}},
		{"stopper", true, []fittingMeasure{
			{"top", "across its wide end", 5 * mm, 400 * mm, 56 * mm},
			{"bottom", "across its narrow end", 4 * mm, 400 * mm, 48 * mm},
			{"length", "its length", 5 * mm, 200 * mm, 25 * mm},
		}, func(f *geometry.Fittings, number string, m map[string]measure.Length) {
			f.Stoppers[number] = geometry.StopperMeasure{Top: m["top"], Bottom: m["bottom"], Length: m["length"]}
		}},
	}
}

// fittings reads [fittings.coupling."2"], [fittings.stopper."11"] and the like:
// measures the builder took, which win over tables.
func (r *reader) fittings(t table) geometry.Fittings {
	out := geometry.Fittings{}.Over(geometry.Fittings{})
	in, ok := r.table(t, "fittings")
	if !ok {
		return out
	}
	var names []string
	for _, k := range fittingKinds() {
		names = append(names, k.name)
	}
	r.unknown(in, names, "fittings")
	for _, k := range fittingKinds() {
		name := r.pipeSize
		if k.numbered {
			name = r.anyNumber
		}
		r.bySize(in, k.name, name, func(size string, f table) {
			m := r.measures(f, "fittings."+k.name, k.measures)
			r.ordered(f, m, "bottom", "top", "is not narrower than the top", "top is the wide end")
			r.ordered(f, m, "thread", "flange", "is not narrower than the flange", "the flange keeps the body from going through")
			r.ordered(f, m, "thread", "nut", "is not narrower than the locknut", "measure the thread outside, the nut across its corners")
			r.ordered(f, m, "bore", "thread", "is not narrower than the thread", "bore is the narrowest inside")
			k.put(&out, size, m)
			if k.numbered {
				r.stoppers[size] = out.Stoppers[size]
			}
		})
	}
	return out
}

// ordered fails where both measures are given and the first is not less.
func (r *reader) ordered(t table, m map[string]measure.Length, less, more, why, hint string) {
	if m[less] > 0 && m[more] > 0 && m[less] >= m[more] {
		r.fail(t.at(less), m[less].In(r.units), why, "less than "+m[more].Both(r.units), hint)
	}
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

// measures reads what of a list is given.
func (r *reader) measures(t table, section string, list []fittingMeasure) map[string]measure.Length {
	var known []string
	out := map[string]measure.Length{}
	for _, m := range list {
		known = append(known, m.key)
		if v, ok := t.items[m.key]; ok {
			out[m.key], _ = r.length(t.at(m.key), v, m.low, m.high)
		}
	}
	r.unknown(t, known, section)
	if len(t.items) == 0 {
		r.fail(t.path, "", "is empty", "", fmt.Sprintf("give at least one of %q", known))
	}
	return out
}
