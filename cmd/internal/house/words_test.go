package house

import (
	"go/ast"
	"go/doc"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// Each package says in one comment what it is for, and everything it exports
// says what it is. Fields and constants may be said by the line they stand on
// or by their group.
func TestEveryExportedThingIsSaid(t *testing.T) {
	for _, r := range wholeHouse(t).order {
		if len(r.files) == 0 {
			continue
		}
		var says int
		for _, f := range r.files {
			if f.Doc != nil {
				says++
			}
		}
		if says != 1 {
			t.Errorf("%s: %d package comments, want one", r.path, says)
		}
		// go/doc alters what it reads: a reading of its own
		fset := token.NewFileSet()
		var files []*ast.File
		for _, f := range r.files {
			name := wholeHouse(t).fset.Position(f.Pos()).Filename
			again, err := parser.ParseFile(fset, name, nil, parser.ParseComments)
			if err != nil {
				t.Fatal(err)
			}
			files = append(files, again)
		}
		p, err := doc.NewFromFiles(fset, files, r.path)
		if err != nil {
			t.Fatal(err)
		}
		said := func(kind, name, words string) {
			if strings.TrimSpace(words) == "" {
				t.Errorf("%s: %s %s has no comment", r.path, kind, name)
			}
		}
		if r.name != "main" && !strings.HasPrefix(p.Doc, "Package "+r.name+" ") {
			t.Errorf("%s: its comment begins %.40q", r.path, p.Doc)
		}
		values := func(list []*doc.Value) {
			for _, v := range list {
				for _, s := range v.Decl.Specs {
					s := s.(*ast.ValueSpec)
					if v.Doc == "" && s.Doc == nil && s.Comment == nil {
						said("value", s.Names[0].Name, "")
					}
				}
			}
		}
		funcs := func(of string, list []*doc.Func) {
			for _, f := range list {
				said("func", of+f.Name, f.Doc)
			}
		}
		values(p.Consts)
		values(p.Vars)
		funcs("", p.Funcs)
		for _, u := range p.Types {
			said("type", u.Name, u.Doc)
			values(u.Consts)
			values(u.Vars)
			funcs("", u.Funcs)
			for _, m := range u.Methods {
				if !slices.Contains(called, m.Name) {
					said("method", u.Name+"."+m.Name, m.Doc)
				}
			}
		}
	}
}

// What DEVELOPERS.md names is there, and every package is a room of its table.
func TestDevelopersMapHolds(t *testing.T) {
	b, err := os.ReadFile(filepath.Join(root, "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	text := string(b)
	named := 0
	for _, m := range regexp.MustCompile("`([a-z]+(?:/[a-z0-9_-]+)*\\.(?:go|csv|txtar|js))`").FindAllStringSubmatch(text, -1) {
		if !strings.Contains(m[1], "/") {
			continue // beside one that is named in full
		}
		named++
		if _, err := os.Stat(filepath.Join(root, m[1])); err != nil {
			t.Errorf("DEVELOPERS.md names %s, which is not there", m[1])
		}
	}
	if named < 20 {
		t.Errorf("only %d files found in DEVELOPERS.md", named)
	}
	for _, r := range wholeHouse(t).order {
		if room := strings.TrimPrefix(r.path, module+"/"); len(r.files) > 0 && !strings.Contains(text, "`"+room+"`") {
			t.Errorf("DEVELOPERS.md has no room %s", room)
		}
	}
}

// The rooms that work things out ask nothing of the machine: no files, no
// clock, no network, no chance.
func TestPureRooms(t *testing.T) {
	for _, r := range wholeHouse(t).order {
		room := strings.TrimPrefix(r.path, module+"/")
		top, _, _ := strings.Cut(room, "/")
		if !slices.Contains([]string{"geometry", "bom", "nursery"}, top) {
			continue
		}
		for _, f := range r.files {
			for _, i := range f.Imports {
				switch path := strings.Trim(i.Path.Value, `"`); {
				case slices.Contains([]string{"os", "os/exec", "net", "net/http", "math/rand", "math/rand/v2", "crypto/rand", "log", "syscall", "unsafe"}, path):
					t.Errorf("%s imports %s", room, path)
				case strings.HasPrefix(path, module+"/render"), strings.HasPrefix(path, module+"/cmd"):
					t.Errorf("%s asks %s, which lies downstream", room, path)
				case top == "geometry" && (strings.HasPrefix(path, module+"/bom") || strings.HasPrefix(path, module+"/nursery")):
					t.Errorf("%s asks %s, which lies downstream", room, path)
				}
			}
			ast.Inspect(f, func(n ast.Node) bool {
				if s, ok := n.(*ast.SelectorExpr); ok {
					if x, ok := s.X.(*ast.Ident); ok && x.Name == "time" && slices.Contains([]string{"Now", "Since", "Until", "Sleep", "After", "Tick"}, s.Sel.Name) {
						t.Errorf("%s reads the clock: time.%s", room, s.Sel.Name)
					}
				}
				return true
			})
		}
	}
}

// mostLines is how long a file is without a reason, about 400: a tenth more is
// still about. long are those with a reason.
const mostLines = 440

var long = map[string]string{}

func TestFilesAreShort(t *testing.T) {
	for _, r := range wholeHouse(t).order {
		for _, f := range append(slices.Clone(r.files), r.tests...) {
			at := wholeHouse(t).fset.Position(f.FileEnd)
			name := strings.TrimPrefix(filepath.ToSlash(at.Filename), root+"/")
			if at.Line > mostLines+1 && long[name] == "" {
				t.Errorf("%s has %d lines: split it by purpose", name, at.Line)
			}
			for _, vague := range []string{"util", "utils", "misc", "common", "helpers", "stuff", "various"} {
				if base := strings.TrimSuffix(filepath.Base(name), ".go"); base == vague || base == vague+"_test" {
					t.Errorf("%s: name it for what it holds", name)
				}
			}
		}
	}
}

// The page's scripts import no circle: each may be read before those that use
// it.
func TestScriptsRunOneWay(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(root, "cmd/internal/table/web/*.js"))
	if err != nil || len(files) < 10 {
		t.Fatalf("%d scripts, %v", len(files), err)
	}
	uses := map[string][]string{}
	for _, f := range files {
		b, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range regexp.MustCompile(`(?m)^import [^"]*"\./([a-z]+\.js)"`).FindAllStringSubmatch(string(b), -1) {
			uses[filepath.Base(f)] = append(uses[filepath.Base(f)], m[1])
		}
	}
	const open, done = 1, 2
	state := map[string]int{}
	var visit func(way []string)
	visit = func(way []string) {
		at := way[len(way)-1]
		switch state[at] {
		case open:
			t.Errorf("scripts in a circle: %s", strings.Join(way, " → "))
		case 0:
			state[at] = open
			for _, next := range uses[at] {
				visit(append(slices.Clone(way), next))
			}
			state[at] = done
		}
	}
	for _, f := range files {
		visit([]string{filepath.Base(f)})
	}
}
