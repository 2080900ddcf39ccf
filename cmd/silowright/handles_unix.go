//go:build unix

package main

import (
	"fmt"
	"syscall"
)

// handles is how many files a command has open at once at most, and what Go's
// own runtime opens for itself.
const handles = 10

// enoughHandles fails when the system hands out fewer. Without them the
// runtime ends the program in its own words, and what was replaced could not
// be taken away.
func enoughHandles() error {
	for range handles {
		h, err := syscall.Open("/dev/null", syscall.O_RDONLY|syscall.O_CLOEXEC, 0)
		switch err {
		case nil:
			defer syscall.Close(h)
		case syscall.EMFILE, syscall.ENFILE:
			return fmt.Errorf("%w, %d are needed, nothing was written; hint: close some programs, or raise the limit that ulimit -n shows", err, handles)
		}
	}
	return nil
}
