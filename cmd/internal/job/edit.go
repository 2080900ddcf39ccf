package job

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2"
)

// Edit sets the key of a job file's text to value and leaves all else as it
// stands: comments, order, blank lines. key is one that Fields lists, such as
// "outlet.saw", "drum[0].circumference", "drum[1].outlet.saw",
// "drum[0].hoops" or `fittings.coupling."2".outside`; one that is not there
// yet is added in its section, and supplier[n].name or drum[n].label with n
// the count there are begins one more. value is what a person types; of a
// list it is TOML. An empty value takes the key out, and of an entry such as
// "supplier[1]" or "drum[0].hoops[2]" the entry.
//
// Whether the value will do is for Parse to say. Edit fails, with an *Error,
// on text that is no TOML, on a key that a job file cannot have, and on a list
// that is no TOML.
func Edit(text []byte, key, value string) ([]byte, error) {
	fail := func(why, hint string) ([]byte, error) {
		return nil, &Error{File: "job", Key: strings.Map(printable, key), Why: why, Hint: hint}
	}
	path, err := parseKey(key)
	if err != nil {
		return fail("is not a key", "as in outlet.saw or drum[0].wall")
	}
	want, known := wantsAt(path)
	if !known {
		return fail("is not a key that can be set", "as in outlet.saw or drum[0].wall")
	}
	if len(text) > maxSize {
		return fail(fmt.Sprintf("cannot be set: the file is larger than %d kB", maxSize>>10), "is it a job file at all?")
	}
	before, bad := decode("job", text)
	if bad != nil {
		return nil, bad
	}
	marks, ok := scan(text)
	if !ok {
		return fail("cannot be set here", "write it into the file by hand")
	}
	value = strings.TrimSpace(strings.ToValidUTF8(value, "\ufffd"))
	e := editor{text, marks, path, newline(text)}
	if value == "" {
		if !holds(before.items, path) {
			return slices.Clone(text), nil
		}
		return e.first(e.removals(), func(after map[string]any) bool { return removed(after, before.items, path) }, fail)
	}
	raw := want.encode(value)
	var doc map[string]any
	if err := toml.Unmarshal([]byte("x = "+raw+"\n"), &doc); err != nil || len(doc) != 1 {
		return fail("is not a list as TOML writes it", "as in "+hoopExample)
	}
	after, ok := with(before.items, path, doc["x"])
	if !ok {
		return fail("does not fit what stands in the file", "write it into the file by hand")
	}
	return e.first(e.settings(raw), func(got map[string]any) bool { return same(got, after) }, fail)
}

// editor tries to write one change into a text.
type editor struct {
	b     []byte
	marks []mark
	path  []step
	nl    string
}

// first is the first of several ways of writing a change after which the text
// reads as it should: that key changed and nothing else.
func (e editor) first(ways [][]byte, good func(map[string]any) bool, fail func(why, hint string) ([]byte, error)) ([]byte, error) {
	for _, w := range ways {
		after, bad := decode("job", w)
		if bad == nil && good(after.items) {
			return w, nil
		}
	}
	return fail("cannot be set here", "write it into the file by hand")
}

func newline(b []byte) string {
	if bytes.Contains(b, []byte("\r\n")) {
		return "\r\n"
	}
	return "\n"
}

// splice puts words in place of b[from:to].
func (e editor) splice(from, to int, words string) []byte {
	return slices.Concat(e.b[:from], []byte(words), e.b[to:])
}

func (e editor) find(path []step, kinds ...markKind) (int, bool) {
	want := pathText(path)
	for i, m := range e.marks {
		if pathText(m.path) == want && (len(kinds) == 0 || slices.Contains(kinds, m.kind)) {
			return i, true
		}
	}
	return 0, false
}

// lineStart is where the line that holds i begins, lineEnd where the next does.
func (e editor) lineStart(i int) int { return bytes.LastIndexByte(e.b[:i], '\n') + 1 }

func (e editor) lineEnd(i int) int {
	if n := bytes.IndexByte(e.b[i:], '\n'); n >= 0 {
		return i + n + 1
	}
	return len(e.b)
}
