package job

import (
	"fmt"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

// rule is one key of the sections that describe the silo: how it is read,
// where it goes and how it is written. Keys of the drum itself are in drum.go.
type rule struct {
	section, name string
	// read returns the change that the value makes to a spec.
	read func(r *reader, path string, v any) (func(*geometry.Spec), bool)
	// write is the spec's value as it would stand in a job file.
	write func(s *geometry.Spec, u measure.Unit) string
	bare  bool // written without quotes
}

func (q rule) key() string { return q.section + "." + q.name }

type spec = geometry.Spec

const (
	mm     = measure.Millimetre
	around = 4720 * mm // round the widest drum taken
)

// rules lists every key of every section with the range it may lie in. The
// ranges are wide on purpose: they catch a wrong unit or a slip of the finger.
// Whether a silo is any good is for the findings to say.
//
// common practice, no source: all of them.
var rules = []rule{
	aLength("lattice", "across", 50*mm, 1490*mm, func(s *spec) *measure.Length { return &s.Lattice.Across }),
	aCount("lattice", "bars", 2, 6, func(s *spec) *int { return &s.Lattice.Bars }),
	aLength("lattice", "bar_width", 3*mm, 200*mm, func(s *spec) *measure.Length { return &s.Lattice.BarWidth }),
	aLength("lattice", "pilot", 1*mm, 30*mm, func(s *spec) *measure.Length { return &s.Lattice.Pilot }),
	aWord("lattice", "edge", edges, func(s *spec) *geometry.Edge { return &s.Lattice.Edge }),

	aLength("ring", "width", 5*mm, 200*mm, func(s *spec) *measure.Length { return &s.Ring.Width }),

	aLength("mesh", "opening", 0.02*mm, 25*mm, func(s *spec) *measure.Length { return &s.Mesh.Opening }),
	aLength("mesh", "thickness", 0.02*mm, 10*mm, func(s *spec) *measure.Length { return &s.Mesh.Thickness }),
	aLength("mesh", "trim", 0, 150*mm, func(s *spec) *measure.Length { return &s.Mesh.Trim }),
	aFraction("mesh", "open_fraction", 0.05, 0.95, func(s *spec) *float64 { return &s.Mesh.OpenFraction }),
	aLength("mesh", "max_overlap", 0.5*mm, 100*mm, func(s *spec) *measure.Length { return &s.Mesh.Overlap }),

	aLength("handle", "below_rim", 5*mm, 1000*mm, func(s *spec) *measure.Length { return &s.Handle.BelowRim }),
	aLength("handle", "height", 10*mm, 200*mm, func(s *spec) *measure.Length { return &s.Handle.Height }),
	aLength("handle", "length", 20*mm, 500*mm, func(s *spec) *measure.Length { return &s.Handle.Length }),
	aLength("handle", "round", 0, around, func(s *spec) *measure.Length { return &s.Handle.Round }),

	aLength("outlet", "below_rim", 10*mm, 2000*mm, func(s *spec) *measure.Length { return &s.Outlet.BelowRim }),
	aPipe("outlet", "pipe", func(s *spec) *geometry.PipeRef { return &s.Outlet.Pipe }),
	aSeries("outlet", "series", func(s *spec) *geometry.PipeRef { return &s.Outlet.Pipe }),
	aLength("outlet", "saw", 6*mm, 400*mm, func(s *spec) *measure.Length { return &s.Outlet.Saw }),
	aWord("outlet", "joint", joints, func(s *spec) *geometry.Joint { return &s.Outlet.Joint }),
	aLength("outlet", "nipple", 5*mm, 1000*mm, func(s *spec) *measure.Length { return &s.Outlet.Nipple }),
	aLength("outlet", "round", 0, around, func(s *spec) *measure.Length { return &s.Outlet.Round }),

	aLength("inlet", "above_ground", 5*mm, 2000*mm, func(s *spec) *measure.Length { return &s.Inlet.AboveGround }),
	aPipe("inlet", "pipe", func(s *spec) *geometry.PipeRef { return &s.Inlet.Pipe }),
	aSeries("inlet", "series", func(s *spec) *geometry.PipeRef { return &s.Inlet.Pipe }),
	aLength("inlet", "saw", 6*mm, 400*mm, func(s *spec) *measure.Length { return &s.Inlet.Saw }),
	aWord("inlet", "joint", joints, func(s *spec) *geometry.Joint { return &s.Inlet.Joint }),
	aLength("inlet", "nipple", 5*mm, 1000*mm, func(s *spec) *measure.Length { return &s.Inlet.Nipple }),
	aLength("inlet", "stub", 10*mm, 3000*mm, func(s *spec) *measure.Length { return &s.Inlet.Stub }),
	aLength("inlet", "round", 0, around, func(s *spec) *measure.Length { return &s.Inlet.Round }),

	aLength("drain", "above_ground", 5*mm, 2000*mm, func(s *spec) *measure.Length { return &s.Drain.AboveGround }),
	aLength("drain", "saw", 6*mm, 400*mm, func(s *spec) *measure.Length { return &s.Drain.Saw }),
	aStopper("drain", "stopper", func(s *spec) *string { return &s.Drain.Stopper }),
	aLength("drain", "round", 0, around, func(s *spec) *measure.Length { return &s.Drain.Round }),

	aWord("screws", "size", screwSizes(), func(s *spec) *string { return &s.Screws.Size }),
	aLength("screws", "length", 3*mm, 100*mm, func(s *spec) *measure.Length { return &s.Screws.Length }),
	aLength("screws", "spacing", 10*mm, 1000*mm, func(s *spec) *measure.Length { return &s.Screws.Spacing }),

	aLength("sealant", "bead", 1*mm, 30*mm, func(s *spec) *measure.Length { return &s.Sealant.Bead }),
	aVolume("sealant", "cartridge", 10*measure.Millilitre, 5000*measure.Millilitre, func(s *spec) *measure.Volume { return &s.Sealant.Cartridge }),
	aFraction("sealant", "waste", 0, 0.9, func(s *spec) *float64 { return &s.Sealant.Waste }),

	aPipe("pipe_silo", "pipe", func(s *spec) *geometry.PipeRef { return &s.Pipe.Pipe }),
	aSeries("pipe_silo", "series", func(s *spec) *geometry.PipeRef { return &s.Pipe.Pipe }),
	aLength("pipe_silo", "length", 50*mm, 3000*mm, func(s *spec) *measure.Length { return &s.Pipe.Length }),
	aLength("pipe_silo", "screen", 0.02*mm, 10*mm, func(s *spec) *measure.Length { return &s.Pipe.Screen }),
	aLength("pipe_silo", "screen_thickness", 0.01*mm, 5*mm, func(s *spec) *measure.Length { return &s.Pipe.ScreenThickness }),
	aFraction("pipe_silo", "screen_open", 0.05, 0.95, func(s *spec) *float64 { return &s.Pipe.ScreenOpen }),
	aLength("pipe_silo", "drape", 2*mm, 300*mm, func(s *spec) *measure.Length { return &s.Pipe.Drape }),
	aLength("pipe_silo", "outlet_above_screen", 10*mm, 2900*mm, func(s *spec) *measure.Length { return &s.Pipe.OutletAboveScreen }),
	aLength("pipe_silo", "saw", 6*mm, 400*mm, func(s *spec) *measure.Length { return &s.Pipe.Saw }),
	aWord("pipe_silo", "joint", joints, func(s *spec) *geometry.Joint { return &s.Pipe.Joint }),
	aPipe("pipe_silo", "pipe_out", func(s *spec) *geometry.PipeRef { return &s.Pipe.PipeOut }),
	aSeries("pipe_silo", "pipe_out_series", func(s *spec) *geometry.PipeRef { return &s.Pipe.PipeOut }),
	aLength("pipe_silo", "pipe_out_length", 10*mm, 2000*mm, func(s *spec) *measure.Length { return &s.Pipe.PipeOutLength }),
	aLength("pipe_silo", "bead", 1*mm, 30*mm, func(s *spec) *measure.Length { return &s.Pipe.Bead }),

	aLength("saw", "kerf", 0, 10*mm, func(s *spec) *measure.Length { return &s.Saw.Kerf }),
	aLength("saw", "oversize", 0, 10*mm, func(s *spec) *measure.Length { return &s.Saw.Oversize }),

	aMass("load", "seed_kg", 0.1, 1000, func(s *spec) *measure.Mass { return &s.Load.Seed }),
	aWord("load", "time", stock.CreepTimes(), func(s *spec) *string { return &s.Load.Time }),
}

// The words that the word keys take.
var (
	edges  = []string{string(geometry.EdgeArc), string(geometry.EdgeStraight)}
	joints = jointWords()
)

// jointWords are the joints that pipe goes through.
func jointWords() []string {
	var out []string
	for _, j := range geometry.PipeJoints() {
		out = append(out, string(j))
	}
	return out
}

func aLength(section, name string, low, high measure.Length, at func(*spec) *measure.Length) rule {
	return rule{section, name,
		func(r *reader, path string, v any) (func(*spec), bool) {
			l, ok := r.length(path, v, low, high)
			return func(s *spec) { *at(s) = l }, ok
		},
		func(s *spec, u measure.Unit) string { return written(*at(s), u) },
		false,
	}
}

func aCount(section, name string, low, high int, at func(*spec) *int) rule {
	return rule{section, name,
		func(r *reader, path string, v any) (func(*spec), bool) {
			n, ok := r.count(path, v, low, high)
			return func(s *spec) { *at(s) = n }, ok
		},
		func(s *spec, _ measure.Unit) string { return fmt.Sprint(*at(s)) },
		true,
	}
}

func aFraction(section, name string, low, high float64, at func(*spec) *float64) rule {
	return rule{section, name,
		func(r *reader, path string, v any) (func(*spec), bool) {
			f, ok := r.fraction(path, v, low, high, "")
			return func(s *spec) { *at(s) = f }, ok
		},
		func(s *spec, _ measure.Unit) string { return plain(*at(s)) },
		true,
	}
}

func aMass(section, name string, low, high measure.Mass, at func(*spec) *measure.Mass) rule {
	return rule{section, name,
		func(r *reader, path string, v any) (func(*spec), bool) {
			f, ok := r.fraction(path, v, low.Kg(), high.Kg(), "kg")
			return func(s *spec) { *at(s) = measure.Mass(f) }, ok
		},
		func(s *spec, _ measure.Unit) string { return plain(at(s).Kg()) },
		true,
	}
}

func aVolume(section, name string, low, high measure.Volume, at func(*spec) *measure.Volume) rule {
	return rule{section, name,
		func(r *reader, path string, v any) (func(*spec), bool) {
			f, ok := r.volume(path, v, low, high)
			return func(s *spec) { *at(s) = f }, ok
		},
		func(s *spec, _ measure.Unit) string { return writtenVolume(*at(s)) },
		false,
	}
}

func aWord[T ~string](section, name string, words []string, at func(*spec) *T) rule {
	return rule{section, name,
		func(r *reader, path string, v any) (func(*spec), bool) {
			w, ok := r.word(path, v, words)
			return func(s *spec) { *at(s) = T(w) }, ok
		},
		func(s *spec, _ measure.Unit) string { return string(*at(s)) },
		false,
	}
}

func aPipe(section, name string, at func(*spec) *geometry.PipeRef) rule {
	return rule{section, name,
		func(r *reader, path string, v any) (func(*spec), bool) {
			size, ok := r.pipeSize(path, v)
			return func(s *spec) { at(s).Size = size }, ok
		},
		func(s *spec, _ measure.Unit) string { return at(s).Size },
		false,
	}
}

func aSeries(section, name string, at func(*spec) *geometry.PipeRef) rule {
	return rule{section, name,
		func(r *reader, path string, v any) (func(*spec), bool) {
			w, ok := r.word(path, v, pipeSeries())
			return func(s *spec) { at(s).Series = w }, ok
		},
		func(s *spec, _ measure.Unit) string { return at(s).Series },
		false,
	}
}

func aStopper(section, name string, at func(*spec) *string) rule {
	return rule{section, name,
		func(r *reader, path string, v any) (func(*spec), bool) {
			w, ok := r.stopperNumber(path, v)
			return func(s *spec) { *at(s) = w }, ok
		},
		func(s *spec, _ measure.Unit) string { return *at(s) },
		false,
	}
}
