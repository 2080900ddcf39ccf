package output

import (
	"os"

	"golang.org/x/sys/unix"
)

// exchange swaps two names in one step, or changes nothing: renamex_np(2) with
// RENAME_SWAP, which the disk must know (APFS does).
func exchange(a, b string) error {
	for {
		switch err := unix.RenamexNp(a, b, unix.RENAME_SWAP); err {
		case nil:
			return nil
		case unix.EINTR:
		default:
			return &os.LinkError{Op: "exchange", Old: a, New: b, Err: err}
		}
	}
}
