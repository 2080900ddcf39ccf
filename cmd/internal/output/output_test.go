package output

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func set(pairs ...string) []File {
	var out []File
	for i := 0; i < len(pairs); i += 2 {
		out = append(out, File{pairs[i], []byte(pairs[i+1])})
	}
	return out
}

// tree reads every file below dir; the marker is left out.
func tree(t *testing.T, dir string) map[string]string {
	t.Helper()
	got := map[string]string{}
	err := filepath.WalkDir(dir, func(p string, d os.DirEntry, err error) error {
		if err != nil || !d.Type().IsRegular() || d.Name() == markerName {
			return err
		}
		text, err := os.ReadFile(p)
		rel, _ := filepath.Rel(dir, p)
		got[filepath.ToSlash(rel)] = string(text)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// onlyIn fails when parent holds anything but name: no stray work directories.
func onlyIn(t *testing.T, parent string, names ...string) {
	t.Helper()
	entries, err := os.ReadDir(parent)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, e := range entries {
		got = append(got, e.Name())
	}
	if diff := cmp.Diff(names, got); diff != "" {
		t.Errorf("beside the output (-want +got):\n%s", diff)
	}
}

func wantError(t *testing.T, err error, words string) {
	t.Helper()
	if err == nil || !strings.Contains(err.Error(), words) {
		t.Fatalf("error = %v, want one with %q", err, words)
	}
	if strings.Contains(err.Error(), "\n") || !strings.Contains(err.Error(), "; hint: ") {
		t.Errorf("%q is not one line with a hint", err)
	}
}

func TestReplaceMakesAndReplaces(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "pack")
	if err := Replace(dir, set("a.txt", "1", "templates/b.svg", "2")); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(map[string]string{"a.txt": "1", "templates/b.svg": "2"}, tree(t, dir)); diff != "" {
		t.Error(diff)
	}
	if err := Replace(dir, set("a.txt", "3")); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(map[string]string{"a.txt": "3"}, tree(t, dir)); diff != "" {
		t.Errorf("the earlier set's files must go: %s", diff)
	}
	onlyIn(t, parent, "pack")
}

func TestReplaceTakesAnEmptyDirectory(t *testing.T) {
	dir := t.TempDir()
	if err := Replace(dir, set("a.txt", "1")); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(map[string]string{"a.txt": "1"}, tree(t, dir)); diff != "" {
		t.Error(diff)
	}
}

func TestReplaceRefuses(t *testing.T) {
	write := func(name, text string) func(*testing.T, string) {
		return func(t *testing.T, parent string) {
			p := filepath.Join(parent, name)
			if err := os.MkdirAll(filepath.Dir(p), 0o777); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(p, []byte(text), 0o666); err != nil {
				t.Fatal(err)
			}
		}
	}
	ours := func(t *testing.T, parent string) {
		if err := Replace(filepath.Join(parent, "pack"), set("a.txt", "1")); err != nil {
			t.Fatal(err)
		}
	}
	for _, c := range []struct {
		reason string
		ready  []func(*testing.T, string)
		dir    string
		want   string
	}{
		{"a file stands there", []func(*testing.T, string){write("pack", "mine")}, "pack", "is a file, not a directory"},
		{"someone's own directory", []func(*testing.T, string){write("pack/thesis.txt", "mine")}, "pack", "holds files this program did not write"},
		{"a marker of someone else", []func(*testing.T, string){write("pack/"+markerName, "hello\n")}, "pack", "holds files this program did not write"},
		{"a note put into our pack", []func(*testing.T, string){ours, write("pack/notes.txt", "mine")}, "pack", "holds notes.txt"},
		{"a note deeper in our pack", []func(*testing.T, string){ours, write("pack/x/notes.txt", "mine")}, "pack", "holds " + filepath.Join("x", "notes.txt")},
		{"parent missing", nil, "no/pack", "does not exist; hint: make "},
		{"parent is a file", []func(*testing.T, string){write("no", "mine")}, "no/pack", "is a file"},
		{"a link to nothing", []func(*testing.T, string){func(t *testing.T, parent string) {
			if err := os.Symlink("gone", filepath.Join(parent, "pack")); err != nil {
				t.Skip(err)
			}
		}}, "pack", "is a link to nothing"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			parent := t.TempDir()
			for _, f := range c.ready {
				f(t, parent)
			}
			before := tree(t, parent)
			err := Replace(filepath.Join(parent, c.dir), set("a.txt", "2"))
			wantError(t, err, c.want)
			if diff := cmp.Diff(before, tree(t, parent)); diff != "" {
				t.Errorf("refused, yet changed (-before +after):\n%s", diff)
			}
		})
	}
	wantError(t, Replace("", nil), "has no name")
	wantError(t, Replace(" ", nil), "has no name")
	wantError(t, Replace("a\x00b", nil), "zero byte")
}

func TestReplaceRefusesTheDirectoryOneIsIn(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	wantError(t, Replace(".", set("a.txt", "1")), "is the directory you are in")
}

// A set whose names collide on disk fails half way; the earlier set must stay.
func TestReplaceKeepsTheOldOneOnFailure(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "pack")
	if err := Replace(dir, set("a.txt", "1")); err != nil {
		t.Fatal(err)
	}
	wantError(t, Replace(dir, set("b", "2", "b/c.txt", "3")), "nothing was changed")
	if diff := cmp.Diff(map[string]string{"a.txt": "1"}, tree(t, dir)); diff != "" {
		t.Error(diff)
	}
	onlyIn(t, parent, "pack")
}

