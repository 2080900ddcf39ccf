package output

import (
	"os"

	"golang.org/x/sys/unix"
)

// exchange swaps two names in one step, or changes nothing: renameat2(2) with
// RENAME_EXCHANGE.
func exchange(a, b string) error {
	for {
		switch err := unix.Renameat2(unix.AT_FDCWD, a, unix.AT_FDCWD, b, unix.RENAME_EXCHANGE); err {
		case nil:
			return nil
		case unix.EINTR:
		default:
			return &os.LinkError{Op: "exchange", Old: a, New: b, Err: err}
		}
	}
}
