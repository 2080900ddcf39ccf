package job

import (
	"slices"
	"strings"

	"silowright/cmd/internal/nearest"
	"silowright/geometry"
)

// section is what a part of the file sets: the change each key makes, and the
// path it stands at.
type section map[string]setting

type setting struct {
	path  string
	apply func(*geometry.Spec)
}

// sectionNames lists the sections that rules cover, in their order.
func sectionNames() []string {
	var names []string
	for _, q := range rules {
		if !slices.Contains(names, q.section) {
			names = append(names, q.section)
		}
	}
	return names
}

// sections reads every section of t that rules cover.
func (r *reader) sections(t table) section {
	out := section{}
	for _, name := range sectionNames() {
		in, ok := r.table(t, name)
		if !ok {
			continue
		}
		var known []string
		for _, q := range rules {
			if q.section != name {
				continue
			}
			known = append(known, q.name)
			v, ok := in.items[q.name]
			if !ok {
				continue
			}
			path := in.at(q.name)
			if apply, ok := q.read(r, path, v); ok {
				out[q.key()] = setting{path, apply}
			}
		}
		r.unknown(in, known, name)
	}
	return out
}

// unknown fails for every key of t that is not among known. section is the
// name that t's keys are known by; empty at the top.
func (r *reader) unknown(t table, known []string, section string) {
	full := func(key string) string {
		switch {
		case section != "":
			return section + "." + key
		case key == "":
			return `""`
		}
		return key
	}
	for _, key := range t.keys() {
		if slices.Contains(known, key) {
			continue
		}
		e := &Error{File: r.file, Line: r.lines.of(t.at(key)), Key: full(key)}
		switch near, ok := nearest.Word(key, known); {
		case ok:
			e.Hint = `did you mean "` + full(near) + `"?`
		case elsewhere(key, section) != "":
			e.Hint = elsewhere(key, section)
		default:
			e.Hint = "known here: " + strings.Join(known, ", ")
		}
		r.errs = append(r.errs, e)
	}
}

// elsewhere says where a key belongs that was written in the wrong section.
func elsewhere(key, section string) string {
	if slices.Contains(topKeys, key) {
		return key + " stands above the first section"
	}
	if slices.Contains(drumKeys, key) && section != "drum" {
		return key + " belongs to [[drum]]"
	}
	var homes []string
	for _, q := range rules {
		if q.name == key && q.section != section {
			homes = append(homes, "["+q.section+"]")
		}
	}
	if len(homes) == 0 {
		return ""
	}
	return key + " belongs to " + strings.Join(homes, " or ")
}

// lay puts defaults, the shared sections and each kind's own over one another
// and lists what nobody set.
func (r *reader) lay(shared section, base geometry.Fittings) ([]geometry.Spec, []geometry.Default) {
	var specs []geometry.Spec
	left := map[string][]geometry.Default{} // by key, one for each kind that took a default
	for i := range r.kinds {
		k := &r.kinds[i]
		s := geometry.DefaultSpec(k.drum, r.units)
		s.Fittings = s.Fittings.Over(base)
		k.origin = map[string]string{}
		for _, q := range rules {
			for _, layer := range []section{shared, k.own} {
				if set, ok := layer[q.key()]; ok {
					set.apply(&s)
					k.origin[q.key()] = set.path
				}
			}
		}
		r.settleSeries(&s, k)
		s.Fittings = k.fittings.Over(s.Fittings)
		s = s.WithDefaultNipples(k.origin["outlet.nipple"] == "", k.origin["inlet.nipple"] == "")
		for _, q := range rules {
			if k.origin[q.key()] == "" {
				left[q.key()] = append(left[q.key()], geometry.Default{Key: k.drum.Label, Value: q.write(&s, r.units)})
			}
		}
		specs = append(specs, s)
	}
	var defaulted []geometry.Default
	for _, q := range rules {
		defaulted = append(defaulted, merged(q.key(), left[q.key()], len(r.kinds))...)
	}
	return specs, defaulted
}

// merged is one line when all kinds took the same default, else one a kind.
func merged(key string, taken []geometry.Default, kinds int) []geometry.Default {
	same := len(taken) == kinds
	for _, d := range taken {
		same = same && d.Value == taken[0].Value
	}
	if same && kinds > 0 {
		return []geometry.Default{{Key: key, Value: taken[0].Value}}
	}
	var out []geometry.Default
	for _, d := range taken {
		out = append(out, geometry.Default{Key: key + " (drum " + d.Key + ")", Value: d.Value})
	}
	return out
}
