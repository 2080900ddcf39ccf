package job

import (
	"slices"
	"strings"
)

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
