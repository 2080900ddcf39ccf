package output

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// Write puts one file in the place of name, or makes it, as one act: whoever
// reads it finds the old bytes or the new ones, also after a crash. The bytes
// are written through to the disk beside it first. Its permissions stay. It
// refuses what is no plain file; a link is not followed.
func Write(name string, data []byte) error {
	mode := fs.FileMode(0o666)
	switch info, err := os.Lstat(name); {
	case err == nil && !info.Mode().IsRegular():
		return fmt.Errorf("%s: is not a plain file and is not replaced; hint: name another", name)
	case err == nil:
		mode = info.Mode().Perm()
	case !errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%s: %w; hint: name another file", name, reason(err))
	}
	dir := filepath.Dir(name)
	tidy(dir)
	w, err := openWork(name, dir, filepath.Base(name))
	if err != nil {
		return err
	}
	defer w.close()
	fresh := w.fresh()
	if err := write(fresh, data); err != nil {
		return unwritten(name, err)
	}
	if mode != 0o666 {
		if err := os.Chmod(fresh, mode); err != nil {
			return fmt.Errorf("%s: cannot be written: %w; hint: nothing was changed", name, reason(err))
		}
	}
	if err := os.Rename(fresh, name); err != nil {
		return fmt.Errorf("%s: cannot be replaced: %w; hint: nothing was changed; close programs that have it open", name, reason(err))
	}
	syncDir(dir)
	return nil
}
