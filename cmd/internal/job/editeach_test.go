package job

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/pelletier/go-toml/v2"

	"silowright/geometry/measure"
)

const smallJob = `# Kept: whose job it is.
name = "cove"   # printed
units = "in"
drum_silos = 3
pipe_silos = 0

[[drum]]   # the usual one
label = "A"
count = 2
circumference = 72.5
hoops = [   # lowest first
  {from = "10", to = "12", outside = "24"}, # dented
  {from = "22", to = "24", outside = "24"},
]
[drum.outlet]
saw = "2 1/2" # the worn one

[[drum]]
label = "B"
count = 1

[outlet]
saw    = "2 1/2"
# nipple = "2 9/16 in" # both couplings
joint  = 'couplings'

[fittings.coupling."1 1/2"]
outside = "2 5/16"

[[supplier]]
name = "Heron"

[[supplier]]
name = "Gull"
`

// Each edit changes its own line and no other: comments, order and blanks
// stay. The text expected is the small job with old put in new's place.
func TestEditEach(t *testing.T) {
	for _, c := range []struct{ reason, key, value, old, new string }{
		{"a value is replaced, its comment kept", "name", "head", `name = "cove"   # printed`, `name = "head"   # printed`},
		{"quotes and backslashes are written so that they are read back", "name", `a "b" \ c`, `"cove"`, `"a \"b\" \\ c"`},
		{"a count is a bare number", "drum_silos", "4", "drum_silos = 3", "drum_silos = 4"},
		{"what is no number is kept as typed, for Parse to refuse", "drum_silos", "a few", "drum_silos = 3", `drum_silos = "a few"`},
		{"leading zeros are no TOML", "drum_silos", "007", "drum_silos = 3", "drum_silos = 7"},
		{"a fraction is text", "drum[0].circumference", "71 3/8", "72.5", `"71 3/8"`},
		{"the shared section", "outlet.saw", "2", "saw    = \"2 1/2\"", "saw    = \"2\""},
		{"one drum's own section", "drum[0].outlet.saw", "2", `saw = "2 1/2" # the worn one`, `saw = "2" # the worn one`},
		{"a hoop in braces", "drum[0].hoops[1].from", "21 1/2", `{from = "22"`, `{from = "21 1/2"`},
		{"a hoop taken out, with its comma", "drum[0].hoops[1]", "", "  {from = \"22\", to = \"24\", outside = \"24\"},\n", ""},
		{"the first hoop taken out", "drum[0].hoops[0]", "", "  {from = \"10\", to = \"12\", outside = \"24\"}, # dented\n", "   # dented\n"},
		{"a hoop added", "drum[0].hoops[2]", `{from = "30", to = "31", outside = "24"}`, `outside = "24"},` + "\n]", `outside = "24"}, {from = "30", to = "31", outside = "24"},` + "\n]"},
		{"a key added below the comment that offers it", "outlet.nipple", "2 1/2", "# nipple = \"2 9/16 in\" # both couplings\n", "# nipple = \"2 9/16 in\" # both couplings\nnipple = \"2 1/2\"\n"},
		{"a key added below the last of its section", "outlet.round", "3", "joint  = 'couplings'\n", "joint  = 'couplings'\nround  = \"3\"\n"},
		{"a key added above the first section", "projection", "first", "pipe_silos = 0\n", "pipe_silos = 0\nprojection = \"first\"\n"},
		{"a section added at the end", "inlet.stub", "5", "name = \"Gull\"\n", "name = \"Gull\"\n\n[inlet]\nstub = \"5\"\n"},
		{"a drum's own section added behind that drum", "drum[1].inlet.stub", "5", "label = \"B\"\ncount = 1\n", "label = \"B\"\ncount = 1\n\n[drum.inlet]\nstub = \"5\"\n"},
		{"a drum added behind the last", "drum[2].label", "C", "label = \"B\"\ncount = 1\n", "label = \"B\"\ncount = 1\n\n[[drum]]\nlabel = \"C\"\n"},
		{"a drum taken out", "drum[1]", "", "[[drum]]\nlabel = \"B\"\ncount = 1\n\n", ""},
		{"a supplier added", "supplier[2].name", "Salt", "name = \"Gull\"\n", "name = \"Gull\"\n\n[[supplier]]\nname = \"Salt\"\n"},
		{"a supplier taken out", "supplier[0]", "", "[[supplier]]\nname = \"Heron\"\n\n", ""},
		{"a measure of a fitting", `fittings.coupling."1 1/2".depth`, "1", "outside = \"2 5/16\"\n", "outside = \"2 5/16\"\ndepth   = \"1\"\n"},
		{"another fitting", `fittings.stopper."11".length`, "1", "name = \"Gull\"\n", "name = \"Gull\"\n\n[fittings.stopper.11]\nlength = \"1\"\n"},
		{"a key taken out leaves its comment", "drum[0].outlet.saw", "", `saw = "2 1/2" # the worn one`, "# the worn one"},
		{"a key taken out with its line", "outlet.joint", "", "joint  = 'couplings'\n", ""},
		{"a key that is not there taken out", "handle.round", "", "", ""},
		{"yes and no are bare", "buying.tax_shipping", "True", "name = \"Gull\"\n", "name = \"Gull\"\n\n[buying]\ntax_shipping = true\n"},
		{"a share as text", "buying.tax", "6.5 %", "name = \"Gull\"\n", "name = \"Gull\"\n\n[buying]\ntax = \"6.5 %\"\n"},
		{"what is on the rack", "on_hand.primer", "150 mL", "name = \"Gull\"\n", "name = \"Gull\"\n\n[on_hand]\nprimer = \"150 mL\"\n"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			for _, nl := range []string{"\n", "\r\n"} {
				in := strings.ReplaceAll(smallJob, "\n", nl)
				want := strings.ReplaceAll(strings.Replace(smallJob, c.old, c.new, 1), "\n", nl)
				got, err := Edit([]byte(in), c.key, c.value)
				if err != nil {
					t.Fatal(err)
				}
				if diff := cmp.Diff(want, string(got)); diff != "" {
					t.Errorf("%q (-want +got):\n%s", nl, diff)
				}
			}
		})
	}
}

