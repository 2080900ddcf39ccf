package geometry

import "silowright/geometry/measure"

// Level says what a finding asks of the builder.
type Level int

// The levels, mildest first. A stop never keeps the pack from being written;
// it is printed on the pack's first page.
const (
	OK Level = iota
	Caution
	Stop
)

// String returns "ok", "caution" or "stop".
func (l Level) String() string { return [...]string{"ok", "caution", "stop"}[l] }

// MarshalText writes the level as its word.
func (l Level) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// Basis says what a check or a number rests on.
type Basis struct {
	// Kind is one of the Basis… constants.
	Kind string `json:"kind"`
	// Source names the publication or the job's key; empty for common practice.
	Source string `json:"source,omitempty"`
}

// The kinds of basis.
const (
	Published      = "published"
	FromMemory     = "from memory: measure yours"
	CommonPractice = "common practice, no source"
	JobSetting     = "the job's own setting"
	Worked         = "worked out from the measures given"
)

// String writes the basis for a reader.
func (b Basis) String() string {
	if b.Source == "" {
		return b.Kind
	}
	return b.Source + " (" + b.Kind + ")"
}

// Finding is the outcome of one check.
type Finding struct {
	// ID names the check, such as "outlet.saw-pipe".
	ID string `json:"id"`
	// Drum is the label of the drum kind it holds for; empty when it holds for all.
	Drum  string `json:"drum,omitempty"`
	Level Level  `json:"level"`
	// Key is the job-file key to change, such as "outlet.saw".
	Key string `json:"key"`
	// Measured is what the job gives, Limit what it is held against; a limit
	// without a unit to a measure that has one is none.
	Measured measure.Quantity `json:"measured"`
	Limit    measure.Quantity `json:"limit"`
	// Says is one sentence: what happens, and what to change.
	Says  string `json:"says"`
	Basis Basis  `json:"basis"`
}

// Texts writes measure and limit in both units, the shop's own first, and finely
// enough to tell one from the other; a finding that has no limit leaves it
// empty.
func (f Finding) Texts(u measure.Unit) (measured, limit string) {
	if f.Limit == (measure.Quantity{}) && f.Measured.Unit != "" {
		return f.Measured.Text(u), ""
	}
	return measure.Apart(f.Measured, f.Limit, u)
}
