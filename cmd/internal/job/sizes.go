package job

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"silowright/geometry"
	"silowright/geometry/stock"
)

// pipeSeries lists the series of pipe known, those that come first being
// taken first when a size is in several.
func pipeSeries() []string { return stock.Series() }

// screwSizes lists the sizes of screw known.
func screwSizes() []string { return stock.ScrewSizes() }

// pipeSizes lists the sizes of a series, or of all when series is empty.
func pipeSizes(series string) []string {
	if series != "" {
		return stock.PipeSizes(series)
	}
	var out []string
	for _, p := range stock.Pipes() {
		if !slices.Contains(out, p.Size) {
			out = append(out, p.Size)
		}
	}
	return out
}

// sizeName writes a size as the tables do: "1-1/2 in" and 1.5 both become
// "1 1/2", "110 mm" becomes "110".
func sizeName(v any) (string, bool) {
	if f, ok := number(v); ok {
		if !(f > 0 && f < 1000) {
			return "", false
		}
		return stock.NormalSize(plain(f)), true
	}
	s, ok := v.(string)
	return stock.NormalSize(s), ok
}

// pipeSize reads the nominal size of a pipe.
func (r *reader) pipeSize(path string, v any) (string, bool) {
	size, ok := sizeName(v)
	if ok && slices.Contains(pipeSizes(""), size) {
		return size, true
	}
	r.fail(path, show(v), "is not a pipe size of the tables", strings.Join(pipeSizes(""), ", "), `the nominal size, as in "1 1/2" or "110"; silowright tables lists them`)
	return "", false
}

var stopperText = regexp.MustCompile(`^[0-9]{1,3}(\.5)?$`)

// anyNumber reads a stopper's number, of the tables or not.
func (r *reader) anyNumber(path string, v any) (string, bool) {
	s, ok := text(v)
	s = numeral(strings.TrimSpace(s))
	if !ok || !stopperText.MatchString(s) {
		r.fail(path, show(v), "is not a stopper's number", "", `as printed on it: "11"`)
		return "", false
	}
	return s, true
}

// stopperNumber reads the number of a stopper of the tables or of one that the
// job measures.
func (r *reader) stopperNumber(path string, v any) (string, bool) {
	s, ok := r.anyNumber(path, v)
	if !ok {
		return "", false
	}
	t, inTable := stock.StopperOf(s)
	m := r.stoppers[s]
	if (t.Length > 0 || m.Length > 0) && (inTable || (m.Top > 0 && m.Bottom > 0)) {
		return s, true
	}
	if inTable {
		r.fail(path, show(v), "has no length in the tables", "", fmt.Sprintf("measure it and give length under [fittings.stopper.%q]", s))
		return "", false
	}
	var known []string
	for _, t := range stock.Stoppers() {
		known = append(known, t.Number)
	}
	r.fail(path, show(v), "is not a stopper of the tables", strings.Join(known, ", "),
		fmt.Sprintf("for any other give top, bottom and length under [fittings.stopper.%q]", s))
	return "", false
}

// pipeKeys pairs the key that names a pipe's size with the one that names its
// series.
var pipeKeys = []struct {
	size, series string
	at           func(*spec) *geometry.PipeRef
}{
	{"outlet.pipe", "outlet.series", func(s *spec) *geometry.PipeRef { return &s.Outlet.Pipe }},
	{"inlet.pipe", "inlet.series", func(s *spec) *geometry.PipeRef { return &s.Inlet.Pipe }},
	{"pipe_silo.pipe", "pipe_silo.series", func(s *spec) *geometry.PipeRef { return &s.Pipe.Pipe }},
	{"pipe_silo.pipe_out", "pipe_silo.pipe_out_series", func(s *spec) *geometry.PipeRef { return &s.Pipe.PipeOut }},
}

// settleSeries picks the series where the job gives a size alone, and holds
// size and series to one row of the tables. A size alone keeps the default's
// series when that has it; else the first series that has it is taken.
func (r *reader) settleSeries(s *geometry.Spec, k *kind) {
	for _, key := range pipeKeys {
		ref := key.at(s)
		if slices.Contains(pipeSizes(ref.Series), ref.Size) {
			continue
		}
		path, size := k.origin[key.series], ref.Size
		if path == "" {
			for _, series := range pipeSeries() {
				if slices.Contains(pipeSizes(series), size) {
					ref.Series = series
					break
				}
			}
			continue
		}
		if k.origin[key.size] != "" {
			path = k.origin[key.size]
		}
		value := fmt.Sprintf("%q", size)
		if k.origin[key.size] == "" {
			value += " (the default)"
		}
		r.fail(path, value, "does not come in the series "+ref.Series, strings.Join(pipeSizes(ref.Series), ", "), "change "+key.size+" or "+key.series)
	}
}
