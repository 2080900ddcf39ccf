// Package job reads a job file: what to build, from which drums, with which
// holes. It is strict. Every key it does not know, every value of the wrong
// kind or out of range and every set of sizes that cannot be made is refused
// with one line that names file, line, key, value, allowed range and a hint.
// What a file leaves out is filled with geometry's defaults and listed.
package job

import (
	"errors"
	"fmt"
	"io/fs"
	"math/big"
	"path/filepath"
	"strings"
	"syscall"

	"silowright/bom"
	"silowright/bom/money"
	"silowright/bom/work"
	"silowright/cmd/internal/input"
	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/nursery"
)

// File is a job file read and checked.
type File struct {
	Name     string // as the user wrote the path
	Job      geometry.Job
	Currency string // ISO 4217 code: three capital letters
	// Prices is the price list as the file names it, PricesPath where that is:
	// relative names start at the job file's own directory.
	Prices     string
	PricesPath string

	Listing     bom.Listing // how the price list is written
	Terms       bom.Terms
	Contingency bom.Share
	Held        []bom.Held // on the rack
	Runs        []bom.Run  // pipe for manifold and mains
	Rates       bom.Rates
	Work        work.Rates
	Wage        money.Money // an hour
	Farm        nursery.Farm
	Energy      *big.Rat // price of a kilowatt hour; nil when it is not told
	// FromSeed says that the seed plan is to tell how many silos are built.
	FromSeed FromSeed
}

// FromSeed names the counts that the seed plan tells.
type FromSeed struct{ Drum, Pipe bool }

// fromSeedWords stand in place of a count.
const fromSeedWords = "from seed plan"

// Read reads the job file at path. Every error names path; those about its
// content are of type *Error.
func Read(path string) (*File, error) {
	data, err := input.Whole(path, maxSize)
	if err != nil {
		return nil, openError(path, err)
	}
	return Parse(path, data)
}

func openError(path string, err error) error {
	switch {
	case path == "":
		return errors.New("no job file named; hint: silowright start DIR writes one")
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%s: no such file; hint: silowright start DIR writes a job file to begin with", path)
	case errors.Is(err, fs.ErrPermission):
		return fmt.Errorf("%s: may not be read; hint: look at its permissions", path)
	case errors.Is(err, input.ErrDirectory):
		return fmt.Errorf("%s: is a directory; hint: name the job file in it, as in %s", path, filepath.Join(path, "job.toml"))
	case errors.Is(err, input.ErrChanged):
		return fmt.Errorf("%s: %w; hint: let the program that writes it finish, and run this again", path, err)
	case errors.Is(err, syscall.EMFILE):
		return fmt.Errorf("%s: cannot be read: %w; hint: close some programs, and run this again", path, err)
	}
	return fmt.Errorf("%s: cannot be read: %w; hint: is it a job file?", path, err)
}

// Parse reads a job from its text; name is used in messages and to find the
// price list.
func Parse(name string, data []byte) (*File, error) {
	top, bad := decode(name, data)
	if bad != nil {
		return nil, bad
	}
	r := &reader{file: name, lines: top.lines, stoppers: map[string]geometry.StopperMeasure{}}
	f := r.job(top)
	if err := r.first(); err != nil {
		return nil, err
	}
	if r.possible(f); len(r.errs) > 0 {
		return nil, r.first()
	}
	f.Name = name
	f.PricesPath = f.Prices
	if !filepath.IsAbs(f.Prices) {
		f.PricesPath = filepath.Join(filepath.Dir(name), f.Prices)
	}
	return f, nil
}

// reader is the state of reading one file.
type reader struct {
	file  string
	lines lines
	units measure.Unit
	errs  []*Error
	kinds []kind
	// fromSeed says that the seed plan tells how many drum silos are built, so
	// that the drums' counts are only what there is
	fromSeed bool
	// stoppers that [fittings] measures; drain.stopper may name one of them
	stoppers map[string]geometry.StopperMeasure
}

// kind is one [[drum]] with what it overrides.
type kind struct {
	path     string
	drum     geometry.Drum
	given    bool // count was given
	own      section
	fittings geometry.Fittings
	hoops    []int             // place in the file of each of drum.Hoops, lowest first
	origin   map[string]string // key → path that set it
}

// The keys that stand above the first section, with those of [prices].
var topKeys = []string{"name", "units", "drum_silos", "pipe_silos", "currency", "projection"}

