package proof

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// root is the project's top, seen from this package.
const root = "../../.."

// source is one file of the project, read by Go's own parser.
type source struct {
	room string // "geometry/stock"
	file string // within the room
	test bool
	*ast.File
}

// sources reads every Go file below the rooms given; all of the project
// without.
func sources(t *testing.T, rooms ...string) []source {
	t.Helper()
	if len(rooms) == 0 {
		rooms = []string{"."}
	}
	var out []source
	for _, room := range rooms {
		err := filepath.WalkDir(filepath.Join(root, room), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() && (strings.HasPrefix(d.Name(), ".") && len(d.Name()) > 2 || d.Name() == "testdata") {
				if err == nil {
					err = fs.SkipDir
				}
				return err
			}
			if d.IsDir() || !strings.HasSuffix(path, ".go") {
				return nil
			}
			f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ParseComments|parser.SkipObjectResolution)
			if err != nil {
				return err
			}
			rel, err := filepath.Rel(root, path)
			rel = filepath.ToSlash(rel)
			out = append(out, source{room: strings.TrimSuffix(filepath.ToSlash(filepath.Dir(rel)), "/"), file: filepath.Base(rel), test: strings.HasSuffix(rel, "_test.go"), File: f})
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return out
}

// isTest reports whether a function is one that go test runs by -run.
func isTest(f *ast.FuncDecl) bool {
	return f.Recv == nil && f.Name.Name != "TestMain" &&
		(strings.HasPrefix(f.Name.Name, "Test") || strings.HasPrefix(f.Name.Name, "Fuzz") || strings.HasPrefix(f.Name.Name, "Example"))
}

// numbers are the names of the declarations in a file that hold a number: the
// constants and variables of the package with a numeric literal, and functions
// with a fraction in them that tells something.
func numbers(f *ast.File) []string {
	var out []string
	for _, d := range f.Decls {
		switch d := d.(type) {
		case *ast.GenDecl:
			for _, s := range d.Specs {
				v, ok := s.(*ast.ValueSpec)
				if !ok {
					continue
				}
				for i, name := range v.Names {
					value := ast.Node(v)
					if len(v.Values) == len(v.Names) {
						value = v.Values[i]
					}
					if name.Name != "_" && holds(value, func(l *ast.BasicLit) bool { return l.Kind == token.INT || l.Kind == token.FLOAT }) {
						out = append(out, name.Name)
					}
				}
			}
		case *ast.FuncDecl:
			if d.Body != nil && holds(d.Body, tells) {
				out = append(out, d.Name.Name)
			}
		}
	}
	return out
}

func holds(n ast.Node, is func(*ast.BasicLit) bool) bool {
	found := false
	ast.Inspect(n, func(n ast.Node) bool {
		if l, ok := n.(*ast.BasicLit); ok && is(l) {
			found = true
		}
		return !found
	})
	return found
}

// tells reports whether a literal is a fraction that could be a fact of the
// world: no small whole number, half, quarter or power of ten.
func tells(l *ast.BasicLit) bool {
	if l.Kind != token.FLOAT || strings.HasPrefix(l.Value, "1e") || strings.HasPrefix(l.Value, "0x") {
		return false
	}
	v, err := strconv.ParseFloat(l.Value, 64)
	return err == nil && v != 0.25 && v != 0.5 && (v > 4 || v != float64(int(v)))
}
