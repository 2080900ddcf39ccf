package job

import (
	"fmt"
	"regexp"
	"strings"
	"unicode"
)

// Error is one thing wrong with a job file, in one line: where, which key,
// what it holds, why that cannot be, what may stand there and a way out.
type Error struct {
	File    string
	Line    int    // zero when it concerns the file as a whole
	Key     string // "drum.wall"; empty only when the text is no TOML or cannot be read
	Value   string // as written; empty when there is none
	Why     string // empty when the key is not known
	Allowed string
	Hint    string
}

// missing says that a key is not there; a mistyped one explains it better.
const missing = "is missing"

// Error writes `file:line: key: value, why, allowed range; hint: …`.
func (e *Error) Error() string {
	var b strings.Builder
	b.WriteString(e.File)
	if e.Line > 0 {
		fmt.Fprintf(&b, ":%d", e.Line)
	}
	b.WriteString(": ")
	switch key := short(e.Key, mostKey); {
	case e.Key != "" && e.Why == "":
		fmt.Fprintf(&b, "unknown key %q", key)
	case e.Key != "":
		b.WriteString(key + ": ")
	}
	if e.Value != "" {
		b.WriteString(e.Value + " ")
	}
	b.WriteString(e.Why)
	if e.Allowed != "" {
		b.WriteString(", allowed: " + e.Allowed)
	}
	if e.Hint != "" {
		b.WriteString("; hint: " + e.Hint)
	}
	return strings.Map(printable, b.String())
}

// printable keeps what a file holds from breaking the line or the terminal.
func printable(c rune) rune {
	if unicode.IsPrint(c) {
		return c
	}
	return '?'
}

var indexes = regexp.MustCompile(`\[[0-9]+\]`)

// keyName is a path as a reader knows it: without the entry numbers, which
// the line tells already.
func keyName(path string) string { return indexes.ReplaceAllString(path, "") }

// fail notes that the key at path is wrong. The first by line is reported.
func (r *reader) fail(path, value, why, allowed, hint string) {
	r.errs = append(r.errs, &Error{File: r.file, Line: r.lines.of(path), Key: keyName(path),
		Value: value, Why: why, Allowed: allowed, Hint: hint})
}

// first returns the error that stands first in the file, what is missing after
// what is wrong; nil when there is none.
func (r *reader) first() error {
	var first *Error
	for _, e := range r.errs {
		if first == nil || before(e, first) {
			first = e
		}
	}
	if first == nil {
		return nil
	}
	return first
}

func before(a, b *Error) bool {
	if (a.Why == missing) != (b.Why == missing) {
		return b.Why == missing
	}
	return a.Line < b.Line
}

// show writes a value as the file holds it, cut short when it is long.
func show(v any) string {
	var s string
	switch v := v.(type) {
	case string:
		s = fmt.Sprintf("%q", v)
	case map[string]any:
		return "a section"
	case []any:
		return "a list"
	default:
		s = fmt.Sprint(v)
	}
	return short(s, 48)
}

// mostKey is the most letters of a key that a message holds.
const mostKey = 120

// short cuts words that are longer than so many letters.
func short(s string, most int) string {
	if r := []rune(s); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return s
}
