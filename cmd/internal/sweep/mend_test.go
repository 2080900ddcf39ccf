package sweep

import (
	"errors"
	"regexp"
	"slices"
	"strings"

	"silowright/cmd/internal/job"
	"silowright/geometry/measure"
)

// missing are keys that others call for, with what will do.
var missing = map[string]line{
	"water.below_ground": {"below_ground", value{mm: 500, style: asMM}}, "water.outlet_hose_bore": {"outlet_hose_bore", value{mm: 60, style: asMM}},
	"suction.pipe": {"pipe", words(`"3"`)}, "main.pipe": {"pipe", words(`"3"`)}, "manifold.pipe": {"pipe", words(`"3"`)},
	"pump.shut_off": {"shut_off", value{mm: 12000, style: asMM}}, "pump.duty_head": {"duty_head", value{mm: 8000, style: asMM}},
	"pump.duty_flow": {"duty_flow", words(`"100 L/min"`)}, "seed.pipe_silos_at_hand": {"pipe_silos_at_hand", words("10")},
}

var allowed = regexp.MustCompile(`^(.+?) \(.*\) to (.+?) \(`)

// mend changes a job as its refusal says: the key is left out, or where it is
// not there, given the middle of the range that is allowed. It is false where
// that does not help.
func (m *maker) mend(err error) bool {
	var e *job.Error
	if !errors.As(err, &e) {
		return false
	}
	key := strings.TrimPrefix(e.Key, "drum.")
	section, name, _ := strings.Cut(key, ".")
	gone := false
	for _, b := range m.doc.blocks {
		if b.head != "["+section+"]" && b.head != "[drum."+section+"]" {
			continue
		}
		before := len(b.lines)
		b.lines = slices.DeleteFunc(b.lines, func(l line) bool { return l.name == name })
		gone = gone || len(b.lines) < before
	}
	switch l, ok := missing[key]; {
	case strings.HasPrefix(e.Key, "pump.") && strings.Contains(e.Why, "ways"):
		b := m.doc.section("[pump]")
		b.lines = slices.DeleteFunc(b.lines, func(l line) bool {
			return l.name == "shut_off" || l.name == "duty_flow" || l.name == "duty_head" || l.name == "power"
		})
		b.put("curve", words(`[{flow = "0 L/min", head = "12 m"}, {flow = "400 L/min", head = "5 m"}]`))
		return true
	case ok && (!gone || e.Why == "is missing"):
		m.doc.section("["+section+"]").put(l.name, l.v)
		return true
	case gone:
		return true
	}
	r := allowed.FindStringSubmatch(e.Allowed)
	if r == nil || !slices.Contains(siloSections, section) {
		return false
	}
	low, errLow := measure.ParseLength(r[1], measure.UnitMM)
	high, errHigh := measure.ParseLength(r[2], measure.UnitMM)
	if errLow != nil || errHigh != nil || high <= low {
		return false
	}
	m.doc.section("["+section+"]").put(name, value{mm: float64(low+high) / 2, style: asMM})
	return true
}
