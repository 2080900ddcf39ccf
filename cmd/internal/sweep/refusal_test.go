package sweep

import (
	"errors"
	"regexp"
	"strings"

	"silowright/cmd/internal/job"
)

// named begins a refusal that the reader of the job file did not make: file and
// line, and a section or key, a column of the price list, or a sum.
var named = regexp.MustCompile(`^(?:(?:job\.toml|prices\.csv)(?::[0-9]+)?: )*(` +
	`(?:drum|lattice|ring|mesh|handle|outlet|inlet|drain|screws|sealant|pipe_silo|saw|load|fittings|water|pump|suction|main|manifold|lateral|bed|failure|seed)(?:\.[a-z_]+| "[^"]*")?` +
	`|drum_silos|pipe_silos|on_hand|choose|supplier|exchange|work|contingency|total|prices\.file` +
	`|item|description|pack|unit|width|form|from|price|currency|quoted|column [0-9]+|column "[a-z]+"|character [0-9]+)[:; ]`)

// whole begins what is wrong with a file as a whole.
var whole = regexp.MustCompile(`^(?:job\.toml|prices\.csv): (?:is not UTF-8 text|is not text in UTF-8|is larger than|has no row of headings)`)

// paper is a refusal of the sheet that templates are asked for on.
var paper = regexp.MustCompile(`^paper [^:]*:`)

// fields is a row of the price list that does not fit under its headings.
var fields = regexp.MustCompile(`^prices\.csv:[0-9]+: .*: [0-9]+ fields under [0-9]+ headings;`)

// keyOf is the key that a refusal names, its line where the text is no TOML, or
// the file where that cannot be read at all; "" when it names nothing.
func keyOf(err error) string {
	text := err.Error()
	var e *job.Error
	switch {
	case errors.As(err, &e) && e.Key != "":
		return e.Key
	case e != nil && e.Line > 0:
		return "a line"
	case whole.MatchString(text):
		return "a file"
	case fields.MatchString(text):
		return "a row"
	case paper.MatchString(text):
		return "paper"
	}
	if m := named.FindStringSubmatch(text); e == nil && m != nil {
		return strings.TrimSpace(m[1])
	}
	return ""
}