// twoRenames moves names as a system without an exchange does.
var twoRenames = mover{os.Rename, func(_, _ string) error { return errors.ErrUnsupported }}

// The second rename of the swap fails: the earlier set must come back.
func TestSwapPutsTheOldOneBack(t *testing.T) {
	parent := t.TempDir()
	target := filepath.Join(parent, "pack")
	if err := Replace(target, set("a.txt", "1")); err != nil {
		t.Fatal(err)
	}
	m := twoRenames
	m.rename = func(from, to string) error {
		if filepath.Base(from) == workNew {
			return errors.New("no")
		}
		return os.Rename(from, to)
	}
	wantError(t, m.replace(target, set("a.txt", "2")), "nothing was changed")
	if diff := cmp.Diff(map[string]string{"a.txt": "1"}, tree(t, target)); diff != "" {
		t.Error(diff)
	}
	onlyIn(t, parent, "pack")
}

// Somebody puts a file into the earlier set between the look and the swap: it
// must be there afterwards, with the earlier set.
func TestReplaceKeepsWhatComesMeanwhile(t *testing.T) {
	for name, m := range map[string]mover{"exchange": system, "two renames": twoRenames} {
		for _, before := range []map[string]string{{"a.txt": "1"}, {}} {
			t.Run(fmt.Sprint(name, len(before)), func(t *testing.T) {
				parent := t.TempDir()
				target := filepath.Join(parent, "pack")
				if err := os.Mkdir(target, 0o777); err != nil {
					t.Fatal(err)
				}
				want := map[string]string{"notes.txt": "mine"}
				for k, v := range before {
					want[k] = v
					if err := Replace(target, set(k, v)); err != nil {
						t.Fatal(err)
					}
				}
				swap := m.exchange
				once := false
				m.exchange = func(a, b string) error {
					if !once {
						once = true
						if err := os.WriteFile(filepath.Join(target, "notes.txt"), []byte("mine"), 0o666); err != nil {
							t.Fatal(err)
						}
					}
					return swap(a, b)
				}
				wantError(t, m.replace(target, set("a.txt", "2")), "a file was put into it meanwhile")
				if diff := cmp.Diff(want, tree(t, target)); diff != "" {
					t.Error(diff)
				}
				onlyIn(t, parent, "pack")
			})
		}
	}
}

func TestReadOnlyParent(t *testing.T) {
	if os.Geteuid() == 0 {
		t.Skip("root may write anywhere")
	}
	parent := t.TempDir()
	if err := os.Chmod(parent, 0o555); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.Chmod(parent, 0o755) })
	wantError(t, Replace(filepath.Join(parent, "pack"), set("a.txt", "1")), "nothing can be written beside it")
	wantError(t, Create(filepath.Join(parent, "pack"), set("a.txt", "1")), "nothing can be written beside it")
}

func TestNamesOfTheSet(t *testing.T) {
	for _, name := range []string{"", ".", "../a", "/a", "a/../b", `a\b`, "a//b", markerName, strings.ToUpper(markerName)} {
		if err := Replace(filepath.Join(t.TempDir(), "pack"), set(name, "x")); err == nil {
			t.Errorf("%q was taken for a file's name", name)
		}
	}
	if err := Replace(filepath.Join(t.TempDir(), "pack"), set("a", "x", "A", "y")); err == nil {
		t.Error("two names that differ in case alone were taken")
	}
}

func TestCreate(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "mine")
	files := set("job.toml", "1", "prices.csv", "2")
	if err := Create(dir, files); err != nil {
		t.Fatal(err)
	}
	want := map[string]string{"job.toml": "1", "prices.csv": "2"}
	if diff := cmp.Diff(want, tree(t, dir)); diff != "" {
		t.Error(diff)
	}
	onlyIn(t, parent, "mine")
	wantError(t, Create(dir, set("job.toml", "9")), "is not overwritten")
	if diff := cmp.Diff(want, tree(t, dir)); diff != "" {
		t.Error(diff)
	}
	if err := Create(dir, set("more.txt", "3")); err != nil {
		t.Fatalf("a directory that holds other files is fine: %v", err)
	}
	wantError(t, Create(filepath.Join(dir, "job.toml"), files), "is a file")
	wantError(t, Create(filepath.Join(parent, "no", "mine"), files), "does not exist")
}

// One of the files cannot be written: those before it are taken back.
func TestCreateTakesBack(t *testing.T) {
	dir := t.TempDir()
	wantError(t, Create(dir, set("b", "2", "b/c.txt", "3")), "cannot be written")
	if got := tree(t, dir); len(got) > 0 {
		t.Errorf("left behind: %v", got)
	}
}