// Other ways of writing the same file are followed too.
func TestEditWritings(t *testing.T) {
	for _, c := range []struct{ reason, in, key, value, want string }{
		{"a section in braces", `outlet = {saw = "2"}`, "outlet.joint", "grommet", `outlet = {saw = "2", joint = "grommet"}`},
		{"an empty one", `outlet = {}`, "outlet.joint", "grommet", `outlet = {joint = "grommet"}`},
		{"the last key within braces", `outlet = {saw = "2", joint = "grommet"}`, "outlet.joint", "", `outlet = {saw = "2"}`},
		{"keys with dots", "outlet.saw = \"2\"\n[mesh]\n", "outlet.joint", "grommet", "outlet.saw = \"2\"\noutlet.joint = \"grommet\"\n[mesh]\n"},
		{"the only key with dots", "outlet.saw = \"2\"\nunits = \"in\"\n", "outlet.saw", "", "units = \"in\"\n"},
		{"drums in braces", `drum = [{label = "A"}]`, "drum[0].wall", "3/16", `drum = [{label = "A", wall = "3/16"}]`},
		{"a section of a drum in braces", `drum = [{label = "A"}]`, "drum[0].outlet.saw", "2", `drum = [{label = "A", outlet.saw = "2"}]`},
		{"one more drum in braces", `drum = [{label = "A"}]`, "drum[1].label", "B", `drum = [{label = "A"}, {label = "B"}]`},
		{"no end of line", `units = "in"`, "name", "x", "units = \"in\"\nname  = \"x\"\n"},
		{"nothing at all", "", "name", "x", "name = \"x\"\n"},
		{"nothing but a drum to come", "", "drum[0].label", "A", "[[drum]]\nlabel = \"A\"\n"},
		{"text of several lines", "name = '''a\nb''' # c\nunits = \"in\"\n", "name", "x", "name = \"x\" # c\nunits = \"in\"\n"},
		{"a mark of byte order", "\ufeffname = \"a\"\n", "name", "x", "\ufeffname = \"x\"\n"},
		{"a comment that only looks like the key within text", "name = '''\n# units = 1\n'''\n", "units", "mm", "name = '''\n# units = 1\n'''\nunits = \"mm\"\n"},
		{"a header with blanks", "[ outlet ] # c\n", "outlet.saw", "2", "[ outlet ] # c\nsaw = \"2\"\n"},
		{"an empty list of hoops", "[[drum]]\nhoops = []\n", "drum[0].hoops[0].from", "10", "[[drum]]\nhoops = [{from = \"10\"}]\n"},
		{"a quoted key", "[on_hand]\n\"a.b\" = 1\n", `on_hand."a.b"`, "2", "[on_hand]\n\"a.b\" = 2\n"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			got, err := Edit([]byte(c.in), c.key, c.value)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(c.want, string(got)); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

// What cannot be set is refused in one line, and the text is not touched.
func TestEditRefuses(t *testing.T) {
	for _, c := range []struct{ reason, in, key, value, says string }{
		{"no key of a job", smallJob, "outlet.colour", "red", "is not a key that can be set"},
		{"no path", smallJob, "outlet..saw", "2", "is not a key"},
		{"an empty path", smallJob, "", "2", "is not a key"},
		{"a newline in a path", smallJob, "outlet\n.saw", "2", "is not a key"},
		{"a section is no value", smallJob, "outlet", "2", "is not a key that can be set"},
		{"an entry past the next", smallJob, "drum[7].label", "X", "does not fit"},
		{"an entry without its number", smallJob, "drum.wall", "3/16", "is not a key that can be set"},
		{"a list that is no TOML", smallJob, "drum[0].hoops", "[{from = ", "is not a list"},
		{"a list with more lines behind it", smallJob, "drum[0].hoops", "[]\nunits = \"mm\"", "is not a list"},
		{"text that is no TOML", "name = \n", "name", "x", "expected"},
		{"a key below a value", `outlet = 3`, "outlet.saw", "2", "does not fit"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			got, err := Edit([]byte(c.in), c.key, c.value)
			if err == nil {
				t.Fatalf("was set:\n%s", got)
			}
			if !strings.Contains(err.Error(), c.says) || strings.Contains(err.Error(), "\n") {
				t.Errorf("says %q, want one line with %q", err, c.says)
			}
		})
	}
}

// leaves lists every value of a document by its path.
func leaves(path string, v any, out map[string]string) map[string]string {
	switch v := v.(type) {
	case map[string]any:
		for k, w := range v {
			at := nameText(k)
			if path != "" {
				at = path + "." + at
			}
			leaves(at, w, out)
		}
	case []any:
		for i, w := range v {
			leaves(fmt.Sprintf("%s[%d]", path, i), w, out)
		}
	default:
		out[path] = fmt.Sprintf("%T %v", v, v)
	}
	return out
}

// readLeaves reads a document with the library alone.
func readLeaves(t *testing.T, text []byte) map[string]string {
	t.Helper()
	doc := map[string]any{}
	if err := toml.Unmarshal([]byte(strings.TrimPrefix(string(text), "\ufeff")), &doc); err != nil {
		t.Fatalf("no TOML after the edit: %v\n%s", err, text)
	}
	return leaves("", doc, map[string]string{})
}

// FuzzEditLeavesTheRest holds every edit to its word: the key holds what was typed, and no
// other value of the file has changed.
func FuzzEditLeavesTheRest(f *testing.F) {
	demo, err := os.ReadFile("../demo/job.toml")
	if err != nil {
		f.Fatal(err)
	}
	for _, text := range []string{string(demo), smallJob, string(Template(measure.UnitMM)), "", "outlet = {saw = 2, joint.x = 1}\n", "drum = [{hoops = [ {from = 1}, ]}]", "outlet.saw = 1\na.b.c = [1, [2, 3], {x = 1}]\n"} {
		for _, key := range []string{"name", "outlet.saw", "drum[0].wall", "drum[0].hoops[0].from", "drum[1].mesh.trim", `fittings.coupling."2".outside`, "on_hand.x", "supplier[0].name", "buying.tax_shipping", "drum[0]", "drum[0].hoops[1]"} {
			f.Add(text, key, "2 1/2")
			f.Add(text, key, "")
		}
	}
	f.Fuzz(func(t *testing.T, text, key, value string) {
		out, err := Edit([]byte(text), key, value)
		if err != nil {
			if strings.Contains(err.Error(), "\n") {
				t.Fatalf("more than one line: %q", err)
			}
			return
		}
		before, after := readLeaves(t, []byte(text)), readLeaves(t, out)
		path, err := parseKey(key)
		if err != nil {
			t.Fatalf("%q was set, but is not a key", key)
		}
		under := func(at string) bool {
			k := pathText(path)
			return at == k || strings.HasPrefix(at, k+".") || strings.HasPrefix(at, k+"[")
		}
		if value = strings.TrimSpace(strings.ToValidUTF8(value, "\ufffd")); value == "" && path[len(path)-1].index >= 0 {
			if len(before) < len(after) {
				t.Fatalf("more after a removal:\n%s", out)
			}
			return // the entries behind it move up
		}
		held := 0
		for at, v := range after {
			if under(at) {
				held++
			} else if before[at] != v {
				t.Fatalf("%s: %s became %s", at, before[at], v)
			}
		}
		for at, v := range before {
			if !under(at) && after[at] != v {
				t.Fatalf("%s: %s became %s", at, v, after[at])
			}
		}
		w, _ := wantsAt(path)
		kind := w.kind
		switch got := after[pathText(path)]; {
		case value == "" && held > 0:
			t.Fatalf("%s is still there:\n%s", key, out)
		case value != "" && (kind == KindLength || kind == KindText || kind == KindWord || kind == KindPipe) && got != "string "+value:
			t.Fatalf("%s holds %s, want %q", key, got, value)
		}
		// whatever Parse says of it, it says in one line
		if _, err := Parse("job.toml", out); err != nil && strings.Contains(err.Error(), "\n") {
			t.Fatalf("more than one line: %q", err)
		}
	})
}

func BenchmarkEdit(b *testing.B) {
	demo, err := os.ReadFile("../demo/job.toml")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := Edit(demo, "outlet.saw", "2 1/4"); err != nil {
			b.Fatal(err)
		}
	}
}
