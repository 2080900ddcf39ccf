package geometry

import (
	"maps"
	"strings"

	"silowright/geometry/measure"
)

// Joint says how a hole in a wall is closed: how a pipe goes through it, or
// what stops it.
type Joint string

// The joints known.
const (
	JointCouplings Joint = "couplings" // nipple, and a coupling pushed on from each side
	JointGrommet   Joint = "grommet"   // rubber pipe-to-tank grommet
	JointBulkhead  Joint = "bulkhead"  // threaded bulkhead fitting, gasket and locknut
	JointStopper   Joint = "stopper"   // tapered rubber stopper in a plain hole
)

// joint is one joint: everything about it is in the file named for it.
type joint struct {
	name Joint
	// fit works out how the joint sits in a hole that is sawn and, where pipe
	// goes through, knows its pipe.
	fit    func(h *Hole, q HoleSpec) error
	checks func(h Hole, u measure.Unit) []Finding
	// suits reports whether a saw of the nominal size, leaving a hole of the
	// diameter, would do for the joint.
	suits  func(h Hole, saw, diameter length) bool
	makeup Makeup
	// makes changes the makeup for the hole's own part; nil where all parts are alike.
	makes func(h Hole, m *Makeup)
}

// joints lists every joint. A new one is a row here and a file.
func joints() []joint {
	return []joint{couplingsJoint(), grommetJoint(), bulkheadJoint(), stopperJoint()}
}

// Fits are how a hole's joint sits; the one of the hole's own joint is filled.
type Fits struct {
	Coupling CouplingFit
	Grommet  GrommetFit
	Bulkhead BulkheadFit
	Stopper  StopperFit
}

// Fittings are measures the builder took of parts that vary, by size; what is
// absent comes from the tables.
type Fittings struct {
	Couplings map[string]CouplingMeasure // key: pipe size
	Grommets  map[string]GrommetMeasure  // key: pipe size
	Bulkheads map[string]BulkheadMeasure // key: pipe size
	Stoppers  map[string]StopperMeasure  // key: stopper number
}

// Over lays f over base; what it returns shares no map with either, and none
// of its maps is nil.
func (f Fittings) Over(base Fittings) Fittings {
	return Fittings{
		Couplings: laid(base.Couplings, f.Couplings),
		Grommets:  laid(base.Grommets, f.Grommets),
		Bulkheads: laid(base.Bulkheads, f.Bulkheads),
		Stoppers:  laid(base.Stoppers, f.Stoppers),
	}
}

func laid[T any](base, over map[string]T) map[string]T {
	out := map[string]T{}
	maps.Copy(out, base)
	maps.Copy(out, over)
	return out
}

// WithLabel adds the hole that the label of a joint's own part asks for, for
// pipe of a size, where that joint has such a part.
func (f Fittings) WithLabel(j Joint, size string, hole length) Fittings {
	f = f.Over(Fittings{})
	switch j {
	case JointGrommet:
		f.Grommets[size] = GrommetMeasure{Hole: hole}
	case JointBulkhead:
		m := f.Bulkheads[size]
		m.Hole = hole
		f.Bulkheads[size] = m
	}
	return f
}

// Makeup is what making up a joint takes: the part that is bought, what is
// cemented and sealed, and what of it the water passes. Takeoff, hours, day
// plan, build steps and flow ask it of the joint.
type Makeup struct {
	By      string // in a sentence: "couplings", "a grommet"
	Means   string // for a reader of the job file
	Part    string // the part's name, as items begin: "coupling"
	Item    string // the part on the bill: "coupling for %s pipe"
	Parts   int    // how many of it one hole takes
	Piped   bool   // a pipe goes through
	Nipple  bool   // the pipe through the wall is a piece of its own, and a further pipe is cemented on outside
	Sockets int    // sockets that the pipe through the wall is cemented into
	Faces   int    // flat faces bedded in sealant
	Fitted  bool   // the part is put into the wall by hand: neither cemented nor a stopper
	Passed  int    // couplings the water passes (one loss each)
	// Adapters are male adapters, socket by thread, screwed into the part for the
	// pipe: one an end that takes pipe.
	Adapters int
}

// row is the joint's row; one that is not known has none.
func (j Joint) row() (joint, bool) {
	for _, r := range joints() {
		if r.name == j {
			return r, true
		}
	}
	return joint{}, false
}

// Makeup is what making up the joint takes; zero for a joint not known.
func (j Joint) Makeup() Makeup {
	r, _ := j.row()
	return r.makeup
}

// Makeup is what making up the hole's joint takes, with its own part.
func (h Hole) Makeup() Makeup {
	r, _ := h.Joint.row()
	m := r.makeup
	if r.makes != nil {
		r.makes(h, &m)
	}
	return m
}

// Joints lists the joints known, those for pipe first.
func Joints() []Joint {
	var out []Joint
	for _, r := range joints() {
		out = append(out, r.name)
	}
	return out
}

// JointNames names the joints known in a sentence.
func JointNames() string {
	var names []string
	for _, r := range joints() {
		names = append(names, string(r.name))
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " or " + names[last]
}

// PipeJoints lists the joints that pipe goes through.
func PipeJoints() []Joint {
	var out []Joint
	for _, r := range joints() {
		if r.makeup.Piped {
			out = append(out, r.name)
		}
	}
	return out
}
