//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package output

import (
	"errors"
	"os"
	"syscall"
)

// hold opens a marker, or with create makes it, and locks it until it is
// closed or the process ends, however it ends. On a disk that knows no locks a
// new marker is taken without one; an old one there is never taken for dead.
func hold(name string, create bool) (*os.File, error) {
	flags := os.O_RDWR | syscall.O_NOFOLLOW
	if create {
		flags |= os.O_CREATE | os.O_EXCL
	}
	f, err := os.OpenFile(name, flags, 0o666)
	if err != nil {
		return nil, err
	}
	err = syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
	switch {
	case err == nil:
		return f, nil
	case errors.Is(err, syscall.EWOULDBLOCK):
		err = errHeld
	case create:
		return f, nil
	}
	f.Close()
	return nil, err
}

// dropHeld takes a held marker away, while it is still held.
func dropHeld(f *os.File) {
	os.Remove(f.Name())
	f.Close()
}
