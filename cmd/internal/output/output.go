// Package output puts a set of files into a directory as one act: either all
// of them are there afterwards, or nothing has changed. It never takes away a
// file that this program did not write.
package output

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
	"syscall"
)

// File is one file of a set. Name is relative, with forward slashes:
// "templates/a-lattice.svg".
type File struct {
	Name string
	Data []byte
}

// Replace makes dir hold exactly files, and a marker that lists them. dir may
// be absent, empty or an earlier set that Replace wrote and nobody added to;
// anything else is refused. The set is built beside dir, written through to
// the disk and moved in by name: in one step where the system has one, else
// dir is absent for an instant, and the next run puts the earlier set back if
// this one dies in it. What a killed run left beside dir is taken away first.
func Replace(dir string, files []File) error { return system.replace(dir, files) }

func (m mover) replace(dir string, files []File) error {
	target, parent, err := begin(dir, files)
	if err != nil {
		return err
	}
	old, err := replaceable(dir, target)
	if err != nil {
		return err
	}
	w, err := openWork(dir, parent, filepath.Base(target))
	if err != nil {
		return err
	}
	defer w.close()
	if err := build(w.fresh(), append([]File{marker(files)}, files...)); err != nil {
		return unwritten(dir, err)
	}
	went, err := m.swap(target, w, old)
	if err != nil {
		return fmt.Errorf("%s: cannot be replaced: %w; hint: nothing was changed; close programs that have its files open", dir, reason(err))
	}
	syncDir(parent)
	if went != "" && touched(went) {
		back := m.swapBack(target, w, went)
		return errors.Join(fmt.Errorf("%s: a file was put into it meanwhile, and it is not replaced; hint: move that file away, or name another directory", dir), back)
	}
	return nil
}

// unwritten says that a set or file could not be built.
func unwritten(dir string, err error) error {
	return fmt.Errorf("%s: cannot be written: %w; hint: nothing was changed; %s", dir, reason(err), wayOut(err, "is the disk full?"))
}

// wayOut is what to do about an error: usual, unless handles ran out.
func wayOut(err error, usual string) string {
	if errors.Is(err, syscall.EMFILE) || errors.Is(err, syscall.ENFILE) {
		return "close some programs, and run this again"
	}
	return usual
}

// begin looks at the names of a set of files and where it goes, and takes away
// what a killed run left there.
func begin(dir string, files []File) (target, parent string, err error) {
	if err := checkNames(files); err != nil {
		return "", "", err
	}
	if target, parent, err = locate(dir); err == nil {
		tidy(parent)
	}
	return target, parent, err
}

// Create writes files into dir, which it makes when it is absent. It refuses
// when any of them is there already, and takes back what it wrote when one
// cannot be written. A process killed in it leaves each file whole or absent;
// all of them or none only where it makes the directory.
func Create(dir string, files []File) error {
	target, parent, err := begin(dir, files)
	if err != nil {
		return err
	}
	tidy(target)
	info, err := os.Stat(target)
	switch {
	case err == nil && !info.IsDir():
		return notDirectory(dir)
	case err == nil:
		return addTo(dir, target, files)
	}
	w, err := openWork(dir, parent, filepath.Base(target))
	if err != nil {
		return err
	}
	defer w.close()
	if err := build(w.fresh(), files); err != nil {
		return unwritten(dir, err)
	}
	if err := os.Rename(w.fresh(), target); err != nil {
		return fmt.Errorf("%s: cannot be made: %w; hint: nothing was changed; name another directory", dir, reason(err))
	}
	syncDir(parent)
	return nil
}

// addTo writes files into a directory that is there.
func addTo(dir, target string, files []File) error {
	for _, f := range files {
		if _, err := os.Lstat(filepath.Join(target, filepath.FromSlash(f.Name))); err == nil {
			return fmt.Errorf("%s: is there already and is not overwritten; hint: name another directory, or move the file away",
				filepath.Join(dir, filepath.FromSlash(f.Name)))
		}
	}
	w, err := openWork(dir, target, filepath.Base(target))
	if err != nil {
		return err
	}
	defer w.close()
	if err := build(w.fresh(), files); err != nil {
		return unwritten(dir, err)
	}
	var made []string
	for _, f := range files {
		rel := filepath.FromSlash(f.Name)
		name := filepath.Join(target, rel)
		err := os.MkdirAll(filepath.Dir(name), 0o777)
		if err == nil {
			err = moveIn(filepath.Join(w.fresh(), rel), name)
		}
		if err == nil {
			made = append(made, name)
			continue
		}
		for _, m := range made {
			os.Remove(m)
		}
		return fmt.Errorf("%s: cannot be written: %w; hint: nothing was changed; look at the directory's permissions", filepath.Join(dir, rel), reason(err))
	}
	syncDir(target)
	return nil
}

