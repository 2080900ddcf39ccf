package job

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strings"
)

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
