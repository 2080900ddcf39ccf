package output

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// What stands beside a target under the name of a work directory: what is
// this program's own goes, or comes back; all else stays as it is.
func TestTidy(t *testing.T) {
	head := workText("pack")
	pack := string(marker(set("a.txt", "")).Data)
	for _, c := range []struct {
		reason string
		files  map[string]string // below the work directory; a name that ends in / is a directory
		stays  bool
		back   bool // the set set aside stands at its place again
	}{
		{"killed before the marker", map[string]string{}, false, false},
		{"the marker empty", map[string]string{workMarker: ""}, false, false},
		{"the marker cut in its head", map[string]string{workMarker: head[:20]}, false, false},
		{"the marker cut behind its head", map[string]string{workMarker: workHead + `"`}, false, false},
		{"the marker cut in the name", map[string]string{workMarker: head[:len(head)-3]}, false, false},
		{"nothing built", map[string]string{workMarker: head}, false, false},
		{"a set half built", map[string]string{workMarker: head, "new/" + markerName: pack}, false, false},
		{"a set's marker half written", map[string]string{workMarker: head, "new/" + markerName: pack[:30]}, false, false},
		{"a single file", map[string]string{workMarker: head, "new": "text"}, false, false},
		{"an earlier set half taken away", map[string]string{workMarker: head, "new/a.txt": "1"}, false, false},
		{"between two renames", map[string]string{workMarker: head, "new/" + markerName: pack, "new/a.txt": "2", "old/" + markerName: pack, "old/a.txt": "1"}, false, true},

		{"no marker", map[string]string{"new/a.txt": "1"}, true, false},
		{"a marker of someone else", map[string]string{workMarker: "hello"}, true, false},
		{"a marker with more behind it", map[string]string{workMarker: head + "and so on"}, true, false},
		{"a cut marker, yet something built", map[string]string{workMarker: head[:20], "new/a.txt": "1"}, true, false},
		{"a name that leads out", map[string]string{workMarker: workText("../x"), "old/a.txt": "1"}, true, false},
		{"a name that is none", map[string]string{workMarker: workText(".."), "old/a.txt": "1"}, true, false},
		{"a file of somebody", map[string]string{workMarker: head, "notes.txt": "mine"}, true, false},
		{"a directory of somebody", map[string]string{workMarker: head, "mine/": ""}, true, false},
		{"a note in the earlier set", map[string]string{workMarker: head, "new/" + markerName: pack, "new/notes.txt": "mine"}, true, false},
	} {
		t.Run(c.reason, func(t *testing.T) {
			parent := t.TempDir()
			at := filepath.Join(parent, ".silowright-123")
			if err := os.Mkdir(at, 0o777); err != nil {
				t.Fatal(err)
			}
			for name, text := range c.files {
				p := filepath.Join(at, filepath.FromSlash(name))
				if strings.HasSuffix(name, "/") {
					if err := os.MkdirAll(p, 0o777); err != nil {
						t.Fatal(err)
					}
					continue
				}
				if err := os.MkdirAll(filepath.Dir(p), 0o777); err != nil {
					t.Fatal(err)
				}
				if err := os.WriteFile(p, []byte(text), 0o666); err != nil {
					t.Fatal(err)
				}
			}
			before := tree(t, at)
			tidy(parent)
			switch {
			case c.stays:
				onlyIn(t, parent, ".silowright-123")
				if after := tree(t, at); len(after) != len(before) {
					t.Errorf("not ours, yet changed: %v, then %v", before, after)
				}
			case c.back:
				onlyIn(t, parent, "pack")
				if got := tree(t, filepath.Join(parent, "pack")); got["a.txt"] != "1" {
					t.Errorf("put back: %v", got)
				}
			default:
				onlyIn(t, parent)
			}
		})
	}
}

// A work directory whose process lives stays, and so does what only has such a
// name: a file, a link.
func TestTidyLeavesTheLiving(t *testing.T) {
	parent, other := t.TempDir(), t.TempDir()
	w, err := openWork("pack", parent, "pack")
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(w.fresh(), []byte("half"), 0o666); err != nil {
		t.Fatal(err)
	}
	file, link := filepath.Join(parent, ".silowright-file"), filepath.Join(parent, ".silowright-link")
	if err := os.WriteFile(file, nil, 0o666); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(other, link); err != nil {
		t.Skip(err)
	}
	// another run writes beside it
	if err := Replace(filepath.Join(parent, "pack"), set("a.txt", "1")); err != nil {
		t.Fatal(err)
	}
	if got, err := os.ReadFile(w.fresh()); err != nil || string(got) != "half" {
		t.Errorf("the living one lost its file: %q, %v", got, err)
	}
	at := filepath.Base(w.at)
	w.close()
	names := []string{".silowright-file", ".silowright-link", "pack"}
	onlyIn(t, parent, names...)
	if strings.Contains(strings.Join(names, " "), at) {
		t.Fatal("the work directory has the name of another")
	}
}

// Two runs into one directory at the same time: both do their work, the set is
// whole, and nothing is left.
func TestTwoAtOnce(t *testing.T) {
	if !exchanges(t) {
		t.Skip("with two renames one of them may find nothing there, and is refused")
	}
	parent := t.TempDir()
	target := filepath.Join(parent, "pack")
	if err := Replace(target, generation(1)); err != nil {
		t.Fatal(err)
	}
	done := make(chan error)
	for k := range 2 {
		go func() {
			var err error
			for g := 2 + k; g < 20 && err == nil; g += 2 {
				err = Replace(target, generation(g))
			}
			done <- err
		}()
	}
	for range 2 {
		if err := <-done; err != nil {
			t.Error(err)
		}
	}
	wholeSet(t, target)
	onlyIn(t, parent, "pack")
}
