package output

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// The marker tells a set this program wrote from a directory of someone's own.
const (
	markerName = ".silowright-pack"
	markerHead = "This directory is written by silowright and replaced as a whole. Its files:"
)

// marker lists files by name, sorted.
func marker(files []File) File {
	names := make([]string, 0, len(files))
	for _, f := range files {
		names = append(names, f.Name)
	}
	slices.Sort(names)
	return File{markerName, []byte(markerHead + "\n" + strings.Join(names, "\n") + "\n")}
}

// replaceable reports whether something stands at target that Replace may take
// away, and fails when what stands there is not its own. Where another run
// puts a set there meanwhile, it looks again.
func replaceable(dir, target string) (old bool, err error) {
	for range 20 {
		before, _ := os.Lstat(target)
		if old, err = look(dir, target); err == nil {
			break
		}
		after, _ := os.Lstat(target)
		if before == nil && after == nil || before != nil && after != nil && os.SameFile(before, after) && before.ModTime().Equal(after.ModTime()) {
			break
		}
	}
	return old, err
}

// look is one look at what stands at target.
func look(dir, target string) (bool, error) {
	info, err := os.Lstat(target)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return false, nil
	case err != nil:
		return false, fmt.Errorf("%s: %w; hint: %s", dir, reason(err), wayOut(err, "name another directory"))
	case !info.IsDir():
		return false, notDirectory(dir)
	}
	if here, err := os.Getwd(); err == nil && within(here, target) {
		return false, fmt.Errorf("%s: is the directory you are in, which is not replaced; hint: name a directory below it, as in shop-pack", dir)
	}
	entries, err := os.ReadDir(target)
	if err != nil {
		return false, fmt.Errorf("%s: cannot be looked into: %w; hint: %s", dir, reason(err), wayOut(err, "name another directory"))
	}
	if len(entries) == 0 {
		return true, nil
	}
	known, ours, err := markerOf(target)
	if err != nil || !ours {
		return false, fmt.Errorf("%s: holds files this program did not write and is not replaced; hint: name another directory", dir)
	}
	return true, onlyKnown(dir, target, known)
}

// markerOf reads the marker of a set: the files that may be in it, and whether
// it is this program's marker at all.
func markerOf(set string) (known map[string]bool, ours bool, err error) {
	text, err := os.ReadFile(filepath.Join(set, markerName))
	if err != nil {
		return nil, false, err
	}
	names, ours := strings.CutPrefix(string(text), markerHead+"\n")
	known = map[string]bool{markerName: true}
	for name := range strings.Lines(names) {
		known[strings.TrimSuffix(name, "\n")] = true
	}
	return known, ours, nil
}

// onlyKnown fails for the first file below target that known does not list.
func onlyKnown(dir, target string, known map[string]bool) error {
	return filepath.WalkDir(target, func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return fmt.Errorf("%s: cannot be looked into: %w; hint: %s", dir, reason(err), wayOut(err, "name another directory"))
		}
		rel, err := filepath.Rel(target, name)
		if err != nil {
			return err
		}
		if !d.IsDir() && !known[filepath.ToSlash(rel)] {
			return fmt.Errorf("%s: holds %s, which this program did not write, and is not replaced; hint: move that file away, or name another directory", dir, rel)
		}
		return nil
	})
}

// within reports whether name is dir or lies below it.
func within(name, dir string) bool {
	rel, err := filepath.Rel(dir, name)
	return err == nil && rel != ".." && !strings.HasPrefix(rel, ".."+string(filepath.Separator))
}
