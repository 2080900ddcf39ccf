package job

import (
	"math"
	"reflect"
	"slices"
)

// holds reports whether something stands at path.
func holds(items any, path []step) bool {
	for _, s := range path {
		m, ok := items.(map[string]any)
		if !ok {
			return false
		}
		if items, ok = m[s.name]; !ok {
			return false
		}
		if s.index >= 0 {
			list, ok := items.([]any)
			if !ok || s.index >= len(list) {
				return false
			}
			items = list[s.index]
		}
	}
	return true
}

// with is a copy of items with v at path; false when path runs through
// something that holds no keys, or past a list's next item.
func with(items map[string]any, path []step, v any) (map[string]any, bool) {
	out := map[string]any{}
	for k, o := range items {
		out[k] = o
	}
	s := path[0]
	put := func(old any) (any, bool) {
		if len(path) == 1 {
			return v, true
		}
		inner, ok := old.(map[string]any)
		if old != nil && !ok {
			return nil, false
		}
		return wrap(with(inner, path[1:], v))
	}
	old, there := out[s.name]
	if s.index < 0 {
		n, ok := put(old)
		out[s.name] = n
		return out, ok
	}
	list, ok := old.([]any)
	if (there && !ok) || s.index > len(list) {
		return nil, false
	}
	list = slices.Clone(list)
	if s.index == len(list) {
		list = append(list, nil)
	}
	n, ok := put(list[s.index])
	list[s.index] = n
	out[s.name] = list
	return out, ok
}

func wrap(m map[string]any, ok bool) (any, bool) { return m, ok }

// removed reports whether after is before without what stood at path; a
// section left empty by that may be gone too.
func removed(after, before map[string]any, path []step) bool {
	for _, prune := range []bool{false, true} {
		if same(after, without(before, path, prune)) {
			return true
		}
	}
	return false
}

func without(items map[string]any, path []step, prune bool) map[string]any {
	out := map[string]any{}
	for k, o := range items {
		out[k] = o
	}
	s := path[0]
	drop := func(old any) any {
		inner, _ := old.(map[string]any)
		return without(inner, path[1:], prune)
	}
	switch list, many := out[s.name].([]any); {
	case s.index < 0 && len(path) == 1:
		delete(out, s.name)
	case s.index < 0:
		inner := drop(out[s.name])
		if out[s.name] = inner; prune && len(inner.(map[string]any)) == 0 {
			delete(out, s.name)
		}
	case many && len(path) == 1:
		if rest := slices.Delete(slices.Clone(list), s.index, s.index+1); len(rest) > 0 || !prune {
			out[s.name] = rest
		} else {
			delete(out, s.name)
		}
	case many:
		list = slices.Clone(list)
		list[s.index] = drop(list[s.index])
		out[s.name] = list
	}
	return out
}

// same compares two documents; a NaN is like another.
func same(a, b any) bool {
	switch a := a.(type) {
	case map[string]any:
		b, ok := b.(map[string]any)
		if !ok || len(a) != len(b) {
			return false
		}
		for k, v := range a {
			if w, ok := b[k]; !ok || !same(v, w) {
				return false
			}
		}
		return true
	case []any:
		b, ok := b.([]any)
		return ok && slices.EqualFunc(a, b, same)
	case float64:
		b, ok := b.(float64)
		return ok && (a == b || math.IsNaN(a) && math.IsNaN(b))
	}
	return reflect.DeepEqual(a, b)
}
