package job

import (
	"fmt"
	"strings"

	"silowright/geometry"
)

// possible fails for the first size that cannot be made with the others.
func (r *reader) possible(f *File) {
	for i, s := range f.Job.Kinds {
		fault, bad := s.Impossible()
		if !bad {
			continue
		}
		k := r.kinds[i]
		path := k.place(fault)
		value, allowed := fault.Value.In(r.units), fault.Low.Both(r.units)+" to "+fault.High.Both(r.units)
		if fault.High < fault.Low {
			allowed = "nothing, with the other sizes as they are"
		}
		if _, written := r.lines[path]; !written {
			value += " (the default)"
		}
		if len(f.Job.Kinds) > 1 {
			fault.Why += fmt.Sprintf(" (drum %q)", k.drum.Label)
		}
		r.fail(path, value, fault.Why, allowed, fault.Hint)
		if e := r.errs[len(r.errs)-1]; e.Key == keyName(k.path)+"."+fault.Key {
			e.Key = fault.Key
		}
	}
}

// place is the path in the file that a fault is about.
func (k kind) place(f geometry.Fault) string {
	switch key := f.Key; {
	case strings.HasPrefix(key, "drum.hoops."):
		return k.path + "." + entry("hoops", k.hoops[f.Hoop]) + strings.TrimPrefix(key, "drum.hoops")
	case strings.HasPrefix(key, "drum."):
		return k.path + strings.TrimPrefix(key, "drum")
	case k.origin[key] != "":
		return k.origin[key]
	default:
		return k.path + "." + key // not written: its line is the drum's
	}
}
