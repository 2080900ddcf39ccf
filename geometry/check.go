package geometry

import (
	"fmt"
	"strings"

	"silowright/geometry/measure"
)

// checks runs every check on a solved silo, in the order a builder meets the
// parts. A new check is one more function in a file named for its part.
func checks(s *Silo) []Finding {
	var out []Finding
	for _, group := range [][]Finding{
		drumChecks(s),
		latticeChecks(s),
		ringChecks(s),
		meshChecks(s),
		handleChecks(s),
		HoleChecks(s.Outlet, s.Spec.Units),
		bodySpacing(s),
		HoleChecks(s.Inlet, s.Spec.Units),
		HoleChecks(s.Drain, s.Spec.Units),
		baseSpacing(s),
		plenumChecks(s),
		seatChecks(s),
		pipeSiloChecks(s),
		loadChecks(s),
	} {
		out = append(out, group...)
	}
	for i := range out {
		out[i].Drum = s.Spec.Drum.Label
	}
	return out
}

// Worst is the worst level among findings.
func Worst(fs []Finding) Level {
	w := OK
	for _, f := range fs {
		w = max(w, f.Level)
	}
	return w
}

// FindingsOf returns the findings whose key lies in a section of the job file.
func (s *Silo) FindingsOf(section string) []Finding {
	var out []Finding
	for _, f := range s.Findings {
		if strings.HasPrefix(f.Key, section+".") {
			out = append(out, f)
		}
	}
	return out
}

var (
	practice = Basis{Kind: CommonPractice}
	worked   = Basis{Kind: Worked}
)

// rounding is more than a length can differ by for being written in inches
// instead of millimetres, and worked on: a measure that lies at its limit is
// graded alike in both.
const rounding length = 1e-9

// below reports whether v is less than the limit by more than rounding.
func below(v, limit length) bool { return v < limit-rounding }

// atLeast grades a measure that should be at least good; below bad it is a
// stop, between them a caution.
func atLeast(v, bad, good length) Level {
	switch {
	case below(v, bad):
		return Stop
	case below(v, good):
		return Caution
	}
	return OK
}

// lengths fills a finding whose measure and limit are lengths.
func lengths(id, key string, lv Level, measured, limit length, b Basis, says string, args ...any) Finding {
	return quantities(id, key, lv, measured.Quantity(), limit.Quantity(), b, says, args...)
}

func quantities(id, key string, lv Level, measured, limit measure.Quantity, b Basis, says string, args ...any) Finding {
	return Finding{ID: id, Key: key, Level: lv, Measured: measured, Limit: limit, Basis: b, Says: fmt.Sprintf(says, args...)}
}

// apart writes two lengths that a sentence holds against each other, finely
// enough to tell one from the other.
func apart(a, b length, u measure.Unit) (string, string) {
	return measure.Apart(a.Quantity(), b.Quantity(), u)
}

// say picks the sentence for a level.
func say(lv Level, ok, caution, stop string) string { return [...]string{ok, caution, stop}[lv] }
