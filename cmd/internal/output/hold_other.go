//go:build !(darwin || dragonfly || freebsd || linux || netbsd || openbsd || windows)

package output

import (
	"errors"
	"os"
)

// hold makes a marker. These systems have no lock that ends with the process,
// so an old one is never taken for dead.
func hold(name string, create bool) (*os.File, error) {
	if !create {
		return nil, errors.ErrUnsupported
	}
	return os.OpenFile(name, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o666)
}

// dropHeld takes a held marker away.
func dropHeld(f *os.File) {
	f.Close()
	os.Remove(f.Name())
}
