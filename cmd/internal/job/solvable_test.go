package job

import (
	"fmt"
	"math"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"silowright/geometry"
)

var rangeOf = regexp.MustCompile(`allowed: [^(]*\(([0-9.]+) mm\) to [^(]*\(([0-9.]+) mm\)`)

// bounds asks the reader itself what a key may hold, by giving it what it may
// not. ok is false for keys that are no lengths.
func bounds(q rule) (low, high float64, ok bool) {
	r := &reader{}
	if _, taken := q.read(r, q.key(), -1.0); taken || len(r.errs) == 0 {
		return 0, 0, false
	}
	m := rangeOf.FindStringSubmatch(r.errs[0].Error())
	if m == nil {
		return 0, 0, false
	}
	fmt.Sscan(m[1], &low)
	fmt.Sscan(m[2], &high)
	return low, high, true
}

// Whatever the reader takes can be solved: no error, no panic, no number that
// is none. Sizes are drawn at random between and at the bounds of each key,
// with a fixed seed.
func TestWhateverIsTakenCanBeSolved(t *testing.T) {
	rng := rand.New(rand.NewPCG(20, 12))
	const tries = 400
	taken := 0
	for range tries {
		sections := map[string][]string{}
		for range 1 + rng.IntN(4) {
			q := rules[rng.IntN(len(rules))]
			low, high, ok := bounds(q)
			if !ok {
				continue
			}
			v := low * math.Pow(math.Max(high, 1)/math.Max(low, 0.01), rng.Float64()) // evenly over the magnitudes
			switch rng.IntN(6) {
			case 0:
				v = low
			case 1:
				v = high
			}
			line := fmt.Sprintf("%s = \"%.3f mm\"\n", q.name, v)
			if !strings.Contains(strings.Join(sections[q.section], ""), q.name+" =") {
				sections[q.section] = append(sections[q.section], line)
			}
		}
		text := least
		for _, part := range []struct {
			old       string
			low, high float64
		}{{`"3/16"`, 1, 15}, {`"21"`, 340, 580}, {"0.75", 0, 200}, {"34", 560, 1200}, {`"22 1/2 in"`, 295, 600}, {`"71 1/2"`, 1700, 1890}} {
			if rng.IntN(6) == 0 {
				text = strings.Replace(text, part.old, fmt.Sprintf("\"%.3f mm\"", part.low+(part.high-part.low)*rng.Float64()), 1)
			}
		}
		for _, name := range sectionNames() {
			if lines := sections[name]; lines != nil {
				text += "[" + name + "]\n" + strings.Join(lines, "")
			}
		}
		f, err := Parse("job.toml", []byte(text))
		if err != nil {
			continue
		}
		taken++
		if _, err := geometry.Solve(f.Job); err != nil {
			t.Errorf("%v\n%s", err, text)
		}
	}
	if taken < tries/5 {
		t.Errorf("only %d of %d jobs were taken: too few to tell", taken, tries)
	}
	t.Logf("%d of %d jobs taken and solved", taken, tries)
}
