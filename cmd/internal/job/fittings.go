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
	words    []fittingWord
	// put stores what was measured and told; what was not is zero.
	put func(f *geometry.Fittings, name string, m map[string]measure.Length, w map[string]string)
}

// fittingWord is what of a fitting is told by a word; the first holds where none
// is told.
type fittingWord struct {
	key, means string
	words      []string
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
		}, nil, func(f *geometry.Fittings, size string, m map[string]measure.Length, _ map[string]string) {
			f.Couplings[size] = geometry.CouplingMeasure{Outside: m["outside"], Length: m["length"], Depth: m["depth"]}
		}},
		{"grommet", false, []fittingMeasure{
			{"hole", "the hole its label asks for", 10 * mm, 400 * mm, 76 * mm},
		}, nil, func(f *geometry.Fittings, size string, m map[string]measure.Length, _ map[string]string) {
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
		}, []fittingWord{{"ends", "what the pipe goes into: a socket, or a thread, which takes a male adapter", endWords()}},
			func(f *geometry.Fittings, size string, m map[string]measure.Length, w map[string]string) {
				f.Bulkheads[size] = geometry.BulkheadMeasure{Hole: m["hole"], Thread: m["thread"], Flange: m["flange"], Nut: m["nut"],
					Gasket: m["gasket"], Grip: m["grip"], Head: m["head"], Length: m["length"], Bore: m["bore"], Ends: geometry.End(w["ends"])}
			}},
		{"stopper", true, []fittingMeasure{
			{"top", "across its wide end", 5 * mm, 400 * mm, 56 * mm},
			{"bottom", "across its narrow end", 4 * mm, 400 * mm, 48 * mm},
			{"length", "its length", 5 * mm, 200 * mm, 25 * mm},
		}, nil, func(f *geometry.Fittings, number string, m map[string]measure.Length, _ map[string]string) {
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
			m, w := r.measures(f, "fittings."+k.name, k)
			r.ordered(f, m, "bottom", "top", "is not narrower than the top", "top is the wide end")
			r.ordered(f, m, "thread", "flange", "is not narrower than the flange", "the flange keeps the body from going through")
			r.ordered(f, m, "thread", "nut", "is not narrower than the locknut", "measure the thread outside, the nut across its corners")
			r.ordered(f, m, "bore", "thread", "is not narrower than the thread", "bore is the narrowest inside")
			k.put(&out, size, m, w)
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

// measures reads what of a kind of fitting is given.
func (r *reader) measures(t table, section string, k fittingKind) (map[string]measure.Length, map[string]string) {
	var known []string
	lengths, words := map[string]measure.Length{}, map[string]string{}
	for _, m := range k.measures {
		known = append(known, m.key)
		if v, ok := t.items[m.key]; ok {
			lengths[m.key], _ = r.length(t.at(m.key), v, m.low, m.high)
		}
	}
	for _, q := range k.words {
		known = append(known, q.key)
		if v, ok := t.items[q.key]; ok {
			words[q.key], _ = r.word(t.at(q.key), v, q.words)
		}
	}
	r.unknown(t, known, section)
	if len(t.items) == 0 {
		r.fail(t.path, "", "is empty", "", fmt.Sprintf("give at least one of %q", known))
	}
	return lengths, words
}

// endWords are the ends that a bulkhead fitting may have.
func endWords() []string {
	var out []string
	for _, e := range geometry.BulkheadEnds() {
		out = append(out, string(e))
	}
	return out
}
