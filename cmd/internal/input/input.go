// Package input reads a file as it stood at one moment, or says that it did
// not stand still.
package input

import (
	"errors"
	"io"
	"io/fs"
	"os"
)

// ErrChanged says that another program wrote the file while it was read.
var ErrChanged = errors.New("was changed while it was read")

// ErrDirectory says that a directory has the name.
var ErrDirectory = errors.New("is a directory")

// Whole reads the file at path, and at most one byte more than most of it, so
// that the caller sees what is too large. Its errors are ErrChanged,
// ErrDirectory and the system's own without the path. A change is told by size
// and time of change; a pipe has neither. What another program had written in
// part before the reading began does not show here.
func Whole(path string, most int64) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, reason(err)
	}
	defer f.Close()
	data, err := whole(f, most)
	return data, reason(err)
}

// file is what is read.
type file interface {
	io.Reader
	Stat() (fs.FileInfo, error)
}

func whole(f file, most int64) ([]byte, error) {
	before, err := f.Stat()
	switch {
	case err != nil:
		return nil, err
	case before.IsDir():
		return nil, ErrDirectory
	}
	data, err := io.ReadAll(io.LimitReader(f, most+1))
	if err != nil {
		return nil, err
	}
	after, err := f.Stat()
	if err != nil {
		return nil, err
	}
	if before.Mode().IsRegular() && (before.Size() != after.Size() || !before.ModTime().Equal(after.ModTime())) {
		return nil, ErrChanged
	}
	return data, nil
}

// reason strips the path from an error of the system: messages name the file
// as the user wrote it.
func reason(err error) error {
	if p := (*fs.PathError)(nil); errors.As(err, &p) {
		return p.Err
	}
	return err
}
