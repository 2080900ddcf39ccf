package job

import (
	"bytes"
	"fmt"
	"math"
	"reflect"
	"regexp"
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

// removals are the ways of taking the key out.
func (e editor) removals() [][]byte {
	i, ok := e.find(e.path)
	if !ok {
		return nil
	}
	m := e.marks[i]
	switch m.kind {
	case entryMark:
		from, to := e.lineStart(m.key), e.lineEnd(m.to)
		keep := ""
		if rest := strings.TrimSpace(string(e.b[m.to:to])); strings.HasPrefix(rest, "#") {
			keep = rest + e.nl
		}
		return [][]byte{e.splice(from, to, keep)}
	case header:
		from, to := e.block(i)
		for to < len(e.b) && strings.TrimSpace(string(e.b[to:e.lineEnd(to)])) == "" {
			to = e.lineEnd(to)
		}
		return [][]byte{e.splice(from, to, "")}
	}
	// within a list or braces: with the comma that parts it from its neighbour
	prev, next := -1, -1
	for j, o := range e.marks {
		if o.kind != m.kind || len(o.path) != len(m.path) || !e.siblings(o, m) {
			continue
		}
		if j < i {
			prev = j
		} else if j > i && next < 0 {
			next = j
		}
	}
	if at, ok := e.commaAfter(m.to); ok {
		from, to := m.key, at+1
		switch line := e.lineStart(from); {
		case next >= 0 && e.lineStart(e.marks[next].key) == line:
			to = e.marks[next].key // the next one moves into its place
		case strings.TrimSpace(string(e.b[line:from])) == "" && strings.TrimSpace(string(e.b[to:e.lineEnd(to)])) == "":
			from, to = line, e.lineEnd(to) // it had a line of its own
		}
		return [][]byte{e.splice(from, to, "")}
	}
	if prev < 0 {
		return [][]byte{e.splice(m.key, m.to, "")}
	}
	// the last of them: the comma before it goes too
	from := m.key
	if comma, ok := e.commaAfter(e.marks[prev].to); ok {
		if strings.TrimSpace(string(e.b[comma+1:from])) == "" {
			return [][]byte{e.splice(comma, m.to, "")}
		}
		return [][]byte{slices.Concat(e.b[:comma], e.b[comma+1:from], e.b[m.to:])}
	}
	return nil
}

// commaAfter is where the comma behind a value stands, past blanks and
// comments, if there is one.
func (e editor) commaAfter(i int) (int, bool) {
	s := scanner{b: e.b}
	i = s.skip(i)
	return i, i < len(e.b) && e.b[i] == ','
}

// siblings reports whether two things stand in the same list or braces.
func (e editor) siblings(a, b mark) bool {
	n := len(b.path) - 1
	if b.kind == itemMark {
		return pathText(a.path[:n]) == pathText(b.path[:n]) && a.path[n].name == b.path[n].name
	}
	return pathText(a.path[:n]) == pathText(b.path[:n])
}

// block is a header's line and all below it that belongs to it.
func (e editor) block(i int) (from, to int) {
	m := e.marks[i]
	from, to = e.lineStart(m.key), e.lineEnd(m.to)
	for _, o := range e.marks[i+1:] {
		if o.kind == header && !below(o.path, m.path) {
			break
		}
		to = max(to, e.lineEnd(o.to))
	}
	return from, to
}

// settings are the ways of writing raw as the key's value, best first.
func (e editor) settings(raw string) [][]byte {
	if i, ok := e.find(e.path, entryMark, innerMark, itemMark); ok {
		return [][]byte{e.splice(e.marks[i].from, e.marks[i].to, raw)}
	}
	var ways [][]byte
	add := func(w []byte, ok bool) {
		if ok {
			ways = append(ways, w)
		}
	}
	n := len(e.path)
	if e.path[n-1].index >= 0 {
		add(e.append(e.path, raw))
		return ways
	}
	add(e.inSection(raw))
	for k := n - 1; k > 0; k-- {
		add(e.inBraces(e.path[:k], raw))
	}
	add(e.besideDotted(raw))
	if n > 1 && e.path[n-2].index >= 0 {
		add(e.newEntry(e.path[:n-1], nameText(e.path[n-1].name)+" = "+raw))
		add(e.append(e.path[:n-1], "{"+nameText(e.path[n-1].name)+" = "+raw+"}"))
	}
	if n > 1 {
		add(e.newSection(raw))
	}
	add(e.atTop(raw))
	return ways
}

// inSection writes a new line into the section the key belongs to, if that has
// a header: below the comment that offers the key, else below its last line.
func (e editor) inSection(raw string) ([]byte, bool) {
	n := len(e.path) - 1
	if n == 0 {
		return nil, false
	}
	i, ok := e.find(e.path[:n], header)
	if !ok {
		return nil, false
	}
	return e.line(e.marks[i].to, e.sectionEnd(i), e.lineEnd(e.marks[i].to), e.path[n].name, raw), true
}

// sectionEnd is where the next header begins.
func (e editor) sectionEnd(i int) int {
	for _, o := range e.marks[i+1:] {
		if o.kind == header {
			return e.lineStart(o.key)
		}
	}
	return len(e.b)
}

// line writes key = raw between from and to: below a comment that offers it,
// else below the last line there, else at at.
func (e editor) line(from, to, at int, name, raw string) []byte {
	width := 0
	for _, m := range e.marks {
		if m.kind == entryMark && m.key >= from && m.key < to {
			at = e.lineEnd(m.to)
			start := e.lineStart(m.key)
			if eq := bytes.IndexByte(e.b[m.key:m.from], '='); eq > 0 && start == m.key {
				width = eq - 1
			}
		}
	}
	key := nameText(name)
	if offered := regexp.MustCompile(`(?m)^[ \t]*#[ \t]*` + regexp.QuoteMeta(key) + `[ \t]*=.*$`).FindIndex(e.b[from:to]); offered != nil && !e.within(from+offered[0]) {
		at = e.lineEnd(from + offered[0])
	}
	words := fmt.Sprintf("%-*s = %s%s", width, key, raw, e.nl)
	if at > 0 && e.b[at-1] != '\n' {
		words = e.nl + words
	}
	return e.splice(at, at, words)
}

// within reports whether i lies in a value, which may run over several lines.
func (e editor) within(i int) bool {
	for _, m := range e.marks {
		if m.kind == entryMark && i >= m.key && i < m.to {
			return true
		}
	}
	return false
}

// inBraces writes the key into the table in braces at path.
func (e editor) inBraces(at []step, raw string) ([]byte, bool) {
	i, ok := e.find(at, entryMark, innerMark, itemMark)
	if !ok || e.b[e.marks[i].from] != '{' {
		return nil, false
	}
	m := e.marks[i]
	words := dotted(e.path[len(at):]) + " = " + raw
	last := -1
	for _, o := range e.marks[i+1:] {
		if o.kind == innerMark && o.key > m.from && o.to < m.to && len(o.path) > len(at) {
			last = max(last, o.to)
		}
	}
	if last < 0 {
		return e.splice(m.from+1, m.from+1, words), true
	}
	// past the value of the last key, which may itself hold keys
	for _, o := range e.marks[i+1:] {
		if o.from > m.from && o.to < m.to {
			last = max(last, o.to)
		}
	}
	return e.splice(last, last, ", "+words), true
}

func dotted(path []step) string {
	names := make([]string, len(path))
	for i, s := range path {
		names[i] = nameText(s.name)
	}
	return strings.Join(names, ".")
}

// besideDotted writes the key below one of its section that is written with
// dots.
func (e editor) besideDotted(raw string) ([]byte, bool) {
	parent := e.path[:len(e.path)-1]
	for i := len(e.marks) - 1; i >= 0 && len(parent) > 0; i-- {
		m := e.marks[i]
		if m.kind == entryMark && len(m.path) > len(parent) && below(m.path, parent) && len(m.section) < len(parent) {
			at := e.lineEnd(m.to)
			words := dotted(e.path[len(m.section):]) + " = " + raw + e.nl
			if at > 0 && e.b[at-1] != '\n' {
				words = e.nl + words
			}
			return e.splice(at, at, words), true
		}
	}
	return nil, false
}

// append writes one more item into a list written with brackets.
func (e editor) append(path []step, raw string) ([]byte, bool) {
	n := len(path) - 1
	list := slices.Clone(path)
	list[n].index = -1
	i, ok := e.find(list, entryMark, innerMark)
	if !ok || e.b[e.marks[i].from] != '[' {
		return nil, false
	}
	m := e.marks[i]
	count, last := 0, -1
	for _, o := range e.marks {
		if o.kind == itemMark && len(o.path) == len(path) && e.siblings(o, mark{kind: itemMark, path: path}) {
			count, last = count+1, o.to
		}
	}
	if path[n].index != count {
		return nil, false
	}
	if count == 0 {
		return e.splice(m.from+1, m.from+1, raw), true
	}
	return e.splice(last, last, ", "+raw), true
}

// newEntry begins one more [[name]] with one line in it.
func (e editor) newEntry(path []step, words string) ([]byte, bool) {
	if len(path) != 1 {
		return nil, false
	}
	count, at := 0, len(e.b)
	for i, m := range e.marks {
		if m.kind == header && len(m.path) == 1 && m.path[0].name == path[0].name {
			count++
			_, at = e.block(i)
		}
	}
	if path[0].index != count {
		return nil, false
	}
	return e.paragraph(at, "[["+nameText(path[0].name)+"]]"+e.nl+words), true
}

// newSection begins the key's section: behind the drum it is of, or at the end.
func (e editor) newSection(raw string) ([]byte, bool) {
	n := len(e.path) - 1
	words := "[" + dotted(e.path[:n]) + "]" + e.nl + nameText(e.path[n].name) + " = " + raw
	if e.path[0].index < 0 {
		return e.paragraph(len(e.b), words), true
	}
	i, ok := e.find(e.path[:1], header)
	if !ok {
		return nil, false
	}
	_, at := e.block(i)
	return e.paragraph(at, words), true
}

// paragraph sets lines at a line's beginning with a blank line round them.
func (e editor) paragraph(at int, words string) []byte {
	head, tail := "", e.nl
	if at > 0 && e.b[at-1] != '\n' {
		head = e.nl
	}
	if at > 0 {
		head += e.nl
	}
	if at < len(e.b) && strings.TrimSpace(string(e.b[at:e.lineEnd(at)])) != "" {
		tail += e.nl
	}
	return e.splice(at, at, head+words+tail)
}

// atTop writes the key above the first section, with dots where it is of one.
func (e editor) atTop(raw string) ([]byte, bool) {
	for _, s := range e.path {
		if s.index >= 0 {
			return nil, false
		}
	}
	end := len(e.b)
	if len(e.marks) > 0 {
		for _, m := range e.marks {
			if m.kind == header {
				end = e.lineStart(m.key)
				break
			}
		}
	}
	if len(e.path) == 1 {
		return e.line(0, end, end, e.path[0].name, raw), true
	}
	words := dotted(e.path) + " = " + raw + e.nl
	if end > 0 && e.b[end-1] != '\n' {
		words = e.nl + words
	}
	return e.splice(end, end, words), true
}

// holds reports whether something stands at path.
func holds(items any, path []step) bool {
	for _, s := range path {
		m, ok := items.(map[string]any)
		if !ok {
			return false
		}
		if items, ok = m[s.name]; !ok {
			return false
		}
		if s.index >= 0 {
			list, ok := items.([]any)
			if !ok || s.index >= len(list) {
				return false
			}
			items = list[s.index]
		}
	}
	return true
}

// with is a copy of items with v at path; false when path runs through
// something that holds no keys, or past a list's next item.
func with(items map[string]any, path []step, v any) (map[string]any, bool) {
	out := map[string]any{}
	for k, o := range items {
		out[k] = o
	}
	s := path[0]
	put := func(old any) (any, bool) {
		if len(path) == 1 {
			return v, true
		}
		inner, ok := old.(map[string]any)
		if old != nil && !ok {
			return nil, false
		}
		return wrap(with(inner, path[1:], v))
	}
	old, there := out[s.name]
	if s.index < 0 {
		n, ok := put(old)
		out[s.name] = n
		return out, ok
	}
	list, ok := old.([]any)
	if (there && !ok) || s.index > len(list) {
		return nil, false
	}
	list = slices.Clone(list)
	if s.index == len(list) {
		list = append(list, nil)
	}
	n, ok := put(list[s.index])
	list[s.index] = n
	out[s.name] = list
	return out, ok
}

func wrap(m map[string]any, ok bool) (any, bool) { return m, ok }

// removed reports whether after is before without what stood at path; a
// section left empty by that may be gone too.
func removed(after, before map[string]any, path []step) bool {
	for _, prune := range []bool{false, true} {
		if same(after, without(before, path, prune)) {
			return true
		}
	}
	return false
}

func without(items map[string]any, path []step, prune bool) map[string]any {
	out := map[string]any{}
	for k, o := range items {
		out[k] = o
	}
	s := path[0]
	drop := func(old any) any {
		inner, _ := old.(map[string]any)
		return without(inner, path[1:], prune)
	}
	switch list, many := out[s.name].([]any); {
	case s.index < 0 && len(path) == 1:
		delete(out, s.name)
	case s.index < 0:
		inner := drop(out[s.name])
		if out[s.name] = inner; prune && len(inner.(map[string]any)) == 0 {
			delete(out, s.name)
		}
	case many && len(path) == 1:
		if rest := slices.Delete(slices.Clone(list), s.index, s.index+1); len(rest) > 0 || !prune {
			out[s.name] = rest
		} else {
			delete(out, s.name)
		}
	case many:
		list = slices.Clone(list)
		list[s.index] = drop(list[s.index])
		out[s.name] = list
	}
	return out
}

// same compares two documents; a NaN is like another.
func same(a, b any) bool {
	switch a := a.(type) {
	case map[string]any:
		b, ok := b.(map[string]any)
		if !ok || len(a) != len(b) {
			return false
		}
		for k, v := range a {
			if w, ok := b[k]; !ok || !same(v, w) {
				return false
			}
		}
		return true
	case []any:
		b, ok := b.([]any)
		return ok && slices.EqualFunc(a, b, same)
	case float64:
		b, ok := b.(float64)
		return ok && (a == b || math.IsNaN(a) && math.IsNaN(b))
	}
	return reflect.DeepEqual(a, b)
}