// job reads the whole file; what it returns is only good when r.errs is empty.
func (r *reader) job(top table) *File {
	f := &File{Currency: "USD", Prices: "prices.csv"}
	j := &f.Job
	j.Name = "nursery silos"
	var defaulted []geometry.Default
	optional := func(key string, read func(v any), fallback string) {
		if v, ok := top.items[key]; ok {
			read(v)
		} else {
			defaulted = append(defaulted, geometry.Default{Key: key, Value: fallback})
		}
	}
	required := func(key, means string, read func(v any)) {
		if v, ok := top.items[key]; ok {
			read(v)
		} else {
			r.fail(key, "", missing, "", "write "+means+" above the first section")
		}
	}
	optional("units", func(v any) {
		if w, ok := r.word("units", v, []string{"in", "mm"}); ok && w == "mm" {
			r.units = measure.UnitMM
		}
	}, "in")
	j.Units = r.units
	j.Projection = geometry.DefaultProjection(r.units)
	optional("projection", func(v any) {
		if w, ok := r.word("projection", v, []string{string(geometry.ThirdAngle), string(geometry.FirstAngle)}); ok {
			j.Projection = geometry.Projection(w)
		}
	}, string(j.Projection))
	optional("name", func(v any) { j.Name, _ = r.title("name", v, 60) }, j.Name)
	required("drum_silos", "how many drum silos to build, as in drum_silos = 20",
		func(v any) { j.DrumSilos = r.silos("drum_silos", v, &f.FromSeed.Drum) })
	required("pipe_silos", "how many pipe silos to build, as in pipe_silos = 12 (0 for none)",
		func(v any) { j.PipeSilos = r.silos("pipe_silos", v, &f.FromSeed.Pipe) })
	optional("currency", func(v any) { f.Currency = r.currency("currency", v) }, f.Currency)
	if f.Prices = r.prices(top, f); top.lines["prices.file"] == 0 {
		defaulted = append(defaulted, geometry.Default{Key: "prices.file", Value: f.Prices})
	}
	r.buying(top, f)
	r.onHand(top, f)
	r.runs(top, f)
	r.effort(top, f)
	r.farm(top, f)
	r.fromSeed = f.FromSeed.Drum
	for _, key := range []struct {
		name  string
		asked bool
	}{{"drum_silos", f.FromSeed.Drum}, {"pipe_silos", f.FromSeed.Pipe}} {
		if key.asked && f.Farm.Plan == nil {
			r.fail(key.name, fmt.Sprintf("%q", fromSeedWords), "has no seed plan to go by", "", "describe the seed under [seed], or write how many")
		}
	}
	known := append(append(append([]string{seedSection}, otherSections...), topKeys...), sectionNames()...)
	r.unknown(top, append(known, farmSections()...), "")

	base := r.fittings(top)
	shared := r.sections(top)
	r.drums(top, j)
	if len(r.errs) > 0 {
		return f
	}
	j.Kinds, j.Defaulted = r.lay(shared, base)
	j.Defaulted = append(defaulted, j.Defaulted...)
	return f
}

// otherSections are the sections that rules do not cover.
var otherSections = []string{"drum", "fittings", "prices", "buying", "bench", "supplier", "choose", "exchange", "on_hand", "pipe_run", "rates", work.Section}

// silos reads a count of silos, or that the seed plan tells it.
func (r *reader) silos(path string, v any, fromSeed *bool) int {
	if s, ok := v.(string); ok && strings.EqualFold(strings.TrimSpace(s), fromSeedWords) {
		*fromSeed = true
		return 0
	}
	n, _ := r.count(path, v, 0, maxCount)
	return n
}

// maxCount is the most silos, or drums of a kind, one job may hold.
const maxCount = 100000

func (r *reader) currency(path string, v any) string {
	s, _ := v.(string)
	if _, err := money.ParseCurrency(s); err != nil {
		r.fail(path, show(v), "is not a currency code", "three capital letters (ISO 4217)", `as in currency = "USD" or "EUR"`)
	}
	return s
}

// prices reads [prices]: where the list is and how its numbers are written.
func (r *reader) prices(top table, f *File) string {
	f.Listing.Currency = money.Currency(f.Currency)
	t, ok := r.table(top, "prices")
	if !ok {
		return f.Prices
	}
	r.unknown(t, []string{"file", "decimal"}, "prices")
	if v, ok := t.items["decimal"]; ok {
		w, _ := r.word(t.at("decimal"), v, []string{"point", "comma"})
		f.Listing.Comma = w == "comma"
	}
	v, ok := t.items["file"]
	if !ok {
		return f.Prices
	}
	name, ok := r.title(t.at("file"), v, 240)
	if !ok {
		return f.Prices
	}
	return name
}

// table returns the section called key of t, failing when it is something else.
func (r *reader) table(t table, key string) (table, bool) {
	v, ok := t.items[key]
	if !ok {
		return table{}, false
	}
	items, ok := v.(map[string]any)
	if !ok {
		r.fail(t.at(key), show(v), "is not a section", "", fmt.Sprintf("write it as [%s] with its keys below", keyName(t.at(key))))
		return table{}, false
	}
	return table{path: t.at(key), items: items, lines: t.lines}, true
}

// tables returns the entries of the list of sections called key.
func (r *reader) tables(t table, key, example string) []table {
	v, ok := t.items[key]
	if !ok {
		return nil
	}
	list, ok := v.([]any)
	if !ok {
		r.fail(t.at(key), show(v), "is not a list", "", "write "+example)
		return nil
	}
	var out []table
	for i, v := range list {
		path := entry(t.at(key), i)
		items, ok := v.(map[string]any)
		if !ok {
			r.fail(path, show(v), "is not a set of keys", "", "write "+example)
			return nil
		}
		out = append(out, table{path: path, items: items, lines: t.lines})
	}
	return out
}
