package job

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2"
)

// step is one part of a key's path: a name, and the place in a list behind it.
type step struct {
	name  string
	index int // -1 when the name has no place behind it
}

var bareName = regexp.MustCompile(`^[A-Za-z0-9_-]+$`)

// pathText writes a path as an edit's key reads it: `drum[0].hoops[1].from`,
// `fittings.coupling."1 1/2".outside`.
func pathText(path []step) string {
	var b strings.Builder
	for i, s := range path {
		if i > 0 {
			b.WriteByte('.')
		}
		b.WriteString(nameText(s.name))
		if s.index >= 0 {
			fmt.Fprintf(&b, "[%d]", s.index)
		}
	}
	return b.String()
}

// nameText writes a name as TOML does, in quotes where it must be.
func nameText(name string) string {
	if bareName.MatchString(name) {
		return name
	}
	return quoteTOML(name)
}

// quoteTOML writes a basic string of TOML.
func quoteTOML(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, c := range s {
		switch {
		case c == '"' || c == '\\':
			b.WriteByte('\\')
			b.WriteRune(c)
		case c < 0x20 || c == 0x7f:
			fmt.Fprintf(&b, `\u%04X`, c)
		default:
			b.WriteRune(c)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// parseKey reads a path as pathText writes it.
func parseKey(key string) ([]step, error) {
	wrong := fmt.Errorf("%.60q is not a key", key)
	var out []step
	rest := key
	for {
		name, after, ok := cutName(rest)
		if !ok {
			return nil, wrong
		}
		s := step{name, -1}
		if inside, tail, found := strings.Cut(strings.TrimPrefix(after, "["), "]"); found && strings.HasPrefix(after, "[") {
			n, err := strconv.Atoi(inside)
			if err != nil || n < 0 || n > maxCount || strconv.Itoa(n) != inside {
				return nil, wrong
			}
			s.index, after = n, tail
		}
		out = append(out, s)
		if after == "" {
			return out, nil
		}
		if after[0] != '.' || len(out) > 8 {
			return nil, wrong
		}
		rest = after[1:]
	}
}

// cutName takes one name, bare or quoted, off the front of s.
func cutName(s string) (name, rest string, ok bool) {
	if s == "" {
		return "", "", false
	}
	if s[0] == '"' || s[0] == '\'' {
		end := closing([]byte(s), 0)
		if end < 0 {
			return "", "", false
		}
		name, ok = unquote(s[:end])
		return name, s[end:], ok
	}
	n := 0
	for n < len(s) && bareName.MatchString(s[n:n+1]) {
		n++
	}
	return s[:n], s[n:], n > 0
}

// unquote reads a TOML string of one line.
func unquote(raw string) (string, bool) {
	var doc map[string]any
	if strings.ContainsAny(raw, "\r\n") || toml.Unmarshal([]byte("x = "+raw), &doc) != nil {
		return "", false
	}
	s, ok := doc["x"].(string)
	return s, ok && len(doc) == 1
}

// closing is where the string that begins at i ends, past its last quote; -1
// when it does not.
func closing(b []byte, i int) int {
	q := b[i]
	if i+2 < len(b) && b[i+1] == q && b[i+2] == q {
		for j := i + 3; j+2 < len(b); j++ {
			switch {
			case q == '"' && b[j] == '\\':
				j++
			case b[j] == q && b[j+1] == q && b[j+2] == q:
				for j+3 < len(b) && b[j+3] == q { // quotes may stand before the three that close
					j++
				}
				return j + 3
			}
		}
		return -1
	}
	for j := i + 1; j < len(b) && b[j] != '\n'; j++ {
		switch {
		case q == '"' && b[j] == '\\':
			j++
		case b[j] == q:
			return j + 1
		}
	}
	return -1
}

// below reports whether path is prefix or lies below it.
func below(path, prefix []step) bool {
	if len(path) < len(prefix) {
		return false
	}
	for i, s := range prefix {
		if path[i].name != s.name || (path[i].index != s.index && (s.index >= 0 || i < len(prefix)-1)) {
			return false
		}
	}
	return true
}
