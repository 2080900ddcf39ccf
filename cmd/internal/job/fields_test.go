package job

import (
	"errors"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// alike compares what a job file came to: lengths as it writes them, and not
// which keys were left to the program.
var alike = cmp.Options{
	cmp.Comparer(func(a, b measure.Length) bool { return (a - b).Abs() < 0.002 }),
	cmp.Comparer(func(a, b measure.Volume) bool { return a-b < 100 && b-a < 100 }),
}

func demoText(t testing.TB) []byte {
	t.Helper()
	text, err := os.ReadFile("../demo/job.toml")
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func field(t *testing.T, list []Field, key string) Field {
	t.Helper()
	i := slices.IndexFunc(list, func(f Field) bool { return f.Key == key })
	if i < 0 {
		t.Fatalf("%s is not among the fields", key)
	}
	return list[i]
}

// Every key that a job file to begin with offers is a field, with the default
// written there and what it means.
func TestFieldsAreTheTemplates(t *testing.T) {
	offered := regexp.MustCompile(`^# ([a-z_]+) += (.*?) +# (.*)$`)
	for _, u := range []measure.Unit{measure.UnitInch, measure.UnitMM} {
		text := Template(u)
		list := Fields(text)
		section, n := "", 0
		for line := range strings.Lines(string(text)) {
			line = strings.TrimRight(line, "\n")
			if strings.HasPrefix(line, "[") {
				section = line[1:strings.IndexByte(line, ']')] + "."
			}
			if strings.HasPrefix(line, "# [") { // an example of a section
				section = "[drum."
			}
			m := offered.FindStringSubmatch(line)
			if m == nil || section == "[drum." || section == "prices." && m[1] != "decimal" {
				continue
			}
			f := field(t, list, section+m[1])
			want := strings.Trim(m[2], `"`)
			if slices.Contains(append(farmSections(), seedSection), strings.TrimSuffix(section, ".")) {
				want = f.Fallback // examples stand among these; TestFallbacksHold has them
			}
			if section+m[1] == "buying.quote_days" || section+m[1] == "buying.date" || section == "work." {
				want = f.Fallback // these have none, or are examples
			}
			if f.Fallback != want {
				t.Errorf("%v: %s: falls back to %q, the template offers %q", u, f.Key, f.Fallback, want)
			}
			n++
		}
		if n < len(rules) {
			t.Errorf("%v: only %d keys compared", u, n)
		}
	}
}

// What a field falls back to is what holds when the key is not there: with it
// written out the job is the same.
func TestFallbacksHold(t *testing.T) {
	compared := map[string]bool{}
	for name, text := range map[string][]byte{"demo": demoText(t), "in": Template(measure.UnitInch), "mm": Template(measure.UnitMM)} {
		for _, f := range Fields(text) {
			without, err := Edit(text, f.Key, "")
			if err != nil {
				t.Errorf("%s: %s cannot be taken out: %v", name, f.Key, err)
				continue
			}
			was, err := Parse("job.toml", without)
			if err != nil || f.Fallback == "" || f.Key == "units" && f.Value != f.Fallback {
				continue // the key must be there, or has no default
			}
			with, err := Edit(text, f.Key, f.Fallback)
			if err != nil {
				t.Errorf("%s: %s: %v", name, f.Key, err)
				continue
			}
			now, err := Parse("job.toml", with)
			if e := (*Error)(nil); errors.As(err, &e) && e.Why == missing && e.Key != f.Plain() {
				continue // its section asks for other keys too
			}
			if err != nil {
				t.Errorf("%s: %s = %q: %v", name, f.Key, f.Fallback, err)
				continue
			}
			compared[f.Key] = true
			was.Job.Defaulted, now.Job.Defaulted = nil, nil
			if diff := cmp.Diff([]any{was.Job, was.Farm, was.Rates, was.Work}, []any{now.Job, now.Farm, now.Rates, now.Work}, alike); diff != "" {
				t.Errorf("%s: %s = %q (-left out +written):\n%s", name, f.Key, f.Fallback, diff)
			}
		}
	}
	if len(compared) < 100 {
		t.Errorf("only %d keys compared", len(compared))
	}
}

// A value out of its field's range is refused by that key; one in it is not
// refused for its range.
func TestRangesHold(t *testing.T) {
	text := demoText(t)
	n := 0
	for _, f := range Fields(text) {
		if f.Kind != KindLength || f.High == "" {
			continue
		}
		high, _, _ := strings.Cut(f.High, " (")
		l, err := measure.ParseLength(high, measure.UnitInch)
		if err != nil {
			continue // longer than a tape reads
		}
		n++
		over := (l + measure.Inch/8).Inch(16)
		out, err := Edit(text, f.Key, over)
		if err != nil {
			t.Fatalf("%s: %v", f.Key, err)
		}
		_, err = Parse("job.toml", out)
		if f.Name == "outside" && f.Section == "drum[0]" { // stands beside circumference
			continue
		}
		if e, ok := err.(*Error); !ok || e.Key != f.Plain() || !strings.Contains(e.Allowed, f.High) {
			t.Errorf("%s = %q over %s: %v", f.Key, over, f.High, err)
		}
	}
	if n < 40 {
		t.Errorf("only %d lengths", n)
	}
}

// Drums, hoops, suppliers and fittings have a field each; a drum's own section
// shows beside the shared one.
func TestFieldsOfEntries(t *testing.T) {
	list := Fields([]byte(smallJob))
	for _, c := range []struct{ key, value, fallback string }{
		{"drum[0].label", "A", "A"}, {"drum[1].label", "B", "B"}, {"drum[0].circumference", "72.5", ""}, {"drum[1].circumference", "", ""},
		{"drum[0].hoops[1].from", "22", ""}, {"drum[0].outlet.saw", "2 1/2", "2 1/2 in"}, {"outlet.saw", "2 1/2", "2 1/2 in"},
		{"supplier[1].name", "Gull", ""}, {`fittings.coupling."1 1/2".outside`, "2 5/16", ""}, {`fittings.coupling."1 1/2".depth`, "", ""},
		{"outlet.joint", "couplings", "couplings"}, {"load.seed_kg", "", "5"},
	} {
		if f := field(t, list, c.key); f.Value != c.value || f.Fallback != c.fallback {
			t.Errorf("%s: %q falling back to %q, want %q and %q", c.key, f.Value, f.Fallback, c.value, c.fallback)
		}
	}
	if slices.ContainsFunc(list, func(f Field) bool { return f.Key == "drum[1].outlet.saw" }) {
		t.Error("drum[1] has no outlet of its own")
	}
	// a default that follows from a drum nobody can read is not made up
	if f := field(t, list, "lattice.across"); f.Fallback != "" {
		t.Errorf("lattice.across falls back to %q of another drum", f.Fallback)
	}
	if f := field(t, list, "outlet.nipple"); f.Line != 0 {
		t.Errorf("outlet.nipple is only offered, but stands on line %d", f.Line)
	}
	if f := field(t, list, "drum[0].outlet.saw"); f.Line != 16 {
		t.Errorf("drum[0].outlet.saw stands on line %d, want 16", f.Line)
	}
}

// Fields come from a text that is wrong as far as it can be read.
func TestFieldsOfWrongText(t *testing.T) {
	for _, c := range []struct{ reason, text, key, value string }{
		{"a line that is no TOML", "name = \"x\"\nunits = \n[[drum]]\nlabel = \"Q\"\n", "drum[0].label", "Q"},
		{"several such lines", "a b c\n]]\nname = \"x\"\nnope\n", "name", "x"},
		{"a key nobody knows", "name = \"x\"\ncolour = 3\n", "name", "x"},
		{"a value of the wrong kind", "units = 7\nname = \"x\"\ndrum = 4\nhandle = \"h\"\n", "name", "x"},
		{"a drum that is a list of numbers", "drum = [1, 2]\nname = \"x\"\n", "name", "x"},
		{"bytes that are no UTF-8", "name = \"x\"\n# \xff\xfe\n", "name", "x"},
		{"nothing", "", "name", ""},
	} {
		t.Run(c.reason, func(t *testing.T) {
			if f := field(t, Fields([]byte(c.text)), c.key); f.Value != c.value {
				t.Errorf("%s holds %q, want %q", c.key, f.Value, c.value)
			}
		})
	}
}

// FuzzFields holds Fields to finding something in any text, without a panic,
// and every field it lists to a key that Edit takes.
func FuzzFields(f *testing.F) {
	f.Add(string(demoText(f)))
	f.Add(smallJob)
	f.Add("drum = [{hoops = 3}, 4]\nsupplier = [{}]\n[fittings]\ncoupling = 1\n")
	f.Fuzz(func(t *testing.T, text string) {
		list := Fields([]byte(text))
		if len(list) < len(rules) {
			t.Fatalf("%d fields", len(list))
		}
		for _, q := range list {
			path, err := parseKey(q.Key)
			if err != nil {
				t.Fatalf("%q is listed, but not a key", q.Key)
			}
			if _, ok := wantsAt(path); !ok {
				t.Fatalf("%q is listed, but cannot be set", q.Key)
			}
		}
	})
}

// The joint's words are those the geometry knows.
func TestWordsAreListed(t *testing.T) {
	f := field(t, Fields(nil), "outlet.joint")
	var want []string
	for _, j := range geometry.PipeJoints() {
		want = append(want, string(j))
	}
	if !slices.Contains(want, "couplings") || !slices.Equal(f.Words, want) {
		t.Errorf("words %q, want %q", f.Words, want)
	}
}

// What is typed is read in the unit the field shows: seed and mesh in
// millimetres also in an inch job, as the trade gives them, a flow in the
// shop's own unit.
func TestTypedNumbers(t *testing.T) {
	for _, c := range []struct {
		key, typed, line, both string
		of                     func(*File) float64
		want                   float64
	}{
		{"seed.growth_length", "0.3", "growth_length = 0.3", "0.012 in (0.3 mm)", func(f *File) float64 { return f.Farm.Plan.GrowthLength.MM() }, 0.3},
		{"seed.growth_length", "0.01 in", `growth_length = "0.01 in"`, "0.01 in (0.25 mm)", func(f *File) float64 { return f.Farm.Plan.GrowthLength.MM() }, 0.254},
		{"water.flow", "30", "flow = 30", "", func(f *File) float64 { return f.Farm.Supply.Each.GPM() }, 30},
		{"water.flow", "30 L/min", `flow = "30 L/min"`, "", func(f *File) float64 { return f.Farm.Supply.Each.LMin() }, 30},
		{"outlet.saw", "2.5", `"2.5"`, "2 1/2 in (63.5 mm)", func(f *File) float64 { return f.Job.Kinds[0].Outlet.Saw.Inches() }, 2.5},
		{"rates.cement_joint", "7", `cement_joint = "7"`, "", func(f *File) float64 { return f.Rates.CementJoint.ML() }, 7},
	} {
		text, err := Edit(demoText(t), c.key, c.typed)
		if err != nil {
			t.Errorf("%s = %q: %v", c.key, c.typed, err)
			continue
		}
		if !strings.Contains(regexp.MustCompile(` +=`).ReplaceAllString(string(text), " ="), c.line) {
			t.Errorf("%s = %q is not written %q", c.key, c.typed, c.line)
		}
		f, err := Parse("job.toml", text)
		if err != nil {
			t.Errorf("%s = %q: %v", c.key, c.typed, err)
			continue
		}
		if got := c.of(f); got-c.want > 1e-9 || c.want-got > 1e-9 {
			t.Errorf("%s = %q is read as %v, want %v", c.key, c.typed, got, c.want)
		}
		if got := field(t, Fields(text), c.key).Both; got != c.both {
			t.Errorf("%s = %q shows as %q, want %q", c.key, c.typed, got, c.both)
		}
	}
}
