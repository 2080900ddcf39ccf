package job

import (
	"regexp"
	"testing"

	"github.com/google/go-cmp/cmp"

	"silowright/geometry/measure"
)

// The file that start writes is a job as it stands, and says every default
// truly: with all its defaults uncommented it is the same job.
func TestTemplate(t *testing.T) {
	offered := regexp.MustCompile(`(?m)^# ([a-z_]+ += .* # )`)
	for _, u := range []measure.Unit{measure.UnitInch, measure.UnitMM} {
		t.Run(u.String(), func(t *testing.T) {
			text := Template(u)
			plain, err := Parse("job.toml", text)
			if err != nil {
				t.Fatal(err)
			}
			if got, want := len(plain.Job.Defaulted), len(rules)+1; got != want {
				t.Errorf("%d defaults are left to the program, want all %d", got, want)
			}
			spoken := offered.ReplaceAll(text, []byte("$1"))
			// what stands below [prices] is about parts, not defaults
			if i := regexp.MustCompile(`(?m)^\[prices\]`).FindIndex(text); i == nil {
				t.Fatal("no [prices]")
			}
			cut := regexp.MustCompile(`(?m)^\[prices\]`).FindIndex(spoken)
			full, err := Parse("job.toml", spoken[:cut[0]])
			if err != nil {
				t.Fatal(err)
			}
			if got := full.Job.Defaulted; len(got) != 1 || got[0].Key != "prices.file" {
				t.Errorf("still defaulted: %v", got)
			}
			near := cmp.Comparer(func(a, b measure.Length) bool { return (a - b).Abs() < 0.002 }) // written to 0.001 mm or a sixty-fourth
			if diff := cmp.Diff(plain.Job.Kinds, full.Job.Kinds, near, cmp.Comparer(func(a, b measure.Volume) bool {
				return (a-b)/measure.Millilitre < 0.1 && (b-a)/measure.Millilitre < 0.1
			})); diff != "" {
				t.Errorf("the defaults written are not those taken (-taken +written):\n%s", diff)
			}
		})
	}
}

func TestEveryKeyIsExplained(t *testing.T) {
	left := map[string]bool{}
	for k := range means {
		left[k] = true
	}
	for _, q := range rules {
		if means[q.key()] == "" || sectionMeans[q.section] == "" {
			t.Errorf("%s is not explained", q.key())
		}
		delete(left, q.key())
	}
	for k := range left {
		t.Errorf("%s is explained but is no key", k)
	}
}
