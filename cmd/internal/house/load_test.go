// Package house holds the house in order: it has no code but tests, which read
// the source of every package.
package house

import (
	"go/ast"
	"go/build"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
)

// module is the module's path, root the way from here to its files.
const (
	module = "silowright"
	root   = "../../.."
)

// room is one package: its files as parsed, its types, and what its names
// refer to. Tests is every test file in its directory, parsed alone.
type room struct {
	path  string // import path
	dir   string
	name  string
	files []*ast.File
	tests []*ast.File
	types *types.Package
	info  *types.Info
}

// house is every package of the module, and where each line is.
type house struct {
	fset  *token.FileSet
	rooms map[string]*room
	order []*room
}

var loaded = sync.OnceValues(load)

func wholeHouse(t *testing.T) *house {
	t.Helper()
	h, err := loaded()
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// load parses and types every package. What is not the module's own is read
// from the compiler's export data.
func load() (*house, error) {
	h := &house{fset: token.NewFileSet(), rooms: map[string]*room{}}
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name := d.Name()
		if d.IsDir() && path != root && (strings.HasPrefix(name, ".") || name == "testdata") {
			return fs.SkipDir
		}
		if d.IsDir() || !strings.HasSuffix(name, ".go") {
			return nil
		}
		dir := filepath.Dir(path)
		if ok, err := build.Default.MatchFile(dir, name); !ok || err != nil {
			return err // another system's
		}
		f, err := parser.ParseFile(h.fset, path, nil, parser.ParseComments)
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(root, dir)
		if err != nil {
			return err
		}
		key := module + "/" + filepath.ToSlash(rel)
		r := h.rooms[key]
		if r == nil {
			r = &room{path: key, dir: dir}
			h.rooms[key], h.order = r, append(h.order, r)
		}
		if strings.HasSuffix(name, "_test.go") {
			r.tests = append(r.tests, f)
		} else {
			r.files, r.name = append(r.files, f), f.Name.Name
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	exports, err := exportData()
	if err != nil {
		return nil, err
	}
	foreign := importer.ForCompiler(h.fset, "gc", func(path string) (io.ReadCloser, error) { return os.Open(exports[path]) })
	for _, r := range h.order {
		if _, err := h.check(r, foreign); err != nil {
			return nil, err
		}
	}
	return h, nil
}

// exportData is the compiler's export file of every package that is built in.
func exportData() (map[string]string, error) {
	cmd := exec.Command("go", "list", "-export", "-deps", "-f", "{{.ImportPath}}\t{{.Export}}", "./...")
	cmd.Dir = root
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	if err != nil {
		return nil, err
	}
	list := map[string]string{}
	for _, line := range strings.Split(string(out), "\n") {
		if path, file, ok := strings.Cut(line, "\t"); ok {
			list[path] = file
		}
	}
	return list, nil
}

// check types a package, after those it imports.
func (h *house) check(r *room, foreign types.Importer) (*types.Package, error) {
	if r.types != nil || len(r.files) == 0 {
		return r.types, nil
	}
	r.info = &types.Info{Uses: map[*ast.Ident]types.Object{}, Defs: map[*ast.Ident]types.Object{}, Selections: map[*ast.SelectorExpr]*types.Selection{}}
	conf := types.Config{Importer: importerFunc(func(path string) (*types.Package, error) {
		if own := h.rooms[path]; own != nil {
			return h.check(own, foreign)
		}
		return foreign.Import(path)
	})}
	var err error
	r.types, err = conf.Check(r.path, h.fset, r.files, r.info)
	return r.types, err
}

type importerFunc func(string) (*types.Package, error)

func (f importerFunc) Import(path string) (*types.Package, error) { return f(path) }
