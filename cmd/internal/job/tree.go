package job

import (
	"bytes"
	"errors"
	"fmt"
	"sort"
	"strings"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"
)

// maxSize bounds a job file; a hand-written one is a few kilobytes.
const maxSize = 256 << 10

// table is a TOML table together with the place it was written at.
type table struct {
	path  string // "drum[1].lattice"; empty at the top
	items map[string]any
	lines lines
}

// lines finds the line a key stands on, by its path.
type lines map[string]int

// decode reads TOML and remembers where every key stands.
func decode(file string, data []byte) (table, *Error) {
	if len(data) > maxSize {
		return table{}, &Error{File: file, Why: fmt.Sprintf("is larger than %d kB", maxSize>>10), Hint: "is it a job file at all?"}
	}
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	if !utf8.Valid(data) {
		return table{}, &Error{File: file, Why: "is not UTF-8 text", Hint: "save it as UTF-8, without formatting"}
	}
	items := map[string]any{}
	if err := toml.Unmarshal(data, &items); err != nil {
		e := &Error{File: file, Why: strings.TrimPrefix(err.Error(), "toml: "),
			Hint: `a line reads key = number or key = "text"; a section begins with [name]`}
		var at *toml.DecodeError
		if errors.As(err, &at) {
			e.Line, _ = at.Position()
			e.Key = strings.Join(at.Key(), ".")
		}
		return table{}, e
	}
	return table{items: items, lines: index(data)}, nil
}

// index lists the line of every key of a document that decode accepted.
func index(data []byte) lines {
	found := lines{}
	entries := map[string]int{} // how often [[name]] was seen
	var p unstable.Parser
	p.Reset(data)
	lineOf := func(n *unstable.Node) int {
		return 1 + bytes.Count(data[:min(int(n.Raw.Offset), len(data))], []byte("\n"))
	}
	// join lengthens path by the dotted key it walks, noting each step.
	join := func(path string, key unstable.Iterator) (string, int) {
		line := 0
		for key.Next() {
			n := key.Node()
			line = lineOf(n)
			path = child(path, string(n.Data))
			found.note(path, line)
			if count := entries[path]; count > 0 {
				path = entry(path, count-1)
			}
			found.note(path, line)
		}
		return path, line
	}
	var walk func(path string, line int, n *unstable.Node)
	walk = func(path string, line int, n *unstable.Node) {
		switch n.Kind {
		case unstable.InlineTable:
			for it := n.Children(); it.Next(); {
				kv := it.Node()
				if kv.Kind != unstable.KeyValue {
					continue
				}
				inner, at := join(path, kv.Key())
				walk(inner, at, kv.Value())
			}
		case unstable.Array:
			i := 0
			for it := n.Children(); it.Next(); {
				v := it.Node()
				if v.Kind == unstable.Comment {
					continue
				}
				if v.Raw.Length > 0 {
					line = lineOf(v)
				}
				inner := entry(path, i)
				found.note(inner, line)
				walk(inner, line, v)
				i++
			}
		}
	}
	section := ""
	for p.NextExpression() {
		switch e := p.Expression(); e.Kind {
		case unstable.Table:
			section, _ = join("", e.Key())
		case unstable.ArrayTable:
			section = arraySection(e, join, entries, found)
		case unstable.KeyValue:
			path, line := join(section, e.Key())
			walk(path, line, e.Value())
		}
	}
	return found
}

// arraySection counts one more [[name]] and returns its path.
func arraySection(e *unstable.Node, join func(string, unstable.Iterator) (string, int), entries map[string]int, found lines) string {
	var names []string
	for it := e.Key(); it.Next(); {
		names = append(names, string(it.Node().Data))
	}
	path := ""
	for i, name := range names {
		path = child(path, name)
		if i == len(names)-1 {
			entries[path]++
		}
		if count := entries[path]; count > 0 {
			path = entry(path, count-1)
		}
	}
	_, line := join("", e.Key())
	found.note(path, line)
	return path
}

// note keeps the first line a path is seen on.
func (l lines) note(path string, line int) {
	if _, seen := l[path]; !seen {
		l[path] = line
	}
}

// of returns the line of path or, when that was never written, of the nearest
// table round it.
func (l lines) of(path string) int {
	for path != "" {
		if n, ok := l[path]; ok {
			return n
		}
		cut := strings.LastIndexAny(path, ".[")
		if cut < 0 {
			break
		}
		path = path[:cut]
	}
	return 0
}

func child(path, name string) string {
	if strings.ContainsAny(name, ".[]") { // a quoted key must not look like two
		name = unlikeTwo.Replace(name)
	}
	if name == "" {
		name = `""`
	}
	if path == "" {
		return name
	}
	return path + "." + name
}

var unlikeTwo = strings.NewReplacer(".", "·", "[", "(", "]", ")")

func entry(path string, i int) string { return fmt.Sprintf("%s[%d]", path, i) }

// at returns the path of the table's own key.
func (t table) at(key string) string { return child(t.path, key) }

// keys lists the table's keys in the order they are written.
func (t table) keys() []string {
	names := make([]string, 0, len(t.items))
	for k := range t.items {
		names = append(names, k)
	}
	sort.Slice(names, func(i, j int) bool {
		a, b := t.lines.of(t.at(names[i])), t.lines.of(t.at(names[j]))
		if a != b {
			return a < b
		}
		return names[i] < names[j]
	})
	return names
}
