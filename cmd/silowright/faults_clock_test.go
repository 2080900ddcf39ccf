package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// moody are the things outside the program that its answers may not hang on:
// by import path, the names; nil is the whole package. Types and constants of
// package time are no clock.
var moody = map[string][]string{
	"time": {"Now", "Since", "Until", "After", "AfterFunc", "Tick", "NewTicker", "NewTimer", "Sleep", "Local", "LoadLocation"},
	"os": {"Getenv", "LookupEnv", "Environ", "ExpandEnv", "Hostname", "Getpid", "Getppid", "Getuid", "UserHomeDir",
		"UserCacheDir", "UserConfigDir", "TempDir"},
	"syscall":      {"Getenv", "Environ", "Gettimeofday", "Time", "Getpid"},
	"runtime":      {"NumCPU", "GOMAXPROCS", "NumGoroutine"},
	"math/rand":    nil,
	"math/rand/v2": nil,
	"crypto/rand":  nil,
	"hash/maphash": nil,
	"os/user":      nil,
	"unsafe":       nil,
}

// needed are the uses there are, each with its reason.
var needed = map[string]string{
	"cmd/internal/table: time.NewTimer": "how long a request waits for its turn; no answer hangs on it",
	"cmd/internal/table: crypto/rand":   "the secret in the address for other machines",
	"bom/build: runtime.GOMAXPROCS":     "how many points are worked out at once; each is kept in its own place",
	"render/pdf: runtime.GOMAXPROCS":    "how many pages are compressed at a time; each comes out as it does alone",
	"render/outside: os.Getenv":         "whether a missing program fails a test; no program imports it",
}

// moods lists the moody things that a file uses: "time.Now", and for a whole
// package its path.
func moods(f *ast.File) []string {
	found := map[string]bool{}
	called := map[string]string{} // name in the file → import path
	for _, imp := range f.Imports {
		at, err := strconv.Unquote(imp.Path.Value)
		if err != nil {
			continue
		}
		names, listed := moody[at]
		if !listed {
			continue
		}
		name := path.Base(at)
		if imp.Name != nil {
			name = imp.Name.Name
		}
		if names == nil || name == "." {
			found[at] = true
		}
		called[name] = at
	}
	ast.Inspect(f, func(n ast.Node) bool {
		if s, ok := n.(*ast.SelectorExpr); ok {
			if x, ok := s.X.(*ast.Ident); ok && slices.Contains(moody[called[x.Name]], s.Sel.Name) {
				found[called[x.Name]+"."+s.Sel.Name] = true
			}
		}
		return true
	})
	return slices.Sorted(maps.Keys(found))
}

// No clock, chance, environment or machine in any file that is no test, but
// where the table above says why. A row that nothing needs any more fails too.
func TestNoClockNoChance(t *testing.T) {
	t.Parallel()
	root := filepath.Join("..", "..")
	used, files := map[string]bool{}, 0
	err := filepath.WalkDir(root, func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() {
			if d.Name() == "testdata" || name != root && strings.HasPrefix(d.Name(), ".") {
				return filepath.SkipDir
			}
			return nil
		}
		if !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			return nil
		}
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		files++
		rel, err := filepath.Rel(root, filepath.Dir(name))
		for _, m := range moods(f) {
			use := fmt.Sprintf("%s: %s", filepath.ToSlash(rel), m)
			used[use] = true
			if needed[use] == "" {
				t.Errorf("%s: uses %s; hint: hand it in, or say in this test why it is needed", name, m)
			}
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if files < 100 {
		t.Errorf("%d files read: is this the module?", files)
	}
	for use := range needed {
		if !used[use] {
			t.Errorf("%s: nothing uses it any more; take the row away", use)
		}
	}
}

// The reading above sees what it is to see.
func TestMoods(t *testing.T) {
	t.Parallel()
	for text, want := range map[string][]string{
		`import "time"; var a = time.Now()`:                                     {"time.Now"},
		`import "time"; var a = time.Now`:                                       {"time.Now"},
		`import clock "time"; func f() { go clock.Sleep(clock.Hour) }`:          {"time.Sleep"},
		`import . "time"; var a = Now()`:                                        {"time"},
		`import "math/rand/v2"`:                                                 {"math/rand/v2"},
		`import ("os"; "runtime"); var a, b = os.Getenv("A"), runtime.NumCPU()`: {"os.Getenv", "runtime.NumCPU"},
		`import "time"; var a time.Time; const b = time.Hour`:                   nil,
		`import time "example/clock"; var a = time.Now()`:                       nil,
		`import "os"; var a = os.Args`:                                          nil,
	} {
		f, err := parser.ParseFile(token.NewFileSet(), "a.go", "package a; "+text, 0)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(want, moods(f)); diff != "" {
			t.Errorf("%s (-want +got):\n%s", text, diff)
		}
	}
}
