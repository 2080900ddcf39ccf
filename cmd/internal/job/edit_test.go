package job

import (
	"strings"
	"testing"
)

const edited = `# a note at the head
units = "in"      # as the tape reads
drum_silos = 3
pipe_silos = 2

[[drum]] # the blue ones
label = "blue"
count = 3
circumference = "72 1/8"
height = "34 1/2"
wall = "3/16"
foot_outside = "21 1/8"
foot_height = "2 1/4"
head_recess = "7/8"
hoops = [{from = "10 1/2", to = "12", outside = "23 7/8"}, {from = "22 3/4", to = "24 1/4", outside = "23 7/8"}]

# the outlet was moved in spring
[outlet]
saw = "2 1/2" # the old saw
`

// An edit changes its own value; comments, order and all else stay.
func TestEdit(t *testing.T) {
	for _, c := range []struct{ reason, key, value, old, new string }{
		{"a value", "outlet.saw", "2 3/8", `saw = "2 1/2" # the old saw`, `saw = "2 3/8" # the old saw`},
		{"a count", "drum_silos", "4", "drum_silos = 3\n", "drum_silos = 4\n"},
		{"a drum's measure", "drum[0].wall", "1/4", `wall = "3/16"`, `wall = "1/4"`},
		{"a hoop's", "drum[0].hoops[1].to", "24", `to = "24 1/4"`, `to = "24"`},
	} {
		got, err := Edit([]byte(edited), c.key, c.value)
		if want := strings.Replace(edited, c.old, c.new, 1); err != nil || string(got) != want || want == edited {
			t.Errorf("%s: %v\n%s", c.reason, err, got)
		}
	}
}

// A key that is absent is added in its section, or with its section; an empty
// value takes the key out, so that the default holds.
func TestEditAddsAndTakesOut(t *testing.T) {
	for _, c := range []struct{ key, value, has string }{
		{"outlet.below_rim", "7", `below_rim`}, {"inlet.saw", "2 1/8", `[inlet]`}, {"buying.tax", "0.05", "[buying]"}, {"currency", "EUR", `currency`},
		{"drum[0].outlet.saw", "3", "outlet"},
	} {
		got, err := Edit([]byte(edited), c.key, c.value)
		if err != nil || !strings.Contains(string(got), c.has) || !strings.Contains(string(got), "# the old saw") {
			t.Errorf("%s: %v\n%s", c.key, err, got)
			continue
		}
		if _, err := Parse("job.toml", got); err != nil {
			t.Errorf("%s: %v\n%s", c.key, err, got)
		}
	}
	got, err := Edit([]byte(edited), "outlet.saw", "")
	if err != nil || strings.Contains(string(got), `"2 1/2" `) {
		t.Errorf("%v\n%s", err, got)
	}
	if f, err := Parse("job.toml", got); err != nil || len(f.Job.Kinds) != 1 {
		t.Errorf("%v, %v", f, err)
	}
}

// Whatever is typed: the text stays a job that can be read, or its error names
// the key; and nothing but the key's value is another.
func FuzzEdit(f *testing.F) {
	for _, v := range []string{"2 3/8", "", "x", `"`, "\\", "{}", "# no", "1e999", "é", "\x00", "a\nb = 1", "]", "'''"} {
		f.Add("outlet.saw", v)
		f.Add("drum[0].wall", v)
		f.Add("name", v)
	}
	f.Fuzz(func(t *testing.T, key, value string) {
		got, err := Edit([]byte(edited), key, value)
		if err != nil {
			if strings.ContainsAny(err.Error(), "\n\r") {
				t.Errorf("%q", err)
			}
			return
		}
		if _, err := Parse("job.toml", got); err != nil && strings.ContainsAny(err.Error(), "\n\r") {
			t.Errorf("%q", err)
		}
		if !strings.Contains(string(got), "# a note at the head") || !strings.Contains(string(got), `label = "blue"`) && !strings.HasPrefix(key, "drum") {
			t.Errorf("%q = %q broke the rest:\n%s", key, value, got)
		}
		// every field can be listed of whatever came of it
		if len(Fields(got)) < 20 {
			t.Errorf("%q = %q: %d fields", key, value, len(Fields(got)))
		}
	})
}

// The fields say what is in the file, in both units, and what holds where it
// says nothing.
func TestFields(t *testing.T) {
	at := map[string]Field{}
	for _, f := range Fields([]byte(edited)) {
		if _, twice := at[f.Key]; twice {
			t.Errorf("%s stands twice", f.Key)
		}
		at[f.Key] = f
		if f.Means == "" {
			t.Errorf("%s is not explained", f.Key)
		}
	}
	if f := at["outlet.saw"]; f.Value != "2 1/2" || f.Both != "2 1/2 in (63.5 mm)" || f.Line != 19 {
		t.Errorf("%+v", f)
	}
	if f := at["inlet.saw"]; f.Value != "" || f.Fallback == "" {
		t.Errorf("%+v", f)
	}
	for _, key := range []string{"drum[0].circumference", "drum[0].hoops[1].outside", "units", "work.crew", "water.flow", "manifold.spacing", "buying.tax"} {
		if _, ok := at[key]; !ok {
			t.Errorf("%s is no field", key)
		}
	}
}
