package job

import (
	"bytes"
	"slices"
)

// mark is one thing in the text of a job file with the bytes it takes.
type mark struct {
	kind     markKind
	path     []step
	section  []step // of the header it stands below
	key      int    // where it begins
	from, to int    // of its value; of a header: all of it
}

type markKind int

const (
	header    markKind = iota // [name] or [[name]]
	entryMark                 // key = value on a line of its own
	innerMark                 // key = value within braces
	itemMark                  // an item of a list
)

// scanner walks through TOML that the library accepted.
type scanner struct {
	b       []byte
	marks   []mark
	section []step
	counts  map[string]int // of [[name]]
	lost    bool           // the text is not what it should be
}

// scan lists what stands in a document that the TOML library accepted. It
// reports false when it cannot follow it.
func scan(b []byte) ([]mark, bool) {
	s := &scanner{b: b, counts: map[string]int{}}
	i := 0
	if bytes.HasPrefix(b, []byte("\xef\xbb\xbf")) {
		i = 3
	}
	for {
		i = s.skip(i)
		if i >= len(b) || s.lost {
			return s.marks, !s.lost
		}
		if b[i] == '[' {
			i = s.header(i)
		} else {
			i = s.entry(i, s.section, entryMark)
		}
	}
}

// skip passes over blanks, line ends and comments.
func (s *scanner) skip(i int) int {
	for i < len(s.b) {
		switch s.b[i] {
		case ' ', '\t', '\r', '\n':
			i++
		case '#':
			for i < len(s.b) && s.b[i] != '\n' {
				i++
			}
		default:
			return i
		}
	}
	return i
}

func (s *scanner) blanks(i int) int {
	for i < len(s.b) && (s.b[i] == ' ' || s.b[i] == '\t') {
		i++
	}
	return i
}

// names reads a dotted key.
func (s *scanner) names(i int) ([]string, int) {
	var out []string
	for {
		i = s.blanks(i)
		name, rest, ok := cutName(string(s.b[i:min(len(s.b), i+400)]))
		if !ok {
			s.lost = true
			return nil, len(s.b)
		}
		i += min(len(s.b), i+400) - i - len(rest)
		out = append(out, name)
		next := s.blanks(i)
		if next >= len(s.b) || s.b[next] != '.' {
			return out, next
		}
		i = next + 1
	}
}

func (s *scanner) header(i int) int {
	at, double := i, i+1 < len(s.b) && s.b[i+1] == '['
	i++
	if double {
		i++
	}
	names, i := s.names(i)
	var path []step
	for k, n := range names {
		path = append(path, step{n, -1})
		text := pathText(path)
		if double && k == len(names)-1 {
			s.counts[text]++
		}
		if c := s.counts[text]; c > 0 {
			path[k].index = c - 1
		}
	}
	for n := 1; n > 0; n-- {
		if double {
			n, double = n+1, false
		}
		if i = s.blanks(i); i >= len(s.b) || s.b[i] != ']' {
			s.lost = true
			return len(s.b)
		}
		i++
	}
	s.section = path
	s.marks = append(s.marks, mark{header, path, path, at, at, i})
	return i
}

// entry reads key = value.
func (s *scanner) entry(i int, under []step, kind markKind) int {
	at := i
	names, i := s.names(i)
	if i = s.blanks(i); i >= len(s.b) || s.b[i] != '=' {
		s.lost = true
		return len(s.b)
	}
	path := slices.Clone(under)
	for _, n := range names {
		path = append(path, step{n, -1})
	}
	n := len(s.marks)
	s.marks = append(s.marks, mark{kind: kind, path: path, section: s.section, key: at})
	i = s.blanks(i + 1)
	to := s.value(i, path)
	s.marks[n].from, s.marks[n].to = i, to
	return to
}

// value passes over a value and lists what is in it.
func (s *scanner) value(i int, path []step) int {
	if i >= len(s.b) {
		s.lost = true
		return i
	}
	switch s.b[i] {
	case '"', '\'':
		if end := closing(s.b, i); end > 0 {
			return end
		}
		s.lost = true
		return len(s.b)
	case '[':
		return s.list(i+1, path)
	case '{':
		for i = s.skip(i + 1); i < len(s.b) && !s.lost && s.b[i] != '}'; i = s.comma(i) {
			i = s.entry(i, path, innerMark)
		}
		return min(i+1, len(s.b))
	}
	from := i
	for i < len(s.b) && !bytes.ContainsRune([]byte(",]}#\r\n"), rune(s.b[i])) {
		i++
	}
	return from + len(bytes.TrimRight(s.b[from:i], " \t"))
}

func (s *scanner) list(i int, path []step) int {
	for n := 0; ; n++ {
		if i = s.skip(i); i >= len(s.b) || s.lost || s.b[i] == ']' {
			return min(i+1, len(s.b))
		}
		item := slices.Clone(path)
		if last := &item[len(item)-1]; last.index < 0 {
			last.index = n
		} else { // a list in a list
			item = append(item, step{"", n})
		}
		k := len(s.marks)
		s.marks = append(s.marks, mark{kind: itemMark, path: item, section: s.section, key: i, from: i})
		to := s.value(i, item)
		s.marks[k].to = to
		i = s.comma(to)
	}
}

// comma passes over what parts two items.
func (s *scanner) comma(i int) int {
	i = s.skip(i)
	if i < len(s.b) && s.b[i] == ',' {
		i = s.skip(i + 1)
	}
	return i
}
