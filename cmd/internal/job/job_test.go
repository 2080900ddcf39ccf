package job

import (
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// least is the shortest job there is: what has no default.
const least = `units = "in"
drum_silos = 3
pipe_silos = 2
[[drum]]
circumference = "71 1/2"
height = 34
wall = "3/16"
foot_outside = "21"
foot_height = 2
head_recess = 0.75
hoops = [
  {from = 10, to = 11.5, outside = "23 3/4"},
  {from = "22 1/2 in", to = "2 ft", outside = "603 mm"},
]
`

func parse(t *testing.T, text string) *File {
	t.Helper()
	f, err := Parse("job.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func near(a, b measure.Length) bool { return math.Abs(float64(a-b)) < 1e-6 }

// The expected millimetres are 25.4 × the inches written, by hand.
func TestLeastJob(t *testing.T) {
	f := parse(t, least)
	d := f.Job.Kinds[0].Drum
	for _, c := range []struct {
		what      string
		got, want measure.Length
	}{
		{"outside = 1816.1 mm / π", d.Outside, 1816.1 / math.Pi},
		{"height", d.Height, 863.6},
		{"wall", d.Wall, 4.7625},
		{"foot outside", d.FootOutside, 533.4},
		{"foot height", d.FootHeight, 50.8},
		{"head recess", d.HeadRecess, 19.05},
		{"hoop 1 to", d.Hoops[0].To, 292.1},
		{"hoop 2 from", d.Hoops[1].From, 571.5},
		{"hoop 2 to", d.Hoops[1].To, 609.6},
		{"hoop 2 outside", d.Hoops[1].Outside, 603},
	} {
		if !near(c.got, c.want) {
			t.Errorf("%s: %v mm, want %v", c.what, c.got, c.want)
		}
	}
	if d.Label != "A" || d.Count != 3 || f.Job.DrumSilos != 3 || f.Job.PipeSilos != 2 {
		t.Errorf("label %q count %d of %d and %d", d.Label, d.Count, f.Job.DrumSilos, f.Job.PipeSilos)
	}
	if f.Currency != "USD" || f.PricesPath != "prices.csv" {
		t.Errorf("currency %q, prices %q", f.Currency, f.PricesPath)
	}
}

// Whatever is not given is geometry's default and is listed as such.
func TestDefaultsAreListed(t *testing.T) {
	f := parse(t, least)
	got := map[string]string{}
	for _, d := range f.Job.Defaulted {
		if _, twice := got[d.Key]; twice {
			t.Errorf("%s is listed twice", d.Key)
		}
		if d.Value == "" {
			t.Errorf("%s has no value", d.Key)
		}
		got[d.Key] = d.Value
	}
	for _, q := range rules {
		if _, ok := got[q.key()]; !ok {
			t.Errorf("%s took a default and is not listed", q.key())
		}
	}
	for _, key := range []string{"name", "currency", "projection", "prices.file"} {
		if _, ok := got[key]; !ok {
			t.Errorf("%s took a default and is not listed", key)
		}
	}
	if want := len(rules) + 4; len(got) != want {
		t.Errorf("%d defaults listed, want %d", len(got), want)
	}
	want := geometry.DefaultSpec(f.Job.Kinds[0].Drum, measure.UnitInch)
	want.Fittings = f.Job.Kinds[0].Fittings
	if diff := cmp.Diff(want, f.Job.Kinds[0]); diff != "" {
		t.Errorf("not the defaults (-want +got):\n%s", diff)
	}

	f = parse(t, least+"[ring]\nwidth = 1.25\n")
	for _, d := range f.Job.Defaulted {
		if d.Key == "ring.width" {
			t.Errorf("ring.width was given, yet is listed as default %s", d.Value)
		}
	}
	if got := f.Job.Kinds[0].Ring.Width; !near(got, 31.75) {
		t.Errorf("ring.width = %v mm, want 31.75", got)
	}
}

// A default as listed reads back as the same default.
func TestDefaultsReadBack(t *testing.T) {
	for _, units := range []string{"in", "mm"} {
		text := strings.Replace(least, `units = "in"`, `units = "`+units+`"`, 1)
		if units == "mm" {
			text = strings.NewReplacer(`"71 1/2"`, "1816", "height = 34\n", "height = 864\n", `"3/16"`, "4.8", `"21"`, "533",
				"foot_height = 2\n", "foot_height = 51\n", "0.75", "19", "from = 10, to = 11.5", "from = 254, to = 292", `"23 3/4"`, "603").Replace(text)
		}
		f := parse(t, text)
		r := &reader{units: f.Job.Units}
		s := geometry.DefaultSpec(f.Job.Kinds[0].Drum, f.Job.Units)
		for _, q := range rules {
			before := q.write(&s, r.units)
			apply, ok := q.read(r, q.key(), any(before))
			if !ok {
				// numbers stand bare in a file
				n, isNumber := bare(before)
				if !isNumber {
					t.Errorf("%s: default %q does not read back: %v", q.key(), before, r.errs)
					continue
				}
				r.errs = nil
				if apply, ok = q.read(r, q.key(), n); !ok {
					t.Errorf("%s: default %s does not read back: %v", q.key(), before, r.errs)
					continue
				}
			}
			apply(&s)
			if after := q.write(&s, r.units); after != before {
				t.Errorf("%s: default %q reads back as %q", q.key(), before, after)
			}
		}
	}
}

func bare(s string) (any, bool) {
	var n float64
	for _, c := range s {
		if !strings.ContainsRune("0123456789.", c) {
			return nil, false
		}
	}
	if _, err := fmt.Sscan(s, &n); err != nil {
		return nil, false
	}
	return n, true
}

// One section holds for every kind unless the kind overrides it.
func TestKindsOverride(t *testing.T) {
	second := least[strings.Index(least, "[[drum]]"):]
	text := strings.Replace(least, "[[drum]]", "[[drum]]\nlabel = \"blue\"\ncount = 2", 1) +
		strings.Replace(second, "[[drum]]", "[[drum]]\nlabel = \"white\"\ncount = 1", 1) +
		"[drum.ring]\nwidth = 2\n[drum.outlet]\npipe = \"1 1/2\"\n[ring]\nwidth = 1.5\n[lattice]\nbars = 4\n"
	f := parse(t, text)
	a, b := f.Job.Kinds[0], f.Job.Kinds[1]
	if !near(a.Ring.Width, 38.1) || !near(b.Ring.Width, 50.8) {
		t.Errorf("ring widths %v and %v mm, want 38.1 and 50.8", a.Ring.Width, b.Ring.Width)
	}
	if a.Lattice.Bars != 4 || b.Lattice.Bars != 4 {
		t.Errorf("bars %d and %d, want 4 and 4", a.Lattice.Bars, b.Lattice.Bars)
	}
	if a.Outlet.Pipe.Size != "2" || b.Outlet.Pipe.Size != "1 1/2" {
		t.Errorf("outlet pipes %v and %v", a.Outlet.Pipe, b.Outlet.Pipe)
	}
	var keys []string
	for _, d := range f.Job.Defaulted {
		if strings.HasPrefix(d.Key, "outlet.pipe") {
			keys = append(keys, d.Key+" = "+d.Value)
		}
	}
	if diff := cmp.Diff([]string{"outlet.pipe (drum blue) = 2"}, keys); diff != "" {
		t.Error(diff)
	}
}

func TestPipesAndFittings(t *testing.T) {
	f := parse(t, least+`
[outlet]
pipe = 1.5
[inlet]
pipe = "1-1/2 in"
series = "sch80"
[pipe_silo]
pipe = 160
[drain]
stopper = "No. 99"
[fittings.stopper."99"]
top = 3
bottom = "2 1/2"
length = 1
[fittings.coupling."2"]
outside = "2 7/8"
[fittings.grommet."1 1/2"]
hole = 2.5
[fittings.bulkhead."2"]
hole = 3
thread = "2 15/16"
flange = 4
nut = "3 15/16"
gasket = "3/16"
grip = 1
head = "7/8"
length = "3 1/4"
bore = "1 15/16"
ends = "thread"
[sealant]
cartridge = "10.1 fl oz"
`)
	s := f.Job.Kinds[0]
	got := []string{s.Outlet.Pipe.String(), s.Inlet.Pipe.String(), s.Pipe.Pipe.String(), s.Drain.Stopper}
	if diff := cmp.Diff([]string{"1 1/2 sch40", "1 1/2 sch80", "160 en1401-sn4", "99"}, got); diff != "" {
		t.Error(diff)
	}
	if !near(s.Fittings.Couplings["2"].Outside, 73.025) || !near(s.Fittings.Grommets["1 1/2"].Hole, 63.5) {
		t.Errorf("fittings %+v", s.Fittings)
	}
	const in = measure.Inch
	bulkhead := geometry.BulkheadMeasure{Hole: 3 * in, Thread: 2.9375 * in, Flange: 4 * in, Nut: 3.9375 * in, Gasket: 0.1875 * in,
		Grip: in, Head: 0.875 * in, Length: 3.25 * in, Bore: 1.9375 * in, Ends: geometry.EndThread}
	if diff := cmp.Diff(bulkhead, s.Fittings.Bulkheads["2"], cmp.Comparer(func(a, b measure.Length) bool { return (a - b).Abs() < 1e-9 })); diff != "" {
		t.Error(diff)
	}
	// 10.1 US fl oz = 18.23 in³ = 298.7 mL (NIST Handbook 44, appendix C: the gallon is 231 in³)
	if ml := s.Sealant.Cartridge.ML(); math.Abs(ml-298.7) > 0.05 {
		t.Errorf("cartridge %v mL, want 298.7", ml)
	}
}

func TestRead(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "job.toml")
	if err := os.WriteFile(path, []byte("\xef\xbb\xbf"+strings.ReplaceAll(least, "\n", "\r\n")+"[prices]\r\nfile = \"my.csv\"\r\n"), 0o666); err != nil {
		t.Fatal(err)
	}
	f, err := Read(path)
	if err != nil {
		t.Fatalf("byte order mark and CRLF are what some editors write: %v", err)
	}
	if want := filepath.Join(dir, "my.csv"); f.PricesPath != want {
		t.Errorf("prices at %q, want %q", f.PricesPath, want)
	}
	for path, words := range map[string]string{
		"":                              "no job file named",
		filepath.Join(dir, "none.toml"): "no such file",
		dir:                             "is a directory",
		filepath.Join(path, "x"):        "cannot be read",
	} {
		if _, err := Read(path); err == nil || !strings.Contains(err.Error(), words) || !strings.Contains(err.Error(), "; hint: ") {
			t.Errorf("Read(%q): %v, want %q and a hint", path, err, words)
		}
	}
}

func TestSlug(t *testing.T) {
	for label, want := range map[string]string{"Cove": "cove", "blue 220 L": "blue-220-l", "  A/B_c ": "a-b-c", "Ærø": "ærø", "…": "", "../x": "x"} {
		if got := geometry.Slug(label); got != want {
			t.Errorf("Slug(%q) = %q, want %q", label, got, want)
		}
	}
}

// Any text at all: no panic, every error is one line that names a key or says
// that the text is no TOML, and what is taken can be solved.
func FuzzJob(f *testing.F) {
	f.Add([]byte(least))
	for _, c := range wrong {
		f.Add([]byte(c.text()))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		got, err := Parse("job.toml", data)
		if err != nil {
			var e *Error
			if !errors.As(err, &e) {
				t.Fatalf("%v is no *Error", err)
			}
			whole := strings.Contains(e.Why, "UTF-8") || strings.Contains(e.Why, "larger") // of the file as a whole
			if e.Hint == "" || e.Key == "" && (e.Why == "" || e.Line == 0 && !whole) {
				t.Fatalf("%q has no hint, or neither key nor line", err)
			}
			if strings.ContainsAny(err.Error(), "\n\r\x1b\x00") {
				t.Fatalf("%q is not one plain line", err)
			}
			return
		}
		if _, err := geometry.Solve(got.Job); err != nil {
			t.Fatalf("taken, yet not to be solved: %v", err)
		}
		for _, s := range got.Job.Kinds {
			for _, q := range rules {
				if text := q.write(&s, measure.UnitMM); strings.Contains(text, "NaN") || strings.Contains(text, "Inf") {
					t.Fatalf("%s = %s", q.key(), text)
				}
			}
		}
	})
}
