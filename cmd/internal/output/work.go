package output

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// A work directory stands beside what is written while it is written. It holds
// a marker, which its process keeps locked, and at most two names more: what
// is built, and what was moved out of its way. A process that is killed leaves
// the directory behind; its lock goes with it, and the next run beside it
// takes the directory away.
const (
	workPattern = ".silowright-*"
	workMarker  = ".silowright-work"
	workHead    = "Silowright writes here. When it does not run any more, it takes this directory away the next time.\nWhat is written:\n"
	workNew     = "new"
	workOld     = "old"
)

// workspace is a work directory of this process.
type workspace struct {
	at   string
	held *os.File // the marker, locked
	left bool     // it holds what must not be taken away
}

func (w *workspace) fresh() string { return filepath.Join(w.at, workNew) }
func (w *workspace) aside() string { return filepath.Join(w.at, workOld) }

// openWork makes a work directory in parent for what is to be called base
// there; dir is how the user wrote it.
func openWork(dir, parent, base string) (*workspace, error) {
	fail := func(err error) (*workspace, error) {
		return nil, fmt.Errorf("%s: nothing can be written beside it: %w; hint: %s", dir, reason(err),
			wayOut(err, "look at its permissions and the space left, or name another place"))
	}
	// Another run may take a directory for a dead one before its marker is
	// locked; then the next one is tried.
	for range 20 {
		at, err := os.MkdirTemp(parent, workPattern)
		if err != nil {
			return fail(err)
		}
		held, err := hold(filepath.Join(at, workMarker), true)
		if errors.Is(err, errHeld) || errors.Is(err, fs.ErrNotExist) {
			continue
		}
		w := &workspace{at: at, held: held}
		if err != nil {
			os.Remove(at)
			return fail(err)
		}
		if !w.stands() {
			held.Close()
			continue
		}
		if _, err = held.WriteString(workText(base)); err == nil {
			err = held.Sync()
		}
		if err != nil {
			w.close()
			return fail(err)
		}
		return w, nil
	}
	return fail(errors.New("another run takes it away"))
}

// workText is what the marker says; the quotes keep any name to one line.
func workText(base string) string { return fmt.Sprintf("%s%q\n", workHead, base) }

// stands reports whether the marker that is held is still the one on the disk.
func (w *workspace) stands() bool {
	mine, err := w.held.Stat()
	if err != nil {
		return false
	}
	there, err := os.Lstat(filepath.Join(w.at, workMarker))
	return err == nil && os.SameFile(mine, there)
}

// close takes the directory away. The marker goes last: whatever a kill leaves
// is still known for what it is.
func (w *workspace) close() {
	if !w.left && os.RemoveAll(w.fresh()) == nil && os.RemoveAll(w.aside()) == nil {
		dropHeld(w.held)
		os.Remove(w.at)
		return
	}
	w.held.Close()
}

// tidy takes away what killed runs left in parent, and puts back a set that
// one of them had moved aside. It stops at nothing: what cannot be tidied now
// waits for the next run. A directory that is not wholly known stays.
func tidy(parent string) {
	entries, err := os.ReadDir(parent)
	if err != nil {
		return
	}
	for _, e := range entries {
		if ours, _ := filepath.Match(workPattern, e.Name()); ours && e.IsDir() {
			tidyOne(parent, filepath.Join(parent, e.Name()))
		}
	}
}

func tidyOne(parent, at string) {
	if os.Remove(at) == nil { // empty: killed before the marker was made
		return
	}
	held, err := hold(filepath.Join(at, workMarker), false)
	if err != nil {
		return // its process lives, or it is not ours
	}
	w := &workspace{at: at, held: held}
	base, ours := w.known()
	if !ours || !w.stands() {
		held.Close()
		return
	}
	if base != "" {
		if err := w.putBack(filepath.Join(parent, base)); err != nil {
			held.Close()
			return
		}
	}
	w.close()
}

// known reports whether everything in a work directory is this program's, and
// the name it was made for; "" when the marker itself was cut short.
func (w *workspace) known() (base string, ours bool) {
	entries, err := os.ReadDir(w.at)
	if err != nil {
		return "", false
	}
	for _, e := range entries {
		switch {
		case e.Name() == workMarker && e.Type().IsRegular():
		case e.Name() != workNew && e.Name() != workOld:
			return "", false
		case e.IsDir() && foreign(filepath.Join(w.at, e.Name())):
			return "", false
		}
	}
	data, err := io.ReadAll(io.LimitReader(w.held, 64<<10))
	if err != nil {
		return "", false
	}
	text := string(data)
	rest, headed := strings.CutPrefix(text, workHead)
	name, ended := strings.CutSuffix(rest, "\n")
	if base, err = strconv.Unquote(name); headed && ended && err == nil && workText(base) == text {
		return base, base != "." && base == filepath.Base(base) && filepath.IsLocal(base)
	}
	// cut short: nothing was built yet
	cut := strings.HasPrefix(workHead, text) || headed && strings.HasPrefix(rest, `"`) && !strings.Contains(rest, "\n")
	return "", cut && len(entries) == 1
}

// foreign reports whether a set, whole or half-written, holds a file that
// somebody put into it. A set without a marker is one that is being made.
func foreign(dir string) bool {
	known, ours, err := markerOf(dir)
	if errors.Is(err, fs.ErrNotExist) {
		return false
	}
	return err != nil || ours && onlyKnown(dir, dir, known) != nil
}

// touched reports whether a whole set, or an empty directory, holds a file that
// somebody put into it.
func touched(dir string) bool {
	entries, err := os.ReadDir(dir)
	if err == nil && len(entries) == 0 {
		return false
	}
	known, ours, err := markerOf(dir)
	return err != nil || !ours || onlyKnown(dir, dir, known) != nil
}

// putBack moves what was set aside to target again, unless something stands
// there.
func (w *workspace) putBack(target string) error {
	if _, err := os.Lstat(w.aside()); err != nil {
		return nil
	}
	if _, err := os.Lstat(target); !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return os.Rename(w.aside(), target)
}
