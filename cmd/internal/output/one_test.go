package output

import (
	"os"
	"path/filepath"
	"testing"
)

// Write puts one file in another's place: all of it or nothing, its
// permissions kept, nothing left beside it, and no link followed.
func TestWrite(t *testing.T) {
	dir := t.TempDir()
	name, link, target := filepath.Join(dir, "a.toml"), filepath.Join(dir, "link.toml"), filepath.Join(dir, "target")
	for _, text := range []string{"one", "two, longer", ""} {
		if err := Write(name, []byte(text)); err != nil {
			t.Fatal(err)
		}
		if got, err := os.ReadFile(name); err != nil || string(got) != text {
			t.Errorf("holds %q, %v; want %q", got, err, text)
		}
	}
	if err := os.Chmod(name, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := Write(name, []byte("x")); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Stat(name); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("permissions %v, %v", info.Mode(), err)
	}
	if err := os.WriteFile(target, []byte("mine"), 0o666); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(target, link); err != nil {
		t.Fatal(err)
	}
	for _, bad := range []string{link, dir, filepath.Join(dir, "no", "such")} {
		if err := Write(bad, []byte("x")); err == nil {
			t.Errorf("%s was written", bad)
		}
	}
	if got, _ := os.ReadFile(target); string(got) != "mine" {
		t.Error("a link was followed")
	}
	entries, err := os.ReadDir(dir)
	if err != nil || len(entries) != 3 {
		t.Errorf("left behind: %v, %v", entries, err)
	}
}
