package output

import (
	"errors"
	"os"
	"syscall"
)

// sharing is the system's ERROR_SHARING_VIOLATION: another process has the
// file open.
const sharing = syscall.Errno(32)

// hold opens a marker, or with create makes it, so that nobody else can open
// it until it is closed or the process ends, however it ends.
func hold(name string, create bool) (*os.File, error) {
	at, err := syscall.UTF16PtrFromString(name)
	if err != nil {
		return nil, &os.PathError{Op: "open", Path: name, Err: err}
	}
	how := uint32(syscall.OPEN_EXISTING)
	if create {
		how = syscall.CREATE_NEW
	}
	h, err := syscall.CreateFile(at, syscall.GENERIC_READ|syscall.GENERIC_WRITE, 0, nil, how, syscall.FILE_ATTRIBUTE_NORMAL, 0)
	switch {
	case errors.Is(err, sharing):
		return nil, errHeld
	case err != nil:
		return nil, &os.PathError{Op: "open", Path: name, Err: err}
	}
	return os.NewFile(uintptr(h), name), nil
}

// dropHeld takes a held marker away. The system takes no file away that is
// open so; whoever opens it in between finds a directory with nothing else.
func dropHeld(f *os.File) {
	f.Close()
	os.Remove(f.Name())
}