// moveIn gives a file its name, and fails when the name is taken.
func moveIn(from, name string) error {
	err := os.Link(from, name)
	if err == nil || errors.Is(err, fs.ErrExist) {
		return err
	}
	// not every disk has links
	if _, err := os.Lstat(name); !errors.Is(err, fs.ErrNotExist) {
		return fs.ErrExist
	}
	return os.Rename(from, name)
}

// locate returns the real place of dir and the directory it stands in.
func locate(dir string) (target, parent string, err error) {
	if strings.TrimSpace(dir) == "" {
		return "", "", errors.New("the output directory has no name; hint: name one, as in shop-pack")
	}
	if strings.ContainsRune(dir, 0) {
		return "", "", errors.New("the output directory's name holds a zero byte; hint: name one, as in shop-pack")
	}
	if target, err = filepath.Abs(dir); err != nil {
		return "", "", fmt.Errorf("%s: %w; hint: %s", dir, reason(err), wayOut(err, "name another directory"))
	}
	if info, err := os.Lstat(target); err == nil && info.Mode()&fs.ModeSymlink != 0 {
		if target, err = filepath.EvalSymlinks(target); err != nil {
			return "", "", fmt.Errorf("%s: is a link to nothing; hint: name another directory", dir)
		}
	}
	parent = filepath.Dir(target)
	switch info, err := os.Stat(parent); {
	case errors.Is(err, fs.ErrNotExist):
		return "", "", fmt.Errorf("%s: the directory it would stand in does not exist; hint: make %s first", dir, filepath.Dir(filepath.Clean(dir)))
	case err != nil:
		return "", "", fmt.Errorf("%s: %w; hint: %s", dir, reason(err), wayOut(err, "name another directory"))
	case !info.IsDir():
		return "", "", fmt.Errorf("%s: what it would stand in is a file; hint: name another directory", dir)
	}
	return target, parent, nil
}

// build makes dir and writes files below it, through to the disk.
func build(dir string, files []File) error {
	if err := os.Mkdir(dir, 0o777); err != nil {
		return err
	}
	inner := map[string]bool{dir: true}
	for _, f := range files {
		name := filepath.Join(dir, filepath.FromSlash(f.Name))
		if at := filepath.Dir(name); !inner[at] {
			if err := os.MkdirAll(at, 0o777); err != nil {
				return err
			}
			inner[at] = true
		}
		if err := write(name, f.Data); err != nil {
			return err
		}
	}
	for at := range inner {
		syncDir(at)
	}
	return nil
}

// write makes a new file; it fails when the name is taken.
func write(name string, data []byte) error {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	if err == nil {
		err = f.Sync()
	}
	err = errors.Join(err, f.Close())
	if err != nil {
		os.Remove(name)
	}
	return err
}

// syncDir writes a directory's entries through. Not every system can, and the
// files themselves are safe by then, so its failure is no reason to stop.
func syncDir(dir string) {
	if d, err := os.Open(dir); err == nil {
		_ = d.Sync()
		_ = d.Close()
	}
}

// checkNames holds every name inside the directory, and names apart.
func checkNames(files []File) error {
	seen := map[string]bool{strings.ToLower(markerName): true}
	for _, f := range files {
		if !fs.ValidPath(f.Name) || f.Name == "." || !filepath.IsLocal(filepath.FromSlash(f.Name)) || strings.Contains(f.Name, `\`) {
			return fmt.Errorf("%q: is not a name for a file of the set", f.Name)
		}
		low := strings.ToLower(path.Clean(f.Name)) // some disks do not tell case apart
		if seen[low] {
			return fmt.Errorf("%q: two files of the set have this name", f.Name)
		}
		seen[low] = true
	}
	return nil
}

func notDirectory(dir string) error {
	return fmt.Errorf("%s: is a file, not a directory; hint: name another directory", dir)
}

// reason strips the path from an error of the operating system: the message
// names the directory as the user wrote it.
func reason(err error) error {
	var p *fs.PathError
	var l *os.LinkError
	switch {
	case errors.As(err, &p):
		return p.Err
	case errors.As(err, &l):
		return l.Err
	}
	return err
}
