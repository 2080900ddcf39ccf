package table

import (
	"encoding/json"
	"net/http"
	"strconv"
	"strings"
	"testing"

	"silowright/geometry"
)

func number(t *testing.T, s string) float64 {
	t.Helper()
	f, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func jsonOf(t testing.TB, v any) []byte {
	t.Helper()
	data, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func (d *desk) fixes(text, id, drum string) []fix {
	d.t.Helper()
	var got struct{ Fixes []fix }
	if code := d.post("/api/fixes", m{"job": text, "prices": demoPrices, "id": id, "drum": drum}, &got); code != http.StatusOK {
		d.t.Fatalf("fixes of %s: %d", id, code)
	}
	return got.Fixes
}

// Changes are offered in the trade's words, nearest first. The demo's 2 in pipe
// is 2.375 in outside (ASTM D1785): of the saws, 2 1/2 in is the first that
// passes it.
func TestFixesInTheTradesWords(t *testing.T) {
	d := newDesk(t, Config{})
	for _, c := range []struct{ reason, old, new, id, label string }{
		{"a saw too small for its pipe", `saw       = "2 1/2"`, `saw       = "2"`, "outlet.saw-pipe", "use the 2 1/2 in saw"},
		{"a saw the couplings do not cover", `saw       = "2 1/2"`, `saw       = "3"`, "outlet.saw-cover", "use the 2 1/2 in saw"},
		{"a stopper that falls through", `saw          = "2 5/16"`, `saw          = "3"`, "drain.saw-stopper", "use the 2 "},
		{"an outlet over the slots' sill", `below_rim = "6 1/2"`, `below_rim = "4"`, "handle.sill-outlet", "set the outlet 5 "},
		{"an outlet on the hoop", `below_rim = "6 1/2"`, `below_rim = "10"`, "outlet.hoop-1", "set the outlet "},
		{"an inlet in the head", `above_ground = "4 1/4"`, `above_ground = "1"`, "inlet.head", "set the inlet 2 "},
		{"slots too low for a hand", `height    = "1 3/4"`, `height    = "3/4"`, "handle.hand-height", "make the handle slots 1 1/2 in high"},
		{"a slot too short", `length    = "4 3/4"`, `length    = "3"`, "handle.hand-length", "make the handle slots 4 1/2 in long"},
		{"screws too short", `length  = "5/8"`, `length  = "1/4"`, "ring.screw-stack", "use screws "},
		{"too much seed to lift", `seed_kg = 6`, `seed_kg = 60`, "lift.weight", "load "},
		{"a short nipple", `nipple    = "2 1/2"`, `nipple    = "1/2"`, "outlet.nipple-sockets", "cut the outlet's nipple 2 "},
	} {
		t.Run(c.reason, func(t *testing.T) {
			text := swapped(t, demoJob, c.old, c.new)
			before := d.work(text, demoPrices, nil)
			got := d.fixes(text, c.id, "Cove")
			if len(got) == 0 || len(got) > mostFixes {
				t.Fatalf("%d changes", len(got))
			}
			if !strings.HasPrefix(got[0].Label, c.label) {
				t.Errorf("%q, want %q", got[0].Label, c.label)
			}
			was := levels(before)
			if was[c.id] == geometry.OK {
				t.Fatalf("%s is ok: nothing is to be cleared", c.id)
			}
			for _, f := range got { // each does what it says
				now := levels(d.work(text, demoPrices, []edit{{f.Key, f.Value}}))
				if now[c.id] >= was[c.id] {
					t.Errorf("%q leaves %s a %s", f.Label, c.id, now[c.id])
				}
				for id, lv := range now {
					if lv == geometry.Stop && was[id] != geometry.Stop {
						t.Errorf("%q brings a stop: %s", f.Label, id)
					}
				}
			}
		})
	}
}

func levels(a answer) map[string]geometry.Level {
	out := map[string]geometry.Level{}
	for _, f := range a.Findings {
		out[f.ID] = map[string]geometry.Level{"ok": geometry.OK, "caution": geometry.Caution, "stop": geometry.Stop}[f.Level]
	}
	return out
}

// In a metric job changes are whole millimetres and saws as sold.
func TestFixesMetric(t *testing.T) {
	d := newDesk(t, Config{})
	text := swapped(t, demoJob, `units      = "in"`, `units      = "mm"`)
	for _, old := range []string{"72 1/8", "34 1/2", "3/16", "21 1/8", "2 1/4", "7/8", "10 1/2", "22 3/4", "24 1/4", "23 7/8", "18 1/2", "1 5/8", "5/16", "1 1/4", "5/8", "3/8", "4 3/4", "6 1/2", "2 3/8", "2 1/8", "4 1/4", "2 5/16", "3 1/2", "2 1/2", "8 1/2", "4 1/2", "1/16", "1/32", "2 7/8", "2 9/16", "1 3/4"} {
		text = strings.ReplaceAll(text, ` "`+old+`"`, ` "`+old+` in"`)
	}
	text = strings.ReplaceAll(strings.ReplaceAll(text, `to = "12"`, `to = "12 in"`), `stub         = "7"`, `stub         = "7 in"`)
	text = strings.ReplaceAll(text, `length              = "13"`, `length              = "13 in"`)
	for _, key := range []string{"pipe      = ", "pipe         = ", "pipe_out            = ", "coupling.", "grommet."} { // sizes are names
		text = strings.ReplaceAll(text, key+`"2 1/2 in"`, key+`"2 1/2"`)
	}
	text = swapped(t, text, `saw       = "2 1/2 in"`, `saw       = "51 mm"`)
	if a := d.work(text, demoPrices, nil); a.Error != nil {
		t.Fatal(a.Error.Text)
	}
	if got := d.fixes(text, "outlet.saw-pipe", "Cove"); len(got) == 0 || got[0].Label != "use the 64 mm saw" || got[0].Value != "64 mm" {
		t.Errorf("%+v", got)
	}
	text = swapped(t, text, `below_rim = "6 1/2 in"`, `below_rim = "100 mm"`)
	if got := d.fixes(text, "handle.sill-outlet", "Cove"); len(got) == 0 || !strings.HasPrefix(got[0].Label, "set the outlet 1") || !strings.HasSuffix(got[0].Label, " mm below the rim") {
		t.Errorf("%+v", got)
	}
}

// What the tape says is no choice: nothing is offered for it, nor for a check
// that holds.
func TestNoFixes(t *testing.T) {
	d := newDesk(t, Config{})
	a := d.work(demoJob, demoPrices, nil)
	for _, f := range a.Findings {
		if f.Level != "ok" && !strings.HasPrefix(f.Key, "drum.") {
			continue
		}
		if f.Fixes {
			t.Errorf("%s (%s, %s) promises a change", f.ID, f.Key, f.Level)
		}
		if got := d.fixes(demoJob, f.ID, f.Drum); len(got) != 0 {
			t.Errorf("%s: %+v", f.ID, got)
		}
	}
	if code := d.post("/api/fixes", m{"job": demoJob, "prices": demoPrices, "id": "no.such", "drum": "Cove"}, nil); code != http.StatusNotFound {
		t.Errorf("a finding that is none: %d", code)
	}
	if code := d.post("/api/fixes", m{"job": "name =", "prices": "", "id": "x"}, nil); code != http.StatusUnprocessableEntity {
		t.Errorf("a wrong job: %d", code)
	}
}

// A pipe that is offered is named with its series, the job's own or what goes
// with the size.
func TestFixesNameThePipesSeries(t *testing.T) {
	d := newDesk(t, Config{})
	for _, c := range []struct{ old, new, id, label string }{
		{"[main]\npipe   = \"4\"", "[main]\npipe   = \"3\"", "main.speed", "use 4 sch40 pipe for the main"},
		{"[manifold]\npipe    = \"4\"", "[manifold]\npipe    = \"2\"\nseries = \"sch80\"", "manifold.speed", " sch80 pipe for the manifold"},
	} {
		got := d.fixes(swapped(t, demoJob, c.old, c.new), c.id, "")
		if len(got) == 0 || !strings.HasSuffix(got[0].Label, c.label) {
			t.Errorf("%s: %v, want %q", c.id, got, c.label)
		}
	}
}
